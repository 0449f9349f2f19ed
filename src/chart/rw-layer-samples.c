/* rw-layer-samples.c: streams of samples as lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-layer-samples.h"

#include <math.h>

#include "rw-ink.h"

static const double line_width = 1.5;
static const double sign_spacing = 80; /* pixels between markers that ride on a stream, at least */
static const double sign_size = 6;
static const double dot_spacing = 8; /* pixels a sample, from which on each gets a dot */
static const double dot_size = 3.2;
static const double arrow_size = 8;
static const double arrow_spacing = 24;
static const double finger = 14; /* pixels around a point that still count */
static const guint  most_looked_at = 4096;

static double
thickness (const RwScene *scene,
           const RwTrace *trace)
{
  return line_width * scene->unit * scene->theme->weight * (trace->chosen ? 1.35 : 1);
}

static double
scale_y (const RwScene *scene,
         const RwTrace *trace,
         double         value)
{
  return rw_axis_to_pixel (&scene->scale, trace->gain * value + trace->offset);
}

static RwBar *
make_bars (const RwScene *scene,
           const RwTrace *trace)
{
  RwBar *bars = g_new (RwBar, scene->n_columns);
  const double device = scene->in.device_scale;

  for (guint i = 0; i < scene->n_columns; i++)
    {
      const RwSpan *span = &trace->columns[i];

      bars[i] = rw_raster_bar (scale_y (scene, trace, span->lo) * device,
                               scale_y (scene, trace, span->hi) * device, span->through,
                               thickness (scene, trace) * device);
    }
  return bars;
}

/* −1, 0 or 1: a column whose line leaves the plot, by more than its own thickness. */
static int
column_beyond (const RwScene *scene,
               const RwTrace *trace,
               guint          i)
{
  const double y0 = scale_y (scene, trace, trace->columns[i].lo),
               y1 = scale_y (scene, trace, trace->columns[i].hi);

  if (MIN (y0, y1) < scene->plot.y - thickness (scene, trace))
    return 1;
  return MAX (y0, y1) > rw_rect_bottom (&scene->plot) + thickness (scene, trace) ? -1 : 0;
}

/* One arrow a run of columns that leave the plot on the same side. */
static void
layout_arrows (RwSamplesLayer *self,
               const RwScene  *scene,
               guint           index)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  double taken = -INFINITY;

  for (guint i = 0; i < scene->n_columns;)
    {
      const int beyond = column_beyond (scene, trace, i);
      guint end = i + 1;

      while (end < scene->n_columns && column_beyond (scene, trace, end) == beyond)
        end++;

      const double x = scene->plot.x + (i + end) / 2.0 / scene->in.device_scale;

      if (beyond != 0 && x - taken >= arrow_spacing * scene->unit)
        {
          const RwSampleArrow arrow = {
            index, x, beyond > 0 ? scene->plot.y : rw_rect_bottom (&scene->plot), beyond
          };

          g_array_append_val (self->arrows, arrow);
          taken = x;
        }
      i = end;
    }
}

static void
add_sign (RwSamplesLayer *self,
          const RwScene  *scene,
          guint           index,
          double          t,
          double          value,
          gboolean        dot)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  int beyond;
  const double y = rw_scene_y (scene, trace, value, &beyond);
  const RwSampleSign sign = { index, rw_scene_x (scene, t), y, dot };

  if (beyond == 0 && !isnan (y))
    g_array_append_val (self->signs, sign);
}

/* Every sample that is on the picture. */
static void
layout_dots (RwSamplesLayer *self,
             const RwScene  *scene,
             guint           index)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  const RwPyramid *samples = trace->channel->samples;

  for (guint i = 0; i < trace->n_samples; i++)
    add_sign (self, scene, index, rw_pyramid_get_time (samples, trace->first_sample + i),
              rw_pyramid_get_value (samples, trace->first_sample + i), TRUE);
}

/* Markers stand at round times, so that they stay on the line as it moves along; each rail's a
 * little later than the one before, so that they do not meet. */
static void
layout_riders (RwSamplesLayer *self,
               const RwScene  *scene,
               guint           index)
{
  const RwTrace *trace = rw_scene_trace (scene, index);
  const double length = scene->time.hi - scene->time.lo;
  const double step = rw_ticks_clock_step (
      length, MAX (scene->plot.width / (sign_spacing * scene->unit), 1));
  const double phase = step * (trace->channel->series % RW_N_SERIES + 0.5) / RW_N_SERIES;

  if (!(step > 0))
    return;

  const double first = phase + step * ceil ((scene->time.lo - phase) / step);

  for (double t = first; t < scene->time.hi; t += step)
    {
      const guint column = (guint) ((t - scene->time.lo) / length * scene->n_columns);
      const RwSpan *span = &trace->columns[MIN (column, scene->n_columns - 1)];

      add_sign (self, scene, index, t, (span->lo + span->hi) / 2, FALSE);
    }
}

