/* rw-session.h: everything that happened on one job, in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals:
 *  "added" (guint index)      an event was added at index (always the last one)
 *  "rewound" (guint n_events) a replay jumped, back or far on: the first n_events are there now, and whoever
 *                             kept something of them looks anew
 */
#pragma once

#include <glib-object.h>

#include "rw-event.h"
#include "rw-meter-facts.h"
#include "rw-profile.h"

G_BEGIN_DECLS

/* Where a session was branched from: its first events are copies of another one's. */
typedef struct
{
  char  *session; /* uuid of the other */
  guint  n;       /* number of the last event that was copied; 0: none */
  double t;       /* seconds of the other where it was left */
  char  *name;    /* of its file, or what people call it; "" when none */
} RwSessionFrom;

RwSessionFrom *rw_session_from_new (const char *session, guint n, double t, const char *name);
RwSessionFrom *rw_session_from_copy (const RwSessionFrom *self);
void           rw_session_from_free (RwSessionFrom *self);

/* "branched from …, at 1:23, event 12", translated. (transfer full) */
char *rw_session_from_describe (const RwSessionFrom *self);

typedef struct
{
  char      *id;      /* uuid */
  GDateTime *started; /* UTC */
  char      *cabinet_name;
  char      *cabinet_tag; /* "" when none */
  RwProfile *profile;
  GPtrArray *meters;  /* of RwMeterFacts */
  RwSessionFrom *from; /* (nullable) */
  char      *line;    /* (nullable) the header line as read, for copying on what we do not know */
} RwSessionHeader;

/* A fresh id; takes nothing, copies or refs all. @meters: (element-type RwMeterFacts) (nullable). */
RwSessionHeader *rw_session_header_new (RwProfile *profile, const char *cabinet_name,
                                        const char *cabinet_tag, GPtrArray *meters, GDateTime *started);
RwSessionHeader *rw_session_header_copy (const RwSessionHeader *self);
void             rw_session_header_free (RwSessionHeader *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSessionHeader, rw_session_header_free)

/* The first line of a file. The error's domain is RW_EVENT_ERROR or RW_PROFILE_ERROR. */
RwSessionHeader *rw_session_header_from_line (const char *line, gsize length, GError **error);
void             rw_session_header_append_line (const RwSessionHeader *self, GString *out);

#define RW_TYPE_SESSION (rw_session_get_type ())
G_DECLARE_FINAL_TYPE (RwSession, rw_session, RW, SESSION, GObject)

/* @header: (transfer full). */
RwSession             *rw_session_new (RwSessionHeader *header);

/* For a replay: the first events of @source, none at first. They are shared, not copied; nothing can be added to it.
 * Refs @source. (transfer full) */
RwSession *rw_session_new_part (RwSession *source);
RwSession *rw_session_get_source (RwSession *self); /* (nullable) borrowed */

const RwSessionHeader *rw_session_get_header (RwSession *self);
RwProfile             *rw_session_get_profile (RwSession *self);      /* borrowed */
/* As the header or the newest event of that meter says. Until the next add. (nullable) */
const RwMeterFacts    *rw_session_find_meter (RwSession *self, const char *id);

/* Takes the event's text; numbers it when n is 0. Returns its index. Emits "added". */
guint rw_session_add (RwSession *self, RwEvent *event);

guint          rw_session_get_n_events (RwSession *self);
const RwEvent *rw_session_get_event (RwSession *self, guint index); /* valid until the next add */
int            rw_session_find (RwSession *self, guint n);          /* index, or −1 */

/* Not retracted (a retract that was itself retracted does not count). */
gboolean rw_session_is_live (RwSession *self, guint index);

/* Landmarks: all events but samples, in order, so that state is computed without a million samples. */
guint rw_session_get_n_landmarks (RwSession *self);
guint rw_session_get_landmark (RwSession *self, guint i); /* event index */

/* Seconds of the last event; 0 when there is none. */
double rw_session_get_end (RwSession *self);

/* What undo and redo would retract: an event number, or 0 for "nothing".
 * Undo: the last live event that a person made. Redo: the last live retract of one, as long as nothing
 * new was done since. Both are carried out by adding a retract event of that number. */
guint rw_session_get_undo (RwSession *self);
guint rw_session_get_redo (RwSession *self);

/* For a replay only: only the first @n_events are there any more. Emits "rewound". O(log n) for a part of another
 * session. */
void rw_session_rewind (RwSession *self, guint n_events);

/* For a part of another session: its first @n_events are there. A few more than before: emits "added" for each, in
 * turn; many: "rewound", once, in O(log n). */
void rw_session_advance (RwSession *self, guint n_events);

G_END_DECLS
