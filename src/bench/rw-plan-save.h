/* rw-plan-save.h: "Save the plan…": a PDF page or pages, or text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

/* @message: translated, what went wrong. Called while the window is there. */
typedef void (*RwPlanTroubleFunc) (const char *message, gpointer user_data);

/* Writes the plan from where the job stands, worked out in a thread; what @path ends in says in which form: ".txt" is
 * text, all else PDF. @owner: a GObject; nothing is called once it is gone. */
void rw_plan_save (RwJob *job, const char *path, RwPlanTroubleFunc trouble, gpointer owner);

G_END_DECLS
