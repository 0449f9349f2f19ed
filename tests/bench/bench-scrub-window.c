/* bench-scrub-window.c: moving about in a replay of a million samples, with the whole window following.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Timed from the request until every part of the window has taken the new state in: replay, state, cards, sentence,
 * symptoms, plan, stages, scrub bar. What follows is the toolkit's own layout and painting of the next frame, which is
 * told beside it. Fails when a step takes longer than 16 ms. Needs a display: tests/ui/env.sh gives one.
 */
#include "config.h"

#include <math.h>

#include <gtk/gtk.h>
#include <glib/gstdio.h>

#include "rw-event-json.h"
#include "rw-main-window.h"
#include "scrub-session.h"

static const double most_msec = 16;
static const guint n_steps = 150;

static void
write_session (RwSession  *session,
               const char *path)
{
  FILE *file = fopen (path, "w");
  g_autoptr (GString) line = g_string_new (NULL);

  g_assert_nonnull (file);
  rw_session_header_append_line (rw_session_get_header (session), line);
  for (guint i = 0; i <= rw_session_get_n_events (session); i++)
    {
      if (line->len == 0 || line->str[line->len - 1] != '\n')
        g_string_append_c (line, '\n');
      g_assert_cmpuint (fwrite (line->str, 1, line->len, file), ==, line->len);
      g_string_truncate (line, 0);
      if (i < rw_session_get_n_events (session))
        rw_event_append_line (rw_session_get_event (session, i), line);
    }
  fclose (file);
}

static gboolean
stop_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
spin (guint msec)
{
  gboolean stop = FALSE;

  g_timeout_add (msec, stop_cb, &stop);
  while (!stop)
    g_main_context_iteration (NULL, TRUE);
}

static void
told_cb (gboolean *told)
{
  *told = TRUE;
}

/* Milliseconds of one step; *frame: with the frame that shows it. */
static double
step_to (RwJob     *job,
         GtkWidget *window,
         double     t,
         double    *frame)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  gboolean told = FALSE, painted = FALSE;
  const double start = scrub_now_msec ();
  const gulong follows = g_signal_connect_data (job, "changed", G_CALLBACK (told_cb), &told, NULL,
                                                G_CONNECT_AFTER | G_CONNECT_SWAPPED);

  rw_replay_seek (rw_job_get_replay (job), t);
  while (!told)
    g_main_context_iteration (NULL, TRUE);

  const double took = scrub_now_msec () - start;
  const gulong paints = g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (told_cb), &painted);

  while (!painted)
    g_main_context_iteration (NULL, TRUE);
  *frame = scrub_now_msec () - start;
  g_signal_handler_disconnect (clock, paints);
  g_signal_handler_disconnect (job, follows);
  return took;
}

static int
run (RwJob     *job,
     GtkWidget *window)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (4);
  const double length = rw_replay_get_length (rw_job_get_replay (job));
  double sum = 0, most = 0, frames = 0, most_frame = 0;

  for (guint i = 0; i < n_steps; i++)
    {
      const double t = i < n_steps / 3       ? length * i / (n_steps / 3)
                       : i < 2 * n_steps / 3 ? length * (2 - i / (n_steps / 3.0))
                                             : g_rand_double_range (random, 0, length);
      double frame, took = step_to (job, window, t, &frame);

      sum += took;
      frames += frame;
      most = fmax (most, took);
      most_frame = fmax (most_frame, frame);
    }
  g_print ("a step with the whole window: mean %.2f ms, most %.2f ms of %.0f; with its frame: mean %.2f ms, most %.2f ms\n",
           sum / n_steps, most, most_msec, frames / n_steps, most_frame);
  return most <= most_msec ? 0 : 1;
}

static void
activated_cb (GtkApplication *app)
{
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GtkApplication) app = gtk_application_new (NULL, G_APPLICATION_NON_UNIQUE);
  g_autoptr (RwSession) session = scrub_session_new (SCRUB_SAMPLES);
  g_autofree char *folder = g_dir_make_tmp ("scrub-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "long.rwlog", NULL);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;

  g_signal_connect (app, "activate", G_CALLBACK (activated_cb), NULL);
  g_assert_true (g_application_register (G_APPLICATION (app), NULL, NULL));
  write_session (session, path);
  g_clear_object (&session);

  RwJob *job = rw_job_new_replay (path, &report, &error);

  g_assert_no_error (error);
  g_unlink (path);
  g_rmdir (folder);

  GtkWidget *window = rw_main_window_new (app, NULL);

  rw_main_window_set_job (RW_MAIN_WINDOW (window), job);
  gtk_window_present (GTK_WINDOW (window));
  spin (4000); /* advice, chapters and the first frames */

  const int status = run (job, window);

  gtk_window_destroy (GTK_WINDOW (window));
  return status;
}
