/* rw-safety-window.h: the cautions, in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_SAFETY_WINDOW (rw_safety_window_get_type ())
G_DECLARE_FINAL_TYPE (RwSafetyWindow, rw_safety_window, RW, SAFETY_WINDOW, GtkWindow)

/* @settings: where it is noted that somebody has read them. Both (nullable). */
GtkWidget *rw_safety_window_new (GtkWindow *parent, GSettings *settings);

G_END_DECLS
