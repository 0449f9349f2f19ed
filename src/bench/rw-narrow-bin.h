/* rw-narrow-bin.h: gives its child the least width that it can do with, however long its lines would like to be.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a column of wrapping words beside something that wants the room. The one child is given in the .ui file.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_NARROW_BIN (rw_narrow_bin_get_type ())
G_DECLARE_FINAL_TYPE (RwNarrowBin, rw_narrow_bin, RW, NARROW_BIN, GtkWidget)

G_END_DECLS
