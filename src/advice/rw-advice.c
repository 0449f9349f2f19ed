/* rw-advice.c: what to do next, and why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Beliefs → bare problem → search. What the suggested check tells apart comes from the same
 * numbers: with weights w, repair minutes c and chances L, the one-step value of a check is
 * a sum over pairs of causes,
 *   S_ij = min (c_i w_j, c_j w_i) − Σ_o min (c_i w_j L_o(j), c_j w_i L_o(i)) ≥ 0,
 * so the largest terms name the causes whose mixing-up the check saves. Causes include pairs of them (two faults at
 * once); of such a term the two causes that are repaired first are named.
 */
#include "config.h"

#include "rw-advice.h"

#include <math.h>

#include "rw-advice-problem.h"
#include "rw-advice-reach.h"
#include "rw-belief-rank.h"

#define MAX_PAIRS 3

static const double least_pair_minutes = 0.05; /* less is not worth a sentence */

struct _RwAdvice
{
  RwAdviceKind   kind;
  RwKnowledge   *knowledge;
  RwBelief      *belief;
  RwProblem     *problem;
  RwPlanState   *state;
  RwAdviceCheck *checks; /* [n_checks] the suggested one first */
  guint          n_checks;
  const RwCause *repair;
  const RwCause *repair_then; /* of two faults, the other */
  int            repair_index;
  double         repair_first; /* minutes until fixed */
  double         check_first;
  RwAdviceReach  reach;
  double         expected;
  double         repairs_only;
  double         perfect;
  GArray        *outcomes; /* of RwAdviceOutcome */
  RwAdvicePair   pairs[MAX_PAIRS];
  guint          n_pairs;
};

static void
clear_advice (gpointer data)
{
  RwAdvice *self = data;

  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->belief, rw_belief_unref);
  g_clear_pointer (&self->problem, rw_problem_free);
  g_clear_pointer (&self->state, rw_plan_state_free);
  g_clear_pointer (&self->outcomes, g_array_unref);
  g_free (self->checks);
}

RwAdvice *
rw_advice_ref (RwAdvice *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_advice_unref (RwAdvice *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_advice);
}

/* --- deciding ----------------------------------------------------------------------------------- */

RwActionKind
rw_advice_decide (const RwAdvice     *self,
                  const RwPlanState  *state,
                  const RwPlanBudget *budget,
                  guint              *index,
                  double             *expected)
{
  g_autoptr (RwPlanChoice) choice = rw_plan_search (self->problem, state, budget);

  *index = choice->best.index;
  if (expected != NULL)
    *expected = choice->best.expected;
  return choice->best.kind;
}

/* --- why ---------------------------------------------------------------------------------------- */

static void
name_next (const RwAdvice  *self,
           RwAdviceOutcome *it,
           guint            index)
{
  if (it->next == RW_ACTION_CHECK)
    {
      const RwCheck *check = rw_knowledge_get_check (self->knowledge, index);

      it->next_id = check->id;
      it->next_title = check->title;
    }
  else if (it->next == RW_ACTION_REPAIR)
    {
      const RwCause *cause = rw_advice_get_cause (self, index, NULL);

      it->next_id = cause->id;
      it->next_title = cause->repair.title;
    }
}

static void
explain_outcomes (RwAdvice *self,
                  guint     check)
{
  const RwCheck *suggested = rw_knowledge_get_check (self->knowledge, check);
  const double mass = rw_plan_state_mass (self->state, self->problem);

  for (guint o = 0; o < suggested->n_outcomes; o++)
    {
      g_autoptr (RwPlanState) after = rw_plan_state_after_check (self->state, self->problem,
                                                                 check, o);
      const double share = rw_plan_state_mass (after, self->problem);
      RwAdviceOutcome it = { .outcome = &suggested->outcomes[o], .chance = share / mass };
      guint index = 0;

      it.likely = rw_advice_get_likely (self, after, &it.likely_p);
      if (it.likely != NULL)
        {
          it.next = rw_advice_decide (self, after, &rw_plan_budget_node, &index, &it.expected);
          name_next (self, &it, index);
        }
      g_array_append_val (self->outcomes, it);
    }
}

/* S_ij of the head comment. */
static double
pair_saving (const RwAdvice *self,
             guint           check,
             guint           i,
             guint           j)
{
  const RwProblem *problem = self->problem;
  const double a = problem->causes[i].repair_minutes * self->state->weights[j];
  const double b = problem->causes[j].repair_minutes * self->state->weights[i];
  double saving = MIN (a, b);

  for (guint o = 0; o < problem->checks[check].n_outcomes; o++)
    {
      const double x = a * rw_problem_chance (problem, check, o, j);
      const double y = b * rw_problem_chance (problem, check, o, i);

      saving -= MIN (x, y);
    }
  return saving;
}

