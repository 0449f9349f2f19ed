/* rw-robust-slope.c: lines that wild points cannot turn: Theil–Sen and the repeated median.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Theil (1950), Sen (JASA 63, 1968): the median of the slopes of all pairs with different x. The interval between
 * ranks is read off linearly (Gilbert 1987, 16.5). Siegel (Biometrika 69, 1982): repeated medians.
 */
#include "config.h"

#include "rw-robust.h"

#include <math.h>
#include <stdlib.h>

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a;
  const double y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
median_residual (const double *x,
                 const double *y,
                 guint         n,
                 double        slope)
{
  g_autofree double *left = g_new (double, n + 1);

  for (guint i = 0; i < n; i++)
    left[i] = y[i] - slope * x[i];
  return rw_robust_median (left, n);
}

/* @rank counts from 1 and may lie between two. */
static double
at_rank (const double *in_order,
         guint         n,
         double        rank)
{
  if (!(rank >= 1 && rank <= n))
    return (double) NAN;

  const guint below = (guint) floor (rank);
  const double part = rank - below;

  if (part <= 0)
    return in_order[below - 1];
  return in_order[below - 1] + part * (in_order[below] - in_order[below - 1]);
}

static void
find_interval (RwTheilSen   *self,
               const double *in_order,
               double        variance,
               double        confidence)
{
  const guint n = self->n_slopes;
  const double c = rw_normal_quantile ((1 + confidence) / 2) * sqrt (variance);

  self->lo = at_rank (in_order, n, (n - c) / 2);
  self->hi = at_rank (in_order, n, (n + c) / 2 + 1);
  self->lo_rank = at_rank (in_order, n, round ((n - c) / 2));
  self->hi_rank = at_rank (in_order, n, round ((n + c) / 2 + 1));
}

RwTheilSen
rw_theil_sen (const double *x,
              const double *y,
              guint         n,
              double        confidence)
{
  g_autofree double *slopes = g_new (double, (gsize) n * (MAX (n, 1) - 1) / 2 + 1);
  RwTheilSen self = { 0 };

  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n; j++)
      if (x[j] > x[i] || x[j] < x[i])
        slopes[self.n_slopes++] = (y[j] - y[i]) / (x[j] - x[i]);
  qsort (slopes, self.n_slopes, sizeof *slopes, compare);
  self.slope = at_rank (slopes, self.n_slopes, (self.n_slopes + 1) / 2.0);
  self.intercept = median_residual (x, y, n, self.slope);
  self.conover = rw_robust_median (y, n) - self.slope * rw_robust_median (x, n);
  find_interval (&self, slopes, rw_mann_kendall (x, y, n).variance, confidence);
  return self;
}

RwRepeatedMedian
rw_repeated_median (const double *x,
                    const double *y,
                    guint         n)
{
  g_autofree double *slopes = g_new (double, n + 1);
  g_autofree double *medians = g_new (double, n + 1);
  guint n_medians = 0;

  for (guint i = 0; i < n; i++)
    {
      guint n_slopes = 0;

      for (guint j = 0; j < n; j++)
        if (x[j] > x[i] || x[j] < x[i])
          slopes[n_slopes++] = (y[j] - y[i]) / (x[j] - x[i]);
      if (n_slopes > 0)
        medians[n_medians++] = rw_robust_median (slopes, n_slopes);
    }

  const double slope = rw_robust_median (medians, n_medians);

  return (RwRepeatedMedian){ slope, median_residual (x, y, n, slope) };
}
