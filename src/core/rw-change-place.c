/* rw-change-place.c: between where and where a step lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bai (Review of Economics and Statistics 79, 1997) and Bai & Perron (Econometrica 66, 1998): with d the step and s₁, s₂
 * the scatters before and after it, (true place − found place) · d²/s₁² goes, counted backwards, as the argmax of a
 * two-sided Brownian motion with drift −|v|/2. For a shift of the level alone and φ = s₂²/s₁² its distribution is
 *
 *   v < 0, a = |v|, f = 1/φ:
 *     G = −√(a/2π) e^(−a/8) − φ(φ + 2)/(φ + 1) · e^(f(1 + f)a/2) · Φ(−(1/2 + f)√a) + (a/2 − 2 + (φ + 2)²/(φ + 1)) · Φ(−√a/2)
 *   v ≥ 0:
 *     G = 1 + √(v/2πφ) e^(−v/8φ) + (2φ + 1)/(φ(φ + 1)) · e^((φ + 1)v/2) · Φ(−(2φ + 1)√v/2√φ)
 *         − ((2φ + 1)²/(φ(φ + 1)) − 2 + v/2φ) · Φ(−√v/2√φ)
 *
 * (φ = 1: Yao 1987, 97.5 % at 11.03.) Limits are rounded away from the place that was found. That the values are few
 * between readings it does not know: where half the step is more than 1.96 scatters, the nearest value on that side is
 * put on the wrong one less often than once in forty, and the limit is the place itself.
 */
#include "config.h"

#include "rw-change.h"

#include <float.h>
#include <math.h>

static const double tail = 0.025;
static const double two_sided = 1.959963984540054; /* Φ⁻¹(0.975) */
static const double most_unlike = 16;              /* of the variances: few values know no more */

/* factor · e^exponent · Φ(−z), z ≥ 0; the product is small where its parts are not. */
static double
weighted_tail (double exponent,
               double z)
{
  if (z > 25)
    return exp (exponent - z * z / 2) / (z * sqrt (2 * M_PI));
  return exp (exponent) * erfc (z * M_SQRT1_2) / 2;
}

static double
chance_below (double v,
              double phi)
{
  const double a = fabs (v);

  if (v < 0)
    {
      const double f = 1 / phi;

      return -sqrt (a / (2 * M_PI)) * exp (-a / 8)
             - phi * (phi + 2) / (phi + 1) * weighted_tail (f * (1 + f) * a / 2, (0.5 + f) * sqrt (a))
             + (a / 2 - 2 + (phi + 2) * (phi + 2) / (phi + 1)) * weighted_tail (0, sqrt (a) / 2);
    }

  const double width = 2 * phi + 1;
  const double root = sqrt (v / phi) / 2;

  return 1 + sqrt (v / (2 * M_PI * phi)) * exp (-v / (8 * phi))
         + width / (phi * (phi + 1)) * weighted_tail ((phi + 1) * v / 2, width * root)
         - (width * width / (phi * (phi + 1)) - 2 + v / (2 * phi)) * weighted_tail (0, root);
}

/* The v below which the share @p lies. */
static double
quantile (double p,
          double phi)
{
  double lo = -100 * MAX (1, phi), hi = 100 * MAX (1, phi);

  for (int i = 0; i < 80; i++)
    {
      const double middle = (lo + hi) / 2;

      if (chance_below (middle, phi) < p)
        lo = middle;
      else
        hi = middle;
    }
  return (lo + hi) / 2;
}

static double
variance (const double *y,
          guint         n,
          double        least,
          double       *mean)
{
  double sum = 0;

  *mean = 0;
  for (guint i = 0; i < n; i++)
    *mean += y[i] / n;
  for (guint i = 0; i < n; i++)
    sum += (y[i] - *mean) * (y[i] - *mean);
  return MAX (sum / n, least);
}

void
rw_change_place (const double *y,
                 guint         n,
                 guint         after,
                 double        resolution,
                 double        worth,
                 guint        *lo,
                 guint        *hi)
{
  *lo = *hi = after;
  g_return_if_fail (after > 0 && after < n && worth > 0);

  const double least = MAX (resolution * resolution / 12, DBL_MIN);
  double level[2];
  const double before = variance (y, after, least, &level[0]) / worth;
  const double behind = variance (y + after, n - after, least, &level[1]) / worth;
  const double step = level[1] - level[0];
  const double phi = CLAMP (behind / before, 1 / most_unlike, most_unlike);
  const double unit = before / (step * step);

  if (!(fabs (step) > 2 * two_sided * sqrt (before)))
    *lo = after - (guint) MIN (after - 1.0, ceil (quantile (1 - tail, phi) * unit));
  if (!(fabs (step) > 2 * two_sided * sqrt (behind)))
    *hi = after + (guint) MIN (n - 1.0 - after, -floor (quantile (tail, phi) * unit));
}
