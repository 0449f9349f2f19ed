/* rw-ripple.h: what an AC volts reading on a rail says, and what it cannot say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a triangle or sawtooth of peak-to-peak P: RMS = P/(2√3), rectified average = P/4. A true-RMS meter shows the
 * first, an averaging one π/(2√2) = 1.1107 times the second. Half the peak-to-peak, which is what the trough lies
 * below the DC value, is thus √3 = 1.732 times a true-RMS and 4√2/π = 1.801 times an averaging reading.
 */
#pragma once

#include "rw-meter-facts.h"
#include "rw-profile.h"

G_BEGIN_DECLS

#define RW_RIPPLE_FORM_SINE 1.1107207345395915      /* π/(2√2) */
#define RW_RIPPLE_TROUGH_RMS 1.7320508075688772     /* √3 */
#define RW_RIPPLE_TROUGH_AVERAGE 1.8006326323142121 /* 4√2/π */

typedef struct
{
  double value;
  double u; /* standard uncertainty, NaN when the value is */
} RwRippleNumber;

/* Half the peak-to-peak of a sawtooth that makes the meter show @ac. A meter of unknown kind gets the middle of the
 * two factors and their half-distance/√3 in u. @ac: kind ripple, volts. NaN for an overload or a negative value. */
RwRippleNumber rw_ripple_half_peak (const RwReading *ac, const RwMeterFacts *facts);

/* DC less half the peak-to-peak: the lowest the rail goes, towards 0. Keeps the sign of @dc. Scale errors of one meter
 * on two functions are taken as independent. */
RwRippleNumber rw_ripple_trough (const RwReading *dc, const RwReading *ac, const RwMeterFacts *dc_facts,
                                 const RwMeterFacts *ac_facts);

typedef enum
{
  RW_TROUGH_UNKNOWN,
  RW_TROUGH_HOLDS,     /* shown above what the regulator needs, with 95 % */
  RW_TROUGH_TOO_CLOSE,
  RW_TROUGH_TOO_LOW,   /* shown below */
} RwTroughVerdict;
#define RW_RIPPLE_RAW_LEAST 7.0 /* volts that a +5 V linear regulator needs at the trough; data sheets and the trade */
RwTroughVerdict rw_ripple_trough_verdict (RwRippleNumber trough, double least);

/* Straight from the rectifier: its ripple limit lies above 3 % of its nominal volts. */
gboolean rw_ripple_is_raw (const RwRail *rail);

/* What makes the ripple: twice the mains, or that and the switching frequency. */
typedef enum
{
  RW_RIPPLE_SUPPLY_UNSAID,
  RW_RIPPLE_SUPPLY_LINEAR,
  RW_RIPPLE_SUPPLY_SWITCHER
} RwRippleSupply;
RwRippleSupply rw_ripple_supply_of (const RwProfile *profile);

/* Translated. @rail: (nullable). (transfer full) */
char *rw_ripple_describe (const RwReading *ac, const RwMeterFacts *facts, RwRippleSupply supply, const RwRail *rail);
/* How the meter makes its AC value, and what that gets wrong. */
char *rw_ripple_describe_meter (const RwMeterFacts *facts, RwRippleSupply supply);
/* What a +5 V regulator on this raw rail would get. */
char *rw_ripple_describe_trough (RwRippleNumber trough);
char *rw_ripple_describe_stream (double readings_a_second); /* of DC readings; 0: not known */

G_END_DECLS
