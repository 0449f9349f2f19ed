/* rw-wrap-box.h: widgets in a row, which goes on in a further line where they have too little room.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Children are given in the .ui file. Property "spacing": pixels between them and between lines. A line is broken where
 * not even their least widths fit; what is left of it goes to those that expand.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_WRAP_BOX (rw_wrap_box_get_type ())
G_DECLARE_FINAL_TYPE (RwWrapBox, rw_wrap_box, RW, WRAP_BOX, GtkWidget)

G_END_DECLS
