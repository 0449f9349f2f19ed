/* rw-call-desk.h: "call it first" at a job: asks, takes calls, reveals, and tells the class; no widget.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Calls are events of the session. A replay is never written to: its calls stand beside it (rw-annotations.h) and are
 * there again when it is opened again, and a reveal goes on to the reading that answers.
 *
 * A reveal without a reading yet aims the meter at the rail and waits: the next reading there is the answer.
 *
 * Signals:
 *  "changed"          the rounds, or what the class is told, changed
 *  "say" (char *)     something a person should know, translated
 */
#pragma once

#include "rw-call-score.h"
#include "rw-job.h"
#include "rw-projection.h"

G_BEGIN_DECLS

#define RW_TYPE_CALL_DESK (rw_call_desk_get_type ())
G_DECLARE_FINAL_TYPE (RwCallDesk, rw_call_desk, RW, CALL_DESK, GObject)

RwCallDesk *rw_call_desk_new (RwProjection *projection);
void        rw_call_desk_set_job (RwCallDesk *self, RwJob *job); /* (nullable) */
RwJob      *rw_call_desk_get_job (RwCallDesk *self);             /* (nullable) borrowed */

/* Opens a round about DC volts of a rail of the profile; one that is open is given up. */
void rw_call_desk_ask (RwCallDesk *self, const char *rail, RwPlace place);

/* These do nothing while no round is open. @give: NaN when not said. */
void rw_call_desk_call (RwCallDesk *self, const char *by, double value, double give);
void rw_call_desk_count (RwCallDesk *self, guint lower, guint same, guint higher);
void rw_call_desk_drop (RwCallDesk *self);
void rw_call_desk_reveal (RwCallDesk *self);

/* What the class was told last is taken from the projector; a round stays as it is. */
void rw_call_desk_clear (RwCallDesk *self);

/* Hides and tells again what the round at hand wants, after somebody else has set the projection. */
void rw_call_desk_tell (RwCallDesk *self);

/* The rounds so far, NULL without a job; the open one; the one that is revealed and still shown; whether a reveal waits
 * for its reading. All borrowed until "changed". */
RwCallBook        *rw_call_desk_get_book (RwCallDesk *self);
const RwCallRound *rw_call_desk_get_open (RwCallDesk *self);
const RwCallRound *rw_call_desk_get_shown (RwCallDesk *self);
gboolean           rw_call_desk_get_waiting (RwCallDesk *self);

/* (transfer full) (element-type RwCallStanding) over the whole lesson. */
GPtrArray *rw_call_desk_list_standings (RwCallDesk *self);

G_END_DECLS
