/* rw-plan-path.c: what was done so far.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-plan-path.h"

#include <glib/gi18n-lib.h>

#include "rw-skipped.h"

typedef struct
{
  guint n; /* event */
  char *words;
} Step;

static int
compare_steps (gconstpointer a,
               gconstpointer b)
{
  const guint x = ((const Step *) a)->n, y = ((const Step *) b)->n;

  return x < y ? -1 : x > y ? 1 : 0;
}

static const char *
sign_of (const RwEvidence *evidence)
{
  switch (evidence->kind)
    {
    case RW_EVIDENCE_SYMPTOM:
      return "•";
    case RW_EVIDENCE_REPAIR:
      return "✗";
    case RW_EVIDENCE_COMPUTED:
      return "=";
    case RW_EVIDENCE_FINDING:
    case RW_EVIDENCE_READING:
    default:
      return "✓";
    }
}

static void
add_evidence (GArray           *steps,
              const RwEvidence *evidence)
{
  g_autofree char *words = g_strdup_printf ("%s %s", sign_of (evidence), evidence->title);
  Step step = { evidence->n, NULL };

  if (evidence->strange)
    /* Translators: something that was seen. */
    step.words = g_strdup_printf (_ ("%s (does not fit the rest)"), words);
  else if (evidence->outdated)
    /* Translators: something that was seen. */
    step.words = g_strdup_printf (_ ("%s (before the repair)"), words);
  else
    step.words = g_steal_pointer (&words);
  g_array_append_val (steps, step);
}

static void
add_skipped (GArray              *steps,
             RwKnowledge         *knowledge,
             const RwFindingSeen *seen)
{
  const RwCheck *check = rw_knowledge_find_check (knowledge, seen->check);
  const char *title = check != NULL ? check->title : seen->check;
  /* Translators: title of a check. */
  const Step step = { seen->n, g_strdup_printf (_ ("– %s: set aside"), title) };

  g_array_append_val (steps, step);
}

static void
add_fix (GArray             *steps,
         RwKnowledge        *knowledge,
         const RwRepairSeen *seen)
{
  const RwCause *cause = rw_knowledge_find_cause (knowledge, seen->cause);
  const char *title = cause != NULL ? cause->repair.title : seen->cause;
  /* Translators: a repair. */
  const Step step = { seen->n, g_strdup_printf (_ ("✓ %s: fixed"), title) };

  g_array_append_val (steps, step);
}

GPtrArray *
rw_plan_path_list (const RwAdvice     *advice,
                   const RwBenchState *state)
{
  g_return_val_if_fail (advice != NULL && state != NULL, NULL);

  RwBelief *belief = rw_advice_get_belief (advice);
  RwKnowledge *knowledge = rw_advice_get_knowledge (advice);
  g_autoptr (GArray) steps = g_array_new (FALSE, FALSE, sizeof (Step));
  GPtrArray *list = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
    add_evidence (steps, rw_belief_get_evidence (belief, i));
  for (guint i = 0; i < rw_bench_state_get_n_findings (state); i++)
    if (rw_skipped_is (rw_bench_state_get_finding (state, i)))
      add_skipped (steps, knowledge, rw_bench_state_get_finding (state, i));
  for (guint i = 0; i < rw_bench_state_get_n_repairs (state); i++)
    if (rw_bench_state_get_repair (state, i)->result == RW_REPAIR_FIXED)
      add_fix (steps, knowledge, rw_bench_state_get_repair (state, i));
  g_array_sort (steps, compare_steps);
  for (guint i = 0; i < steps->len; i++)
    g_ptr_array_add (list, g_array_index (steps, Step, i).words);
  return list;
}
