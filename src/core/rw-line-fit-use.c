/* rw-line-fit-use.c: what a fitted line says of y at an x, and of x at a y.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * About the point (x_mid, y_mid), where height and slope of the line are uncorrelated; d = x − x_mid:
 *
 *   u²(y at x) = u²(y_mid) + d² u²(b) + b² u²(x)        = σa² + x² σb² + 2x cov(a, b) + b² u²(x)
 *   u²(x at y) = [u²(y) + u²(y_mid) + d² u²(b)] / b²    to first order (ISO/TS 28037:2010 6.4)
 *
 * E. C. Fieller, J. R. Statist. Soc. B 16 (1954) 175: all x with |y_mid + b d − y| ≤ k √(u²(y) + u²(y_mid) +
 * d² u²(b)) lie between the roots of a quadratic in d, when b² > k² u²(b); else the set has no end.
 */
#include "config.h"

#include "rw-line-fit.h"

#include <math.h>

double
rw_line_fit_value (const RwLineFit *self,
                   double           x,
                   double           u_x,
                   double          *u)
{
  const double d = x - self->x_mid;

  if (u != NULL)
    *u = hypot (hypot (self->y_mid_u, d * self->slope_u), self->slope * u_x);
  return self->y_mid + self->slope * d;
}

double
rw_line_fit_x_at (const RwLineFit *self,
                  double           y,
                  double           u_y,
                  double          *u)
{
  const double d = (y - self->y_mid) / self->slope;
  const double across = hypot (hypot (u_y, self->y_mid_u), d * self->slope_u);
  const gboolean known = isfinite (d);

  if (u != NULL)
    *u = known ? across / fabs (self->slope) : (double) NAN;
  return known ? self->x_mid + d : (double) NAN;
}

gboolean
rw_line_fit_meets (const RwLineFit *self,
                   double           y,
                   double           u_y,
                   double           k,
                   double          *lo,
                   double          *hi)
{
  const double b = self->slope;
  const double e = y - self->y_mid;
  const double height = k * hypot (u_y, self->y_mid_u);
  const double turn = k * self->slope_u;
  const double sure = (fabs (b) - turn) * (fabs (b) + turn); /* b² − k² u²(b) */

  *lo = -INFINITY;
  *hi = INFINITY;
  if (!(fabs (b) > turn) || !isfinite (e) || !isfinite (height))
    return FALSE;

  const double half = hypot (height * sqrt (sure), e * turn) / sure;

  *lo = self->x_mid + e * b / sure - half;
  *hi = self->x_mid + e * b / sure + half;
  return TRUE;
}
