/* rw-meter-find-page.h: finds the meter: tries ports, line settings and formats, and shows what came of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "chosen": one of what was found is to be used; the getter gives it.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-meter-book.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_FIND_PAGE (rw_meter_find_page_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterFindPage, rw_meter_find_page, RW, METER_FIND_PAGE, GtkWidget)

/* Once. Ports that the job reads are left alone. */
void rw_meter_find_page_set_job (RwMeterFindPage *self, RwJob *job);

/* Looks which ports there are, with nothing found yet. */
void rw_meter_find_page_start (RwMeterFindPage *self);

/* Ends a search that runs. */
void rw_meter_find_page_stop (RwMeterFindPage *self);

/* What was chosen: the meter of the book that is reached there and speaks so, else a new one. (transfer full) */
RwKnownMeter *rw_meter_find_page_dup_chosen (RwMeterFindPage *self);

G_END_DECLS