/* A pair of faults and one of the two, say, are one cause to whoever repairs that first. */
static RwAdvicePair *
find_kept (RwAdvice           *self,
           const RwAdvicePair *pair)
{
  for (guint k = 0; k < self->n_pairs; k++)
    if ((self->pairs[k].a == pair->a && self->pairs[k].b == pair->b)
        || (self->pairs[k].a == pair->b && self->pairs[k].b == pair->a))
      return &self->pairs[k];
  return NULL;
}

/* Keeps the dearest few, in order. */
static void
keep_pair (RwAdvice    *self,
           RwAdvicePair pair)
{
  if (pair.minutes < least_pair_minutes || pair.a == pair.b || find_kept (self, &pair) != NULL)
    return;
  for (guint k = 0; k < MAX_PAIRS; k++)
    if (k >= self->n_pairs || pair.minutes > self->pairs[k].minutes)
      {
        const RwAdvicePair moved = self->pairs[k];

        self->pairs[k] = pair;
        if (k >= self->n_pairs)
          {
            self->n_pairs++;
            return;
          }
        pair = moved;
      }
}

static void
explain_pairs (RwAdvice *self,
               guint     check)
{
  const double mass = rw_plan_state_mass (self->state, self->problem);

  for (guint i = 0; i < self->problem->n_causes; i++)
    for (guint j = 0; j < i; j++)
      keep_pair (self, (RwAdvicePair) { rw_advice_get_cause (self, i, NULL),
                                        rw_advice_get_cause (self, j, NULL),
                                        pair_saving (self, check, i, j) / mass });
}

/* --- making ------------------------------------------------------------------------------------- */

static RwAdviceCheck
check_of (const RwAdvice     *self,
          const RwPlanOption *option)
{
  return (RwAdviceCheck) { rw_knowledge_get_check (self->knowledge, option->index), option->minutes,
                           option->setup_minutes, option->expected, option->saves };
}

/* The suggested check first, the others as the search ranked them. */
static void
list_checks (RwAdvice           *self,
             const RwPlanChoice *choice,
             const RwPlanOption *best)
{
  self->checks = g_new (RwAdviceCheck, MAX (1, choice->n_checks));
  if (best->kind == RW_ACTION_CHECK)
    self->checks[self->n_checks++] = check_of (self, best);
  for (guint k = 0; k < choice->n_checks; k++)
    if (best->kind != RW_ACTION_CHECK || choice->checks[k].index != best->index)
      self->checks[self->n_checks++] = check_of (self, &choice->checks[k]);
}

static void
look_ahead (RwAdvice *self)
{
  g_autoptr (RwPlanChoice) choice = rw_plan_search (self->problem, self->state,
                                                    &rw_plan_budget_screen);
  const RwPlanOption *best = &choice->best;

  self->kind = best->kind == RW_ACTION_CHECK ? RW_ADVICE_CHECK : RW_ADVICE_REPAIR;
  self->repair = rw_advice_get_cause (self, choice->repair.index, &self->repair_then);
  self->repair_index = (int) choice->repair.index;
  self->repair_first = choice->repair.expected;
  self->check_first = best->kind == RW_ACTION_CHECK ? best->expected
                      : choice->n_checks > 0        ? choice->checks[0].expected
                                                    : (double) NAN;
  self->reach = rw_advice_reach_of (self->problem, self->state, best);
  self->expected = best->expected;
  self->repairs_only = choice->repairs_only;
  self->perfect = choice->perfect;
  list_checks (self, choice, best);
  if (self->kind != RW_ADVICE_CHECK)
    return;
  explain_outcomes (self, best->index);
  explain_pairs (self, best->index);
}

RwAdvice *
rw_advice_new (RwKnowledge  *knowledge,
               RwBenchState *state,
               GHashTable   *skipped)
{
  RwAdvice *self = g_atomic_rc_box_new0 (RwAdvice);

  self->knowledge = rw_knowledge_for_profile (knowledge, rw_bench_state_get_profile (state));
  self->belief = rw_belief_new (self->knowledge, state);
  self->problem = rw_advice_problem_new (self->knowledge, self->belief, state);
  self->state = rw_advice_problem_start (self->problem, self->belief, skipped);
  self->outcomes = g_array_new (FALSE, TRUE, sizeof (RwAdviceOutcome));
  self->repair_index = -1;
  self->check_first = NAN;
  self->reach = RW_ADVICE_NO_READING;
  if (self->problem->n_causes == 0)
    self->kind = RW_ADVICE_NOTHING;
  else if (rw_belief_get_fixed (self->belief) != NULL)
    {
      self->kind = RW_ADVICE_DONE;
      self->repair = rw_belief_get_fixed (self->belief);
    }
  else
    look_ahead (self);
  return self;
}

