/* rw-doors.c: three plain doors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-doors.h"

#include "rw-paths.h"

struct _RwDoors
{
  GtkWidget  parent_instance;
  GtkWidget *box;
  GtkWidget *recent_box;
  GtkWidget *recent;
};

G_DEFINE_FINAL_TYPE (RwDoors, rw_doors, GTK_TYPE_WIDGET)

static const guint most_recent = 4;

static void
add_recent (RwDoors    *self,
            const char *path)
{
  g_autofree char *name = g_path_get_basename (path);
  GtkWidget *button = gtk_button_new_with_label (name);

  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, path);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-path");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", path);
  gtk_box_append (GTK_BOX (self->recent), button);
}

/* The newest sessions; their names begin with the date. */
static void
fill_recent (RwDoors *self)
{
  g_autofree char *folder = rw_paths_dup_sessions ();
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".rwlog");

  for (guint i = 0; i < MIN (paths->len, most_recent); i++)
    add_recent (self, paths->pdata[paths->len - 1 - i]);
  gtk_widget_set_visible (self->recent_box, paths->len > 0);
}

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
  gtk_widget_class_bind_template_child (GTK_WIDGET_CLASS (klass), RwDoors, recent_box);
  gtk_widget_class_bind_template_child (GTK_WIDGET_CLASS (klass), RwDoors, recent);
}

static void
rw_doors_init (RwDoors *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_recent (self);
}
