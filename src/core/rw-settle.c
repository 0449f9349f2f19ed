/* rw-settle.c: has a stream come to rest, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept are up to 64 samples: all of the last 2.5 s (thinned to about 18 a second), one in 0.4 s before that. One
 * or two odd values that lie outside what the samples before and after them span, a skidding probe tip, are dropped
 * once the stream is back.
 *
 * A stream is at rest, the quick way, when all of this holds ("steps" are of the meter's last digit, percents of
 * the value):
 *  1. It is not on its way by the meter's own filter, nor only just here: the chance of that (rw-settle-belief.c)
 *     is below 3 %, a way being more than max (2.5 steps, 0.04 %).
 *  2. It does not creep, as a rail that charges: the chance that as much is left of such a way is below one half.
 *     What remains of it goes into u, and u is at most max (3 steps, 0.3 %).
 *  3. The newest sample belongs to that stretch; the noise is at most max (3.5 steps, 0.1 %); none of the newest
 *     four samples lies further from their median than max (6 steps, 0.3 %), and they have no drift that stands out:
 *     D ≤ max (2.5 steps, 0.05 %, 3·u(D)), D = |slope|·span of a least-squares line.
 *
 * The noisy way, for a stream that never gets as quiet, as a beat of ripple: 24, 32, … 64 samples, none further
 * from their median than 0.62 % and a step, with no drift that stands out: D ≤ max (1.5 steps, 3·u(D)), u of the
 * median below 0.15 %; and the newest within three times, the median of the newest four within twice the scatter of
 * the others: crests of a wave are, a step is not.
 *
 * The value is the median of the newest samples, from four up to 16, as far back as they lie within
 * max (1.5 steps, 3 times the noise) of the median of the newest four; of all of them in the noisy way. What is
 * claimed is that the quantity *now* lies near it:
 *   u² = max (1.2533·s·√(ν/(ν − 2))/√n, step/√12)² + (D/2)² + L²,  ν = n − 1,
 * with s the scatter, at least the noise that rw-settle-belief.c expects; the standard error of a median, widened
 * as Student's t is since s comes from as few samples; floored, since readings rounded to the same digit say
 * nothing of what lies below it; half the drift, since the median is of the middle of the window; and in the quick
 * way L, half of what 95 % of what may be left of the way is below. (Its root mean square would be made of rare
 * long ways.)
 *
 * What this cannot see: a tail that moves less than the noise and the rounding show while it is watched. L says how
 * much of it cannot be excluded, given how rare such rails are. It shows later: rw-contact.h then lets the value be
 * kept anew.
 */
#include "config.h"

#include "rw-settle.h"

#include <math.h>
#include <string.h>

#include "rw-settle-belief.h"
#include "rw-settle-fit.h"

enum
{
  PLACES = 64,
  QUICK = 4,
  VALUE_MOST = 16,
  NOISY = 24,
  NOISY_MORE = 8,
};

static const double min_gap = 0.055;   /* seconds between two samples taken */
static const double recent = 2.5;      /* seconds that are kept whole */
static const double old_gap = 0.4;     /* seconds between two older samples */

/* Rules 1 and 2: chances, and what counts as a way. */
static const double going_bar = 0.03, creeping_bar = 0.5;
static const double way_steps = 2.5, way_share = 0.0004;
static const double u_steps = 3, u_share = 0.003; /* a value that is known no better has not come to rest */
static const double least_way = 1e-6; /* of a stream whose steps are unknown, at 0 */

struct _RwSettle
{
  double    step;
  double    t[PLACES]; /* oldest first */
  double    value[PLACES];
  guint     n;
  double    last_t; /* the newest one, taken or not */
  RwSettled result; /* after the last sample taken */

  RwSettleBelief *belief;
};

static const RwSettled not_settled = { FALSE, NAN, NAN, NAN };

RwSettle *
rw_settle_new (double step)
{
  RwSettle *self = g_new0 (RwSettle, 1);

  self->step = step > 0 ? step : 0;
  self->result = not_settled;
  self->belief = rw_settle_belief_new (self->step);
  return self;
}

