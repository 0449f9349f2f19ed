/* rw-compare-chooser.c: with which other session?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-chooser.h"

#include <glib/gi18n-lib.h>

#include "rw-compare-others.h"
#include "rw-paths.h"

struct _RwCompareChooser
{
  GtkWindow  parent_instance;
  GPtrArray *others; /* of RwCompareOther; a row each */
  RwPathFunc func;
  gpointer   user_data;
};

G_DEFINE_FINAL_TYPE (RwCompareChooser, rw_compare_chooser, GTK_TYPE_WINDOW)

static void
ask_file (GtkWindow *parent,
          RwPathFunc func,
          gpointer   user_data)
{
  rw_compat_open_file (parent, _ ("Compare with a session"), _ ("Sessions"), "*.rwlog", func, user_data);
}

static void
chosen_cb (GtkListBox       *list,
           GtkListBoxRow    *row,
           RwCompareChooser *self)
{
  const RwCompareOther *other = self->others->pdata[gtk_list_box_row_get_index (row)];
  g_autofree char *path = g_strdup (other->path);
  const RwPathFunc func = self->func;
  gpointer user_data = self->user_data;

  gtk_window_destroy (GTK_WINDOW (self));
  func (path, user_data);
}

static void
other_file_cb (GtkButton        *button,
               RwCompareChooser *self)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
  const RwPathFunc func = self->func;
  gpointer user_data = self->user_data;

  gtk_window_destroy (GTK_WINDOW (self));
  ask_file (parent, func, user_data);
}

static GtkWidget *
make_row (const RwCompareOther *other)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *when = g_date_time_format (other->started, "%Y-%m-%d %H:%M UTC");
  g_autofree char *name = g_path_get_basename (other->path);
  g_autofree char *shown = g_filename_display_name (name);
  GtkWidget *date = gtk_label_new (when), *file = gtk_label_new (shown);

  gtk_label_set_xalign (GTK_LABEL (date), 0);
  gtk_label_set_xalign (GTK_LABEL (file), 0);
  gtk_label_set_ellipsize (GTK_LABEL (file), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_add_css_class (date, "strong");
  gtk_widget_add_css_class (file, "caption");
  gtk_box_append (GTK_BOX (box), date);
  gtk_box_append (GTK_BOX (box), file);
  gtk_widget_add_css_class (row, "compare-row");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, when, -1);
  return row;
}

static GtkWidget *
make_list (RwCompareChooser *self)
{
  GtkWidget *list = gtk_list_box_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  for (guint i = 0; i < self->others->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list), make_row (self->others->pdata[i]));
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Sessions of this cabinet, the newest first"), -1);
  gtk_list_box_select_row (GTK_LIST_BOX (list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0));
  g_signal_connect (list, "row-activated", G_CALLBACK (chosen_cb), self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
fill (RwCompareChooser      *self,
      const RwSessionHeader *header)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  /* Translators: name of a cabinet. */
  g_autofree char *words = g_strdup_printf (_ ("Other sessions of %s, the newest first:"), header->cabinet_name);
  GtkWidget *label = gtk_label_new (words);
  GtkWidget *button = gtk_button_new_with_mnemonic (_ ("_Another file…"));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect (button, "clicked", G_CALLBACK (other_file_cb), self);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), make_list (self));
  gtk_box_append (GTK_BOX (box), button);
  gtk_window_set_child (GTK_WINDOW (self), box);
}

void
rw_compare_chooser_ask (GtkWindow             *parent,
                        const RwSessionHeader *header,
                        RwPathFunc             func,
                        gpointer               user_data)
{
  g_autofree char *folder = rw_paths_dup_sessions ();
  g_autoptr (GPtrArray) others = rw_compare_others_list (folder, header);

  if (others->len == 0)
    {
      ask_file (parent, func, user_data);
      return;
    }

  RwCompareChooser *self = g_object_new (RW_TYPE_COMPARE_CHOOSER, "transient-for", parent, NULL);

  self->others = g_steal_pointer (&others);
  self->func = func;
  self->user_data = user_data;
  fill (self, header);
  gtk_window_present (GTK_WINDOW (self));
}

static void
rw_compare_chooser_dispose (GObject *object)
{
  RwCompareChooser *self = RW_COMPARE_CHOOSER (object);

  g_clear_pointer (&self->others, g_ptr_array_unref);
  G_OBJECT_CLASS (rw_compare_chooser_parent_class)->dispose (object);
}

static void
rw_compare_chooser_class_init (RwCompareChooserClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_compare_chooser_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_compare_chooser_init (RwCompareChooser *self)
{
  gtk_window_set_title (GTK_WINDOW (self), _ ("Compare with…"));
  gtk_window_set_default_size (GTK_WINDOW (self), 480, 420);
}
