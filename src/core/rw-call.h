/* rw-call.h: the rounds of calls in a session: what was asked, who called what, and what the reading was.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of the events. A round opens with an ask and is open until it is revealed or given up, or until the
 * next ask, which gives it up too. What is said while no round is open is passed over. Retracted events never happened.
 * A caller who calls again in one round takes the former call back; so does a second count of hands.
 *
 * A reveal closes its round whatever it names; it has an answer when that event is a live reading of the round's rail,
 * place and kind, kept after the ask, with a value.
 *
 * A replayed file is never written to. Calls made over it are kept beside it as events of their own; the n of each is
 * the number of the last event that had happened when it was made. Then those of the file itself are passed over: they
 * are another class's.
 */
#pragma once

#include "rw-session.h"

G_BEGIN_DECLS

typedef enum
{
  RW_CALL_OPEN,
  RW_CALL_REVEALED,
  RW_CALL_DROPPED
} RwCallEnd;

/* Somebody's call. */
typedef struct
{
  char  *by;    /* owned; as typed at last, without spaces at its ends */
  double value; /* in the unit of the round's kind */
  double give;  /* half of the width that holds it with 90 %; NaN when not said */
} RwCall;

typedef struct
{
  guint       n;            /* of the ask; beside a file: of the event before it */
  double      t;            /* seconds */
  const char *rail;         /* interned */
  RwPlace     place;
  RwKind      kind;
  double      was;          /* what hands refer to; NaN when nothing was shown */
  double      was_u;        /* own standard uncertainty of that reading, for a difference; NaN when not known */
  GPtrArray  *calls;        /* (element-type RwCall) in the order of each caller's first */
  gboolean    has_hands;
  guint       hands[RW_N_CALL_SIDES];
  RwCallEnd   end;
  guint       answer_n;     /* event number of the reading; 0 without one */
  double      answer;       /* NaN without one */
  double      answer_u;     /* its own standard uncertainty */
} RwCallRound;

/* Immutable, reference-counted. */
typedef struct _RwCallBook RwCallBook;

/* @beside: (nullable) (element-type RwEvent): call events made over a replayed file, see above. O(landmarks) a round.
 * (transfer full) */
RwCallBook *rw_call_book_new (RwSession *session, GArray *beside);
RwCallBook *rw_call_book_ref (RwCallBook *self);
void        rw_call_book_unref (RwCallBook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwCallBook, rw_call_book_unref)

guint              rw_call_book_get_n_rounds (const RwCallBook *self);
const RwCallRound *rw_call_book_get_round (const RwCallBook *self, guint i);
const RwCallRound *rw_call_book_get_open (const RwCallBook *self); /* (nullable) */
const RwCallRound *rw_call_book_get_last (const RwCallBook *self); /* the last one with an answer; (nullable) */

/* The last live reading of the round's spot kept after its ask, among events up to now: what a reveal would name. 0:
 * there is none. */
guint rw_call_round_find_answer (const RwCallRound *self, RwSession *session);

/* The last live reading of a spot, with a value. (nullable) borrowed until the next add. */
const RwEvent *rw_call_last_reading (RwSession *session, const char *rail, RwPlace place, RwKind kind);

G_END_DECLS
