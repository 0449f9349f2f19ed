/* rw-branch-form.h: asks how to go on from a moment of a replay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "chosen" (boolean practice, string fault): fault NULL: a healthy cabinet.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_BRANCH_FORM (rw_branch_form_get_type ())
G_DECLARE_FINAL_TYPE (RwBranchForm, rw_branch_form, RW, BRANCH_FORM, GtkWindow)

GtkWidget *rw_branch_form_new (GtkWindow *parent, RwJob *replay);

G_END_DECLS
