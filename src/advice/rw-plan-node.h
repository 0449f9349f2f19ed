/* rw-plan-node.h: the plan as a tree of rows that unfolds as far as somebody looks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Children are worked out when asked for. A level is the list of what is done in order:
 * repairs (each only if the one before changed nothing), up to a check; the check's children
 * are its outcomes, an outcome's children are the next level.
 *
 *   +5 V at the board, running           check, 3 min
 *   ├─ Below 4.80 V (31 %)               outcome
 *   │  └─ Drop along the +5 wire         check
 *   └─ 4.80 to 4.95 V (12 %)             outcome
 *      ├─ Set the trim (78 %)            repair
 *      └─ Clean the edge (20 %)          repair
 */
#pragma once

#include <gio/gio.h>

#include "rw-advice.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PLAN_ROW_CHECK,
  RW_PLAN_ROW_OUTCOME,
  RW_PLAN_ROW_REPAIR,
  RW_PLAN_ROW_REST, /* what is left is too unlikely to plan for; says how much */
} RwPlanRowKind;

/* Read-only properties: "kind" (int), "id", "title", "detail" (strings), "probability",
 * "reach", "minutes", "expected" (doubles). */
#define RW_TYPE_PLAN_NODE (rw_plan_node_get_type ())
G_DECLARE_FINAL_TYPE (RwPlanNode, rw_plan_node, RW, PLAN_NODE, GObject)

/* The first level. Empty when there is nothing to plan. (transfer full) (element-type
 * RwPlanNode) */
GListModel *rw_plan_node_list_roots (RwAdvice *advice);

/* The rows below; NULL for a leaf. The second call returns the same list. (transfer full)
 * (nullable) Fits a GtkTreeListModel's create function. */
GListModel *rw_plan_node_list_children (RwPlanNode *self);

RwPlanRowKind rw_plan_node_get_kind (RwPlanNode *self);
const char   *rw_plan_node_get_id (RwPlanNode *self); /* check, outcome or cause; "" for REST */
const char   *rw_plan_node_get_title (RwPlanNode *self);
const char   *rw_plan_node_get_detail (RwPlanNode *self); /* minutes, chances; translated */

/* Given that its level is come to: OUTCOME: of being seen; REPAIR: that it is the cure;
 * CHECK, REST: that what stands before them in the level is no cure. */
double rw_plan_node_get_probability (RwPlanNode *self);

double rw_plan_node_get_reach (RwPlanNode *self);    /* chance of coming to this row at all */
double rw_plan_node_get_minutes (RwPlanNode *self);  /* of the row itself; 0 for an outcome */
double rw_plan_node_get_expected (RwPlanNode *self); /* to go from here until fixed; works the
                                                        level below out if it must */
guint  rw_plan_node_get_depth (RwPlanNode *self);    /* checks above it */

const RwCheck *rw_plan_node_get_check (RwPlanNode *self); /* CHECK and OUTCOME; else NULL */

/* REPAIR: its cause; OUTCOME: the likeliest then; else NULL. */
const RwCause *rw_plan_node_get_cause (RwPlanNode *self);

RwHazard rw_plan_node_get_hazard (RwPlanNode *self);

G_END_DECLS
