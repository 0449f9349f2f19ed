/* rw-annotation-list.c: the notes that people wrote on a replayed session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list holds one string a note, its place among them; rows read the annotations when they are bound.
 */
#include "config.h"

#include "rw-annotation-list.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "rw-annotation-form.h"
#include "rw-compat.h"
#include "rw-job-annotations.h"
#include "rw-quantity.h"

struct _RwAnnotationList
{
  GtkWindow      parent_instance;
  RwJob         *job;
  RwAnnotations *notes; /* of the job */
  GtkStringList *rows;
  GtkWidget     *list;
  GtkLabel      *empty;
  GtkLabel      *report; /* what was damaged, or what went wrong last */
};

G_DEFINE_FINAL_TYPE (RwAnnotationList, rw_annotation_list, GTK_TYPE_WINDOW)

static void
say (RwAnnotationList *self,
     const char       *words)
{
  gtk_label_set_text (self->report, words != NULL ? words : "");
  gtk_widget_set_visible (GTK_WIDGET (self->report), words != NULL);
}

/* --- rows ----------------------------------------------------------------------------------------- */

static const RwAnnotation *
note_of (RwAnnotationList *self,
         GtkListItem      *item)
{
  const guint i = (guint) atoi (gtk_string_object_get_string (gtk_list_item_get_item (item)));

  return i < rw_annotations_get_n (self->notes) ? rw_annotations_get (self->notes, i) : NULL;
}

static void
take_back_cb (GtkWidget        *button,
              RwAnnotationList *self)
{
  const guint n = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "note"));
  g_autoptr (GError) error = NULL;

  say (self, rw_annotations_retract (self->notes, n, &error) ? NULL : error->message);
}

static GtkWidget *
add_label (GtkWidget  *box,
           const char *css)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *item,
          RwAnnotationList         *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *clock = add_label (row, "numeric"), *button = gtk_button_new_with_label (_ ("Take back"));

  gtk_label_set_width_chars (GTK_LABEL (clock), 8);
  gtk_label_set_xalign (GTK_LABEL (clock), 1);
  gtk_widget_set_valign (clock, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (row), box);
  add_label (box, NULL);
  gtk_widget_add_css_class (add_label (box, "caption"), "quiet");
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), button);
  g_signal_connect (button, "clicked", G_CALLBACK (take_back_cb), self);
  gtk_list_item_set_child (item, row);
}

/* A time that is none is shown as it stands. */
static char *
say_when (const RwAnnotation *note)
{
  g_autoptr (GDateTime) told = g_date_time_new_from_iso8601 (note->written, NULL);
  g_autoptr (GDateTime) when = told != NULL ? g_date_time_to_utc (told) : NULL;

  return when != NULL ? g_date_time_format (when, "%Y-%m-%d %H:%M UTC") : g_strdup (note->written);
}

/* "Ada · 2026-03-14 18:02 UTC" */
static char *
say_who (const RwAnnotation *note)
{
  g_autofree char *when = say_when (note);

  if (*note->by == '\0')
    return g_steal_pointer (&when);
  return *when != '\0' ? g_strdup_printf ("%s · %s", note->by, when) : g_strdup (note->by);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *item,
         RwAnnotationList         *self)
{
  const RwAnnotation *note = note_of (self, item);
  GtkWidget *clock = gtk_widget_get_first_child (gtk_list_item_get_child (item));
  GtkWidget *box = gtk_widget_get_next_sibling (clock), *text = gtk_widget_get_first_child (box);
  GtkWidget *button = gtk_widget_get_next_sibling (box);

  if (note == NULL)
    return;

  g_autofree char *time = rw_quantity_format_clock (note->t);
  g_autofree char *who = say_who (note);
  g_autofree char *label = g_strdup_printf ("%s: %s", _ ("Take back"), note->text);

  gtk_label_set_text (GTK_LABEL (clock), time);
  gtk_label_set_text (GTK_LABEL (text), note->text);
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_next_sibling (text)), who);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_object_set_data (G_OBJECT (button), "note", GUINT_TO_POINTER (note->n));
}

static void
activated_cb (RwAnnotationList *self,
              guint             position)
{
  if (position < rw_annotations_get_n (self->notes))
    rw_job_show_annotation (self->job, rw_annotations_get (self->notes, position));
}

