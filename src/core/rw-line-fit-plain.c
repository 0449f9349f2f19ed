/* rw-line-fit-plain.c: ordinary least squares, when nobody knows the errors of y beforehand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GUM (JCGM 100:2008) H.3, ISO/TS 28037:2010 annex E. With dx = x − x̄ and dy = y − ȳ:
 *
 *   b = Σ dx dy / Σ dx²   s² = Σ (dy − b dx)² / (n − 2)   u(b) = s/√Σdx²   u(line at x̄) = s/√n
 *
 * Through the origin the same with x̄ = ȳ = 0, n − 1, and no uncertainty at 0. Means are taken from
 * differences to the first point, so that a large common offset costs no digits.
 */
#include "config.h"

#include "rw-line-fit.h"

#include <math.h>

#include "rw-line-fit-private.h"

static RwLineFitResult
look_over (const RwLinePoint *points,
           guint              n,
           gboolean           through_origin)
{
  const double x_still = through_origin ? 0 : n > 0 ? points[0].x : (double) NAN;
  gboolean moves_x = FALSE;
  gboolean moves_y = FALSE;

  for (guint i = 0; i < n; i++)
    {
      if (!isfinite (points[i].x) || !isfinite (points[i].y))
        return RW_LINE_FIT_BAD_POINT;
      moves_x = moves_x || points[i].x < x_still || points[i].x > x_still;
      moves_y = moves_y || points[i].y < points[0].y || points[i].y > points[0].y;
    }
  if (n < (through_origin ? 1 : 2))
    return RW_LINE_FIT_TOO_FEW;
  if (moves_x)
    return RW_LINE_FIT_DONE;
  return moves_y ? RW_LINE_FIT_VERTICAL : RW_LINE_FIT_NO_SPREAD;
}

static void
find_middle (const RwLinePoint *points,
             guint              n,
             double            *x,
             double            *y)
{
  double dx = 0;
  double dy = 0;

  for (guint i = 0; i < n; i++)
    {
      dx += (points[i].x - points[0].x) / n;
      dy += (points[i].y - points[0].y) / n;
    }
  *x = points[0].x + dx;
  *y = points[0].y + dy;
}

RwLineFitResult
rw_line_fit_plain (const RwLinePoint *points,
                   guint              n,
                   gboolean           through_origin,
                   RwLineFit         *out)
{
  const RwLineFitResult result = look_over (points, n, through_origin);

  rw_line_fit_clear (out);
  if (result != RW_LINE_FIT_DONE)
    return result;

  double x_mid = 0;
  double y_mid = 0;
  double xx = 0;
  double xy = 0;
  double rest = 0;

  if (!through_origin)
    find_middle (points, n, &x_mid, &y_mid);
  for (guint i = 0; i < n; i++)
    {
      xx += (points[i].x - x_mid) * (points[i].x - x_mid);
      xy += (points[i].x - x_mid) * (points[i].y - y_mid);
    }
  for (guint i = 0; i < n; i++)
    {
      const double left = points[i].y - y_mid - xy / xx * (points[i].x - x_mid);

      rest += left * left;
    }
  if (!isfinite (xx) || !isfinite (xy) || !isfinite (rest) || xx <= 0)
    return RW_LINE_FIT_BAD_POINT;
  out->n = n;
  out->dof = n - (through_origin ? 1 : 2);
  out->chi2 = rest;
  out->sd = out->dof > 0 ? sqrt (rest / out->dof) : (double) NAN;
  out->slope = xy / xx;
  out->slope_u = out->sd / sqrt (xx);
  out->x_mid = x_mid;
  out->y_mid = y_mid;
  out->y_mid_u = through_origin ? 0 : out->sd / sqrt (n);
  out->offset = y_mid - out->slope * x_mid;
  out->offset_u = hypot (out->y_mid_u, x_mid * out->slope_u);
  out->cov = -x_mid * out->slope_u * out->slope_u;
  return RW_LINE_FIT_DONE;
}
