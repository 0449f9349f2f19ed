/* rw-practice-bar.c: hands on the practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-bar.h"

#include <glib/gi18n-lib.h>

#include "rw-drill.h"
#include "rw-practice-view-scene.h"
#include "rw-practice-window.h"
#include "rw-wrap-box.h"

struct _RwPracticeBar
{
  GtkWidget        parent_instance;
  RwJob           *job;
  GtkWidget       *box;
  GtkToggleButton *power;
  GtkToggleButton *board;
  GtkLabel        *status;
  GtkWidget       *bench;   /* its window; NULL: not open */
  gboolean         filling; /* the toggles follow the cabinet, not a person */
};

G_DEFINE_FINAL_TYPE (RwPracticeBar, rw_practice_bar, GTK_TYPE_WIDGET)

static void
refresh (RwPracticeBar *self)
{
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (self->job);
  const guint resets = rw_practice_cabinet_get_resets (cabinet);
  g_autofree char *count = g_strdup_printf (ngettext ("%u reset so far", "%u resets so far", resets), resets);
  g_autofree char *text = g_strdup_printf ("%s · %s", rw_practice_scene_board_words (cabinet), count);

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

static void
new_drill_cb (RwPracticeBar *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.new-drill", NULL);
}

static void
end_drill_cb (RwPracticeBar *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.end-drill", NULL);
}

static void
close_bench (RwPracticeBar *self)
{
  GtkWidget *bench = self->bench;

  g_clear_weak_pointer (&self->bench);
  if (bench != NULL)
    gtk_window_destroy (GTK_WINDOW (bench));
}

void
rw_practice_bar_open_bench (RwPracticeBar *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  g_return_if_fail (RW_IS_PRACTICE_BAR (self));
  if (self->job == NULL || !GTK_IS_WINDOW (root))
    return;
  if (self->bench == NULL)
    {
      g_set_weak_pointer (&self->bench, rw_practice_window_new (GTK_WINDOW (root), self->job));
      rw_practice_window_set_drill (RW_PRACTICE_WINDOW (self->bench), rw_drill_of (self->job) != NULL);
      g_signal_connect_object (self->bench, "new-drill", G_CALLBACK (new_drill_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (self->bench, "end-drill", G_CALLBACK (end_drill_cb), self, G_CONNECT_SWAPPED);
    }
  gtk_window_present (GTK_WINDOW (self->bench));
}

void
rw_practice_bar_set_job (RwPracticeBar *self,
                         RwJob         *job)
{
  g_return_if_fail (RW_IS_PRACTICE_BAR (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  if (self->job != job)
    close_bench (self);
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

  close_bench (self);
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_PRACTICE_BAR);
  G_OBJECT_CLASS (rw_practice_bar_parent_class)->dispose (object);
}

static void
rw_practice_bar_class_init (RwPracticeBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_practice_bar_dispose;
  g_type_ensure (RW_TYPE_WRAP_BOX);
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