/* --- getters ------------------------------------------------------------------------------------ */

RwAdviceKind
rw_advice_get_kind (const RwAdvice *self)
{
  return self->kind;
}

RwBelief *
rw_advice_get_belief (const RwAdvice *self)
{
  return self->belief;
}

RwKnowledge *
rw_advice_get_knowledge (const RwAdvice *self)
{
  return self->knowledge;
}

const RwAdviceCheck *
rw_advice_get_check (const RwAdvice *self)
{
  return self->kind == RW_ADVICE_CHECK ? &self->checks[0] : NULL;
}

const RwCause *
rw_advice_get_repair (const RwAdvice *self)
{
  return self->repair;
}

const RwCause *
rw_advice_get_repair_then (const RwAdvice *self)
{
  return self->repair_then;
}

int
rw_advice_get_repair_index (const RwAdvice *self)
{
  return self->repair_index;
}

double
rw_advice_get_repair_minutes (const RwAdvice *self,
                              const RwCause  *cause,
                              double         *proof)
{
  return rw_belief_repair_minutes (self->knowledge, cause, proof);
}

gboolean
rw_advice_is_sure_enough (const RwAdvice *self)
{
  return self->kind == RW_ADVICE_REPAIR;
}

double
rw_advice_get_repair_first (const RwAdvice *self)
{
  return self->repair_first;
}

double
rw_advice_get_check_first (const RwAdvice *self)
{
  return self->check_first;
}

RwAdviceReach
rw_advice_get_reach (const RwAdvice *self)
{
  return self->reach;
}

double
rw_advice_get_expected (const RwAdvice *self)
{
  return self->expected;
}

double
rw_advice_get_repairs_only (const RwAdvice *self)
{
  return self->repairs_only;
}

double
rw_advice_get_perfect (const RwAdvice *self)
{
  return self->perfect;
}

guint
rw_advice_get_n_outcomes (const RwAdvice *self)
{
  return self->outcomes->len;
}

const RwAdviceOutcome *
rw_advice_get_outcome (const RwAdvice *self,
                       guint           i)
{
  g_return_val_if_fail (i < self->outcomes->len, NULL);
  return &g_array_index (self->outcomes, RwAdviceOutcome, i);
}

guint
rw_advice_get_n_pairs (const RwAdvice *self)
{
  return self->n_pairs;
}

const RwAdvicePair *
rw_advice_get_pair (const RwAdvice *self,
                    guint           i)
{
  g_return_val_if_fail (i < self->n_pairs, NULL);
  return &self->pairs[i];
}

guint
rw_advice_get_n_checks (const RwAdvice *self)
{
  return self->n_checks;
}

const RwAdviceCheck *
rw_advice_get_ranked (const RwAdvice *self,
                      guint           i)
{
  g_return_val_if_fail (i < self->n_checks, NULL);
  return &self->checks[i];
}

const RwProblem *
rw_advice_get_problem (const RwAdvice *self)
{
  return self->problem;
}

const RwPlanState *
rw_advice_get_state (const RwAdvice *self)
{
  return self->state;
}

const RwCause *
rw_advice_get_cause (const RwAdvice *self,
                     guint           index,
                     const RwCause **then)
{
  const guint n = rw_knowledge_get_n_causes (self->knowledge);

  g_return_val_if_fail (index < self->problem->n_causes, NULL);
  if (then != NULL)
    *then = index < n ? NULL : rw_belief_get_pair (self->belief, index - n)->b;
  return index < n ? rw_knowledge_get_cause (self->knowledge, index)
                   : rw_belief_get_pair (self->belief, index - n)->a;
}

const RwCause *
rw_advice_get_likely (const RwAdvice    *self,
                      const RwPlanState *state,
                      double            *p)
{
  const guint n = rw_knowledge_get_n_causes (self->knowledge);
  g_autofree double *present = g_memdup2 (state->weights, MAX (1, n) * sizeof (double));
  guint best = 0;

  for (guint k = 0; k < rw_belief_get_n_pairs (self->belief); k++)
    {
      const RwPairBelief *pair = rw_belief_get_pair (self->belief, k);

      present[pair->index_a] += state->weights[n + k];
      present[pair->index_b] += state->weights[n + k];
    }
  for (guint i = 1; i < n; i++)
    if (present[i] > present[best])
      best = i;
  if (n == 0 || !(present[best] > 0))
    return NULL;
  if (p != NULL)
    *p = present[best] / rw_plan_state_mass (state, self->problem);
  return rw_knowledge_get_cause (self->knowledge, best);
}
