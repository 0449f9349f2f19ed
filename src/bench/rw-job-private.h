/* rw-job-private.h: what the parts of a job share. For rw-job*.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-practice-meter.h"
#include "rw-trim-notice.h"

G_BEGIN_DECLS

struct _RwJob
{
  GObject       parent_instance;
  RwJobMode     mode;
  RwSession    *session;
  RwView       *view;
  RwKind        kind; /* what is measured at the view's rail and place */
  RwBenchState *state;
  gboolean      outdated; /* the state is to be made anew before anybody sees it */
  guint         idle;     /* that tells so, once for many events */
  gboolean      live_news; /* samples came since "live" was emitted */
  RwLive        live;
  RwTrimNotice  trim_notice;
  gboolean      trim_noticed; /* a turn, not yet written down */
  double        trim_from, trim_to;
  RwJournal    *journal; /* NULL for a replay */
  char         *path;

  RwKnowledge *knowledge;       /* NULL when it cannot be read */
  char        *advice_problem;
  RwAdvice    *advice;
  gboolean     advising;        /* a thread works on it */
  gboolean     advice_outdated; /* and must start over when done */
  GHashTable  *skipped;         /* set of check ids */

  gint64 clock_zero; /* monotonic µs that is second 0 of the session; live modes */
  gint64 last_tick;
  guint  timer;
  guint  beat; /* counts timer calls, for what happens less often */

  RwLink            *link; /* a meter on a cable, or the practice meter's bytes */
  char              *link_words;
  RwReplay          *replay;
  RwPracticeCabinet *cabinet;
  RwPracticeMeter   *meter;
};

enum
{
  RW_JOB_SIGNAL_CHANGED,
  RW_JOB_SIGNAL_ADVICE,
  RW_JOB_SIGNAL_LIVE,
  RW_JOB_SIGNAL_SPOT,
  RW_JOB_SIGNAL_KEPT,
  RW_JOB_SIGNAL_TROUBLE,
  RW_JOB_SIGNAL_LINK,
  RW_JOB_SIGNAL_TICK,
  RW_JOB_SIGNAL_NOTICED,
  RW_JOB_N_SIGNALS
};
extern guint rw_job_signals[RW_JOB_N_SIGNALS];

/* The id of the one meter on the bench, typed or on a cable. */
#define RW_JOB_METER "m1"

/* rw-job.c: connects to session, view and file, and starts the clock. */
void rw_job_follow (RwJob *self);

/* rw-job-advice.c: works the advice out anew, in a thread, and emits "advice". */
void rw_job_refresh_advice (RwJob *self);

/* rw-job-trim.c: looks at the newest sample for a turn; writes it down, later, since a session cannot grow
 * while it tells of growing. */
void rw_job_watch_trim (RwJob *self, const RwReading *sample);
void rw_job_take_noticed_trim (RwJob *self);

/* rw-job-meter.c: the practice meter's bytes through a link like any other. */
void rw_job_start_practice_meter (RwJob *self);
void rw_job_advance_practice (RwJob *self, double seconds);
void rw_job_move_practice_leads (RwJob *self);

G_END_DECLS
