/* rw-plan-node-private.h: how a row of the plan is made. For rw-plan-level alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-node.h"

G_BEGIN_DECLS

/* What a row is made of. */
typedef struct
{
  RwPlanRowKind  kind;
  RwAdvice      *advice;   /* borrowed */
  RwPlanState   *state;    /* taken: before a check, after an outcome; NULL for a leaf */
  guint          index;    /* CHECK: of the check */
  guint          depth;
  const char    *id;       /* interned, or of the knowledge */
  const char    *title;    /* borrowed, lives as long as the advice or for ever */
  char          *detail;   /* taken */
  double         probability;
  double         reach;
  double         minutes;
  double         expected; /* < 0: that of the level below */
  const RwCheck *check;
  const RwCause *cause;
  const RwCause *then;     /* REPAIR of two faults at once: the second; else NULL */
} RwPlanRow;

RwPlanNode *rw_plan_node_new (const RwPlanRow *row);

G_END_DECLS
