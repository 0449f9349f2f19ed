/* rw-stages.h: the bring-up: which stage a job is in, what each still asks, and whether its gate is open.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of a session's events, its profile and the time; immutable once made, fields read-only.
 *
 * A stage is entered by its event, {"stage":{"id":"fit-board"}}. Entering says where the person is, the gate
 * says whether the work may be done: while it stops, the stage is blocked. Two more events unblock it:
 *   {"stage":{"id":"fit-board","read":true}}          the hazard statement was read (kept for the whole job)
 *   {"stage":{"id":"fit-board","against":"reason"}}   on against advice; covers the reasons known by then
 * An unread hazard statement is not covered by any "against".
 *
 * For stages the age of a reading is told apart more finely than in the bench state: a reading under load is
 * stale after a trim, a repair that fixed something, or the board's plugging; one with the board out after a trim
 * or such a repair. Power alone makes nothing stale here: cold starts belong to the work.
 */
#pragma once

#include "rw-session.h"
#include "rw-stage-words.h"
#include "rw-verdict.h"

G_BEGIN_DECLS

typedef enum
{
  RW_GATE_OPEN,
  RW_GATE_WARN, /* may be passed without a reason; too close to call counts as this, never as open */
  RW_GATE_STOP, /* may be passed with a reason, unless it is a hazard statement */
} RwGate;

/* One reason of a gate. */
typedef struct
{
  const char   *id;   /* static: "bare-never-above", …; rw-stages.c lists them */
  RwGate        gate; /* WARN or STOP */
  gboolean      hard; /* a hazard statement not yet read: no reason passes it */
  gboolean      off;  /* power off now: replaces everything else on screen */
  gboolean      covered; /* gone past with a reason */
  const RwRail *rail; /* (nullable) */
  guint         n;    /* event that shows it; 0: something is missing */
  char         *text; /* translated, with numbers, says what to do; owned */
} RwGateReason;

typedef enum
{
  RW_STAGE_AHEAD,
  RW_STAGE_CURRENT,
  RW_STAGE_BLOCKED, /* current, and its gate stops; nothing of its steps is to be done */
  RW_STAGE_DONE,    /* nothing of it is left to ask, or was when it was left */
  RW_STAGE_LEFT,    /* was entered, and left with something still asked */
  RW_STAGE_SKIPPED, /* a later one was entered, this one never */
} RwStageStatus;

typedef enum
{
  RW_ASKED_READ,
  RW_ASKED_UNREAD,
  RW_ASKED_STALE,  /* read before a trim, a repair or the board's plugging */
  RW_ASKED_OVER,   /* the meter showed overload */
  RW_ASKED_DUE,    /* warm-up: its minute has come */
  RW_ASKED_LATER,  /* warm-up: its minute is still to come */
  RW_ASKED_MISSED, /* warm-up: its minute has gone by */
} RwAskedState;

/* A spot that a stage wants measured. */
typedef struct
{
  const char   *rail_id; /* interned */
  const RwRail *rail;    /* NULL for ground */
  RwPlace       place;
  RwKind        kind;
  gboolean      bare;    /* with the board out */
  double        minutes; /* warm-up: after power came on; NaN elsewhere */
  RwAskedState  state;
  guint         n;       /* event of the last reading; 0: none */
  double        value;   /* of it; NaN when none or over */
  double        step, u; /* of it: last digit, standard uncertainty; NaN u when none */
  RwVerdict     verdict; /* of it, against the limits of this spot */
} RwAsked;

typedef enum
{
  RW_ANSWER_NONE,
  RW_ANSWER_YES,
  RW_ANSWER_NO,
} RwAnswer;

/* A question of a stage that applies to this profile. Answered by a finding: check = the question's id, outcome "yes" or
 * "no"; the newest answer counts, until its stage is entered again from another one. */
typedef struct
{
  const RwStageQuestion *question;
  RwAnswer               answer;
  guint                  n; /* event of the answer; 0: none */
} RwQuestioned;

