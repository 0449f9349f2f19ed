/* rw-drill-window.h: the end of a drill: first what the person thinks it is, then what it was.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_DRILL_WINDOW (rw_drill_window_get_type ())
G_DECLARE_FINAL_TYPE (RwDrillWindow, rw_drill_window, RW, DRILL_WINDOW, GtkWindow)

/* @job: a drill. */
GtkWidget *rw_drill_window_new (GtkWindow *parent, RwJob *job);

G_END_DECLS
