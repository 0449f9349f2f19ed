/* rw-robust.h: statistics that one wild reading cannot spoil, and whether a series rises or falls.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values are finite. Nothing here keeps or changes the arrays it is given.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Even counts average the middle two. NaN when @n is 0. O(n log n). */
double rw_robust_median (const double *values, guint n);

/* First and third quartile: the medians of the lower and of the upper half, the middle value of an odd count in
 * neither (Moore & McCabe). Both are the value itself when @n is 1, NaN when it is 0. */
void rw_robust_quartiles (const double *values, guint n, double *q1, double *q3);

/* Median of |value − median|, as it is: times RW_ROBUST_MAD_SIGMA it estimates the sigma of a normal spread. */
double rw_robust_mad (const double *values, guint n);
#define RW_ROBUST_MAD_SIGMA 1.4826022185056018 /* 1/Φ⁻¹(3/4) */

/* The value below which the share @p (0 < p < 1) of a standard normal lies; NaN outside. Accurate to 1e-13. */
double rw_normal_quantile (double p);

typedef struct
{
  guint   n_slopes;  /* pairs with different x */
  double  slope;     /* median of the pairs' slopes; NaN when there is none */
  double  intercept; /* median of y − slope·x */
  double  conover;   /* median y − slope·median x, the other convention */
  double  lo, hi;    /* confidence interval of the slope, between ranks; NaN when too few for this confidence */
  double  lo_rank, hi_rank; /* the same at the nearest ranks; NaN when too few */
} RwTheilSen;

/* Theil–Sen with Sen's interval (JASA 63, 1968) at @confidence (0.95): the slopes of rank (N − C)/2 and
 * (N + C)/2 + 1, C = z·√var S. Breaks down at 29 % wild points. O(n² log n): for n up to about 1500. */
RwTheilSen rw_theil_sen (const double *x, const double *y, guint n, double confidence);

typedef struct
{
  double slope;     /* median over i of the median over j of the slopes; NaN when there is none */
  double intercept; /* median of y − slope·x */
} RwRepeatedMedian;

/* Siegel's repeated median (1982): breaks down at 50 %. O(n² log n). */
RwRepeatedMedian rw_repeated_median (const double *x, const double *y, guint n);

typedef struct
{
  gint64   s;          /* concordant less discordant pairs */
  double   variance;   /* of s when nothing rises or falls, with ties in x and y */
  double   tau_a, tau_b; /* NaN when not defined */
  double   z;          /* with continuity correction */
  double   p_normal;   /* two-sided */
  gboolean exact;      /* no ties and few enough: the next two are set */
  double   p_one_exact; /* chance of at least |s| in the direction seen */
  double   p_two_exact;
} RwMannKendall;

#define RW_MANN_KENDALL_EXACT 60 /* most points for the exact chance */

/* Kendall's S of y against x (Mann's test when x is time). O(n²). */
RwMannKendall rw_mann_kendall (const double *x, const double *y, guint n);

/* Lag-1 autocorrelation of residuals about 0, r = Σ e_i e_{i+1} / Σ e²; 0 when all are 0 or n < 2. */
double rw_lag1 (const double *residuals, guint n);

/* n(1 − r)/(1 + r), within [1, n]: a negative r is not let raise it. NaN r counts as 0. */
double rw_n_effective (guint n, double r);

G_END_DECLS