typedef struct
{
  RwStage            stage;
  const RwStageText *words;
  RwStageStatus      status;
  RwGate             gate;        /* the worst reason that is not covered */
  GArray            *reasons;     /* of RwGateReason, gravest first */
  GArray            *spots;       /* of RwAsked, in the order they are best read */
  GArray            *questions;   /* of RwQuestioned */
  guint              n_open;      /* spots not READ (LATER and MISSED left out) and questions not answered */
  gboolean           complete;    /* every spot was read and every question answered */
  gboolean           hazard_read; /* or there is none */
  guint              entered;     /* event that entered it last; 0: never */
} RwStageState;

/* Gone on against advice. */
typedef struct
{
  RwStage stage;
  guint   n;
  double  t;
  char   *why;    /* the person's words; owned */
  char   *advice; /* what had been advised, one sentence or more; owned */
} RwAgainst;

/* Something nobody proved. */
typedef struct
{
  RwStage stage;
  char   *text; /* translated sentence; owned */
} RwUnproven;

typedef struct
{
  RwProfile    *profile;
  RwStageWords *words;
  int           current;   /* RwStage, or −1: no stage was ever entered */
  RwStageState  stages[RW_N_STAGES];
  GArray       *against;   /* of RwAgainst, in order */
  GArray       *unproven;  /* of RwUnproven: stages skipped or left open before the furthest one entered */
  double        warm_from; /* seconds from which the warm-up counts: power on or the stage entered, whichever came
                            * later; NaN: the stage was not entered, or the power is off */
  GArray       *donor;     /* of RwGateReason: for rw_stages_judge_donor */
  double        next_due;  /* seconds when the next warm-up reading falls due; NaN: none */
} RwStages;

/* @now: seconds since the session's start, at least that of its last event is taken. O(landmarks).
 * (transfer full) */
RwStages *rw_stages_new (RwSession *session, RwStageWords *words, double now);

/* What a symptom is called; its id when nobody knows. (transfer none), asked at once. */
typedef const char *(*RwSymptomNameFunc) (const char *id, gpointer data);

/* The same, with titles for the complaints that closing asks about. @name: (nullable). (transfer full) */
RwStages *rw_stages_new_named (RwSession *session, RwStageWords *words, double now, RwSymptomNameFunc name,
                               gpointer name_data);
RwStages *rw_stages_ref (RwStages *self);
void      rw_stages_unref (RwStages *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwStages, rw_stages_unref)

/* The gravest reason of a stage that is not covered. (nullable), borrowed. */
const RwGateReason *rw_stages_get_reason (const RwStages *self, RwStage stage);

/* The reason that says "power off now". (nullable), borrowed. */
const RwGateReason *rw_stages_get_off (const RwStages *self);

/* The first spot or question of the current stage that is open; both NULL: nothing is. */
void rw_stages_get_next (const RwStages *self, const RwAsked **spot, const RwQuestioned **question);

/* A live sample while power is on and the board fitted: must it go off now? @u: total standard uncertainty of the value.
 * FALSE, and *out untouched: no. Else free with rw_gate_reason_clear (). */
gboolean rw_stages_look_live (const RwProfile *profile, RwSetup setup, const RwReading *sample, double u,
                              RwGateReason *out);
void     rw_gate_reason_clear (RwGateReason *self);

/* What that said stops the current stage too, and is what rw_stages_get_off () finds. For who made @self, before anybody
 * else sees it. */
void rw_stages_take_live (RwStages *self, const RwGateReason *reason);

/* Putting a board that is known to be good on this supply: what speaks against it. OPEN only when every rail was proven
 * with the board out. *text: (nullable) translated sentence (transfer full); NULL when open. */
RwGate rw_stages_judge_donor (const RwStages *self, char **text);

/* What to say for a spot: "+5 V at the terminals, board out", "+5 V at the board after 15 min". (transfer full) */
char *rw_asked_describe (const RwAsked *self);

G_END_DECLS
