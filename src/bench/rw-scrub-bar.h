/* rw-scrub-bar.h: a whole session in small, to move about in with the pointer or the keys.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Focused: Left and Right move by a hundredth of what there is to play, with Shift by a tenth, as do the Page keys;
 * Home and End go to either end.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_SCRUB_BAR (rw_scrub_bar_get_type ())
G_DECLARE_FINAL_TYPE (RwScrubBar, rw_scrub_bar, RW, SCRUB_BAR, GtkWidget)

/* Neither drawn nor told, until the next job. (nullable): none */
void rw_scrub_bar_hide_rail (RwScrubBar *self, const char *rail);

/* What is still to come is covered and not told: of a replay that asks what its viewer would do. Until the next job. */
void rw_scrub_bar_set_veiled (RwScrubBar *self, gboolean veiled);

void rw_scrub_bar_set_job (RwScrubBar *self, RwJob *job); /* (nullable) a replay */

G_END_DECLS
