/* rw-line-fit.c: York's line with errors in both variables: what it takes, and what it gives.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * York et al., Am. J. Phys. 72 (2004) 367; ISO/TS 28037:2010 clause 7. With the slope b, W and β of
 * rw-line-fit-slope.c:
 *
 *   a = Ym − b Xm      x = Xm + β (adjusted point)      xm = ΣWx/ΣW      u = x − xm
 *   σb² = 1/ΣWu²       σa² = 1/ΣW + xm² σb²             cov(a, b) = −xm σb²
 *   S = ΣW (Y − bX − a)², χ² with n − 2 degrees of freedom
 *
 * All is done in axes that are centred and scaled (by powers of two, which is exact) to the ranges of the
 * data.
 */
#include "config.h"

#include "rw-line-fit.h"

#include <math.h>

#include "rw-distribution.h"
#include "rw-line-fit-private.h"

static gboolean
is_good_point (const RwLinePoint *point)
{
  return isfinite (point->x) && isfinite (point->y) && isfinite (point->cov) && point->ux >= 0
         && point->uy >= 0 && isfinite (point->ux) && isfinite (point->uy)
         && fabs (point->cov) <= point->ux * point->uy * (1 + 1e-9);
}

/* A power of two near the range, so that dividing by it rounds nothing. 1 for no range. */
static double
size_of (double range)
{
  return range > 0 ? ldexp (1, ilogb (range)) : 1;
}

static void
frame_measure (RwLineFrame       *self,
               const RwLinePoint *points)
{
  double x_lo = points[0].x, x_hi = x_lo, y_lo = points[0].y, y_hi = y_lo;
  double x_sum = 0, y_sum = 0;

  for (guint i = 0; i < self->n; i++)
    {
      x_lo = MIN (x_lo, points[i].x);
      x_hi = MAX (x_hi, points[i].x);
      y_lo = MIN (y_lo, points[i].y);
      y_hi = MAX (y_hi, points[i].y);
      x_sum += (points[i].x - points[0].x) / self->n;
      y_sum += (points[i].y - points[0].y) / self->n;
    }
  self->x0 = points[0].x + x_sum;
  self->y0 = points[0].y + y_sum;
  self->sx = size_of (x_hi - x_lo);
  self->sy = size_of (y_hi - y_lo);
}

/* FALSE: the numbers are too far apart in size to be scaled. */
static gboolean
frame_scale (RwLineFrame       *self,
             const RwLinePoint *points)
{
  gboolean good = isfinite (self->x0) && isfinite (self->y0) && isfinite (self->sx)
                  && isfinite (self->sy);

  for (guint i = 0; i < self->n; i++)
    {
      const RwLinePoint *from = &points[i];
      RwLineScaled *to = &self->points[i];
      const double ux = from->ux / self->sx;
      const double uy = from->uy / self->sy;

      *to = (RwLineScaled) {
        (from->x - self->x0) / self->sx, (from->y - self->y0) / self->sy,
        ux * ux, uy * uy, from->cov / self->sx / self->sy,
      };
      good = good && isfinite (to->x) && isfinite (to->y) && isfinite (to->vx) && isfinite (to->vy)
             && isfinite (to->c);
    }
  return good;
}

/* What hangs on the slope, from the adjusted points, back in the units of the data. */
static void
describe (const RwLineFrame *self,
          double             b,
          RwLineFit         *out)
{
  const RwLineCentre centre = rw_line_frame_centre (self, b);
  double beta_mean = 0;
  double spread = 0;

  for (guint i = 0; i < self->n; i++)
    beta_mean += rw_line_scaled_weight (&self->points[i], b) / centre.weights
                 * rw_line_scaled_beta (&self->points[i], b, &centre);
  for (guint i = 0; i < self->n; i++)
    {
      const double u = rw_line_scaled_beta (&self->points[i], b, &centre) - beta_mean;

      spread += rw_line_scaled_weight (&self->points[i], b) * u * u;
    }
  out->slope = b * self->sy / self->sx;
  out->slope_u = self->sy / self->sx / sqrt (spread);
  out->x_mid = self->x0 + self->sx * (centre.x + beta_mean);
  out->y_mid = self->y0 + self->sy * (centre.y + b * beta_mean);
  out->y_mid_u = self->sy / sqrt (centre.weights);
  out->offset = out->y_mid - out->slope * out->x_mid;
  out->offset_u = hypot (out->y_mid_u, out->x_mid * out->slope_u);
  out->cov = -out->x_mid * out->slope_u * out->slope_u;
  out->chi2 = rw_line_frame_misfit (self, b);
  out->n = self->n;
  out->dof = self->n - 2;
  out->p = rw_chi2_survival (out->chi2, out->dof);
}

/* What forbids a line before any is looked for. */
static RwLineFitResult
look_over (const RwLinePoint *points,
           guint              n)
{
  gboolean moves_x = FALSE;
  gboolean moves_y = FALSE;
  gboolean exact = FALSE;
  gboolean exact_y = FALSE;

  for (guint i = 0; i < n; i++)
    {
      if (!is_good_point (&points[i]))
        return RW_LINE_FIT_BAD_POINT;
      moves_x = moves_x || points[i].x < points[0].x || points[i].x > points[0].x;
      moves_y = moves_y || points[i].y < points[0].y || points[i].y > points[0].y;
      exact_y = exact_y || points[i].uy <= 0;
      exact = exact || (points[i].ux <= 0 && points[i].uy <= 0);
    }
  if (n < 2)
    return RW_LINE_FIT_TOO_FEW;
  if (!moves_x)
    return moves_y ? RW_LINE_FIT_VERTICAL : RW_LINE_FIT_NO_SPREAD;
  return exact || (exact_y && !moves_y) ? RW_LINE_FIT_NO_ERROR : RW_LINE_FIT_DONE;
}

void
rw_line_fit_clear (RwLineFit *self)
{
  *self = (RwLineFit) { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, 0, 0, NAN, NAN };
}

RwLineFitResult
rw_line_fit (const RwLinePoint *points,
             guint              n,
             RwLineFit         *out)
{
  RwLineFitResult result = look_over (points, n);

  rw_line_fit_clear (out);
  if (result != RW_LINE_FIT_DONE)
    return result;

  g_autofree RwLineScaled *scaled = g_new (RwLineScaled, n);
  RwLineFrame frame = { .n = n, .points = scaled };
  double b;

  frame_measure (&frame, points);
  if (!frame_scale (&frame, points))
    return RW_LINE_FIT_BAD_POINT;
  result = rw_line_frame_find_slope (&frame, &b);
  if (result == RW_LINE_FIT_DONE)
    describe (&frame, b, out);
  return result;
}
