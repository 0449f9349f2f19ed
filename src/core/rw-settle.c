/* rw-settle.c: has a stream come to rest, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The window: the newest samples, at least 7 of them, that span at least 1.2 s. A stream faster than about 18
 * samples a second is thinned to that rate, so that 24 places always hold a window.
 *
 * Through the window goes a least-squares line. With b its slope, T the window's span, D = |b|·T the drift,
 * s the scatter about the line (n − 2 degrees of freedom, not below step/√12, the scatter of rounding), and
 * σ_D = s·T/√Σ(t − t̄)² the standard error of D, a window is settled when
 *  1. s ≤ max (1.5 steps, 0.1 % of the value), and no sample lies further from the median than
 *     max (4 steps, 0.3 %);
 *  2. D ≤ max (1.5 steps, min (3·σ_D, 0.1 %)): it does not stand out of the noise. 1.5 steps are what a stream
 *     that changes once between two neighbouring digits drifts by.
 *
 * The value is the median. What is claimed is that the quantity *now* lies near it:
 *   u² = max (1.2533·s/√n, step/√12)² + (D/2)²
 * with the standard error of a median (1.2533·s/√n), floored since readings rounded to the same digit say
 * nothing of what lies below it; and half the drift, since the median is of the middle of the window.
 * A tail that is slow against the window, below 1.5 steps in it, cannot be told from rest.
 */
#include "config.h"

#include "rw-settle.h"

#include <math.h>
#include <stdlib.h>

#define AT_LEAST 7
#define PLACES 24

static const double min_span = 1.2;  /* seconds */
static const double min_gap = 0.055; /* seconds; (PLACES − 1) gaps are longer than min_span */

struct _RwSettle
{
  double    step;
  double    t[PLACES]; /* oldest first */
  double    value[PLACES];
  guint     n;
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

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Even counts average the middle two. */
static double
median (const double *values,
        guint         n)
{
  double sorted[PLACES];

  for (guint i = 0; i < n; i++)
    sorted[i] = values[i];
  qsort (sorted, n, sizeof *sorted, compare);
  return n % 2 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
}

static double
furthest_from (double        centre,
               const double *values,
               guint         n)
{
  double furthest = 0;

  for (guint i = 0; i < n; i++)
    furthest = MAX (furthest, fabs (values[i] - centre));
  return furthest;
}

typedef struct
{
  double drift;   /* |slope|·span */
  double u_drift; /* its standard error */
  double scatter; /* about the line */
} Line;

/* Least squares in two passes about the means. @span above 0. */
static Line
fit_line (const double *t,
          const double *value,
          guint         n,
          double        span,
          double        step)
{
  double mean_t = 0, mean_value = 0, tt = 0, tv = 0, squares = 0;

  for (guint i = 0; i < n; i++)
    {
      mean_t += t[i] / n;
      mean_value += value[i] / n;
    }
  for (guint i = 0; i < n; i++)
    {
      tt += (t[i] - mean_t) * (t[i] - mean_t);
      tv += (t[i] - mean_t) * (value[i] - mean_value);
    }
  for (guint i = 0; i < n; i++)
    {
      const double left = value[i] - mean_value - tv / tt * (t[i] - mean_t);

      squares += left * left;
    }

  const double scatter = MAX (sqrt (squares / (n - 2)), step / sqrt (12));

  return (Line){ fabs (tv / tt) * span, scatter * span / sqrt (tt), scatter };
}

static RwSettled
judge (const RwSettle *self,
       guint           first)
{
  const double *t = self->t + first, *value = self->value + first;
  const guint n = self->n - first;
  const double centre = median (value, n), size = fabs (centre), step = self->step;
  const Line line = fit_line (t, value, n, t[n - 1] - t[0], step);
  const double error = MAX (1.2533 * line.scatter / sqrt (n), step / sqrt (12));

  return (RwSettled){
    .settled = line.scatter <= MAX (1.5 * step, 0.001 * size)
               && furthest_from (centre, value, n) <= MAX (4 * step, 0.003 * size)
               && line.drift <= MAX (1.5 * step, MIN (3 * line.u_drift, 0.001 * size)),
    .value = centre,
    .u = hypot (error, line.drift / 2),
    .since = NAN,
  };
}

static void
take (RwSettle *self,
      double    t,
      double    value)
{
  if (self->n == PLACES)
    {
      self->n--;
      for (guint i = 0; i < self->n; i++)
        {
          self->t[i] = self->t[i + 1];
          self->value[i] = self->value[i + 1];
        }
    }
  self->t[self->n] = t;
  self->value[self->n++] = value;
}

RwSettled
rw_settle_push (RwSettle *self,
                double    t,
                double    value)
{
  if (!isfinite (value) || !isfinite (t) || (self->n > 0 && t < self->t[self->n - 1]))
    rw_settle_reset (self);
  if (!isfinite (value) || !isfinite (t) || (self->n > 0 && t - self->t[self->n - 1] < min_gap))
    return self->result;
  take (self, t, value);

  const RwSettled before = self->result;
  guint first = self->n >= AT_LEAST ? self->n - AT_LEAST : 0;

  while (first > 0 && t - self->t[first] < min_span)
    first--;
  self->result = not_settled;
  if (self->n < AT_LEAST || t - self->t[first] < min_span)
    return self->result;
  self->result = judge (self, first);
  if (self->result.settled)
    self->result.since = before.settled ? before.since : t;
  return self->result;
}
