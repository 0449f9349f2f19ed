/* rw-plan-path.h: what was done so far, as the beginning of the plan: each step with what it showed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"

G_BEGIN_DECLS

/* Symptoms, checks, repairs, and what was set aside, in the order in which they came: "✓ +5 V at the board: 4.71 V, below
 * 4.80 V". What nothing follows from any more is left out. (transfer full) (element-type utf8) */
GPtrArray *rw_plan_path_list (const RwAdvice *advice, const RwBenchState *state);

G_END_DECLS
