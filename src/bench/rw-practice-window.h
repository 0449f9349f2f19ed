/* rw-practice-window.h: the practice bench, in a window beside the main one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its keys are its own where hands are concerned; those that say what is measured (B, T, X, W, G, Alt with a digit,
 * Page Up, Page Down), set a mark (M), keep a settled value (Ctrl+Enter) or undo go to the main window, so that nobody
 * has to change windows to work. F6 changes over.
 *
 * Signals: "new-drill", "end-drill", as of the view.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_PRACTICE_WINDOW (rw_practice_window_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeWindow, rw_practice_window, RW, PRACTICE_WINDOW, GtkWindow)

/* @main: the window of the job; this one closes with it. @job: a practice job. */
GtkWidget *rw_practice_window_new (GtkWindow *main, RwJob *job);

void rw_practice_window_set_drill (RwPracticeWindow *self, gboolean drill);

G_END_DECLS
