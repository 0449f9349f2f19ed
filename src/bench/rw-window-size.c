/* rw-window-size.c: how large a window is at first, by the size of the desktop's text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-window-size.h"

static const double dpi_of_scale_1 = 96.0 * 1024; /* as the toolkit's setting counts it */

void
rw_window_size_set (GtkWindow *window,
                    int        width,
                    int        height)
{
  int dpi = 0;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (window)), "gtk-xft-dpi", &dpi, NULL);

  const double scale = dpi > 0 ? dpi / dpi_of_scale_1 : 1;

  gtk_window_set_default_size (window, width > 0 ? (int) (scale * width) : width,
                               height > 0 ? (int) (scale * height) : height);
}