void
rw_settle_free (RwSettle *self)
{
  if (self == NULL)
    return;
  rw_settle_belief_free (self->belief);
  g_free (self);
}

void
rw_settle_reset (RwSettle *self)
{
  self->n = 0;
  rw_settle_belief_reset (self->belief);
  self->result = not_settled;
}

void
rw_settle_set_step (RwSettle *self,
                    double    step)
{
  self->step = step > 0 ? step : 0;
  rw_settle_reset (self);
  rw_settle_belief_set_step (self->belief, self->step);
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

static RwSettled
describe (const RwSettle *self,
          guint           n,
          double          noise)
{
  const double *t = self->t + self->n - n, *value = self->value + self->n - n;
  const RwSettleLine line = rw_settle_fit_line (t, value, n, self->step);
  const double s = MAX (MAX (line.scatter, spread (value, n)), noise);
  const double error = 1.2533 * s * sqrt ((n - 1.0) / (n - 3.0)) / sqrt (n);

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

static RwSettled
judge_quick (const RwSettle *self)
{
  const double *value = self->value + self->n - QUICK;
  const double centre = rw_settle_median (value, QUICK), size = fabs (centre);
  const RwSettleLine line = rw_settle_fit_line (self->t + self->n - QUICK, value, QUICK, self->step);
  const double least = MAX (way_steps * self->step, least_way);
  const RwSettleOutlook outlook = rw_settle_belief_get (self->belief, MAX (least, way_share * size));
  const double u_drift = line.u_drift * MAX (1, outlook.noise / MAX (line.scatter, least_way));
  RwSettled result = describe (self, count_alike (self, centre, outlook.noise), outlook.noise);

  result.settled = outlook.fits && outlook.p_going < going_bar && outlook.p_creeping < creeping_bar
                   && line.drift <= MAX (MAX (2.5 * self->step, 0.0005 * size), 3 * u_drift)
                   && outlook.noise <= MAX (MAX (3.5 * self->step, 0.001 * size), least_way)
                   && rw_settle_furthest (centre, value, QUICK) <= MAX (6 * self->step, 0.003 * size);
  if (result.settled)
    {
      result.u = hypot (result.u, rw_settle_belief_get_u_left (self->belief));
      result.settled = result.u <= MAX (MAX (u_steps * self->step, u_share * size), least_way);
    }
  return result;
}

/* The newest few are further off than a wave's crest. */
static gboolean
is_leaving (const RwSettle *self,
            guint           n,
            double          centre)
{
  const double *value = self->value + self->n - n;
  const double scatter = MAX (spread (value, n - QUICK), self->step);

  return fabs (value[n - 1] - centre) > 3 * scatter
         || fabs (rw_settle_median (value + n - QUICK, QUICK) - centre) > 2 * scatter;
}

static RwSettled
judge_noisy (const RwSettle *self,
             guint           n)
{
  const guint first = self->n - n;
  const RwSettleLine line = rw_settle_fit_line (self->t + first, self->value + first, n, self->step);

  if (line.drift > MAX (1.5 * self->step, 3 * line.u_drift))
    return not_settled;

  RwSettled result = describe (self, n, 0);
  const double size = fabs (result.value);

  result.settled = rw_settle_furthest (result.value, self->value + first, n) <= 0.0062 * size + self->step
                   && result.u <= 0.0015 * size && !is_leaving (self, n, result.value);
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
  rw_settle_belief_push (self->belief, t, value);

  const RwSettled before = self->result;

  self->result = not_settled;
  if (self->n < QUICK)
    return self->result;

  self->result = judge_quick (self);
  for (guint n = NOISY; n <= self->n && !self->result.settled; n += NOISY_MORE)
    {
      const RwSettled noisy = judge_noisy (self, n);

      if (noisy.settled)
        self->result = noisy;
    }
  if (self->result.settled)
    self->result.since = before.settled ? before.since : t;
  return self->result;
}
