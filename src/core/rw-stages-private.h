/* rw-stages-private.h: what the files of rw-stages share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-stages.h"

G_BEGIN_DECLS

/* The last reading of a spot, with the board out or not. */
typedef struct
{
  RwReading     reading;
  const RwRail *rail;  /* NULL: ground, or a stranger */
  gboolean      bare;
  guint         n;
  double        t;
  double        u;     /* total standard uncertainty; NaN when over */
  double        u_own; /* without the meter's common part */
  gboolean      stale;
  gboolean      changed; /* stale by more than a turn of the trim: wiring or load are no longer the same */
} RwStageRead;

typedef struct
{
  const char *id; /* interned */
  gboolean    yes;
  guint       n;
} RwStageAnswer;

/* A complaint that nobody said is gone. */
typedef struct
{
  const char *id; /* interned */
  guint       n;  /* event that said so last */
} RwStageSymptom;

/* What the events up to now say, as far as stages need it. */
typedef struct
{
  RwProfile    *profile;
  RwStageWords *words;
  const char   *supply;  /* (nullable) kind of supply; borrowed from the profile */
  RwSetup       setup;
  guint         setup_n; /* event of the last setup */
  double        now;
  GArray       *reads;   /* of RwStageRead */
  GArray       *warm;    /* of RwStageRead: the reference at the board, every reading since the last trim or repair */
  GArray       *answers; /* of RwStageAnswer */
  GArray       *symptoms; /* of RwStageSymptom: present, and not before a repair that fixed something */
  guint         turned;       /* event of the last turn; 0: none */
  gboolean      turned_bare;  /* that one with the board out */
  guint         plugged_live; /* event that moved the board with the power on; 0: not the last one */
  double        power_on;     /* seconds when power came on last; NaN: never said */
  gboolean      hazard_read[RW_N_STAGES];
  guint         entered[RW_N_STAGES];   /* event; 0: never */
  double        entered_t[RW_N_STAGES];
  gboolean      left_done[RW_N_STAGES];
  int           current, furthest;      /* RwStage or −1 */
  GArray       *against; /* of RwAgainst */
  GHashTable   *covered; /* set of char *, see rw_stages_dup_key */
  RwSymptomNameFunc name; /* (nullable) */
  gpointer          name_data;
} RwStagesBook;

/* --- rw-stages-book.c --- */

void rw_stages_book_init (RwStagesBook *self, RwProfile *profile, RwStageWords *words);
void rw_stages_book_clear (RwStagesBook *self);
/* Any event but a stage's. */
void rw_stages_book_take (RwStagesBook *self, RwSession *session, const RwEvent *event);
/* Forgets the answers to a stage's questions. */
void rw_stages_book_forget (RwStagesBook *self, RwStage stage);

/* (nullable) */
const RwStageRead   *rw_stages_book_find (const RwStagesBook *self, const char *rail, RwPlace place, RwKind kind,
                                          gboolean bare);
const RwStageAnswer *rw_stages_book_find_answer (const RwStagesBook *self, const char *id);
/* The same, when it still holds and has a value. */
const RwStageRead   *rw_stages_book_fresh (const RwStagesBook *self, const char *rail, RwPlace place, RwKind kind,
                                           gboolean bare);

/* Something is destroyed without this rail. */
gboolean rw_stages_is_guard (const RwProfile *profile, guint rail);

/* --- rw-stages-asked.c --- */

/* Fills spots, questions, n_open, complete. */
void   rw_stages_ask (const RwStagesBook *self, RwStageState *state);
/* NaN: not begun. */
double rw_stages_warm_from (const RwStagesBook *self);

/* --- reasons: @reasons of RwGateReason --- */

/* @text: (transfer full). @rail: (nullable). The reason that was added, until the next one is. */
RwGateReason *rw_stages_add_reason (GArray *reasons, const char *id, RwGate gate, const RwRail *rail, guint n,
                                    char *text);
/* "5.62 V"; "OL". (transfer full) */
char *rw_stages_dup_value (const RwStageRead *read);
/* Volts with two decimals, as limits are written. (transfer full) */
char *rw_stages_dup_volts (double volts);

/* All of a stage but its hazard statement. */
void rw_stages_add_all (const RwStagesBook *self, RwStage stage, GArray *reasons);

/* The rails with the board out. @shown: only what readings show, not what is missing. */
void rw_stages_add_bare (const RwStagesBook *self, gboolean shown, GArray *reasons);
/* What is not proven with the board out, for somebody else's board. */
void rw_stages_add_donor (const RwStagesBook *self, GArray *reasons);
/* What a board under power does not stand. */
void rw_stages_add_power (const RwStagesBook *self, GArray *reasons);
/* Before the trim is touched; after it was. */
void rw_stages_add_trim (const RwStagesBook *self, GArray *reasons);
void rw_stages_add_no_load (const RwStagesBook *self, GArray *reasons);
void rw_stages_add_recheck (const RwStagesBook *self, GArray *reasons);
/* Rails beyond their limits at the board; @gate for those surely beyond. */
void rw_stages_add_limits (const RwStagesBook *self, RwGate gate, GArray *reasons);
/* Rails not read at the board, in one reason. */
void rw_stages_add_unread (const RwStagesBook *self, GArray *reasons);

G_END_DECLS
