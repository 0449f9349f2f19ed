/* rw-job-private.h: what the parts of a job share. For rw-job*.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-practice-meter.h"
#include "rw-contact.h"
#include "rw-record.h"
#include "rw-stage-words.h"
#include "rw-trim-notice.h"

G_BEGIN_DECLS

/* A sample whose spot is not known yet. */
typedef struct
{
  double    t;
  RwReading sample;
} RwHeldSample;

/* A meter on a cable. */
typedef struct
{
  RwJob       *job; /* not owned */
  const char  *id;  /* interned */
  char        *name;
  RwLink      *link;
  char        *words;
  RwLinkState  state;
  const char  *rail; /* interned; NULL: it moves about */
  RwPlace      place;

  /* hands-free: the present contact */
  RwContact   *contact;
  GArray      *pending;   /* of RwHeldSample: of a contact whose spot is not known yet */
  gboolean     placed;    /* the spot of this contact is known: at_rail, at_place */
  const char  *at_rail;
  RwPlace      at_place;
  double       last_value; /* NaN: none */
  RwReading    rested;    /* where this contact rested last; rail NULL: it has not yet */
} RwJobMeter;

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
  guint         advice_timer; /* that asks for advice once a replay stands still */
  gboolean      live_news; /* samples came since "live" was emitted */
  GPtrArray    *lives;    /* of RwLive, one a meter, in the order in which they were first heard of */
  guint         newest_live;
  gboolean      trim_noticed; /* a turn, not yet written down */
  RwReading     trim_from;    /* spot and value before it */
  double        trim_to;
  RwJournal    *journal; /* NULL for a replay */
  char         *path;

  RwKnowledge *knowledge;       /* NULL when it cannot be read */
  char        *advice_problem;
  RwAdvice    *advice;
  gboolean     advising;        /* a thread works on it */
  gboolean     advice_outdated; /* and must start over when done */
  RwRecord    *record;          /* of the other jobs; NULL: not read yet */
  RwKnowledge *counted;         /* knowledge with the record's chances; NULL: not used */
  gboolean     uses_record;
  char        *record_problem;  /* (nullable) */
  RwStageWords *stage_words;    /* of the bring-up; NULL: not read yet, or not to be read */
  const char  *fixed;           /* interned cause; as the record was last told */

  gint64 clock_zero; /* monotonic µs that is second 0 of the session; live modes */
  gint64 last_tick;
  guint  timer;
  guint  beat; /* counts timer calls, for what happens less often */

  GPtrArray         *meters; /* of RwJobMeter: on a cable, or the practice meter's bytes */
  gboolean           hands_free;
  RwJobQuestion     *question;    /* (nullable) */
  char              *hands_words; /* (nullable) */
  double             turned_t;    /* seconds: of the newest turn noticed by itself */
  const char        *turned_meter; /* interned; which saw it */
  RwReplay          *replay;
  RwPracticeCabinet *cabinet;
  RwPracticeMeter   *meter;
  gboolean           unadvised;     /* it is done without advice; advice_problem says why */
  gboolean           leads_by_hand; /* of the practice cabinet: they stay where they were put, whatever is said */
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
  RW_JOB_SIGNAL_HANDS,
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
void rw_job_watch_trim (RwJob *self, RwLive *live);
void rw_job_take_noticed_trim (RwJob *self);

/* A rail at rest at @from rests at @to now: writes a turn down if that is what it can only be. From no handler of
 * the session. */
void rw_job_note_turn (RwJob *self, const RwReading *from, double to);

/* Hands-free: what is asked for after @kept: a rail that is due after a trim, else the next of the profile. */
void rw_job_aim_next (RwJob *self, const RwReading *kept);

/* rw-job-meter.c */
void        rw_job_init_meters (RwJob *self);
void        rw_job_tell_kind (RwJob *self); /* to the meters that move about: what is measured now */
RwJobMeter *rw_job_find_meter (RwJob *self, const char *id); /* (nullable) */
void        rw_job_add_sample (RwJob *self, double t, const RwReading *sample);
RwLive     *rw_job_take_live (RwJob *self, const char *meter); /* that of a meter, made when there is none; now the newest */
void        rw_job_forget_lives (RwJob *self, const char *meter); /* NULL: of all */

/* rw-job-hands.c: a sample in hands-free mode; its spot is where the leads are said to be. */
void rw_job_take_in_hands (RwJobMeter *meter, double t, RwReading *sample);
void rw_job_leave_contact (RwJobMeter *meter);
void rw_job_clear_hands (RwJob *self);

/* rw-job-meter.c: the practice meter's bytes through a link like any other. */
void rw_job_start_practice_meter (RwJob *self);
void rw_job_advance_practice (RwJob *self, double seconds);
void rw_job_move_practice_leads (RwJob *self);

G_END_DECLS
