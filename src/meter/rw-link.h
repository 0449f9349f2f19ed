/* rw-link.h: a source of a meter's values: a serial port, the practice meter, …
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals, all in the main context that was the thread's default when the link was opened:
 *
 *   "value" (RwLink *, const RwMeterValue *value, gint64 when_us)
 *       One a value, in order, none missed and none doubled. @when_us is the monotonic clock
 *       (g_get_monotonic_time ()) at the moment its bytes arrived. @value lives during the call.
 *   "state" (RwLink *, RwLinkState state, const char *message)
 *       The state or its message changed. @message is a translated sentence for people.
 *
 * A value and a state come in the order in which they happened: all values before a LOST are
 * delivered before it. A handler may close or unref the link.
 */
#pragma once

#include <glib-object.h>

#include "rw-decoder.h"

G_BEGIN_DECLS

typedef enum
{
  RW_LINK_CLOSED,    /* not opened, or closed by the owner */
  RW_LINK_OPENING,   /* trying; after a failure the message says why, and it keeps trying */
  RW_LINK_LISTENING, /* open, no value yet */
  RW_LINK_READING,   /* values come */
  RW_LINK_SILENT,    /* open, but no value for some seconds; the message says what may be wrong */
  RW_LINK_LOST       /* was open and went away (unplugged); it keeps trying to come back */
} RwLinkState;

#define RW_TYPE_LINK (rw_link_get_type ())
G_DECLARE_DERIVABLE_TYPE (RwLink, rw_link, RW, LINK, GObject)

struct _RwLinkClass
{
  GObjectClass parent_class;

  void (*open) (RwLink *self);
  void (*close) (RwLink *self);
  void (*set_kind) (RwLink *self, RwKind kind); /* nullable: cannot */
};

/* Starts; never blocks and never fails at once: what happens is told by "state". No effect
 * when open. */
void rw_link_open (RwLink *self);

/* Stops. Values that had arrived are delivered before this returns; "state" CLOSED is the
 * last signal. */
void rw_link_close (RwLink *self);

RwLinkState rw_link_get_state (RwLink *self);

/* The message that goes with the state, "" at first. Valid until the next "state". */
const char *rw_link_get_message (RwLink *self);

/* What the meter says it is ("*IDN?"), such as "Quayside M3"; NULL when it does not say.
 * Borrowed; it is set before the "state" LISTENING that tells of it, and stays when the link
 * is lost. */
const char *rw_link_get_identity (RwLink *self);

/* What the instrument reports to be wrong: a translated sentence with its own code and words,
 * to be shown as text only; NULL: nothing. It is part of the message too. Borrowed, valid
 * until the next "state". */
const char *rw_link_get_trouble (RwLink *self);

/* What is to be measured: DC, RIPPLE (AC volts) or OHMS; DC at first. May be called at any time,
 * and holds for later opens. Instruments that can be told are configured anew; values that were
 * measured before that still come as what they are. No effect on other links and kinds. */
void rw_link_set_kind (RwLink *self, RwKind kind);

/* Values handed out and lines not understood since the link was opened. */
void rw_link_get_counts (RwLink *self, RwDecoderCounts *counts);

/* --- for the types of link, in the owner's context ----------------------------------- */

void rw_link_tell_value (RwLink *self, const RwMeterValue *value, gint64 when_us);
void rw_link_tell_state (RwLink *self, RwLinkState state, const char *message);
void rw_link_set_identity (RwLink *self, const char *identity);
void rw_link_set_trouble (RwLink *self, const char *trouble); /* nullable */
void rw_link_set_counts (RwLink *self, const RwDecoderCounts *counts);

G_END_DECLS
