/* rw-coverage.c: how far a sum of rectangular and normal errors reaches 95 % of the time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two rectangles of half-widths a, b and a normal error of σ, in closed form: each rectangle
 * averages the tail of what is there before over a box, so it takes a difference of an integral.
 * With Q the upper tail of the standard normal,
 *
 *   K0(y) = Q(y/σ)                                        σ = 0:  1 where y < 0
 *   K1(y) = ∫ K0 from y up = σ φ(y/σ) − y Q(y/σ)                  −y
 *   K2(y) = ∫ K1 from y up = ½ [(y² + σ²) Q(y/σ) − y σ φ(y/σ)]    ½ y²
 *
 *   P(X > x) = [K2(x−a−b) − K2(x−a+b) − K2(x+a−b) + K2(x+a+b)] / 4ab     two rectangles
 *            = [K1(x−a) − K1(x+a)] / 2a                                  one
 *
 * and the density the same with the K before. Newton's method in a bracket finds where P is
 * 0.025.
 *
 * Many rectangles: the sum's shape differs from a normal one by its cumulants; the odd ones are
 * 0, and those of fourth and sixth order are −6/5 Σp² and 48/7 Σp³ (p: shares of the variance;
 * cumulants of a uniform variable, from the Bernoulli numbers). Two rectangles with the same Σp²
 * and Σp³ stand for them. With p = √A cos θ, q = √A sin θ and S = cos θ + sin θ, p² + q² = A and
 * p³ + q³ = B become S³ − 3S + 2B/A^1.5 = 0, which has a trigonometric solution while B/A^1.5 ≥
 * 1/√2. Below that (three alike or more), two of the share B/A, which is that of each when all
 * are alike, stand for them, and what their fourth cumulant lacks is added by the expansion for
 * small cumulants. Worst for three that differ a little: 0.33 % low (with the term of sixth order
 * as well it was 0.6 %: the expansion does not converge).
 */
#include "config.h"

#include "rw-coverage.h"

#include <math.h>

static const double normal_95 = 1.9599639845400542;
static const double tail = 0.025;
static const double tiny_share = 1e-5; /* a smaller rectangle counts as normal: its terms cancel */
static const double tolerance = 1e-11;
static const double least_factor = 1.6, largest_factor = 2.0;
static const double inverse_sqrt_2pi = 0.39894228040143268;

/* K0, K1, K2 at @y. */
static void
integrals (double y,
           double sigma,
           double k[3])
{
  if (!(sigma > 0))
    {
      k[0] = y < 0;
      k[1] = y < 0 ? -y : 0;
      k[2] = y < 0 ? y * y / 2 : 0;
      return;
    }

  const double z = y / sigma, q = 0.5 * erfc (z * M_SQRT1_2);
  const double phi = inverse_sqrt_2pi * exp (-z * z / 2);

  k[0] = q;
  k[1] = sigma * phi - y * q;
  k[2] = ((y * y + sigma * sigma) * q - y * sigma * phi) / 2;
}

/* The chance to be above @x, and the density there. */
static double
chance_above (double  x,
              double  a,
              double  b,
              double  sigma,
              double *density)
{
  double k[4][3];

  if (!(b > 0))
    {
      integrals (x - a, sigma, k[0]);
      integrals (x + a, sigma, k[1]);
      *density = (k[0][0] - k[1][0]) / (2 * a);
      return (k[0][1] - k[1][1]) / (2 * a);
    }
  integrals (x - a - b, sigma, k[0]);
  integrals (x - a + b, sigma, k[1]);
  integrals (x + a - b, sigma, k[2]);
  integrals (x + a + b, sigma, k[3]);
  *density = (k[0][1] - k[1][1] - k[2][1] + k[3][1]) / (4 * a * b);
  return (k[0][2] - k[1][2] - k[2][2] + k[3][2]) / (4 * a * b);
}

/* Two rectangular parts, p ≥ q, of a variance of 1. */
static double
solve (double p,
       double q,
       double start)
{
  const double a = sqrt (3 * p), b = q > tiny_share ? sqrt (3 * q) : 0;
  const double sigma = sqrt (MAX (0, 1 - p - (b > 0 ? q : 0)));
  double lo = least_factor, hi = largest_factor, k = start;

  if (p <= tiny_share)
    return normal_95;
  while (hi - lo > tolerance)
    {
      double density;
      const double excess = chance_above (k, a, b, sigma, &density) - tail;

      *(excess > 0 ? &lo : &hi) = k;

      const double next = k + excess / density;

      if (fabs (next - k) <= tolerance)
        return next;
      k = next > lo && next < hi ? next : (lo + hi) / 2;
    }
  return k;
}

double
rw_coverage_factor (double rectangle,
                    double other_rectangle,
                    double normal)
{
  const double p = rectangle * rectangle, q = other_rectangle * other_rectangle;
  const double whole = p + q + normal * normal;

  if (!(whole > 0))
    return normal_95;
  return solve (MAX (p, q) / whole, MIN (p, q) / whole, normal_95);
}

/* What the fourth cumulant adds to the factor of a normal error, to second order: R. Cornish and
 * R. Fisher 1937. */
static double
expand (double sum2)
{
  const double z = normal_95, z2 = z * z, fourth = -1.2 * sum2;

  return fourth * z * (z2 - 3) / 24 -
         fourth * fourth * z * (3 * z2 * z2 - 24 * z2 + 29) / 384;
}

double
rw_coverage_factor_of_many (double sum2,
                            double sum3)
{
  if (!(sum2 > tiny_share * tiny_share))
    return normal_95;

  const double root = sqrt (MIN (sum2, 1)), ratio = sum3 / (root * root * root);

  if (ratio < M_SQRT1_2)
    {
      const double p = sum3 / sum2;

      return solve (p, p, normal_95) + expand (sum2) - expand (2 * p * p);
    }

  const double sum = 2 * cos (acos (-MIN (ratio, 1)) / 3);
  const double difference = sqrt (MAX (0, 2 - sum * sum));
  const double p = root * (sum + difference) / 2, q = root * (sum - difference) / 2;

  return solve (p / MAX (1, p + q), q / MAX (1, p + q), normal_95 - 0.08 * sum2);
}
