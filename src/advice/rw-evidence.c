/* rw-evidence.c: what was seen, as likelihoods of each cause.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Symptom present: P (symptom | cause); absent: 1 − that; cured: nothing.
 * Finding of a check: P (outcome | cause).
 * Reading that a measuring check asks for (same rail, place and kind, a setup the check can
 *   be taken in; of several such checks the most particular): Σ_o P (true value in range of
 *   o) P (o | cause), with the value normal about the reading with its total standard
 *   uncertainty. A value on the fence so counts as both sides. The reading wins over a
 *   finding of the same check. Of a drop along a wire only the size counts, because its sign
 *   depends on how the leads were held.
 * Repair that changed nothing: a small residual for its cause, since a repair can be done
 *   badly; 1 for others.
 * Repair that fixed: its cause for certain, until a symptom is seen or another repair tried
 *   afterwards. Then the first fault is gone and there was a second one: its cause keeps the
 *   residual, and what was seen before the fix, of another fault, counts no more.
 * What a trim or a repair may have changed since (changed_since) counts no more either.
 * What is computed from the readings (rw-trim-evidence): Σ_o weight of o · P (o | cause).
 */
#include "config.h"

#include "rw-evidence.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-problem.h"
#include "rw-quantity.h"
#include "rw-setups.h"
#include "rw-trim-evidence.h"

static const double residual = 0.05; /* P (no change | the cause repaired was the cause) */

void
rw_observation_free (RwObservation *self)
{
  g_free (self->shown.title);
  g_free (self->likelihood);
  g_free (self);
}

/* Takes @title. */
static RwObservation *
observe (GPtrArray         *list,
         const RwKnowledge *knowledge,
         RwEvidenceKind     kind,
         guint              n,
         double             t,
         const char        *id,
         const char        *answer,
         char              *title)
{
  RwObservation *it = g_new0 (RwObservation, 1);

  it->shown = (RwEvidence) { kind, n, t, g_intern_string (id), g_intern_string (answer), title,
                             FALSE, FALSE };
  it->likelihood = g_new (double, rw_knowledge_get_n_causes (knowledge));
  for (guint i = 0; i < rw_knowledge_get_n_causes (knowledge); i++)
    it->likelihood[i] = 1;
  g_ptr_array_add (list, it);
  return it;
}

/* --- repairs ------------------------------------------------------------------------------------ */

/* The last repair that fixed; NULL when there is none. */
static const RwRepairSeen *
last_fix (const RwBenchState *state)
{
  for (guint i = rw_bench_state_get_n_repairs (state); i-- > 0;)
    {
      const RwRepairSeen *repair = rw_bench_state_get_repair (state, i);

      if (repair->result == RW_REPAIR_FIXED)
        return repair;
    }
  return NULL;
}

static gboolean
is_contradicted (const RwBenchState *state,
                 const RwRepairSeen *fix)
{
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    {
      const RwSymptomSeen *symptom = rw_bench_state_get_symptom (state, i);

      if (symptom->state == RW_SYMPTOM_PRESENT && symptom->n > fix->n)
        return TRUE;
    }
  for (guint i = 0; i < rw_bench_state_get_n_repairs (state); i++)
    if (rw_bench_state_get_repair (state, i)->n > fix->n)
      return TRUE;
  return FALSE;
}

static gboolean
is_told (const GPtrArray *list,
         RwEvidenceKind   kind,
         const char      *id)
{
  for (guint i = 0; i < list->len; i++)
    {
      const RwObservation *it = list->pdata[i];

      if (it->shown.kind == kind && g_str_equal (it->shown.id, id))
        return TRUE;
    }
  return FALSE;
}

