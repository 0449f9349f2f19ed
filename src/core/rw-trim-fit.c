/* rw-trim-fit.c: what a turn of the trim does to every rail, from readings at a few positions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A position where the reference was not read is known through a rail whose slope is known to a
 * third or better, from the other positions or its prior. So lines and positions are found in
 * rounds: positions with the reference, lines of rails read there, positions with one of those
 * rails, and so on. A further round needs a further line or a slope that became sure, so there
 * are few.
 *
 * Misfit: the squared residuals of the readings over their variances; priors are no part of it. A
 * slope that its prior determines uses up no degree of freedom; one that the readings determine
 * uses up one; between them it is 1 − (what is left of the prior's variance), and the sum is
 * rounded.
 */
#include "config.h"

#include "rw-trim-fit-private.h"

#include <math.h>

#include "rw-distribution.h"

static const double least_prior_u = 1e-6;
static const double steepest = 1e12; /* a prior beyond is none */

double
rw_trim_prior_weight (const RwTrimPrior *prior)
{
  if (!(fabs (prior->slope) < steepest) || !(fabs (prior->slope_u) < steepest))
    return 0;

  const double u = MAX (fabs (prior->slope_u), least_prior_u * MAX (fabs (prior->slope), 1e-3));

  return 1 / (u * u);
}

static gboolean
has_reference (const RwTrimFit *self,
               guint            k)
{
  for (guint i = self->first[k]; i < self->first[k + 1]; i++)
    if (self->cells[i].rail == self->reference)
      return TRUE;
  return FALSE;
}

/* A first line through the positions known by now, as if their x were exact. FALSE: they
 * determine none. */
static gboolean
start_line (RwTrimFit *self,
            guint      rail)
{
  const double prior = rw_trim_prior_weight (&self->priors[rail]);
  double w = 0, x = 0, y = 0, xx = 0, xy = 0;

  for (guint k = 0; k < self->n_positions; k++)
    for (guint i = self->first[k]; i < self->first[k + 1]; i++)
      if (self->known[k] && self->cells[i].rail == rail)
        {
          const RwTrimCell *cell = &self->cells[i];
          const double dx = self->x[k] - x, dy = cell->y - y, share = cell->w / (w + cell->w);

          xx += w * share * dx * dx;
          xy += w * share * dx * dy;
          x += share * dx;
          y += share * dy;
          w += cell->w;
        }
  if (!(w > 0) || (prior == 0 && !(xx > 1e-20 * w * MAX (1, x * x))))
    return FALSE;
  self->centre[rail] = x;
  self->level[rail] = y;
  self->slope[rail] = prior > 0 ? (xy + prior * self->priors[rail].slope) / (xx + prior) : xy / xx;
  return TRUE;
}

/* Gives every rail that can have a line now a first one and a slot. @barred: rails that proved to
 * have none. */
static void
give_slots (RwTrimFit      *self,
            const gboolean *barred)
{
  self->n_slots = 0;
  for (guint rail = 0; rail < self->n_rails; rail++)
    {
      if (rail == self->reference)
        continue;

      const gboolean had = self->slot[rail] >= 0;

      self->slot[rail] = RW_TRIM_NO_LINE;
      if (!barred[rail] && (had || start_line (self, rail)))
        self->slot[rail] = (int) self->n_slots++;
    }
}

static void
bar (RwTrimFit *self,
     gboolean  *barred,
     int        slot)
{
  for (guint rail = 0; rail < self->n_rails; rail++)
    if (self->slot[rail] == slot)
      barred[rail] = TRUE;
}

gboolean
rw_trim_fit_tells_x (const RwTrimFit *self,
                     guint            rail)
{
  if (self->slot[rail] < 0)
    return self->slot[rail] == RW_TRIM_IS_REFERENCE;

  const guint at = 2 * (guint) self->slot[rail] + 1, n = 2 * self->n_slots;

  return fabs (self->slope[rail]) >= RW_TRIM_SURELY * sqrt (self->cov[at * n + at]);
}

/* Marks the positions that have become known. FALSE: none has. */
static gboolean
spread (RwTrimFit *self)
{
  gboolean any = FALSE;

  for (guint k = 0; k < self->n_positions; k++)
    for (guint i = self->first[k]; i < self->first[k + 1] && !self->known[k]; i++)
      if (rw_trim_fit_tells_x (self, self->cells[i].rail))
        {
          self->known[k] = any = TRUE;
          rw_trim_fit_place (self, k);
        }
  return any;
}

static void
find_lines (RwTrimFit *self)
{
  g_autofree gboolean *barred = g_new0 (gboolean, self->n_rails);

  for (guint rail = 0; rail < self->n_rails; rail++)
    self->slot[rail] = RW_TRIM_NO_LINE;
  self->slot[self->reference] = RW_TRIM_IS_REFERENCE;
  self->slope[self->reference] = 1;
  for (guint k = 0; k < self->n_positions; k++)
    if ((self->known[k] = has_reference (self, k)))
      rw_trim_fit_place (self, k);
  do
    {
      int bad;

      give_slots (self, barred);
      while (!rw_trim_fit_solve (self, &bad))
        {
          bar (self, barred, bad);
          give_slots (self, barred);
        }
    }
  while (spread (self));
}

