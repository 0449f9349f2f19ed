/* rw-main-window-class.c: the projector, and what a class sees on it: keys, menu, and the line that says it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is shown is decided in rw-projection.h. Nothing private goes over but by the one command that asks which.
 */
#include "config.h"

#include "rw-main-window-private.h"

#include <glib/gi18n-lib.h>

#include "rw-projection-words.h"
#include "rw-projector-window.h"

/* --- the line ------------------------------------------------------------------------------------- */

static void
show_words (RwMainWindow *self)
{
  const gboolean open = rw_projection_get_open (self->projection);
  g_autofree char *words = rw_projection_dup_words (self->projection);

  gtk_widget_set_visible (GTK_WIDGET (self->class_words), open);
  gtk_label_set_text (self->class_words, words);
  gtk_toggle_button_set_active (self->project_button, open);
}

/* --- the window ----------------------------------------------------------------------------------- */

static void
closed_cb (RwMainWindow *self)
{
  rw_projection_set_open (self->projection, FALSE);
}

static void
put_projector (RwMainWindow *self)
{
  g_autofree char *screen = self->settings != NULL ? g_settings_get_string (self->settings, "projector-screen")
                                                   : g_strdup ("");

  if (self->projector != NULL)
    rw_projector_window_put (RW_PROJECTOR_WINDOW (self->projector), screen);
}

static void
open_projector (RwMainWindow *self)
{
  rw_projection_set_open (self->projection, TRUE);
  self->projector = rw_projector_window_new (GTK_WINDOW (self), self->projection);
  g_object_add_weak_pointer (G_OBJECT (self->projector), (gpointer *) &self->projector);
  g_signal_connect_object (self->projector, "destroy", G_CALLBACK (closed_cb), self, G_CONNECT_SWAPPED);
  put_projector (self);
}

static void
close_projector (RwMainWindow *self)
{
  GtkWidget *projector = self->projector;

  if (projector == NULL)
    return;
  g_clear_weak_pointer (&self->projector);
  gtk_window_destroy (GTK_WINDOW (projector));
}

/* --- what the keys do ----------------------------------------------------------------------------- */

static void
project (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (self->projector != NULL)
    close_projector (self);
  else
    open_projector (self);
}

static void
blank (GtkWidget  *widget,
       const char *name,
       GVariant   *parameter)
{
  RwProjection *projection = RW_MAIN_WINDOW (widget)->projection;

  rw_projection_set_blank (projection, !rw_projection_get_blank (projection));
}

static void
freeze (GtkWidget  *widget,
        const char *name,
        GVariant   *parameter)
{
  RwProjection *projection = RW_MAIN_WINDOW (widget)->projection;

  rw_projection_set_frozen (projection, !rw_projection_get_frozen (projection));
}

/* The chosen rail; ground is none. (nullable) */
static const char *
chosen_rail (RwMainWindow *self)
{
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self->job), rw_job_get_rail (self->job));

  return rail != NULL ? rail->id : NULL;
}

static void
spotlight (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const char *rail = chosen_rail (self);
  const gboolean there = rail != NULL && g_strcmp0 (rw_projection_get_spotlight (self->projection), rail) == 0;

  rw_projection_set_spotlight (self->projection, there ? NULL : rail);
}

static void
hide_rail (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const char *rail = chosen_rail (self);

  if (rail != NULL)
    rw_projection_hide_rail (self->projection, rail, !rw_projection_is_hidden (self->projection, rail));
}

static void
next_part (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_projection_next_part (RW_MAIN_WINDOW (widget)->projection);
}

static void
enlarge (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  RwProjection *projection = RW_MAIN_WINDOW (widget)->projection;

  rw_projection_set_enlarged (projection, !rw_projection_get_enlarged (projection));
}

static void
other_theme (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const gboolean dark = !rw_projection_get_dark (self->projection);

  rw_projection_set_dark (self->projection, dark);
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, "projector-dark", dark);
}

/* --- sending over --------------------------------------------------------------------------------- */

static void
send_what (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);
  const int what = g_variant_get_int32 (parameter);

  gtk_popover_popdown (GTK_POPOVER (self->send_popover));
  if (what > RW_SENT_NOTHING && what < RW_N_PROJECTION_SENT)
    rw_projection_send (self->projection, (RwProjectionSent) what);
}

static GtkWidget *
make_send_button (RwProjectionSent what)
{
  static const char *const labels[RW_N_PROJECTION_SENT] = {
    [RW_SENT_NOTE] = N_ ("The last _note"),
    [RW_SENT_BELIEFS] = N_ ("The likely _causes"),
    [RW_SENT_ANSWER] = N_ ("The _answer"),
  };
  GtkWidget *button = gtk_button_new_with_mnemonic (_ (labels[what]));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.class-send-what");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "i", (gint32) what);
  return button;
}

