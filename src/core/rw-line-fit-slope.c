/* rw-line-fit-slope.c: the slope of smallest misfit, by York's rule.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * D. York, N. M. Evensen, M. López Martínez, J. De Basabe Delgado, Am. J. Phys. 72 (2004) 367. With variances
 * sx², sy² and covariance c of each point (variances, never weights, so that an error of 0 is legal) and
 * slope b:
 *
 *   W  = 1/(sy² + b² sx² − 2 b c)     Xm = ΣW X/ΣW   Ym = ΣW Y/ΣW   U = X − Xm   V = Y − Ym
 *   β  = W [U sy² + b V sx² − (bU + V) c]
 *   b' = ΣWβV / ΣWβU                  repeated until b stands still
 *   S  = ΣW (V − bU)²
 *
 * S has several smallest places on real data. The rule is started from ordinary least squares and from every
 * dip of S over 180 directions, and the lowest end is taken; it is refused when some direction looked at was
 * lower still. Where the points scatter more than they spread the rule alone creeps, or swings to and fro for
 * ever; there its last two steps tell where the next would be 0 (secant rule).
 *
 * A start steeper than 1 is worked with x and y exchanged, where the line is flat: W, β and S describe the
 * same line in both, so only b has to be turned round.
 */
#include "config.h"

#include <math.h>

#include "rw-line-fit-private.h"

#define MAX_STEPS 200
#define N_DIRECTIONS 180

#define STANDS_STILL 1e-14 /* of the slope */

/* In scaled axes a slope is of order one; so small a one is nothing to be exact about, or none. */
#define SMALL_SLOPE 1e-4
#define AS_GOOD_AS_VERTICAL 1e-13

double
rw_line_scaled_weight (const RwLineScaled *point,
                       double              b)
{
  return 1 / (point->vy + b * b * point->vx - 2 * b * point->c);
}

double
rw_line_scaled_beta (const RwLineScaled *point,
                     double              b,
                     const RwLineCentre *centre)
{
  const double u = point->x - centre->x;
  const double v = point->y - centre->y;

  return rw_line_scaled_weight (point, b)
         * (u * point->vy + b * v * point->vx - (b * u + v) * point->c);
}

RwLineCentre
rw_line_frame_centre (const RwLineFrame *self,
                      double             b)
{
  RwLineCentre centre = { 0 };

  for (guint i = 0; i < self->n; i++)
    {
      const double weight = rw_line_scaled_weight (&self->points[i], b);

      centre.weights += weight;
      centre.x += weight * self->points[i].x;
      centre.y += weight * self->points[i].y;
    }
  centre.x /= centre.weights;
  centre.y /= centre.weights;
  return centre;
}

/* S of the best line in the direction (along, up), a unit vector; INFINITY where a point has no error
 * across it. */
static double
misfit (const RwLineFrame *self,
        double             along,
        double             up)
{
  double weights = 0;
  double mean = 0;
  double sum = 0;

  /* One pass with a moving mean. A point adds its squared distance from the mean before it, in the share that
   * keeps the sum right when weights differ by many orders of magnitude. */
  for (guint i = 0; i < self->n; i++)
    {
      const RwLineScaled *point = &self->points[i];
      const double across = along * point->y - up * point->x;
      const double variance
          = along * along * point->vy + up * up * point->vx - 2 * along * up * point->c;

      if (!(variance > 0))
        return INFINITY;

      const double weight = 1 / variance;
      const double step = across - mean;

      sum += step * step * weight * (weights / (weights + weight));
      weights += weight;
      mean += step * (weight / weights);
    }
  return sum;
}

double
rw_line_frame_misfit (const RwLineFrame *self,
                      double             b)
{
  const double length = hypot (1, b);

  return misfit (self, 1 / length, b / length);
}

static void
exchange_axes (RwLineFrame *self)
{
  for (guint i = 0; i < self->n; i++)
    {
      RwLineScaled *point = &self->points[i];

      *point = (RwLineScaled) { point->y, point->x, point->vy, point->vx, point->c };
    }
}

