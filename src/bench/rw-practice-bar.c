/* rw-practice-bar.c: hands on the practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-bar.h"

#include <glib/gi18n-lib.h>

struct _RwPracticeBar
{
  GtkWidget        parent_instance;
  RwJob           *job;
  GtkWidget       *box;
  GtkToggleButton *power;
  GtkToggleButton *board;
  GtkLabel        *status;
  gboolean         filling; /* the toggles follow the cabinet, not a person */
};

G_DEFINE_FINAL_TYPE (RwPracticeBar, rw_practice_bar, GTK_TYPE_WIDGET)

static const char *
board_words (RwPracticeCabinet *cabinet)
{
  if (rw_practice_cabinet_get_tripped (cabinet))
    return _ ("the supply has tripped: switch off for a while");
  if (!rw_practice_cabinet_get_power (cabinet))
    return _ ("off");
  if (rw_practice_cabinet_get_ticking (cabinet))
    return _ ("the supply ticks");
  if (!rw_practice_cabinet_get_board_fitted (cabinet))
    return _ ("on, board out");
  switch (rw_practice_cabinet_get_board_state (cabinet))
    {
    case RW_PRACTICE_BOARD_RUNNING:
      return _ ("the game runs");
    case RW_PRACTICE_BOARD_RESET:
      return _ ("▲ the game resets");
    case RW_PRACTICE_BOARD_DEAD:
    default:
      return _ ("▲ nothing on the screen");
    }
}

static void
refresh (RwPracticeBar *self)
{
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (self->job);
  const guint resets = rw_practice_cabinet_get_resets (cabinet);
  g_autofree char *count = g_strdup_printf (ngettext ("%u reset so far", "%u resets so far", resets), resets);
  g_autofree char *text = g_strdup_printf ("%s · %s", board_words (cabinet), count);

  self->filling = TRUE;
  gtk_toggle_button_set_active (self->power, rw_practice_cabinet_get_power (cabinet));
  gtk_toggle_button_set_active (self->board, rw_practice_cabinet_get_board_fitted (cabinet));
  self->filling = FALSE;
  gtk_label_set_text (self->status, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->status), text);
}

static void
power_cb (RwPracticeBar *self)
{
  if (!self->filling)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.toggle-power", NULL);
}

static void
board_cb (RwPracticeBar *self)
{
  if (!self->filling)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.toggle-board", NULL);
  refresh (self); /* a refusal leaves the toggle as the cabinet is */
}

void
rw_practice_bar_set_job (RwPracticeBar *self,
                         RwJob         *job)
{
  g_return_if_fail (RW_IS_PRACTICE_BAR (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  g_signal_connect_object (job, "tick", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}

static void
rw_practice_bar_dispose (GObject *object)
{
  RwPracticeBar *self = RW_PRACTICE_BAR (object);

  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_PRACTICE_BAR);
  G_OBJECT_CLASS (rw_practice_bar_parent_class)->dispose (object);
}

static void
rw_practice_bar_class_init (RwPracticeBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_practice_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-practice-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, RwPracticeBar, box);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeBar, power);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeBar, board);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeBar, status);
}

static void
rw_practice_bar_init (RwPracticeBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->power, "toggled", G_CALLBACK (power_cb), self);
  g_signal_connect_swapped (self->board, "toggled", G_CALLBACK (board_cb), self);
}
