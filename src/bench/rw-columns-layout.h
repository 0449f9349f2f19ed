/* rw-columns-layout.h: children side by side where there is room, under each other where there is not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_COLUMNS_LAYOUT (rw_columns_layout_get_type ())
G_DECLARE_FINAL_TYPE (RwColumnsLayout, rw_columns_layout, RW, COLUMNS_LAYOUT, GtkLayoutManager)

/* @wide: pixels of width from which they stand in equal columns; @spacing: pixels between them. (transfer full) */
GtkLayoutManager *rw_columns_layout_new (int wide, int spacing);

G_END_DECLS
