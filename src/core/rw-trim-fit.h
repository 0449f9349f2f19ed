/* rw-trim-fit.h: what a turn of the trim does to every rail, from readings at a few positions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rail i at trim position k: V_ik = a_i + b_i·x_k, with x the reference rail (a = 0, b = 1
 * there). All values are volts as the meter shows them: a scale error common to all readings
 * keeps the lines straight and the slopes as they are, so it stays out of the fit.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What is believed of a rail's slope before any reading: normal. */
typedef struct
{
  double slope;   /* volts a volt of the reference */
  double slope_u; /* standard deviation; INFINITY: nothing is known */
} RwTrimPrior;

/* One reading of one rail at one trim position. */
typedef struct
{
  guint    rail;     /* index; the reference is one of them */
  guint    position; /* 0 … n_positions − 1 */
  double   value;    /* volts as shown */
  double   u;        /* its own standard uncertainty, volts, ≥ 0; 0: exact, and never an outlier */
  gboolean normal;   /* the error is normal; FALSE: rectangular, ±u·√3 (a meter's counts) */
} RwTrimReading;

/* V = offset + slope·x. Volts. */
typedef struct
{
  double slope, slope_u;
  double offset, offset_u;
  double cov; /* of offset and slope */
  guint  n_readings;
} RwTrimLine;

/* A value nobody measured. Volts as the meter would show them, without that reading's own error. */
typedef struct
{
  double value;
  double u;      /* standard uncertainty, the meter's common part left out */
  double lo, hi; /* holds the truth 95 % of the time; NaN never */
} RwTrimExpected;

/* Immutable and reference-counted. */
typedef struct _RwTrimFit RwTrimFit;

/* @priors: one a rail; that of @reference is not looked at. Rails without readings have no line.
 * Readings that are not finite or of no rail or position there is are passed over. O(readings ·
 * rails); more only where readings do not fit together and an outlier is looked for. Outliers are
 * named and left out only where the data can name them. (transfer full), never NULL. */
RwTrimFit *rw_trim_fit_new (guint n_rails, guint reference, const RwTrimPrior *priors,
                            guint n_positions, const RwTrimReading *readings, guint n_readings);
RwTrimFit *rw_trim_fit_ref (RwTrimFit *self);
void       rw_trim_fit_unref (RwTrimFit *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwTrimFit, rw_trim_fit_unref)

guint rw_trim_fit_get_n_rails (const RwTrimFit *self);
guint rw_trim_fit_get_reference (const RwTrimFit *self);

/* FALSE, *out untouched: nothing ties this rail to the reference (no reading of it, or none at a
 * position whose x is known). The reference itself: slope 1, offset 0, both exact. */
gboolean rw_trim_fit_get_line (const RwTrimFit *self, guint rail, RwTrimLine *out);

/* The reference at a position: measured there, or inferred from the rails that were, or both.
 * FALSE: not known. */
gboolean rw_trim_fit_get_x (const RwTrimFit *self, guint position, double *x, double *u_x);

/* What @rail will show at reference value @x, itself uncertain by @u_x (standard, normal; 0:
 * exact). FALSE: the rail has no line. */
gboolean rw_trim_fit_expect (const RwTrimFit *self, guint rail, double x, double u_x,
                             RwTrimExpected *out);

/* What @rail will show while @from shows @value with own standard uncertainty @u (rectangular, as
 * a meter's counts are; a reading that is not in the fit). Lines of both are correlated through
 * the positions they share: that is counted. FALSE: no line, or @from does not follow the trim
 * surely enough to tell (|slope| < 3 slope_u). @rail == @from: the value itself. */
gboolean rw_trim_fit_expect_from (const RwTrimFit *self, guint rail, guint from, double value,
                                  double u,
                                  RwTrimExpected *out);

/* Misfit: Σ squared residuals over variances at the best fit, outliers left out, its degrees of
 * freedom (0: none left over; a slope that its prior determines uses up none) and the chance of
 * one at least as large when the errors are as stated. 1 when dof is 0. */
double rw_trim_fit_get_chi2 (const RwTrimFit *self);
guint  rw_trim_fit_get_dof (const RwTrimFit *self);
double rw_trim_fit_get_p (const RwTrimFit *self);

/* Readings named as outliers: indices into what rw_trim_fit_new () was given. */
guint rw_trim_fit_get_n_outliers (const RwTrimFit *self);
guint rw_trim_fit_get_outlier (const RwTrimFit *self, guint i);
/* The data do not fit together, but too few readings are there to say which is wrong. All uncertainties are
 * then those of readings whose errors are √(chi2 / dof) times what was stated. */
gboolean rw_trim_fit_get_unclear (const RwTrimFit *self);

G_END_DECLS