/* Adds what the cell says to the misfit. Returns how many readings are in it. */
static guint
judge_cell (RwTrimFit        *self,
            guint             k,
            const RwTrimCell *cell)
{
  const double tau = self->x[k] - self->centre[cell->rail];
  const double residual = cell->y - self->level[cell->rail] - self->slope[cell->rail] * tau;

  self->chi2 += cell->chi2 + cell->w * residual * residual;
  self->n_readings[cell->rail] += cell->n;
  return cell->n;
}

static void
judge (RwTrimFit *self)
{
  const guint n = 2 * self->n_slots;
  double left_over = 0;

  for (guint k = 0; k < self->n_positions; k++)
    if (self->known[k])
      {
        left_over -= 1;
        for (guint i = self->first[k]; i < self->first[k + 1]; i++)
          if (self->slot[self->cells[i].rail] != RW_TRIM_NO_LINE)
            left_over += judge_cell (self, k, &self->cells[i]);
      }
  for (guint rail = 0; rail < self->n_rails; rail++)
    if (self->slot[rail] >= 0)
      {
        const guint at = 2 * (guint) self->slot[rail] + 1;

        left_over -= 2 - self->cov[at * n + at] * rw_trim_prior_weight (&self->priors[rail]);
      }
  self->dof = left_over > 0 ? (guint) lrint (left_over) : 0;
  self->p = self->dof > 0 ? rw_chi2_survival (self->chi2, self->dof) : 1;
}

RwTrimFit *
rw_trim_fit_make (guint                n_rails,
                  guint                reference,
                  const RwTrimPrior   *priors,
                  guint                n_positions,
                  const RwTrimReading *readings,
                  guint                n_readings,
                  const gboolean      *left_out)
{
  RwTrimFit *self = g_new0 (RwTrimFit, 1);

  g_atomic_ref_count_init (&self->refs);
  self->n_rails = n_rails;
  self->reference = reference;
  self->n_positions = n_positions;
  self->priors = g_memdup2 (priors, n_rails * sizeof priors[0]);
  self->first = g_new0 (guint, n_positions + 1);
  self->known = g_new0 (gboolean, n_positions);
  self->x = g_new0 (double, n_positions);
  self->h = g_new0 (double, n_positions);
  self->slot = g_new0 (int, n_rails);
  self->level = g_new0 (double, n_rails);
  self->slope = g_new0 (double, n_rails);
  self->centre = g_new0 (double, n_rails);
  self->n_readings = g_new0 (guint, n_rails);
  rw_trim_fit_make_cells (self, readings, n_readings, left_out);
  find_lines (self);
  judge (self);
  return self;
}

void
rw_trim_search_clear (RwTrimSearch *self)
{
  g_clear_pointer (&self->first, rw_trim_fit_unref);
  g_clear_pointer (&self->last, rw_trim_fit_unref);
  g_clear_pointer (&self->left_out, g_free);
}

RwTrimFit *
rw_trim_fit_search (guint                n_rails,
                    guint                reference,
                    const RwTrimPrior   *priors,
                    guint                n_positions,
                    const RwTrimReading *readings,
                    guint                n_readings,
                    RwTrimSearch        *search)
{
  g_assert (reference < n_rails);

  *search = (RwTrimSearch){ .least_lead = INFINITY };
  search->first = rw_trim_fit_make (n_rails, reference, priors, n_positions, readings, n_readings, NULL);
  if (search->first->p < RW_TRIM_MISFIT_P)
    return rw_trim_fit_find_outliers (search, readings, n_readings);
  search->last = rw_trim_fit_ref (search->first);
  return rw_trim_fit_ref (search->first);
}

RwTrimFit *
rw_trim_fit_new (guint                n_rails,
                 guint                reference,
                 const RwTrimPrior   *priors,
                 guint                n_positions,
                 const RwTrimReading *readings,
                 guint                n_readings)
{
  g_auto (RwTrimSearch) search;

  return rw_trim_fit_search (n_rails, reference, priors, n_positions, readings, n_readings, &search);
}

RwTrimFit *
rw_trim_fit_ref (RwTrimFit *self)
{
  g_atomic_ref_count_inc (&self->refs);
  return self;
}

void
rw_trim_fit_unref (RwTrimFit *self)
{
  if (!g_atomic_ref_count_dec (&self->refs))
    return;
  g_free (self->priors);
  g_free (self->cells);
  g_free (self->first);
  g_free (self->known);
  g_free (self->x);
  g_free (self->h);
  g_free (self->slot);
  g_free (self->level);
  g_free (self->slope);
  g_free (self->centre);
  g_free (self->n_readings);
  g_free (self->cov);
  g_free (self->outliers);
  g_free (self);
}

guint
rw_trim_fit_get_n_rails (const RwTrimFit *self)
{
  return self->n_rails;
}

guint
rw_trim_fit_get_reference (const RwTrimFit *self)
{
  return self->reference;
}

double
rw_trim_fit_get_chi2 (const RwTrimFit *self)
{
  return self->chi2;
}

guint
rw_trim_fit_get_dof (const RwTrimFit *self)
{
  return self->dof;
}

double
rw_trim_fit_get_p (const RwTrimFit *self)
{
  return self->p;
}

guint
rw_trim_fit_get_n_outliers (const RwTrimFit *self)
{
  return self->n_outliers;
}

guint
rw_trim_fit_get_outlier (const RwTrimFit *self,
                         guint            i)
{
  g_return_val_if_fail (i < self->n_outliers, 0);
  return self->outliers[i];
}

gboolean
rw_trim_fit_get_unclear (const RwTrimFit *self)
{
  return self->unclear;
}
