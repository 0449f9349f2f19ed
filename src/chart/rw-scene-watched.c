/* rw-scene-watched.c: which rail the meter was on, column by column of the picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-scene-watched.h"

#include <math.h>

/* Shares of the nominal volts. */
static const double dead_below = 0.25;
static const double too_wide = 0.1;

/* Own uncertainty of the sample that comes next at @t. */
static double
sample_u (const RwScene   *self,
          const RwPyramid *samples,
          double           t)
{
  RwSession *session = rw_chart_data_get_session (self->in.data);
  const guint i = MIN (rw_pyramid_find_time (samples, t), rw_pyramid_get_n (samples) - 1);
  const RwEvent *event = rw_session_get_event (session, rw_pyramid_get_tag (samples, i));

  if (event->type != RW_EVENT_SAMPLE || event->reading.over) /* a hole */
    return 0;
  return rw_meter_facts_u_own (rw_session_find_meter (session, event->reading.meter),
                               &event->reading);
}

static RwWatched
watch (const RwScene        *self,
       const RwChartChannel *channel,
       guint                 rail,
       const RwSpan         *span,
       double                t)
{
  const double nominal = channel->facts->nominal;
  const double value = (span->lo + span->hi) / 2, half = (span->hi - span->lo) / 2;

  if (isnan (value) || 2 * half > too_wide * fabs (nominal)
      || value * (nominal < 0 ? -1 : 1) <= dead_below * fabs (nominal))
    return (RwWatched){ FALSE };
  return (RwWatched){ TRUE, rail, value,
                      hypot (sample_u (self, channel->samples, t), half / sqrt (3)) };
}

/* Columns in which no rail is watched yet take @rail, where its stream runs. */
static void
watch_rail (const RwScene   *self,
            const RwTrimSet *set,
            guint            rail,
            guint            n_columns,
            RwWatched       *out)
{
  const char *id = rw_profile_get_rail (set->profile, rail)->id;
  const RwChartChannel *channel = rw_chart_data_find_channel (self->in.data, id, set->place,
                                                              RW_KIND_DC);

  if (channel == NULL || channel->facts == NULL || rw_pyramid_get_n (channel->samples) == 0)
    return;

  g_autofree RwSpan *spans = g_new (RwSpan, n_columns);
  const double start = self->time.lo, width = (self->time.hi - start) / n_columns;

  rw_pyramid_columns (channel->samples, start, width, n_columns, spans);
  for (guint i = 0; i < n_columns; i++)
    if (!out[i].is_there)
      out[i] = watch (self, channel, rail, &spans[i], start + i * width);
}

RwWatched *
rw_scene_watch (const RwScene   *self,
                const RwTrimSet *set,
                guint            n_columns)
{
  RwWatched *watched = g_new0 (RwWatched, n_columns);

  watch_rail (self, set, set->reference, n_columns, watched);
  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    if (i != set->reference)
      watch_rail (self, set, i, n_columns, watched);
  return watched;
}
