/* rw-session.h: everything that happened on one job, in order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals:
 *  "added" (guint index)      an event was added at index (always the last one)
 *  "rewound" (guint n_events) a replay went back: only the first n_events are left
 */
#pragma once

#include <glib-object.h>

#include "rw-event.h"
#include "rw-meter-facts.h"
#include "rw-profile.h"

G_BEGIN_DECLS

typedef struct
{
  char      *id;      /* uuid */
  GDateTime *started; /* UTC */
  char      *cabinet_name;
  char      *cabinet_tag; /* "" when none */
  RwProfile *profile;
  GPtrArray *meters;  /* of RwMeterFacts */
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

/* For a replay only: forgets all but the first @n_events. Emits "rewound". */
void rw_session_rewind (RwSession *self, guint n_events);

G_END_DECLS
