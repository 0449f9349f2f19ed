/* rw-overlook.c: where to look next for something that a look can miss.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-overlook.h"

/* The place with the most weight found a minute. left[i]: weight of place i after its looks. */
static guint
best_place (guint         n,
            const double *left,
            const double *finds,
            const double *minutes)
{
  guint best = 0;

  for (guint i = 1; i < n; i++)
    if (left[i] * finds[i] * minutes[best] > left[best] * finds[best] * minutes[i])
      best = i;
  return best;
}

guint
rw_overlook_next (guint         n,
                  const double *p,
                  const double *finds,
                  const double *minutes,
                  const guint  *looks)
{
  g_autofree double *left = g_memdup2 (p, n * sizeof (double));

  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < looks[i]; k++)
      left[i] *= 1 - finds[i];
  return best_place (n, left, finds, minutes);
}

double
rw_overlook_cost (guint         n,
                  const double *p,
                  const double *finds,
                  const double *minutes,
                  guint         most_looks)
{
  g_autofree double *left = g_memdup2 (p, n * sizeof (double));
  double cost = 0;

  for (guint k = 0; k < most_looks; k++)
    {
      const guint i = best_place (n, left, finds, minutes);
      double mass = 0;

      for (guint j = 0; j < n; j++)
        mass += left[j];

      const double before = cost;

      cost += minutes[i] * mass;
      left[i] *= 1 - finds[i];
      if (cost - before <= 1e-15 * cost)
        break;
    }
  return cost;
}
