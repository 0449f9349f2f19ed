/* rw-plan-look.h: the value of a branch, looked at a few steps ahead. Used by the search.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-plan-live.h"

G_BEGIN_DECLS

/* A check among others of its node. */
typedef struct
{
  guint  check;
  double score; /* the larger the better */
  double value; /* minutes × weight when it is taken first, one step */
} RwPlanCandidate;

/* How many checks of a node are looked at; the rest are left out. */
typedef struct
{
  guint screened;      /* of those that tell most a minute, weighed by one step */
  guint screened_last; /* the same at a node with one step left */
  guint expanded;      /* of the weighed, followed to the next node */
} RwPlanWidth;

typedef struct _RwPlanLook RwPlanLook;

/* For looking @depth steps ahead from @state. Borrows the problem. */
RwPlanLook *rw_plan_look_new (const RwProblem *problem, const RwPlanState *state, guint depth);
void        rw_plan_look_free (RwPlanLook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPlanLook, rw_plan_look_free)

/* The causes alive at the root. */
const RwPlanLive *rw_plan_look_get_root (const RwPlanLook *self);

/* How much may yet be computed, in pairs of causes compared or weights updated; once more is
 * asked for, all answers are void. */
void     rw_plan_look_set_work (RwPlanLook *self, guint64 work);
guint64  rw_plan_look_get_work (const RwPlanLook *self);
gboolean rw_plan_look_is_spent (const RwPlanLook *self);

/* Below the root. To be set before branches are valued, and again for each depth: what was
 * remembered of another width is forgotten. */
void rw_plan_look_set_width (RwPlanLook *self, RwPlanWidth width);

/* Since the width was set: was any branch cut off by the depth, or a check left out? If not,
 * looking deeper or wider finds nothing new. */
gboolean rw_plan_look_is_cut_off (const RwPlanLook *self);

double rw_plan_look_minutes (const RwPlanLook *self, guint check, guint setup);

/* The unused checks that tell something at the root, scored by how much a minute. Returns
 * their number. @out has room for all checks. */
guint rw_plan_look_screen (RwPlanLook *self, RwPlanCandidate *out);

/* Values root candidates by one step, t W + Σ U, and scores them by minutes saved a minute. */
void rw_plan_look_weigh (RwPlanLook *self, RwPlanCandidate *candidates, guint n);

/* Brings the best @want by score to the front, in order; of equal ones the earlier check.
 * Returns how many there are. */
guint rw_plan_candidates_front (RwPlanCandidate *candidates, guint n, guint want);

/* Value of a root check, or of repairing the root's @which-th living cause, with @depth − 1
 * steps after it. */
double rw_plan_look_check (RwPlanLook *self, guint check, guint depth);
double rw_plan_look_repair (RwPlanLook *self, guint which, guint depth);

G_END_DECLS
