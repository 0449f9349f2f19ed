/* rw-label-box.c: the label of a job, shown as it will be printed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-label-box.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-job-stages.h"

struct _RwLabelBox
{
  GtkWidget  parent_instance;
  RwJob     *job;
  RwLabel   *label; /* (nullable) */
  GtkWidget *box;
  GtkWidget *paper;
  GtkWidget *who;
};

static guint trouble_signal, done_signal;

G_DEFINE_FINAL_TYPE (RwLabelBox, rw_label_box, GTK_TYPE_WIDGET)

/* Paper is white in the dark too: it is seen as it will lie on the supply. */
static void
draw (GtkDrawingArea *area,
      cairo_t        *cr,
      int             width,
      int             height,
      gpointer        data)
{
  RwLabelBox *self = data;
  const double scale = MIN (width / RW_LABEL_WIDTH, height / RW_LABEL_HEIGHT);

  if (self->label == NULL)
    return;
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, RW_LABEL_WIDTH, RW_LABEL_HEIGHT);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_fill (cr);
  rw_label_draw (self->label, cr);
}

void
rw_label_box_refresh (RwLabelBox *self)
{
  g_return_if_fail (RW_IS_LABEL_BOX (self));
  g_clear_pointer (&self->label, rw_label_free);
  if (self->job == NULL)
    return;
  self->label = rw_job_make_label (self->job, gtk_editable_get_text (GTK_EDITABLE (self->who)));

  g_autoptr (GString) text = rw_label_to_text (self->label);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->paper), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("The label"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text->str, -1);
  gtk_widget_queue_draw (self->paper);
}

void
rw_label_box_set_job (RwLabelBox *self,
                        RwJob        *job)
{
  g_return_if_fail (RW_IS_LABEL_BOX (self));
  g_set_object (&self->job, job);
  gtk_editable_set_text (GTK_EDITABLE (self->who), "");
  rw_label_box_refresh (self);
}

static void
save_chosen (const char *path,
             gpointer    data)
{
  RwLabelBox *self = data;
  g_autoptr (GError) error = NULL;

  if (self->job == NULL)
    return;
  rw_label_box_refresh (self);
  if (!rw_label_save_pdf (self->label, rw_job_get_session (self->job), path, &error))
    {
      g_signal_emit (self, trouble_signal, 0, error->message);
      return;
    }

  /* Translators: path of a file. */
  g_autofree char *text = g_strdup_printf (_ ("The label was saved as %s."), path);

  g_signal_emit (self, done_signal, 0, text);
}

void
rw_label_box_save (RwLabelBox *self)
{
  g_return_if_fail (RW_IS_LABEL_BOX (self));
  rw_compat_save_file (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _ ("Save the label"), "label.pdf", NULL, NULL,
                       save_chosen, self);
}

static void
copy_cb (RwLabelBox *self)
{
  if (self->job == NULL)
    return;
  rw_label_box_refresh (self);

  g_autoptr (GString) text = rw_label_to_text (self->label);

  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text->str);
  g_signal_emit (self, done_signal, 0, _ ("The text of the label was copied."));
}

static void
rw_label_box_dispose (GObject *object)
{
  RwLabelBox *self = RW_LABEL_BOX (object);

  g_clear_pointer (&self->label, rw_label_free);
  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_label_box_parent_class)->dispose (object);
}

static void
rw_label_box_class_init (RwLabelBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_label_box_dispose;
  trouble_signal = g_signal_new ("trouble", RW_TYPE_LABEL_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                 G_TYPE_STRING);
  done_signal = g_signal_new ("done", RW_TYPE_LABEL_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                              G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
add_button (GtkWidget  *line,
            const char *words,
            const char *tooltip,
            GCallback   func,
            gpointer    data)
{
  GtkWidget *button = gtk_button_new_with_label (words);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_hexpand (button, TRUE);
  g_signal_connect_swapped (button, "clicked", func, data);
  gtk_box_append (GTK_BOX (line), button);
}

static void
rw_label_box_init (RwLabelBox *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->paper = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->paper), draw, self, NULL);
  gtk_widget_set_size_request (self->paper, (int) RW_LABEL_WIDTH, (int) RW_LABEL_HEIGHT + 1);
  gtk_box_append (GTK_BOX (self->box), self->paper);
  self->who = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->who), _ ("Who did it, for the label"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->who), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Who did it, for the label"), -1);
  g_signal_connect_swapped (self->who, "changed", G_CALLBACK (rw_label_box_refresh), self);
  gtk_box_append (GTK_BOX (self->box), self->who);
  add_button (line, _ ("Save the label…"), _ ("As a PDF page of 90 × 50 mm (Ctrl+Shift+L)"),
              G_CALLBACK (rw_label_box_save), self);
  add_button (line, _ ("Copy text"), _ ("The label as lines of text"), G_CALLBACK (copy_cb), self);
  gtk_box_append (GTK_BOX (self->box), line);
}
