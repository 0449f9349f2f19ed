/* rw-layer-expected.c: what nobody measured but the trim tells, in its band.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-layer-expected.h"

#include <math.h>

#include "rw-ink.h"

static const double dashes[] = { 3, 6 };
static const double line_width = 1;
static const double marker_size = 7;
static const double band_share = 0.1;
static const double finger = 14;
static const guint  piece_length = 64; /* a stroker's work grows faster than the path */

static const RwExpectedKnot *
knot_at (const RwExpectedLine *line,
         guint                 i)
{
  return &g_array_index (line->stretch->knots, RwExpectedKnot, i);
}

static void
clear_line (gpointer data)
{
  g_clear_pointer (&((RwExpectedLine *) data)->dots, g_free);
}

/* Far off the plot all is alike, and cairo does not like numbers without bound. */
static double
map_y (const RwScene *scene,
       const RwTrace *trace,
       double         value)
{
  const double y = rw_axis_to_pixel (&scene->scale, trace->gain * value + trace->offset);

  return CLAMP (y, scene->plot.y - scene->plot.height,
                rw_rect_bottom (&scene->plot) + scene->plot.height);
}

static RwExpectedLine
make_line (const RwScene           *scene,
           const RwExpectedStretch *stretch)
{
  const RwTrace *trace = rw_scene_trace (scene, stretch->trace);
  RwExpectedLine line = { stretch->trace, stretch, g_new (RwExpectedDot, stretch->knots->len) };

  for (guint i = 0; i < stretch->knots->len; i++)
    {
      const RwExpectedKnot *knot = knot_at (&line, i);

      line.dots[i] = (RwExpectedDot){ rw_scene_x (scene, knot->t),
                                      map_y (scene, trace, knot->value),
                                      map_y (scene, trace, knot->lo),
                                      map_y (scene, trace, knot->hi) };
    }
  return line;
}

/* By trace, so that the chosen rail lies on top. */
static gint
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const RwExpectedLine *one = a, *other = b;

  if (one->trace != other->trace)
    return one->trace < other->trace ? -1 : 1;
  return one->dots[0].x < other->dots[0].x ? -1 : one->dots[0].x > other->dots[0].x;
}

void
rw_expected_layer_layout (RwExpectedLayer *self,
                          const RwScene   *scene)
{
  self->lines = g_array_new (FALSE, FALSE, sizeof (RwExpectedLine));
  g_array_set_clear_func (self->lines, clear_line);
  for (guint i = 0; i < scene->expected->len; i++)
    {
      const RwExpectedLine line = make_line (scene, rw_scene_stretch (scene, i));

      g_array_append_val (self->lines, line);
    }
  g_array_sort (self->lines, compare_lines);
}

void
rw_expected_layer_clear (RwExpectedLayer *self)
{
  g_clear_pointer (&self->lines, g_array_unref);
}

/* The upper edges from left to right. */
static void
path_upper (const RwExpectedLine *line,
            cairo_t              *cr)
{
  cairo_new_path (cr);
  for (guint i = 0; i < line->stretch->knots->len; i++)
    cairo_line_to (cr, line->dots[i].x, line->dots[i].y_hi);
}

/* The lower ones back. */
static void
path_lower (const RwExpectedLine *line,
            cairo_t              *cr)
{
  for (guint i = line->stretch->knots->len; i-- > 0;)
    cairo_line_to (cr, line->dots[i].x, line->dots[i].y_lo);
}

/* In high contrast nothing shines through: the band has edges instead. */
static void
ink_band (const RwScene        *scene,
          const RwExpectedLine *line,
          cairo_t              *cr)
{
  const RwColor color = rw_scene_trace (scene, line->trace)->style.color;
  const double dots[] = { scene->unit, 3 * scene->unit };

  path_upper (line, cr);
  if (scene->theme->tint.a < 1)
    {
      path_lower (line, cr);
      cairo_close_path (cr);
      rw_ink_color (cr, rw_ink_faded (color, band_share));
      cairo_fill (cr);
      return;
    }
  cairo_new_sub_path (cr);
  path_lower (line, cr);
  rw_ink_color (cr, color);
  cairo_set_line_width (cr, scene->unit);
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  cairo_stroke (cr);
}

