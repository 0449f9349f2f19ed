/* rw-replay.h: feeds the events of a saved session into another one, by a clock of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The target session grows and is rewound; whoever follows it need not know that this is a replay. The
 * file is never written to.
 *
 * Signals: "moved" (position, playing or speed changed), "speed-changed"
 */
#pragma once

#include "rw-journal-reader.h"

G_BEGIN_DECLS

#define RW_REPLAY_MIN_SPEED 0.5
#define RW_REPLAY_MAX_SPEED 60.0

#define RW_TYPE_REPLAY (rw_replay_get_type ())
G_DECLARE_FINAL_TYPE (RwReplay, rw_replay, RW, REPLAY, GObject)

/* Refs the source; makes an empty target with the same header. */
RwReplay  *rw_replay_new (RwSession *source);
RwSession *rw_replay_get_target (RwReplay *self); /* borrowed */
RwSession *rw_replay_get_source (RwReplay *self); /* borrowed */

double   rw_replay_get_position (RwReplay *self); /* seconds since the session started */
double   rw_replay_get_length (RwReplay *self);   /* seconds of the last event */
gboolean rw_replay_get_playing (RwReplay *self);
double   rw_replay_get_speed (RwReplay *self);

void rw_replay_set_playing (RwReplay *self, gboolean playing); /* at the end it starts over */
void rw_replay_set_speed (RwReplay *self, double speed);       /* clamped to the range above */

/* The clock: @seconds of real time went by. Does nothing while paused. */
void rw_replay_advance (RwReplay *self, double seconds);

/* To a moment: all events up to and at @t have happened, none later. */
void rw_replay_seek (RwReplay *self, double t);

/* To just after the next event that is no sample, or to just before the last one. Pauses. */
void rw_replay_step (RwReplay *self, gboolean forward);

G_END_DECLS
