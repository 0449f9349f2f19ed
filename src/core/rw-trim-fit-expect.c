/* rw-trim-fit-expect.c: lines, positions and values nobody measured, from a fit.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value V is a function of the unknowns with gradient q; its variance is qᵀCq, C their
 * covariance. In linear order its error is a sum of the errors of the readings: with z = Cq,
 * reading j of rail i at position k (weight w, slope b_i, τ = x_k − centre) weighs in with
 *
 *   c_j = w_j [z_level,i + z_slope,i τ_i − η_k b_i]
 *   η_k = Σ_r w_r b_r (z_level,r + z_slope,r τ_r) / H_k
 *
 * (for the reference z = 0, b = 1). From the shares c_j² u_j² / u² of those that are rectangular
 * follows how many standard uncertainties hold the truth 95 % of the time (rw-coverage.c).
 *
 * A product of two uncertain numbers has the variance b² u_x² + x² u_b² + u_x² u_b² (L. Goodman
 * 1960, J. Am. Stat. Assoc. 55, 708): the last term counts when the slope is hardly known.
 */
#include "config.h"

#include "rw-coverage.h"
#include "rw-trim-fit-private.h"

#include <math.h>
#include <string.h>

static const double normal_95 = 1.9599639845400542;

/* Sums of a value's error, a part after the other. */
typedef struct
{
  double u2;         /* variance */
  double sum2, sum3; /* Σ of squares and cubes of the variances of rectangular parts */
} Spread;

static guint
n_unknown (const RwTrimFit *self)
{
  return 2 * self->n_slots;
}

/* z = C q, and qᵀ C q. */
static double
spread_gradient (const RwTrimFit *self,
                 const double    *q,
                 double          *z)
{
  const guint n = n_unknown (self);
  double variance = 0;

  memset (z, 0, n * sizeof z[0]);
  for (guint i = 0; i < n; i++)
    if (q[i] != 0)
      for (guint j = 0; j < n; j++)
        z[j] += q[i] * self->cov[i * n + j];
  for (guint i = 0; i < n; i++)
    variance += q[i] * z[i];
  return MAX (0, variance);
}

/* z_level + z_slope τ of the cell's rail; 0 for the reference. */
static double
pull (const RwTrimFit  *self,
      const double     *z,
      guint             k,
      const RwTrimCell *cell)
{
  const int slot = self->slot[cell->rail];

  return slot < 0 ? 0 : z[2 * slot] + z[2 * slot + 1] * (self->x[k] - self->centre[cell->rail]);
}

/* Adds the rectangular readings' parts of a value with this z. */
static void
add_readings (const RwTrimFit *self,
              const double    *z,
              Spread          *spread)
{
  for (guint k = 0; k < self->n_positions; k++)
    {
      double eta = 0;

      if (!self->known[k])
        continue;
      for (guint i = self->first[k]; i < self->first[k + 1]; i++)
        {
          const RwTrimCell *cell = &self->cells[i];

          eta += cell->w * self->slope[cell->rail] * pull (self, z, k, cell);
        }
      eta /= self->h[k];
      for (guint i = self->first[k]; i < self->first[k + 1]; i++)
        {
          const RwTrimCell *cell = &self->cells[i];

          if (self->slot[cell->rail] == RW_TRIM_NO_LINE)
            continue;

          const double c = pull (self, z, k, cell) - eta * self->slope[cell->rail], c2 = c * c;

          spread->sum2 += c2 * c2 * cell->w2;
          spread->sum3 += c2 * c2 * c2 * cell->w3;
        }
    }
}

static void
tell (const Spread   *spread,
      double          value,
      RwTrimExpected *out)
{
  const double u2 = spread->u2;
  const double k = u2 > 0 ? rw_coverage_factor_of_many (spread->sum2 / pow (u2, 2),
                                                        spread->sum3 / pow (u2, 3))
                          : normal_95;

  out->value = value;
  out->u = sqrt (u2);
  out->lo = value - k * out->u;
  out->hi = value + k * out->u;
}

/* Adds the gradient of @share times the line of @rail at @x. */
static void
add_line (const RwTrimFit *self,
          guint            rail,
          double           x,
          double           share,
          double          *q)
{
  if (self->slot[rail] < 0)
    return;
  q[2 * self->slot[rail]] += share;
  q[2 * self->slot[rail] + 1] += share * (x - self->centre[rail]);
}

static double
slope_variance (const RwTrimFit *self,
                guint            rail)
{
  const guint at = 2 * (guint) self->slot[rail] + 1;

  return self->slot[rail] < 0 ? 0 : self->cov[at * n_unknown (self) + at];
}

static double
line_at (const RwTrimFit *self,
         guint            rail,
         double           x)
{
  return self->level[rail] + self->slope[rail] * (x - self->centre[rail]);
}

