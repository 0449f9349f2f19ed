/* rw-cause-list.h: the likeliest causes, single ones and pairs, and whether they fit at all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "repair" (char *cause): a cause's repair is to be shown.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_CAUSE_LIST (rw_cause_list_get_type ())
G_DECLARE_FINAL_TYPE (RwCauseList, rw_cause_list, RW, CAUSE_LIST, GtkWidget)

void rw_cause_list_set_job (RwCauseList *self, RwJob *job); /* (nullable) */

G_END_DECLS
