/* rw-robust.c: medians, quartiles, MAD; correlation of neighbours; the normal quantile.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The quantile starts from a rational approximation good to 4.5e-4 (Abramowitz & Stegun 26.2.23) and is refined by
 * Halley's step on erfc, which triples the digits each time.
 */
#include "config.h"

#include "rw-robust.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a;
  const double y = *(const double *) b;

  return (x > y) - (x < y);
}

static double *
sorted (const double *values,
        guint         n)
{
  double *copy = g_new (double, n + 1);

  if (n > 0)
    memcpy (copy, values, n * sizeof *values);
  qsort (copy, n, sizeof *copy, compare);
  return copy;
}

static double
middle (const double *in_order,
        guint         n)
{
  if (n == 0)
    return (double) NAN;
  return n % 2 == 1 ? in_order[n / 2] : in_order[n / 2 - 1] + (in_order[n / 2] - in_order[n / 2 - 1]) / 2;
}

double
rw_robust_median (const double *values,
                  guint         n)
{
  g_autofree double *in_order = sorted (values, n);

  return middle (in_order, n);
}

void
rw_robust_quartiles (const double *values,
                     guint         n,
                     double       *q1,
                     double       *q3)
{
  g_autofree double *in_order = sorted (values, n);
  const guint half = n / 2;

  *q1 = n == 1 ? in_order[0] : middle (in_order, half);
  *q3 = n == 1 ? in_order[0] : middle (in_order + n - half, half);
}

double
rw_robust_mad (const double *values,
               guint         n)
{
  g_autofree double *off = g_new (double, n + 1);
  const double median = rw_robust_median (values, n);

  for (guint i = 0; i < n; i++)
    off[i] = fabs (values[i] - median);
  return rw_robust_median (off, n);
}

/* For 0 < p ≤ 1/2. */
static double
lower_quantile (double p)
{
  const double t = sqrt (-2 * log (p));
  double x = -(t - (2.515517 + t * (0.802853 + t * 0.010328))
                     / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))));

  for (int i = 0; i < 3; i++)
    {
      const double off = (erfc (-x / M_SQRT2) / 2 - p) * sqrt (2 * M_PI) * exp (x * x / 2);

      x -= off / (1 + x * off / 2);
    }
  return x;
}

double
rw_normal_quantile (double p)
{
  if (!(p > 0 && p < 1))
    return (double) NAN;
  return p <= 0.5 ? lower_quantile (p) : -lower_quantile (1 - p);
}

double
rw_lag1 (const double *residuals,
         guint         n)
{
  double own = 0, lagged = 0;

  for (guint i = 0; i < n; i++)
    {
      own += residuals[i] * residuals[i];
      if (i + 1 < n)
        lagged += residuals[i] * residuals[i + 1];
    }
  return own > 0 ? lagged / own : 0;
}

double
rw_n_effective (guint  n,
                double r)
{
  if (isnan (r))
    return n;
  return CLAMP (n * (1 - r) / (1 + r), MIN (n, 1), n);
}
