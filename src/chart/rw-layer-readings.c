/* rw-layer-readings.c: kept readings as markers with error bars.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-layer-readings.h"

#include <math.h>

#include "rw-ink.h"

static const double mark_size = 8;
static const double newest_size = 11;
static const double finger = 14;

static const RwChartReading *
reading_at (const RwTrace *trace,
            guint          i)
{
  return &g_array_index (trace->channel->readings, RwChartReading, i);
}

/* An overload is past every scale: on the side where a rail is too strong. */
static double
mark_y (const RwScene        *scene,
        const RwTrace        *trace,
        const RwChartReading *reading,
        int                  *beyond)
{
  if (!reading->over)
    return rw_scene_y (scene, trace, reading->value, beyond);

  const gboolean upwards = scene->mode == RW_VIEW_POSITION || trace->channel->facts == NULL
                           || trace->channel->facts->nominal > 0;

  *beyond = upwards ? 1 : -1;
  return upwards ? scene->plot.y : rw_rect_bottom (&scene->plot);
}

static void
add_mark (RwReadingsLayer      *self,
          const RwScene        *scene,
          guint                 index,
          const RwChartReading *reading)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  RwReadingMark mark = { .trace = index,
                         .index = reading->index,
                         .x = rw_scene_x (scene, reading->t) };

  mark.y = mark_y (scene, trace, reading, &mark.beyond);
  mark.y_lo = mark.y_hi = mark.y;
  if (mark.beyond == 0 && reading->u > 0)
    {
      int ignored;

      mark.y_lo = rw_scene_y (scene, trace, reading->value - RW_SCENE_COVER * reading->u, &ignored);
      mark.y_hi = rw_scene_y (scene, trace, reading->value + RW_SCENE_COVER * reading->u, &ignored);
    }
  g_array_append_val (self->marks, mark);
}

/* Adds a piece, cut to the plot; nothing when none of it is there. */
static void
add_piece (RwReadingsLayer *self,
           const RwScene   *scene,
           RwReadingJoin    piece)
{
  const double left = scene->plot.x, right = rw_rect_right (&scene->plot);

  if (isnan (piece.y0 + piece.y1) || piece.x1 < left || piece.x0 > right)
    return;
  piece.x0 = MAX (piece.x0, left);
  piece.x1 = MIN (piece.x1, right);
  g_array_append_val (self->joins, piece);
}

/* Samples after @from and before @to. */
static gboolean
streamed_between (const RwTrace *trace,
                  double         from,
                  double         to)
{
  const RwPyramid *samples = trace->channel->samples;
  const guint next = rw_pyramid_find_time (samples, from);

  return next < rw_pyramid_get_n (samples) && rw_pyramid_get_time (samples, next) < to;
}

/* Last change before @t, at or after @from. */
static double
last_change (const RwScene *scene,
             double         from,
             double         t)
{
  double last = from;

  for (double next = from; next < t; next = rw_scene_next_change (scene, next))
    last = next;
  return last;
}

/* Where a step runs; NaN when the value is off the plot. */
static double
join_y (const RwScene        *scene,
        const RwTrace        *trace,
        const RwChartReading *reading)
{
  int beyond;
  const double y = mark_y (scene, trace, reading, &beyond);

  return beyond == 0 ? y : (double) NAN;
}

/* The step from one reading to the next. */
static void
join_two (RwReadingsLayer      *self,
          const RwScene        *scene,
          guint                 index,
          const RwChartReading *a,
          const RwChartReading *b)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  const double y0 = join_y (scene, trace, a), y1 = join_y (scene, trace, b);
  const double first = MIN (rw_scene_next_change (scene, a->t), b->t);
  const double last = first < b->t ? last_change (scene, first, b->t) : b->t;
  const double x_first = rw_scene_x (scene, first), x_last = rw_scene_x (scene, last);

  if (b->t < scene->time.lo || a->t > scene->time.hi || streamed_between (trace, a->t, b->t))
    return;
  add_piece (self, scene, (RwReadingJoin){ index, rw_scene_x (scene, a->t), y0, x_first, y0 });
  if (first == last)
    add_piece (self, scene, (RwReadingJoin){ index, x_first, y0, x_first, y1 });
  add_piece (self, scene, (RwReadingJoin){ index, x_last, y1, rw_scene_x (scene, b->t), y1 });
}

static void
layout_trace (RwReadingsLayer *self,
              const RwScene   *scene,
              guint            index)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  const guint n = trace->channel->readings->len;

  for (guint i = 0; i < n; i++)
    {
      const RwChartReading *reading = reading_at (trace, i);

      if (i > 0)
        join_two (self, scene, index, reading_at (trace, i - 1), reading);
      if (reading->t >= scene->time.lo && reading->t <= scene->time.hi)
        add_mark (self, scene, index, reading);
    }
}

/* Greatest event index among the marks of the rail and kind of @channel, whatever the place. */
static guint
newest_index (const RwReadingsLayer *self,
              const RwScene         *scene,
              const RwChartChannel  *channel)
{
  guint newest = 0;

  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwReadingMark *mark = &g_array_index (self->marks, RwReadingMark, i);
      const RwChartChannel *rival = rw_scene_trace (scene, mark->trace)->channel;

      if (rival->rail == channel->rail && rival->kind == channel->kind)
        newest = MAX (newest, mark->index);
    }
  return newest;
}

