/* rw-watch-window.h: a warm-up followed, a wiggle test, and what the meter can see of ripple.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-watch-wiggle.h"

G_BEGIN_DECLS

#define RW_TYPE_WATCH_WINDOW (rw_watch_window_get_type ())
G_DECLARE_FINAL_TYPE (RwWatchWindow, rw_watch_window, RW, WATCH_WINDOW, GtkWindow)

/* @wiggle goes on when the window is closed. @settings: (nullable). */
GtkWidget *rw_watch_window_new (GtkWindow *parent, RwJob *job, RwWatchWiggle *wiggle, GSettings *settings);

G_END_DECLS
