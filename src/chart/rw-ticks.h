/* rw-ticks.h: round numbers along an axis. Pure functions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A step is one of 1, 2, 5 times a power of ten; for time, from one second up, one that a clock
 * has: 1, 2, 5, 10, 15, 30 s; 1, 2, 5, 10, 15, 30 min; 1, 2, 3, 6, 12 h; 1, 2, 5, … days.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Tick i (0 ≤ i < n) stands at (first + i)·step, first being a whole number, so that no rounding
 * error adds up along the axis. */
typedef struct
{
  double step;     /* > 0; 0 when n is 0 */
  double first;    /* a whole number of steps */
  guint  n;        /* 0 when the range is empty, reversed, not finite, or too fine for a double */
  int    decimals; /* digits after the mark that tell two ticks apart */
} RwTicks;

#define RW_TICKS_MOST 1000

/* Smallest step of which at most @most fit into @span. 0 when @span or @most is not positive and
 * finite. */
double rw_ticks_step (double span, double most);
double rw_ticks_clock_step (double span, double most);

/* All ticks within [lo, hi], at most about @most (one more when both ends are ticks). */
RwTicks rw_ticks_decimal (double lo, double hi, double most);
RwTicks rw_ticks_clock (double lo, double hi, double most);

double rw_ticks_at (const RwTicks *ticks, guint i);

G_END_DECLS
