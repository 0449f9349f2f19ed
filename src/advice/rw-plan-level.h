/* rw-plan-level.h: one level of the plan, worked out when first counted. For rw-plan-node.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "rw-advice.h"

G_BEGIN_DECLS

/* A GListModel of RwPlanNode. A tree view asks every row it shows for its children just to
 * know whether it has any; so making a level costs nothing, and only counting or reading it
 * does the work. */
#define RW_TYPE_PLAN_LEVEL (rw_plan_level_get_type ())
G_DECLARE_FINAL_TYPE (RwPlanLevel, rw_plan_level, RW, PLAN_LEVEL, GObject)

/* What is done from @state on, which @depth checks lead to. @first: begin as the advice
 * itself does. Takes @state. */
RwPlanLevel *rw_plan_level_new (RwAdvice *advice, RwPlanState *state, guint depth,
                                gboolean first);

/* The outcomes of a check taken in @state. Takes @state. */
RwPlanLevel *rw_plan_level_new_outcomes (RwAdvice *advice, RwPlanState *state, guint check,
                                         guint depth);

G_END_DECLS
