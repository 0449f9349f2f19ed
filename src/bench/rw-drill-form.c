/* rw-drill-form.c: asks for the level and the seed of a drill.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-drill-form.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-practice-drill.h"
#include "rw-window-size.h"

struct _RwDrillForm
{
  GtkWindow       parent_instance;
  GtkDropDown    *level;
  GtkEntry       *code;
  GtkCheckButton *suggestions;
  GtkLabel       *problem;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwDrillForm, rw_drill_form, GTK_TYPE_WINDOW)

/* A code that somebody shared brings its level along. */
static void
start_cb (RwDrillForm *self)
{
  guint level = gtk_drop_down_get_selected (self->level) + 1;
  guint64 seed;

  if (!rw_practice_drill_parse_code (gtk_editable_get_text (GTK_EDITABLE (self->code)), &level, &seed))
    {
      gtk_label_set_text (self->problem, _ ("Type a whole number, or a code such as 2-4711."));
      gtk_widget_set_visible (GTK_WIDGET (self->problem), TRUE);
      gtk_widget_grab_focus (GTK_WIDGET (self->code));
      return;
    }
  g_signal_emit (self, chosen_signal, 0, level, seed, gtk_check_button_get_active (self->suggestions));
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
rw_drill_form_class_init (RwDrillFormClass *klass)
{
  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 3,
                                G_TYPE_UINT, G_TYPE_UINT64, G_TYPE_BOOLEAN);
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
add_row (GtkGrid    *grid,
         int         row,
         const char *name,
         GtkWidget  *widget)
{
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, widget, 1, row, 1, 1);
}

static GtkWidget *
make_grid (RwDrillForm *self)
{
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());
  const char *const levels[] = { rw_practice_drill_level_label (1), rw_practice_drill_level_label (2),
                                 rw_practice_drill_level_label (3), NULL };

  self->level = GTK_DROP_DOWN (gtk_drop_down_new_from_strings (levels));
  rw_compat_name_drop_down (self->level, _ ("Level"));
  self->code = GTK_ENTRY (gtk_entry_new ());
  gtk_entry_set_activates_default (self->code, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->code), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Seed"), -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->code), _ ("The same level and seed are the same cabinet on every machine"));
  self->suggestions = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_ ("With suggestions")));
  gtk_check_button_set_active (self->suggestions, TRUE);
  gtk_grid_set_row_spacing (grid, 6);
  gtk_grid_set_column_spacing (grid, 12);
  add_row (grid, 0, _ ("Level"), GTK_WIDGET (self->level));
  add_row (grid, 1, _ ("Seed"), GTK_WIDGET (self->code));
  gtk_grid_attach (grid, GTK_WIDGET (self->suggestions), 1, 2, 1, 1);
  return GTK_WIDGET (grid);
}

static GtkWidget *
make_buttons (RwDrillForm *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *cancel = gtk_button_new_with_label (_ ("Cancel")), *start = gtk_button_new_with_label (_ ("Start the drill"));

  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_widget_add_css_class (start, "suggested-action");
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), self);
  g_signal_connect_swapped (start, "clicked", G_CALLBACK (start_cb), self);
  gtk_box_append (GTK_BOX (box), cancel);
  gtk_box_append (GTK_BOX (box), start);
  gtk_window_set_default_widget (GTK_WINDOW (self), start);
  return box;
}

static void
rw_drill_form_init (RwDrillForm *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  self->problem = GTK_LABEL (gtk_label_new (""));
  gtk_label_set_xalign (self->problem, 0);
  gtk_label_set_wrap (self->problem, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->problem), "safety");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), FALSE);
  gtk_box_append (GTK_BOX (box), make_grid (self));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->problem));
  gtk_box_append (GTK_BOX (box), make_buttons (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("New drill"));
  gtk_window_set_modal (GTK_WINDOW (self), TRUE);
  gtk_window_set_resizable (GTK_WINDOW (self), FALSE);
  rw_window_size_set (GTK_WINDOW (self), 420, -1);
}

GtkWidget *
rw_drill_form_new (GtkWindow *parent,
                   guint64    seed)
{
  RwDrillForm *self = g_object_new (RW_TYPE_DRILL_FORM, "transient-for", parent, NULL);
  g_autofree char *text = g_strdup_printf ("%" G_GUINT64_FORMAT, seed);

  gtk_editable_set_text (GTK_EDITABLE (self->code), text);
  gtk_widget_grab_focus (GTK_WIDGET (self->code));
  return GTK_WIDGET (self);
}
