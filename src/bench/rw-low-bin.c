/* rw-low-bin.c: a child that scrolls where there is too little height for it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A scrolled window of GTK 4.8 asks for the height of lines that do not wrap, whatever width it gets. So the child is
 * measured here, at that width; the scrolled window only scrolls.
 */
#include "config.h"

#include "rw-low-bin.h"

struct _RwLowBin
{
  GtkWidget  parent_instance;
  GtkWidget *scroller;
  GtkWidget *child; /* (nullable) borrowed: the scroller's */
  guint      least; /* lines */
  guint      most;  /* lines; 0: no bound */
};

enum
{
  PROP_LEAST = 1,
  PROP_MOST
};

static void buildable_init (GtkBuildableIface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (RwLowBin, rw_low_bin, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_BUILDABLE, buildable_init))

static GtkBuildableIface *parent_buildable;

static void
add_child (GtkBuildable *buildable,
           GtkBuilder   *builder,
           GObject      *child,
           const char   *type)
{
  RwLowBin *self = RW_LOW_BIN (buildable);

  if (!GTK_IS_WIDGET (child))
    {
      parent_buildable->add_child (buildable, builder, child, type);
      return;
    }
  self->child = GTK_WIDGET (child);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->child);
  g_object_bind_property (child, "visible", self, "visible", G_BINDING_SYNC_CREATE); /* nothing is no box with gaps */
}

static void
buildable_init (GtkBuildableIface *iface)
{
  parent_buildable = g_type_interface_peek_parent (iface);
  iface->add_child = add_child;
}

/* --- height --------------------------------------------------------------------------------------- */

void
rw_low_bin_bound (int  child_least,
                  int  child_wanted,
                  int  least,
                  int  most,
                  int *minimum,
                  int *natural)
{
  *natural = most > 0 ? MIN (child_wanted, MAX (most, least)) : child_wanted;
  *minimum = MIN (MIN (child_least, least), *natural);
}

static int
line_height (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  const int height = PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics));

  pango_font_metrics_unref (metrics);
  return height;
}

static void
rw_low_bin_measure (GtkWidget     *widget,
                    GtkOrientation orientation,
                    int            for_size,
                    int           *minimum,
                    int           *natural,
                    int           *minimum_baseline,
                    int           *natural_baseline)
{
  RwLowBin *self = RW_LOW_BIN (widget);
  int least = 0, wanted = 0, narrowest = 0;

  /* One that was not asked hears of no change of its child any more. */
  gtk_widget_measure (self->scroller, orientation, for_size, &least, &wanted, NULL, NULL);
  if (self->child == NULL || !gtk_widget_should_layout (self->child))
    return;
  gtk_widget_measure (self->child, GTK_ORIENTATION_HORIZONTAL, -1, &narrowest, &wanted, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = narrowest;
      *natural = wanted;
      return;
    }

  const int line = line_height (widget);

  gtk_widget_measure (self->child, orientation, for_size < 0 ? -1 : MAX (for_size, narrowest), &least, &wanted, NULL,
                      NULL);
  rw_low_bin_bound (least, wanted, (int) self->least * line, (int) self->most * line, minimum, natural);
}

static void
rw_low_bin_size_allocate (GtkWidget *widget,
                          int        width,
                          int        height,
                          int        baseline)
{
  gtk_widget_size_allocate (RW_LOW_BIN (widget)->scroller, &(GtkAllocation) { 0, 0, width, height }, baseline);
}

static GtkSizeRequestMode
rw_low_bin_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* What need not be scrolled is no stop on the way of the Tab key. */
static gboolean
rw_low_bin_focus (GtkWidget       *widget,
                  GtkDirectionType direction)
{
  RwLowBin *self = RW_LOW_BIN (widget);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  const gboolean scrolls = gtk_adjustment_get_upper (down) > gtk_adjustment_get_page_size (down);

  return self->child != NULL && gtk_widget_child_focus (scrolls ? self->scroller : self->child, direction);
}

void
rw_low_bin_scroll_to_top (RwLowBin *self)
{
  g_return_if_fail (RW_IS_LOW_BIN (self));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), 0);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_low_bin_get_property (GObject    *object,
                         guint       id,
                         GValue     *value,
                         GParamSpec *spec)
{
  RwLowBin *self = RW_LOW_BIN (object);

  if (id != PROP_LEAST && id != PROP_MOST)
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
  else
    g_value_set_uint (value, id == PROP_LEAST ? self->least : self->most);
}

static void
rw_low_bin_set_property (GObject      *object,
                         guint         id,
                         const GValue *value,
                         GParamSpec   *spec)
{
  RwLowBin *self = RW_LOW_BIN (object);

  if (id == PROP_LEAST)
    self->least = g_value_get_uint (value);
  else if (id == PROP_MOST)
    self->most = g_value_get_uint (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
rw_low_bin_dispose (GObject *object)
{
  RwLowBin *self = RW_LOW_BIN (object);

  self->child = NULL;
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_low_bin_parent_class)->dispose (object);
}

static void
rw_low_bin_class_init (RwLowBinClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->dispose = rw_low_bin_dispose;
  object_class->get_property = rw_low_bin_get_property;
  object_class->set_property = rw_low_bin_set_property;
  widget_class->measure = rw_low_bin_measure;
  widget_class->size_allocate = rw_low_bin_size_allocate;
  widget_class->get_request_mode = rw_low_bin_get_request_mode;
  widget_class->focus = rw_low_bin_focus;
  gtk_widget_class_set_css_name (widget_class, "lowbin");
  g_object_class_install_property (object_class, PROP_LEAST, g_param_spec_uint ("least", NULL, NULL, 1, 100, 2, flags));
  g_object_class_install_property (object_class, PROP_MOST, g_param_spec_uint ("most", NULL, NULL, 0, 100, 0, flags));
}

static void
rw_low_bin_init (RwLowBin *self)
{
  self->least = 2;
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
}
