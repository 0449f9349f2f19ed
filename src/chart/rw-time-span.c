/* rw-time-span.c: the visible stretch of a session, and how it moves.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-time-span.h"

#include <math.h>

/* Following, the newest event stands this share of the length before the right edge. */
static const double lead = 0.02;

/* The round time that a session's end is rounded up to is about this part of it, so that the
 * picture of a growing session changes its scale now and then, not with every sample. */
static const double fit_parts = 20;

double
rw_time_span_fit_end (double extent)
{
  static const double quanta[] = { 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600 };
  const double wanted = isfinite (extent) ? extent * (1 + lead / 2) : 0;
  const double need = MAX (wanted, RW_TIME_SPAN_EMPTY);
  double quantum = quanta[0];

  for (guint i = 0; i < G_N_ELEMENTS (quanta) && quantum < need / fit_parts; i++)
    quantum = quanta[i];
  return quantum * ceil (need / quantum);
}

/* Puts the span to [start, end], clamped; the length is kept before the place. */
static RwTimeSpan
placed (RwTimeSpan span,
        double     start,
        double     end)
{
  const double whole = rw_time_span_fit_end (span.extent);
  const double length = CLAMP (end - start, RW_TIME_SPAN_SHORTEST, whole);

  span.start = CLAMP (start, 0, whole - length);
  span.end = MIN (span.start + length, whole);
  return span;
}

/* Where the span belongs after the extent or the way of moving changed. */
static RwTimeSpan
kept_up (RwTimeSpan span)
{
  if (span.fit)
    return placed (span, 0, rw_time_span_fit_end (span.extent));

  const double length = span.end - span.start;
  const double end = span.follow ? span.extent + length * lead : span.end;

  return placed (span, end - length, end);
}

RwTimeSpan
rw_time_span_make (void)
{
  return (RwTimeSpan){ 0, rw_time_span_fit_end (0), 0, TRUE, TRUE };
}

RwTimeSpan
rw_time_span_with_extent (RwTimeSpan span,
                          double     extent)
{
  if (!isfinite (extent))
    return span;
  span.extent = MAX (extent, 0);
  return kept_up (span);
}

RwTimeSpan
rw_time_span_moved (RwTimeSpan span,
                    double     start,
                    double     end)
{
  if (!isfinite (start) || !isfinite (end) || end < start)
    return span;

  RwTimeSpan moved = placed (span, start, end);

  moved.fit = moved.start <= 0 && moved.end >= rw_time_span_fit_end (moved.extent);
  moved.follow = moved.fit || moved.end >= moved.extent;
  return moved;
}

RwTimeSpan
rw_time_span_following (RwTimeSpan span,
                        gboolean   follow)
{
  span.follow = follow ? TRUE : FALSE;
  span.fit = span.fit && follow;
  return kept_up (span);
}

RwTimeSpan
rw_time_span_fitted (RwTimeSpan span)
{
  span.fit = span.follow = TRUE;
  return kept_up (span);
}

RwTimeSpan
rw_time_span_zoomed (RwTimeSpan span,
                     double     factor,
                     double     about)
{
  if (!isfinite (factor) || factor <= 0 || !isfinite (about))
    return span;

  const double length = span.end - span.start;
  const double wanted = CLAMP (length * factor, RW_TIME_SPAN_SHORTEST,
                               rw_time_span_fit_end (span.extent));

  if (span.follow && !span.fit)
    {
      const double end = span.extent + wanted * lead;

      return rw_time_span_moved (span, end - wanted, end);
    }

  const double share = CLAMP ((about - span.start) / length, 0, 1);
  const double fixed = span.start + share * length;

  return rw_time_span_moved (span, fixed - share * wanted, fixed + (1 - share) * wanted);
}

RwTimeSpan
rw_time_span_panned (RwTimeSpan span,
                     double     share)
{
  const double by = share * (span.end - span.start);

  return rw_time_span_moved (span, span.start + by, span.end + by);
}
