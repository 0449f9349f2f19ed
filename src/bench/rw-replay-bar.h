/* rw-replay-bar.h: plays a saved session: play, step, speed, chapters, scrub; says that nothing is written.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_REPLAY_BAR (rw_replay_bar_get_type ())
G_DECLARE_FINAL_TYPE (RwReplayBar, rw_replay_bar, RW, REPLAY_BAR, GtkWidget)

void rw_replay_bar_set_job (RwReplayBar *self, RwJob *job); /* (nullable) a replay */

/* A rail that is kept from whoever looks, until the next job. (nullable): none */
void rw_replay_bar_hide_rail (RwReplayBar *self, const char *rail);

/* Opens the list of chapters. */
void rw_replay_bar_list_chapters (RwReplayBar *self);

/* What is still to come is not told. Until the next job. */
void rw_replay_bar_set_veiled (RwReplayBar *self, gboolean veiled);

G_END_DECLS
