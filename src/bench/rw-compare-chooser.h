/* rw-compare-chooser.h: with which other session? Earlier ones of the same cabinet first, any file else.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-compat.h"
#include "rw-session.h"

G_BEGIN_DECLS

#define RW_TYPE_COMPARE_CHOOSER (rw_compare_chooser_get_type ())
G_DECLARE_FINAL_TYPE (RwCompareChooser, rw_compare_chooser, RW, COMPARE_CHOOSER, GtkWindow)

/* Asks for a session to compare that of @header with; @func gets its path, or is not called. Where the user's folder
 * has none of this cabinet, the file dialog comes at once. @user_data must outlive @parent. */
void rw_compare_chooser_ask (GtkWindow *parent, const RwSessionHeader *header, RwPathFunc func, gpointer user_data);

G_END_DECLS