/* A repair done twice is no second proof, so each cause counts once. */
static void
gather_repairs (GPtrArray          *list,
                const RwKnowledge  *knowledge,
                const RwBenchState *state,
                const RwCause      *fixed)
{
  for (guint i = 0; i < rw_bench_state_get_n_repairs (state); i++)
    {
      const RwRepairSeen *repair = rw_bench_state_get_repair (state, i);
      const int index = rw_knowledge_index_of_cause (knowledge, repair->cause);
      const RwCause *cause = index >= 0 ? rw_knowledge_get_cause (knowledge, (guint) index) : NULL;

      if (cause == NULL || cause == fixed || is_told (list, RW_EVIDENCE_REPAIR, repair->cause))
        continue;

      RwObservation *it = observe (list, knowledge, RW_EVIDENCE_REPAIR, repair->n, repair->t,
                                   repair->cause,
                                   "no-change",
                                   /* Translators: a repair, "Set the trim at the board" */
                                   g_strdup_printf (_ ("%s: no cure"), cause->repair.title));

      it->likelihood[index] = residual;
    }
}

/* --- symptoms and findings ---------------------------------------------------------------------- */

static void
gather_symptoms (GPtrArray          *list,
                 const RwKnowledge  *knowledge,
                 const RwBenchState *state,
                 guint               after)
{
  for (guint k = 0; k < rw_bench_state_get_n_symptoms (state); k++)
    {
      const RwSymptomSeen *seen = rw_bench_state_get_symptom (state, k);
      const RwSymptom *symptom = rw_knowledge_find_symptom (knowledge, seen->id);
      const gboolean present = seen->state == RW_SYMPTOM_PRESENT;

      if (symptom == NULL || seen->state == RW_SYMPTOM_CURED || seen->n < after)
        continue;

      /* Translators: a symptom, "Resets by itself" */
      char *title = g_strdup_printf (present ? _ ("%s: yes") : _ ("%s: no"), symptom->title);
      RwObservation *it = observe (list, knowledge, RW_EVIDENCE_SYMPTOM, seen->n, seen->t, seen->id,
                                   present ? "present" : "absent", title);

      for (guint i = 0; i < rw_knowledge_get_n_causes (knowledge); i++)
        {
          const double p = *rw_chance_table_get (&symptom->chance,
                                                 rw_knowledge_get_cause (knowledge, i)->id);

          it->likelihood[i] = present ? p : 1 - p;
        }
    }
}

/* Likelihoods of the outcomes, each in its share. */
static void
take_outcomes (RwObservation       *it,
               const RwKnowledge   *knowledge,
               const RwChanceTable *chance,
               const double        *weights)
{
  for (guint i = 0; i < rw_knowledge_get_n_causes (knowledge); i++)
    {
      const double *row = rw_chance_table_get (chance, rw_knowledge_get_cause (knowledge, i)->id);

      it->likelihood[i] = 0;
      for (guint o = 0; o < chance->n_outcomes; o++)
        it->likelihood[i] += weights[o] * row[o];
    }
}

static void
gather_findings (GPtrArray          *list,
                 const RwKnowledge  *knowledge,
                 const RwBenchState *state)
{
  for (guint k = 0; k < rw_bench_state_get_n_findings (state); k++)
    {
      const RwFindingSeen *seen = rw_bench_state_get_finding (state, k);
      const RwCheck *check = rw_knowledge_find_check (knowledge, seen->check);
      const int outcome = check != NULL ? rw_check_find_outcome (check, seen->outcome) : -1;
      double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };

      if (outcome < 0 || seen->changed_since || is_told (list, RW_EVIDENCE_READING, seen->check))
        continue;
      weights[outcome] = 1;
      /* Translators: a check and what it showed */
      take_outcomes (observe (list, knowledge, RW_EVIDENCE_FINDING, seen->n, seen->t, seen->check,
                              seen->outcome,
                              g_strdup_printf (_ ("%s: %s"), check->title,
                                               check->outcomes[outcome].title)),
                     knowledge, &check->chance, weights);
    }
}

/* --- readings ----------------------------------------------------------------------------------- */

