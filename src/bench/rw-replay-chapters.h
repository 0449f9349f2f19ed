/* rw-replay-chapters.h: a popover that lists the chapters of a replay, to choose from by keyboard.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_REPLAY_CHAPTERS (rw_replay_chapters_get_type ())
G_DECLARE_FINAL_TYPE (RwReplayChapters, rw_replay_chapters, RW, REPLAY_CHAPTERS, GtkPopover)

GtkWidget *rw_replay_chapters_new (void);
/* Named nowhere, until the next job. (nullable): none */
void rw_replay_chapters_hide_rail (RwReplayChapters *self, const char *rail);

/* Whether chapters that lie ahead keep their titles to themselves. */
void rw_replay_chapters_set_veiled (RwReplayChapters *self, gboolean veiled);

void       rw_replay_chapters_set_job (RwReplayChapters *self, RwJob *job); /* (nullable) a replay */

G_END_DECLS
