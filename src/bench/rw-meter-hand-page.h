/* rw-meter-hand-page.h: says by hand where a meter is and how it speaks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "chosen": Next was pressed and everything made sense; the getter gives it.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-meter-book.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_HAND_PAGE (rw_meter_hand_page_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterHandPage, rw_meter_hand_page, RW, METER_HAND_PAGE, GtkWidget)

/* @meter: (nullable) one whose port or format is to be changed; copied. Else a new one. */
void rw_meter_hand_page_start (RwMeterHandPage *self, const RwKnownMeter *meter);

/* Closes a port that is captured from. */
void rw_meter_hand_page_stop (RwMeterHandPage *self);

/* The meter with what was chosen. (transfer full) (nullable) before "chosen" */
RwKnownMeter *rw_meter_hand_page_dup_chosen (RwMeterHandPage *self);

G_END_DECLS
