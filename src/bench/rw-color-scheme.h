/* rw-color-scheme.h: light or dark, as the person or the desktop says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Follows the key "color-scheme" of @settings (nullable): "light", "dark", or "system", which asks the desktop's
 * settings portal and follows it. Lives as long as the program. */
void rw_color_scheme_follow (GSettings *settings);

/* How the toolkit draws now, whoever decided it: the program, the theme or GTK_THEME. */
gboolean rw_color_scheme_is_dark (void);
gboolean rw_color_scheme_is_contrast (void);

G_END_DECLS
