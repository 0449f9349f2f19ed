/* rw-verdict-style.h: the colour that goes with a verdict's word and shape.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-verdict.h"

G_BEGIN_DECLS

/* One CSS class a verdict ("inside", "close", …), taken off when @stale: what is stale has no colour. */
void rw_verdict_style_set (GtkWidget *widget, RwVerdict verdict, gboolean stale);

G_END_DECLS
