/* rw-main-window-drill.c: a practice cabinet, its own window, and drills.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-drill-form.h"
#include "rw-drill-window.h"
#include "rw-drill.h"

/* Short enough to be said across a bench. */
static const int most_offered = 10000;

static void
chosen_cb (RwMainWindow *self,
           guint         level,
           guint64       seed,
           gboolean      suggestions)
{
  g_autoptr (GError) error = NULL;
  RwJob *job = rw_drill_begin (level, seed, suggestions, &error);

  if (job == NULL)
    {
      rw_banner_show (self->banner, RW_BANNER_WARNING, error->message, _ ("All right"), NULL);
      return;
    }
  rw_main_window_set_job (self, job);
  rw_practice_bar_open_bench (self->practice);
}

/* The window that was asked from; a question about the bench belongs to the bench. */
static GtkWindow *
asked_from (RwMainWindow *self)
{
  GtkWindow *active = gtk_application_get_active_window (gtk_window_get_application (GTK_WINDOW (self)));

  return active != NULL ? active : GTK_WINDOW (self);
}

void
rw_main_window_begin_practice (GtkWidget  *widget,
                               const char *name,
                               GVariant   *parameter)
{
  rw_main_window_practice (RW_MAIN_WINDOW (widget));
}

void
rw_main_window_open_bench (GtkWidget  *widget,
                           const char *name,
                           GVariant   *parameter)
{
  rw_practice_bar_open_bench (RW_MAIN_WINDOW (widget)->practice);
}

void
rw_main_window_new_drill (GtkWidget  *widget,
                          const char *name,
                          GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  GtkWidget *form = rw_drill_form_new (asked_from (self), (guint64) g_random_int_range (1, most_offered));

  g_signal_connect_object (form, "chosen", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (form));
}

void
rw_main_window_end_drill (GtkWidget  *widget,
                          const char *name,
                          GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (rw_drill_of (self->job) != NULL)
    gtk_window_present (GTK_WINDOW (rw_drill_window_new (asked_from (self), self->job)));
  else
    rw_banner_show (self->banner, RW_BANNER_QUIET, _ ("This is no drill: it has no end to show."), _ ("All right"), NULL);
}

/* Whatever is suggested, and when nothing is. */
void
rw_main_window_open_repairs (GtkWidget  *widget,
                             const char *name,
                             GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  rw_main_window_show_diagnosis (self);
  rw_symptom_side_open_repairs (self->side);
}
