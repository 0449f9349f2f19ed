/* rw-advice-reach.h: whether one reading alone can be worth taking. For rw-advice alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"

G_BEGIN_DECLS

/* @best: what the search would do from @state. */
RwAdviceReach rw_advice_reach_of (const RwProblem *problem, const RwPlanState *state, const RwPlanOption *best);

G_END_DECLS
