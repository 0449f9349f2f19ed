/* rw-narrow-bin.c: gives its child the least width that it can do with, however long its lines would like to be.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-narrow-bin.h"

struct _RwNarrowBin
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (RwNarrowBin, rw_narrow_bin, GTK_TYPE_WIDGET)

static void
rw_narrow_bin_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  GtkWidget *child = gtk_widget_get_first_child (widget);
  int least;

  /* A height that is too small for the words must not make them wider: they scroll. */
  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = least;
  else
    gtk_widget_measure (child, orientation, MAX (least, for_size), minimum, natural, NULL, NULL);
}

static void
rw_narrow_bin_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  gtk_widget_size_allocate (gtk_widget_get_first_child (widget), &(GtkAllocation) { 0, 0, width, height }, baseline);
}

static GtkSizeRequestMode
rw_narrow_bin_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rw_narrow_bin_dispose (GObject *object)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (object));

  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (rw_narrow_bin_parent_class)->dispose (object);
}

static void
rw_narrow_bin_class_init (RwNarrowBinClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_narrow_bin_dispose;
  widget_class->measure = rw_narrow_bin_measure;
  widget_class->size_allocate = rw_narrow_bin_size_allocate;
  widget_class->get_request_mode = rw_narrow_bin_get_request_mode;
}

static void
rw_narrow_bin_init (RwNarrowBin *self)
{
}
