/* rw-warm-up-fit.c: the drift of a run of readings, its error, and where it tends.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Line: value = a + b·t. Approach: value = f + A·exp (−t/τ), linear in f and A once τ is given; τ is searched on a grid
 * of ratio 1.05. The approach is believed when its BIC (4 parameters against 3, RSS/n floored at the readings' own
 * variance) is lower by 2, and τ is not longer than what was watched: a longer one is a line by another name.
 *
 * Drift = slope·(x_n − x_1), x being t or exp (−t/τ). Its variance is that of the slope, with the scatter never below the
 * readings' own part of the meter's error, times n/n_eff, n_eff = n(1 − r)/(1 + r) with the lag-1 correlation r of the
 * residuals; plus the meter's scale error of the drift itself. Two readings have no scatter: √2 times the own part.
 */
#include "config.h"

#include "rw-warm-up-private.h"

#include <math.h>

#include "rw-change.h"
#include "rw-robust.h"

enum
{
  LEAST_FOR_APPROACH = 5,
  GRID = 110
};

typedef struct
{
  RwLeastLine line; /* on x */
  double      rss;
  double      moved; /* x_n − x_1 */
} Fit;

/* @tau NaN: x is the time. */
static double
abscissa (double t,
          double tau)
{
  return isnan (tau) ? t : exp (-t / tau);
}

static Fit
fit_at (const RwWarmUpReading *readings,
        guint                  n,
        double                 tau,
        double                *residuals)
{
  g_autofree double *x = g_new (double, n);
  g_autofree double *y = g_new (double, n);
  Fit fit = { 0 };

  for (guint i = 0; i < n; i++)
    {
      x[i] = abscissa (readings[i].t, tau);
      y[i] = readings[i].value;
    }
  fit.line = rw_least_line (x, y, n);
  fit.moved = x[n - 1] - x[0];
  for (guint i = 0; i < n; i++)
    {
      residuals[i] = y[i] - fit.line.intercept - fit.line.slope * x[i];
      fit.rss += residuals[i] * residuals[i];
    }
  return fit;
}

static double
own_part (const RwWarmUpReading *readings,
          guint                  n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += readings[i].u_own * readings[i].u_own;
  return sqrt (sum / n);
}

/* NaN when a line does as well. *@approach_rss: of the best one in any case, infinite when too few. */
static double
find_tau (const RwWarmUpReading *readings,
          guint                  n,
          double                 floor_u,
          double                *residuals,
          double                *approach_rss)
{
  const double span = readings[n - 1].t - readings[0].t;
  const double least = MAX (floor_u * floor_u, 1e-18);
  const double line = n * log (MAX (fit_at (readings, n, (double) NAN, residuals).rss / n, least)) + 3 * log (n);
  double best_tau = (double) NAN, best_rss = INFINITY;

  *approach_rss = INFINITY;
  if (n < LEAST_FOR_APPROACH)
    return (double) NAN;
  for (int i = 0; i < GRID; i++)
    {
      const double tau = 3 * span / pow (1.05, i);
      const Fit fit = fit_at (readings, n, tau, residuals);

      if (isfinite (fit.rss) && fit.rss < best_rss)
        {
          best_rss = fit.rss;
          best_tau = tau;
        }
    }
  *approach_rss = best_rss;
  if (!(n * log (MAX (best_rss / n, least)) + 4 * log (n) < line - 2) || best_tau > span)
    return (double) NAN;
  return best_tau;
}

static void
find_drift (RwWarmUp              *self,
            const RwWarmUpReading *readings,
            guint                  n,
            const Fit             *fit,
            const double          *residuals)
{
  const double own = own_part (readings, n);
  const double scatter = n > 2 ? MAX (fit->line.scatter, own) : own;
  const double per_scatter = fit->line.scatter > 0 ? fit->line.u_slope / fit->line.scatter : 0;
  double spread = M_SQRT2 * own;

  self->drift = n > 2 ? fit->line.slope * fit->moved : readings[1].value - readings[0].value;
  self->r = n > 2 ? rw_lag1 (residuals, n) : 0;
  self->n_eff = rw_n_effective (n, self->r);
  if (n > 2 && per_scatter > 0)
    spread = per_scatter * fabs (fit->moved) * scatter * sqrt (n / self->n_eff);
  self->u = hypot (spread, readings[n - 1].share * self->drift);
}

static void
find_end (RwWarmUp              *self,
          const RwWarmUpReading *readings,
          guint                  n,
          const Fit             *fit,
          double                 nominal)
{
  const double left = MAX (readings[n - 1].step, 0.001 * fabs (nominal));

  if (self->approach)
    {
      const double far = fabs (fit->line.slope);

      self->final = fit->line.intercept;
      self->settle_at = far > left ? self->tau * log (far / left) : 0;
      self->settled = readings[n - 1].t >= self->settle_at;
    }
  else if (n > 2 && fabs (self->drift) <= left)
    {
      self->settled = TRUE;
      self->settle_at = readings[0].t;
    }
}

void
rw_warm_up_fit (RwWarmUp              *self,
                const RwWarmUpReading *readings,
                guint                  n,
                double                 nominal)
{
  g_autofree double *residuals = g_new0 (double, n + 1);
  Fit fit = { 0 };

  self->drift = self->u = self->tau = self->final = self->settle_at = (double) NAN;
  self->step = self->u_step = self->step_at = self->step_from = self->step_to = (double) NAN;
  self->n_eff = n;
  if (n < 2 || !(readings[n - 1].t > readings[0].t))
    return;
  if (n > 2)
    {
      double approach_rss;
      const double own = own_part (readings, n);

      self->tau = find_tau (readings, n, own, residuals, &approach_rss);
      if (rw_warm_up_find_step (self, readings, n, own, approach_rss))
        {
          self->tau = (double) NAN;
          return;
        }
      self->approach = !isnan (self->tau);
      fit = fit_at (readings, n, self->tau, residuals);
    }
  find_drift (self, readings, n, &fit, residuals);
  find_end (self, readings, n, &fit, nominal);
}
