/* change-statistics.c: classical statistics of one change of level, worked out apart from the program.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Straight from their definitions, sums made anew each time, so that they share no line with what they check.
 */
#include "config.h"

#include "change-statistics.h"

#include <math.h>

static double
mean (const double *y,
      guint         n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += y[i];
  return sum / n;
}

static double
squares (const double *y,
         guint         n)
{
  const double m = mean (y, n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += (y[i] - m) * (y[i] - m);
  return sum;
}

/* Σ (y − ȳ) over the first k. */
static double
partial (const double *y,
         guint         n,
         guint         k)
{
  return k * (mean (y, k) - mean (y, n));
}

ChangeStatistic
change_snht (const double *y,
             guint         n)
{
  const double s = sqrt (squares (y, n) / (n - 1)), m = mean (y, n);
  ChangeStatistic self = { 0, 0 };

  for (guint k = 1; k < n; k++)
    {
      const double before = (mean (y, k) - m) / s, behind = (mean (y + k, n - k) - m) / s;
      const double t = k * before * before + (n - k) * behind * behind;

      if (t > self.value)
        self = (ChangeStatistic){ t, k };
    }
  return self;
}

ChangeStatistic
change_buishand_range (const double *y,
                       guint         n)
{
  double most = 0, least = 0, far = 0;
  guint after = 0;

  for (guint k = 1; k < n; k++)
    {
      const double sum = partial (y, n, k);

      most = MAX (most, sum);
      least = MIN (least, sum);
      if (fabs (sum) > far)
        {
          far = fabs (sum);
          after = k;
        }
    }
  return (ChangeStatistic){ (most - least) / sqrt (squares (y, n) / n), after };
}

double
change_buishand_u (const double *y,
                   guint         n)
{
  double sum = 0;

  for (guint k = 1; k < n; k++)
    sum += pow (partial (y, n, k), 2);
  return sum / (squares (y, n) / n) / (n * (n + 1.0));
}

ChangeStatistic
change_ols_cusum (const double *y,
                  guint         n)
{
  const double s = sqrt (squares (y, n) / (n - 1));
  ChangeStatistic self = { 0, 0 };

  for (guint k = 1; k < n; k++)
    if (fabs (partial (y, n, k)) / (s * sqrt (n)) > self.value)
      self = (ChangeStatistic){ fabs (partial (y, n, k)) / (s * sqrt (n)), k };
  return self;
}

double
change_kolmogorov_tail (double value)
{
  double sum = 0;

  for (int k = 1; k < 100; k++)
    sum += 2 * (k % 2 == 1 ? 1 : -1) * exp (-2.0 * k * k * value * value);
  return sum;
}

ChangeStatistic
change_sup_f (const double *y,
              guint         n,
              double        trim)
{
  const double still = squares (y, n);
  const guint edge = (guint) floor (trim * n);
  ChangeStatistic self = { 0, 0 };

  for (guint k = edge; k <= n - edge; k++)
    {
      const double rss = squares (y, k) + squares (y + k, n - k);
      const double f = (still - rss) / (rss / (n - 2));

      if (f > self.value)
        self = (ChangeStatistic){ f, k };
    }
  return self;
}

double
change_partition (const double *y,
                  guint         n,
                  double        penalty,
                  GArray       *changes)
{
  g_autofree double *cost = g_new (double, n + 1);
  g_autofree guint *from = g_new0 (guint, n + 1);

  cost[0] = -penalty;
  for (guint end = 1; end <= n; end++)
    {
      cost[end] = INFINITY;
      for (guint start = 0; start < end; start++)
        {
          const double here = cost[start] + squares (y + start, end - start) + penalty;

          if (here < cost[end])
            {
              cost[end] = here;
              from[end] = start;
            }
        }
    }
  for (guint at = from[n]; at > 0; at = from[at])
    g_array_prepend_val (changes, at);
  return cost[n];
}
