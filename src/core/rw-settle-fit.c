/* rw-settle-fit.c: what the newest samples of a stream say of where it goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An approach to rest is quick, a meter's filter of a fraction of a second, or slow, a capacitor that charges over
 * seconds, or one on top of the other. The quick part is an exponential; of the slow one a window of a second or
 * two shows a slope. With x = exp (−(t − now)/τ) ≥ 1 for what is past and a given τ,
 *   value = end + left·x + slope·(t − now)
 * is linear in its three constants. x and t are made orthogonal (S: sums of products about the means):
 *   t' = t − x·Sxt/Sxx,  slope = St'v/St't',  left = (Sxv − slope·Sxt)/Sxx,  RSS = Svv − Sxv²/Sxx − St'v²/St't',
 * and the τ from 0.15 to 0.9 s with the smallest RSS is taken. Without the slow part slope is 0 and t out of it.
 * The errors are those of the linearised fit with τ free: u = s/|d|, d being what of a constant's derivative no
 * mixture of the others' explains. Few samples say little of their own noise, so s² is drawn towards that of the
 * stream before them as if two more had been seen:
 *   s² = (RSS + 2·noise²)/(n − parameters + 2), τ being one of them.
 *
 * The noise of the stream comes from second differences, which a smooth curve leaves small and a few jumps do
 * not move: median |Δ²v|/(0.6745·√6), since noise of σ gives them √6·σ; rounding makes it at least step/√12.
 */
#include "config.h"

#include "rw-settle-fit.h"

#include <math.h>
#include <stdlib.h>

enum
{
  MOST = 64
};

static const double least_tau = 0.15, most_tau = 0.9; /* seconds */
static const double coarse = 1.35, fine = 1.01;       /* ratios of neighbouring τ */
static const double prior_samples = 2;

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

/* At a given τ; *@rss is what is left of the squares. */
static RwSettleApproach
fit_at (double        tau,
        const double *t,
        const double *value,
        guint         n,
        gboolean      sloping,
        double       *rss)
{
  double x[MOST] = { 0 };
  RwSettleApproach fit = { 0 };

  /* Past e³⁰ nothing is left to see of it, and sums keep their digits. */
  for (guint i = 0; i < n; i++)
    x[i] = exp (MIN ((t[n - 1] - t[i]) / tau, 30));

  const Sums xv = sum_up (x, value, n), xt = sum_up (x, t, n), tv = sum_up (t, value, n);
  const double turn = xt.xy / xt.xx; /* Sxt/Sxx */
  const double tt = tv.xx - turn * xt.xy, t_v = tv.xy - turn * xv.xy;

  if (sloping)
    fit.slope = t_v / tt;
  fit.tau = tau;
  fit.left = (xv.xy - fit.slope * xt.xy) / xv.xx;
  fit.change = fabs (fit.left) * (x[0] - 1);
  *rss = MAX (xv.yy - xv.xy * xv.xy / xv.xx - fit.slope * t_v, 0);
  return fit;
}

static double
norm_about_mean (double *column,
                 guint   n)
{
  double mean = 0, squares = 0;

  for (guint i = 0; i < n; i++)
    mean += column[i] / n;
  for (guint i = 0; i < n; i++)
    {
      column[i] -= mean;
      squares += column[i] * column[i];
    }
  return sqrt (squares);
}

/* Takes from @column what @other explains; @norm is that of @other, whose mean is 0. */
static void
take_out (double       *column,
          const double *other,
          double        norm,
          guint         n)
{
  double dot = 0;

  for (guint i = 0; norm > 0 && i < n; i++)
    dot += column[i] * other[i] / norm / norm;
  for (guint i = 0; i < n; i++)
    column[i] -= dot * other[i];
}

/* What of the column @a no mixture of a constant, @b and @c explains; all are spoilt. */
static double
get_own_part (double *a,
              double *b,
              double *c,
              guint   n)
{
  norm_about_mean (a, n);
  norm_about_mean (c, n);

  const double norm_b = norm_about_mean (b, n);

  take_out (c, b, norm_b, n);
  take_out (a, b, norm_b, n);
  take_out (a, c, norm_about_mean (c, n), n);
  return norm_about_mean (a, n);
}

/* The derivatives of the value by left, slope and τ. */
static void
derive (const RwSettleApproach *fit,
        const double           *t,
        guint                   n,
        gboolean                sloping,
        double                 *left,
        double                 *slope,
        double                 *tau)
{
  for (guint i = 0; i < n; i++)
    {
      const double ago = t[n - 1] - t[i];

      left[i] = exp (MIN (ago / fit->tau, 30));
      slope[i] = sloping ? -ago : 0;
      tau[i] = -fit->left * left[i] * ago / (fit->tau * fit->tau);
    }
}

static void
give_errors (RwSettleApproach *fit,
             const double     *t,
             guint             n,
             gboolean          sloping,
             double            rss,
             double            noise)
{
  double x[MOST] = { 0 }, y[MOST] = { 0 }, z[MOST] = { 0 };

  fit->scatter = sqrt ((rss + prior_samples * noise * noise) / (n - (sloping ? 4 : 3) + prior_samples));
  derive (fit, t, n, sloping, x, y, z);
  fit->sure = fabs (fit->left) * norm_about_mean (x, n) / fit->scatter;
  fit->u_left = fit->scatter / get_own_part (x, y, z, n);
  derive (fit, t, n, sloping, x, y, z);
  fit->u_slope = sloping ? fit->scatter / get_own_part (y, x, z, n) : (double) INFINITY;
}

RwSettleApproach
rw_settle_fit_approach (const double *t,
                        const double *value,
                        guint         n,
                        gboolean      sloping,
                        double        noise)
{
  double at = least_tau, tau = least_tau, least = INFINITY, rss;

  for (; at < most_tau * coarse; at *= coarse)
    {
      fit_at (at, t, value, n, sloping, &rss);
      if (rss < least)
        {
          least = rss;
          tau = at;
        }
    }

  /* Halved again and again towards the better neighbour. */
  for (double by = sqrt (coarse); by > fine; by = sqrt (by))
    {
      double up, down;

      fit_at (tau * by, t, value, n, sloping, &up);
      fit_at (tau / by, t, value, n, sloping, &down);
      if (MIN (up, down) < least)
        {
          tau = up < down ? tau * by : tau / by;
          least = MIN (up, down);
        }
    }

  RwSettleApproach fit = fit_at (CLAMP (tau, least_tau, most_tau), t, value, n, sloping, &rss);

  give_errors (&fit, t, n, sloping, rss, noise);
  return fit;
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

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

double
rw_settle_median (const double *values,
                  guint         n)
{
  double sorted[MOST];

  for (guint i = 0; i < n; i++)
    sorted[i] = values[i];
  qsort (sorted, n, sizeof *sorted, compare);
  return n % 2 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
}

double
rw_settle_noise (const double *value,
                 guint         n,
                 double        step)
{
  double bends[MOST] = { 0 };

  for (guint i = 0; i + 2 < n; i++)
    bends[i] = fabs (value[i] - 2 * value[i + 1] + value[i + 2]);
  return MAX (rw_settle_median (bends, n - 2) / (0.6745 * sqrt (6)), step / sqrt (12));
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
