/* rw-repair-order.c: what repairing straight away costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-repair-order.h"

#include <stdlib.h>

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

typedef struct
{
  double w;
  double c;
  guint  index;
} Ranked;

/* Without weight last; then decreasing w/c, by products since minutes may be 0. */
static int
compare_ranked (const void *a,
                const void *b)
{
  const Ranked *x = a;
  const Ranked *y = b;

  if ((x->w > 0) != (y->w > 0))
    return x->w > 0 ? -1 : 1;

  const double left = x->w * y->c;
  const double right = y->w * x->c;

  if (left != right)
    return left > right ? -1 : 1;
  return (x->index > y->index) - (x->index < y->index);
}

void
rw_repair_sort (guint         n,
                const double *w,
                const double *c,
                guint        *order)
{
  g_autofree Ranked *ranked = g_new (Ranked, n);

  for (guint i = 0; i < n; i++)
    ranked[i] = (Ranked){ w[i], c[i], i };
  if (n > 1)
    qsort (ranked, n, sizeof *ranked, compare_ranked);
  for (guint k = 0; k < n; k++)
    order[k] = ranked[k].index;
}

double
rw_repair_cost_service (guint         n,
                        const double *w,
                        const double *c,
                        double        service,
                        guint        *n_own)
{
  g_autofree guint *order = g_new (guint, n);
  g_autofree double *left = g_new (double, n + 1); /* weight before the k-th repair */
  double spent = 0, best;
  guint own = 0;

  rw_repair_sort (n, w, c, order);
  left[n] = 0;
  for (guint k = n; k-- > 0;)
    left[k] = left[k + 1] + w[order[k]];
  best = service * left[0];
  for (guint k = 0; k < n; k++)
    {
      spent += c[order[k]] * left[k];
      if (spent + service * left[k + 1] < best)
        {
          best = spent + service * left[k + 1];
          own = k + 1;
        }
    }
  if (n_own != NULL)
    *n_own = own;
  return best;
}
