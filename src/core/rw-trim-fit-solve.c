/* rw-trim-fit-solve.c: lines and positions that fit the readings best.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unknown are x of each position and level and slope of each rail that follows: V = level +
 * slope·(x − centre). Sought is the least sum of squared residuals over variances, with a square
 * for each slope's prior: the most probable values when errors and priors are normal.
 *
 * With the lines given, each x is a weighted mean (rw_trim_fit_place ()); so x is eliminated, and
 * Gauss–Newton runs on the lines alone, with the Schur complement of the full normal equations.
 * One pass costs O(readings · rails):
 *
 *   H = Σ w b²              over the rails r read at a position
 *   S = Σ w_r g_r g_rᵀ − (Σ w_r b_r g_r) (Σ w_r b_r g_r)ᵀ / H
 *   g_r = (1, x − centre)  in the place of rail r
 *
 * A step that makes the sum larger is halved. Its inverse at the end is the covariance of the
 * lines. For one follower S is Σ 1/(u_y² + b² u_x²) (1, x)(1, x)ᵀ at the adjusted points: the
 * line and the standard errors are those of York et al. 2004, Am. J. Phys. 72, 367.
 *
 * A centre of its own for each rail keeps level and slope nearly uncorrelated, so that weights
 * many decades apart do no harm. Where a difference would cancel (H − w b² when that rail
 * outweighs the others), the others are summed instead.
 */
#include "config.h"

#include "rw-trim-fit-private.h"

#include <math.h>
#include <string.h>

static const guint most_steps = 100;
static const double step_tolerance = 1e-20; /* squared length of a step in standard uncertainties */
static const double endgame = 1e-10;        /* a step below this share no longer shows in the sum */

typedef struct
{
  guint   n;        /* unknowns: 2 n_slots */
  double *matrix;   /* lower triangle of S, then its Cholesky factor */
  double *gradient; /* half the negative gradient of the sum */
  double *step;
  double  sum;
} Normal;

void
rw_trim_fit_place (RwTrimFit *self,
                   guint      k)
{
  double h = 0, sum = 0;

  for (guint i = self->first[k]; i < self->first[k + 1]; i++)
    {
      const RwTrimCell *cell = &self->cells[i];

      if (self->slot[cell->rail] == RW_TRIM_NO_LINE)
        continue;

      const double b = self->slope[cell->rail];

      h += cell->w * b * b;
      sum += cell->w * b * (cell->y - self->level[cell->rail] + b * self->centre[cell->rail]);
    }
  if (h > 0)
    {
      self->h[k] = h;
      self->x[k] = sum / h;
    }
}

/* H without the part of @but, summed anew where a difference would cancel. */
static double
weight_of_others (const RwTrimFit *self,
                  guint            k,
                  guint            but)
{
  const RwTrimCell *cell = &self->cells[but];
  const double own = cell->w * self->slope[cell->rail] * self->slope[cell->rail];
  double sum = 0;

  if (own < 0.5 * self->h[k])
    return self->h[k] - own;
  for (guint i = self->first[k]; i < self->first[k + 1]; i++)
    {
      const guint rail = self->cells[i].rail;

      if (i != but && self->slot[rail] != RW_TRIM_NO_LINE)
        sum += self->cells[i].w * self->slope[rail] * self->slope[rail];
    }
  return sum;
}

/* Adds what the cell @i of position @k shares with those before it (their rails have lower
 * slots). */
static void
add_pairs (const RwTrimFit *self,
           Normal          *normal,
           guint            k,
           guint            i,
           double           v,
           double           tau)
{
  const guint row = 2 * (guint) self->slot[self->cells[i].rail], n = normal->n;
  double *upper = &normal->matrix[row * n], *lower = upper + n;

  for (guint j = self->first[k]; j < i; j++)
    {
      const RwTrimCell *other = &self->cells[j];

      if (self->slot[other->rail] < 0)
        continue;

      const guint column = 2 * (guint) self->slot[other->rail];
      const double f = -v * other->w * self->slope[other->rail] / self->h[k];
      const double g = f * (self->x[k] - self->centre[other->rail]);

      upper[column] += f;
      upper[column + 1] += g;
      lower[column] += f * tau;
      lower[column + 1] += g * tau;
    }
}

static void
add_cell (const RwTrimFit *self,
          Normal          *normal,
          guint            k,
          guint            i)
{
  const RwTrimCell *cell = &self->cells[i];
  const int slot = self->slot[cell->rail];

  if (slot == RW_TRIM_NO_LINE)
    return;

  const double b = self->slope[cell->rail], tau = self->x[k] - self->centre[cell->rail];
  const double residual = cell->y - self->level[cell->rail] - b * tau;

  normal->sum += cell->w * residual * residual;
  if (slot == RW_TRIM_IS_REFERENCE)
    return;

  const guint row = 2 * (guint) slot, n = normal->n;
  const double f = cell->w * weight_of_others (self, k, i) / self->h[k];

  normal->gradient[row] += cell->w * residual;
  normal->gradient[row + 1] += cell->w * residual * tau;
  normal->matrix[row * n + row] += f;
  normal->matrix[(row + 1) * n + row] += f * tau;
  normal->matrix[(row + 1) * n + row + 1] += f * tau * tau;
  add_pairs (self, normal, k, i, cell->w * b, tau);
}