/* b' − b. */
static double
york_step (const RwLineFrame *self,
           double             b)
{
  const RwLineCentre centre = rw_line_frame_centre (self, b);
  double above = 0;
  double below = 0;

  for (guint i = 0; i < self->n; i++)
    {
      const double u = self->points[i].x - centre.x;
      const double v = self->points[i].y - centre.y;
      const double pull = rw_line_scaled_weight (&self->points[i], b)
                          * rw_line_scaled_beta (&self->points[i], b, &centre);

      above += pull * (v - b * u);
      below += pull * u;
    }
  return above / below;
}

/* Moves *b to where the rule stands still. FALSE: it never does. A step that is not half the one before creeps
 * or overshoots: then on to where the line through both steps is 0. Near the end the steps shrink until only
 * rounding is left; there one that does not shrink is the end too. */
static gboolean
york_settle (const RwLineFrame *self,
             double            *b)
{
  double last = NAN;
  double last_step = INFINITY;

  for (int i = 0; i < MAX_STEPS; i++)
    {
      const double here = *b;
      const double step = york_step (self, here);
      const double size = fabs (step);
      const gboolean shrinks = size < fabs (last_step);

      if (!isfinite (step))
        return FALSE;
      *b = here + step;
      if (size <= STANDS_STILL * MAX (fabs (here), SMALL_SLOPE)
          || (!shrinks && size <= STANDS_STILL * 100))
        return TRUE;
      if (size > fabs (last_step) / 2)
        *b = here - step * (here - last) / (step - last_step);
      last = here;
      last_step = step;
    }
  return FALSE;
}

/* The lowest line so far, as a direction. */
typedef struct
{
  double along, up, misfit;
} Best;

static void
try_direction (RwLineFrame *self,
               double       along,
               double       up,
               Best        *best)
{
  const gboolean steep = fabs (up) > fabs (along);
  double b = steep ? along / up : up / along;

  if (steep)
    exchange_axes (self);

  const gboolean settled = york_settle (self, &b);
  const double found = settled ? rw_line_frame_misfit (self, b) : (double) INFINITY;

  if (steep)
    exchange_axes (self);
  if (found < best->misfit)
    *best = (Best) { steep ? b : 1, steep ? 1 : b, found };
}

static void
try_least_squares (RwLineFrame *self,
                   Best        *best)
{
  double xx = 0;
  double xy = 0;

  for (guint i = 0; i < self->n; i++)
    {
      xx += self->points[i].x * self->points[i].x;
      xy += self->points[i].x * self->points[i].y;
    }
  try_direction (self, xx, xy, best);
}

/* Follows every dip of S round the half circle. Returns the lowest S of the directions themselves. */
static double
try_dips (RwLineFrame *self,
          Best        *best)
{
  double along[N_DIRECTIONS], up[N_DIRECTIONS], seen[N_DIRECTIONS];
  double lowest = INFINITY;

  for (int i = 0; i < N_DIRECTIONS; i++)
    {
      along[i] = cos ((i + 0.5) * G_PI / N_DIRECTIONS);
      up[i] = sin ((i + 0.5) * G_PI / N_DIRECTIONS);
      seen[i] = misfit (self, along[i], up[i]);
      lowest = MIN (lowest, seen[i]);
    }
  for (int i = 0; i < N_DIRECTIONS; i++)
    {
      const int before = (i + N_DIRECTIONS - 1) % N_DIRECTIONS;
      const int after = (i + 1) % N_DIRECTIONS;

      if (seen[i] <= seen[before] && seen[i] <= seen[after])
        try_direction (self, along[i], up[i], best);
    }
  return lowest;
}

RwLineFitResult
rw_line_frame_find_slope (RwLineFrame *self,
                          double      *b)
{
  Best best = { 0, 0, INFINITY };

  try_least_squares (self, &best);

  const double lowest = try_dips (self, &best);

  if (isinf (best.misfit) || best.misfit > lowest * (1 + 1e-9) + 1e-12)
    return RW_LINE_FIT_NOT_CONVERGED;
  if (fabs (best.along) <= AS_GOOD_AS_VERTICAL * fabs (best.up))
    return RW_LINE_FIT_VERTICAL;
  *b = best.up / best.along;
  return RW_LINE_FIT_DONE;
}
