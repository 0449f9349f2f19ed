/* rw-line-fit-private.h: what the files of the line share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-line-fit.h"

/* The line that was not fitted. */
void rw_line_fit_clear (RwLineFit *self);

/* A point in axes that are centred and scaled to the ranges of the data; vx, vy variances, c covariance. */
typedef struct
{
  double x, y, vx, vy, c;
} RwLineScaled;

typedef struct
{
  double        x0, y0; /* centre */
  double        sx, sy; /* size, a power of two: value = centre + size·scaled */
  guint         n;
  RwLineScaled *points;
} RwLineFrame;

/* Σ of the weights, and the weighted means of x and y. */
typedef struct
{
  double weights, x, y;
} RwLineCentre;

/* W, β and S of York's equations, for the scaled slope @b. */
double       rw_line_scaled_weight (const RwLineScaled *point, double b);
double       rw_line_scaled_beta (const RwLineScaled *point, double b, const RwLineCentre *centre);
RwLineCentre rw_line_frame_centre (const RwLineFrame *self, double b);
double       rw_line_frame_misfit (const RwLineFrame *self, double b);

/* The scaled slope of smallest S. Changes the points on its way and puts them back. */
RwLineFitResult rw_line_frame_find_slope (RwLineFrame *self, double *b);
