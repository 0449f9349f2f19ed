/* rw-replay-bar.c: plays a saved session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-replay-bar.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-compat.h"
#include "rw-quantity.h"

struct _RwReplayBar
{
  GtkWidget      parent_instance;
  RwJob         *job;
  RwReplay      *replay; /* the job's; borrowed */
  GtkWidget     *box;
  GtkButton     *back;
  GtkButton     *play;
  GtkButton     *forward;
  GtkDropDown   *speed;
  GtkScale      *scrub;
  GtkAdjustment *adjustment;
  GtkLabel      *clock;
  GtkLabel      *now;
  gboolean       filling; /* controls follow the replay, not a person */
};

G_DEFINE_FINAL_TYPE (RwReplayBar, rw_replay_bar, GTK_TYPE_WIDGET)

static const double speeds[] = { 0.5, 1, 2, 5, 10, 30, 60 };

static guint
nearest_speed (double speed)
{
  guint best = 0;

  for (guint i = 1; i < G_N_ELEMENTS (speeds); i++)
    if (fabs (log (speeds[i] / speed)) < fabs (log (speeds[best] / speed)))
      best = i;
  return best;
}

/* What happened last, in words; samples are passed over. */
static char *
describe_last (RwReplayBar *self)
{
  RwSession *session = rw_replay_get_target (self->replay);
  const guint n = rw_session_get_n_landmarks (session);

  if (n == 0)
    return g_strdup (_ ("Replay of a saved file: nothing is written."));

  const RwEvent *event = rw_session_get_event (session, rw_session_get_landmark (session, n - 1));
  g_autofree char *what = rw_job_describe (self->job, event);

  /* Translators: what happened last in the replay. */
  return g_strdup_printf (_ ("Replay of a saved file: nothing is written. Last: %s"), what);
}

static void
moved_cb (RwReplayBar *self)
{
  const double length = rw_replay_get_length (self->replay);
  const double position = rw_replay_get_position (self->replay);
  g_autofree char *at = rw_quantity_format_clock (position);
  g_autofree char *of = rw_quantity_format_clock (length);
  g_autofree char *clock = g_strdup_printf ("%s / %s", at, of);
  g_autofree char *last = describe_last (self);

  self->filling = TRUE;
  gtk_adjustment_set_upper (self->adjustment, length);
  gtk_adjustment_set_value (self->adjustment, position);
  gtk_drop_down_set_selected (self->speed, nearest_speed (rw_replay_get_speed (self->replay)));
  self->filling = FALSE;
  gtk_label_set_text (self->clock, clock);
  gtk_label_set_text (self->now, last);
  gtk_button_set_label (self->play, rw_replay_get_playing (self->replay) ? _ ("Pause") : _ ("Play"));
}

static void
scrubbed_cb (RwReplayBar *self)
{
  if (self->filling || self->replay == NULL)
    return;
  rw_replay_seek (self->replay, gtk_adjustment_get_value (self->adjustment));
}

static void
speed_cb (RwReplayBar *self)
{
  if (self->filling || self->replay == NULL)
    return;
  rw_replay_set_speed (self->replay, speeds[MIN (gtk_drop_down_get_selected (self->speed), G_N_ELEMENTS (speeds) - 1)]);
}

void
rw_replay_bar_change_speed (RwReplayBar *self,
                            int          by)
{
  if (self->replay == NULL)
    return;

  const int at = (int) nearest_speed (rw_replay_get_speed (self->replay)) + by;

  rw_replay_set_speed (self->replay, speeds[CLAMP (at, 0, (int) G_N_ELEMENTS (speeds) - 1)]);
}

void
rw_replay_bar_set_job (RwReplayBar *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_REPLAY_BAR (self));
  if (self->replay != NULL)
    g_signal_handlers_disconnect_by_data (self->replay, self);
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  self->replay = job != NULL ? rw_job_get_replay (job) : NULL;
  if (self->replay == NULL)
    return;
  g_signal_connect_object (self->replay, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "advice", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED); /* it brings the words */
  moved_cb (self);
}

static void
rw_replay_bar_dispose (GObject *object)
{
  RwReplayBar *self = RW_REPLAY_BAR (object);

  self->replay = NULL;
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_REPLAY_BAR);
  G_OBJECT_CLASS (rw_replay_bar_parent_class)->dispose (object);
}

static void
rw_replay_bar_class_init (RwReplayBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_replay_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-replay-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, box);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, back);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, play);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, forward);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, speed);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, scrub);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, adjustment);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, clock);
  gtk_widget_class_bind_template_child (widget_class, RwReplayBar, now);
}

static void
rw_replay_bar_init (RwReplayBar *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (speeds); i++)
    {
      g_autofree char *number = rw_quantity_format_number (speeds[i], speeds[i] < 1 ? 1 : 0);
      g_autofree char *name = g_strdup_printf ("×%s", number);

      gtk_string_list_append (names, name);
    }
  self->filling = TRUE;
  gtk_drop_down_set_model (self->speed, G_LIST_MODEL (names));
  self->filling = FALSE;
  rw_compat_name_drop_down (self->speed, _ ("Speed"));
  g_signal_connect_swapped (self->adjustment, "value-changed", G_CALLBACK (scrubbed_cb), self);
  g_signal_connect_swapped (self->speed, "notify::selected", G_CALLBACK (speed_cb), self);
}
