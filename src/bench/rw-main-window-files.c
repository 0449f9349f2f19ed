/* rw-main-window-files.c: opening, going on with, copying and drawing sessions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-annotations.h"
#include "rw-chart-export.h"
#include "rw-compat.h"
#include "rw-paths.h"
#include "rw-plan-save.h"

/* The practice cabinet of the first visit: something that can be found with three or four readings. */
static const guint64 practice_seed = 23;
static const RwPracticeFault practice_fault = { "plus5-wire-thin", 1.0 };

static void
say (RwMainWindow *self,
     RwBannerStyle style,
     const char   *text)
{
  rw_banner_show (self->banner, style, text, _ ("All right"), NULL);
}

/* A name that says what it is and does not collide: date, time, cabinet. (transfer full) */
char *
rw_main_window_new_path (const char *folder,
                         const char *cabinet)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *stamp = g_date_time_format (now, "%Y-%m-%d-%H%M%S");
  g_autofree char *plain = g_str_to_ascii (cabinet, "C");
  g_autofree char *slug = g_ascii_strdown (plain, 60); /* a file's name has at most 255 bytes */
  g_autofree char *name = NULL;

  g_strcanon (slug, "abcdefghijklmnopqrstuvwxyz0123456789", '-');
  name = g_strdup_printf ("%s-%s.rwlog", stamp, *slug != '\0' ? slug : "job");
  return g_build_filename (folder, name, NULL);
}

static void
remember (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *uri = g_file_get_uri (file);

  gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
}

/* --- opening -------------------------------------------------------------------------------------- */

gboolean
rw_main_window_open_session (RwMainWindow *self,
                             const char   *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;
  RwJob *job = rw_job_new_replay (path, &report, &error);

  if (job == NULL)
    {
      say (self, RW_BANNER_WARNING, error->message);
      return FALSE;
    }
  rw_main_window_set_job (self, job);
  remember (path);
  if (report != NULL)
    say (self, RW_BANNER_WARNING, report);
  return TRUE;
}

void
rw_main_window_open (RwMainWindow *self,
                     const char   *path)
{
  g_autofree char *session = rw_annotations_dup_session_path (path);

  if (session != NULL) /* it is a file of notes */
    rw_main_window_open_notes (self, path);
  else
    rw_main_window_open_session (self, path);
}

void
rw_main_window_continue (RwMainWindow *self,
                         const char   *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;
  RwJob *job = rw_job_new_continued (path, &report, &error);

  if (job == NULL)
    {
      say (self, RW_BANNER_WARNING, error->message);
      return;
    }
  rw_main_window_set_job (self, job);
  if (report != NULL)
    say (self, RW_BANNER_WARNING, report);
}

void
rw_main_window_start_job (RwMainWindow    *self,
                          RwSessionHeader *header)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = rw_paths_dup_sessions ();
  g_autofree char *path = rw_main_window_new_path (folder, header->cabinet_name);
  RwJob *job = rw_job_new_bench (header, path, &error);

  if (job == NULL)
    {
      say (self, RW_BANNER_WARNING, error->message);
      return;
    }
  rw_main_window_set_job (self, job);
  remember (path);
  rw_entry_row_focus (self->entry);
}

/* --- practice ------------------------------------------------------------------------------------- */

static RwProfile *
find_profile (const char *id)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);

  for (guint i = 0; i < profiles->len; i++)
    if (g_str_equal (rw_profile_get_id (profiles->pdata[i]), id))
      return rw_profile_ref (profiles->pdata[i]);
  return profiles->len > 0 ? rw_profile_ref (profiles->pdata[0]) : NULL;
}

static RwJob *
make_practice (GError **error)
{
  g_autoptr (RwProfile) profile = find_profile ("classic-5-12-m5");
  g_autofree char *folder = rw_paths_dup_practice ();
  g_autofree char *path = rw_main_window_new_path (folder, "Tidepool Racer");

  if (profile == NULL)
    {
      g_set_error_literal (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_READ,
                           _ ("No profile was found: the data folder of the program is missing. Install it again, or "
                              "set RAILWRIGHT_DATA_DIR."));
      return NULL;
    }

  g_autoptr (RwPracticeCabinet) cabinet = rw_practice_cabinet_new (profile, practice_seed, &practice_fault, 1,
                                                                   "Tidepool Racer", error);

  return cabinet != NULL ? rw_job_new_practice (cabinet, path, error) : NULL;
}

