/* change-statistics.h: classical statistics of one change of level, worked out apart from the program.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct
{
  double value;
  guint  after; /* values before the change */
} ChangeStatistic;

/* Alexandersson's standard normal homogeneity test (1986), scatter with n − 1. */
ChangeStatistic change_snht (const double *y, guint n);

/* Buishand (1982): range of the adjusted partial sums over the scatter with n, and where the largest is; and his U. */
ChangeStatistic change_buishand_range (const double *y, guint n);
double          change_buishand_u (const double *y, guint n);

/* Ploberger & Krämer (1992): the largest CUSUM of the residuals over s √n, s with n − 1; and its asymptotic chance. */
ChangeStatistic change_ols_cusum (const double *y, guint n);
double          change_kolmogorov_tail (double value);

/* Andrews (1993): the largest F of one change, @trim of the values left out at each end. */
ChangeStatistic change_sup_f (const double *y, guint n, double trim);

/* Jackson et al. (2005): the least of squares about segment means plus @penalty a change, over all partitions. @changes
 * of guint takes the values before each change. */
double change_partition (const double *y, guint n, double penalty, GArray *changes);
