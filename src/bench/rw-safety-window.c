/* rw-safety-window.c: the cautions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-safety-window.h"

#include <glib/gi18n-lib.h>

struct _RwSafetyWindow
{
  GtkWindow parent_instance;
};

G_DEFINE_FINAL_TYPE (RwSafetyWindow, rw_safety_window, GTK_TYPE_WINDOW)

static const char *const cautions[] = {
  N_ ("This program is an aid, no safety device. What a meter shows, and what the program makes of it, is no proof "
      "that a circuit is dead. Local rules and licensed practice decide."),
  N_ ("Mains. The mains screws of a cabinet supply sit beside the DC ones: cover them before you probe. Inside a "
      "switching supply some 300 V stay for minutes after the plug is out. Work on cords, outlets, line filters, "
      "transformer taps and the inside of supplies is for trained people, licensed where the law says so."),
  N_ ("Picture tube. The tube holds up to 25 kV, an hour and more after switching off, and its neck is thin glass. No "
      "low-voltage reading ever needs a hand within a hand's breadth of the neck, the red anode lead or the monitor "
      "chassis. If one seems to: stop."),
  N_ ("Before power: the earth pin is there and every metal part one can touch is joined to it; a residual-current "
      "device guards the outlet; rings and watch are off; somebody else is in the room."),
  N_ ("While probing: clip the black lead on, keep one hand out, use shrouded tips, stand dry. Never pull or plug a "
      "board with the power on."),
  N_ ("A shock or tingle from a door or panel is a mains fault. Pull the plug and let a qualified person look."),
};

static void
rw_safety_window_class_init (RwSafetyWindowClass *klass)
{
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_safety_window_init (RwSafetyWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *close = gtk_button_new_with_label (_ ("I have read this"));

  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  for (guint i = 0; i < G_N_ELEMENTS (cautions); i++)
    {
      GtkWidget *label = gtk_label_new (_ (cautions[i]));

      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_max_width_chars (GTK_LABEL (label), 72);
      gtk_box_append (GTK_BOX (box), label);
    }
  gtk_widget_set_halign (close, GTK_ALIGN_END);
  gtk_widget_add_css_class (close, "suggested-action");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (close), "window.close");
  gtk_box_append (GTK_BOX (box), close);
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Safety"));
  gtk_window_set_resizable (GTK_WINDOW (self), FALSE);
  gtk_window_set_default_widget (GTK_WINDOW (self), close);
}

GtkWidget *
rw_safety_window_new (GtkWindow *parent)
{
  return g_object_new (RW_TYPE_SAFETY_WINDOW, "transient-for", parent, NULL);
}
