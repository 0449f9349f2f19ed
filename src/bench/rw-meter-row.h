/* rw-meter-row.h: one meter of the book, and how its link is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its buttons call the actions "meters.edit" and "meters.remove", with the meter's id, of what it is in, and
 * "meters.written" after it wrote to the book.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-meter-book.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_ROW (rw_meter_row_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterRow, rw_meter_row, RW, METER_ROW, GtkWidget)

/* @meter: copied. @settings: (nullable) remembers what is listened to. */
GtkWidget *rw_meter_row_new (RwJob *job, GSettings *settings, const RwKnownMeter *meter);

/* Shows how the link is, and what the meter shows, now. */
void rw_meter_row_refresh (RwMeterRow *self);

G_END_DECLS
