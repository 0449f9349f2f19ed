/* rw-settle.c: has a stream come to rest, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A window of the last N = 7 samples that also spans at least 1.2 s. Settled when
 *  1. scatter: 1.4826·MAD about the median is at most max (1 step, 0.05 % of the value), and no sample
 *     of the window lies further from the median than max (4 steps, 0.2 %);
 *  2. drift: Theil–Sen slope times the window's span is at most max (1.5 steps, 0.05 %).
 * The robust centre is the median; its standard error is 1.2533·s/√N with s = 1.4826·MAD, floored at
 * step/√12, since readings rounded to the same digit say nothing of what lies below it.
 */
#include "config.h"

#include "rw-settle.h"

#include <math.h>
#include <stdlib.h>

#define WINDOW 7

static const double min_span = 1.2; /* seconds */

struct _RwSettle
{
  double   step;
  double   t[WINDOW];
  double   value[WINDOW];
  guint    n;    /* samples in the ring, at most WINDOW */
  guint    next; /* where the next one goes */
  double   since;
  gboolean settled;
};

RwSettle *
rw_settle_new (double step)
{
  RwSettle *self = g_new0 (RwSettle, 1);

  self->step = step > 0 ? step : 0;
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
  self->next = 0;
  self->settled = FALSE;
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Sorts; even counts average the middle two. */
static double
median (double *values,
        guint   n)
{
  qsort (values, n, sizeof *values, compare);
  return n % 2 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
}

static double
theil_sen (const RwSettle *self)
{
  double slopes[WINDOW * (WINDOW - 1) / 2];
  guint n = 0;

  for (guint i = 0; i < self->n; i++)
    for (guint j = i + 1; j < self->n; j++)
      if (self->t[i] != self->t[j])
        slopes[n++] = (self->value[j] - self->value[i]) / (self->t[j] - self->t[i]);
  return n > 0 ? median (slopes, n) : 0;
}

static double
span_of (const RwSettle *self)
{
  const guint newest = (self->next + WINDOW - 1) % WINDOW;

  return self->t[newest] - self->t[self->next % WINDOW];
}

RwSettled
rw_settle_push (RwSettle *self,
                double    t,
                double    value)
{
  RwSettled result = { FALSE, NAN, NAN, NAN };

  if (isnan (value))
    {
      rw_settle_reset (self);
      return result;
    }
  self->t[self->next] = t;
  self->value[self->next] = value;
  self->next = (self->next + 1) % WINDOW;
  self->n = MIN (self->n + 1, WINDOW);
  if (self->n < WINDOW || span_of (self) < min_span)
    {
      self->settled = FALSE;
      return result;
    }

  double sorted[WINDOW], away[WINDOW], furthest = 0;

  for (guint i = 0; i < WINDOW; i++)
    sorted[i] = self->value[i];
  result.value = median (sorted, WINDOW);
  for (guint i = 0; i < WINDOW; i++)
    {
      away[i] = fabs (self->value[i] - result.value);
      furthest = MAX (furthest, away[i]);
    }

  const double size = fabs (result.value);
  const double spread = 1.4826 * median (away, WINDOW);
  const double drift = fabs (theil_sen (self)) * span_of (self);

  result.settled = spread <= MAX (self->step, 0.0005 * size)
                   && furthest <= MAX (4 * self->step, 0.002 * size)
                   && drift <= MAX (1.5 * self->step, 0.0005 * size);
  if (result.settled && !self->settled)
    self->since = t;
  self->settled = result.settled;
  result.since = result.settled ? self->since : (double) NAN;
  result.u = MAX (1.2533 * spread / sqrt (WINDOW), self->step / sqrt (12));
  return result;
}
