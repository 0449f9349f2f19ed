/* rw-watch-wiggle.h: a wiggle test: one spot watched for dips while plugs are moved, and resets marked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the samples and marks that a session is given from the start of the test to its end; makes nothing up and
 * writes nothing. Dips and resets are placed on the scale of time under watch (rw_dips_get_watched), so that a lifted
 * lead or a gap in the stream, in which no dip could have been seen, lends no weight to either side.
 *
 * Signal: "changed": a sample, a reset, start or end.
 */
#pragma once

#include "rw-dips.h"
#include "rw-session.h"
#include "rw-together.h"

G_BEGIN_DECLS

/* Seconds after a dip within which a reset counts as its own; laid down before anything is looked at: the time it
 * takes to see a reset and press a key, with a meter of a few readings a second. */
#define RW_WATCH_REACH 1.0

/* What a mark says when a reset was seen, as it stands in a file. */
#define RW_WATCH_RESET "reset seen"

#define RW_TYPE_WATCH_WIGGLE (rw_watch_wiggle_get_type ())
G_DECLARE_FINAL_TYPE (RwWatchWiggle, rw_watch_wiggle, RW, WATCH_WIGGLE, GObject)

RwWatchWiggle *rw_watch_wiggle_new (RwSession *session);

/* Forgets what was before. @rail: interned id; @t: seconds of the session. DC only. */
void rw_watch_wiggle_start (RwWatchWiggle *self, double t, const char *rail, RwPlace place);
void rw_watch_wiggle_stop (RwWatchWiggle *self);

gboolean      rw_watch_wiggle_is_running (RwWatchWiggle *self);
const char   *rw_watch_wiggle_get_rail (RwWatchWiggle *self);  /* NULL: none was ever started */
RwPlace       rw_watch_wiggle_get_place (RwWatchWiggle *self);
const RwDips *rw_watch_wiggle_get_dips (RwWatchWiggle *self);  /* (nullable) */
guint         rw_watch_wiggle_get_elsewhere (RwWatchWiggle *self); /* samples of other spots, kinds or meters, left out */
guint         rw_watch_wiggle_get_n_resets (RwWatchWiggle *self);  /* live marks of a reset under watch */
guint         rw_watch_wiggle_get_n_away (RwWatchWiggle *self);    /* resets marked while nothing was under watch */
RwTogether    rw_watch_wiggle_get_together (RwWatchWiggle *self);

/* Translated, one or two sentences each. (transfer full) */
char *rw_watch_wiggle_describe (RwWatchWiggle *self);  /* how the test stands */
char *rw_watch_wiggle_describe_counts (RwWatchWiggle *self);
char *rw_watch_wiggle_describe_dip (RwWatchWiggle *self, const RwDip *dip);
char *rw_watch_wiggle_describe_together (RwWatchWiggle *self);
char *rw_watch_wiggle_dup_record (RwWatchWiggle *self); /* (nullable) what is to stand in the job's record afterwards */

G_END_DECLS
