/* rw-main-window-watch.c: the watch window, and the reminder that a reading of a warm-up is due.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The reminder is a banner; while no window of the program is in front it is the desktop's notification too. Each
 * due point is told once, whether or not anybody looked.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-watch-window.h"

static const char notification_id[] = "warm-up";
static const double look_every = 5; /* seconds of the job */

static void
show_window (RwMainWindow *self)
{
  if (self->watch == NULL)
    {
      self->watch = rw_watch_window_new (GTK_WINDOW (self), self->job, self->wiggle, self->settings);
      g_object_add_weak_pointer (G_OBJECT (self->watch), (gpointer *) &self->watch);
    }
  gtk_window_present (GTK_WINDOW (self->watch));
}

void
rw_main_window_show_watch (GtkWidget  *widget,
                           const char *name,
                           GVariant   *parameter)
{
  show_window (RW_MAIN_WINDOW (widget));
}

/* --- the reminder --------------------------------------------------------------------------------- */

static void
withdraw (RwMainWindow *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));

  rw_banner_show (self->due, RW_BANNER_QUIET, NULL, NULL, NULL);
  self->due_shown = FALSE;
  if (application != NULL && self->due_notified)
    g_application_withdraw_notification (G_APPLICATION (application), notification_id);
  self->due_notified = FALSE;
}

static gboolean
is_in_front (GtkApplication *application)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (gtk_window_is_active (l->data))
      return TRUE;
  return FALSE;
}

static void
notify_desktop (RwMainWindow *self,
                const char   *words)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  const RwSessionHeader *header = rw_session_get_header (rw_job_get_session (self->job));

  if (application == NULL || is_in_front (application))
    return;

  g_autoptr (GNotification) notification = g_notification_new (header->cabinet_name);

  g_notification_set_body (notification, words);
  g_application_send_notification (G_APPLICATION (application), notification_id, notification);
  self->due_notified = TRUE;
}

static void
remind (RwMainWindow *self,
        const GArray *spots,
        int           point)
{
  g_autofree char *words = rw_watch_due_words (spots, point);

  rw_banner_show (self->due, RW_BANNER_QUIET, words, _ ("Show"), _ ("Put away"));
  self->due_shown = TRUE;
  notify_desktop (self, words);
}

static void
look (RwMainWindow *self)
{
  const double now = rw_job_get_now (self->job);
  int point;

  if (!rw_job_can_write (self->job) || self->settings == NULL
      || !g_settings_get_boolean (self->settings, "warm-up-reminders"))
    {
      withdraw (self);
      return;
    }

  g_autoptr (GArray) spots = rw_watch_list_spots (rw_job_get_session (self->job), now);

  self->due_looked = now;
  if (rw_watch_reminder_take (&self->reminder, spots, &point))
    remind (self, spots, point);
  else if (point < 0 && self->due_shown)
    withdraw (self);
}

static void
tick_cb (RwMainWindow *self)
{
  const double now = rw_job_get_now (self->job);

  if (now < self->due_looked || now - self->due_looked >= look_every)
    look (self);
}

static void
response_cb (RwMainWindow *self,
             gboolean      first)
{
  withdraw (self);
  if (first && self->job != NULL)
    show_window (self);
}

/* --- the job -------------------------------------------------------------------------------------- */

void
rw_main_window_add_watch (RwMainWindow *self)
{
  rw_watch_reminder_init (&self->reminder);
  g_signal_connect_swapped (self->due, "response", G_CALLBACK (response_cb), self);
}

void
rw_main_window_follow_watch (RwMainWindow *self)
{
  rw_main_window_drop_watch (self);
  withdraw (self);
  rw_watch_reminder_init (&self->reminder);
  self->due_looked = 0;
  if (self->job == NULL)
    return;
  self->wiggle = rw_watch_wiggle_new (rw_job_get_session (self->job));
  g_signal_connect_object (self->job, "changed", G_CALLBACK (look), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->job, "tick", G_CALLBACK (tick_cb), self, G_CONNECT_SWAPPED);
}

void
rw_main_window_drop_watch (RwMainWindow *self)
{
  if (self->watch != NULL)
    {
      GtkWidget *watch = self->watch;

      g_clear_weak_pointer (&self->watch);
      gtk_window_destroy (GTK_WINDOW (watch));
    }
  g_clear_object (&self->wiggle);
}
