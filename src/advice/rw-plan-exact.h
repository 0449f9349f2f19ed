/* rw-plan-exact.h: the optimal plan of a small problem, by dynamic programming. Used by the search.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-search.h"

G_BEGIN_DECLS

/* A solved table. It borrows the problem, which must outlive it. */
typedef struct _RwPlanExact RwPlanExact;

/* A place in the table. */
typedef struct
{
  gsize   history; /* outcomes of the checks that err */
  guint32 set;     /* causes left: neither repaired nor ruled out */
  guint   setup;
} RwPlanSpot;

/* NULL when more than @max_states states would be needed, or the memory is not there. (nullable) */
RwPlanExact *rw_plan_exact_new (const RwProblem *problem, const RwPlanState *state,
                                gsize max_states);
void         rw_plan_exact_free (RwPlanExact *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPlanExact, rw_plan_exact_free)

RwPlanSpot rw_plan_exact_start (const RwPlanExact *self);

/* Minimal expected minutes until fixed × chance of coming to the spot. */
double rw_plan_exact_value (const RwPlanExact *self, RwPlanSpot spot);

/* Chance of coming to the spot, in the scale of the state's weights. */
double rw_plan_exact_mass (const RwPlanExact *self, RwPlanSpot spot);

/* The optimal first action: of equal ones a repair, and of those the first. RW_ACTION_NONE
 * when nothing is left. */
RwActionKind rw_plan_exact_best (const RwPlanExact *self, RwPlanSpot spot, guint *index);

/* Value when this check is taken first. A check that tells nothing costs its minutes. */
double rw_plan_exact_check_value (const RwPlanExact *self, RwPlanSpot spot, guint check);

/* The best repair as first action, by index of the problem; −1 when nothing is left. */
int rw_plan_exact_best_repair (const RwPlanExact *self, RwPlanSpot spot, double *value);

RwPlanSpot rw_plan_exact_after_check (const RwPlanExact *self, RwPlanSpot spot, guint check,
                                      guint outcome);
RwPlanSpot rw_plan_exact_after_repair (const RwPlanExact *self, RwPlanSpot spot, guint cause);

G_END_DECLS
