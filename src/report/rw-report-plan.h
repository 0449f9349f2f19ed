/* rw-report-plan.h: a plan worked out from the knowledge, as text and as JSON.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"
#include "rw-plan-tree.h"

G_BEGIN_DECLS

#define RW_REPORT_PLAN_DEPTH 4        /* checks deep, unless somebody says otherwise */
#define RW_REPORT_PLAN_DEEPEST 20     /* more would not fit a page, or a day */
#define RW_REPORT_PLAN_MIN_SHARE 0.01 /* branches come to less often are only repaired through */

/* A tree and what it stands for. Read-only once made. */
typedef struct
{
  RwAdvice   *advice; /* where the plan starts from */
  RwPlanTree *tree;   /* the whole plan; (nullable): nothing to plan */
  guint       depth;  /* it is shown this many checks deep */
} RwReportPlan;

/* Works the whole plan out from where @advice stands, by the search that suggests the next check,
 * but for branches that are come to with less than RW_REPORT_PLAN_MIN_SHARE. @depth: 1 …
 * RW_REPORT_PLAN_DEEPEST. (transfer full) */
RwReportPlan *rw_report_plan_new (RwAdvice *advice, guint depth);
void          rw_report_plan_free (RwReportPlan *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwReportPlan, rw_report_plan_free)

/* Indented, translated text, not wrapped: each outcome with its chance, what follows below it,
 * what can hurt before the step that meets it; of a run of repairs the first few; at the end how
 * much is not shown. (transfer full) */
GString *rw_report_plan_to_text (const RwReportPlan *self);

/* One line:
 * {"expected_minutes":x,"repairs_only_minutes":x,"perfect_minutes":x,"depth":n,"plan":NODE}, plan
 * null when there is nothing to plan. A NODE is that of a bare plan (rw-plan-tree.h) with more
 * keys: "minutes" of the step, "reach" (chance of coming to it, 0 … 1) and "expected_minutes" (to
 * go from here); a check's "names" are the ids of its outcomes, in the order of "outcomes". A
 * check deeper than @depth is {"minutes","reach","expected_minutes", "cut":ID} and nothing
 * follows it. Numbers never obey the locale. (transfer full) */
GString *rw_report_plan_to_json (const RwReportPlan *self);

G_END_DECLS
