/* rw-main-window-actions.c: every command of the window, and when it can be used.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-log-window.h"
#include "rw-meter-window.h"
#include "rw-new-job.h"

/* --- jobs ----------------------------------------------------------------------------------------- */

static void
new_job_chosen_cb (RwNewJob     *dialog,
                   RwMainWindow *self)
{
  RwSessionHeader *header = rw_new_job_dup_header (dialog);

  if (header != NULL)
    rw_main_window_start_job (self, header);
}

static void
new_job (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  GtkWidget *dialog = rw_new_job_new (GTK_WINDOW (widget));

  g_signal_connect_object (dialog, "chosen", G_CALLBACK (new_job_chosen_cb), widget, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
open_session (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  rw_main_window_ask_open (RW_MAIN_WINDOW (widget));
}

static void
open_path (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_main_window_open (RW_MAIN_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
go_on (GtkWidget  *widget,
       const char *name,
       GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  g_autofree char *path = g_strdup (rw_job_get_path (self->job));

  rw_main_window_continue (self, path);
}

static void
save_copy (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_main_window_ask_copy (RW_MAIN_WINDOW (widget));
}

static void
save_picture (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  rw_main_window_ask_picture (RW_MAIN_WINDOW (widget));
}

static void
save_plan (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_main_window_ask_plan (RW_MAIN_WINDOW (widget));
}

static void
show_log (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  gtk_window_present (GTK_WINDOW (rw_log_window_new (GTK_WINDOW (self), self->job)));
}

static void
show_meter_window (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  gtk_window_present (GTK_WINDOW (rw_meter_window_new (GTK_WINDOW (self), self->job, self->settings)));
}

/* --- setup and trim ------------------------------------------------------------------------------- */

static RwSaid
other (RwSaid said)
{
  return said == RW_SAID_YES ? RW_SAID_NO : RW_SAID_YES;
}

static void
toggle_power (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));

  rw_job_set_setup (self->job, (RwSetup){ other (now.power_on), RW_SAID_NOT, RW_SAID_NOT });
}

static void
toggle_board (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));

  if (now.power_on == RW_SAID_YES)
    {
      rw_banner_show (self->banner, RW_BANNER_WARNING,
                      _ ("Never plug a board with the power on. Switch off, wait until the rails have fallen, then plug."),
                      _ ("All right"), NULL);
      return;
    }
  rw_job_set_setup (self->job, (RwSetup){ RW_SAID_NOT, other (now.board_fitted), RW_SAID_NOT });
}

static void
toggle_warm (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));

  rw_job_set_setup (self->job, (RwSetup){ RW_SAID_NOT, RW_SAID_NOT, other (now.warm) });
}

static void
trim_turned (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  rw_job_turn_trim (RW_MAIN_WINDOW (widget)->job, 0);
}

static void
turn_trim (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_job_turn_trim (RW_MAIN_WINDOW (widget)->job, g_variant_get_double (parameter));
}

/* --- readings and words --------------------------------------------------------------------------- */

static void
toggle_hands_free (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  rw_main_window_toggle_hands (RW_MAIN_WINDOW (widget));
}

static void
answer (GtkWidget  *widget,
        const char *name,
        GVariant   *parameter)
{
  rw_main_window_answer (RW_MAIN_WINDOW (widget), g_str_equal (name, "win.answer-first") ? 0 : 1);
}

static void
toggle_big_view (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  rw_main_window_toggle_big (RW_MAIN_WINDOW (widget));
}

static void
toggle_sound (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  rw_main_window_toggle_sound (RW_MAIN_WINDOW (widget));
}

static void
keep_settled (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (!rw_job_keep_settled (self->job))
    rw_entry_row_say (self->entry, _ ("The meter has not settled: wait, or type what you read."));
}

static void
set_place (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const char *rail = rw_job_get_rail (self->job);
  RwPlace place;

  if (!rw_place_from_id (g_variant_get_string (parameter, NULL), &place))
    return;
  if (g_str_equal (rail, RW_RAIL_GROUND) && place != RW_PLACE_WIRE)
    rail = rw_profile_get_reference (rw_job_get_profile (self->job))->id;
  rw_job_set_spot (self->job, rail, place, place == RW_PLACE_WIRE ? RW_KIND_DC : rw_job_get_kind (self->job));
}

static void
aim_ground (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  rw_job_set_spot (RW_MAIN_WINDOW (widget)->job, RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC);
}

static void
set_rail (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const gint32 index = g_variant_get_int32 (parameter);
  RwProfile *profile = rw_job_get_profile (self->job);

  if (index >= 1 && (guint) index <= rw_profile_get_n_rails (profile))
    rw_job_set_spot (self->job, rw_profile_get_rail (profile, (guint) index - 1)->id, rw_job_get_place (self->job),
                     rw_job_get_kind (self->job));
}

static void
move_rail (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_job_move_rail (RW_MAIN_WINDOW (widget)->job, g_str_equal (name, "win.next-rail") ? 1 : -1);
}

