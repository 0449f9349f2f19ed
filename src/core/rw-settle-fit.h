/* rw-settle-fit.h: what the newest samples of a stream say of where it goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* value = end + left·exp (−(t − now)/τ) + slope·(t − now), least squares, the τ included. */
typedef struct
{
  double tau;     /* seconds */
  double left;    /* of the quick part, now */
  double u_left;  /* its standard error, τ unknown */
  double sure;    /* standard errors that the quick part stands above nothing, were τ known */
  double change;  /* of the quick part from the first sample of the window to now, |…| */
  double slope;   /* of the slow part; 0 when none was asked for */
  double u_slope; /* its standard error; INFINITY then */
  double scatter; /* about the curve */
} RwSettleApproach;

/* value = line, least squares. */
typedef struct
{
  double drift;   /* |slope|·span */
  double u_drift; /* its standard error */
  double scatter; /* about the line, never below step/√12 */
} RwSettleLine;

/* @n ≥ 4 samples (@sloping: with a slow part, ≥ 6), oldest first, times strictly rising;
 * @step ≥ 0; @noise: what rw_settle_noise () makes of the stream. Both O(n). */
RwSettleApproach rw_settle_fit_approach (const double *t, const double *value, guint n, gboolean sloping,
                                         double noise);
RwSettleLine     rw_settle_fit_line (const double *t, const double *value, guint n, double step);

/* Standard deviation of the noise on a smooth curve, from second differences; never below @step/√12. @n ≥ 4. */
double rw_settle_noise (const double *value, guint n, double step);

/* Even counts average the middle two. @n from 1 to 64. O(n log n). */
double rw_settle_median (const double *values, guint n);
double rw_settle_furthest (double centre, const double *values, guint n);

G_END_DECLS
