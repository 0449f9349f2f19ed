/* rw-meter-facts.h: what is known of a meter, and the uncertainty that follows from it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A specification of ±(p % of reading + n counts) is a rectangular bound of half-width
 * A = p/100·|v| + n·step, so its standard uncertainty is A/√3 (JCGM 100:2008, 4.3.7).
 * The percent part scales all readings of one meter alike; the counts part is each reading's own.
 */
#pragma once

#include "rw-reading.h"

G_BEGIN_DECLS

/* How a meter works out AC volts. */
typedef enum
{
  RW_METER_AC_UNKNOWN,
  RW_METER_AC_AVERAGING, /* rectified average, scaled for a sine wave */
  RW_METER_AC_TRUE_RMS
} RwMeterAc;

typedef struct
{
  char  *id;      /* "m1" */
  char  *name;    /* for people */
  double percent; /* per cent of reading, ≥ 0 */
  double counts;  /* counts of the last digit, ≥ 0 */
  RwMeterAc ac;
} RwMeterFacts;

/* ac is RW_METER_AC_UNKNOWN. */
RwMeterFacts *rw_meter_facts_new (const char *id, const char *name, double percent, double counts);
RwMeterFacts *rw_meter_facts_copy (const RwMeterFacts *self);
void          rw_meter_facts_free (RwMeterFacts *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMeterFacts, rw_meter_facts_free)

/* All of it, for a verdict against a fixed limit: (p/100·|v| + n·step)/√3, floored at step/√12
 * (resolution alone). @facts may be NULL: resolution only. The reading's own "u" wins when written.
 * Returns 0 when nothing is known, NaN for an overload. */
double rw_meter_facts_u_total (const RwMeterFacts *facts, const RwReading *reading);

/* The reading's own part, for differences and fits within one meter: n·step/√3, floored at step/√12. */
double rw_meter_facts_u_own (const RwMeterFacts *facts, const RwReading *reading);

/* The common part, which scales all readings of the meter alike: p/100·|v|/√3. */
double rw_meter_facts_u_common (const RwMeterFacts *facts, const RwReading *reading);

G_END_DECLS
