/* rw-practice-meter-private.h: what a practice meter is made of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet-private.h"
#include "rw-practice-meter.h"

G_BEGIN_DECLS

#define RW_PRACTICE_MOST_INTERVAL 33 /* steps between two values */

struct _RwPracticeMeter
{
  GObject            parent_instance;
  RwPracticeCabinet *cabinet;
  RwMeterFacts      *facts;
  guint              full_counts;
  double             volt_counts; /* counts in a volt on the lowest volt range; a power of ten */
  double             contact_volts;
  RwPracticeRandom   random;

  /* Where it errs. */
  double scale;        /* share */
  double offset;       /* counts */
  double ripple_hertz; /* of the mains it meets */
  double lead_ohms;

  /* How it is set. */
  RwPracticeMode mode;
  RwPracticeJack jack;
  int            fixed_range; /* RW_PRACTICE_RANGE_AUTO: none */
  gboolean       zeroed;
  gboolean       half_wave;
  gboolean       fuse_blown;
  double         fuse_heat; /* A²s since it was last below its rating */

  /* Where it is. */
  guint   interval; /* steps */
  guint   due;      /* steps to the next value */
  guint   leads_serial;
  double  contact;                          /* offset of this placement, in units of contact_volts */
  double  front;                            /* behind the front end */
  double  ring[RW_PRACTICE_MOST_INTERVAL];  /* the last `interval` steps */
  guint   next;
  int     range; /* −1: millivolts; 0 … : volts or hundreds of ohms, tens of the lowest */
  double  input; /* mean of the last value */
  GArray *shown; /* of RwPracticeShown, not yet taken */
};

/* What comes in at the probes in this step, in the unit of @kind. */
double rw_practice_meter_probe (RwPracticeMeter *self, RwKind kind);

/* Ranges as of rw_practice_meter_set_range (). */
int rw_practice_meter_lowest_range (RwPlace place, RwKind kind);
int rw_practice_meter_highest_range (RwPracticeMeter *self, RwKind kind);

/* Lets the current of this step through the fuse; tells the cabinet how the meter is set. */
void rw_practice_meter_heat_fuse (RwPracticeMeter *self);
void rw_practice_meter_tell_dial (RwPracticeMeter *self);

G_END_DECLS
