/* rw-screenshot.h: a picture of a window, drawn by the program itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Waits until the window has been drawn and the advice is there, saves it as PNG at @path, closes it. What goes wrong
 * is told on standard error. */
void rw_screenshot_then_close (GtkWindow *window, const char *path);

G_END_DECLS
