/* rw-compare-judge.c: which differences of two sessions are beyond the meters' errors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * p = 2·Φ(−|d|/u), the chance of such a difference without a change. The errors of a meter's counts are bounded, so in
 * the tails that matter here the normal distribution is on the safe side.
 *
 * Holm (1979): with p(1) ≤ p(2) ≤ … ≤ p(m) the adjusted chance of the i-th is max over j ≤ i of min (1, (m−j+1)·p(j)).
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>

#include "rw-compare-private.h"

typedef struct
{
  double p;
  guint  i;
} Ranked;

static int
compare_ranked (const void *a,
                const void *b)
{
  const Ranked *x = a, *y = b;

  if (x->p != y->p)
    return x->p < y->p ? -1 : 1;
  return x->i < y->i ? -1 : x->i > y->i;
}

void
rw_compare_holm (const double *p,
                 guint         n,
                 double       *adjusted)
{
  g_autofree Ranked *ranked = g_new (Ranked, n + 1);
  guint m = 0;
  double most = 0;

  for (guint i = 0; i < n; i++)
    {
      adjusted[i] = NAN;
      if (!isnan (p[i]))
        ranked[m++] = (Ranked){ p[i], i };
    }
  qsort (ranked, m, sizeof *ranked, compare_ranked);
  for (guint j = 0; j < m; j++)
    {
      most = MAX (most, MIN (1, (m - j) * ranked[j].p));
      adjusted[ranked[j].i] = most;
    }
}

/* z with 2·Φ(−z) = @p, by halving; to 1e-9. */
static double
two_sided_z (double p)
{
  double lo = 0, hi = 40;

  while (hi - lo > 1e-9)
    {
      const double z = (lo + hi) / 2;

      if (2 * rw_normal_cdf (-z) > p)
        lo = z;
      else
        hi = z;
    }
  return (lo + hi) / 2;
}

/* @z: what one pair among all must reach to be called changed. */
static void
conclude (RwCompareItem *item,
          double         z)
{
  if (isnan (item->p))
    {
      item->result = RW_COMPARE_UNTOLD;
      return;
    }
  if (item->p_adjusted <= RW_COMPARE_ALPHA)
    item->result = RW_COMPARE_CHANGED;
  else if (z * item->u > item->worth)
    {
      item->result = RW_COMPARE_UNTOLD;
      item->why = RW_COMPARE_WHY_COARSE;
    }
  else
    item->result = RW_COMPARE_NOT;
}

static int
compare_items (const void *a,
               const void *b)
{
  const RwCompareItem *x = a, *y = b;

  if (x->result != y->result)
    return x->result < y->result ? -1 : 1;

  const double x_z = isnan (x->p) ? -1 : fabs (x->difference) / x->u,
               y_z = isnan (y->p) ? -1 : fabs (y->difference) / y->u;

  return x_z > y_z ? -1 : x_z < y_z;
}

guint
rw_compare_judge (GArray *items)
{
  const guint n = items->len;
  g_autofree double *p = g_new (double, n + 1);
  g_autofree double *adjusted = g_new (double, n + 1);
  guint m = 0;

  for (guint i = 0; i < n; i++)
    {
      const RwCompareItem *item = &g_array_index (items, RwCompareItem, i);

      p[i] = item->u > 0 ? 2 * rw_normal_cdf (-fabs (item->difference) / item->u) : (double) NAN;
      m += !isnan (p[i]);
    }
  rw_compare_holm (p, n, adjusted);
  for (guint i = 0; i < n; i++)
    {
      RwCompareItem *item = &g_array_index (items, RwCompareItem, i);

      item->p = p[i];
      item->p_adjusted = adjusted[i];
      conclude (item, m > 0 ? two_sided_z (RW_COMPARE_ALPHA / m) : 0);
    }
  g_array_sort (items, compare_items);
  return m;
}
