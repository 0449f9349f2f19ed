/* rw-plan-search.h: which action first: a check, or a repair?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact where the problem is small enough, else a look-ahead beam that deepens step by step
 * until its budget is spent. No clock: the budget counts work, so the same input gives the
 * same output.
 */
#pragma once

#include "rw-problem.h"

G_BEGIN_DECLS

/* Where one stands in a problem. Weights are not normalised: their sum is the chance of
 * getting here. */
typedef struct
{
  double   *weights; /* [n_causes], owned */
  gboolean *used;    /* [n_checks], owned: taken already, or not to be taken */
  guint     setup;
} RwPlanState;

RwPlanState *rw_plan_state_new (const RwProblem *problem); /* the start; weights scaled to sum 1 */
RwPlanState *rw_plan_state_copy (const RwPlanState *self, const RwProblem *problem);
void         rw_plan_state_free (RwPlanState *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPlanState, rw_plan_state_free)

/* Sum of the weights. */
double rw_plan_state_mass (const RwPlanState *self, const RwProblem *problem);

/* The state after a check showed an outcome, or after a repair did not help. (transfer full) */
RwPlanState *rw_plan_state_after_check (const RwPlanState *self, const RwProblem *problem,
                                        guint check, guint outcome);
RwPlanState *rw_plan_state_after_repair (const RwPlanState *self, const RwProblem *problem,
                                         guint cause);

typedef struct
{
  guint   depth;        /* deepest look-ahead, 1 … 6 */
  guint64 work;         /* pairs of causes compared and weights updated before it stops deepening */
  gsize   exact_states; /* largest table for the exact search; 0: never exact */
} RwPlanBudget;

/* For the suggestion on screen (tens of milliseconds), for one node of an unfolded tree (a
 * few), and for a whole plan written to a file (seconds). */
extern const RwPlanBudget rw_plan_budget_screen;
extern const RwPlanBudget rw_plan_budget_node;
extern const RwPlanBudget rw_plan_budget_file;

typedef enum
{
  RW_ACTION_NONE, /* no cause has any weight left */
  RW_ACTION_CHECK,
  RW_ACTION_REPAIR,
} RwActionKind;

typedef struct
{
  RwActionKind kind;
  guint        index;         /* of the check or the cause */
  double       minutes;       /* of the action itself, change of setup included */
  double       setup_minutes; /* the change of setup alone */
  double       expected;      /* expected minutes until fixed when this is done first */
  double       saves;         /* against repairing straight away; < 0: does not pay */
} RwPlanOption;

typedef struct
{
  RwPlanOption  best;
  RwPlanOption *checks;   /* every check not used, the best first */
  guint         n_checks;
  RwPlanOption  repair;   /* the best repair as first action; kind NONE when nothing is left */
  double        repairs_only; /* expected minutes of repairing straight away */
  double        perfect;      /* expected minutes if the cause were known */
  guint         depth;        /* look-ahead completed; 0 when exact */
  gboolean      exact;        /* best.expected is the optimum */
} RwPlanChoice;

/* Reserved checks are considered only where no other check pays; they are listed all the same.
 * Of checks within problem->as_good of the best the least risky is taken, then the shortest, but
 * never one that does not pay. (transfer full) */
RwPlanChoice *rw_plan_search (const RwProblem *problem, const RwPlanState *state,
                              const RwPlanBudget *budget);
void          rw_plan_choice_free (RwPlanChoice *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPlanChoice, rw_plan_choice_free)

G_END_DECLS
