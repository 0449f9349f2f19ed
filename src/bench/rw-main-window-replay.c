/* rw-main-window-replay.c: the commands of a replay: chapters, jumps, skipping.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

/* The actions that jump, and where to. */
static const struct
{
  const char  *name;
  RwReplayGoal goal;
  gboolean     forward;
} jumps[] = {
  { "win.next-chapter", RW_REPLAY_CHAPTER, TRUE }, { "win.previous-chapter", RW_REPLAY_CHAPTER, FALSE },
  { "win.next-warning", RW_REPLAY_WARNING, TRUE }, { "win.previous-warning", RW_REPLAY_WARNING, FALSE },
  { "win.next-trim", RW_REPLAY_TRIM, TRUE },       { "win.previous-trim", RW_REPLAY_TRIM, FALSE },
  { "win.next-keep", RW_REPLAY_KEEP, TRUE },       { "win.previous-keep", RW_REPLAY_KEEP, FALSE },
};

/* A key that does nothing must say so. */
static const char *
say_none (RwReplayGoal goal)
{
  switch (goal)
    {
    case RW_REPLAY_WARNING:
      return _ ("No further warning that way.");
    case RW_REPLAY_TRIM:
      return _ ("No further turn of the trim that way.");
    case RW_REPLAY_KEEP:
      return _ ("No further kept reading that way.");
    case RW_REPLAY_CHAPTER:
    default:
      return _ ("No further chapter that way.");
    }
}

static void
jump (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  RwReplay *replay = self->job != NULL ? rw_job_get_replay (self->job) : NULL;

  for (guint i = 0; replay != NULL && i < G_N_ELEMENTS (jumps); i++)
    if (g_str_equal (name, jumps[i].name))
      {
        const gboolean there = rw_replay_jump (replay, jumps[i].goal, jumps[i].forward);

        rw_banner_show (self->banner, RW_BANNER_QUIET, there ? NULL : say_none (jumps[i].goal),
                        there ? NULL : _ ("Close"), NULL);
        return;
      }
}

static void
toggle_skipping (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  RwReplay *replay = self->job != NULL ? rw_job_get_replay (self->job) : NULL;

  if (replay != NULL)
    rw_replay_set_skips_waiting (replay, !rw_replay_get_skips_waiting (replay));
}

static void
list_chapters (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  rw_replay_bar_list_chapters (RW_MAIN_WINDOW (widget)->replay_bar);
}

void
rw_main_window_install_replay_actions (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (jumps); i++)
    gtk_widget_class_install_action (widget_class, jumps[i].name, NULL, jump);
  gtk_widget_class_install_action (widget_class, "win.skip-waiting", NULL, toggle_skipping);
  gtk_widget_class_install_action (widget_class, "win.chapters", NULL, list_chapters);
}

/* --- what is liked is remembered ------------------------------------------------------------------ */

static void
settings_cb (RwMainWindow *self)
{
  RwReplay *replay = self->job != NULL ? rw_job_get_replay (self->job) : NULL;

  if (replay == NULL)
    return;
  g_settings_set_double (self->settings, "replay-speed", rw_replay_get_speed (replay));
  g_settings_set_boolean (self->settings, "replay-skip-waiting", rw_replay_get_skips_waiting (replay));
}

void
rw_main_window_show_replay (RwMainWindow *self)
{
  RwReplay *replay = self->job != NULL ? rw_job_get_replay (self->job) : NULL;

  rw_replay_bar_set_job (self->replay_bar, replay != NULL ? self->job : NULL);
  for (guint i = 0; i < G_N_ELEMENTS (jumps); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), jumps[i].name, replay != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.skip-waiting", replay != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.chapters", replay != NULL);
  if (replay == NULL || self->settings == NULL)
    return;
  rw_replay_set_speed (replay, g_settings_get_double (self->settings, "replay-speed"));
  rw_replay_set_skips_waiting (replay, g_settings_get_boolean (self->settings, "replay-skip-waiting"));
  g_signal_connect_object (replay, "settings-changed", G_CALLBACK (settings_cb), self, G_CONNECT_SWAPPED);
}
