/* rw-live.h: what the meter shows now, worked out from the samples of a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"
#include "rw-settle.h"
#include "rw-trim-notice.h"

G_BEGIN_DECLS

/* The newest sample of one meter and whether its stream has come to rest. */
typedef struct
{
  const char *meter;   /* interned; NULL: nobody said */
  gboolean    has_value;
  RwReading   sample;
  double      t;       /* seconds: when it came */
  RwSettled   settled; /* of the stream at this spot */
  RwSettle   *settle;  /* owned; NULL until the first sample */
  RwTrimNotice notice; /* of turns of the trim */
} RwLive;

/* The spot of a sample whose leads may be anywhere. */
#define RW_LIVE_SOMEWHERE "?"

RwLive *rw_live_new (const char *meter);
void    rw_live_free (RwLive *self);

/* Takes the next sample; a new spot starts the settling afresh. */
void rw_live_push (RwLive *self, double t, const RwReading *sample);

/* Something was changed: what settled before is no longer the value, and coming to rest elsewhere is no news. The newest
 * sample stays. */
void rw_live_unsettle (RwLive *self);

/* Forgets everything but the meter: it is gone, or a replay went back. */
void rw_live_reset (RwLive *self);

/* The settled value as a reading to keep; FALSE when nothing has settled. */
gboolean rw_live_get_settled (const RwLive *self, RwReading *reading);

G_END_DECLS
