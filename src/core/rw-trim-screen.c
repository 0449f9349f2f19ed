/* rw-trim-screen.c: what a fit of trim lines will surely say with a few readings more.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A fit costs as much as it has readings, and a few more seldom change what follows from it. At the lines of the last
 * fit (its sum of squares F is least there, C is their covariance) the readings since then give a gradient G (half,
 * negative) and a sum ΔF. In quadratic order the new fit lies
 *
 *   D = √(Gᵀ C G)
 *
 * standard uncertainties away, since more readings only make C smaller: no slope has moved by more than D of its own
 * uncertainty, and the new least sum lies between F + ΔF − D² and F + ΔF. From these follow bounds of the misfit's
 * chance p. Where it is no chance, an outlier is looked for (rw-trim-outliers.c). If that ended in a tie at once, it does
 * so again, as long as no new reading would lead by the distance that names one, and the old ones keep theirs: a
 * residual changes with the lines by at most D of the fitted value's uncertainty.
 *
 * All of it is an estimate to the second order, so it is used with margins far above the third: D at most 1.5 and
 * counted half as long again, a fit of sixty readings at least, a factor of two from 0.01, and a third of the distance
 * that names an outlier. Within them the answer is "unsure", and the fit is made. What is close to a decision is
 * therefore always decided by the fit itself; tests/core/test-chapters-look.c compares.
 */
#include "config.h"

#include "rw-trim-screen.h"

#include <math.h>
#include <string.h>

#include "rw-distribution.h"

static const guint least_readings = 60;
static const double farthest = 1.5;     /* D */
static const double safety = 1.5;       /* times D */
static const double more_u = 0.1;       /* and so much of a slope's uncertainty */
static const double p_factor = 1.1;     /* away from where p decides */
static const double sure_lead = 50;     /* of a reading that stays an outlier whatever comes */
static const double hopeless_p = 1e-6;  /* of the fit with those in */
static const double lead_margin = 2;    /* of RW_TRIM_CLEAR_LEAD */
static const double chi2_margin = 3;
static const double dof_margin = 2;
static const double leverage = 8;       /* a reading's, over the mean one's, at most */

/* A rail tells x for sure, or surely does not; RW_TRIM_SURELY lies between. */
static const double surely = 2 * RW_TRIM_SURELY, hardly = RW_TRIM_SURELY / 2;

/* What the readings of one position add at the lines of the fit. */
typedef struct
{
  double sum;         /* Σ squared residuals over variances */
  double most_gain;   /* of one of them, as a suspect */
  guint  n_readings;
  guint  n_positions; /* 1 when x is known there */
  double gradient[];  /* 2 n_slots */
} Part;

struct _RwTrimScreen
{
  RwTrimFit *fit;      /* whose lines are taken */
  RwTrimSearch search; /* its figures; nothing of it is owned */
  double     prior;    /* Σ of the priors' squares at the lines */
  GArray    *open;     /* of RwTrimReading: the last position's */
  Part      *was;      /* what of the open position is in the fit */
  Part      *closed;   /* of the positions between */
  double     reach;    /* standard uncertainties that a slope may have moved by, as judged last */
  gboolean   is_unsure; /* something came that only a fit tells of */
};

static gsize
size_of (const RwTrimFit *fit)
{
  return sizeof (Part) + 2 * fit->n_slots * sizeof (double);
}

static Part *
part_new (const RwTrimFit *fit)
{
  return g_malloc0 (size_of (fit));
}

/* --- one position --------------------------------------------------------------------------------- */

/* How sure it is that the rail tells x: its slope over its uncertainty. */
static double
sureness (const RwTrimFit *fit,
          guint            rail)
{
  if (fit->slot[rail] < 0)
    return fit->slot[rail] == RW_TRIM_IS_REFERENCE ? INFINITY : 0;

  const guint at = 2 * (guint) fit->slot[rail] + 1, n = 2 * fit->n_slots;

  return fabs (fit->slope[rail]) / sqrt (fit->cov[at * n + at]);
}

static double
weight_of (const RwTrimFit     *fit,
           const RwTrimReading *reading)
{
  const double u = MAX (reading->u, fit->u_floor);

  return 1 / (u * u);
}