static void
refill (RwAnnotationList *self)
{
  const guint n = rw_annotations_get_n (self->notes);

  gtk_string_list_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)), NULL);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *row = g_strdup_printf ("%u", i);

      gtk_string_list_append (self->rows, row);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->empty), n == 0);
}

/* --- files ---------------------------------------------------------------------------------------- */

static void
add_cb (RwAnnotationList *self)
{
  gtk_window_present (GTK_WINDOW (rw_annotation_form_new (GTK_WINDOW (self), self->job)));
}

static void
export_chosen (const char *path,
               gpointer    data)
{
  RwAnnotationList *self = data;
  g_autoptr (GError) error = NULL;

  say (self, rw_annotations_export (self->notes, path, &error) ? NULL : error->message);
}

static void
export_cb (RwAnnotationList *self)
{
  g_autofree char *base = g_path_get_basename (rw_job_get_path (self->job));
  char *dot = g_strrstr (base, ".");

  if (dot != NULL && dot != base)
    *dot = '\0';

  g_autofree char *name = g_strconcat (base, ".rwnotes", NULL);

  rw_compat_save_file (GTK_WINDOW (self), _ ("Save the notes to pass them on"), name, _ ("Notes on sessions"),
                       "*.rwnotes", export_chosen, self);
}

static void
import_chosen (const char *path,
               gpointer    data)
{
  RwAnnotationList *self = data;
  g_autofree char *words = NULL;

  rw_job_take_in_annotations (self->job, path, &words);
  say (self, words);
}

static void
import_cb (RwAnnotationList *self)
{
  rw_compat_open_file (GTK_WINDOW (self), _ ("Take in somebody else's notes"), _ ("Notes on sessions"), "*.rwnotes",
                       import_chosen, self);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_annotation_list_dispose (GObject *object)
{
  g_clear_object (&RW_ANNOTATION_LIST (object)->job);
  G_OBJECT_CLASS (rw_annotation_list_parent_class)->dispose (object);
}

static void
rw_annotation_list_class_init (RwAnnotationListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_annotation_list_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
add_button (RwAnnotationList *self,
            GtkWidget        *box,
            const char       *label,
            GCallback         func)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  g_signal_connect_swapped (button, "clicked", func, self);
  gtk_box_append (GTK_BOX (box), button);
}

static GtkWidget *
make_list (RwAnnotationList *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->rows = gtk_string_list_new (NULL);
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  self->list = gtk_list_view_new (GTK_SELECTION_MODEL (gtk_single_selection_new (G_LIST_MODEL (self->rows))), factory);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (self->list), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Notes on this session"),
                                  -1);
  g_signal_connect_swapped (self->list, "activate", G_CALLBACK (activated_cb), self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->list);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
rw_annotation_list_init (RwAnnotationList *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_set_margin_top (box, 12);
  gtk_widget_set_margin_bottom (box, 12);
  gtk_widget_set_margin_start (box, 12);
  gtk_widget_set_margin_end (box, 12);
  self->report = GTK_LABEL (add_label (box, "safety"));
  gtk_widget_set_visible (GTK_WIDGET (self->report), FALSE);
  self->empty = GTK_LABEL (add_label (box, "quiet"));
  gtk_label_set_text (self->empty, _ ("Nobody has written anything on this session yet."));
  gtk_box_append (GTK_BOX (box), make_list (self));
  add_button (self, buttons, _ ("_Add a note…"), G_CALLBACK (add_cb));
  add_button (self, buttons, _ ("_Save them…"), G_CALLBACK (export_cb));
  add_button (self, buttons, _ ("_Take in others'…"), G_CALLBACK (import_cb));
  gtk_box_append (GTK_BOX (box), buttons);
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Notes on this session"));
  gtk_window_set_default_size (GTK_WINDOW (self), 560, 480);
}

GtkWidget *
rw_annotation_list_new (GtkWindow *parent,
                        RwJob     *job)
{
  RwAnnotationList *self = g_object_new (RW_TYPE_ANNOTATION_LIST, "transient-for", parent, NULL);

  self->job = g_object_ref (job);
  self->notes = rw_job_get_annotations (job);
  refill (self);
  say (self, rw_annotations_get_report (self->notes));
  g_signal_connect_object (self->notes, "changed", G_CALLBACK (refill), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
