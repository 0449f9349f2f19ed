/* rw-chart-lookup.c: what lies where on the chart.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-chart-private.h"

/* Calls with everything that the arrow keys can stop at. */
typedef void (*StopFunc) (const RwFound *found, gpointer user_data);

static void
each_stop (const RwChartLayout *layout,
           StopFunc             func,
           gpointer             user_data)
{
  const RwScene *scene = &layout->scene;

  for (guint i = 0; i < layout->readings.marks->len; i++)
    {
      const RwReadingMark *mark = &g_array_index (layout->readings.marks, RwReadingMark, i);

      func (&(RwFound){ RW_HIT_READING, mark->index, rw_scene_trace (scene, mark->trace), mark->x,
                        mark->y, 0 },
            user_data);
    }
  for (guint i = 0; i < layout->verticals.marks->len; i++)
    {
      const RwVerticalMark *mark = &g_array_index (layout->verticals.marks, RwVerticalMark, i);

      func (&(RwFound){ RW_HIT_VERTICAL, mark->index, NULL, mark->x, scene->plot.y, 0 }, user_data);
    }
}

static void
answer (RwChart       *self,
        const RwFound *found,
        RwChartHit    *hit)
{
  const RwEvent *event = rw_session_get_event (self->session, found->index);

  *hit = (RwChartHit){
    .kind = found->kind,
    .n = event->n,
    .t = event->t,
    .x = found->x,
    .y = found->y,
  };
  rw_chart_words_fill_hit (self->session, found->index, &self->namer, hit);
}

static void
answer_expected (RwChart               *self,
                 const RwExpectedFound *found,
                 RwChartHit            *hit)
{
  *hit = (RwChartHit){ .kind = RW_HIT_EXPECTED, .t = found->knot.t, .x = found->x, .y = found->y };
  rw_chart_words_fill_expected (found->trace->channel, &found->knot, hit);
}

/* Readings before the stream they settled from, then what is expected, and all before a line that runs
 * past them. */
gboolean
rw_chart_lookup (RwChart    *self,
                 double      x,
                 double      y,
                 RwChartHit *hit)
{
  g_return_val_if_fail (RW_IS_CHART (self) && hit != NULL, FALSE);

  const RwChartLayout *layout = rw_chart_get_layout (self);
  RwFound best = { .distance = INFINITY };
  RwExpectedFound expected;

  rw_readings_layer_lookup (&layout->readings, &layout->scene, x, y, &best);
  if (isinf (best.distance))
    rw_samples_layer_lookup (&layout->scene, x, y, &best);
  if (isinf (best.distance)
      && rw_expected_layer_lookup (&layout->expected, &layout->scene, x, y, &expected))
    {
      answer_expected (self, &expected, hit);
      return TRUE;
    }
  if (isinf (best.distance))
    rw_verticals_layer_lookup (&layout->verticals, &layout->scene, x, y, &best);
  if (isinf (best.distance))
    return FALSE;
  answer (self, &best, hit);
  return TRUE;
}

typedef struct
{
  guint   index; /* wanted event */
  RwFound found; /* distance INFINITY: not yet */
} Locating;

static void
locate_stop (const RwFound *found,
             gpointer       user_data)
{
  Locating *locating = user_data;

  if (found->index == locating->index)
    locating->found = *found;
}

/* A sample is no stop, but it can be asked for by number: it is in the pyramid of its channel. */
static void
locate_sample (const RwScene *scene,
               Locating      *locating)
{
  for (guint i = 0; i < scene->traces->len; i++)
    {
      const RwTrace *trace = rw_scene_trace (scene, i);
      const RwPyramid *samples = trace->channel->samples;
      guint at = rw_pyramid_find_tag (samples, locating->index);

      /* A hole put before a sample carries the same tag. */
      while (at + 1 < rw_pyramid_get_n (samples)
             && rw_pyramid_get_tag (samples, at + 1) == locating->index)
        at++;
      if (at < trace->first_sample || at >= trace->first_sample + trace->n_samples
          || rw_pyramid_get_tag (samples, at) != locating->index
          || isnan (rw_pyramid_get_value (samples, at)))
        continue;

      int beyond;
      const double y = rw_scene_y (scene, trace, rw_pyramid_get_value (samples, at), &beyond);

      locating->found = (RwFound){ RW_HIT_SAMPLE, locating->index, trace,
                                   rw_scene_x (scene, rw_pyramid_get_time (samples, at)), y, 0 };
    }
}