static guint
n_streams (const RwScene *scene)
{
  guint n = 0;

  for (guint i = 0; i < scene->traces->len; i++)
    n += rw_scene_trace (scene, i)->n_samples > 1 ? 1 : 0;
  return n;
}

void
rw_samples_layer_layout (RwSamplesLayer *self,
                         const RwScene  *scene)
{
  const gboolean riders = n_streams (scene) > 1;

  self->bars = g_ptr_array_new_with_free_func (g_free);
  self->arrows = g_array_new (FALSE, FALSE, sizeof (RwSampleArrow));
  self->signs = g_array_new (FALSE, FALSE, sizeof (RwSampleSign));
  for (guint i = 0; i < scene->traces->len; i++)
    {
      const RwTrace *trace = rw_scene_trace (scene, i);

      g_ptr_array_add (self->bars, trace->columns != NULL ? make_bars (scene, trace) : NULL);
      if (trace->columns == NULL)
        continue;
      layout_arrows (self, scene, i);
      if (trace->n_samples * dot_spacing * scene->unit <= scene->plot.width)
        layout_dots (self, scene, i);
      if (riders)
        layout_riders (self, scene, i);
    }
}

void
rw_samples_layer_clear (RwSamplesLayer *self)
{
  g_clear_pointer (&self->bars, g_ptr_array_unref);
  g_clear_pointer (&self->arrows, g_array_unref);
  g_clear_pointer (&self->signs, g_array_unref);
}

void
rw_samples_layer_raster (const RwSamplesLayer *self,
                         const RwScene        *scene,
                         cairo_surface_t      *image)
{
  const double device = scene->in.device_scale;
  const int left = (int) round (scene->plot.x * device), top = (int) round (scene->plot.y * device);
  const int bottom = (int) round (rw_rect_bottom (&scene->plot) * device);

  for (guint i = 0; i < self->bars->len; i++)
    if (self->bars->pdata[i] != NULL)
      rw_raster_bars (image, left, self->bars->pdata[i], scene->n_columns,
                      rw_scene_trace (scene, i)->style.color, top, bottom);
}

/* The samples themselves, with one more on either side so that the line runs off the plot. */
static void
path_samples (const RwScene *scene,
              const RwTrace *trace,
              cairo_t       *cr)
{
  const RwPyramid *samples = trace->channel->samples;
  const guint first = trace->first_sample > 0 ? trace->first_sample - 1 : 0;
  const guint end = MIN (trace->first_sample + trace->n_samples + 1, rw_pyramid_get_n (samples));

  cairo_new_path (cr);
  for (guint i = first; i < end; i++)
    {
      const double value = rw_pyramid_get_value (samples, i);

      if (isnan (value))
        cairo_new_sub_path (cr);
      else
        cairo_line_to (cr, rw_scene_x (scene, rw_pyramid_get_time (samples, i)),
                       scale_y (scene, trace, value));
    }
  cairo_stroke (cr);
}

/* Too many samples: up and down once a column. Stroked in pieces, since a stroker's work grows
 * faster than the path. */
static void
path_columns (const RwScene *scene,
              const RwTrace *trace,
              cairo_t       *cr)
{
  const double step = 1 / scene->in.device_scale;
  double last = NAN;

  for (guint i = 0; i < scene->n_columns; i++)
    {
      const double x = scene->plot.x + (i + 0.5) * step;
      const double lo = scale_y (scene, trace, trace->columns[i].lo),
                   hi = scale_y (scene, trace, trace->columns[i].hi);
      const gboolean lo_first = isnan (last) || fabs (last - lo) < fabs (last - hi);

      if (isnan (lo) || i % 64 == 0)
        {
          cairo_stroke (cr);
          if (!isnan (lo) && !isnan (last))
            cairo_move_to (cr, x - step, last);
        }
      last = NAN;
      if (isnan (lo))
        continue;
      cairo_line_to (cr, x, lo_first ? lo : hi);
      cairo_line_to (cr, x, lo_first ? hi : lo);
      last = lo_first ? hi : lo;
    }
  cairo_stroke (cr);
}

