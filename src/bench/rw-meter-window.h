/* rw-meter-window.h: plugs a meter in: port, line settings, format.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_WINDOW (rw_meter_window_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterWindow, rw_meter_window, RW, METER_WINDOW, GtkWindow)

/* @settings: (nullable) remembers the port. */
GtkWidget *rw_meter_window_new (GtkWindow *parent, RwJob *job, GSettings *settings);

G_END_DECLS
