/* rw-job.h: one job as a window shows it: its session, where events come from, and what follows from them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No widget. A job is of one of three modes; all three run the same path:
 *
 *   BENCH     a person types, a meter link sends      → events → session → state, advice
 *   PRACTICE  the same, on a simulated cabinet         → events → session → state, advice
 *   REPLAY    a saved file feeds a session by a clock  → events → session → state, advice
 *
 * Where the leads are (rail and place) stands in the view; what is measured there (the kind) here.
 *
 * Signals:
 *  "changed"              the state was made anew
 *  "advice"               the advice that follows from it is there (worked out in a thread)
 *  "live"                 the live value changed
 *  "spot"                 rail, place or kind to be measured next changed
 *  "kept" (guint n)       the file holds everything up to event n
 *  "trouble" (char *)     the file cannot be written; NULL: it can again
 *  "link" (char *)        how the meter link is; NULL: there is none
 *  "noticed" (char *)     something was written down that nobody told: a turn of the trim
 *  "tick"                 time went by (about twice a second, or as a replay moves)
 */
#pragma once

#include "rw-advice.h"
#include "rw-bench-state.h"
#include "rw-journal.h"
#include "rw-link.h"
#include "rw-live.h"
#include "rw-practice-cabinet.h"
#include "rw-replay.h"
#include "rw-view.h"

G_BEGIN_DECLS

typedef enum
{
  RW_JOB_BENCH,
  RW_JOB_PRACTICE,
  RW_JOB_REPLAY
} RwJobMode;

#define RW_TYPE_JOB (rw_job_get_type ())
G_DECLARE_FINAL_TYPE (RwJob, rw_job, RW, JOB, GObject)

/* A new job, journalled at @path from now on. @header: (transfer full). */
RwJob *rw_job_new_bench (RwSessionHeader *header, const char *path, GError **error);

/* Goes on with a saved job. *report receives a sentence on damage found, or NULL. (transfer full) */
RwJob *rw_job_new_continued (const char *path, char **report, GError **error);

/* The practice cabinet with its meter. Journalled at @path. */
RwJob *rw_job_new_practice (RwPracticeCabinet *cabinet, const char *path, GError **error);

/* A saved file, replayed; never written to. *report as above. */
RwJob *rw_job_new_replay (const char *path, char **report, GError **error);

RwJobMode          rw_job_get_mode (RwJob *self);
RwSession         *rw_job_get_session (RwJob *self);  /* borrowed */
RwProfile         *rw_job_get_profile (RwJob *self);  /* borrowed */
RwBenchState      *rw_job_get_state (RwJob *self);    /* borrowed; until the next event */
RwAdvice          *rw_job_get_advice (RwJob *self);   /* (nullable) borrowed; until "advice" */
RwView            *rw_job_get_view (RwJob *self);     /* borrowed */
const RwLive      *rw_job_get_live (RwJob *self);
RwReplay          *rw_job_get_replay (RwJob *self);   /* (nullable) borrowed */
RwPracticeCabinet *rw_job_get_cabinet (RwJob *self);  /* (nullable) borrowed */
const char        *rw_job_get_path (RwJob *self);     /* of its file; (nullable) */
const char        *rw_job_get_trouble (RwJob *self);  /* (nullable) */
gboolean           rw_job_can_write (RwJob *self);    /* FALSE for a replay */

/* Why there is no advice, when there is none. (nullable) */
const char *rw_job_get_advice_problem (RwJob *self);

/* Seconds since the session started, by the job's own clock. */
double rw_job_get_now (RwJob *self);

/* Adds what happened, at the present moment. Takes the event's text. A replay takes nothing: FALSE. */
gboolean rw_job_add (RwJob *self, RwEvent *event);

/* Where the leads are to go next. @rail: an id of the profile or RW_RAIL_GROUND. */
void        rw_job_set_spot (RwJob *self, const char *rail, RwPlace place, RwKind kind);
const char *rw_job_get_rail (RwJob *self); /* never NULL */
RwPlace     rw_job_get_place (RwJob *self);
RwKind      rw_job_get_kind (RwJob *self);

/* To the next (by +1) or previous (by −1) rail of the profile, same place. Wraps round. */
void rw_job_move_rail (RwJob *self, int by);

/* After a reading: to the rail that is due to be read again after a trim, at its place; to the next rail when
 * none is. With a meter on a cable always to the next: its leads are elsewhere until somebody moves them. */
void rw_job_move_on (RwJob *self);

/* Keeps a value at the present spot with the bench meter. @step: last digit, base units; over: overload. */
void rw_job_keep (RwJob *self, double value, double step, gboolean over);

/* Keeps the settled live value. FALSE when nothing has settled. */
gboolean rw_job_keep_settled (RwJob *self);

void     rw_job_set_setup (RwJob *self, RwSetup setup); /* RW_SAID_NOT: leave as it is */
void     rw_job_turn_trim (RwJob *self, double turn);   /* practice: share of its travel, signed; bench: a note that it was turned */
void     rw_job_repair (RwJob *self, const char *cause); /* practice: mends it on the simulated cabinet; says nothing yet */
void     rw_job_undo (RwJob *self);
void     rw_job_redo (RwJob *self);
void     rw_job_retract (RwJob *self, guint n);

/* The trim set to look at: at the place the leads are set to, else at the board, chip or terminals, with the
 * board as it is now; else any there is. (nullable) borrowed until the next event. */
const RwTrimSet *rw_job_get_trim_set (RwJob *self);

/* What the rail that the meter is on says of all others now, from the trim's lines at that place. NULL, *out
 * untouched: nothing. Else the set used, borrowed, and *out to be cleared. */
const RwTrimSet *rw_job_get_trim_live (RwJob *self, RwTrimLive *out);

/* A check that cannot be done here and is not to be suggested again. */
void rw_job_skip_check (RwJob *self, const char *check);

/* Words of the knowledge for an id; the id itself when unknown. Borrowed. */
const char *rw_job_symptom_title (RwJob *self, const char *id);
const char *rw_job_cause_title (RwJob *self, const char *id);

/* What happened, with the knowledge's words for symptoms, checks and causes. (transfer full) */
char *rw_job_describe (RwJob *self, const RwEvent *event);

/* A meter on a cable. Takes over a former one. @link: (transfer full) (nullable): none any more. */
void        rw_job_set_link (RwJob *self, RwLink *link);
const char *rw_job_get_link_words (RwJob *self); /* (nullable) how it is */

/* Writes on elsewhere, the whole session with it. */
gboolean rw_job_move_file (RwJob *self, const char *path, GError **error);

/* Waits for the disk. */
gboolean rw_job_flush (RwJob *self, GError **error);

G_END_DECLS
