/* rw-watch-model.h: what the watch window says of a warm-up and of ripple, and when a reading falls due.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Functions of a session and a time; the reminder alone remembers what it has said.
 */
#pragma once

#include "rw-session.h"
#include "rw-warm-up.h"

G_BEGIN_DECLS

/* --- warm-up -------------------------------------------------------------------------------------- */

typedef struct
{
  const RwRail *rail; /* borrowed from the profile */
  RwPlace       place;
  RwWarmUp      read;
} RwWatchSpot;

/* Every spot with a reading in its present run, in the order of the profile, terminals before board; and the
 * reference at terminals and board whenever there is a run at all. (transfer full) (element-type RwWatchSpot) */
GArray *rw_watch_list_spots (RwSession *session, double now);

/* Translated: "+5 V, board"; verdict as shape and word; "5 min: due". (transfer full) */
char *rw_watch_spot_name (const RwWatchSpot *self);
char *rw_watch_verdict_words (RwWarmUpVerdict verdict);
char *rw_watch_point_words (const RwWarmUpPoint *point);

/* Supply or wiring, for each rail of @spots that can be told. NULL: nothing to say. (transfer full) (nullable) */
char *rw_watch_where_words (const GArray *spots);

/* --- the reminder --------------------------------------------------------------------------------- */

/* Says that readings of a warm-up are due, for each minute of a run once. */
typedef struct
{
  double started; /* of the run it speaks of; NaN: none yet */
  guint  said;    /* bit i: point i was said */
} RwWatchReminder;

void rw_watch_reminder_init (RwWatchReminder *self);

/* The point that is due at @now at a spot whose warm-up somebody follows (it has a reading in this run); −1: none. */
int rw_watch_find_due (const GArray *spots);

/* Translated: "Warm-up: the reading at 15 min is due: +5 V, board". (transfer full) */
char *rw_watch_due_words (const GArray *spots, int point);

/* TRUE once for each due point of a run; *point receives it, or −1. */
gboolean rw_watch_reminder_take (RwWatchReminder *self, const GArray *spots, int *point);

/* --- ripple --------------------------------------------------------------------------------------- */

/* What to do and what this meter can and cannot see. @live: what it shows now (nullable); @rate: its readings a
 * second, or 0; @wanted: title of the check for ripple that is up (nullable). Translated. (transfer full) */
char *rw_watch_ripple_words (RwSession *session, const RwReading *live, double rate, const char *wanted);

/* Readings a second of this meter at this spot over the last samples; 0: not to be told. */
double rw_watch_rate (RwSession *session, const RwReading *like);

G_END_DECLS