/* The text widget that has the focus undoes its own typing first. */
static gboolean
text_undoes (GtkWidget  *widget,
             const char *text_action)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (widget));

  if (!GTK_IS_TEXT (focus) && !GTK_IS_TEXT_VIEW (focus))
    return FALSE;
  if (GTK_IS_TEXT (focus) && gtk_entry_buffer_get_length (gtk_text_get_buffer (GTK_TEXT (focus))) == 0)
    return FALSE; /* nothing typed: the key means the job */
  gtk_widget_activate_action (focus, text_action, NULL);
  return TRUE;
}

static void
undo (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  if (!text_undoes (widget, "text.undo"))
    rw_job_undo (RW_MAIN_WINDOW (widget)->job);
}

static void
redo (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  if (!text_undoes (widget, "text.redo"))
    rw_job_redo (RW_MAIN_WINDOW (widget)->job);
}

static void
mark (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwEvent event = rw_event_make_mark (0, _ ("reset seen"));

  rw_job_add (RW_MAIN_WINDOW (widget)->job, &event);
}

static void
take_check (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  if (!rw_main_window_take_stage_spot (RW_MAIN_WINDOW (widget)))
    rw_symptom_side_take_check (RW_MAIN_WINDOW (widget)->side);
}

static void
take_other (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  rw_symptom_side_take_other (RW_MAIN_WINDOW (widget)->side, g_str_equal (name, "win.take-second-other") ? 1 : 0);
}

static void
ask_another (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  rw_main_window_show_diagnosis (RW_MAIN_WINDOW (widget));
  rw_symptom_side_ask_another (RW_MAIN_WINDOW (widget)->side);
}

static void
open_symptoms (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  rw_main_window_show_diagnosis (RW_MAIN_WINDOW (widget));
  rw_symptom_side_open_symptoms (RW_MAIN_WINDOW (widget)->side);
}

/* --- looking -------------------------------------------------------------------------------------- */

static void
other_chart (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  rw_main_window_switch_chart (RW_MAIN_WINDOW (widget));
}

static void
zoom (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwView *view = rw_job_get_view (RW_MAIN_WINDOW (widget)->job);
  const double middle = (rw_view_get_start (view) + rw_view_get_end (view)) / 2;

  if (g_str_equal (name, "win.zoom-fit"))
    rw_view_fit (view);
  else
    rw_view_zoom (view, g_str_equal (name, "win.zoom-in") ? 0.5 : 2, middle);
}

static void
toggle_side (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  rw_main_window_show_side (self, !self->side_wanted);
}

static void
toggle_fullscreen (GtkWidget  *widget,
                   const char *name,
                   GVariant   *parameter)
{
  if (gtk_window_is_fullscreen (GTK_WINDOW (widget)))
    gtk_window_unfullscreen (GTK_WINDOW (widget));
  else
    gtk_window_fullscreen (GTK_WINDOW (widget));
}

/* --- replay --------------------------------------------------------------------------------------- */

static void
play (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwReplay *replay = rw_job_get_replay (RW_MAIN_WINDOW (widget)->job);

  rw_replay_set_playing (replay, !rw_replay_get_playing (replay));
}

static void
step (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  rw_replay_step (rw_job_get_replay (RW_MAIN_WINDOW (widget)->job), g_str_equal (name, "win.step-forward"));
}

static void
change_speed (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  rw_replay_change_speed (rw_job_get_replay (RW_MAIN_WINDOW (widget)->job), g_str_equal (name, "win.faster") ? 1 : -1);
}

/* --- which can be used when ----------------------------------------------------------------------- */

typedef enum
{
  ALWAYS,
  WITH_JOB,      /* something is opened */
  WITH_WRITABLE, /* and it is no replay */
  WITH_BENCH,    /* and no practice either */
  WITH_REPLAY,
  WITH_PRACTICE,
} When;

typedef void (*ActionFunc) (GtkWidget  *widget,
                            const char *name,
                            GVariant   *parameter);

