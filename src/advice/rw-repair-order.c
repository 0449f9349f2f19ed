/* rw-repair-order.c: what repairing straight away costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-repair-order.h"

static inline double
pair (const double *w,
      const double *c,
      guint         i,
      guint         j)
{
  const double a = c[i] * w[j];
  const double b = c[j] * w[i];

  return a < b ? a : b;
}

/* Four running sums, because one sum would wait for each addition: this is the innermost
 * loop of the whole search. */
double
rw_repair_cost (guint         n,
                const double *w,
                const double *c)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    {
      double s0 = c[i] * w[i], s1 = 0, s2 = 0, s3 = 0;
      guint j = 0;

      for (; j + 4 <= i; j += 4)
        {
          s0 += pair (w, c, i, j);
          s1 += pair (w, c, i, j + 1);
          s2 += pair (w, c, i, j + 2);
          s3 += pair (w, c, i, j + 3);
        }
      for (; j < i; j++)
        s0 += pair (w, c, i, j);
      sum += (s0 + s1) + (s2 + s3);
    }
  return sum;
}

double
rw_repair_cost_known (guint         n,
                      const double *w,
                      const double *c)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += c[i] * w[i];
  return sum;
}

int
rw_repair_best (guint         n,
                const double *w,
                const double *c)
{
  int best = -1;

  for (guint i = 0; i < n; i++)
    if (w[i] > 0 && (best < 0 || w[i] * c[best] > w[best] * c[i]))
      best = (int) i;
  return best;
}