/* Marks stand trace by trace, so a rail is looked through once a trace. */
static void
find_newest (RwReadingsLayer *self,
             const RwScene   *scene)
{
  guint trace = G_MAXUINT, newest = 0;

  for (guint i = 0; i < self->marks->len; i++)
    {
      RwReadingMark *mark = &g_array_index (self->marks, RwReadingMark, i);

      if (mark->trace != trace)
        {
          trace = mark->trace;
          newest = newest_index (self, scene, rw_scene_trace (scene, trace)->channel);
        }
      mark->newest = mark->index == newest;
    }
}

void
rw_readings_layer_layout (RwReadingsLayer *self,
                          const RwScene   *scene)
{
  self->marks = g_array_new (FALSE, FALSE, sizeof (RwReadingMark));
  self->joins = g_array_new (FALSE, FALSE, sizeof (RwReadingJoin));
  for (guint i = 0; i < scene->traces->len; i++)
    layout_trace (self, scene, i);
  find_newest (self, scene);
}

void
rw_readings_layer_clear (RwReadingsLayer *self)
{
  g_clear_pointer (&self->marks, g_array_unref);
  g_clear_pointer (&self->joins, g_array_unref);
}

void
rw_readings_layer_ink_joins (const RwReadingsLayer *self,
                             const RwScene         *scene,
                             cairo_t               *cr)
{
  cairo_save (cr);
  for (guint i = 0; i < self->joins->len; i++)
    {
      const RwReadingJoin *join = &g_array_index (self->joins, RwReadingJoin, i);
      const RwTrace *trace = rw_scene_trace (scene, join->trace);

      rw_ink_color (cr, rw_ink_mixed (trace->style.color, scene->theme->paper, 0.7));
      cairo_set_line_width (cr, (trace->chosen ? 1.5 : 1) * scene->unit * scene->theme->weight);
      rw_ink_dashes (cr, &trace->style, scene->unit);
      rw_ink_line (cr, join->x0, join->y0, join->x1, join->y1);
    }
  cairo_restore (cr);
}

/* A bar that the marker hides is not drawn: stumps that look out of it say nothing. */
static void
ink_error_bar (const RwScene       *scene,
               const RwReadingMark *mark,
               double               size,
               cairo_t             *cr)
{
  const double cap = 3 * scene->unit;
  const double ends[] = { mark->y_lo, mark->y_hi };

  if (fabs (mark->y_lo - mark->y_hi) <= size + 8 * scene->unit)
    return;
  rw_ink_line (cr, mark->x, mark->y_lo, mark->x, mark->y_hi);
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++) /* one that runs off the plot has no cap */
    if (ends[i] > scene->plot.y && ends[i] < rw_rect_bottom (&scene->plot))
      rw_ink_line (cr, mark->x - cap, ends[i], mark->x + cap, ends[i]);
}

/* A marker at the edge is moved in, and an arrow points to where its value would be. */
static void
ink_beyond (const RwScene       *scene,
            const RwReadingMark *mark,
            double               size,
            cairo_t             *cr)
{
  const RwTrace *trace = rw_scene_trace (scene, mark->trace);
  const double away = mark->beyond > 0 ? 1 : -1, arrow = size * 0.62;

  rw_ink_color (cr, trace->style.color);
  cairo_move_to (cr, mark->x, mark->y + away * scene->unit);
  cairo_rel_line_to (cr, arrow * 0.75, away * arrow);
  cairo_rel_line_to (cr, -arrow * 1.5, 0);
  cairo_close_path (cr);
  cairo_fill (cr);
  rw_ink_marker (cr, trace->style.marker, rw_ink_fill_of (trace->channel->place), mark->x,
                 mark->y + away * (arrow + size * 0.85), size, trace->style.color,
                 scene->theme->paper);
}

static void
ink_mark (const RwScene       *scene,
          const RwReadingMark *mark,
          cairo_t             *cr)
{
  const RwTrace *trace = rw_scene_trace (scene, mark->trace);
  const RwMarkerFill fill = rw_ink_fill_of (trace->channel->place);
  const double size = (mark->newest ? newest_size : mark_size) * scene->unit;
  const RwColor color = trace->style.color, paper = scene->theme->paper;

  if (mark->beyond != 0)
    {
      ink_beyond (scene, mark, size, cr);
      return;
    }
  rw_ink_color (cr, color);
  ink_error_bar (scene, mark, size, cr);
  /* A rim of paper keeps markers apart where they crowd. */
  rw_ink_marker (cr, trace->style.marker, RW_FILL_SOLID, mark->x, mark->y, size + 3 * scene->unit,
                 paper, paper);
  rw_ink_marker (cr, trace->style.marker, fill, mark->x, mark->y, size, color, paper);
}

void
rw_readings_layer_ink_marks (const RwReadingsLayer *self,
                             const RwScene         *scene,
                             cairo_t               *cr)
{
  cairo_save (cr);
  cairo_set_line_width (cr, 1.2 * scene->unit * scene->theme->weight);
  for (guint i = 0; i < self->marks->len; i++)
    ink_mark (scene, &g_array_index (self->marks, RwReadingMark, i), cr);
  cairo_restore (cr);
}

void
rw_readings_layer_lookup (const RwReadingsLayer *self,
                          const RwScene         *scene,
                          double                 x,
                          double                 y,
                          RwFound               *best)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      const RwReadingMark *mark = &g_array_index (self->marks, RwReadingMark, i);
      const RwFound found = { RW_HIT_READING, mark->index, rw_scene_trace (scene, mark->trace),
                              mark->x,        mark->y,     hypot (mark->x - x, mark->y - y) };

      if (found.distance <= finger * scene->unit)
        rw_found_offer (best, &found);
    }
}
