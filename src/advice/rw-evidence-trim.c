/* rw-evidence-trim.c: what the trim's readings show, as evidence.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "trim-window": whether one position suits all rails, and on which side: rw-trim-evidence.c.
 * "trim-line": with three positions or more, whether the readings of each rail lie on one line. Off it is a set of
 *   which a reading was named as an outlier, or whose misfit χ² has a chance below 1 %: a contact that comes and
 *   goes, a screw that jumps, a rail that bends at the end of what its regulator can do.
 * "tracking": how far a rail that should move with the reference does, its slope over that of moving in proportion;
 *   normal with the slope's standard uncertainty, and nothing where that is above a quarter: the profile's own
 *   expectation would speak then, not the readings.
 * Of each only the newest set counts, since the sets at the terminals and at the board share one supply.
 */
#include "config.h"

#include "rw-evidence-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-problem.h"
#include "rw-quantity.h"
#include "rw-trim-evidence.h"

static const double misfit = 0.01;     /* chance of χ² */
static const double vague_slope = 0.25; /* of moving in proportion, standard */
static const guint least_positions = 3;

/* --- window ------------------------------------------------------------------------------------- */

/* (transfer full) */
static char *
window_title (const RwComputed *computed,
                const RwTrimSet  *set,
                RwTrimOutcome     outcome)
{
  g_autofree char *detail = rw_trim_evidence_detail (set, outcome);

  if (detail == NULL)
    /* Translators: a computed finding and what it showed */
    return g_strdup_printf (_ ("%s: %s"), computed->title, computed->outcomes[outcome].title);
  /* Translators: a computed finding, what it showed, and of which rails */
  return g_strdup_printf (_ ("%s: %s (%s)"), computed->title, computed->outcomes[outcome].title, detail);
}

static guint
newest_event (const RwTrimSet *set)
{
  return set->points->len > 0 ? g_array_index (set->points, RwTrimPoint, set->points->len - 1).n : 0;
}

/* Outcomes in their shares. Takes @title. */
static void
observe_set (RwGathering      *self,
             const RwTrimSet  *set,
             const RwComputed *computed,
             const double     *weights,
             char             *title)
{
  const RwTrimPoint *last = &g_array_index (set->points, RwTrimPoint, set->points->len - 1);
  const guint o = rw_evidence_likeliest (weights, computed->n_outcomes);
  double sum = 0;

  for (guint k = 0; k < computed->n_outcomes; k++)
    sum += weights[k];

  RwObservation *it = rw_gathering_observe (self, RW_EVIDENCE_COMPUTED, last->n, last->t, computed->id,
                                            computed->outcomes[o].id, title);

  it->shown.fence = weights[o] / sum < RW_VERDICT_SURE;
  rw_gathering_take (self, it, &computed->chance, weights);
}

static void
gather_window (RwGathering *self)
{
  const RwTrimSet *set = rw_trim_evidence_find (self->state);
  const RwComputed *computed =
      set != NULL ? rw_knowledge_find_computed (self->knowledge, "trim-window", set->place, NULL) : NULL;
  double weights[RW_N_TRIM_OUTCOMES];

  if (computed == NULL)
    return;
  rw_trim_evidence_weigh (set, weights);
  observe_set (self, set, computed, weights,
               window_title (computed, set, rw_evidence_likeliest (weights, RW_N_TRIM_OUTCOMES)));
}

/* --- lines -------------------------------------------------------------------------------------- */

static guint
positions_known (const RwTrimSet *set)
{
  guint n = 0;

  for (guint i = 0; i < set->positions->len; i++)
    if (!isnan (g_array_index (set->positions, RwTrimPosition, i).x))
      n++;
  return n;
}

/* The newest set with the board fitted that has at least @positions. (nullable) */
static const RwTrimSet *
find_set (const RwBenchState *state,
          guint               positions)
{
  const RwTrimSet *newest = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_trim_sets (state); i++)
    {
      const RwTrimSet *set = rw_bench_state_get_trim_set (state, i);

      if (set->board != RW_SAID_NO && positions_known (set) >= positions
          && (newest == NULL || newest_event (set) > newest_event (newest)))
        newest = set;
    }
  return newest;
}

static void
gather_line (RwGathering *self)
{
  const RwTrimSet *set = find_set (self->state, least_positions);
  const RwComputed *computed =
      set != NULL ? rw_knowledge_find_computed (self->knowledge, "trim-line", set->place, NULL) : NULL;

  if (computed == NULL || rw_trim_fit_get_dof (set->fit) == 0)
    return;

  const gboolean off = rw_trim_fit_get_n_outliers (set->fit) > 0 || rw_trim_fit_get_p (set->fit) < misfit;
  const double weights[2] = { off ? 0 : 1, off ? 1 : 0 };

  observe_set (self, set, computed, weights,
               /* Translators: a computed finding and what it showed */
               g_strdup_printf (_ ("%s: %s"), computed->title, computed->outcomes[off ? 1 : 0].title));
}

static void
gather_tracking_of (RwGathering     *self,
                    const RwTrimSet *set,
                    guint            index)
{
  const RwRail *rail = rw_profile_get_rail (set->profile, index);
  const RwRail *reference = rw_profile_get_rail (set->profile, set->reference);
  const RwComputed *computed = rw_knowledge_find_computed (self->knowledge, "tracking", set->place, rail->id);
  const double proportion = rail->nominal / reference->nominal;
  double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };
  RwTrimLine line;

  if (computed == NULL || rail->follows_trim != RW_FOLLOWS_YES || index == set->reference
      || !rw_trim_fit_get_line (set->fit, index, &line) || line.n_readings < 2
      || !(line.slope_u / fabs (proportion) <= vague_slope))
    return;

  const double share = line.slope / proportion;
  g_autofree char *percent = rw_quantity_format_chance (CLAMP (share, 0, 1));

  rw_evidence_weigh_value (computed->outcomes, computed->n_outcomes, share, line.slope_u / fabs (proportion),
                           weights);
  observe_set (self, set, computed, weights,
               /* Translators: a computed finding, what it showed, and the share as per cent */
               g_strdup_printf (_ ("%s: %s (%s)"), computed->title,
                                computed->outcomes[rw_evidence_likeliest (weights, computed->n_outcomes)].title,
                                percent));
}

void
rw_evidence_gather_trim (RwGathering *self)
{
  const RwTrimSet *set = find_set (self->state, 2);

  gather_window (self);
  gather_line (self);
  for (guint i = 0; set != NULL && i < rw_profile_get_n_rails (set->profile); i++)
    gather_tracking_of (self, set, i);
}
