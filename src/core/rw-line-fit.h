/* rw-line-fit.h: the straight line through points with errors in both variables, and what it says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * y = offset + slope·x. Any units; the comments call them units of x and of y. Errors that all points
 * share (a meter's scale) are left out here and counted afterwards.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* u: standard uncertainties, ≥ 0; one of the two may be 0. cov: covariance of the point's two errors. */
typedef struct
{
  double x, y;
  double ux, uy;
  double cov;
} RwLinePoint;

typedef enum
{
  RW_LINE_FIT_DONE,
  RW_LINE_FIT_TOO_FEW,       /* fewer than two points (through the origin: none) */
  RW_LINE_FIT_BAD_POINT,     /* a number is not finite, an uncertainty below 0, or |cov| > ux·uy */
  RW_LINE_FIT_NO_SPREAD,     /* all points are one */
  RW_LINE_FIT_VERTICAL,      /* x does not change along the line: y cannot be told from x */
  RW_LINE_FIT_NO_ERROR,      /* a point has no error at all across the line: nothing to weigh it by */
  RW_LINE_FIT_NOT_CONVERGED, /* no start led to a smallest misfit */
} RwLineFitResult;

/* A plain value. All NAN, and n and dof 0, unless fitted. */
typedef struct
{
  double slope, slope_u;
  double offset, offset_u;
  double cov;                 /* of offset and slope */
  double x_mid, y_mid;        /* the point of the line whose height and slope are uncorrelated */
  double y_mid_u;
  double chi2;                /* Σ squared residuals over their variances; errors not known: Σ squared residuals */
  guint  n, dof;
  double p;                   /* the chance of a chi2 at least as large; 1 when dof is 0; errors not known: NAN */
  double sd;                  /* errors not known: standard deviation of one y, from the residuals; else NAN */
} RwLineFit;

/* Errors known: smallest Σ (y − offset − slope·x)² / (uy² + slope²·ux² − 2·slope·cov), which treats x and y
 * alike; York et al. 2004, ISO/TS 28037 clause 7. Uncertainties by the adjusted points. */
RwLineFitResult rw_line_fit (const RwLinePoint *points, guint n, RwLineFit *out);

/* x exact, errors of y equal and not known: ordinary least squares; ISO/TS 28037 annex E, GUM H.3.
 * Only x and y of the points are looked at. @through_origin: offset 0, exactly. Uncertainties and sd are NAN
 * when dof is 0. */
RwLineFitResult rw_line_fit_plain (const RwLinePoint *points, guint n, gboolean through_origin, RwLineFit *out);

/* The line's y at @x, itself uncertain by @u_x. @u: (out) (nullable) its standard uncertainty, without that of
 * a new reading (add its own in quadrature: sd, or the meter's). */
double rw_line_fit_value (const RwLineFit *self, double x, double u_x, double *u);

/* The x where the line has the value @y, known to @u_y, and its standard uncertainty to first order; worth
 * little when |slope| is not large against slope_u: see rw_line_fit_meets (). NAN for slope 0. */
double rw_line_fit_x_at (const RwLineFit *self, double y, double u_y, double *u);

/* Where the line meets @y: every x for which offset + slope·x is within @k standard uncertainties of @y, by
 * Fieller's theorem. @k: 1.96, or rw_t_half_width () with the line's dof when errors are not known. FALSE,
 * *lo and *hi −INFINITY and INFINITY: the slope is within @k slope_u of 0, y does not follow x surely enough,
 * and no bounded interval is true. */
gboolean rw_line_fit_meets (const RwLineFit *self, double y, double u_y, double k, double *lo, double *hi);

/* How much a square would do for the line. */
typedef struct
{
  double square, square_u; /* its coefficient, units of y over x² */
  double statistic;        /* χ² with 1 degree of freedom, or F with 1 and dof */
  guint  dof;              /* left over with the square; 0 when errors are known: the statistic is χ² */
  double p;                /* the chance of at least as much bend when the truth is straight */
} RwLineBend;

/* TRUE when p < @level (0.01 is a sensible one): the points do not lie on a straight line. R² is no such test.
 * Errors not known: ux, uy and cov 0 for every point; then F, the added square against what is left. Known: the
 * fall of χ². FALSE with p = 1 and other numbers NAN where nothing can be told: no line, fewer than three
 * different x, or (errors not known) fewer than four points. @out: (nullable). */
gboolean rw_line_fit_is_curved (const RwLinePoint *points, guint n, double level, RwLineBend *out);

G_END_DECLS