void
rw_samples_layer_ink_lines (const RwSamplesLayer *self,
                            const RwScene        *scene,
                            cairo_t              *cr)
{
  cairo_save (cr);
  cairo_rectangle (cr, scene->plot.x, scene->plot.y, scene->plot.width, scene->plot.height);
  cairo_clip (cr);
  cairo_new_path (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  for (guint i = 0; i < scene->traces->len; i++)
    {
      const RwTrace *trace = rw_scene_trace (scene, i);

      if (trace->columns == NULL)
        continue;
      rw_ink_color (cr, trace->style.color);
      cairo_set_line_width (cr, thickness (scene, trace));
      if (trace->n_samples <= 2 * scene->n_columns)
        path_samples (scene, trace, cr);
      else
        path_columns (scene, trace, cr);
    }
  cairo_restore (cr);
}

static void
ink_arrow (const RwScene       *scene,
           const RwSampleArrow *arrow,
           cairo_t             *cr)
{
  const double size = arrow_size * scene->unit, away = arrow->beyond > 0 ? 1 : -1;

  rw_ink_color (cr, rw_scene_trace (scene, arrow->trace)->style.color);
  cairo_move_to (cr, arrow->x, arrow->y);
  cairo_rel_line_to (cr, size * 0.6, away * size);
  cairo_rel_line_to (cr, -size * 1.2, 0);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
ink_sign (const RwScene      *scene,
          const RwSampleSign *sign,
          cairo_t            *cr)
{
  const RwTrace *trace = rw_scene_trace (scene, sign->trace);
  const RwMarkerFill fill = rw_ink_fill_of (trace->channel->place);

  if (!sign->dot)
    {
      rw_ink_marker (cr, trace->style.marker, fill, sign->x, sign->y, sign_size * scene->unit,
                     trace->style.color, scene->theme->paper);
      return;
    }
  rw_ink_color (cr, trace->style.color);
  cairo_arc (cr, sign->x, sign->y, dot_size / 2 * scene->unit, 0, 2 * G_PI);
  cairo_fill (cr);
}

void
rw_samples_layer_ink_signs (const RwSamplesLayer *self,
                            const RwScene        *scene,
                            cairo_t              *cr)
{
  for (guint i = 0; i < self->signs->len; i++)
    ink_sign (scene, &g_array_index (self->signs, RwSampleSign, i), cr);
  for (guint i = 0; i < self->arrows->len; i++)
    ink_arrow (scene, &g_array_index (self->arrows, RwSampleArrow, i), cr);
}

/* Offers sample @i of @trace when it is within a finger of (x, y). */
static void
offer_sample (const RwScene *scene,
              const RwTrace *trace,
              guint          i,
              double         x,
              double         y,
              RwFound       *best)
{
  const RwPyramid *samples = trace->channel->samples;
  int beyond;
  const double at_x = rw_scene_x (scene, rw_pyramid_get_time (samples, i));
  const double at_y = rw_scene_y (scene, trace, rw_pyramid_get_value (samples, i), &beyond);
  const RwFound found = { RW_HIT_SAMPLE, rw_pyramid_get_tag (samples, i), trace, at_x, at_y,
                          hypot (at_x - x, at_y - y) };

  if (found.distance <= finger * scene->unit)
    rw_found_offer (best, &found);
}

/* Under a dense stream a finger covers any number of samples: those nearest in time are enough. */
static void
look_along (const RwScene *scene,
            const RwTrace *trace,
            double         x,
            double         y,
            RwFound       *best)
{
  const RwPyramid *samples = trace->channel->samples;
  const double reach = finger * scene->unit;
  guint from = rw_pyramid_find_time (samples, rw_axis_to_value (&scene->time, x - reach));
  guint to = rw_pyramid_find_time (samples, rw_axis_to_value (&scene->time, x + reach));

  from = MAX (from, trace->first_sample);
  to = MIN (to, trace->first_sample + trace->n_samples);
  if (to > from + most_looked_at)
    {
      const guint middle = rw_pyramid_find_time (samples, rw_axis_to_value (&scene->time, x));

      from = MAX (from, middle - MIN (middle, most_looked_at / 2));
      to = MIN (to, from + most_looked_at);
    }
  for (guint i = from; i < to; i++)
    offer_sample (scene, trace, i, x, y, best);
}

void
rw_samples_layer_lookup (const RwScene *scene,
                         double         x,
                         double         y,
                         RwFound       *best)
{
  for (guint i = 0; i < scene->traces->len; i++)
    look_along (scene, rw_scene_trace (scene, i), x, y, best);
}
