/* rw-foretell.c: what each outcome of any check would mean.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The weights after an outcome sum to the chance of seeing it; what follows is what the search finds best from there.
 */
#include "config.h"

#include "rw-foretell.h"

static void
foretell_next (const RwAdvice    *advice,
               const RwPlanState *after,
               RwAdviceOutcome   *out)
{
  guint index = 0;

  out->next = rw_advice_decide (advice, after, &rw_plan_budget_node, &index, &out->expected);
  if (out->next == RW_ACTION_CHECK)
    {
      const RwCheck *check = rw_knowledge_get_check (rw_advice_get_knowledge (advice), index);

      out->next_id = check->id;
      out->next_title = check->title;
    }
  else if (out->next == RW_ACTION_REPAIR)
    {
      const RwCause *cause = rw_advice_get_cause (advice, index, NULL);

      out->next_id = cause->id;
      out->next_title = cause->repair.title;
    }
}

static RwAdviceOutcome
foretell_one (const RwAdvice *advice,
              const RwCheck  *check,
              guint           index,
              guint           outcome)
{
  const RwProblem *problem = rw_advice_get_problem (advice);
  const RwPlanState *state = rw_advice_get_state (advice);
  const double mass = rw_plan_state_mass (state, problem);
  g_autoptr (RwPlanState) after = rw_plan_state_after_check (state, problem, index, outcome);
  RwAdviceOutcome out = { .outcome = &check->outcomes[outcome] };

  out.chance = mass > 0 ? rw_plan_state_mass (after, problem) / mass : 0;
  if (!(out.chance > 1e-9))
    return out;
  out.likely = rw_advice_get_likely (advice, after, &out.likely_p);
  foretell_next (advice, after, &out);
  return out;
}

GArray *
rw_foretell (const RwAdvice *advice,
             const RwCheck  *check)
{
  g_return_val_if_fail (advice != NULL && check != NULL, NULL);

  GArray *list = g_array_new (FALSE, FALSE, sizeof (RwAdviceOutcome));
  const RwAdviceCheck *suggested = rw_advice_get_check (advice);
  const int index = rw_knowledge_index_of_check (rw_advice_get_knowledge (advice), check->id);

  if (suggested != NULL && suggested->check == check)
    for (guint i = 0; i < rw_advice_get_n_outcomes (advice); i++)
      g_array_append_val (list, *rw_advice_get_outcome (advice, i));
  else
    for (guint o = 0; index >= 0 && o < check->n_outcomes; o++)
      {
        const RwAdviceOutcome one = foretell_one (advice, check, (guint) index, o);

        g_array_append_val (list, one);
      }
  return list;
}
