/* rw-safety-window.c: the cautions: before the first job, and whenever they are asked for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They come at each start until somebody says that he has read them. As a greeting the window is modal: it stands
 * before the first thing that can be done with the program, while no lead is anywhere yet.
 */
#include "config.h"

#include "rw-safety-window.h"

#include <glib/gi18n-lib.h>

#include "rw-window-size.h"

struct _RwSafetyWindow
{
  GtkWindow  parent_instance;
  GSettings *settings; /* (nullable) where it is noted that they were read */
  GtkWidget *read;     /* the button */
};

G_DEFINE_FINAL_TYPE (RwSafetyWindow, rw_safety_window, GTK_TYPE_WINDOW)

static const struct
{
  const char *title;
  const char *text;
} cautions[] = {
  { N_ ("An aid, no safety device"),
    N_ ("What a meter shows, and what this program makes of it, is no proof that a circuit is dead. The local code and "
        "licensed practice decide what you may do; where they and this program differ, they are right.") },
  { N_ ("Mains"),
    N_ ("The mains screws of a cabinet supply sit within a few centimetres of the DC ones: cover them before you probe. Pull "
        "the plug itself: a switch may open one wire only, or sit behind the filter. Cords, outlets, line filters, "
        "transformer taps and the inside of supplies are for trained people, licensed where the law says so.") },
  { N_ ("Charged capacitors"),
    N_ ("Inside a switching supply some 300 V stay for minutes after the plug is out. Only trained people open it, "
        "discharge through a resistor, never with a screwdriver, and measure afterwards.") },
  { N_ ("Picture tube"),
    N_ ("The tube holds up to 25 kV, an hour and more after switching off, and its neck is thin glass. No low-voltage "
        "reading ever needs a hand within 15 cm of the neck, the red anode lead or the monitor chassis. If one seems "
        "to: stop.") },
  { N_ ("Before power"),
    N_ ("The earth pin is there, and every metal part one can touch is joined to it. A residual-current device (30 mA) "
        "guards the outlet. An isolating transformer does not make mains safe, and makes that device blind. Rings and "
        "watch are off, the floor is dry. Do not work alone.") },
  { N_ ("While probing"),
    N_ ("Clip the black lead on and keep one hand out. Use a meter and leads made for mains work (CAT II 300 V at "
        "least) with shrouded tips. Never pull or plug a board with the power on. A tingle from a door or panel is a "
        "mains fault: pull the plug and let a qualified person look.") },
  { N_ ("In a class"),
    N_ ("The teacher looks over every connection before power comes on; nobody changes wiring with the power on, and one "
        "person is in charge of the switch. Pupils stay on the low-voltage side, with the supply in a closed box.") },
};

static void
rw_safety_window_dispose (GObject *object)
{
  g_clear_object (&RW_SAFETY_WINDOW (object)->settings);
  G_OBJECT_CLASS (rw_safety_window_parent_class)->dispose (object);
}

static void
rw_safety_window_class_init (RwSafetyWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_safety_window_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
read_cb (RwSafetyWindow *self)
{
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, "safety-page-seen", TRUE);
  gtk_window_close (GTK_WINDOW (self));
}

static void
add_words (GtkWidget  *box,
           const char *text,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_width_chars (GTK_LABEL (label), css_class == NULL ? 66 : -1);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 90);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
}

static void
set_margins (GtkWidget *widget)
{
  gtk_widget_set_margin_top (widget, 18);
  gtk_widget_set_margin_bottom (widget, 18);
  gtk_widget_set_margin_start (widget, 18);
  gtk_widget_set_margin_end (widget, 18);
}

static GtkWidget *
make_page (void)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  set_margins (box);
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER); /* lines stay short enough to read in a large window */
  for (guint i = 0; i < G_N_ELEMENTS (cautions); i++)
    {
      add_words (box, _ (cautions[i].title), i == 0 ? "safety" : "section");
      gtk_widget_set_margin_top (gtk_widget_get_last_child (box), i > 0 ? 6 : 0);
      add_words (box, _ (cautions[i].text), NULL);
    }
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
rw_safety_window_init (RwSafetyWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->read = gtk_button_new_with_label (_ ("I have read this"));
  gtk_box_append (GTK_BOX (box), make_page ());
  gtk_widget_set_halign (self->read, GTK_ALIGN_END);
  set_margins (self->read);
  gtk_widget_add_css_class (self->read, "suggested-action");
  g_signal_connect_swapped (self->read, "clicked", G_CALLBACK (read_cb), self);
  gtk_box_append (GTK_BOX (box), self->read);
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Safety"));
  rw_window_size_set (GTK_WINDOW (self), 760, 700);
  gtk_window_set_default_widget (GTK_WINDOW (self), self->read);
  gtk_window_set_focus (GTK_WINDOW (self), self->read);
}

GtkWidget *
rw_safety_window_new (GtkWindow *parent,
                      GSettings *settings)
{
  RwSafetyWindow *self = g_object_new (RW_TYPE_SAFETY_WINDOW, "transient-for", parent, NULL);

  if (settings != NULL)
    self->settings = g_object_ref (settings);
  return GTK_WIDGET (self);
}