/* The best x, and the weight of it. FALSE: not surely known, or not surely unknown; then *@h is 0 when unknown. */
static gboolean
place (RwTrimScreen *self,
       double       *x,
       double       *h)
{
  const RwTrimFit *fit = self->fit;
  double most = 0, sum = 0;

  *h = 0;
  for (guint i = 0; i < self->open->len; i++)
    {
      const RwTrimReading *reading = &g_array_index (self->open, RwTrimReading, i);
      const guint rail = reading->rail;
      const double b = fit->slope[rail], w = weight_of (fit, reading);

      if (fit->slot[rail] == RW_TRIM_NO_LINE)
        return FALSE;
      most = MAX (most, sureness (fit, rail));
      *h += w * b * b;
      sum += w * b * (reading->value - fit->level[rail] + b * fit->centre[rail]);
    }
  *x = *h > 0 ? sum / *h : 0;
  if (most < hardly)
    *h = 0;
  return most < hardly || most > surely;
}

/* By how much the misfit would fall if the reading were left out, less what it costs to name it. */
static double
gain_of (double residual,
         double w,
         double b,
         double h)
{
  const double left = 1 - w * b * b / h; /* of its own variance */

  if (!(left > 1e-3))
    return 0;

  const double drop = residual * residual * w / left;

  return drop - 2 * log1p (drop / left);
}

static void
add_reading (const RwTrimFit     *fit,
             const RwTrimReading *reading,
             double               x,
             double               h,
             Part                *out)
{
  const int slot = fit->slot[reading->rail];
  const double b = fit->slope[reading->rail], w = weight_of (fit, reading), tau = x - fit->centre[reading->rail];
  const double residual = reading->value - fit->level[reading->rail] - b * tau;

  out->sum += w * residual * residual;
  out->most_gain = MAX (out->most_gain, gain_of (residual, w, b, h));
  out->n_readings++;
  if (slot < 0)
    return;
  out->gradient[2 * slot] += w * residual;
  out->gradient[2 * slot + 1] += w * residual * tau;
}

/* What the open position says. FALSE: only a fit tells. */
static gboolean
weigh_open (RwTrimScreen *self,
            Part         *out)
{
  double x, h;

  if (!place (self, &x, &h))
    return FALSE;
  if (h == 0)
    return TRUE;
  for (guint i = 0; i < self->open->len; i++)
    add_reading (self->fit, &g_array_index (self->open, RwTrimReading, i), x, h, out);
  out->n_positions = 1;
  return TRUE;
}

static void
add_part (const RwTrimFit *fit,
          Part            *to,
          const Part      *part)
{
  to->sum += part->sum;
  to->n_readings += part->n_readings;
  to->n_positions += part->n_positions;
  to->most_gain = MAX (to->most_gain, part->most_gain);
  for (guint i = 0; i < 2 * fit->n_slots; i++)
    to->gradient[i] += part->gradient[i];
}

static void
take_away (const RwTrimFit *fit,
           Part            *from,
           const Part      *part)
{
  from->sum -= part->sum;
  from->n_readings -= part->n_readings; /* may wrap, and comes back with what is added */
  from->n_positions -= part->n_positions;
  for (guint i = 0; i < 2 * fit->n_slots; i++)
    from->gradient[i] -= part->gradient[i];
}

/* --- making --------------------------------------------------------------------------------------- */

/* Whether a later line may make a position known that is not, or the other way round. */
static gboolean
is_settled (const RwTrimFit *fit)
{
  gboolean all_known = TRUE;

  for (guint k = 0; k < fit->n_positions; k++)
    all_known = all_known && (fit->known[k] || fit->first[k] == fit->first[k + 1]);
  for (guint rail = 0; rail < fit->n_rails; rail++)
    if (fit->slot[rail] >= 0 && sureness (fit, rail) >= hardly && sureness (fit, rail) <= surely)
      return all_known;
  return TRUE;
}

