/* rw-axis.h: a straight map from numbers to pixels, which knows its round numbers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-ticks.h"

G_BEGIN_DECLS

/* A plain value. Invariant: lo < hi, all finite, whatever it was made from. */
typedef struct
{
  double   lo, hi;   /* numbers at the two ends */
  double   from, to; /* pixels at lo and at hi; to < from for an axis that grows upwards */
  gboolean flat;     /* the range given was empty or no range: it was widened */
} RwAxis;

/* Any numbers: a flat range is widened about its value, one that is not finite becomes [0, 1], a
 * reversed one is turned round. */
RwAxis rw_axis_make (double lo, double hi, double from, double to);

double rw_axis_to_pixel (const RwAxis *axis, double value);
double rw_axis_to_value (const RwAxis *axis, double pixel); /* lo when the axis has no length */

/* Pixels a unit; negative for an axis that grows upwards. */
double rw_axis_slope (const RwAxis *axis);

/* −1 below lo, +1 above hi, 0 between (also for NaN). */
int rw_axis_beyond (const RwAxis *axis, double value);

/* Ticks no closer than @spacing pixels. */
RwTicks rw_axis_ticks (const RwAxis *axis, double spacing);
RwTicks rw_axis_clock_ticks (const RwAxis *axis, double spacing);

G_END_DECLS
