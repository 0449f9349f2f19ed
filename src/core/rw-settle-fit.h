/* rw-settle-fit.h: what the newest samples of a stream say of where it goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* value = line, least squares. */
typedef struct
{
  double drift;   /* |slope|·span */
  double u_drift; /* its standard error */
  double scatter; /* about the line, never below step/√12 */
} RwSettleLine;

/* @n ≥ 4 samples, oldest first, times strictly rising; @step ≥ 0. O(n). */
RwSettleLine rw_settle_fit_line (const double *t, const double *value, guint n, double step);

/* Even counts average the middle two. @n from 1 to 64. O(n log n). */
double rw_settle_median (const double *values, guint n);
double rw_settle_furthest (double centre, const double *values, guint n);

G_END_DECLS
