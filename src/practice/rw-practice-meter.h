/* rw-practice-meter.h: a hand-held meter on the leads of a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Averages what the leads touch, ranges by itself, rounds to its last digit, errs within its
 * specification ±(percent of reading + counts), shows three to four values a second and speaks the
 * "lines" format: "5.021 V DC", "35.2 mV DC", "12.4 mV AC", "OL V DC", each ended by CR LF.
 */
#pragma once

#include "rw-meter-facts.h"
#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

/* One value as the meter showed it. */
typedef struct
{
  double   t;     /* cabinet seconds */
  double   value; /* volts; NaN when over */
  double   step;  /* volts of the last digit */
  gboolean over;
  gboolean ac;
  gboolean milli; /* shown in mV */
} RwPracticeShown;

#define RW_TYPE_PRACTICE_METER (rw_practice_meter_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeMeter, rw_practice_meter, RW, PRACTICE_METER, GObject)

/* @percent ≥ 0, @counts ≥ 0.5 and @full_counts (6000 for a 6000-count meter; ≥ 200) are its
 * specification; where it errs within that is drawn from @seed. Follows @cabinet, whose step
 * function it takes. (transfer full) */
RwPracticeMeter *rw_practice_meter_new (RwPracticeCabinet *cabinet,
                                        const char        *id,
                                        const char        *name,
                                        double             percent,
                                        double             counts,
                                        guint              full_counts,
                                        guint64            seed);

/* What a session's header says of it; borrowed. */
const RwMeterFacts *rw_practice_meter_get_facts (RwPracticeMeter *self);

/* Seconds between two values; 0.25 … 0.33. */
double rw_practice_meter_get_interval (RwPracticeMeter *self);

/* Hand-held probes sit a little elsewhere each time and tremble: volts, standard deviation; 0 for
 * clips. 0.001 at first. */
void rw_practice_meter_set_contact_volts (RwPracticeMeter *self, double volts);

/* Lines that fell due since the last take, oldest first; empty when none. (transfer full)
 * At most RW_PRACTICE_METER_KEEP values wait; older ones are lost. */
#define RW_PRACTICE_METER_KEEP 4096
GBytes *rw_practice_meter_take_bytes (RwPracticeMeter *self);

/* The same values as numbers; taking them takes them from the bytes as well.
 * (transfer full) (element-type RwPracticeShown) */
GArray *rw_practice_meter_take_shown (RwPracticeMeter *self);

/* For tests: what reached its converter for the last value, contact error included, before its
 * own error. */
double rw_practice_meter_get_true_input (RwPracticeMeter *self);

G_END_DECLS
