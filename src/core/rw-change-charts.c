/* rw-change-charts.c: classical charts and tests of a series: CUSUM, EWMA, Pettitt, settling, a sine of known pace.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CUSUM: high ← max (0, high + x − target − k), low likewise (Page 1954). EWMA: z ← λx + (1 − λ)z (Roberts 1959).
 * Pettitt (1979): U_t = Σ_{i ≤ t < j} sign (y_i − y_j), p ≈ 2 exp (−6K²/(n³ + n²)).
 */
#include "config.h"

#include "rw-change.h"

#include <float.h>
#include <math.h>

int
rw_cusum_push (RwCusum *self,
               double   value)
{
  self->high = MAX (0, self->high + value - self->target - self->k);
  self->low = MAX (0, self->low + self->target - value - self->k);
  if (self->high > self->h)
    return 1;
  return self->low > self->h ? -1 : 0;
}

double
rw_ewma_push (RwEwma *self,
              double  value)
{
  self->z = self->lambda * value + (1 - self->lambda) * self->z;
  return self->z;
}

double
rw_ewma_half_width (double lambda,
                    double s)
{
  return 3 * s * sqrt (lambda / (2 - lambda));
}

RwPettitt
rw_pettitt (const double *y,
            guint         n)
{
  RwPettitt self = { .p = 1 };
  double u = 0;

  for (guint t = 0; t + 1 < n; t++)
    {
      for (guint j = 0; j < n; j++)
        u += (y[t] > y[j]) - (y[t] < y[j]);
      if (fabs (u) > self.k)
        {
          self.k = fabs (u);
          self.after = t + 1;
        }
    }
  if (n > 1)
    self.p = MIN (1, 2 * exp (-6 * self.k * self.k / (pow (n, 3) + pow (n, 2))));
  return self;
}

guint
rw_settled_from (const double *y,
                 guint         n,
                 double        final,
                 double        band)
{
  /* A decimal on the very edge is inside, however its binary neighbours fall. */
  const double rounding = 8 * DBL_EPSILON * (fabs (final) + band);
  guint from = n;

  while (from > 0 && fabs (y[from - 1] - final) <= band + rounding)
    from--;
  return from;
}

/* Solves the symmetric 3 × 3 system in place by Gauss with pivots. */
static void
solve3 (double m[3][4])
{
  for (int i = 0; i < 3; i++)
    {
      int best = i;

      for (int j = i + 1; j < 3; j++)
        if (fabs (m[j][i]) > fabs (m[best][i]))
          best = j;
      for (int c = 0; c < 4; c++)
        {
          const double kept = m[i][c];

          m[i][c] = m[best][c];
          m[best][c] = kept;
        }
      for (int j = 0; j < 3; j++)
        if (j != i)
          for (int c = 3; c >= i; c--)
            m[j][c] -= m[i][c] * m[j][i] / m[i][i];
    }
}

gboolean
rw_sine_fit (const double *y,
             guint         n,
             double        frequency,
             RwSineFit    *out)
{
  double m[3][4] = { 0 };
  double rss = 0;

  if (n < 4 || !(frequency > 0 && frequency < 0.5))
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      const double basis[3] = { 1, cos (2 * M_PI * frequency * i), sin (2 * M_PI * frequency * i) };

      for (int row = 0; row < 3; row++)
        {
          for (int column = 0; column < 3; column++)
            m[row][column] += basis[row] * basis[column];
          m[row][3] += basis[row] * (y[i] - y[0]);
        }
    }
  solve3 (m);
  *out = (RwSineFit){ .offset = y[0] + m[0][3] / m[0][0], .a = m[1][3] / m[1][1], .b = m[2][3] / m[2][2] };
  out->amplitude = hypot (out->a, out->b);
  for (guint i = 0; i < n; i++)
    rss += pow (y[i] - out->offset - out->a * cos (2 * M_PI * frequency * i)
                  - out->b * sin (2 * M_PI * frequency * i), 2);
  out->residual_rms = sqrt (rss / (n - 3));
  return TRUE;
}
