/* study-advise.c: what the program says next, with the screen's budget or with a smaller one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "study-advise.h"

#include "rw-advice-problem.h"

static void
advise_screen (StudyAdvice  *out,
               RwKnowledge  *knowledge,
               RwBenchState *state,
               GHashTable   *skipped)
{
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, skipped);

  out->kind = rw_advice_get_kind (advice);
  out->check = out->kind == RW_ADVICE_CHECK ? rw_advice_get_check (advice)->check : NULL;
  out->repair = rw_advice_get_repair (advice);
  out->belief = rw_belief_ref (rw_advice_get_belief (advice));
}

/* The problem lists the single causes, then the pairs that are spoken of. */
static const RwCause *
cause_at (RwKnowledge *knowledge,
          RwBelief    *belief,
          guint        index)
{
  const guint n = rw_knowledge_get_n_causes (knowledge);

  return index < n ? rw_knowledge_get_cause (knowledge, index) : rw_belief_get_pair (belief, index - n)->a;
}

static void
advise_small (StudyAdvice  *out,
              RwKnowledge  *knowledge,
              RwBenchState *state,
              GHashTable   *skipped)
{
  out->belief = rw_belief_new (knowledge, state);
  out->kind = RW_ADVICE_DONE;
  if (rw_belief_get_fixed (out->belief) != NULL)
    return;

  g_autoptr (RwProblem) problem = rw_advice_problem_new (knowledge, out->belief, state);
  g_autoptr (RwPlanState) start = rw_advice_problem_start (problem, out->belief, skipped);
  g_autoptr (RwPlanChoice) choice = rw_plan_search (problem, start, &rw_plan_budget_node);

  out->kind = choice->best.kind == RW_ACTION_CHECK ? RW_ADVICE_CHECK : RW_ADVICE_REPAIR;
  if (choice->best.kind == RW_ACTION_CHECK)
    out->check = rw_knowledge_get_check (knowledge, choice->best.index);
  out->repair = cause_at (knowledge, out->belief, choice->repair.index);
}

void
study_advise (StudyAdvice *out,
              RwKnowledge *knowledge,
              RwSession   *session,
              GHashTable  *skipped,
              gboolean     screen)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const gint64 before = g_get_monotonic_time ();

  *out = (StudyAdvice) { .kind = RW_ADVICE_NOTHING };
  if (screen)
    advise_screen (out, knowledge, state, skipped);
  else
    advise_small (out, knowledge, state, skipped);
  out->spent = (double) (g_get_monotonic_time () - before) / 1000;
}

void
study_advice_clear (StudyAdvice *self)
{
  g_clear_pointer (&self->belief, rw_belief_unref);
}
