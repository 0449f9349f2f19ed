/* rw-change.c: does a series lie still, drift, step, or both? Four least-squares fits, compared by BIC.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * BIC = n ln(RSS/n) + k ln n (Schwarz 1978) with k = 2, 3, 5, 6: level and sigma, a slope, and for a step its size and
 * twice its place. A place is searched for among n and so fits noise better than a plain parameter does: a change costs
 * 3 ln n in all (Zhang & Siegmund, Biometrics 63, 2007; their small term of the sides' lengths left out). RSS/n is floored at
 * the variance of rounding, resolution²/12: below it a fit describes the last digit and not the rail.
 *
 * STEP: two means; error s √(1/n₁ + 1/n₂). BOTH: one slope and two levels, the analysis of covariance:
 *   slope = Σ Sxy / Σ Sxx, step = (ȳ₂ − ȳ₁) − slope (x̄₂ − x̄₁), error s √(1/n₁ + 1/n₂ + (x̄₂ − x̄₁)²/Σ Sxx),
 * sums about the means of each side.
 */
#include "config.h"

#include "rw-change.h"

#include <float.h>
#include <math.h>

static const double charges[RW_N_CHANGES] = { 2, 3, 5, 6 };

typedef struct
{
  guint  n;
  double x, y;       /* means */
  double xx, xy, yy; /* about them */
} Side;

/* Welford's updating sums, which lose no digits to the level of the values. */
static void
take_in (Side  *side,
         double x,
         double y)
{
  const double dx = x - side->x, dy = y - side->y;

  side->n++;
  side->x += dx / side->n;
  side->y += dy / side->n;
  side->xx += dx * (x - side->x);
  side->xy += dx * (y - side->y);
  side->yy += dy * (y - side->y);
}

static Side
sum_up (const double *x,
        const double *y,
        guint         n)
{
  Side side = { 0 };

  for (guint i = 0; i < n; i++)
    take_in (&side, x[i], y[i]);
  return side;
}

static double
scatter_of (double rss,
            guint  n,
            guint  parameters)
{
  return n > parameters ? sqrt (rss / (n - parameters)) : (double) NAN;
}

static RwChangeFit
fit_line (const Side *all)
{
  RwChangeFit fit = { .slope = all->xy / all->xx };

  fit.rss = MAX (all->yy - fit.slope * all->xy, 0);
  fit.scatter = scatter_of (fit.rss, all->n, 2);
  fit.u_slope = fit.scatter / sqrt (all->xx);
  return fit;
}

static RwChangeFit
fit_step (const Side *before,
          const Side *after)
{
  RwChangeFit fit = { .after = before->n, .step = after->y - before->y, .rss = before->yy + after->yy };

  fit.scatter = scatter_of (fit.rss, before->n + after->n, 2);
  fit.u_step = fit.scatter * sqrt (1.0 / before->n + 1.0 / after->n);
  return fit;
}

static RwChangeFit
fit_both (const Side *before,
          const Side *after)
{
  const double xx = before->xx + after->xx;
  const double xy = before->xy + after->xy;
  const double apart = after->x - before->x;
  RwChangeFit fit = { .after = before->n, .slope = xy / xx };

  fit.rss = MAX (before->yy + after->yy - fit.slope * xy, 0);
  fit.step = after->y - before->y - fit.slope * apart;
  fit.scatter = scatter_of (fit.rss, before->n + after->n, 3);
  fit.u_slope = fit.scatter / sqrt (xx);
  fit.u_step = fit.scatter * sqrt (1.0 / before->n + 1.0 / after->n + apart * apart / xx);
  return fit;
}

static void
fit_steps (RwChange     *self,
           const double *x,
           const double *y,
           guint         n,
           guint         least)
{
  g_autofree Side *after = g_new0 (Side, n + 1); /* [k]: of the values from k on */
  Side before = { 0 };

  for (guint k = n; k-- > 0;)
    {
      after[k] = after[k + 1];
      take_in (&after[k], x[k], y[k]);
    }
  for (guint k = 1; k + least <= n; k++)
    {
      take_in (&before, x[k - 1], y[k - 1]);
      if (k < least)
        continue;

      const RwChangeFit step = fit_step (&before, &after[k]);
      const RwChangeFit both = fit_both (&before, &after[k]);

      if (step.rss < self->fit[RW_CHANGE_STEP].rss)
        self->fit[RW_CHANGE_STEP] = step;
      if (both.rss < self->fit[RW_CHANGE_BOTH].rss)
        self->fit[RW_CHANGE_BOTH] = both;
    }
}

static void
compare (RwChange *self,
         guint     n,
         double    resolution)
{
  for (int kind = 0; kind < RW_N_CHANGES; kind++)
    {
      RwChangeFit *fit = &self->fit[kind];
      const double spread = MAX (MAX (fit->rss / n, resolution * resolution / 12), DBL_MIN);

      fit->bic = isfinite (fit->rss) ? n * log (spread) + charges[kind] * log (n) : (double) INFINITY;
      if (kind > 0 && fit->bic < self->fit[self->kind].bic)
        self->kind = (RwChangeKind) kind;
    }
}

RwChange
rw_change_find (const double *x,
                const double *y,
                guint         n,
                guint         min_segment,
                double        resolution)
{
  RwChange self = { .kind = RW_CHANGE_NONE };

  for (int kind = 0; kind < RW_N_CHANGES; kind++)
    self.fit[kind].rss = self.fit[kind].bic = INFINITY;
  if (n < 4)
    return self;

  const Side all = sum_up (x, y, n);

  self.fit[RW_CHANGE_NONE] = (RwChangeFit){ .rss = all.yy, .scatter = scatter_of (all.yy, n, 1) };
  self.fit[RW_CHANGE_LINE] = fit_line (&all);
  fit_steps (&self, x, y, n, MAX (min_segment, 2));
  compare (&self, n, resolution);
  return self;
}

RwLeastLine
rw_least_line (const double *x,
               const double *y,
               guint         n)
{
  const Side all = sum_up (x, y, n);
  const RwChangeFit fit = fit_line (&all);

  return (RwLeastLine){ all.y - fit.slope * all.x, fit.slope, fit.u_slope, fit.scatter };
}
