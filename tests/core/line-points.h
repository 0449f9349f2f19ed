/* line-points.h: points for the tests of the line, from published sets and made up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "fixtures.h"
#include "rw-line-fit.h"

/* The points of inputs; @ux, @uy: keys of standard uncertainties, (nullable) for none. (transfer full)
 * (element-type RwLinePoint) */
GArray *points_new (JsonNode *data, const char *x, const char *y, const char *ux, const char *uy);

/* @n points round y = offset + slope·x, x in 4.5 … 5.5, with normal errors of about @ux and @uy that differ
 * from point to point by up to a factor of 3 and are known. */
GArray *points_random (GRand *random, guint n, double offset, double slope, double ux, double uy);

double random_normal (GRand *random);

RwLineFitResult points_fit (GArray *points, RwLineFit *line);
RwLineFitResult points_fit_plain (GArray *points, gboolean through_origin, RwLineFit *line);

/* Stops unless |value − expected| ≤ share·|expected|. */
void assert_close (double value, double expected, double share);
