/* rw-report-plan-lines.h: a plan as lines to be set on paper or on a terminal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   Check: +5 V at the board, running (3 min; expected 90 min), power on · board fitted
 *     31 %  Below 4.80 V, or 4.80 to 4.90 V
 *       ! beside bare mains parts
 *       ! Caution 1: Mains screws share the terminal strip: …
 *       Check: …
 *     12 %  4.90 to 5.10 V
 *       Repair: set the trim (5 min, 78 %), then clean the edge (8 min, 20 %); expected 7 min
 *     too rare to plan for: 5.20 V or more (< 1 %)
 *
 * Outcomes after which the same is done stand in one line (rw-report-plan-merge.h). Repairs that follow one another
 * without a check between stand on one line, likeliest per minute first; each with the chance that it fixes, given
 * that one comes to it. After the first few the rest is only counted. What a step can do to people stands on a line
 * of its own before it; how to keep safe stands in full before the first step that needs it, with a number, and by
 * that number before later ones ("beside bare mains parts: caution 1, page 2"). Branches come to with less than RW_REPORT_PLAN_MIN_SHARE are cut, and it is said how much.
 */
#pragma once

#include "rw-report-plan.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PLAN_LINE_KNOWN,   /* what was seen so far, what the plan costs, or that there is none */
  RW_PLAN_LINE_DANGER,  /* before the step that can hurt */
  RW_PLAN_LINE_CHECK,
  RW_PLAN_LINE_OUTCOME,
  RW_PLAN_LINE_REPAIR,
  RW_PLAN_LINE_RARE,    /* outcomes too rare to plan for */
  RW_PLAN_LINE_CUT,     /* how much is not shown */
} RwPlanLineKind;

typedef struct
{
  RwPlanLineKind kind;
  guint          level; /* 0 … */
  char          *text;  /* translated, one line, not wrapped */
  guint          caution; /* 1 …: DANGER that is said in full here, or in an earlier line; 0: no such */
  gboolean       repeats; /* it was said in full in an earlier line */
} RwPlanLine;

/* (transfer full) (element-type RwPlanLine) */
GPtrArray *rw_report_plan_lines (const RwReportPlan *self);

/* The text as it is set; of a caution that was said before, with where. @page: where that is, 1 …; 0: there are no
 * pages. (transfer full) */
char *rw_plan_line_dup_text (const RwPlanLine *line, guint page);

G_END_DECLS
