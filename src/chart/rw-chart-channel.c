/* rw-chart-channel.c: everything measured at one spot, ready to draw.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chart-channel.h"

#include <math.h>

#include "rw-theme.h"

static const double shortest_pause = 1.5; /* seconds */
static const double pause_factor = 4;

/* Position is a straight line in the value: two points of rw_position () give it. */
static void
set_position (RwChartChannel *self)
{
  const gboolean negative = self->facts != NULL && self->facts->nominal < 0
                            && self->kind == RW_KIND_DC && self->place != RW_PLACE_WIRE;

  self->gain = self->offset = NAN;
  self->limited = rw_rail_limits_at (self->facts, self->rail, self->place, self->kind, &self->lo,
                                     &self->hi);
  if (!self->limited)
    return;
  self->offset = rw_position (0, self->lo, self->hi, negative);
  self->gain = rw_position (1, self->lo, self->hi, negative) - self->offset;
}

RwChartChannel *
rw_chart_channel_new (const RwProfile *profile,
                      const RwReading *reading)
{
  RwChartChannel *self = g_new0 (RwChartChannel, 1);

  self->rail = reading->rail;
  self->place = reading->place;
  self->kind = reading->kind;
  self->facts = rw_profile_find_rail (profile, reading->rail);
  self->series = rw_theme_series_index (profile, reading->rail);
  self->samples = rw_pyramid_new ();
  self->readings = g_array_new (FALSE, FALSE, sizeof (RwChartReading));
  set_position (self);
  return self;
}

RwChartChannel *
rw_chart_channel_new_part (const RwChartChannel *whole)
{
  RwChartChannel *self = g_new (RwChartChannel, 1);

  *self = *whole;
  self->whole = whole;
  self->samples = rw_pyramid_new_part (whole->samples);
  self->readings = g_array_new (FALSE, FALSE, sizeof (RwChartReading));
  return self;
}

void
rw_chart_channel_see (RwChartChannel *self,
                      guint           n_events)
{
  g_return_if_fail (self->whole != NULL);
  rw_pyramid_see (self->samples, rw_pyramid_find_tag (self->whole->samples, n_events));
}

void
rw_chart_channel_free (RwChartChannel *self)
{
  if (self == NULL)
    return;
  rw_pyramid_free (self->samples);
  g_array_unref (self->readings);
  g_free (self);
}

/* Longest pause that the stream so far makes believable: rule 3. */
static double
longest_pause (const RwPyramid *samples)
{
  double interval = INFINITY, later = NAN;
  guint n_intervals = 0;

  for (guint i = rw_pyramid_get_n (samples); i-- > 0 && n_intervals < 2;)
    {
      const double t = rw_pyramid_get_time (samples, i);

      if (later > t)
        {
          interval = MIN (interval, later - t);
          n_intervals++;
        }
      later = t;
    }
  return n_intervals > 0 ? MAX (shortest_pause, pause_factor * interval) : shortest_pause;
}

void
rw_chart_channel_add_sample (RwChartChannel *self,
                             const RwEvent  *event,
                             guint           index)
{
  const guint n = rw_pyramid_get_n (self->samples);

  if (!isfinite (event->t))
    return;
  if (n > 0 && !isnan (rw_pyramid_get_value (self->samples, n - 1)))
    {
      const double last = rw_pyramid_get_time (self->samples, n - 1);

      if (event->t - last > shortest_pause && event->t - last > longest_pause (self->samples))
        rw_pyramid_push (self->samples, last, NAN, index);
    }
  rw_pyramid_push (self->samples, event->t,
                   event->reading.over ? (double) NAN : event->reading.value, index);
}

void
rw_chart_channel_add_reading (RwChartChannel     *self,
                              const RwEvent      *event,
                              guint               index,
                              const RwMeterFacts *meter)
{
  const RwReading *reading = &event->reading;
  const gboolean over = reading->over || !isfinite (reading->value);
  const RwChartReading kept = {
    .t = event->t,
    .value = over ? (double) NAN : reading->value,
    .u = over ? (double) NAN : rw_meter_facts_u_total (meter, reading),
    .index = index,
    .over = over,
  };

  if (isfinite (event->t))
    g_array_append_val (self->readings, kept);
}

void
rw_chart_channel_break (RwChartChannel *self,
                        double          t,
                        guint           index)
{
  rw_pyramid_push (self->samples, t, NAN, index);
}

void
rw_chart_channel_truncate (RwChartChannel *self,
                           guint           n_events)
{
  GArray *readings = self->readings;
  guint keep = readings->len;

  while (keep > 0 && g_array_index (readings, RwChartReading, keep - 1).index >= n_events)
    keep--;
  g_array_set_size (readings, keep);
  if (self->whole != NULL)
    rw_chart_channel_see (self, n_events);
  else
    rw_pyramid_truncate (self->samples, rw_pyramid_find_tag (self->samples, n_events));
}

const RwChartReading *
rw_chart_channel_last_reading (const RwChartChannel *self,
                               double                t)
{
  for (guint i = self->readings->len; i-- > 0;)
    {
      const RwChartReading *reading = &g_array_index (self->readings, RwChartReading, i);

      if (reading->t <= t)
        return reading;
    }
  return NULL;
}
