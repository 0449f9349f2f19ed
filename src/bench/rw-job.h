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
 *  "link" (char *)        how a meter link is; NULL: there is none
 *  "noticed" (char *)     something was written down that nobody told: a turn of the trim
 *  "hands"                hands-free was switched, or its question or message changed
 *  "tick"                 time went by (about twice a second, or as a replay moves)
 */
#pragma once

#include "rw-advice.h"
#include "rw-bench-state.h"
#include "rw-journal.h"
#include "rw-link.h"
#include "rw-live.h"
#include "rw-practice-cabinet.h"
#include "rw-practice-meter.h"
#include "rw-rail-guess.h"
#include "rw-record.h"
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

/* The same two with a session that holds events already, which are written first: a branch of another one. @meter:
 * (transfer full) of the practice cabinet. */
RwJob *rw_job_new_bench_branch (RwSession *session, const char *path, GError **error);
RwJob *rw_job_new_practice_branch (RwSession *session, RwPracticeCabinet *cabinet, RwPracticeMeter *meter,
                                   const char *path, GError **error);

/* A saved file, replayed; never written to. *report as above. */
RwJob *rw_job_new_replay (const char *path, char **report, GError **error);

RwJobMode          rw_job_get_mode (RwJob *self);
RwSession         *rw_job_get_session (RwJob *self);  /* borrowed */
RwProfile         *rw_job_get_profile (RwJob *self);  /* borrowed */
RwBenchState      *rw_job_get_state (RwJob *self);    /* borrowed; until the next event */
RwAdvice          *rw_job_get_advice (RwJob *self);   /* (nullable) borrowed; until "advice" */
RwView            *rw_job_get_view (RwJob *self);     /* borrowed */
const RwLive      *rw_job_get_live (RwJob *self);     /* of the meter that moves about, else on the chosen rail */
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

/* Sets a check aside that cannot be done here: a note with the reason (nullable), then the finding that says so, so
 * that one undo brings the check back. It is not suggested again in this job, nor when its file is opened again. */
void rw_job_skip_check (RwJob *self, const char *check, const char *reason);

/* A repair that helped in part: the repair, and the symptoms that went with it. @gone: (element-type utf8) ids; none:
 * it changed nothing. */
void rw_job_repair_partly (RwJob *self, const char *cause, GPtrArray *gone);

/* The causes that the restorer's other jobs ended in, and whether they count in the chances (the property
 * "uses-record"). They never do at the practice cabinet. (nullable) borrowed */
const RwRecord *rw_job_get_record (RwJob *self);
void            rw_job_set_uses_record (RwJob *self, gboolean uses);
gboolean        rw_job_get_uses_record (RwJob *self);

/* Why the record could not be read or written. (nullable) */
const char *rw_job_get_record_problem (RwJob *self);

/* Words of the knowledge for an id; the id itself when unknown. Borrowed. */
const char *rw_job_symptom_title (RwJob *self, const char *id);
const char *rw_job_cause_title (RwJob *self, const char *id);

/* What happened, with the knowledge's words for symptoms, checks and causes. (transfer full) */
char *rw_job_describe (RwJob *self, const RwEvent *event);

/* --- meters on a cable (rw-job-meter.c). Several at once; each stays on a rail of its own or moves about. --- */

typedef struct
{
  const char  *id;    /* interned */
  const char  *name;  /* for people */
  const char  *words; /* how its link is, one sentence; "" at first */
  const char  *trouble; /* (nullable) what an instrument complains of */
  RwLinkState  state;
  const char  *rail;  /* interned; NULL: it moves about and is where the leads are said to be */
  RwPlace      place; /* with rail */
} RwJobMeterInfo;

/* A meter joins, in place of a former one of the same id. Facts that the session does not have yet are written
 * to it. @link: (transfer full). @rail: (nullable) where it stays, at @place. */
void rw_job_plug (RwJob *self, const RwMeterFacts *facts, RwLink *link, const char *rail, RwPlace place);
void rw_job_unplug (RwJob *self, const char *meter);
void rw_job_stay_on (RwJob *self, const char *meter, const char *rail, RwPlace place);

guint    rw_job_get_n_meters (RwJob *self);
gboolean rw_job_get_meter (RwJob *self, guint i, RwJobMeterInfo *out); /* borrowed until the next signal */

/* How the first meter's link is. (nullable) */
const char *rw_job_get_link_words (RwJob *self);

/* What the meter on this rail shows. (nullable) */
const RwLive *rw_job_find_live (RwJob *self, const char *rail);

/* --- hands-free (rw-job-hands.c): settled values are kept by themselves, on the rail that they are found to be. --- */

typedef struct
{
  RwReading   reading;  /* its spot is the likeliest guess's */
  guint       n;        /* guesses to choose from */
  RwRailGuess guess[3];
  char       *text;     /* the question, translated */
} RwJobQuestion;

void     rw_job_set_hands_free (RwJob *self, gboolean on);
gboolean rw_job_get_hands_free (RwJob *self);

/* A value settled, and where the leads were is not sure. It waits until it is answered, dropped, or another value
 * settles. (nullable) borrowed */
const RwJobQuestion *rw_job_get_question (RwJob *self);
void                 rw_job_answer (RwJob *self, guint i); /* keeps it at guess @i */
void                 rw_job_drop_question (RwJob *self);

/* What hands-free has to say: the question, or why nothing was kept. (nullable) */
const char *rw_job_get_hands_words (RwJob *self);

/* Writes on elsewhere, the whole session with it. */
gboolean rw_job_move_file (RwJob *self, const char *path, GError **error);

/* Waits for the disk. */
gboolean rw_job_flush (RwJob *self, GError **error);

G_END_DECLS
