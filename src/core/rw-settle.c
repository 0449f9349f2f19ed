/* rw-settle.c: has a stream come to rest, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept are up to 64 samples: all of the last 2.5 s (thinned to about 18 a second), one in 0.4 s before that. One
 * or two odd values that lie outside what the samples before and after them span, a skidding probe tip, are dropped
 * once the stream is back.
 *
 * A stream is at rest, the quick way, when all of this holds. "Steps" are of the meter's last digit, percents of
 * the value; the noise is that of second differences over the last 12 samples, at least half a step.
 *  1. The newest four samples scatter by s ≤ max (3.5 steps, 0.1 %), and none lies further from their median
 *     than max (6 steps, 0.3 %). The noise, or that of
 *     the newest seven alone, is at most 1.5 times what s may be.
 *  2. It is 1 s since a sample lay more than 5 % and 20 steps away, or since the stream began: a meter's own
 *     filter needs longer than that from there, and what creeps can be seen.
 *  3. No quick approach to elsewhere. An exponential approach (rw-settle-fit.c) is fitted to the newest 4, 5, 7,
 *     9, 11, … samples as long as the fit describes them: its scatter is at most three times the noise. Where that
 *     ends lies the jump of the leads. The longest of the fits knows best what is left of the way now. The stream is
 *     on its way when at once
 *       - the quick part stands 3.5 standard errors above nothing and changes by more than 1.5 steps in the
 *         window (as much as a stream shows that flickers between two digits), and
 *       - it is not shown to have arrived: |left| + 2·u(left) > 2·max (1.5 steps, 0.04 %).
 *  4. No slow approach. The same fit with a slope beside the quick part, over 7, 9, 11, … samples while it
 *     describes them. The stream creeps when in any of the windows at once
 *       |slope|·τ·exp (−span/2τ) > max (1.5 steps, 0.04 %),  |slope| > 3·u(slope),  |slope|·span > 1.5 steps
 *     and the medians of its first and newest four are more than 1.25 steps apart (no flicker does that);
 *     with τ = 12 s: what a capacitor has left of its way is slope·τ, and the slope is that of the middle.
 * A window longer than the wait would do this too, but a fit sees a tail before it ends, and does not wait where
 * there is none.
 *
 * The noisy way, for a stream that never gets as quiet, as a beat of ripple: noise above what s may be in 1; 24 samples, none further
 * from their median than 0.62 %, with no drift that stands out: D ≤ max (1.5 steps, 3·u(D)), D = |slope|·span
 * of a least-squares line, and an error of the median below 0.15 %.
 *
 * The value is the median of the newest samples, from four up to 16, as far back as they lie within
 * max (1.5 steps, 3 times the noise) of the median of the newest four; of all 24 in the noisy way. What is claimed is that
 * the quantity *now* lies near it:
 *   u² = max (1.2533·s·√(ν/(ν − 2))/√n, step/√12)² + (D/2)²,  ν = n − 1,
 * with the standard error of a median, widened as Student's t is since s comes from as few samples; floored,
 * since readings rounded to the same digit say nothing of what lies below it; and half the drift, since the
 * median is of the middle of the window.
 *
 * What this cannot see: a tail that moves less than 1.5 steps, or less than the noise shows, while it is watched.
 * After two seconds a capacitor that charges with τ = 12 s can be ten steps from its end, and nothing tells. It
 * shows later: the stream is then no longer settled, and rw-contact.h lets the value be kept anew.
 */
#include "config.h"

#include "rw-settle.h"

#include <math.h>
#include <string.h>

#include "rw-settle-fit.h"

enum
{
  PLACES = 64,
  QUICK = 4,
  VALUE_MOST = 16,
  NOISY = 24,
  NOISE_OVER = 12,
  LATEST = 7,
  LEAST_WITH_SLOPE = 7,
};

static const double min_gap = 0.055;   /* seconds between two samples taken */
static const double recent = 2.5;      /* seconds that are kept whole */
static const double old_gap = 0.4;     /* seconds between two older samples */
static const double since_touch = 1.0; /* seconds */
static const double misfit = 3;        /* times the noise: a fit that does not describe the window */
static const double moves_sure = 3.5, left_sure = 2, slope_sure = 3; /* standard errors */
static const double slow_tau = 12;     /* seconds: of the slowest thing to wait for */

#ifndef MISFIT
#define MISFIT 3
#endif
struct _RwSettle
{
  double    step;
  double    t[PLACES]; /* oldest first */
  double    value[PLACES];
  guint     n;
  double    began;  /* the first sample since a reset */
  double    last_t; /* the newest one, taken or not */
  RwSettled result; /* after the last sample taken */
};

