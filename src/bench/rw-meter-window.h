/* rw-meter-window.h: the meters of this bench: find one, add one, say how accurate it is, listen to it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Escape goes back a page, then closes.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-meter-listen.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_WINDOW (rw_meter_window_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterWindow, rw_meter_window, RW, METER_WINDOW, GtkWindow)

/* @settings: (nullable) remembers which meters are listened to. */
GtkWidget *rw_meter_window_new (GtkWindow *parent, RwJob *job, GSettings *settings);

G_END_DECLS
