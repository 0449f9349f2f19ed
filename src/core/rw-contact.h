/* rw-contact.h: one touch of the leads after another, from a stream: when does one hold still, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A contact begins when the stream comes to rest at a value that is no rest of leads in the air, and ends when
 * the value leaves. A contact settles once: while the leads stay, no second value is kept, however the last
 * digit moves. After it ends, the next one may be at the very same value (the same point touched again).
 *
 * A turned trim moves the value under the leads: it leaves, and comes to rest elsewhere without having been far
 * away or in the air. That is the same contact, but another value: it is SETTLED a second time, and
 * rw_contact_get_moved () says so. A value that comes back to where it was is not kept again.
 */
#pragma once

#include "rw-settle.h"

G_BEGIN_DECLS

typedef enum
{
  RW_CONTACT_NONE,    /* nothing touched: leads in the air, overload, nothing came yet */
  RW_CONTACT_MOVING,  /* a value is there, not yet at rest */
  RW_CONTACT_SETTLED, /* came to rest with this very sample: keep it now, once */
  RW_CONTACT_HOLDING  /* still the contact that settled */
} RwContactState;

typedef struct _RwContact RwContact;

RwContact *rw_contact_new (void);
void       rw_contact_free (RwContact *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwContact, rw_contact_free)
void rw_contact_reset (RwContact *self);

/* One sample of one meter: seconds, value (NaN: overload) in base units, value of the last digit (0: unknown).
 * One or two samples that are overload or far off do not end a contact that settled: HOLDING goes on through them.
 * *out (nullable) receives the settled value and its u while SETTLED and HOLDING. O(1). No clock. */
RwContactState rw_contact_push (RwContact *self, double t, double value, double step, RwSettled *out);

/* The value that settled last was reached by moving on under the leads, as when the trim is turned. */
gboolean rw_contact_get_moved (const RwContact *self);

G_END_DECLS
