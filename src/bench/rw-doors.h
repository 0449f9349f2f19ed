/* rw-doors.h: what a window shows with nothing opened yet: three plain doors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_DOORS (rw_doors_get_type ())
G_DECLARE_FINAL_TYPE (RwDoors, rw_doors, RW, DOORS, GtkWidget)

G_END_DECLS
