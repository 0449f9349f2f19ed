/* rw-warm-up-step.c: a rail that steps once while it warms up does not drift.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The step, or the step beside a line, of rw-change.h is believed when
 *  - it leads stillness, a line, an exponential approach and a cubic, which stands for any smooth bend, by 10 in BIC each
 *    ("very strong", Kass & Raftery, JASA 90, 1995). There n ln (RSS/n) is taken n_eff times only, by the lag-1 correlation of what the step leaves over: slow
 *    wandering looks like a step, and so does an approach that is no single exponential; both leave much of it;
 *  - the two readings around it are apart by half of it at least: an approach is not, however quick, where it is read
 *    often enough; and they are no more than a quarter of the time apart: a longer gap hides any drift;
 *  - there are three readings on each side, and eight in all: a single odd one is no step.
 */
#include "config.h"

#include "rw-warm-up-private.h"

#include <math.h>

#include "rw-change.h"
#include "rw-distribution.h"
#include "rw-robust.h"

enum
{
  LEAST_BESIDE = 3,
  LEAST_IN_ALL = 8
};

static const double plain = 10;
static const double of_step = 0.5;
static const double of_span = 0.25;
static const double two_sided = 1.959963984540054; /* Φ⁻¹(0.975) */

static const double charges[RW_N_CHANGES] = { 2, 3, 5, 6 };
static const double approach_charge = 4, cubic_charge = 5;

typedef struct
{
  double *x, *y, *left; /* time, value, what the fit leaves over; n each */
  guint   n;
} Series;

/* What the fit leaves over, and in y the values without its slope. */
static void
take_out (Series            *self,
          const RwChangeFit *fit)
{
  double level[2] = { 0, 0 };

  for (guint i = 0; i < self->n; i++)
    {
      self->y[i] -= fit->slope * self->x[i];
      level[i >= fit->after] += self->y[i] / (i < fit->after ? fit->after : self->n - fit->after);
    }
  for (guint i = 0; i < self->n; i++)
    self->left[i] = self->y[i] - level[i >= fit->after];
}

static void
project_out (double       *from,
             const double *what,
             guint         n)
{
  double product = 0, square = 0;

  for (guint i = 0; i < n; i++)
    {
      product += from[i] * what[i];
      square += what[i] * what[i];
    }
  for (guint i = 0; i < n; i++)
    from[i] -= product / square * what[i];
}

/* Sum of squares about the best cubic; powers of the time made orthogonal to one another by Gram and Schmidt. */
static double
cubic_rss (const double *x,
           const double *y,
           guint         n)
{
  g_autofree double *powers = g_new (double, 4 * (gsize) n);
  g_autofree double *left = g_memdup2 (y, n * sizeof (double));
  double rss = 0;

  for (int degree = 0; degree < 4; degree++)
    {
      double *power = powers + (gsize) degree * n;

      for (guint i = 0; i < n; i++)
        power[i] = degree == 0 ? 1 : power[(int) i - (int) n] * (2 * (x[i] - x[0]) / (x[n - 1] - x[0]) - 1);
      for (const double *other = powers; other < power; other += n)
        project_out (power, other, n);
      project_out (left, power, n);
    }
  for (guint i = 0; i < n; i++)
    rss += left[i] * left[i];
  return rss;
}

typedef struct
{
  double rss, charge;
} Rival;

/* Whether the fit's BIC is below that of each rival by what is plain, of @worth readings. */
static gboolean
leads (const RwChange *change,
       RwChangeKind    kind,
       const Rival    *rivals,
       guint           n_rivals,
       guint           n,
       double          worth,
       double          least)
{
  const double spread = MAX (change->fit[kind].rss / n, least);

  for (guint i = 0; i < n_rivals; i++)
    if (!(worth * log (MAX (rivals[i].rss / n, least) / spread) + (rivals[i].charge - charges[kind]) * log (n) > plain))
      return FALSE;
  return TRUE;
}

static gboolean
is_sudden (const Series      *self,
           const RwChangeFit *fit)
{
  const double jump = self->y[fit->after] - self->y[fit->after - 1]; /* without the slope */
  const double gap = self->x[fit->after] - self->x[fit->after - 1];

  return jump / fit->step >= of_step && gap <= of_span * (self->x[self->n - 1] - self->x[0]);
}

static void
fill (RwWarmUp          *self,
      const Series      *series,
      const RwChangeFit *fit,
      RwChangeKind       kind,
      double             own,
      double             share)
{
  const guint n = series->n;
  const double few = rw_t_half_width (0.95, n - 3) / two_sided; /* a scatter out of few values is not surely known */
  const double wider = few * sqrt (n / self->n_eff) * MAX (1, own / fit->scatter); /* the scatter is never below @own */
  guint lo, hi;

  rw_change_place (series->y, n, fit->after, sqrt (12) * own, self->n_eff / n, &lo, &hi);
  self->step = fit->step;
  self->u_step = fit->scatter > 0 ? hypot (fit->u_step * wider, share * fit->step) : fabs (share * fit->step) + own;
  self->step_at = (series->x[fit->after - 1] + series->x[fit->after]) / 2;
  self->step_from = series->x[lo - 1];
  self->step_to = series->x[hi];
  if (kind != RW_CHANGE_BOTH)
    return;
  self->drift = fit->slope * (series->x[n - 1] - series->x[0]);
  self->u = hypot (fit->u_slope * (series->x[n - 1] - series->x[0]) * wider, share * self->drift);
}

static gboolean
judge_series (RwWarmUp              *self,
              Series                *series,
              const RwWarmUpReading *readings,
              double                 own,
              double                 approach_rss)
{
  const guint n = series->n;

  for (guint i = 0; i < n; i++)
    {
      series->x[i] = readings[i].t;
      series->y[i] = readings[i].value;
    }

  const RwChange change = rw_change_find (series->x, series->y, n, LEAST_BESIDE, sqrt (12) * own);
  const Rival rivals[] = { { change.fit[RW_CHANGE_NONE].rss, charges[RW_CHANGE_NONE] },
                           { change.fit[RW_CHANGE_LINE].rss, charges[RW_CHANGE_LINE] },
                           { approach_rss, approach_charge },
                           { cubic_rss (series->x, series->y, n), cubic_charge } };
  const RwChangeKind kind = change.fit[RW_CHANGE_STEP].bic <= change.fit[RW_CHANGE_BOTH].bic ? RW_CHANGE_STEP : RW_CHANGE_BOTH;
  const RwChangeFit *fit = &change.fit[kind];

  take_out (series, fit);

  const double r = rw_lag1 (series->left, n);
  const double n_eff = rw_n_effective (n, r);

  if (!leads (&change, kind, rivals, G_N_ELEMENTS (rivals), n, n_eff, MAX (own * own, 1e-18)) || !is_sudden (series, fit))
    return FALSE;
  self->r = r;
  self->n_eff = n_eff;
  fill (self, series, fit, kind, own, readings[n - 1].share);
  return TRUE;
}

gboolean
rw_warm_up_find_step (RwWarmUp              *self,
                      const RwWarmUpReading *readings,
                      guint                  n,
                      double                 own,
                      double                 approach_rss)
{
  if (n < LEAST_IN_ALL)
    return FALSE;

  g_autofree double *x = g_new (double, n);
  g_autofree double *y = g_new (double, n);
  g_autofree double *left = g_new (double, n);
  Series series = { x, y, left, n };

  return judge_series (self, &series, readings, own, approach_rss);
}
