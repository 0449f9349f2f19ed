/* rw-settle-fit.c: what the newest samples of a stream say of where it goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-settle-fit.h"

#include <math.h>

enum
{
  MOST = 64
};

typedef struct
{
  double xx, xy, yy;
} Sums;

/* About the means, in two passes. */
static Sums
sum_up (const double *x,
        const double *y,
        guint         n)
{
  double mean_x = 0, mean_y = 0;
  Sums sums = { 0 };

  for (guint i = 0; i < n; i++)
    {
      mean_x += x[i] / n;
      mean_y += y[i] / n;
    }
  for (guint i = 0; i < n; i++)
    {
      sums.xx += (x[i] - mean_x) * (x[i] - mean_x);
      sums.xy += (x[i] - mean_x) * (y[i] - mean_y);
      sums.yy += (y[i] - mean_y) * (y[i] - mean_y);
    }
  return sums;
}

RwSettleLine
rw_settle_fit_line (const double *t,
                    const double *value,
                    guint         n,
                    double        step)
{
  const Sums sums = sum_up (t, value, n);
  const double span = t[n - 1] - t[0];
  const double rss = MAX (sums.yy - sums.xy * sums.xy / sums.xx, 0);
  const double scatter = MAX (sqrt (rss / (n - 2)), step / sqrt (12));

  return (RwSettleLine){ fabs (sums.xy / sums.xx) * span, scatter * span / sqrt (sums.xx), scatter };
}

double
rw_settle_median (const double *values,
                  guint         n)
{
  double sorted[MOST];

  /* So few are sorted fastest by insertion. */
  for (guint i = 0; i < n; i++)
    {
      guint at = i;

      for (; at > 0 && sorted[at - 1] > values[i]; at--)
        sorted[at] = sorted[at - 1];
      sorted[at] = values[i];
    }
  return n % 2 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
}

double
rw_settle_furthest (double        centre,
                    const double *values,
                    guint         n)
{
  double furthest = 0;

  for (guint i = 0; i < n; i++)
    furthest = MAX (furthest, fabs (values[i] - centre));
  return furthest;
}
