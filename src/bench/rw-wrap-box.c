/* rw-wrap-box.c: widgets in a row, which goes on in a further line where they have too little room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-wrap-box.h"

struct _RwWrapBox
{
  GtkWidget parent_instance;
  int       spacing;
};

enum
{
  PROP_SPACING = 1
};

G_DEFINE_FINAL_TYPE (RwWrapBox, rw_wrap_box, GTK_TYPE_WIDGET)

typedef struct
{
  GtkWidget       *first; /* visible */
  guint            n;
  int              least; /* of the line */
  GtkRequestedSize sizes[16];
} Line;

/* (nullable) the visible one at or after @child */
static GtkWidget *
visible_from (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* What goes into a line that begins with @child. (nullable) what the next one begins with */
static GtkWidget *
fill_line (RwWrapBox *self,
           GtkWidget *child,
           int        width,
           Line      *line)
{
  *line = (Line) { .first = child };
  while (child != NULL && line->n < G_N_ELEMENTS (line->sizes))
    {
      GtkRequestedSize *size = &line->sizes[line->n];
      const int gap = line->n > 0 ? self->spacing : 0;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &size->minimum_size, &size->natural_size, NULL, NULL);
      if (line->n > 0 && line->least + gap + size->minimum_size > width)
        break;
      size->data = child;
      line->least += gap + size->minimum_size;
      line->n++;
      child = visible_from (gtk_widget_get_next_sibling (child));
    }
  return child;
}

/* Sets the minimum_size of each to the width it gets. */
static void
spread (Line *line,
        int   width)
{
  int left = gtk_distribute_natural_allocation (MAX (0, width - line->least), line->n, line->sizes);
  int n = 0;

  for (guint i = 0; i < line->n; i++)
    n += gtk_widget_compute_expand (line->sizes[i].data, GTK_ORIENTATION_HORIZONTAL);
  for (guint i = 0; i < line->n && n > 0; i++)
    if (gtk_widget_compute_expand (line->sizes[i].data, GTK_ORIENTATION_HORIZONTAL))
      {
        const int share = left / n--;

        line->sizes[i].minimum_size += share;
        left -= share;
      }
}

static int
height_of (const Line *line)
{
  int height = 0;

  for (guint i = 0; i < line->n; i++)
    {
      int natural;

      gtk_widget_measure (line->sizes[i].data, GTK_ORIENTATION_VERTICAL, line->sizes[i].minimum_size, NULL, &natural, NULL, NULL);
      height = MAX (height, natural);
    }
  return height;
}

static int
height_for (RwWrapBox *self,
            int        width)
{
  GtkWidget *child = visible_from (gtk_widget_get_first_child (GTK_WIDGET (self)));
  int height = 0;
  Line line;

  for (gboolean first = TRUE; child != NULL; first = FALSE)
    {
      child = fill_line (self, child, width, &line);
      spread (&line, width);
      height += height_of (&line) + (first ? 0 : self->spacing);
    }
  return height;
}

static void
measure_width (RwWrapBox *self,
               int       *minimum,
               int       *natural)
{
  guint n = 0;

  *minimum = *natural = 0;
  for (GtkWidget *child = visible_from (gtk_widget_get_first_child (GTK_WIDGET (self))); child != NULL;
       child = visible_from (gtk_widget_get_next_sibling (child)))
    {
      int least, wanted;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &wanted, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural += wanted + (n++ > 0 ? self->spacing : 0);
    }
}

static void
rw_wrap_box_measure (GtkWidget     *widget,
                     GtkOrientation orientation,
                     int            for_size,
                     int           *minimum,
                     int           *natural,
                     int           *minimum_baseline,
                     int           *natural_baseline)
{
  RwWrapBox *self = RW_WRAP_BOX (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (self, minimum, natural);
  else
    *minimum = *natural = height_for (self, for_size >= 0 ? for_size : G_MAXINT / 2);
}

static void
rw_wrap_box_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  RwWrapBox *self = RW_WRAP_BOX (widget);
  const gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkWidget *child = visible_from (gtk_widget_get_first_child (widget));
  int y = 0;
  Line line;

  while (child != NULL)
    {
      child = fill_line (self, child, width, &line);
      spread (&line, width);

      const int high = height_of (&line);
      int x = 0;

      for (guint i = 0; i < line.n; i++)
        {
          const int wide = line.sizes[i].minimum_size;

          gtk_widget_size_allocate (line.sizes[i].data, &(GtkAllocation) { rtl ? width - x - wide : x, y, wide, high }, -1);
          x += wide + self->spacing;
        }
      y += high + self->spacing;
    }
}

static GtkSizeRequestMode
rw_wrap_box_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
rw_wrap_box_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  g_value_set_int (value, RW_WRAP_BOX (object)->spacing);
}

static void
rw_wrap_box_set_property (GObject      *object,
                          guint         id,
                          const GValue *value,
                          GParamSpec   *pspec)
{
  RW_WRAP_BOX (object)->spacing = g_value_get_int (value);
  gtk_widget_queue_resize (GTK_WIDGET (object));
}

static void
rw_wrap_box_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (rw_wrap_box_parent_class)->dispose (object);
}

static void
rw_wrap_box_class_init (RwWrapBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_wrap_box_dispose;
  G_OBJECT_CLASS (klass)->get_property = rw_wrap_box_get_property;
  G_OBJECT_CLASS (klass)->set_property = rw_wrap_box_set_property;
  widget_class->measure = rw_wrap_box_measure;
  widget_class->size_allocate = rw_wrap_box_size_allocate;
  widget_class->get_request_mode = rw_wrap_box_get_request_mode;
  g_object_class_install_property (G_OBJECT_CLASS (klass), PROP_SPACING,
                                   g_param_spec_int ("spacing", NULL, NULL, 0, 100, 0,
                                                     G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS));
}

static void
rw_wrap_box_init (RwWrapBox *self)
{
}