static const struct
{
  const char *name;
  const char *parameter; /* GVariant type, or NULL */
  ActionFunc  func;
  When        when;
} actions[] = {
  { "win.new-job", NULL, new_job, ALWAYS },
  { "win.open", NULL, open_session, ALWAYS },
  { "win.open-path", "s", open_path, ALWAYS },
  { "win.practice", NULL, rw_main_window_begin_practice, ALWAYS },
  { "win.practice-bench", NULL, rw_main_window_open_bench, WITH_PRACTICE },
  { "win.new-drill", NULL, rw_main_window_new_drill, ALWAYS },
  { "win.end-drill", NULL, rw_main_window_end_drill, WITH_PRACTICE },
  { "win.fullscreen", NULL, toggle_fullscreen, ALWAYS },
  { "win.continue", NULL, go_on, WITH_REPLAY },
  { "win.save-copy", NULL, save_copy, WITH_JOB },
  { "win.save-picture", NULL, save_picture, WITH_JOB },
  { "win.save-plan", NULL, save_plan, WITH_JOB },
  { "win.compare", NULL, rw_main_window_compare, WITH_JOB },
  { "win.log", NULL, show_log, WITH_JOB },
  { "win.watch", NULL, rw_main_window_show_watch, WITH_JOB },
  { "win.meter", NULL, show_meter_window, WITH_BENCH },
  { "win.toggle-power", NULL, toggle_power, WITH_WRITABLE },
  { "win.toggle-board", NULL, toggle_board, WITH_WRITABLE },
  { "win.toggle-warm", NULL, toggle_warm, WITH_WRITABLE },
  { "win.trim-turned", NULL, trim_turned, WITH_WRITABLE },
  { "win.trim", "d", turn_trim, WITH_PRACTICE },
  { "win.keep-settled", NULL, keep_settled, WITH_WRITABLE },
  { "win.hands-free", NULL, toggle_hands_free, WITH_WRITABLE },
  { "win.answer-first", NULL, answer, WITH_WRITABLE },
  { "win.answer-second", NULL, answer, WITH_WRITABLE },
  { "win.big-view", NULL, toggle_big_view, WITH_JOB },
  { "win.sound", NULL, toggle_sound, WITH_JOB },
  { "win.place", "s", set_place, WITH_JOB },
  { "win.ground", NULL, aim_ground, WITH_JOB },
  { "win.rail", "i", set_rail, WITH_JOB },
  { "win.next-rail", NULL, move_rail, WITH_JOB },
  { "win.previous-rail", NULL, move_rail, WITH_JOB },
  { "win.undo", NULL, undo, WITH_WRITABLE },
  { "win.redo", NULL, redo, WITH_WRITABLE },
  { "win.mark", NULL, mark, WITH_WRITABLE },
  { "win.note", NULL, rw_main_window_note, WITH_WRITABLE },
  { "win.take-check", NULL, take_check, WITH_WRITABLE },
  { "win.take-other", NULL, take_other, WITH_WRITABLE },
  { "win.take-second-other", NULL, take_other, WITH_WRITABLE },
  { "win.ask-another", NULL, ask_another, WITH_WRITABLE },
  { "win.symptoms", NULL, open_symptoms, WITH_WRITABLE },
  { "win.repair", NULL, rw_main_window_open_repairs, WITH_WRITABLE },
  { "win.other-chart", NULL, other_chart, WITH_JOB },
  { "win.zoom-in", NULL, zoom, WITH_JOB },
  { "win.zoom-out", NULL, zoom, WITH_JOB },
  { "win.zoom-fit", NULL, zoom, WITH_JOB },
  { "win.side", NULL, toggle_side, WITH_JOB },
  { "win.play", NULL, play, WITH_REPLAY },
  { "win.step-back", NULL, step, WITH_REPLAY },
  { "win.step-forward", NULL, step, WITH_REPLAY },
  { "win.faster", NULL, change_speed, WITH_REPLAY },
  { "win.slower", NULL, change_speed, WITH_REPLAY },
};

void
rw_main_window_install_actions (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, actions[i].parameter, actions[i].func);
}

static gboolean
is_time_for (RwMainWindow *self,
             When          when)
{
  switch (when)
    {
    case WITH_JOB:
      return self->job != NULL;
    case WITH_WRITABLE:
      return self->job != NULL && rw_job_can_write (self->job);
    case WITH_BENCH:
      return self->job != NULL && rw_job_get_mode (self->job) == RW_JOB_BENCH;
    case WITH_REPLAY:
      return self->job != NULL && rw_job_get_replay (self->job) != NULL;
    case WITH_PRACTICE:
      return self->job != NULL && rw_job_get_cabinet (self->job) != NULL;
    case ALWAYS:
    default:
      return TRUE;
    }
}

/* What depends on more than the kind of job. */
static gboolean
has_something_to_do (RwMainWindow *self,
                     const char   *name)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));
  const gboolean typing = GTK_IS_TEXT (focus) || GTK_IS_TEXT_VIEW (focus);
  RwSession *session = rw_job_get_session (self->job);

  if (g_str_equal (name, "win.undo"))
    return typing || rw_session_get_undo (session) != 0;
  if (g_str_equal (name, "win.redo"))
    return typing || rw_session_get_redo (session) != 0;
  if (g_str_equal (name, "win.keep-settled"))
    return rw_job_get_live (self->job)->has_value;
  return TRUE;
}

/* Called with every live value and key: only what changed is told to the toolkit. */
void
rw_main_window_update_actions (RwMainWindow *self)
{
  G_STATIC_ASSERT (G_N_ELEMENTS (actions) <= 64);

  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      const gboolean enabled = is_time_for (self, actions[i].when)
                               && (actions[i].when != WITH_WRITABLE || has_something_to_do (self, actions[i].name));
      const guint64 bit = G_GUINT64_CONSTANT (1) << i;

      if (self->enabled_known && enabled == ((self->enabled & bit) != 0))
        continue;
      self->enabled = enabled ? self->enabled | bit : self->enabled & ~bit;
      gtk_widget_action_set_enabled (GTK_WIDGET (self), actions[i].name, enabled);
    }
  self->enabled_known = TRUE;
}
