/* rw-plan-beam.h: look-ahead for problems too large to solve. Used by the search.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-search.h"

G_BEGIN_DECLS

typedef struct
{
  double *check_value;  /* [n_checks] minutes × weight when it comes first; INFINITY when used */
  double  repair_value; /* the same for the best repair */
  int     repair;       /* its cause; −1 when nothing is left */
  guint   depth;        /* completed */
} RwPlanBeam;

/* Deepens from 1 to budget->depth and stops where budget->work is spent; the last whole
 * depth counts. */
RwPlanBeam *rw_plan_beam_run (const RwProblem *problem, const RwPlanState *state,
                              const RwPlanBudget *budget);
void        rw_plan_beam_free (RwPlanBeam *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPlanBeam, rw_plan_beam_free)

G_END_DECLS
