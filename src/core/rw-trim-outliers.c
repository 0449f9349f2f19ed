/* rw-trim-outliers.c: which reading does not belong, if the others can tell.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only for a fit whose misfit is no chance (p < 0.01). Each suspect in turn is left out and the
 * rest is fitted. How well that explains the readings is
 *
 *   score = χ² of the rest + 2 ln (1 + z²)
 *   z = distance of the suspect from the rest's fit over its own u
 *
 * twice the negative logarithm of the likelihood when the suspect's error comes from a Cauchy
 * distribution with the scale of its own uncertainty and all others are as stated. A reading is
 * named when no other scores within 9 of it (odds of 90 to 1), and that repeats until the rest
 * fits (p ≥ 0.05). When it comes to a tie, or a quarter of the readings is gone, none is named:
 * the fit stays that of all readings, is marked unclear, and all uncertainties are multiplied by
 * √(χ² / degrees of freedom), the ratio of Birge (1932, Phys. Rev. 40, 207): whatever it is that
 * was not counted, the predictions are no better than the readings agree.
 *
 * So three points on a line never name one (leaving out any makes the rest fit), and four only
 * when the other three agree. Of the two readings of a position with just two rails, one is named
 * only when it would have to be off by far fewer of its own uncertainties than the other. A
 * reading said to be exact (u = 0) is no suspect.
 *
 * Suspects are the readings that would lower χ² most when left out; for a straight fit exactly by
 * e² / (u² − variance of the fitted value). Those far behind the first are not tried: each that is
 * named costs two or three fits.
 */
#include "config.h"

#include "rw-trim-fit-private.h"

#include <math.h>
#include <stdlib.h>

static const guint least_suspects = 2, most_suspects = 12;
static const double far_behind = 0.25; /* share of the largest drop below which a reading is no rival */
static const double tied_down = 1e-6; /* share of the variance: below, nothing checks a reading */

typedef struct
{
  guint  reading;
  double drop; /* of χ² when it is left out */
} Suspect;

static int
compare_drops (gconstpointer a,
               gconstpointer b)
{
  const double x = ((const Suspect *) a)->drop, y = ((const Suspect *) b)->drop;

  return (x < y) - (x > y);
}

/* Distance of a reading from the fit, volts; variance of the fit there. FALSE: the fit says
 * nothing there. */
static gboolean
distance (const RwTrimFit     *fit,
          const RwTrimReading *reading,
          double              *off,
          double              *variance)
{
  if (!fit->known[reading->position] || fit->slot[reading->rail] == RW_TRIM_NO_LINE)
    return FALSE;
  *off = reading->value - rw_trim_fit_at (fit, reading->position, reading->rail, variance);
  return TRUE;
}

/* How many of the sorted suspects may be the one. */
static guint
n_rivals (const GArray *suspects)
{
  const guint most = MIN (suspects->len, most_suspects);
  guint n = MIN (most, least_suspects);

  while (n < most && g_array_index (suspects, Suspect, n).drop >
                       far_behind * g_array_index (suspects, Suspect, 0).drop)
    n++;
  return n;
}

/* (element-type Suspect) The worst first. */
static GArray *
list_suspects (const RwTrimFit     *fit,
               const RwTrimReading *readings,
               guint                n_readings,
               const gboolean      *left_out)
{
  GArray *suspects = g_array_new (FALSE, FALSE, sizeof (Suspect));

  for (guint i = 0; i < n_readings; i++)
    {
      double off, variance;

      if (left_out[i] || !rw_trim_fit_can_use (fit, &readings[i]) || readings[i].u == 0 ||
          !distance (fit, &readings[i], &off, &variance))
        continue;

      const double u = MAX (readings[i].u, fit->u_floor), left = u * u - variance;
      const Suspect suspect = { i, off * off / left };

      if (left > tied_down * u * u)
        g_array_append_val (suspects, suspect);
    }
  g_array_sort (suspects, compare_drops);
  g_array_set_size (suspects, n_rivals (suspects));
  return suspects;
}

static double
score_without (const RwTrimFit     *rest,
               const RwTrimReading *suspect)
{
  const double u = MAX (suspect->u, rest->u_floor);
  double off, variance;

  if (!distance (rest, suspect, &off, &variance))
    return INFINITY;
  return rest->chi2 + 2 * log1p (off * off / (u * u));
}

