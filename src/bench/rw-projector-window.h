/* rw-projector-window.h: the window for the second screen: what the class sees, and nothing else.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-projection.h"

G_BEGIN_DECLS

/* The choice of screen that is none: a window on the screen there is. */
#define RW_PROJECTOR_NO_SCREEN "window"

#define RW_TYPE_PROJECTOR_WINDOW (rw_projector_window_get_type ())
G_DECLARE_FINAL_TYPE (RwProjectorWindow, rw_projector_window, RW, PROJECTOR_WINDOW, GtkWindow)

/* Keys that it does not know go to @main_window, which outlives it. */
GtkWidget *rw_projector_window_new (GtkWindow *main_window, RwProjection *projection);

/* Puts it on the screen whose connector has this name, filling it, and shows it. "": a screen that the main window is
 * not on, if there is one. Without such a screen it is a window. While it fills a screen the session does not go idle. */
void rw_projector_window_put (RwProjectorWindow *self, const char *screen);

/* The screens there are: connector names, NULL-terminated, and what to call them ("HDMI-1 · 1280×720"). (transfer full) */
GStrv rw_projector_window_list_screens (GdkDisplay *display, GStrv *titles);

G_END_DECLS
