/* rw-replay.h: shows a saved session again, by a clock of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The target session is a part of the source whose end moves to and fro; whoever follows it need not know that this is
 * a replay. The file is never written to.
 *
 * Signals: "moved" (position, playing or speed changed), "settings-changed" (speed, or skipping), "chapters-changed"
 */
#pragma once

#include "rw-chapters.h"
#include "rw-idle.h"
#include "rw-journal-reader.h"

G_BEGIN_DECLS

#define RW_REPLAY_MIN_SPEED 0.25
#define RW_REPLAY_MAX_SPEED 60.0

#define RW_REPLAY_N_SPEEDS 7
extern const double rw_replay_speeds[RW_REPLAY_N_SPEEDS]; /* to choose from, rising */

/* What is jumped to. */
typedef enum
{
  RW_REPLAY_CHAPTER,
  RW_REPLAY_WARNING,
  RW_REPLAY_TRIM,
  RW_REPLAY_KEEP
} RwReplayGoal;

#define RW_TYPE_REPLAY (rw_replay_get_type ())
G_DECLARE_FINAL_TYPE (RwReplay, rw_replay, RW, REPLAY, GObject)

/* Refs the source, which must stay as it is; makes an empty target with the same header. */
RwReplay  *rw_replay_new (RwSession *source);
RwSession *rw_replay_get_target (RwReplay *self); /* borrowed */
RwSession *rw_replay_get_source (RwReplay *self); /* borrowed */

double   rw_replay_get_position (RwReplay *self); /* seconds since the session started */
double   rw_replay_get_length (RwReplay *self);   /* seconds of the last event */
gboolean rw_replay_get_playing (RwReplay *self);
double   rw_replay_get_speed (RwReplay *self);

void rw_replay_set_playing (RwReplay *self, gboolean playing); /* at the end it starts over */
void rw_replay_set_speed (RwReplay *self, double speed);       /* clamped to the range above */

/* To a speed of the list, @by further from the one nearest to the present one. */
void  rw_replay_change_speed (RwReplay *self, int by);
guint rw_replay_get_nearest_speed (RwReplay *self); /* index in the list */

/* Whether the clock hurries through the waiting, and where that is (borrowed). */
void          rw_replay_set_skips_waiting (RwReplay *self, gboolean skips);
gboolean      rw_replay_get_skips_waiting (RwReplay *self);
const RwIdle *rw_replay_get_idle (RwReplay *self);

/* The clock: @seconds of real time went by. Does nothing while paused. */
void rw_replay_advance (RwReplay *self, double seconds);

/* To a moment: all events up to and at @t have happened, none later. O(log events), beside what the followers do. */
void rw_replay_seek (RwReplay *self, double t);

/* To where the first @n_events have happened; @t is the clock's second there. */
void rw_replay_go_to (RwReplay *self, guint n_events, double t);

/* To just after the next event that is no sample, or to just before the last one. Pauses. */
void rw_replay_step (RwReplay *self, gboolean forward);

/* The chapters of the source; NULL before they were looked for. */
RwChapters *rw_replay_get_chapters (RwReplay *self); /* (nullable) borrowed; until "chapters-changed" */

/* Works the chapters out: their bounds at once, warnings and verdicts in a thread. @describe: as for rw_chapters_new (),
 * called before this returns. */
void rw_replay_look_for_chapters (RwReplay *self, RwChapterDescribe describe, gpointer data);

/* The chapter that the position lies in, and its place among them. (nullable) borrowed */
const RwChapter *rw_replay_get_chapter (RwReplay *self, guint *index);
void             rw_replay_go_to_chapter (RwReplay *self, guint index);

/* To the next or the previous goal. A chapter that has gone on for two seconds of the clock or more is begun again
 * before the one before it. FALSE: there is none further; nothing moves. */
gboolean rw_replay_jump (RwReplay *self, RwReplayGoal goal, gboolean forward);

G_END_DECLS
