/* rw-report-plan-merge.h: outcomes of a check after which the same is done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plan that is read by people says once what follows several outcomes. "The same" is what is shown: the same checks
 * with the same outcomes below them down to the depth that is shown, the same repairs in the same order as far as
 * they are spelled out. Chances of coming there add up, minutes to go are their mean by those chances.
 */
#pragma once

#include "rw-report-plan.h"

G_BEGIN_DECLS

#define RW_REPORT_PLAN_SPELLED 3 /* repairs of a run that are named; the rest is counted */

/* Outcomes of one check that lead to one sub-plan. */
typedef struct
{
  GArray     *outcomes; /* of guint, rising */
  RwPlanTree *tree;     /* owned: their sub-plans in one */
} RwReportBranch;

/* What is shown below the check @node, those come to with less than RW_REPORT_PLAN_MIN_SHARE left out. @above: checks
 * above its outcomes, with itself. (transfer full) (element-type RwReportBranch) in the order of their first
 * outcomes */
GPtrArray *rw_report_plan_merge (const RwReportPlan *plan, const RwPlanTree *node, guint above);

/* TRUE when only repairs follow, with @node itself. NULL is an empty run. */
gboolean rw_report_plan_is_run (const RwPlanTree *node);

/* What follows a repair that changed nothing. (nullable) */
const RwPlanTree *rw_report_plan_after (const RwPlanTree *repair);

G_END_DECLS
