/* rw-plan-view.h: the plan as a tree that unfolds as it is opened.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_PLAN_VIEW (rw_plan_view_get_type ())
G_DECLARE_FINAL_TYPE (RwPlanView, rw_plan_view, RW, PLAN_VIEW, GtkWidget)

void rw_plan_view_set_job (RwPlanView *self, RwJob *job); /* (nullable) */

G_END_DECLS
