/* rw-axis.c: a straight map from numbers to pixels.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-axis.h"

#include <math.h>

/* Narrower than this against its own size, a range is flat: doubles no longer fill it evenly. */
static const double narrowest = 1e-9;

static void
widen (RwAxis *axis)
{
  const double middle = axis->lo + (axis->hi - axis->lo) / 2;
  const double half = middle != 0 ? fabs (middle) * 0.05 : 0.5;

  axis->flat = TRUE;
  axis->lo = middle - half;
  axis->hi = middle + half;
}

RwAxis
rw_axis_make (double lo,
              double hi,
              double from,
              double to)
{
  RwAxis axis = { MIN (lo, hi), MAX (lo, hi), isfinite (from) ? from : 0, isfinite (to) ? to : 0,
                  FALSE };

  if (!isfinite (lo) || !isfinite (hi) || !isfinite (hi - lo))
    axis = (RwAxis){ 0, 1, axis.from, axis.to, TRUE };
  else if (axis.hi - axis.lo <= narrowest * MAX (fabs (axis.lo), fabs (axis.hi)))
    widen (&axis);
  if (!(axis.hi > axis.lo)) /* a number too small to be widened by its own share */
    axis.hi = axis.lo + 1;
  return axis;
}

double
rw_axis_slope (const RwAxis *axis)
{
  return (axis->to - axis->from) / (axis->hi - axis->lo);
}

double
rw_axis_to_pixel (const RwAxis *axis,
                  double        value)
{
  return axis->from + (value - axis->lo) * rw_axis_slope (axis);
}

double
rw_axis_to_value (const RwAxis *axis,
                  double        pixel)
{
  const double slope = rw_axis_slope (axis);

  return slope != 0 ? axis->lo + (pixel - axis->from) / slope : axis->lo;
}

int
rw_axis_beyond (const RwAxis *axis,
                double        value)
{
  if (value < axis->lo)
    return -1;
  return value > axis->hi ? 1 : 0;
}

/* How many steps of @spacing pixels the axis has room for. */
static double
room (const RwAxis *axis,
      double        spacing)
{
  return fabs (axis->to - axis->from) / MAX (spacing, 1);
}

RwTicks
rw_axis_ticks (const RwAxis *axis,
               double        spacing)
{
  return rw_ticks_decimal (axis->lo, axis->hi, room (axis, spacing));
}

RwTicks
rw_axis_clock_ticks (const RwAxis *axis,
                     double        spacing)
{
  return rw_ticks_clock (axis->lo, axis->hi, room (axis, spacing));
}