static const RwSettled not_settled = { FALSE, NAN, NAN, NAN };

RwSettle *
rw_settle_new (double step)
{
  RwSettle *self = g_new0 (RwSettle, 1);

  self->step = step > 0 ? step : 0;
  self->result = not_settled;
  return self;
}

void
rw_settle_free (RwSettle *self)
{
  g_free (self);
}

void
rw_settle_reset (RwSettle *self)
{
  self->n = 0;
  self->result = not_settled;
}

/* --- what is kept ------------------------------------------------------------------------------- */

static void
drop (RwSettle *self,
      guint     at,
      guint     count)
{
  const guint after = self->n - at - count;

  memmove (self->t + at, self->t + at + count, after * sizeof *self->t);
  memmove (self->value + at, self->value + at + count, after * sizeof *self->value);
  self->n -= count;
}

/* What lies between two samples without lying anywhere between their values: further from both than a value at
 * rest wanders, and than twice what they differ by. */
static gboolean
is_odd_between (const RwSettle *self,
                guint           before,
                guint           newest)
{
  const double a = self->value[before], b = self->value[newest];
  const double reach = MAX (5 * self->step, 0.004 * MAX (fabs (a), fabs (b))) + 2 * fabs (a - b);

  for (guint i = before + 1; i < newest; i++)
    if (fabs (self->value[i] - a) <= reach || fabs (self->value[i] - b) <= reach)
      return FALSE;
  return TRUE;
}

/* The stream came back after one value or two. */
static void
drop_odd (RwSettle *self)
{
  for (guint odd = 1; odd <= 2; odd++)
    if (self->n >= odd + 2 && is_odd_between (self, self->n - odd - 2, self->n - 1))
      {
        drop (self, self->n - odd - 1, odd);
        return;
      }
}

/* Thins what is no longer recent, then makes room. */
static void
age (RwSettle *self,
     double    now)
{
  for (guint i = 1; i < self->n && now - self->t[i] > recent;)
    if (self->t[i] - self->t[i - 1] < old_gap)
      drop (self, i, 1);
    else
      i++;
  if (self->n == PLACES)
    drop (self, 0, 1);
}

static void
take (RwSettle *self,
      double    t,
      double    value)
{
  if (self->n == 0)
    self->began = t;
  age (self, t);
  self->t[self->n] = t;
  self->value[self->n++] = value;
  drop_odd (self);
}

/* --- what it says ------------------------------------------------------------------------------- */

static double
spread (const double *value,
        guint         n)
{
  double mean = 0, squares = 0;

  for (guint i = 0; i < n; i++)
    mean += value[i] / n;
  for (guint i = 0; i < n; i++)
    squares += (value[i] - mean) * (value[i] - mean);
  return sqrt (squares / (n - 1));
}

/* Rule 2. */
static gboolean
is_touched_long_enough (const RwSettle *self,
                        double          centre)
{
  const double far = MAX (20 * self->step, 0.05 * fabs (centre)), now = self->t[self->n - 1];

  for (guint i = self->n; i-- > 0;)
    if (fabs (self->value[i] - centre) > far)
      return now - self->t[i] >= since_touch;
  return now - self->began >= since_touch;
}

static RwSettleApproach
fit (const RwSettle *self,
     guint           n,
     gboolean        sloping,
     double          noise)
{
  return rw_settle_fit_approach (self->t + self->n - n, self->value + self->n - n, n, sloping, noise);
}

static guint
next_window (guint n)
{
  return n + 1 + n / 5;
}

/* Rule 3: the quick part, from as many of the newest samples as the fit describes. */
static gboolean
is_on_its_way (const RwSettle *self,
               double          least,
               double          noise)
{
  RwSettleApproach longest = fit (self, QUICK, FALSE, noise);

  for (guint n = next_window (QUICK); n <= self->n; n = next_window (n))
    {
      const RwSettleApproach longer = fit (self, n, FALSE, noise);

      if (longer.scatter > misfit * noise)
        break;
      longest = longer;
    }
  return longest.sure > moves_sure && longest.change > 1.5 * self->step
         && fabs (longest.left) + left_sure * longest.u_left > 2 * least;
}

/* From the first four samples of a window to the newest four. */
static double
get_shift (const RwSettle *self,
           guint           n)
{
  return fabs (rw_settle_median (self->value + self->n - n, QUICK)
               - rw_settle_median (self->value + self->n - QUICK, QUICK));
}

