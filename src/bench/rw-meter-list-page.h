/* rw-meter-list-page.h: the meters of this bench, and which of them the job listens to.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its buttons call the actions "meters.find" and "meters.by-hand" of what it is in.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_LIST_PAGE (rw_meter_list_page_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterListPage, rw_meter_list_page, RW, METER_LIST_PAGE, GtkWidget)

/* Once. @settings: (nullable). */
void rw_meter_list_page_set_job (RwMeterListPage *self, RwJob *job, GSettings *settings);

/* Lists the book anew. */
void rw_meter_list_page_refill (RwMeterListPage *self);

G_END_DECLS
