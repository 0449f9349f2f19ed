/* rw-compare-window.h: two visits to one cabinet side by side: cards, charts, and what changed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keys: V the other chart, Ctrl+S text, Ctrl+P picture, Ctrl+O another session, Escape closes; on the charts those of
 * rw-compare-chart.h; Up and Down in the list.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-session.h"

G_BEGIN_DECLS

#define RW_TYPE_COMPARE_WINDOW (rw_compare_window_get_type ())
G_DECLARE_FINAL_TYPE (RwCompareWindow, rw_compare_window, RW, COMPARE_WINDOW, GtkWindow)

/* Refs both; neither may change any more. @report: (nullable) what was damaged in the file that was opened. */
GtkWidget *rw_compare_window_new (GtkWindow *parent, RwSession *one, RwSession *other, const char *report);

/* @live: the job that @one is a copy of; refs it. Whatever is added to it, save samples, is compared within a second. Once
 * a window. */
void rw_compare_window_follow (RwCompareWindow *self, RwSession *live);

/* A session of its own with the same events. (transfer full) */
RwSession *rw_compare_window_copy_session (RwSession *session);

G_END_DECLS
