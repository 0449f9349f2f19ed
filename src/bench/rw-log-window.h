/* rw-log-window.h: everything that was done on a job, newest first; each can be taken back or put back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_LOG_WINDOW (rw_log_window_get_type ())
G_DECLARE_FINAL_TYPE (RwLogWindow, rw_log_window, RW, LOG_WINDOW, GtkWindow)

GtkWidget *rw_log_window_new (GtkWindow *parent, RwJob *job);

G_END_DECLS
