/* rw-window-size.h: how large a window is at first, by the size of the desktop's text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* As gtk_window_set_default_size (), with pixels at text scale 1. No larger than the screen: the toolkit sees to that. */
void rw_window_size_set (GtkWindow *window, int width, int height);

G_END_DECLS
