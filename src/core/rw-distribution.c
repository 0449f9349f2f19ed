/* rw-distribution.c: χ², F and t by their incomplete gamma and beta functions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Q(χ²|ν)   = Q(ν/2, χ²/2), the upper incomplete gamma ratio                 (DLMF 8.2.4)
 *             below the mean of its density by the series of P = 1 − Q        (DLMF 8.11.4)
 *             above it by the even part of the continued fraction             (DLMF 8.9.2)
 * Q(F|d1,d2) = I_x(d2/2, d1/2) with x = d2/(d2 + d1 F)                        (DLMF 8.17, A&S 26.6.2)
 *             by the continued fraction, from whichever end converges fast    (DLMF 8.17.22, 8.17.4)
 * t          = the square root of F with d1 = 1, both tails together.
 *
 * Continued fractions are summed forwards, as products of ratios of successive numerators and
 * denominators, so that nothing overflows.
 */
#include "config.h"

#include "rw-distribution.h"

#include <float.h>
#include <math.h>

#define MAX_TERMS 100000 /* enough for 10⁸ degrees of freedom; nearly all take below 100 */

static double
log_gamma (double a)
{
  int sign;

  return lgamma_r (a, &sign);
}

/* P(a, x) over its leading factor x^a e^−x / Γ(a + 1): Σ x^k / ((a+1)…(a+k)). */
static double
gamma_series (double a,
              double x)
{
  double term = 1;
  double sum = 1;

  for (int k = 1; k < MAX_TERMS && term > sum * DBL_EPSILON / 4; k++)
    {
      term *= x / (a + k);
      sum += term;
    }
  return sum;
}

/* Summing a continued fraction b0 + a1/(b1 + a2/(b2 + …)) term by term. */
typedef struct
{
  double value, up, down;
} Fraction;

static double
not_zero (double value)
{
  return fabs (value) < DBL_MIN ? DBL_MIN : value;
}

static Fraction
fraction_begin (double b0)
{
  return (Fraction) { not_zero (b0), not_zero (b0), 0 };
}

/* FALSE when the term changed nothing any more. */
static gboolean
fraction_add (Fraction *self,
              double    a,
              double    b)
{
  self->down = 1 / not_zero (b + a * self->down);
  self->up = not_zero (b + a / self->up);

  const double change = self->up * self->down;

  self->value *= change;
  return fabs (change - 1) > DBL_EPSILON;
}

/* Q(a, x) over x^a e^−x / Γ(a). */
static double
gamma_fraction (double a,
                double x)
{
  Fraction sum = fraction_begin (x + 1 - a);

  for (int k = 1; k < MAX_TERMS; k++)
    if (!fraction_add (&sum, k * (a - k), x + 2 * k + 1 - a))
      break;
  return 1 / sum.value;
}

double
rw_chi2_survival (double chi2,
                  guint  dof)
{
  if (isnan (chi2) || chi2 < 0)
    return NAN;
  if (dof == 0 || chi2 <= 0)
    return 1;
  if (isinf (chi2))
    return 0;

  const double a = dof / 2.0;
  const double x = chi2 / 2;
  const double factor = exp (a * log (x) - x - log_gamma (a));

  if (x < a + 1)
    return CLAMP (1 - factor / a * gamma_series (a, x), 0, 1);
  return CLAMP (factor * gamma_fraction (a, x), 0, 1);
}

/* The continued fraction of I_x(a, b) over its factor x^a (1−x)^b / (a B(a, b)): 1/(1 + d1/(1 + d2/(1 + …))).
 * Fast for x < (a + 1)/(a + b + 2). */
static double
beta_fraction (double a,
               double b,
               double x)
{
  Fraction sum = fraction_begin (1);

  for (int m = 0; m < MAX_TERMS; m++)
    {
      const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
      const double even = (m + 1) * (b - m - 1) * x / ((a + 2 * m + 1) * (a + 2 * m + 2));
      const gboolean moved = fraction_add (&sum, odd, 1);

      if (!fraction_add (&sum, even, 1) && !moved)
        break;
    }
  return 1 / sum.value;
}

/* I_x(a, b); @rest is 1 − x, given apart because it may be too small to come out of a subtraction. */
static double
beta_share (double a,
            double b,
            double x,
            double rest)
{
  const double beta = log_gamma (a) + log_gamma (b) - log_gamma (a + b);
  const double factor = exp (a * log (x) + b * log (rest) - beta);

  if (x < (a + 1) / (a + b + 2))
    return factor / a * beta_fraction (a, b, x);
  return 1 - factor / b * beta_fraction (b, a, rest);
}

double
rw_f_survival (double f,
               guint  d1,
               guint  d2)
{
  if (isnan (f) || f < 0 || d1 == 0 || d2 == 0)
    return NAN;
  if (isinf (f))
    return 0;

  /* Written so that neither share overflows; f of 0 gives x = 1. */
  const double ratio = f * (d1 / (double) d2);
  const double x = 1 / (1 + ratio);
  const double rest = ratio > 1 ? 1 / (1 + 1 / ratio) : ratio / (1 + ratio);

  if (rest <= 0)
    return 1;
  if (x <= 0)
    return 0;
  return CLAMP (beta_share (d2 / 2.0, d1 / 2.0, x, rest), 0, 1);
}

double
rw_t_half_width (double p,
                 guint  dof)
{
  if (!(p > 0 && p < 1) || dof == 0)
    return NAN;

  double lo = 0;
  double hi = 1;

  while (rw_f_survival (hi * hi, 1, dof) > 1 - p && hi < 1e150)
    {
      lo = hi;
      hi *= 2;
    }
  while (hi - lo > 2 * DBL_EPSILON * hi)
    {
      const double middle = lo + (hi - lo) / 2;

      if (rw_f_survival (middle * middle, 1, dof) > 1 - p)
        lo = middle;
      else
        hi = middle;
    }
  return lo + (hi - lo) / 2;
}
