/* rw-evidence-reading.c: readings as evidence.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A reading answers the measuring check that asks for it (same rail, place and kind, a setup the check can
 * be taken in; of several such checks the most particular): Σ_o P (true value in range of
 * o) P (o | hypothesis), with the value normal about the reading with its total standard
 * uncertainty. A value on the fence so counts as both sides. The reading wins over a
 * finding of the same check. Of a drop along a wire only the size counts, because its sign
 * depends on how the leads were held. Of each check the newest reading counts, with the board out and fitted apart.
 *
 * Readings of one rail are not independent: what sets one sets the other. By the chain rule
 *   P (x, y | cause) = P (x | cause) · P (y | x, cause),
 * and what y adds once x is known is how far it lies from it: P (x | cause) · P (y − x | cause), the second from a table
 * of differences (data/knowledge, "computed": "drop", "fall"; rw-evidence-difference.c has which). P (y | cause) ·
 * P (y − x | cause) estimates the same with the other reading as the one that counts by itself, and neither is exact;
 * the geometric mean of the two leaves no choice open. Of k readings of a rail that hang together by differences,
 *   ∏_i P (x_i | cause)^(1/k) · ∏ P (difference | cause):
 * together they have the weight of one reading, and each difference counts in full, whether it is usual or not. So
 * the order in which they were taken does not matter, and two low readings are not two proofs of a low trim.
 * Where the knowledge has no table for a difference, or something between the two readings makes it mean nothing,
 * they are taken to be half way between "the same again" and "independent" (an estimate): each such link adds half a
 * reading's weight to the whole.
 */
#include "config.h"

#include "rw-evidence.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-evidence-private.h"
#include "rw-problem.h"
#include "rw-quantity.h"
#include "rw-setups.h"

static const double weight_of_unknown = 0.5; /* of a reading, for a link of which nothing is known */

/* --- weighing ----------------------------------------------------------------------------------- */

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

void
rw_evidence_weigh_value (const RwOutcome *outcomes,
                         guint            n,
                         double           value,
                         double           u,
                         double          *weights)
{
  double sum = 0;

  for (guint o = 0; o < n; o++)
    sum += weights[o] = share_between (value, u, outcomes[o].from, outcomes[o].to);
  for (guint o = 0; o < n && sum > 0; o++)
    weights[o] /= sum;
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

/* --- which reading ------------------------------------------------------------------------------ */

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
reading_for (const RwGathering *self,
             const RwCheck     *check)
{
  const RwSpotState *last = NULL;

  for (guint i = 0; i < rw_bench_state_get_n_views (self->state); i++)
    {
      const RwSpotState *view = rw_bench_state_get_view (self->state, i);

      if (!view->changed_since
          && !(check->contact && view->n < rw_bench_state_get_plugged (self->state))
          && (last == NULL || view->n > last->n) && check_for (self->knowledge, view) == check)
        last = view;
    }
  return last;
}

/* (transfer full) (element-type RwAnswer) */
static GArray *
find_answers (const RwGathering *self)
{
  GArray *answers = g_array_new (FALSE, FALSE, sizeof (RwAnswer));

  for (guint j = 0; j < rw_knowledge_get_n_checks (self->knowledge); j++)
    {
      const RwCheck *check = rw_knowledge_get_check (self->knowledge, j);
      const RwAnswer answer = { check, check->measures ? reading_for (self, check) : NULL };

      if (answer.spot != NULL)
        g_array_append_val (answers, answer);
    }
  return answers;
}

/* --- counting ----------------------------------------------------------------------------------- */

/* What the difference of two readings says. */
static void
observe_difference (RwGathering        *self,
                    const RwAnswer     *answer,
                    const RwAnswer     *base,
                    const RwDependence *on)
{
  const RwComputed *computed = on->computed;
  const RwSpotState *newest = answer->spot->n > base->spot->n ? answer->spot : base->spot;
  g_autofree char *value = rw_quantity_format (on->value, answer->spot->reading.step, RW_KIND_DC);
  double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };

  rw_evidence_weigh_value (computed->outcomes, computed->n_outcomes, on->value, on->u, weights);

  const guint o = rw_evidence_likeliest (weights, computed->n_outcomes);
  RwObservation *it = rw_gathering_observe (self, RW_EVIDENCE_COMPUTED, newest->n, newest->t, computed->id,
                                            computed->outcomes[o].id,
                                            /* Translators: a difference between two readings, and its value */
                                            g_strdup_printf (_ ("%s: %s"), computed->title, value));

  it->shown.fence = weights[o] < RW_VERDICT_SURE;
  rw_gathering_take (self, it, &computed->chance, weights);
}

/* @weight: of its evidence, 1 when it stands by itself. */
static void
observe_reading (RwGathering    *self,
                 const RwAnswer *answer,
                 const double   *weights,
                 double          weight)
{
  const RwCheck *check = answer->check;
  const RwReading *reading = &answer->spot->reading;
  const guint o = rw_evidence_likeliest (weights, check->n_outcomes);
  g_autofree char *value = reading->over ? g_strdup ("OL")
                                         : rw_quantity_format (reading->value, reading->step, reading->kind);
  RwObservation *it = rw_gathering_observe (self, RW_EVIDENCE_READING, answer->spot->n, answer->spot->t,
                                            check->id, check->outcomes[o].id,
                                            /* Translators: a check and the value read */
                                            g_strdup_printf (_ ("%s: %s"), check->title, value));

  it->shown.fence = weights[o] < RW_VERDICT_SURE;
  it->shown.dependent = weight < 1;
  rw_gathering_take (self, it, &check->chance, weights);
  for (guint h = 0; h < self->hypotheses->n_all && weight < 1; h++)
    it->likelihood[h] = pow (it->likelihood[h], weight);
}

/* The reading that the others of its rail hang on, over one or more links. */
static guint
root_of (const RwDependence *links,
         guint               i)
{
  while (links[i].base >= 0)
    i = (guint) links[i].base;
  return i;
}

/* The head comment's 1/k, or more where links are unknown. */
static double
weight_of (const RwDependence *links,
           guint               n,
           guint               i)
{
  const guint root = root_of (links, i);
  guint k = 0;
  guint unknown = 0;

  for (guint j = 0; j < n; j++)
    if (root_of (links, j) == root)
      {
        k++;
        unknown += links[j].base >= 0 && links[j].computed == NULL ? 1 : 0;
      }
  return (1 + weight_of_unknown * unknown) / k;
}

void
rw_evidence_gather_readings (RwGathering *self)
{
  g_autoptr (GArray) list = find_answers (self);
  const RwAnswer *answers = (const RwAnswer *) (gpointer) list->data;
  const guint n = list->len;
  g_autofree RwDependence *links = g_new0 (RwDependence, MAX (1, n));

  for (guint i = 0; i < n; i++)
    rw_evidence_find_dependence (self, answers, n, i, &links[i]);
  for (guint i = 0; i < n; i++)
    {
      double weights[RW_PROBLEM_MAX_OUTCOMES] = { 0 };

      if (rw_evidence_weigh (answers[i].check, answers[i].spot, weights))
        observe_reading (self, &answers[i], weights, weight_of (links, n, i));
      if (links[i].computed != NULL && !links[i].told)
        observe_difference (self, &answers[i], &answers[links[i].base], &links[i]);
    }
}
