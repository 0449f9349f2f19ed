/* rw-ripple.h: what an AC volts reading on a rail says, and what it cannot say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a triangle or sawtooth of peak-to-peak P: RMS = P/(2√3), rectified average = P/4. A true-RMS meter shows the
 * first, an averaging one π/(2√2) = 1.1107 times the second. Half the peak-to-peak, which is what the trough lies
 * below the DC value, is thus √3 = 1.732 times a true-RMS and 4√2/π = 1.801 times an averaging reading.
 */
#pragma once

#include "rw-meter-facts.h"

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

/* RMS of the sawtooth: @ac as it is from a true-RMS meter, 1.0396 times it from an averaging one. */
RwRippleNumber rw_ripple_rms (const RwReading *ac, const RwMeterFacts *facts);

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
#define RW_RIPPLE_RAW_LEAST 7.0 /* volts that a +5 V linear regulator needs at the trough; trade practice */
RwTroughVerdict rw_ripple_trough_verdict (RwRippleNumber trough, double least);

/* Where a ripple of @frequency shows up in @rate readings a second: |f − k·rate|, 0…rate/2. NaN when rate ≤ 0. */
double rw_ripple_alias (double frequency, double rate);

/* What is known of the band of the meter's AC function. */
typedef enum
{
  RW_RIPPLE_BAND_UNSTATED, /* nobody said: mains ripple is seen, switching ripple may not be */
  RW_RIPPLE_BAND_MAINS,    /* stated, up to about 1 kHz or less */
  RW_RIPPLE_BAND_WIDE,     /* stated, reaching the switching frequency */
} RwRippleBand;
RwRippleBand rw_ripple_band (double bandwidth_hz, double switching_hz); /* NaN or ≤ 0 bandwidth: unstated */

/* How strongly the absence of ripple speaks against tired capacitors: the share of cases with ripple in which this
 * meter would show it. An estimate: 0.9 for a linear supply or a wide meter, 0.3 for a switching one and an unstated
 * band, 0.1 for a band below its frequency. */
double rw_ripple_would_show (RwRippleBand band, gboolean switching);

/* Translated. (transfer full) */
char *rw_ripple_describe (const RwReading *ac, const RwMeterFacts *facts, RwRippleBand band, gboolean switching,
                          double limit);
char *rw_ripple_describe_trough (RwRippleNumber trough, double least);
char *rw_ripple_describe_stream (double readings_a_second); /* of DC readings: aliases only */

G_END_DECLS