void
rw_main_window_practice (RwMainWindow *self)
{
  g_autoptr (GError) error = NULL;
  RwJob *job = make_practice (&error);

  if (job == NULL)
    {
      say (self, RW_BANNER_WARNING, error->message);
      return;
    }
  rw_main_window_set_job (self, job);
  rw_job_set_setup (job, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NO });
  rw_entry_row_focus (self->entry);
}

/* --- choosing files ------------------------------------------------------------------------------- */

static void
open_chosen (const char *path,
             gpointer    data)
{
  rw_main_window_open (data, path);
}

void
rw_main_window_ask_open (RwMainWindow *self)
{
  rw_compat_open_file (GTK_WINDOW (self), _ ("Open a session"), _ ("Sessions"), "*.rwlog;*.rwnotes", open_chosen,
                       self);
}

/* The whole session: of a replay the file it comes from, not just what has been played. */
static RwSession *
whole_session (RwMainWindow *self)
{
  RwReplay *replay = rw_job_get_replay (self->job);

  return replay != NULL ? rw_replay_get_source (replay) : rw_job_get_session (self->job);
}

static void
copy_chosen (const char *path,
             gpointer    data)
{
  RwMainWindow *self = data;
  g_autoptr (GError) error = NULL;

  if (g_strcmp0 (path, rw_job_get_path (self->job)) == 0)
    {
      say (self, RW_BANNER_WARNING, _ ("That is the file of this very session. Choose another name."));
      return;
    }
  if (!rw_journal_copy (whole_session (self), path, &error))
    {
      say (self, RW_BANNER_WARNING, error->message);
      return;
    }

  /* Translators: path of a file. */
  g_autofree char *text = g_strdup_printf (_ ("A copy was saved as %s."), path);

  say (self, RW_BANNER_QUIET, text);
}

void
rw_main_window_ask_copy (RwMainWindow *self)
{
  g_autofree char *name = g_path_get_basename (rw_job_get_path (self->job));

  rw_compat_save_file (GTK_WINDOW (self), _ ("Save a copy"), name, _ ("Sessions"), "*.rwlog", copy_chosen, self);
}

static void
move_chosen (const char *path,
             gpointer    data)
{
  RwMainWindow *self = data;
  g_autoptr (GError) error = NULL;

  if (!rw_job_move_file (self->job, path, &error))
    say (self, RW_BANNER_WARNING, error->message);
}

void
rw_main_window_ask_move (RwMainWindow *self)
{
  g_autofree char *name = g_path_get_basename (rw_job_get_path (self->job));

  rw_compat_save_file (GTK_WINDOW (self), _ ("Save in another place"), name, _ ("Sessions"), "*.rwlog", move_chosen,
                       self);
}

/* The chart that is seen. Pixels of the picture. */
static const int picture_width = 1240, picture_height = 620;

static void
picture_chosen (const char *path,
                gpointer    data)
{
  RwMainWindow *self = data;
  g_autoptr (GError) error = NULL;
  RwChartFormat format = RW_CHART_PNG;

  if (!rw_chart_format_from_path (path, &format))
    {
      say (self, RW_BANNER_WARNING, _ ("The name must end in .png, .svg or .pdf."));
      return;
    }

  RwView *view = rw_job_get_view (self->job);
  RwSession *session = rw_job_get_session (self->job);
  const gboolean done = rw_view_get_chart (view) == RW_VIEW_TRIM
                            ? rw_trim_map_export (session, view, rw_job_get_trim_set (self->job), path, format,
                                                  picture_width, picture_height, &error)
                            : rw_chart_export (session, view, path, format, picture_width, picture_height, &error);

  if (!done)
    say (self, RW_BANNER_WARNING, error->message);
}

void
rw_main_window_ask_picture (RwMainWindow *self)
{
  rw_compat_save_file (GTK_WINDOW (self), _ ("Save the chart"), "chart.png", NULL, NULL, picture_chosen, self);
}

static void
plan_trouble (const char *message,
              gpointer    data)
{
  say (data, RW_BANNER_WARNING, message);
}

static void
plan_chosen (const char *path,
             gpointer    data)
{
  RwMainWindow *self = data;

  if (self->job != NULL)
    rw_plan_save (self->job, path, plan_trouble, self);
}

void
rw_main_window_ask_plan (RwMainWindow *self)
{
  rw_compat_save_file (GTK_WINDOW (self), _ ("Save the plan"), "plan.pdf", NULL, NULL, plan_chosen, self);
}
