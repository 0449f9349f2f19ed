/* rw-practice-meter.h: a hand-held meter on the leads of a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Averages what the leads touch, ranges by itself or as it is told, rounds to its last digit, errs within its
 * specification ±(percent of reading + counts), shows three to four values a second and speaks the
 * "lines" format: "5.021 V DC", "35.2 mV DC", "12.4 mV AC", "OL V DC", "12.4 Ohm", "1.234 kOhm", "3.210 A DC", each ended by CR LF.
 */
#pragma once

#include "rw-meter-facts.h"
#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

/* One value as the meter showed it. */
typedef struct
{
  double   t;     /* cabinet seconds */
  double   value; /* in the unit of kind; NaN when over */
  double   step;  /* of the last digit */
  gboolean over;
  gboolean ac;
  gboolean milli; /* shown in mV */
  RwKind   kind;  /* DC, RIPPLE, OHMS or AMPS */
  int      range; /* as of rw_practice_meter_set_range () */
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

/* The dial. */
typedef enum
{
  RW_PRACTICE_MODE_FOLLOW, /* turned by whoever calls rw_practice_cabinet_set_leads (); at first */
  RW_PRACTICE_MODE_DC,
  RW_PRACTICE_MODE_AC,
  RW_PRACTICE_MODE_OHMS,
  RW_PRACTICE_MODE_AMPS /* DC */
} RwPracticeMode;

/* Where the red lead is plugged into the meter. In the amps jack the meter is a short circuit, whatever its dial
 * says. */
typedef enum
{
  RW_PRACTICE_JACK_VOLTS,
  RW_PRACTICE_JACK_AMPS
} RwPracticeJack;

void rw_practice_meter_set_mode (RwPracticeMeter *self, RwPracticeMode mode, RwPracticeJack jack);
RwPracticeMode rw_practice_meter_get_mode (RwPracticeMeter *self);
RwPracticeJack rw_practice_meter_get_jack (RwPracticeMeter *self);

/* The range switch: −1: millivolts, 0 …: volts, hundreds of ohms, tens of them; RW_PRACTICE_RANGE_AUTO at first.
 * A fixed range is kept, and shows OL past its end. Out of reach: the nearest. */
#define RW_PRACTICE_RANGE_AUTO (-2)
void rw_practice_meter_set_range (RwPracticeMeter *self, int range);
int  rw_practice_meter_get_range (RwPracticeMeter *self); /* the one that it is in now */

/* Shorted leads read 0.2 … 0.5 Ω until they are zeroed, which subtracts what they have. */
void rw_practice_meter_set_zeroed (RwPracticeMeter *self, gboolean zeroed);

/* A cheap meter without a capacitor at its AC input shows 2.2 times the DC of a rail that red is the plus of, and
 * nothing of it the other way round. */
void rw_practice_meter_set_half_wave (RwPracticeMeter *self, gboolean half_wave);

/* Its own fuse, in the amps jack. */
gboolean rw_practice_meter_get_fuse_blown (RwPracticeMeter *self);
void     rw_practice_meter_replace_fuse (RwPracticeMeter *self);

/* Below 30 Ω it beeps: so do many things that are no good connection. */
gboolean rw_practice_meter_get_beeps (RwPracticeMeter *self);

/* What a careful colleague would say of what is being done: ohms on a live or charged circuit, the red lead in the amps
 * jack, its fuse blown. Translated; NULL: nothing. */
const char *rw_practice_meter_get_caution (RwPracticeMeter *self);

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
