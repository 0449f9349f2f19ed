/* rw-annotation-form.c: asks for a note on a moment of a replay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whoever writes says themselves how they sign, and sees it: annotations travel to others.
 */
#include "config.h"

#include "rw-annotation-form.h"

#include <glib/gi18n-lib.h>

#include "rw-job-annotations.h"
#include "rw-limits.h"
#include "rw-quantity.h"

struct _RwAnnotationForm
{
  GtkWindow parent_instance;
  RwJob    *job;
  GtkEntry *text;
  GtkEntry *by;
  GtkLabel *problem;
};

/* How the last one was signed. */
static char *last_by;

G_DEFINE_FINAL_TYPE (RwAnnotationForm, rw_annotation_form, GTK_TYPE_WINDOW)

static void
say (RwAnnotationForm *self,
     const char       *problem)
{
  gtk_label_set_text (self->problem, problem);
  gtk_widget_set_visible (GTK_WIDGET (self->problem), TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->text));
}

static void
keep_cb (RwAnnotationForm *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->text));
  const char *by = gtk_editable_get_text (GTK_EDITABLE (self->by));
  g_autoptr (GError) error = NULL;

  if (*text == '\0')
    {
      say (self, _ ("Write something first."));
      return;
    }
  if (!rw_job_annotate (self->job, by, text, &error))
    {
      say (self, error->message);
      return;
    }
  g_free (last_by);
  last_by = g_strdup (by);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
rw_annotation_form_dispose (GObject *object)
{
  g_clear_object (&RW_ANNOTATION_FORM (object)->job);
  G_OBJECT_CLASS (rw_annotation_form_parent_class)->dispose (object);
}

static void
rw_annotation_form_class_init (RwAnnotationFormClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_annotation_form_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static GtkEntry *
add_entry (GtkGrid    *grid,
           int         row,
           const char *name,
           int         most)
{
  GtkWidget *label = gtk_label_new (name), *entry = gtk_entry_new ();

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_entry_set_max_length (GTK_ENTRY (entry), most);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, entry, 1, row, 1, 1);
  return GTK_ENTRY (entry);
}

static GtkWidget *
make_buttons (RwAnnotationForm *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *cancel = gtk_button_new_with_label (_ ("Cancel")), *keep = gtk_button_new_with_label (_ ("Keep the note"));

  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_widget_add_css_class (keep, "suggested-action");
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), self);
  g_signal_connect_swapped (keep, "clicked", G_CALLBACK (keep_cb), self);
  gtk_box_append (GTK_BOX (box), cancel);
  gtk_box_append (GTK_BOX (box), keep);
  gtk_window_set_default_widget (GTK_WINDOW (self), keep);
  return box;
}

static GtkLabel *
add_label (GtkWidget  *box,
           const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 60);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
rw_annotation_form_init (RwAnnotationForm *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *grid = gtk_grid_new ();

  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  self->text = add_entry (GTK_GRID (grid), 0, _ ("Note"), RW_LIMIT_TEXT_CHARS);
  self->by = add_entry (GTK_GRID (grid), 1, _ ("Signed"), RW_LIMIT_NAME_CHARS);
  gtk_editable_set_text (GTK_EDITABLE (self->by), last_by != NULL ? last_by : "");
  gtk_box_append (GTK_BOX (box), grid);
  gtk_widget_add_css_class (
      GTK_WIDGET (add_label (box, _ ("It is kept beside the session's file, not in it, and can be passed on to others."))),
      "quiet");
  self->problem = add_label (box, "");
  gtk_widget_add_css_class (GTK_WIDGET (self->problem), "safety");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), FALSE);
  gtk_box_append (GTK_BOX (box), make_buttons (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_modal (GTK_WINDOW (self), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (self), 520, -1);
}

GtkWidget *
rw_annotation_form_new (GtkWindow *parent,
                        RwJob     *job)
{
  RwAnnotationForm *self = g_object_new (RW_TYPE_ANNOTATION_FORM, "transient-for", parent, NULL);
  RwReplay *replay = rw_job_get_replay (job);
  g_autofree char *clock = rw_quantity_format_clock (rw_replay_get_position (replay));
  /* Translators: minutes and seconds. */
  g_autofree char *title = g_strdup_printf (_ ("Note on %s"), clock);

  rw_replay_set_playing (replay, FALSE);
  self->job = g_object_ref (job);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_widget_grab_focus (GTK_WIDGET (self->text));
  return GTK_WIDGET (self);
}