/* Places all positions and sums up the normal equations there. */
static void
assemble (RwTrimFit *self,
          Normal    *normal)
{
  memset (normal->matrix, 0, sizeof (double) * normal->n * normal->n);
  memset (normal->gradient, 0, sizeof (double) * normal->n);
  normal->sum = 0;
  for (guint k = 0; k < self->n_positions; k++)
    if (self->known[k])
      {
        rw_trim_fit_place (self, k);
        for (guint i = self->first[k]; i < self->first[k + 1]; i++)
          add_cell (self, normal, k, i);
      }
  for (guint rail = 0; rail < self->n_rails; rail++)
    if (self->slot[rail] >= 0)
      {
        const guint at = 2 * (guint) self->slot[rail] + 1;
        const double w = rw_trim_prior_weight (&self->priors[rail]);
        const double off = w > 0 ? self->priors[rail].slope - self->slope[rail] : 0;

        normal->gradient[at] += w * off;
        normal->matrix[at * normal->n + at] += w;
        normal->sum += w * off * off;
      }
}

/* Cholesky, in place. FALSE: @bad is the first unknown that nothing determines. */
static gboolean
factorise (double *m,
           guint   n,
           guint  *bad)
{
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j <= i; j++)
      {
        double sum = m[i * n + j];

        for (guint l = 0; l < j; l++)
          sum -= m[i * n + l] * m[j * n + l];
        if (i != j)
          m[i * n + j] = sum / m[j * n + j];
        else if (sum > 0 && isfinite (sum))
          m[i * n + i] = sqrt (sum);
        else
          {
            *bad = i;
            return FALSE;
          }
      }
  return TRUE;
}

/* @x: right side in, solution out. */
static void
substitute (const double *m,
            guint         n,
            double       *x)
{
  for (guint i = 0; i < n; i++)
    {
      for (guint j = 0; j < i; j++)
        x[i] -= m[i * n + j] * x[j];
      x[i] /= m[i * n + i];
    }
  for (guint i = n; i-- > 0;)
    {
      for (guint j = i + 1; j < n; j++)
        x[i] -= m[j * n + i] * x[j];
      x[i] /= m[i * n + i];
    }
}

static void
move_lines (RwTrimFit    *self,
            const Normal *normal,
            double        share)
{
  for (guint rail = 0; rail < self->n_rails; rail++)
    if (self->slot[rail] >= 0)
      {
        const double *step = &normal->step[2 * self->slot[rail]];

        self->level[rail] += share * step[0];
        self->slope[rail] += share * step[1];
      }
}

/* Moves along the step, or less far, until the sum is smaller. FALSE, nothing moved: it never
 * was. */
static gboolean
descend (RwTrimFit *self,
         Normal    *normal)
{
  const double before = normal->sum;

  for (double share = 1; share > 1e-6; share /= 2)
    {
      move_lines (self, normal, share);
      assemble (self, normal);
      if (normal->sum <= before)
        return TRUE;
      move_lines (self, normal, -share);
    }
  assemble (self, normal);
  return FALSE;
}

/* Expects @normal assembled. FALSE: @bad says which unknown nothing determines. Leaves the factor
 * of S in normal->matrix. */
static gboolean
iterate (RwTrimFit *self,
         Normal    *normal,
         guint     *bad)
{
  double last = INFINITY;

  for (guint i = 0; i < most_steps; i++)
    {
      double length = 0;

      if (!factorise (normal->matrix, normal->n, bad))
        return FALSE;
      memcpy (normal->step, normal->gradient, sizeof (double) * normal->n);
      substitute (normal->matrix, normal->n, normal->step);
      for (guint j = 0; j < normal->n; j++)
        length += normal->gradient[j] * normal->step[j];
      if (length <= step_tolerance)
        return TRUE;
      if (length > endgame * (1 + normal->sum))
        {
          if (!descend (self, normal))
            break;
        }
      else if (length < 0.5 * last)
        {
          move_lines (self, normal, 1);
          assemble (self, normal);
        }
      else
        return TRUE;
      last = length;
    }
  return factorise (normal->matrix, normal->n, bad);
}

static void
invert (RwTrimFit    *self,
        const Normal *normal)
{
  const guint n = normal->n;

  g_free (self->cov);
  self->cov = g_new (double, MAX (n * n, 1));
  for (guint i = 0; i < n; i++)
    {
      memset (normal->step, 0, sizeof (double) * n);
      normal->step[i] = 1;
      substitute (normal->matrix, n, normal->step);
      for (guint j = 0; j < n; j++)
        self->cov[i * n + j] = normal->step[j];
    }
}

gboolean
rw_trim_fit_solve (RwTrimFit *self,
                   int       *bad)
{
  const guint n = 2 * self->n_slots;
  g_autofree double *room = g_new (double, n * n + 2 * n + 1);
  Normal normal = { n, room, room + n * n, room + n * n + n, 0 };
  guint unknown = 0;

  assemble (self, &normal);
  if (!iterate (self, &normal, &unknown))
    {
      *bad = (int) unknown / 2;
      return FALSE;
    }
  invert (self, &normal);
  return TRUE;
}
