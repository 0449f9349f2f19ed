/* rw-advice-problem.c: the bare problem behind an advice.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-advice-problem.h"

#include "rw-setups.h"

static const double as_good = 0.005; /* nobody can notice it, and the tables are no better */

static void
fill_causes (RwProblem         *problem,
             const RwKnowledge *knowledge,
             const RwBelief    *belief)
{
  for (guint i = 0; i < problem->n_causes; i++)
    {
      const RwCause *cause = rw_knowledge_get_cause (knowledge, i);

      problem->causes[i].id = g_strdup (cause->id);
      problem->causes[i].weight = rw_belief_get_p (belief, i);
      problem->causes[i].repair_minutes = cause->repair.minutes;
    }
}

static void
fill_check (RwProblem         *problem,
            guint              index,
            const RwKnowledge *knowledge)
{
  const RwCheck *check = rw_knowledge_get_check (knowledge, index);
  RwProblemCheck *it = &problem->checks[index];

  it->id = g_strdup (check->id);
  it->minutes = check->minutes;
  it->setups = rw_setups_wanted (check);
  it->reserved = rw_check_is_reserved (check);
  it->risk = check->who * RW_N_HAZARDS + check->hazard;
  rw_problem_set_outcomes (problem, index, check->n_outcomes);
  for (guint i = 0; i < problem->n_causes; i++)
    {
      const double *row = rw_chance_table_get (&check->chance,
                                               rw_knowledge_get_cause (knowledge, i)->id);

      for (guint o = 0; o < check->n_outcomes; o++)
        it->chance[o * problem->n_causes + i] = row[o];
    }
}

RwProblem *
rw_advice_problem_new (const RwKnowledge  *knowledge,
                       const RwBelief     *belief,
                       const RwBenchState *state)
{
  RwProblem *problem = rw_problem_new (rw_knowledge_get_n_causes (knowledge),
                                       rw_knowledge_get_n_checks (knowledge));

  fill_causes (problem, knowledge, belief);
  for (guint j = 0; j < problem->n_checks; j++)
    fill_check (problem, j, knowledge);
  problem->as_good = as_good;
  problem->n_setups = RW_N_SETUPS;
  problem->setup = rw_setups_index (rw_bench_state_get_setup (state));
  for (guint from = 0; from < RW_N_SETUPS; from++)
    for (guint to = 0; to < RW_N_SETUPS; to++)
      problem->change[from][to] = rw_setups_minutes (from, to);
  return problem;
}

RwPlanState *
rw_advice_problem_start (const RwProblem *problem,
                         const RwBelief  *belief,
                         GHashTable      *skipped)
{
  RwPlanState *state = rw_plan_state_new (problem);

  for (guint j = 0; j < problem->n_checks; j++)
    {
      const char *id = problem->checks[j].id;

      state->used[j] = rw_belief_is_answered (belief, id)
                       || (skipped != NULL && g_hash_table_contains (skipped, id));
    }
  return state;
}