static void
ink_line (const RwScene        *scene,
          const RwExpectedLine *line,
          cairo_t              *cr)
{
  const RwTrace *trace = rw_scene_trace (scene, line->trace);
  double         grown[G_N_ELEMENTS (dashes)];
  double length = 0;

  for (guint i = 0; i < G_N_ELEMENTS (dashes); i++)
    grown[i] = dashes[i] * scene->unit;
  rw_ink_color (cr, trace->style.color);
  cairo_set_line_width (cr, line_width * scene->unit * scene->theme->weight);
  cairo_new_path (cr);
  cairo_move_to (cr, line->dots[0].x, line->dots[0].y);
  cairo_set_dash (cr, grown, G_N_ELEMENTS (grown), 0);
  for (guint i = 1; i < line->stretch->knots->len; i++)
    {
      const RwExpectedDot *dot = &line->dots[i], *before = &line->dots[i - 1];

      length += hypot (dot->x - before->x, dot->y - before->y);
      cairo_line_to (cr, dot->x, dot->y);
      if (i % piece_length != 0)
        continue;
      cairo_stroke (cr);
      cairo_move_to (cr, dot->x, dot->y);
      cairo_set_dash (cr, grown, G_N_ELEMENTS (grown), length);
    }
  cairo_stroke (cr);
}

static void
clip_to_plot (const RwScene *scene,
              cairo_t       *cr)
{
  cairo_rectangle (cr, scene->plot.x, scene->plot.y, scene->plot.width, scene->plot.height);
  cairo_clip (cr);
}

void
rw_expected_layer_ink (const RwExpectedLayer *self,
                       const RwScene         *scene,
                       cairo_t               *cr)
{
  cairo_save (cr);
  clip_to_plot (scene, cr);
  for (guint i = 0; i < self->lines->len; i++)
    ink_band (scene, &g_array_index (self->lines, RwExpectedLine, i), cr);
  for (guint i = 0; i < self->lines->len; i++)
    ink_line (scene, &g_array_index (self->lines, RwExpectedLine, i), cr);
  cairo_restore (cr);
}

void
rw_expected_layer_ink_ends (const RwExpectedLayer *self,
                            const RwScene         *scene,
                            cairo_t               *cr)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const RwExpectedLine *line = &g_array_index (self->lines, RwExpectedLine, i);
      const RwExpectedDot *end = &line->dots[line->stretch->knots->len - 1];
      const RwSeriesStyle style = rw_scene_trace (scene, line->trace)->style;

      if (line->stretch->lasts && end->y >= scene->plot.y
          && end->y <= rw_rect_bottom (&scene->plot))
        rw_ink_marker (cr, style.marker, RW_FILL_HOLLOW, end->x, end->y, marker_size * scene->unit,
                       style.color, scene->theme->paper);
    }
}

static double
mix (double a,
     double b,
     double share)
{
  return a + (b - a) * share;
}

/* The line at @x, or its end nearest to it. */
static void
find_at (const RwScene        *scene,
         const RwExpectedLine *line,
         double                x,
         RwExpectedFound      *out)
{
  const guint last = line->stretch->knots->len - 1;
  const double at = CLAMP (x, line->dots[0].x, line->dots[last].x);
  guint i = 1;

  while (i < last && line->dots[i].x < at)
    i++;

  const RwExpectedDot *a = &line->dots[i - 1], *b = &line->dots[i];
  const RwExpectedKnot *one = knot_at (line, i - 1), *other = knot_at (line, i);
  const double share = b->x > a->x ? (at - a->x) / (b->x - a->x) : 0;

  *out = (RwExpectedFound){
    .trace = rw_scene_trace (scene, line->trace),
    .knot = { mix (one->t, other->t, share), mix (one->value, other->value, share),
              mix (one->u, other->u, share), mix (one->lo, other->lo, share),
              mix (one->hi, other->hi, share) },
    .x = at,
    .y = mix (a->y, b->y, share),
  };
}

gboolean
rw_expected_layer_lookup (const RwExpectedLayer *self,
                          const RwScene         *scene,
                          double                 x,
                          double                 y,
                          RwExpectedFound       *found)
{
  double nearest = finger * scene->unit;
  gboolean any = FALSE;

  for (guint i = 0; rw_rect_contains (&scene->plot, x, y) && i < self->lines->len; i++)
    {
      RwExpectedFound here;

      find_at (scene, &g_array_index (self->lines, RwExpectedLine, i), x, &here);

      const double away = hypot (here.x - x, here.y - y);

      if (!rw_rect_contains (&scene->plot, here.x, here.y) || away > nearest)
        continue;
      nearest = away;
      *found = here;
      any = TRUE;
    }
  return any;
}
