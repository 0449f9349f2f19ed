/* rw-change-charts.c: classical charts and tests of a series: CUSUM, EWMA, Pettitt.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CUSUM: high ← max (0, high + x − target − k), low likewise (Page 1954). EWMA: z ← λx + (1 − λ)z (Roberts 1959).
 * Pettitt (1979): U_t = Σ_{i ≤ t < j} sign (y_i − y_j), p ≈ 2 exp (−6K²/(n³ + n²)).
 */
#include "config.h"

#include "rw-change.h"

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
