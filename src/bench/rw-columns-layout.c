/* rw-columns-layout.c: children side by side where there is room, under each other where there is not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-columns-layout.h"

struct _RwColumnsLayout
{
  GtkLayoutManager parent_instance;
  int              wide;
  int              spacing;
};

G_DEFINE_FINAL_TYPE (RwColumnsLayout, rw_columns_layout, GTK_TYPE_LAYOUT_MANAGER)

static GtkWidget *
next_shown (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

#define FOR_SHOWN(child, parent) \
  for (GtkWidget *child = next_shown (gtk_widget_get_first_child (parent)); child != NULL; \
       child = next_shown (gtk_widget_get_next_sibling (child)))

static int
count_shown (GtkWidget *parent)
{
  int n = 0;

  FOR_SHOWN (child, parent)
    n++;
  return n;
}

static int
column_of (RwColumnsLayout *self,
           int              n,
           int              width)
{
  return (width - (n - 1) * self->spacing) / n;
}

static gboolean
is_wide (RwColumnsLayout *self,
         GtkWidget       *parent,
         int              width)
{
  const int n = count_shown (parent);

  if (n < 2 || width < self->wide)
    return FALSE;
  FOR_SHOWN (child, parent)
    {
      int minimum;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
      if (minimum > column_of (self, n, width))
        return FALSE;
    }
  return TRUE;
}

/* The widest; as one column. */
static void
measure_width (GtkWidget *parent,
               int       *minimum,
               int       *natural)
{
  FOR_SHOWN (child, parent)
    {
      int least, best;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &best, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, best);
    }
}

static void
measure_height (RwColumnsLayout *self,
                GtkWidget       *parent,
                int              width,
                int             *minimum,
                int             *natural)
{
  const gboolean wide = is_wide (self, parent, width);
  const int each = wide ? column_of (self, count_shown (parent), width) : width;

  FOR_SHOWN (child, parent)
    {
      const int gap = !wide && *natural > 0 ? self->spacing : 0;
      int least, best;

      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, each, &least, &best, NULL, NULL);
      *minimum = wide ? MAX (*minimum, least) : *minimum + gap + least;
      *natural = wide ? MAX (*natural, best) : *natural + gap + best;
    }
}

static void
rw_columns_layout_measure (GtkLayoutManager *manager,
                           GtkWidget        *widget,
                           GtkOrientation    orientation,
                           int               for_size,
                           int              *minimum,
                           int              *natural,
                           int              *minimum_baseline,
                           int              *natural_baseline)
{
  *minimum = *natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (widget, minimum, natural);
  else
    measure_height (RW_COLUMNS_LAYOUT (manager), widget, for_size, minimum, natural);
}

static void
rw_columns_layout_allocate (GtkLayoutManager *manager,
                            GtkWidget        *widget,
                            int               width,
                            int               height,
                            int               baseline)
{
  RwColumnsLayout *self = RW_COLUMNS_LAYOUT (manager);
  const gboolean wide = is_wide (self, widget, width);
  const int each = wide ? column_of (self, count_shown (widget), width) : width;
  const gboolean from_right = wide && gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkAllocation at = { from_right ? width - each : 0, 0, each, height };

  FOR_SHOWN (child, widget)
    {
      if (!wide)
        gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, each, NULL, &at.height, NULL, NULL);
      gtk_widget_size_allocate (child, &at, -1);
      if (wide)
        at.x += (from_right ? -1 : 1) * (each + self->spacing);
      else
        at.y += at.height + self->spacing;
    }
}

static GtkSizeRequestMode
rw_columns_layout_get_request_mode (GtkLayoutManager *manager,
                                    GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rw_columns_layout_class_init (RwColumnsLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  manager_class->measure = rw_columns_layout_measure;
  manager_class->allocate = rw_columns_layout_allocate;
  manager_class->get_request_mode = rw_columns_layout_get_request_mode;
}

static void
rw_columns_layout_init (RwColumnsLayout *self)
{
}

GtkLayoutManager *
rw_columns_layout_new (int wide,
                       int spacing)
{
  RwColumnsLayout *self = g_object_new (RW_TYPE_COLUMNS_LAYOUT, NULL);

  self->wide = wide;
  self->spacing = spacing;
  return GTK_LAYOUT_MANAGER (self);
}
