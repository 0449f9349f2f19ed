/* rw-main-window-lesson.c: "call it first" and lessons: their keys, the panel, and the bar.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * While a lesson runs, Page Down and Page Up page through it wherever the focus is, here and in the projector's window,
 * which hands on the keys that it does not know: a presenter's clicker sends nothing else.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-lesson-begin.h"
#include "rw-lesson-chooser.h"

/* A page of the side without a title, so that it has no button in the switcher. */
static const char panel_page[] = "calls";

static void
say (RwMainWindow *self,
     const char   *text)
{
  rw_banner_show (self->banner, RW_BANNER_QUIET, text, _ ("All right"), NULL);
}

/* --- the calls ------------------------------------------------------------------------------------ */

static gboolean
sees_panel (RwMainWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->sides), panel_page) == 0;
}

static void
close_panel (RwMainWindow *self)
{
  if (!sees_panel (self))
    return;
  gtk_stack_set_visible_child_name (self->sides, self->side_before != NULL ? self->side_before : "diagnosis");
  rw_entry_row_focus (self->entry);
}

/* In place of the side, whose causes would be a hint. */
static void
show_panel (RwMainWindow *self)
{
  if (!sees_panel (self))
    {
      g_free (self->side_before);
      self->side_before = g_strdup (gtk_stack_get_visible_child_name (self->sides));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->call_panel), TRUE);
  gtk_stack_set_visible_child_name (self->sides, panel_page);
  rw_main_window_show_side (self, TRUE);
}

static void
open_panel (RwMainWindow *self)
{
  show_panel (self);
  rw_call_panel_begin (self->call_panel);
}

static void
call (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->job != NULL)
    open_panel (self);
}

static void
reveal (GtkWidget  *widget,
        const char *name,
        GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->job == NULL)
    return;
  show_panel (self);
  rw_call_panel_refresh (self->call_panel);
  rw_call_desk_reveal (self->call_desk);
  if (rw_call_desk_get_waiting (self->call_desk))
    rw_entry_row_focus (self->entry);
}

static GtkWidget *
make_curtain (void)
{
  GtkWidget *label = gtk_label_new (_ ("Hidden until the calls are revealed"));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_vexpand (label, TRUE);
  return label;
}

/* A curtain in place of the charts, or none. The charts are kept by a reference of their own while it hangs. */
static void
hang_curtain (RwMainWindow *self,
              gboolean      hang)
{
  if (hang == (self->charts_frame != NULL))
    return;
  if (hang)
    {
      self->charts_frame = GTK_FRAME (gtk_widget_get_parent (GTK_WIDGET (self->charts)));
      g_object_ref (self->charts);
      gtk_frame_set_child (self->charts_frame, make_curtain ());
      return;
    }
  gtk_frame_set_child (self->charts_frame, GTK_WIDGET (self->charts));
  g_object_unref (self->charts);
  self->charts_frame = NULL;
}

/* What would give the answer away in a window that the class looks at: the card, the charts, what the meter shows or
 * showed, and what the sentence expects. */
static void
hide_here_cb (RwMainWindow *self)
{
  const char *rail = self->job != NULL ? rw_call_panel_get_hidden_here (self->call_panel) : NULL;

  rw_rail_strip_hide (self->strip, rail);
  rw_entry_row_set_veiled (self->entry, rail != NULL);
  rw_replay_bar_hide_rail (self->replay_bar, rail);
  hang_curtain (self, rail != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->meter_button), self->job != NULL && rail == NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->sentence), rail == NULL && *gtk_label_get_text (self->sentence) != '\0');
}

/* --- lessons -------------------------------------------------------------------------------------- */

static void
chosen_cb (RwMainWindow *self,
           RwLesson     *lesson)
{
  g_autoptr (GError) error = NULL;
  RwJob *job = rw_lesson_begin (lesson, &error);

  if (job == NULL)
    {
      rw_banner_show (self->banner, RW_BANNER_WARNING, error->message, _ ("All right"), NULL);
      return;
    }
  rw_main_window_set_job (self, job);
  rw_entry_row_focus (self->entry);
  rw_lesson_pager_begin (self->pager, lesson, job);
}

static void
choose_lesson (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  GtkWidget *chooser = rw_lesson_chooser_new (GTK_WINDOW (self));

  g_signal_connect_object (chooser, "chosen", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (chooser));
}

static void
page (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  rw_lesson_pager_page (RW_MAIN_WINDOW (widget)->pager, g_str_equal (name, "win.lesson-next"));
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwMainWindow          *self)
{
  const gboolean forward = keyval == GDK_KEY_Page_Down || keyval == GDK_KEY_KP_Page_Down;

  if (rw_lesson_pager_get_job (self->pager) == NULL
      || (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK | GDK_SHIFT_MASK)) != 0
      || (!forward && keyval != GDK_KEY_Page_Up && keyval != GDK_KEY_KP_Page_Up))
    return FALSE;
  rw_lesson_pager_page (self->pager, forward);
  return TRUE;
}

static void
called_cb (RwMainWindow *self)
{
  open_panel (self);
}

/* --- the parts ------------------------------------------------------------------------------------ */

void
rw_main_window_install_lesson_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.call", NULL, call);
  gtk_widget_class_install_action (widget_class, "win.reveal", NULL, reveal);
  gtk_widget_class_install_action (widget_class, "win.lesson", NULL, choose_lesson);
  gtk_widget_class_install_action (widget_class, "win.lesson-next", NULL, page);
  gtk_widget_class_install_action (widget_class, "win.lesson-previous", NULL, page);
}

static void
add_panel (RwMainWindow *self)
{
  self->call_panel = RW_CALL_PANEL (rw_call_panel_new (self->call_desk, self->projection));
  gtk_stack_add_named (self->sides, GTK_WIDGET (self->call_panel), panel_page);
  g_signal_connect_swapped (self->call_panel, "close", G_CALLBACK (close_panel), self);
  g_signal_connect_swapped (self->call_panel, "hide-here", G_CALLBACK (hide_here_cb), self);
}

static void
add_pager (RwMainWindow *self)
{
  GtkWidget *column = gtk_widget_get_parent (GTK_WIDGET (self->stack));

  self->pager = RW_LESSON_PAGER (rw_lesson_pager_new (self->call_desk, self->projection));
  gtk_box_insert_child_after (GTK_BOX (column), GTK_WIDGET (self->pager), gtk_widget_get_prev_sibling (GTK_WIDGET (self->stack)));
  g_signal_connect_swapped (self->pager, "called", G_CALLBACK (called_cb), self);
}

void
rw_main_window_add_lesson (RwMainWindow *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  self->call_desk = rw_call_desk_new (self->projection);
  g_signal_connect_object (self->call_desk, "say", G_CALLBACK (say), self, G_CONNECT_SWAPPED);
  add_panel (self);
  add_pager (self);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
}

void
rw_main_window_show_lesson (RwMainWindow *self)
{
  rw_lesson_pager_end (self->pager);
  close_panel (self);
  rw_call_desk_set_job (self->call_desk, self->job);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.call", self->job != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.reveal", self->job != NULL);
}

void
rw_main_window_drop_lesson (RwMainWindow *self)
{
  if (self->charts_frame != NULL)
    hang_curtain (self, FALSE);
  g_clear_object (&self->call_desk);
  g_clear_pointer (&self->side_before, g_free);
}
