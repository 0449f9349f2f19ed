/* rw-lesson-chooser.c: which lesson?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lesson-chooser.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-tab-out.h"

struct _RwLessonChooser
{
  GtkWindow  parent_instance;
  GPtrArray *lessons; /* of RwLesson */
};

G_DEFINE_FINAL_TYPE (RwLessonChooser, rw_lesson_chooser, GTK_TYPE_WINDOW)

static guint chosen_signal;

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
make_row (const RwLesson *lesson)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  g_autofree char *age = rw_quantity_format_age (lesson->minutes * 60);
  /* Translators: how long a lesson takes, number of its steps, where it is held. */
  g_autofree char *facts = g_strdup_printf (_ ("about %s · steps: %u · %s"), age, lesson->steps->len,
                                            lesson->session != NULL ? _ ("a saved session") : _ ("the practice cabinet"));

  gtk_widget_add_css_class (box, "card-inside");
  gtk_box_append (GTK_BOX (box), make_label (lesson->title, "card-title"));
  gtk_box_append (GTK_BOX (box), make_label (lesson->about, NULL));
  gtk_box_append (GTK_BOX (box), make_label (facts, "caption"));
  return box;
}

static void
activated_cb (RwLessonChooser *self,
              GtkListBoxRow   *row)
{
  const int index = gtk_list_box_row_get_index (row);

  if (index < 0 || (guint) index >= self->lessons->len)
    return;

  g_autoptr (RwLesson) lesson = rw_lesson_ref (self->lessons->pdata[index]);

  g_signal_emit (self, chosen_signal, 0, lesson);
  gtk_window_close (GTK_WINDOW (self));
}

static GtkWidget *
make_list (RwLessonChooser *self)
{
  GtkWidget *list = gtk_list_box_new ();

  gtk_list_box_set_activate_on_single_click (GTK_LIST_BOX (list), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Lessons"), -1);
  for (guint i = 0; i < self->lessons->len; i++)
    {
      const RwLesson *lesson = self->lessons->pdata[i];
      GtkWidget *row = gtk_list_box_row_new ();

      gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), make_row (lesson));
      gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, lesson->title, -1);
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  rw_tab_out_install (list);
  g_signal_connect_swapped (list, "row-activated", G_CALLBACK (activated_cb), self);
  return list;
}

static void
add_problems (GtkWidget *box,
              GPtrArray *problems)
{
  for (guint i = 0; i < problems->len; i++)
    gtk_box_append (GTK_BOX (box), make_label (problems->pdata[i], "safety-words"));
}

static void
fill (RwLessonChooser *self)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->lessons = rw_lesson_list (problems);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_box_append (GTK_BOX (box), make_label (self->lessons->len > 0 ? _ ("Page Down and Page Up, or a presenter’s clicker, "
                                                                         "go from step to step.")
                                                                    : _ ("No lesson was found."),
                                             NULL));
  gtk_box_append (GTK_BOX (box), make_list (self));
  add_problems (box, problems);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_window_set_child (GTK_WINDOW (self), scroller);
}

static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *arguments,
           gpointer   data)
{
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

static void
rw_lesson_chooser_finalize (GObject *object)
{
  g_clear_pointer (&RW_LESSON_CHOOSER (object)->lessons, g_ptr_array_unref);
  G_OBJECT_CLASS (rw_lesson_chooser_parent_class)->finalize (object);
}

static void
rw_lesson_chooser_class_init (RwLessonChooserClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_lesson_chooser_finalize;
  chosen_signal = g_signal_new ("chosen", RW_TYPE_LESSON_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_POINTER);
  gtk_widget_class_add_binding (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, escape_cb, NULL);
}

static void
rw_lesson_chooser_init (RwLessonChooser *self)
{
  gtk_window_set_title (GTK_WINDOW (self), _ ("Lessons"));
  gtk_window_set_default_size (GTK_WINDOW (self), 640, 520);
  fill (self);
}

GtkWidget *
rw_lesson_chooser_new (GtkWindow *parent)
{
  return g_object_new (RW_TYPE_LESSON_CHOOSER, "transient-for", parent, "modal", TRUE, NULL);
}