/* Those that were named were far ahead, and a tie is one between readings that stay what they are. */
static gboolean
is_firm (const RwTrimSearch  *search,
         const RwTrimReading *readings,
         guint                n_readings)
{
  const guint last = readings[n_readings - 1].position;

  if (search->n_left_out > 0 && (search->least_lead < sure_lead || search->first->p > hopeless_p))
    return FALSE;
  return search->end == RW_TRIM_SEARCH_NONE || search->end == RW_TRIM_SEARCH_NAMED
         || (search->end == RW_TRIM_SEARCH_TIED && search->lead < RW_TRIM_CLEAR_LEAD - lead_margin
             && readings[search->leaders[0]].position != last && readings[search->leaders[1]].position != last);
}

static double
sum_of_priors (const RwTrimFit *fit)
{
  double sum = 0;

  for (guint rail = 0; rail < fit->n_rails; rail++)
    if (fit->slot[rail] >= 0)
      {
        const double off = fit->slope[rail] - fit->priors[rail].slope;
        const double w = rw_trim_prior_weight (&fit->priors[rail]);

        sum += w > 0 ? w * off * off : 0;
      }
  return sum;
}

/* What of the last position is in the fit. */
static void
reopen (RwTrimScreen        *self,
        const RwTrimSearch  *search,
        const RwTrimReading *readings,
        guint                n_readings)
{
  for (guint i = 0; i < n_readings; i++)
    {
      self->is_unsure = self->is_unsure || readings[i].u <= 0 || !rw_trim_fit_can_use (self->fit, &readings[i]);
      if (readings[i].position == readings[n_readings - 1].position && !(search->left_out && search->left_out[i]))
        g_array_append_val (self->open, readings[i]);
    }
  self->is_unsure = self->is_unsure || !weigh_open (self, self->was);
}

RwTrimScreen *
rw_trim_screen_new (const RwTrimSearch  *search,
                    const RwTrimReading *readings,
                    guint                n_readings)
{
  if (n_readings < least_readings || !is_firm (search, readings, n_readings) || !is_settled (search->last))
    return NULL;

  RwTrimScreen *self = g_new0 (RwTrimScreen, 1);

  self->fit = rw_trim_fit_ref (search->last);
  self->search = *search;
  self->search.first = self->search.last = NULL;
  self->search.left_out = NULL;
  self->prior = sum_of_priors (self->fit);
  self->open = g_array_new (FALSE, FALSE, sizeof (RwTrimReading));
  self->was = part_new (self->fit);
  self->closed = part_new (self->fit);
  reopen (self, search, readings, n_readings);
  return self;
}

RwTrimScreen *
rw_trim_screen_copy (const RwTrimScreen *self)
{
  RwTrimScreen *copy = g_memdup2 (self, sizeof *self);

  rw_trim_fit_ref (self->fit);
  copy->open = g_array_copy (self->open);
  copy->was = g_memdup2 (self->was, size_of (self->fit));
  copy->closed = g_memdup2 (self->closed, size_of (self->fit));
  return copy;
}

void
rw_trim_screen_free (RwTrimScreen *self)
{
  rw_trim_fit_unref (self->fit);
  g_array_unref (self->open);
  g_free (self->was);
  g_free (self->closed);
  g_free (self);
}

static gboolean
add_open (RwTrimScreen *self,
          Part         *to)
{
  g_autofree Part *part = part_new (self->fit);

  if (!weigh_open (self, part))
    return FALSE;
  add_part (self->fit, to, part);
  take_away (self->fit, to, self->was);
  return TRUE;
}

void
rw_trim_screen_add (RwTrimScreen        *self,
                    const RwTrimReading *reading,
                    gboolean             opens)
{
  if (opens)
    {
      self->is_unsure = self->is_unsure || !add_open (self, self->closed);
      g_array_set_size (self->open, 0);
      memset (self->was, 0, size_of (self->fit));
    }
  self->is_unsure = self->is_unsure || reading->rail >= self->fit->n_rails || !(reading->u > 0)
                    || reading->u < self->fit->u_floor || !isfinite (reading->value);
  g_array_append_vals (self->open, reading, 1);
}

/* --- judging -------------------------------------------------------------------------------------- */