/* Share of the value between @from (inclusive) and @to. */
static double
share_between (double value,
               double u,
               double from,
               double to)
{
  if (!(from < to))
    return 0;
  if (!(u > 0))
    return value >= from && value < to ? 1 : 0;
  return rw_chance_inside (value, u, from, to);
}

/* The same for the size of a value, whatever its sign. */
static double
share_of_size (double value,
               double u,
               double from,
               double to)
{
  const double a = MAX (from, 0);
  const double b = MAX (to, 0);

  if (!(u > 0))
    return share_between (fabs (value), u, a, b);
  return share_between (value, u, a, b) + share_between (value, u, -b, -a);
}

gboolean
rw_evidence_weigh (const RwCheck     *check,
                   const RwSpotState *spot,
                   double            *weights)
{
  const RwReading *reading = &spot->reading;
  double sum = 0;

  /* Open for an ohmmeter is beyond its range upwards; for the others nobody knows the side. */
  if (reading->over && reading->kind != RW_KIND_OHMS)
    return FALSE;
  for (guint o = 0; o < check->n_outcomes; o++)
    {
      const RwOutcome *outcome = &check->outcomes[o];

      if (reading->over)
        weights[o] = isinf (outcome->to) ? 1 : 0;
      else if (reading->place == RW_PLACE_WIRE)
        weights[o] = share_of_size (reading->value, spot->u, outcome->from, outcome->to);
      else
        weights[o] = share_between (reading->value, spot->u, outcome->from, outcome->to);
      sum += weights[o];
    }
  for (guint o = 0; o < check->n_outcomes && sum > 0; o++)
    weights[o] /= sum;
  return sum > 0;
}

RwSetup
rw_belief_complete_setup (RwSetup said,
                          RwPlace place,
                          RwKind  kind)
{
  if (said.power_on == RW_SAID_NOT)
    said.power_on = kind == RW_KIND_OHMS ? RW_SAID_NO : RW_SAID_YES;
  if (said.board_fitted == RW_SAID_NOT)
    said.board_fitted = RW_SAID_YES;
  if (said.warm == RW_SAID_NOT)
    said.warm = RW_SAID_NO;
  return said;
}

/* The most particular check that this reading answers; of equals the first. (nullable) */
static const RwCheck *
check_for (const RwKnowledge *knowledge,
           const RwSpotState *spot)
{
  const RwReading *reading = &spot->reading;
  const RwSetup setup = rw_belief_complete_setup (spot->setup, reading->place, reading->kind);
  const RwCheck *best = NULL;

  for (guint j = 0; j < rw_knowledge_get_n_checks (knowledge); j++)
    {
      const RwCheck *check = rw_knowledge_get_check (knowledge, j);

      if (check->measures && g_strcmp0 (check->rail, reading->rail) == 0
          && check->place == reading->place
          && check->kind == reading->kind && rw_setups_match (check, setup)
          && (best == NULL || rw_setups_strictness (check) > rw_setups_strictness (best)))
        best = check;
    }
  return best;
}

/* The last valid reading that answers a check; NULL when none does. */
static const RwSpotState *
reading_for (const RwKnowledge  *knowledge,
             const RwBenchState *state,
             const RwCheck      *check)
{
  const RwSpotState *last = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);

      if (!spot->changed_since && (last == NULL || spot->n > last->n)
          && check_for (knowledge, spot) == check)
        last = spot;
    }
  return last;
}

static guint
likeliest (const double *weights,
           guint         n)
{
  guint best = 0;

  for (guint o = 1; o < n; o++)
    if (weights[o] > weights[best])
      best = o;
  return best;
}

