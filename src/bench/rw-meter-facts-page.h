/* rw-meter-facts-page.h: asks a meter's name and accuracy.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: "saved" (gboolean listen): a Save button was pressed and everything made sense; the getter gives the meter.
 * "change": its port and format are to be changed.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-meter-book.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_FACTS_PAGE (rw_meter_facts_page_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterFactsPage, rw_meter_facts_page, RW, METER_FACTS_PAGE, GtkWidget)

/* @meter: copied. Figures that are both 0 are not known and are asked for. */
void rw_meter_facts_page_start (RwMeterFactsPage *self, const RwKnownMeter *meter);

/* The meter with what was typed. (transfer full) */
RwKnownMeter *rw_meter_facts_page_dup_meter (RwMeterFactsPage *self);

G_END_DECLS