static double
distance (const RwTrimFit *fit,
          const Part      *all)
{
  const guint n = 2 * fit->n_slots;
  double square = 0;

  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < n; j++)
      square += all->gradient[i] * fit->cov[i * n + j] * all->gradient[j];
  return sqrt (MAX (square, 0));
}

static double
chance (double chi2,
        double dof)
{
  return dof >= 1 ? rw_chi2_survival (MAX (chi2, 0), (guint) dof) : 1;
}

/* Whether the search for an outlier ends in a tie as it did. */
static gboolean
stays_tied (const RwTrimScreen *self,
            const Part         *all,
            double              d)
{
  const RwTrimSearch *search = &self->search;
  const double gain = MAX (search->gain, 0);
  const double share = sqrt (leverage * 2 * self->fit->n_slots / MAX (self->fit->dof, 1));
  const double drift = 2 * sqrt (gain + 2 * log1p (gain) + 4) * safety * d * share;

  return search->lead + drift < RW_TRIM_CLEAR_LEAD - lead_margin / 2
         && all->most_gain - search->gain < RW_TRIM_CLEAR_LEAD - lead_margin;
}

static RwTrimScreenSays
judge_part (const RwTrimScreen *self,
            const Part         *all,
            double              d)
{
  const RwTrimSearch *search = &self->search;
  const double dof = (double) self->fit->dof + (int) all->n_readings - (int) all->n_positions;
  const double chi2 = self->fit->chi2 + all->sum;
  const double least_p = chance (chi2 + self->prior, dof - dof_margin);
  const double most_p = chance (chi2 - safety * safety * d * d - chi2_margin, dof + dof_margin);

  if (search->n_left_out > 0 && all->most_gain > sure_lead / 2)
    return RW_TRIM_SCREEN_UNSURE;
  if (search->end == RW_TRIM_SEARCH_NONE)
    return least_p > p_factor * RW_TRIM_MISFIT_P ? RW_TRIM_SCREEN_FIT : RW_TRIM_SCREEN_UNSURE;
  if (search->end == RW_TRIM_SEARCH_NAMED)
    return least_p > p_factor * RW_TRIM_FITS_P ? RW_TRIM_SCREEN_FIT : RW_TRIM_SCREEN_UNSURE;
  if (!stays_tied (self, all, d))
    return RW_TRIM_SCREEN_UNSURE;
  if (search->n_left_out > 0)
    return most_p < RW_TRIM_FITS_P / p_factor ? RW_TRIM_SCREEN_MISFIT : RW_TRIM_SCREEN_UNSURE;
  /* A good fit after all, or a tie: either way its slopes are what counts. */
  return most_p < RW_TRIM_MISFIT_P / p_factor ? RW_TRIM_SCREEN_MISFIT : RW_TRIM_SCREEN_FIT;
}

/* All that was added. (transfer full) NULL: only a fit tells. */
static Part *
add_all (RwTrimScreen *self)
{
  g_autofree Part *all = NULL;

  if (self->is_unsure)
    return NULL;
  all = g_memdup2 (self->closed, size_of (self->fit));
  return add_open (self, all) ? g_steal_pointer (&all) : NULL;
}

RwTrimScreenSays
rw_trim_screen_judge (RwTrimScreen *self)
{
  g_autofree Part *all = add_all (self);

  if (all == NULL)
    return RW_TRIM_SCREEN_UNSURE;

  const double d = distance (self->fit, all);

  self->reach = safety * d + more_u;
  return d <= farthest ? judge_part (self, all, d) : RW_TRIM_SCREEN_UNSURE;
}

gboolean
rw_trim_screen_get_slope (const RwTrimScreen *self,
                          guint               rail,
                          double             *least,
                          double             *most)
{
  const RwTrimFit *fit = self->fit;

  if (fit->slot[rail] < 0)
    return FALSE;

  const guint at = 2 * (guint) fit->slot[rail] + 1, n = 2 * fit->n_slots;
  const double reach = self->reach * sqrt (fit->cov[at * n + at]);

  *least = fit->slope[rail] - reach;
  *most = fit->slope[rail] + reach;
  return TRUE;
}
