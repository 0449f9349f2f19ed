/* rw-series.c: in which order to inspect parts that must all be good.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-series.h"

#include "rw-repair-order.h"

/* The same ratio as for repairs, though the cost is another. */
void
rw_series_sort (guint         n,
                const double *p,
                const double *minutes,
                guint        *order)
{
  rw_repair_sort (n, p, minutes, order);
}

double
rw_series_cost (guint         n,
                const double *p,
                const double *minutes,
                const guint  *order)
{
  double cost = 0, good_so_far = 1;

  for (guint k = 0; k < n; k++)
    {
      cost += minutes[order[k]] * good_so_far;
      good_so_far *= 1 - p[order[k]];
    }
  return cost;
}
