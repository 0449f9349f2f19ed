/* rw-mailbox.h: carries values and states from a reading thread to the owner's main context.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing is ever dropped: the box grows as long as the owner does not get round to it.
 * Delivery is in the order of posting, in slices of a few milliseconds, so that a flood of
 * values leaves the windows alive.
 */
#pragma once

#include "rw-link.h"

G_BEGIN_DECLS

/* A value, or a change of state. */
typedef struct
{
  gboolean     is_state;
  RwMeterValue value;    /* else */
  gint64       when_us;  /* of the value's bytes */
  RwLinkState  state;
  char        *message;  /* owned, with a state */
  char        *identity; /* owned, with a state; NULL when nothing new is known */
  char        *trouble;  /* owned, with a state; NULL: the instrument reports none */
} RwMail;

typedef struct _RwMailbox RwMailbox;

/* Called in the owner's context; the mail stays the mailbox's. */
typedef void (*RwMailFunc) (const RwMail *mail, const RwDecoderCounts *counts, gpointer data);

/* (transfer full) */
RwMailbox *rw_mailbox_new (GMainContext *context, RwMailFunc deliver, gpointer data);
RwMailbox *rw_mailbox_ref (RwMailbox *self);
void       rw_mailbox_unref (RwMailbox *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMailbox, rw_mailbox_unref)

/* From any thread: takes all of @mails (of RwMail), which is empty afterwards. */
void rw_mailbox_post (RwMailbox *self, GArray *mails, const RwDecoderCounts *counts);

/* From the owner: delivers all that is in the box now, without slices. */
void rw_mailbox_flush (RwMailbox *self);

/* From the owner: nothing is delivered any more, not even the rest of a slice that is under way. */
void rw_mailbox_shut (RwMailbox *self);

G_END_DECLS