gboolean
rw_chart_locate (RwChart    *self,
                 guint       n,
                 RwChartHit *hit)
{
  g_return_val_if_fail (RW_IS_CHART (self) && hit != NULL, FALSE);

  const int index = rw_session_find (self->session, n);
  const RwChartLayout *layout = rw_chart_get_layout (self);

  if (index < 0)
    return FALSE;

  Locating locating = { (guint) index, { .distance = INFINITY } };

  each_stop (layout, locate_stop, &locating);
  if (isinf (locating.found.distance))
    locate_sample (&layout->scene, &locating);
  if (isinf (locating.found.distance))
    return FALSE;
  answer (self, &locating.found, hit);
  return TRUE;
}

/* Looking for the stop next after (or before) one, by place on the picture, then by order of
 * events. */
typedef struct
{
  gboolean started; /* from is a stop; otherwise any one will do */
  RwFound  from;
  int      way; /* 1 forward, −1 back */
  gboolean any;
  RwFound  best;
} Stepping;

static int
compare_stops (const RwFound *a,
               const RwFound *b)
{
  if (a->x != b->x)
    return a->x < b->x ? -1 : 1;
  return a->index < b->index ? -1 : a->index > b->index;
}

static void
consider_stop (const RwFound *found,
               gpointer       user_data)
{
  Stepping *stepping = user_data;

  if (stepping->started && compare_stops (found, &stepping->from) * stepping->way <= 0)
    return;
  if (stepping->any && compare_stops (found, &stepping->best) * stepping->way >= 0)
    return;
  stepping->best = *found;
  stepping->any = TRUE;
}

gboolean
rw_chart_step (RwChart    *self,
               guint       n,
               gboolean    forward,
               RwChartHit *hit)
{
  g_return_val_if_fail (RW_IS_CHART (self) && hit != NULL, FALSE);

  const int index = n > 0 ? rw_session_find (self->session, n) : -1;
  const RwChartLayout *layout = rw_chart_get_layout (self);
  Locating locating = { (guint) index, { .distance = INFINITY } };

  if (index >= 0)
    each_stop (layout, locate_stop, &locating);
  if (index >= 0 && isinf (locating.found.distance))
    locate_sample (&layout->scene, &locating);

  Stepping stepping = { .started = isfinite (locating.found.distance), .from = locating.found,
                        .way = forward ? 1 : -1 };

  each_stop (layout, consider_stop, &stepping);
  if (!stepping.any)
    return FALSE;
  answer (self, &stepping.best, hit);
  return TRUE;
}

double
rw_chart_time_at (RwChart *self,
                  double   x)
{
  g_return_val_if_fail (RW_IS_CHART (self), 0);
  return rw_axis_to_value (&rw_chart_get_layout (self)->scene.time, x);
}

double
rw_chart_x_at (RwChart *self,
               double   t)
{
  g_return_val_if_fail (RW_IS_CHART (self), 0);
  return rw_axis_to_pixel (&rw_chart_get_layout (self)->scene.time, t);
}

void
rw_chart_get_plot (RwChart *self,
                   RwRect  *plot)
{
  g_return_if_fail (RW_IS_CHART (self) && plot != NULL);
  *plot = rw_chart_get_layout (self)->scene.plot;
}

char *
rw_chart_dup_summary (RwChart *self)
{
  g_return_val_if_fail (RW_IS_CHART (self), NULL);
  return rw_chart_words_summary (&rw_chart_get_layout (self)->scene);
}
