/* rw-doors.c: three plain doors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-doors.h"

struct _RwDoors
{
  GtkWidget  parent_instance;
  GtkWidget *box;
};

G_DEFINE_FINAL_TYPE (RwDoors, rw_doors, GTK_TYPE_WIDGET)

static void
rw_doors_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RW_TYPE_DOORS);
  G_OBJECT_CLASS (rw_doors_parent_class)->dispose (object);
}

static void
rw_doors_class_init (RwDoorsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_doors_dispose;
  gtk_widget_class_set_template_from_resource (GTK_WIDGET_CLASS (klass), "/org/railwright/bench/rw-doors.ui");
  gtk_widget_class_bind_template_child (GTK_WIDGET_CLASS (klass), RwDoors, box);
}

static void
rw_doors_init (RwDoors *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
