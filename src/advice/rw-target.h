/* rw-target.h: where the rail that the meter is on should stand, and how far from there it is now.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a person turns the screw by, seen or heard, comes from here alone. A set point of the trim is aimed at only
 * where rw_trim_advice_work_out () says that the screw is to be turned or left: never with the board out, never to
 * make up for a drop, never past what a board survives. Otherwise the middle of the limits stands in, which is
 * no advice to turn anything.
 */
#pragma once

#include "rw-trim-advice.h"

G_BEGIN_DECLS

typedef enum
{
  RW_TARGET_NONE,   /* nothing is laid down for this spot, or the limits are open at an end */
  RW_TARGET_LIMITS, /* the middle of the limits */
  RW_TARGET_TRIM    /* what this rail shows with the trim at its set point */
} RwTargetFrom;

/* Volts (or the unit of the sample's kind). More and less are by magnitude: a negative rail has more when it is
 * more negative, as a turn up of the trim makes it. */
typedef struct
{
  RwTargetFrom from;
  RwReading    sample;
  const RwRail *rail;   /* of the profile; NULL: ground, or not known which */
  double   value;       /* what the meter shows; NaN for overload */
  double   lo, hi;      /* limits, lo < hi; may be infinite; NaN: none */
  double   window_lo, window_hi; /* TRIM: what this rail shows over the trim's window, ordered; else NaN */
  double   aim;         /* NaN for NONE */
  double   distance;    /* how much more (> 0) or less (< 0) than aim; NaN when not known */
  double   half;        /* half as wide as the window or the limits: the measure of distance; > 0, or NaN */
  gboolean inside;      /* nothing to do: TRIM: the trim stands well; LIMITS: within them */
  gboolean touched;     /* FALSE: as good as nothing on a supply rail: the leads are in the air or the rail is dead */
  gboolean reversed;    /* touched, with the wrong sign */
  gboolean danger;      /* more than a board survives */
  double   limit;       /* the limit that the value is past or nearest to; NaN: none */
  double   past;        /* how far past it; < 0: how far within; NaN: none */
  gboolean weak;        /* that is the limit towards nothing: the value falls short of it */
  RwVerdict verdict;    /* against the limits */
} RwTarget;

/* @meter: whose sample it is (nullable). @set, @live: the trim's set at the sample's place and what this sample says
 * of it; both NULL when it says nothing. Costs what rw_trim_advice_work_out () costs. */
void rw_target_init (RwTarget *out, const RwBenchState *state, const RwReading *sample, const RwMeterFacts *meter,
                     const RwTrimSet *set, const RwTrimLive *live);

G_END_DECLS
