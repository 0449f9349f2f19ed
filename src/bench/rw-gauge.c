/* rw-gauge.c: the small bar on a rail card.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Across: the space between the limits takes the middle 70 % of the width, so that a value outside is still
 * seen where it is; further out it stops at the edge as an arrow head.
 */
#include "config.h"

#include "rw-gauge.h"

#include <math.h>

struct _RwGauge
{
  GtkWidget    parent_instance;
  RwGaugeValue value;
};

G_DEFINE_FINAL_TYPE (RwGauge, rw_gauge, GTK_TYPE_WIDGET)

static const double inner_share = 0.70;

/* Where everything goes; pixels. */
typedef struct
{
  double   mid_y;
  double   lo_x, hi_x, zero_x; /* limits and middle */
  double   at_x;               /* the value */
  double   from_x, to_x;       /* its uncertainty */
  int      beyond;             /* −1, +1: off the scale at that end */
  double   size;               /* half of the diamond */
} Layout;

static double
to_x (double position,
      double width)
{
  return width / 2 + position * width * inner_share / 2;
}

static Layout
lay_out (const RwGaugeValue *value,
         double              width,
         double              height)
{
  const double edge = 6;
  Layout layout = {
    .mid_y = height / 2,
    .lo_x = to_x (-1, width),
    .hi_x = to_x (1, width),
    .zero_x = width / 2,
    .size = MIN (height / 2 - 1, 6),
  };
  const double x = to_x (value->position, width);

  layout.at_x = CLAMP (x, edge, width - edge);
  layout.beyond = x < edge ? -1 : x > width - edge ? 1 : 0;
  layout.from_x = CLAMP (to_x (value->position - value->half, width), 1, width - 1);
  layout.to_x = CLAMP (to_x (value->position + value->half, width), 1, width - 1);
  return layout;
}

static void
set_color (cairo_t *cr,
           RwColor  color,
           double   alpha)
{
  cairo_set_source_rgba (cr, color.r, color.g, color.b, color.a * alpha);
}

static void
ink_scale (cairo_t      *cr,
           const Layout *layout,
           const RwTheme *theme,
           double        width)
{
  set_color (cr, theme->line, 0.35);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, 0, layout->mid_y);
  cairo_line_to (cr, width, layout->mid_y);
  cairo_stroke (cr);
  set_color (cr, theme->line, 1);
  cairo_set_line_width (cr, 2 * theme->weight);
  cairo_move_to (cr, layout->lo_x, layout->mid_y);
  cairo_line_to (cr, layout->hi_x, layout->mid_y);
  cairo_move_to (cr, layout->lo_x, layout->mid_y - layout->size);
  cairo_line_to (cr, layout->lo_x, layout->mid_y + layout->size);
  cairo_move_to (cr, layout->hi_x, layout->mid_y - layout->size);
  cairo_line_to (cr, layout->hi_x, layout->mid_y + layout->size);
  cairo_stroke (cr);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, layout->zero_x, layout->mid_y - layout->size / 2);
  cairo_line_to (cr, layout->zero_x, layout->mid_y + layout->size / 2);
  cairo_stroke (cr);
}

static void
trace_mark (cairo_t      *cr,
            const Layout *layout)
{
  const double r = layout->size, x = layout->at_x, y = layout->mid_y;

  if (layout->beyond != 0)
    {
      cairo_move_to (cr, x + layout->beyond * r, y);
      cairo_line_to (cr, x - layout->beyond * r / 2, y - r);
      cairo_line_to (cr, x - layout->beyond * r / 2, y + r);
    }
  else
    {
      cairo_move_to (cr, x, y - r);
      cairo_line_to (cr, x + r, y);
      cairo_line_to (cr, x, y + r);
      cairo_line_to (cr, x - r, y);
    }
  cairo_close_path (cr);
}

static void
ink_value (cairo_t            *cr,
           const Layout       *layout,
           const RwTheme      *theme,
           const RwGaugeValue *value)
{
  static const double dashes[] = { 3, 2 };
  const gboolean hollow = value->stale || value->expected;
  const RwColor color = value->expected ? theme->ink : value->stale ? theme->quiet : theme->verdicts[value->verdict];

  set_color (cr, color, 1);
  cairo_set_line_width (cr, 2 * theme->weight);
  if (value->expected)
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_move_to (cr, layout->from_x, layout->mid_y);
  cairo_line_to (cr, layout->to_x, layout->mid_y);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  trace_mark (cr, layout);
  set_color (cr, hollow ? theme->paper : color, 1);
  cairo_fill_preserve (cr);
  set_color (cr, color, 1);
  cairo_set_line_width (cr, 1.5 * theme->weight);
  cairo_stroke (cr);
}

/* A small wedge under the line, its tip on it. */
static void
ink_notch (cairo_t       *cr,
           const Layout  *layout,
           const RwTheme *theme,
           double         x)
{
  const double half = layout->size * 0.6;

  cairo_move_to (cr, x, layout->mid_y + 1);
  cairo_line_to (cr, x - half, layout->mid_y + layout->size);
  cairo_line_to (cr, x + half, layout->mid_y + layout->size);
  cairo_close_path (cr);
  set_color (cr, theme->ink, 0.75);
  cairo_fill (cr);
}

static void
rw_gauge_snapshot (GtkWidget   *widget,
                   GtkSnapshot *snapshot)
{
  RwGauge *self = RW_GAUGE (widget);
  const double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (!self->value.shown || width < 20 || height < 4)
    return;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  const Layout layout = lay_out (&self->value, width, height);
  const RwTheme *theme = rw_theme_get (self->value.theme);

  ink_scale (cr, &layout, theme, width);
  if (!isnan (self->value.notch))
    ink_notch (cr, &layout, theme, CLAMP (to_x (self->value.notch, width), 3, width - 3));
  if (!isnan (self->value.position))
    ink_value (cr, &layout, theme, &self->value);
  cairo_destroy (cr);
}

static void
rw_gauge_measure (GtkWidget     *widget,
                  GtkOrientation orientation,
                  int            for_size,
                  int           *minimum,
                  int           *natural,
                  int           *minimum_baseline,
                  int           *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 80 : 14;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 160 : 14;
}

static void
rw_gauge_class_init (RwGaugeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = rw_gauge_snapshot;
  widget_class->measure = rw_gauge_measure;
  gtk_widget_class_set_css_name (widget_class, "gauge");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
rw_gauge_init (RwGauge *self)
{
}

void
rw_gauge_set_value (RwGauge            *self,
                    const RwGaugeValue *value)
{
  g_return_if_fail (RW_IS_GAUGE (self));
  self->value = *value;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
