/* rw-scene-range.c: how far the vertical scale reaches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A band is a middle and a half width. In position it is [−1, 1]. In volts it is the limits of
 * the chosen rail at the chosen place, and where there are none what is seen: the median, and
 * three times the median absolute deviation (MAD) either side. In half bands from the middle, the
 * range is always [−RW_SCENE_LEAST, RW_SCENE_LEAST] and as much more as the visible values up to
 * RW_SCENE_FAR ask for. A range that is given is taken as it is.
 */
#include "config.h"

#include "rw-scene-range.h"

#include <math.h>

/* Half bands: so that the scale does not creep with every sample. */
static const double rounding = 0.2;
static const double room = 0.1; /* between the outermost value and the edge, before rounding */

typedef struct
{
  double middle, half;
} Band;

typedef void (*ValueFunc) (double shown, gpointer user_data);

/* In the span, or held into it from before. */
static gboolean
reaches_in (const RwScene *self,
            const GArray  *readings,
            guint          i)
{
  const RwChartReading *reading = &g_array_index (readings, RwChartReading, i);

  if (reading->t > self->time.hi)
    return FALSE;
  return i + 1 == readings->len
         || g_array_index (readings, RwChartReading, i + 1).t >= self->time.lo
         || reading->t >= self->time.lo;
}

/* The value, and the ends of its error bar. */
static void
offer_reading (const RwTrace        *trace,
               const RwChartReading *reading,
               ValueFunc             func,
               gpointer              user_data)
{
  const double spread = trace->gain * RW_SCENE_COVER * reading->u,
               shown = trace->gain * reading->value + trace->offset;

  func (shown, user_data);
  func (shown - spread, user_data);
  func (shown + spread, user_data);
}

/* What is expected, and the edges of its band. */
static void
offer_expected (const RwScene *self,
                ValueFunc      func,
                gpointer       user_data)
{
  for (guint i = 0; i < self->expected->len; i++)
    {
      const RwExpectedStretch *stretch = rw_scene_stretch (self, i);
      const RwTrace *trace = rw_scene_trace (self, stretch->trace);

      for (guint k = 0; k < stretch->knots->len; k++)
        {
          const RwExpectedKnot *knot = &g_array_index (stretch->knots, RwExpectedKnot, k);

          func (trace->gain * knot->value + trace->offset, user_data);
          func (trace->gain * knot->lo + trace->offset, user_data);
          func (trace->gain * knot->hi + trace->offset, user_data);
        }
    }
}

/* Calls @func with every visible number of the scene, on the scale. */
static void
each_value (const RwScene *self,
            ValueFunc      func,
            gpointer       user_data)
{
  for (guint i = 0; i < self->traces->len; i++)
    {
      const RwTrace *trace = rw_scene_trace (self, i);
      const GArray *readings = trace->channel->readings;

      for (guint k = 0; trace->columns != NULL && k < self->n_columns; k++)
        {
          func (trace->gain * trace->columns[k].lo + trace->offset, user_data);
          func (trace->gain * trace->columns[k].hi + trace->offset, user_data);
        }
      for (guint k = 0; k < readings->len; k++)
        if (reaches_in (self, readings, k))
          offer_reading (trace, &g_array_index (readings, RwChartReading, k), func, user_data);
    }
  offer_expected (self, func, user_data);
}

static void
collect_value (double   shown,
               gpointer user_data)
{
  if (isfinite (shown))
    g_array_append_val ((GArray *) user_data, shown);
}

static gint
compare_doubles (gconstpointer a,
                 gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

/* Median; sorts @values, which holds at least one. */
static double
median (GArray *values)
{
  const guint n = values->len;

  g_array_sort (values, compare_doubles);
  return (g_array_index (values, double, (n - 1) / 2) + g_array_index (values, double, n / 2)) / 2;
}

/* From what is seen, where no limits are laid down. */
static Band
seen_band (const RwScene *self)
{
  g_autoptr (GArray) values = g_array_new (FALSE, FALSE, sizeof (double));

  each_value (self, collect_value, values);
  if (values->len == 0)
    return (Band){ 0, 1 };

  const double middle = median (values);

  for (guint i = 0; i < values->len; i++)
    g_array_index (values, double, i) = fabs (g_array_index (values, double, i) - middle);
  return (Band){ middle, MAX (MAX (3 * median (values), 0.02 * fabs (middle)), 0.001) };
}

/* Limits in volts of the chosen rail. A negative rail's strong limit is the lower one. */
static Band
volts_band (RwScene *self)
{
  const RwProfile *profile = rw_session_get_profile (rw_chart_data_get_session (self->in.data));
  const RwRail *rail = rw_profile_find_rail (profile, self->rail);
  const gboolean ground = g_str_equal (self->rail, RW_RAIL_GROUND);
  const RwPlace asked = rw_view_get_place (self->in.view);
  const RwPlace place = ground ? RW_PLACE_WIRE : asked == RW_PLACE_WIRE ? RW_PLACE_BOARD : asked;
  double lo, hi;

  self->limited = rw_rail_limits_at (rail, self->rail, place, RW_KIND_DC, &lo, &hi);
  if (!self->limited)
    return seen_band (self);

  const gboolean negative = rail != NULL && rail->nominal < 0;

  self->weak = negative ? hi : lo;
  self->strong = negative ? lo : hi;
  self->middle = (lo + hi) / 2;
  return (Band){ self->middle, (hi - lo) / 2 };
}

typedef struct
{
  Band   band;
  double below, above; /* half bands */
} Reach;

static void
reach_for (double   shown,
           gpointer user_data)
{
  Reach *reach = user_data;
  const double at = (shown - reach->band.middle) / reach->band.half;

  if (!(fabs (at) <= RW_SCENE_FAR))
    return;
  reach->above = MAX (reach->above, rounding * ceil ((at + room) / rounding - 1e-9));
  reach->below = MIN (reach->below, rounding * floor ((at - room) / rounding + 1e-9));
}

void
rw_scene_set_range (RwScene *self)
{
  Reach reach = { { 0, 1 }, -RW_SCENE_LEAST, RW_SCENE_LEAST };

  self->limited = self->mode == RW_VIEW_POSITION;
  self->weak = -1;
  self->middle = 0;
  self->strong = 1;
  if (self->mode == RW_VIEW_VOLTS)
    reach.band = volts_band (self);
  if (self->in.given_hi > self->in.given_lo)
    {
      self->scale = rw_axis_make (self->in.given_lo, self->in.given_hi, rw_rect_bottom (&self->plot), self->plot.y);
      return;
    }
  each_value (self, reach_for, &reach);
  self->scale = rw_axis_make (reach.band.middle + reach.below * reach.band.half,
                              reach.band.middle + reach.above * reach.band.half,
                              rw_rect_bottom (&self->plot), self->plot.y);
}