static RwTrimFit *
refit (const RwTrimFit     *fit,
       const RwTrimReading *readings,
       guint                n_readings,
       const gboolean      *left_out)
{
  return rw_trim_fit_make (fit->n_rails, fit->reference, fit->priors, fit->n_positions, readings,
                           n_readings, left_out);
}

/* How far the suspects were apart. */
typedef struct
{
  guint  best, second; /* readings */
  double best_score, second_score;
} Race;

static void
enter_race (Race  *race,
            guint  reading,
            double score)
{
  const double behind = MAX (score, race->best_score);

  if (score < race->best_score)
    *race = (Race){ reading, race->best, score, race->best_score };
  else if (behind < race->second_score)
    {
      race->second = reading;
      race->second_score = behind;
    }
}

/* Leaves out the one reading that stands out, and marks it. NULL: none does. */
static RwTrimFit *
leave_one_out (const RwTrimFit     *fit,
               const RwTrimReading *readings,
               guint                n_readings,
               gboolean            *left_out,
               Race                *race)
{
  g_autoptr (GArray) suspects = list_suspects (fit, readings, n_readings, left_out);
  g_autoptr (RwTrimFit) best = NULL;

  *race = (Race){ 0, 0, INFINITY, INFINITY };
  for (guint i = 0; i < suspects->len; i++)
    {
      const guint reading = g_array_index (suspects, Suspect, i).reading;

      left_out[reading] = TRUE;

      g_autoptr (RwTrimFit) rest = refit (fit, readings, n_readings, left_out);
      const double score = score_without (rest, &readings[reading]);

      left_out[reading] = FALSE;
      if (score < race->best_score)
        {
          g_clear_pointer (&best, rw_trim_fit_unref);
          best = g_steal_pointer (&rest);
        }
      enter_race (race, reading, score);
    }
  if (!best || race->second_score - race->best_score < RW_TRIM_CLEAR_LEAD)
    return NULL;
  left_out[race->best] = TRUE;
  return g_steal_pointer (&best);
}

static void
name_outliers (RwTrimFit      *fit,
               const gboolean *left_out,
               guint           n_readings)
{
  fit->outliers = g_new (guint, n_readings);
  for (guint i = 0; i < n_readings; i++)
    if (left_out[i])
      fit->outliers[fit->n_outliers++] = i;
}

static void
note_end (RwTrimSearch *search,
          const Race   *race)
{
  if (!isfinite (race->second_score))
    return;
  search->end = RW_TRIM_SEARCH_TIED;
  search->lead = race->second_score - race->best_score;
  search->gain = search->last->chi2 - race->best_score;
  search->leaders[0] = race->best;
  search->leaders[1] = race->second;
}

/* The same lines with every uncertainty widened until the misfit is what it should be. The misfit of @fit stays what is
 * told. */
static RwTrimFit *
widen (const RwTrimFit     *fit,
       const RwTrimReading *readings,
       guint                n_readings)
{
  const double factor = sqrt (fit->chi2 / fit->dof);
  g_autofree RwTrimReading *wide = g_memdup2 (readings, n_readings * sizeof readings[0]);
  RwTrimFit *wider;

  for (guint i = 0; i < n_readings; i++)
    wide[i].u *= factor;
  wider = refit (fit, wide, n_readings, NULL);
  wider->chi2 = fit->chi2;
  wider->dof = fit->dof;
  wider->p = fit->p;
  wider->unclear = TRUE;
  return wider;
}

RwTrimFit *
rw_trim_fit_find_outliers (RwTrimSearch        *search,
                           const RwTrimReading *readings,
                           guint                n_readings)
{
  Race race;

  search->end = RW_TRIM_SEARCH_GAVE_UP;
  search->left_out = g_new0 (gboolean, n_readings);
  search->last = rw_trim_fit_ref (search->first);
  for (guint n = 1; n <= n_readings / 4; n++)
    {
      RwTrimFit *rest = leave_one_out (search->last, readings, n_readings, search->left_out, &race);

      if (!rest)
        {
          note_end (search, &race);
          break;
        }
      search->n_left_out++;
      search->least_lead = MIN (search->least_lead, race.second_score - race.best_score);
      rw_trim_fit_unref (search->last);
      search->last = rest;
      if (rest->p >= RW_TRIM_FITS_P)
        {
          search->end = RW_TRIM_SEARCH_NAMED;
          name_outliers (rest, search->left_out, n_readings);
          return rw_trim_fit_ref (rest);
        }
    }
  return widen (search->first, readings, n_readings);
}
