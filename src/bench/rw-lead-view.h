/* rw-lead-view.h: the picture of where the leads go.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_LEAD_VIEW (rw_lead_view_get_type ())
G_DECLARE_FINAL_TYPE (RwLeadView, rw_lead_view, RW, LEAD_VIEW, GtkWidget)

/* Hides itself when the check does not measure at one spot. @check: of a knowledge that the job keeps; (nullable) */
void rw_lead_view_show (RwLeadView *self, RwJob *job, const RwCheck *check);

G_END_DECLS
