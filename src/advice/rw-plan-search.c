/* rw-plan-search.c: which action first: a check, or a repair?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reserved checks (hazardous, or not for everybody) are left aside first. Where then a check
 * is the best action, that is the answer; only where none pays are they let in. Whoever
 * follows the plan asks again at each step, so the rule holds all the way down.
 */
#include "config.h"

#include "rw-plan-search.h"

#include <math.h>
#include <stdlib.h>

#include "rw-plan-beam.h"
#include "rw-plan-exact.h"
#include "rw-repair-order.h"

const RwPlanBudget rw_plan_budget_screen = { 6, 8 * 1000 * 1000, 100 * 1000 };
const RwPlanBudget rw_plan_budget_node = { 4, 1500 * 1000, 20 * 1000 };
const RwPlanBudget rw_plan_budget_file = { 6, 400 * 1000 * 1000, 60 * 1000 * 1000 };

RwPlanState *
rw_plan_state_new (const RwProblem *problem)
{
  RwPlanState *self = g_new0 (RwPlanState, 1);
  double sum = 0;

  self->weights = g_new0 (double, problem->n_causes);
  self->used = g_new0 (gboolean, problem->n_checks);
  self->setup = problem->setup;
  for (guint i = 0; i < problem->n_causes; i++)
    sum += problem->causes[i].weight;
  for (guint i = 0; i < problem->n_causes && sum > 0; i++)
    self->weights[i] = problem->causes[i].weight / sum;
  return self;
}

RwPlanState *
rw_plan_state_copy (const RwPlanState *self,
                    const RwProblem   *problem)
{
  RwPlanState *copy = g_new0 (RwPlanState, 1);

  copy->weights = g_memdup2 (self->weights, problem->n_causes * sizeof (double));
  copy->used = g_memdup2 (self->used, problem->n_checks * sizeof (gboolean));
  copy->setup = self->setup;
  return copy;
}

void
rw_plan_state_free (RwPlanState *self)
{
  if (self == NULL)
    return;
  g_free (self->weights);
  g_free (self->used);
  g_free (self);
}

double
rw_plan_state_mass (const RwPlanState *self,
                    const RwProblem   *problem)
{
  double mass = 0;

  for (guint i = 0; i < problem->n_causes; i++)
    mass += self->weights[i];
  return mass;
}

RwPlanState *
rw_plan_state_after_check (const RwPlanState *self,
                           const RwProblem   *problem,
                           guint              check,
                           guint              outcome)
{
  RwPlanState *next = rw_plan_state_copy (self, problem);

  for (guint i = 0; i < problem->n_causes; i++)
    next->weights[i] *= rw_problem_chance (problem, check, outcome, i);
  next->used[check] = TRUE;
  rw_problem_minutes (problem, check, self->setup, &next->setup);
  return next;
}

RwPlanState *
rw_plan_state_after_repair (const RwPlanState *self,
                            const RwProblem   *problem,
                            guint              cause)
{
  RwPlanState *next = rw_plan_state_copy (self, problem);

  next->weights[cause] = 0;
  return next;
}

/* Sums of the same numbers in another order differ by less than this share. */
static const double rounding = 1e-12;

/* Values of checks and of the best repair, minutes × weight, however they were found. */
typedef struct
{
  double  *check_value; /* [n_checks], INFINITY when used; owned */
  double   repair_value;
  int      repair;
  guint    depth;
  gboolean exact;
} Values;

static Values
exact_values (const RwPlanExact *exact,
              const RwProblem   *problem,
              const RwPlanState *state)
{
  const RwPlanSpot start = rw_plan_exact_start (exact);
  Values values = { g_new (double, problem->n_checks), 0, -1, 0, TRUE };

  for (guint j = 0; j < problem->n_checks; j++)
    {
      values.check_value[j] = INFINITY;
      if (!state->used[j])
        values.check_value[j] = rw_plan_exact_check_value (exact, start, j);
    }
  values.repair = rw_plan_exact_best_repair (exact, start, &values.repair_value);
  return values;
}

static Values
find_values (const RwProblem    *problem,
             const RwPlanState  *state,
             const RwPlanBudget *budget)
{
  g_autoptr (RwPlanExact) exact = rw_plan_exact_new (problem, state, budget->exact_states);

  if (exact != NULL)
    return exact_values (exact, problem, state);

  g_autoptr (RwPlanBeam) beam = rw_plan_beam_run (problem, state, budget);

  return (Values) { g_steal_pointer (&beam->check_value), beam->repair_value, beam->repair,
                    beam->depth,
                    FALSE };
}

static int
compare_options (const void *a,
                 const void *b)
{
  const RwPlanOption *x = a;
  const RwPlanOption *y = b;

  if (x->expected != y->expected)
    return x->expected < y->expected ? -1 : 1;
  return (x->index > y->index) - (x->index < y->index);
}