static void
gather_readings (GPtrArray          *list,
                 const RwKnowledge  *knowledge,
                 const RwBenchState *state)
{
  for (guint j = 0; j < rw_knowledge_get_n_checks (knowledge); j++)
    {
      const RwCheck *check = rw_knowledge_get_check (knowledge, j);
      const RwSpotState *spot = check->measures ? reading_for (knowledge, state, check) : NULL;
      double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };

      if (spot == NULL || !rw_evidence_weigh (check, spot, weights))
        continue;

      const guint o = likeliest (weights, check->n_outcomes);
      const RwReading *reading = &spot->reading;
      g_autofree char *value = reading->over ? g_strdup ("OL")
                                             : rw_quantity_format (reading->value, reading->step,
                                                                   reading->kind);
      RwObservation *it = observe (list, knowledge, RW_EVIDENCE_READING, spot->n, spot->t,
                                   check->id,
                                   check->outcomes[o].id,
                                   /* Translators: a check and the value read */
                                   g_strdup_printf (_ ("%s: %s"), check->title, value));

      it->shown.fence = weights[o] < RW_VERDICT_SURE;
      take_outcomes (it, knowledge, &check->chance, weights);
    }
}

/* --- computed ----------------------------------------------------------------------------------- */

/* (transfer full) */
static char *
computed_title (const RwComputed *computed,
                const RwTrimSet  *set,
                RwTrimOutcome     outcome)
{
  g_autofree char *detail = rw_trim_evidence_detail (set, outcome);

  if (detail == NULL)
    /* Translators: a computed finding and what it showed */
    return g_strdup_printf (_ ("%s: %s"), computed->title, computed->titles[outcome]);
  /* Translators: a computed finding, what it showed, and of which rails */
  return g_strdup_printf (_ ("%s: %s (%s)"), computed->title, computed->titles[outcome], detail);
}

static void
gather_computed (GPtrArray          *list,
                 const RwKnowledge  *knowledge,
                 const RwBenchState *state)
{
  const RwTrimSet *set = rw_trim_evidence_find (state);
  const RwComputed *computed =
      set != NULL ? rw_knowledge_find_computed (knowledge, "trim-window", set->place) : NULL;
  double weights[RW_N_TRIM_OUTCOMES];
  double sum = 0;

  if (computed == NULL)
    return;
  rw_trim_evidence_weigh (set, weights);
  for (guint o = 0; o < RW_N_TRIM_OUTCOMES; o++)
    sum += weights[o];

  const guint o = likeliest (weights, RW_N_TRIM_OUTCOMES);
  const RwTrimPoint *last = &g_array_index (set->points, RwTrimPoint, set->points->len - 1);
  RwObservation *it = observe (list, knowledge, RW_EVIDENCE_COMPUTED, last->n, last->t, computed->id,
                               rw_trim_outcome_to_id (o), computed_title (computed, set, o));

  it->shown.fence = weights[o] / sum < RW_VERDICT_SURE;
  take_outcomes (it, knowledge, &computed->chance, weights);
}

/* --- all of it ---------------------------------------------------------------------------------- */

static int
compare_observations (gconstpointer a,
                      gconstpointer b)
{
  const RwObservation *x = *(const RwObservation *const *) a;
  const RwObservation *y = *(const RwObservation *const *) b;

  if (x->shown.n != y->shown.n)
    return x->shown.n < y->shown.n ? -1 : 1;
  return g_strcmp0 (x->shown.id, y->shown.id);
}

GPtrArray *
rw_evidence_gather (const RwKnowledge  *knowledge,
                    const RwBenchState *state,
                    const RwCause     **fixed)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_observation_free);
  const RwRepairSeen *fix = last_fix (state);
  const gboolean over = fix != NULL && !is_contradicted (state, fix);

  *fixed = over ? rw_knowledge_find_cause (knowledge, fix->cause) : NULL;
  gather_symptoms (list, knowledge, state, fix != NULL && !over ? fix->n : 0);
  gather_readings (list, knowledge, state);
  gather_findings (list, knowledge, state);
  gather_computed (list, knowledge, state);
  gather_repairs (list, knowledge, state, *fixed);
  g_ptr_array_sort (list, compare_observations);
  return list;
}