/* Rule 4: the slow part, from any of the windows that the fit describes. */
static gboolean
is_creeping (const RwSettle *self,
             double          least,
             double          noise)
{
  for (guint n = LEAST_WITH_SLOPE; n <= self->n; n = next_window (n))
    {
      const RwSettleApproach it = fit (self, n, TRUE, noise);
      const double slope = fabs (it.slope), span = self->t[self->n - 1] - self->t[self->n - n];

      if (it.scatter > misfit * noise)
        return FALSE;
      if (slope * slow_tau * exp (-span / 2 / slow_tau) > least && slope > slope_sure * it.u_slope
          && slope * span > 1.5 * self->step && get_shift (self, n) > 1.25 * self->step)
        return TRUE;
    }
  return FALSE;
}

static RwSettled
describe (const RwSettle *self,
          guint           n,
          double          noise)
{
  const double *t = self->t + self->n - n, *value = self->value + self->n - n;
  const RwSettleLine line = rw_settle_fit_line (t, value, n, self->step);
  const double error = 1.2533 * MAX (MAX (line.scatter, spread (value, n)), noise) * sqrt ((n - 1.0) / (n - 3.0)) / sqrt (n);

  return (RwSettled){ .value = rw_settle_median (value, n),
                      .u = hypot (MAX (error, self->step / sqrt (12)), line.drift / 2),
                      .since = NAN };
}

/* How many of the newest samples lie about the same value. */
static guint
count_alike (const RwSettle *self,
             double          centre,
             double          noise)
{
  const double within = MAX (1.5 * self->step, 3 * noise);
  guint n = QUICK;

  while (n < MIN (self->n, VALUE_MOST) && fabs (self->value[self->n - n - 1] - centre) <= within)
    n++;
  return n;
}

/* Over the newest @most samples, or as many as there are. */
static double
get_noise (const RwSettle *self,
           guint           most)
{
  const guint n = MIN (self->n, most);

  return rw_settle_noise (self->value + self->n - n, n, self->step);
}

/* The most that a quiet stream scatters. */
static double
get_quiet (const RwSettle *self,
           double          value)
{
  return MAX (3.5 * self->step, 0.001 * fabs (value));
}

static RwSettled
judge_quick (const RwSettle *self,
             double          noise)
{
  const double *value = self->value + self->n - QUICK;
  const double centre = rw_settle_median (value, QUICK), size = fabs (centre);
  const double scatter = spread (value, QUICK);
  const double least = MAX (1.5 * self->step, 0.0004 * size), at_least = MAX (noise, self->step / 2);
  const double quiet = get_quiet (self, centre);
  RwSettled result = describe (self, count_alike (self, centre, noise), noise);

  result.settled = scatter <= quiet && MIN (noise, get_noise (self, LATEST)) <= 1.5 * quiet
                   && rw_settle_furthest (centre, value, QUICK) <= MAX (6 * self->step, 0.003 * size)
                   && is_touched_long_enough (self, centre)
                   && !is_on_its_way (self, least, at_least)
                   && !is_creeping (self, least, at_least);
  return result;
}

static RwSettled
judge_noisy (const RwSettle *self)
{
  const guint first = self->n - NOISY;
  const RwSettleLine line = rw_settle_fit_line (self->t + first, self->value + first, NOISY, self->step);
  RwSettled result = describe (self, NOISY, 0);
  const double size = fabs (result.value);

  result.settled = rw_settle_furthest (result.value, self->value + first, NOISY) <= 0.0062 * size
                   && line.drift <= MAX (1.5 * self->step, 3 * line.u_drift)
                   && result.u <= 0.0015 * size;
  return result;
}

RwSettled
rw_settle_push (RwSettle *self,
                double    t,
                double    value)
{
  if (!isfinite (value) || !isfinite (t) || (self->n > 0 && t < self->last_t))
    rw_settle_reset (self);
  if (!isfinite (value) || !isfinite (t) || (self->n > 0 && t - self->t[self->n - 1] < min_gap))
    return self->result;
  self->last_t = t;
  take (self, t, value);

  const RwSettled before = self->result;

  self->result = not_settled;
  if (self->n < QUICK)
    return self->result;
  
  const double noise = get_noise (self, NOISE_OVER);

  self->result = judge_quick (self, noise);
  if (!self->result.settled && self->n >= NOISY && noise > get_quiet (self, self->result.value))
    {
      const RwSettled noisy = judge_noisy (self);

      if (noisy.settled)
        self->result = noisy;
    }
  if (self->result.settled)
    self->result.since = before.settled ? before.since : t;
  return self->result;
}