static void
fill_checks (RwPlanChoice      *choice,
             const RwProblem   *problem,
             const RwPlanState *state,
             const Values      *values,
             double             mass)
{
  choice->checks = g_new0 (RwPlanOption, problem->n_checks);
  for (guint j = 0; j < problem->n_checks; j++)
    {
      RwPlanOption *option = &choice->checks[choice->n_checks];

      if (isinf (values->check_value[j]))
        continue;
      option->kind = RW_ACTION_CHECK;
      option->index = j;
      option->minutes = rw_problem_minutes (problem, j, state->setup, NULL);
      option->setup_minutes = option->minutes - problem->checks[j].minutes;
      option->expected = values->check_value[j] / mass;
      option->saves = choice->repairs_only - option->expected;
      choice->n_checks++;
    }
  if (choice->n_checks > 1)
    qsort (choice->checks, choice->n_checks, sizeof *choice->checks, compare_options);
}

/* Which of two checks as good as each other is taken: the less risky, then the shorter, then the
 * first of the problem. */
static gboolean
is_gentler (const RwProblem    *problem,
            const RwPlanOption *a,
            const RwPlanOption *b)
{
  const guint risk_a = problem->checks[a->index].risk;
  const guint risk_b = problem->checks[b->index].risk;

  if (risk_a != risk_b)
    return risk_a < risk_b;
  if (problem->as_good > 0 && a->minutes != b->minutes)
    return a->minutes < b->minutes;
  return a->index < b->index;
}

/* A check is the better action when it costs less than the best repair. */
static void
choose (RwPlanChoice    *choice,
        const RwProblem *problem)
{
  const double limit = choice->repair.expected * (1 - rounding);

  choice->best = choice->repair;
  for (guint k = 0; k < choice->n_checks; k++)
    {
      const RwPlanOption *option = &choice->checks[k];
      const double tolerance = MAX (problem->as_good, rounding);
      const gboolean equal = option->expected <= choice->checks[0].expected * (1 + tolerance);

      if (option->expected < limit && equal
          && (choice->best.kind != RW_ACTION_CHECK || is_gentler (problem, option, &choice->best)))
        choice->best = *option;
    }
}

static RwPlanChoice *
search_once (const RwProblem    *problem,
             const RwPlanState  *state,
             const RwPlanBudget *budget)
{
  RwPlanChoice *choice = g_new0 (RwPlanChoice, 1);
  const double mass = rw_plan_state_mass (state, problem);
  g_autofree double *minutes = g_new (double, problem->n_causes);

  if (!(mass > 0))
    return choice;
  for (guint i = 0; i < problem->n_causes; i++)
    minutes[i] = problem->causes[i].repair_minutes;
  choice->repairs_only = rw_repair_cost (problem->n_causes, state->weights, minutes) / mass;
  choice->perfect = rw_repair_cost_known (problem->n_causes, state->weights, minutes) / mass;

  Values values = find_values (problem, state, budget);

  choice->repair = (RwPlanOption) { RW_ACTION_REPAIR, (guint) values.repair,
                                    minutes[values.repair], 0,
                                    values.repair_value / mass, 0 };
  choice->repair.saves = choice->repairs_only - choice->repair.expected;
  choice->depth = values.depth;
  choice->exact = values.exact;
  fill_checks (choice, problem, state, &values, mass);
  choose (choice, problem);
  g_free (values.check_value);
  return choice;
}

static gboolean
set_reserved_aside (const RwProblem *problem,
                    RwPlanState     *state)
{
  gboolean any = FALSE;

  for (guint j = 0; j < problem->n_checks; j++)
    if (problem->checks[j].reserved && !state->used[j])
      state->used[j] = any = TRUE;
  return any;
}

/* Lists the checks set aside too, valued by one step: somebody may be allowed to take them. */
static void
add_reserved (RwPlanChoice      *choice,
              const RwProblem   *problem,
              const RwPlanState *state)
{
  static const RwPlanBudget glance = { 1, 0, 0 };
  g_autoptr (RwPlanChoice) all = search_once (problem, state, &glance);

  for (guint k = 0; k < all->n_checks; k++)
    if (problem->checks[all->checks[k].index].reserved)
      choice->checks[choice->n_checks++] = all->checks[k];
  qsort (choice->checks, choice->n_checks, sizeof *choice->checks, compare_options);
}

RwPlanChoice *
rw_plan_search (const RwProblem    *problem,
                const RwPlanState  *state,
                const RwPlanBudget *budget)
{
  g_autoptr (RwPlanState) safe = rw_plan_state_copy (state, problem);

  if (!set_reserved_aside (problem, safe))
    return search_once (problem, state, budget);

  RwPlanChoice *choice = search_once (problem, safe, budget);

  if (choice->best.kind != RW_ACTION_REPAIR)
    {
      add_reserved (choice, problem, state);
      return choice;
    }
  rw_plan_choice_free (choice);
  return search_once (problem, state, budget);
}

void
rw_plan_choice_free (RwPlanChoice *self)
{
  if (self == NULL)
    return;
  g_free (self->checks);
  g_free (self);
}
