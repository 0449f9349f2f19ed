/* rw-replay-bar.h: plays a saved session: play, step, speed, scrub; says that nothing is written.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_REPLAY_BAR (rw_replay_bar_get_type ())
G_DECLARE_FINAL_TYPE (RwReplayBar, rw_replay_bar, RW, REPLAY_BAR, GtkWidget)

void rw_replay_bar_set_job (RwReplayBar *self, RwJob *job); /* (nullable) a replay */

/* One speed up or down the list. */
void rw_replay_bar_change_speed (RwReplayBar *self, int by);

G_END_DECLS
