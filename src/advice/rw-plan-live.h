/* rw-plan-live.h: the causes still alive in one branch of the look-ahead. Used by the search.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-search.h"

G_BEGIN_DECLS

typedef struct
{
  guint   n;
  double *w;     /* weights */
  double *c;     /* repair minutes */
  guint  *cause; /* index in the problem */
  guint64 key;   /* of the outcomes met and repairs done on the way, in any order */
} RwPlanLive;

void rw_plan_live_init (RwPlanLive *self, guint room);
void rw_plan_live_clear (RwPlanLive *self);

/* Every cause that has weight. */
void rw_plan_live_start (RwPlanLive *self, const RwProblem *problem, const RwPlanState *state);

double rw_plan_live_mass (const RwPlanLive *self);

/* What is alive after an outcome of @chance (by cause of the problem). Weights up to @tiny
 * are left out. Returns the charge for them. *known (nullable): Σ c w of all, left out or not. */
double rw_plan_live_narrow (const RwPlanLive *parent, const double *chance, double tiny,
                            RwPlanLive *out, double *known);

/* All but the @which-th. */
void rw_plan_live_without (const RwPlanLive *parent, guint which, RwPlanLive *out);

G_END_DECLS
