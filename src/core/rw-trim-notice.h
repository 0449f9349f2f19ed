/* rw-trim-notice.h: was the trim turned? Noticed from the stream of one rail.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The screw was turned when a rail at rest moved away and came to rest elsewhere while the leads stayed on
 * it: by more than five steps of the meter and 0.4 % of the value. Leads that were lifted show a value far
 * off, overload or a gap in between, and a slow drift never leaves rest: neither counts.
 */
#pragma once

#include "rw-reading.h"
#include "rw-settle.h"

G_BEGIN_DECLS

/* A plain value; all zero to begin with. */
typedef struct
{
  gboolean  resting; /* rest holds */
  RwReading at;      /* the spot; its value is where the rail rested last */
} RwTrimNotice;

void rw_trim_notice_reset (RwTrimNotice *self);

/* TRUE: a rail that rested at @from and rests at @to, volts, has moved by more than it does by itself. */
gboolean rw_trim_notice_is_turn (const RwReading *from, double to);

/* The next sample and what the settling of its stream says. TRUE: the rail came to rest elsewhere just now;
 * @from and @to are volts. */
gboolean rw_trim_notice_push (RwTrimNotice *self, const RwReading *sample, const RwSettled *settled, double *from,
                              double *to);

G_END_DECLS
