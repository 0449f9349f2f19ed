/* rw-main-window-stages.c: the side of the bring-up: its switch, its keys, and what it says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Letters that ask for the next thing to do, or answer, mean the side that is seen.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

static gboolean
sees_stages (RwMainWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->sides), "stages") == 0;
}

static void
switch_side (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  gtk_stack_set_visible_child_name (self->sides, sees_stages (self) ? "diagnosis" : "stages");
  rw_main_window_show_side (self, TRUE);
}

void
rw_main_window_show_diagnosis (RwMainWindow *self)
{
  gtk_stack_set_visible_child_name (self->sides, "diagnosis");
  rw_main_window_show_side (self, TRUE);
}

static void
go_on (GtkWidget  *widget,
       const char *name,
       GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->job != NULL && sees_stages (self))
    rw_stage_side_go_on (self->stages);
}

static void
go_against (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->job != NULL && sees_stages (self))
    rw_stage_side_ask_why (self->stages);
}

static void
save_label (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->job != NULL)
    rw_stage_side_save_label (self->stages);
}

static void
save_record (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->job != NULL)
    rw_stage_side_save_record (self->stages);
}

void
rw_main_window_install_stage_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.other-side", NULL, switch_side);
  gtk_widget_class_install_action (widget_class, "win.stage-on", NULL, go_on);
  gtk_widget_class_install_action (widget_class, "win.stage-against", NULL, go_against);
  gtk_widget_class_install_action (widget_class, "win.save-label", NULL, save_label);
  gtk_widget_class_install_action (widget_class, "win.save-record", NULL, save_record);
}

gboolean
rw_main_window_take_stage_spot (RwMainWindow *self)
{
  if (!sees_stages (self))
    return FALSE;
  rw_stage_side_take_spot (self->stages);
  return TRUE;
}

void
rw_main_window_answer_stage (RwMainWindow *self,
                             gboolean      yes)
{
  if (sees_stages (self))
    rw_stage_side_answer (self->stages, yes);
}

static void
say_cb (RwMainWindow *self,
        gboolean      trouble,
        const char   *text)
{
  rw_banner_show (self->banner, trouble ? RW_BANNER_WARNING : RW_BANNER_QUIET, text, _ ("Close"), NULL);
}

static void
aimed_cb (RwMainWindow *self)
{
  rw_entry_row_focus (self->entry);
}

void
rw_main_window_add_stages (RwMainWindow *self)
{
  g_signal_connect_swapped (self->stages, "say", G_CALLBACK (say_cb), self);
  g_signal_connect_swapped (self->stages, "aimed", G_CALLBACK (aimed_cb), self);
}

void
rw_main_window_show_stages (RwMainWindow *self)
{
  static const char *const names[]
      = { "win.other-side", "win.stage-on", "win.stage-against", "win.save-label", "win.save-record" };

  rw_stage_side_set_job (self->stages, self->job);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), names[i], self->job != NULL);
}
