/* rw-advice-problem.h: the bare problem behind an advice. For rw-advice alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-belief.h"
#include "rw-plan-search.h"

G_BEGIN_DECLS

/* Causes and checks with the indices of @knowledge, behind the causes the pairs of @belief; weights from @belief, the
 * present setup from @state. (transfer full) */
RwProblem *rw_advice_problem_new (const RwKnowledge *knowledge, const RwBelief *belief,
                                  const RwBenchState *state);

/* Where one stands: answered checks and those of the set @skipped (nullable) are used.
 * (transfer full) */
RwPlanState *rw_advice_problem_start (const RwProblem *problem, const RwBelief *belief,
                                      GHashTable *skipped);

G_END_DECLS
