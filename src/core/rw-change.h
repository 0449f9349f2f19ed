/* rw-change.h: does a series lie still, drift, step, or both?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A trend test fires on a step and a step test on a trend: so all four are fitted and compared.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_CHANGE_NONE,
  RW_CHANGE_LINE,
  RW_CHANGE_STEP,
  RW_CHANGE_BOTH, /* one slope and one step */
  RW_N_CHANGES,
} RwChangeKind;

typedef struct
{
  double bic;     /* n ln(RSS/n) + k ln n, k = 2, 3, 5, 6; infinite when it cannot be fitted */
  double rss;     /* least squares, rounding not added */
  guint  after;   /* STEP and BOTH: values before the step; value [after] is the first of the new level */
  double slope, u_slope; /* LINE and BOTH; 0 otherwise. per unit of x; u not corrected for correlation */
  double step, u_step;   /* STEP and BOTH */
  double scatter; /* residual standard deviation, n − parameters of level and slope */
} RwChangeFit;

typedef struct
{
  RwChangeKind kind; /* of the least BIC; NONE when n is below 4 */
  RwChangeFit  fit[RW_N_CHANGES];
} RwChange;

/* @x strictly rising, @resolution the last digit (≥ 0): RSS/n is floored at resolution²/12. @min_segment ≥ 2 values
 * on each side of a step. O(n). */
RwChange rw_change_find (const double *x, const double *y, guint n, guint min_segment, double resolution);

/* Between how many and how many values lie before a step that was found after @after of them (0 < after < n), at 95 %:
 * Bai's limits, each side with its own scatter. @y without the drift that goes with the step; @resolution as above;
 * @worth what a value is worth of an independent one, n_eff/n, 0…1. */
void rw_change_place (const double *y, guint n, guint after, double resolution, double worth, guint *lo, guint *hi);

/* Intercept, slope and their errors by least squares; n ≥ 3. */
typedef struct
{
  double intercept, slope, u_slope, scatter;
} RwLeastLine;
RwLeastLine rw_least_line (const double *x, const double *y, guint n);

/* Pettitt's test (1979): the largest |U_t|, where (values before), and its approximate two-sided chance. */
typedef struct
{
  double k;
  guint  after;
  double p;
} RwPettitt;
RwPettitt rw_pettitt (const double *y, guint n);

/* Tabular CUSUM (Page 1954), one value at a time. */
typedef struct
{
  double target, k, h; /* k: slack, h: threshold, in the unit of the values */
  double high, low;    /* both ≥ 0; start at 0 */
} RwCusum;
int rw_cusum_push (RwCusum *self, double value); /* +1: high > h, −1: low > h, 0: neither */

/* Exponentially weighted moving average (Roberts 1959); limits z0 ± 3 s √(λ/(2 − λ)). */
typedef struct
{
  double lambda, z; /* 0 < lambda ≤ 1; z starts at the target */
} RwEwma;
double rw_ewma_push (RwEwma *self, double value);
double rw_ewma_half_width (double lambda, double s);

G_END_DECLS
