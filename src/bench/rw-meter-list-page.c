/* rw-meter-list-page.c: the meters of this bench.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-list-page.h"

#include "rw-meter-books.h"
#include "rw-meter-row.h"

struct _RwMeterListPage
{
  GtkWidget  parent_instance;
  RwJob     *job;
  GSettings *settings; /* (nullable) */
  GtkWidget *box;
  GtkLabel  *problem;
  GtkWidget *empty;
  GtkWidget *rows;
  GtkWidget *hint;
  GtkWidget *find;
};

G_DEFINE_FINAL_TYPE (RwMeterListPage, rw_meter_list_page, GTK_TYPE_WIDGET)

static void
show_problem (RwMeterListPage *self)
{
  const char *problem = rw_meter_books_get_problem ();

  gtk_label_set_text (self->problem, problem != NULL ? problem : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), problem != NULL);
}

static void
written (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  show_problem (RW_METER_LIST_PAGE (widget));
}

void
rw_meter_list_page_refill (RwMeterListPage *self)
{
  RwMeterBook *book = rw_meter_books_get_default ();
  const guint n = rw_meter_book_get_n (book);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->rows)) != NULL)
    gtk_box_remove (GTK_BOX (self->rows), child);
  for (guint i = 0; i < n; i++)
    gtk_box_append (GTK_BOX (self->rows), rw_meter_row_new (self->job, self->settings, rw_meter_book_get (book, i)));
  gtk_widget_set_visible (self->empty, n == 0);
  gtk_widget_set_visible (self->hint, n > 0);
  show_problem (self);
}

void
rw_meter_list_page_set_job (RwMeterListPage *self,
                            RwJob           *job,
                            GSettings       *settings)
{
  g_return_if_fail (RW_IS_METER_LIST_PAGE (self) && RW_IS_JOB (job) && self->job == NULL);
  self->job = g_object_ref (job);
  g_set_object (&self->settings, settings);
  rw_meter_list_page_refill (self);
}

static gboolean
rw_meter_list_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (RW_METER_LIST_PAGE (widget)->find);
}

static void
rw_meter_list_page_dispose (GObject *object)
{
  RwMeterListPage *self = RW_METER_LIST_PAGE (object);

  g_clear_object (&self->job);
  g_clear_object (&self->settings);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_METER_LIST_PAGE);
  G_OBJECT_CLASS (rw_meter_list_page_parent_class)->dispose (object);
}

static void
rw_meter_list_page_class_init (RwMeterListPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_meter_list_page_dispose;
  widget_class->grab_focus = rw_meter_list_page_grab_focus;
  gtk_widget_class_install_action (widget_class, "meters.written", NULL, written);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-meter-list-page.ui");
  gtk_widget_class_bind_template_child (widget_class, RwMeterListPage, box);
  gtk_widget_class_bind_template_child (widget_class, RwMeterListPage, problem);
  gtk_widget_class_bind_template_child (widget_class, RwMeterListPage, empty);
  gtk_widget_class_bind_template_child (widget_class, RwMeterListPage, rows);
  gtk_widget_class_bind_template_child (widget_class, RwMeterListPage, hint);
  gtk_widget_class_bind_template_child (widget_class, RwMeterListPage, find);
}

static void
rw_meter_list_page_init (RwMeterListPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