/* Adds what moves x of @position when lines move, @share times: −Σ w_r b_r g_r / H. */
static void
add_x (const RwTrimFit *self,
       guint            k,
       double           share,
       double          *q)
{
  for (guint i = self->first[k]; i < self->first[k + 1]; i++)
    {
      const RwTrimCell *cell = &self->cells[i];

      add_line (self, cell->rail, self->x[k],
                -share * cell->w * self->slope[cell->rail] / self->h[k], q);
    }
}

double
rw_trim_fit_at (const RwTrimFit *self,
                guint            k,
                guint            rail,
                double          *variance)
{
  g_autofree double *q = g_new0 (double, 2 * n_unknown (self) + 1);
  double *z = q + n_unknown (self);
  const double b = self->slope[rail];

  add_line (self, rail, self->x[k], 1, q);
  add_x (self, k, b, q);
  *variance = b * b / self->h[k] + spread_gradient (self, q, z);
  return line_at (self, rail, self->x[k]);
}

gboolean
rw_trim_fit_get_line (const RwTrimFit *self,
                      guint            rail,
                      RwTrimLine      *out)
{
  g_return_val_if_fail (rail < self->n_rails, FALSE);
  if (self->slot[rail] == RW_TRIM_NO_LINE)
    return FALSE;
  *out = (RwTrimLine){ .slope = self->slope[rail],
                       .offset = self->level[rail] - self->slope[rail] * self->centre[rail],
                       .n_readings = self->n_readings[rail] };
  if (rail == self->reference)
    return TRUE;

  const guint n = n_unknown (self), at = 2 * (guint) self->slot[rail];
  const double level2 = self->cov[at * n + at], both = self->cov[at * n + at + 1];
  const double slope2 = self->cov[(at + 1) * n + at + 1], centre = self->centre[rail];

  out->slope_u = sqrt (slope2);
  out->offset_u = sqrt (MAX (0, level2 - 2 * centre * both + centre * centre * slope2));
  out->cov = both - centre * slope2;
  return TRUE;
}

gboolean
rw_trim_fit_get_x (const RwTrimFit *self,
                   guint            position,
                   double          *x,
                   double          *u_x)
{
  g_return_val_if_fail (position < self->n_positions, FALSE);
  if (!self->known[position])
    return FALSE;

  double variance;

  *x = rw_trim_fit_at (self, position, self->reference, &variance);
  *u_x = sqrt (variance);
  return TRUE;
}

gboolean
rw_trim_fit_expect (const RwTrimFit *self,
                    guint            rail,
                    double           x,
                    double           u_x,
                    RwTrimExpected  *out)
{
  g_return_val_if_fail (rail < self->n_rails, FALSE);
  if (self->slot[rail] == RW_TRIM_NO_LINE)
    return FALSE;

  g_autofree double *q = g_new0 (double, 2 * n_unknown (self) + 1);
  double *z = q + n_unknown (self);
  const double b = self->slope[rail];
  Spread spread = { 0 };

  add_line (self, rail, x, 1, q);
  spread.u2 = spread_gradient (self, q, z) + (b * b + slope_variance (self, rail)) * u_x * u_x;
  add_readings (self, z, &spread);
  tell (&spread, line_at (self, rail, x), out);
  return TRUE;
}

static void
tell_itself (double          value,
             double          u,
             RwTrimExpected *out)
{
  const Spread spread = { u * u, pow (u, 4), pow (u, 6) };

  tell (&spread, value, out);
}

gboolean
rw_trim_fit_expect_from (const RwTrimFit *self,
                         guint            rail,
                         guint            from,
                         double           value,
                         double           u,
                         RwTrimExpected  *out)
{
  g_return_val_if_fail (rail < self->n_rails && from < self->n_rails, FALSE);
  if (rail == from)
    {
      tell_itself (value, u, out);
      return TRUE;
    }
  if (self->slot[rail] == RW_TRIM_NO_LINE || !rw_trim_fit_tells_x (self, from))
    return FALSE;

  g_autofree double *q = g_new0 (double, 2 * n_unknown (self) + 1);
  double *z = q + n_unknown (self);
  const double step = 1 / self->slope[from], gain = self->slope[rail] * step;
  const double x = self->centre[from] + (value - self->level[from]) * step;
  const double own = gain * gain * u * u;
  Spread spread = { 0, own * own, own * own * own };

  add_line (self, from, x, step, q);

  const double u2_x = step * step * u * u + spread_gradient (self, q, z);

  memset (q, 0, n_unknown (self) * sizeof q[0]);
  add_line (self, rail, x, 1, q);
  add_line (self, from, x, -gain, q);
  spread.u2 = own + spread_gradient (self, q, z) + slope_variance (self, rail) * u2_x;
  add_readings (self, z, &spread);
  tell (&spread, line_at (self, rail, x), out);
  return TRUE;
}
