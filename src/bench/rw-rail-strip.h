/* rw-rail-strip.h: all rails side by side, in the order of the profile, and the wiring beside them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_RAIL_STRIP (rw_rail_strip_get_type ())
G_DECLARE_FINAL_TYPE (RwRailStrip, rw_rail_strip, RW, RAIL_STRIP, GtkWidget)

void rw_rail_strip_set_job (RwRailStrip *self, RwJob *job); /* (nullable) */

/* Leaves the card of a rail out; NULL: none. */
void rw_rail_strip_hide (RwRailStrip *self, const char *rail);

G_END_DECLS
