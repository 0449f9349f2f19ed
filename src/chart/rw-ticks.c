/* rw-ticks.c: round numbers along an axis.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-ticks.h"

#include <math.h>

static const double day = 86400;
static const double clock_steps[] = { 1, 2, 5, 10, 15, 30, 60, 120, 300, 600,
                                      900, 1800, 3600, 7200, 10800, 21600, 43200, 86400 };

/* Ends of the range count as inside when they miss a tick by no more than this share of a step. */
static const double slack = 1e-9;

/* A step below 1 as an exact fraction: 1/50 for 0.02, so that 15 steps make 0.3 and not nearly
 * that. */
static double
multiple (double count,
          double step)
{
  return step < 1 ? count / round (1 / step) : count * step;
}

static gboolean
is_positive (double value)
{
  return isfinite (value) && value > 0;
}

double
rw_ticks_step (double span,
               double most)
{
  if (!is_positive (span) || !is_positive (most) || !is_positive (span / most))
    return 0;

  static const double mantissas[] = { 1, 2, 5, 10 };
  const double raw = span / most;
  const double magnitude = pow (10, floor (log10 (raw)));

  for (guint i = 0; i < G_N_ELEMENTS (mantissas); i++)
    if (mantissas[i] * magnitude >= raw * (1 - slack))
      return mantissas[i] * magnitude;
  return 10 * magnitude;
}

double
rw_ticks_clock_step (double span,
                     double most)
{
  if (!is_positive (span) || !is_positive (most))
    return 0;

  const double raw = span / most;

  if (raw <= 0.5)
    return rw_ticks_step (span, most);
  for (guint i = 0; i < G_N_ELEMENTS (clock_steps); i++)
    if (clock_steps[i] >= raw * (1 - slack))
      return clock_steps[i];
  return day * rw_ticks_step (span / day, most);
}

/* Digits after the mark of 1, 2 or 5 times a power of ten. */
static int
decimals_of (double step)
{
  return step < 1 ? (int) ceil (-log10 (step) - slack) : 0;
}

static RwTicks
ticks_of_step (double lo,
               double hi,
               double step)
{
  RwTicks ticks = { 0 };
  const double first = ceil (lo / step - slack);
  const double last = floor (hi / step + slack);

  /* Past 2^53 steps from zero, neighbours are no longer different numbers. */
  if (!(step > 0) || !isfinite (first) || !isfinite (last) || fabs (first) > 9e15
      || fabs (last) > 9e15 || last < first || last - first >= RW_TICKS_MOST)
    return ticks;
  ticks.step = step;
  ticks.first = first;
  ticks.n = (guint) (last - first) + 1;
  ticks.decimals = decimals_of (step);
  return ticks;
}

RwTicks
rw_ticks_decimal (double lo,
                  double hi,
                  double most)
{
  return ticks_of_step (lo, hi, rw_ticks_step (hi - lo, most));
}

RwTicks
rw_ticks_clock (double lo,
                double hi,
                double most)
{
  return ticks_of_step (lo, hi, rw_ticks_clock_step (hi - lo, most));
}

double
rw_ticks_at (const RwTicks *ticks,
             guint          i)
{
  return multiple (ticks->first + i, ticks->step);
}
