/* rw-advice-problem.c: the bare problem behind an advice.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A repair costs its minutes and those of proving it, whether it was the right one or not: the checks it names to
 * be taken again must be taken before anybody knows.
 *
 * The planner wants causes that exclude each other, each with one repair. Single causes stand with their chance of
 * being the only fault. A pair worth speaking of is a further cause whose repair is both repairs; that half of it
 * may have been done already when one of its causes was tried alone is left out, which makes pairs look a little
 * dearer than they are. Each pair that is not worth speaking of is counted to its cause that one would repair first:
 * that is the step to take, and then one plans again.
 */
#include "config.h"

#include "rw-advice-problem.h"

#include "rw-belief-rank.h"
#include "rw-setups.h"

static const double as_good = 0.005; /* nobody can notice it, and the tables are no better */

static void
fill_causes (RwProblem         *problem,
             const RwKnowledge *knowledge,
             const RwBelief    *belief)
{
  const guint n = rw_knowledge_get_n_causes (knowledge);
  g_autofree double *weights = g_new0 (double, MAX (1, n));

  rw_belief_add_rest (belief, weights);
  for (guint i = 0; i < n; i++)
    {
      const RwCause *cause = rw_knowledge_get_cause (knowledge, i);

      problem->causes[i].id = g_strdup (cause->id);
      problem->causes[i].weight = weights[i] + rw_belief_get_alone (belief, i);
      problem->causes[i].repair_minutes = rw_belief_repair_minutes (knowledge, cause, NULL);
    }
  for (guint k = 0; k < rw_belief_get_n_pairs (belief); k++)
    {
      const RwPairBelief *pair = rw_belief_get_pair (belief, k);
      RwProblemCause *it = &problem->causes[n + k];

      it->id = g_strdup_printf ("%s+%s", pair->a->id, pair->b->id);
      it->weight = pair->p;
      it->repair_minutes = problem->causes[pair->index_a].repair_minutes
                           + problem->causes[pair->index_b].repair_minutes;
    }
}

/* The hypotheses behind the problem's causes. (transfer full) */
static guint *
list_hypotheses (const RwBelief *belief,
                 guint           n_causes)
{
  const RwHypotheses *hypotheses = rw_belief_get_hypotheses (belief);
  guint *list = g_new0 (guint, MAX (1, n_causes));

  for (guint i = 0; i < hypotheses->n; i++)
    list[i] = i;
  for (guint k = 0; k < rw_belief_get_n_pairs (belief); k++)
    {
      const RwPairBelief *pair = rw_belief_get_pair (belief, k);

      list[hypotheses->n + k] = (guint) rw_hypotheses_find_pair (hypotheses, pair->index_a, pair->index_b);
    }
  return list;
}

static void
fill_check (RwProblem         *problem,
            guint              index,
            const RwKnowledge *knowledge,
            const RwBelief    *belief,
            const guint       *hypotheses)
{
  const RwCheck *check = rw_knowledge_get_check (knowledge, index);
  RwProblemCheck *it = &problem->checks[index];
  g_autofree double *rows = g_new (double, MAX (1, problem->n_causes * check->n_outcomes));

  it->id = g_strdup (check->id);
  it->minutes = check->minutes;
  it->setups = rw_setups_wanted (check);
  it->reserved = rw_check_is_reserved (check);
  it->risk = check->who * RW_N_HAZARDS + check->hazard;
  rw_problem_set_outcomes (problem, index, check->n_outcomes);
  rw_hypotheses_fill_rows (rw_belief_get_hypotheses (belief), &check->chance, hypotheses, problem->n_causes,
                           rows);
  for (guint i = 0; i < problem->n_causes; i++)
    for (guint o = 0; o < check->n_outcomes; o++)
      it->chance[o * problem->n_causes + i] = rows[i * check->n_outcomes + o];
}

RwProblem *
rw_advice_problem_new (const RwKnowledge  *knowledge,
                       const RwBelief     *belief,
                       const RwBenchState *state)
{
  RwProblem *problem = rw_problem_new (rw_knowledge_get_n_causes (knowledge) + rw_belief_get_n_pairs (belief),
                                       rw_knowledge_get_n_checks (knowledge));
  g_autofree guint *hypotheses = list_hypotheses (belief, problem->n_causes);

  fill_causes (problem, knowledge, belief);
  for (guint j = 0; j < problem->n_checks; j++)
    fill_check (problem, j, knowledge, belief, hypotheses);
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
