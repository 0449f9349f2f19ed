/* rw-tab-out.c: lets Tab leave a list at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GTK 4.8 gives every row of a list a stop of its own. Before the list sees the key, the focus goes to the
 * next (or previous) control in the order of the widget tree, seen from the list.
 */
#include "config.h"

#include "rw-tab-out.h"

static gboolean
leave (GtkWidget       *list,
       GtkDirectionType direction)
{
  GtkRoot *root = gtk_widget_get_root (list);

  if (root == NULL)
    return FALSE;
  gtk_widget_set_can_focus (list, FALSE);
  gtk_root_set_focus (root, NULL);

  /* The search goes on from where the list stands: climb until a parent finds somebody. */
  gboolean moved = FALSE;

  for (GtkWidget *child = list, *parent = gtk_widget_get_parent (list); parent != NULL && !moved;
       child = parent, parent = gtk_widget_get_parent (parent))
    {
      GtkWidget *next = direction == GTK_DIR_TAB_FORWARD ? gtk_widget_get_next_sibling (child)
                                                         : gtk_widget_get_prev_sibling (child);

      for (; next != NULL && !moved;
           next = direction == GTK_DIR_TAB_FORWARD ? gtk_widget_get_next_sibling (next)
                                                   : gtk_widget_get_prev_sibling (next))
        if (gtk_widget_get_child_visible (next) && gtk_widget_get_visible (next))
          moved = gtk_widget_child_focus (next, direction);
    }
  if (!moved)
    moved = gtk_widget_child_focus (GTK_WIDGET (root), direction);
  gtk_widget_set_can_focus (list, TRUE);
  return moved;
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        gpointer               data)
{
  GtkWidget *list = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));

  if ((modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if (keyval == GDK_KEY_ISO_Left_Tab || (keyval == GDK_KEY_Tab && (modifiers & GDK_SHIFT_MASK) != 0))
    return leave (list, GTK_DIR_TAB_BACKWARD);
  if (keyval == GDK_KEY_Tab || keyval == GDK_KEY_KP_Tab)
    return leave (list, GTK_DIR_TAB_FORWARD);
  return FALSE;
}

void
rw_tab_out_install (GtkWidget *list)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), NULL);
  gtk_widget_add_controller (list, key);
}