static void
fill_send_popover (RwMainWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gboolean any = FALSE;

  for (RwProjectionSent what = RW_SENT_NOTE; what < RW_N_PROJECTION_SENT; what++)
    if (rw_projection_can_send (self->projection, what))
      {
        gtk_box_append (GTK_BOX (box), make_send_button (what));
        any = TRUE;
      }
  gtk_box_prepend (GTK_BOX (box), gtk_label_new (any ? _ ("Send to the class:") : _ ("There is nothing to send over yet")));
  gtk_popover_set_child (GTK_POPOVER (self->send_popover), box);
}

/* Asks which, in the window that the class does not see; what was sent over is taken back. */
static void
ask_send (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  RwMainWindow *self = RW_MAIN_WINDOW (widget);

  if (rw_projection_get_sent (self->projection) != RW_SENT_NOTHING)
    {
      rw_projection_send (self->projection, RW_SENT_NOTHING);
      return;
    }
  if (self->send_popover == NULL)
    {
      self->send_popover = gtk_popover_new ();
      gtk_widget_set_parent (self->send_popover, GTK_WIDGET (self->project_button));
    }
  fill_send_popover (self);
  gtk_window_present (GTK_WINDOW (self));
  gtk_popover_popup (GTK_POPOVER (self->send_popover));
}

/* --- screens -------------------------------------------------------------------------------------- */

static void
list_screen (RwMainWindow *self,
             const char   *title,
             const char   *screen)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (title, NULL);

  g_menu_item_set_action_and_target (item, "win.projector-screen", "s", screen);
  g_menu_append_item (self->screen_menu, item);
}

static void
list_screens (RwMainWindow *self)
{
  g_auto (GStrv) titles = NULL;
  g_auto (GStrv) names = rw_projector_window_list_screens (gtk_widget_get_display (GTK_WIDGET (self)), &titles);

  g_menu_remove_all (self->screen_menu);
  list_screen (self, _ ("The _other screen"), "");
  for (guint i = 0; names[i] != NULL; i++)
    list_screen (self, titles[i], names[i]);
  list_screen (self, _ ("None, a _window"), RW_PROJECTOR_NO_SCREEN);
}

/* --- the job -------------------------------------------------------------------------------------- */

static const struct
{
  const char                  *name;
  const char                  *parameter;
  GtkWidgetActionActivateFunc  func;
} actions[] = {
  { "win.class-project", NULL, project },     { "win.class-blank", NULL, blank },
  { "win.class-freeze", NULL, freeze },       { "win.class-spotlight", NULL, spotlight },
  { "win.class-hide-rail", NULL, hide_rail }, { "win.class-next-part", NULL, next_part },
  { "win.class-enlarge", NULL, enlarge },     { "win.class-theme", NULL, other_theme },
  { "win.class-send", NULL, ask_send },       { "win.class-send-what", "i", send_what },
};

void
rw_main_window_install_class_actions (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, actions[i].parameter, actions[i].func);
}

void
rw_main_window_add_class (RwMainWindow *self)
{
  GListModel *monitors = gdk_display_get_monitors (gtk_widget_get_display (GTK_WIDGET (self)));

  self->projection = rw_projection_new ();
  g_signal_connect_object (self->projection, "asked", G_CALLBACK (show_words), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (monitors, "items-changed", G_CALLBACK (list_screens), self, G_CONNECT_SWAPPED);
  list_screens (self);
}

void
rw_main_window_recall_class (RwMainWindow *self)
{
  g_autoptr (GAction) screen = g_settings_create_action (self->settings, "projector-screen");

  g_action_map_add_action (G_ACTION_MAP (self), screen);
  g_signal_connect_object (self->settings, "changed::projector-screen", G_CALLBACK (put_projector), self,
                           G_CONNECT_SWAPPED);
  rw_projection_set_dark (self->projection, g_settings_get_boolean (self->settings, "projector-dark"));
}

void
rw_main_window_show_class (RwMainWindow *self)
{
  rw_projection_set_job (self->projection, self->job);
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), actions[i].name, self->job != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->project_button), self->job != NULL);
  if (self->job == NULL)
    close_projector (self);
}

void
rw_main_window_drop_class (RwMainWindow *self)
{
  close_projector (self);
  g_clear_pointer (&self->send_popover, gtk_widget_unparent);
  g_clear_object (&self->projection);
}
