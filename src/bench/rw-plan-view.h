/* rw-plan-view.h: the path taken so far, and the plan from here as a tree that unfolds as it is opened.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_PLAN_VIEW (rw_plan_view_get_type ())
G_DECLARE_FINAL_TYPE (RwPlanView, rw_plan_view, RW, PLAN_VIEW, GtkWidget)

void rw_plan_view_set_job (RwPlanView *self, RwJob *job); /* (nullable) */

/* Whether it has a column of its own. */
void rw_plan_view_set_roomy (RwPlanView *self, gboolean roomy);

G_END_DECLS
