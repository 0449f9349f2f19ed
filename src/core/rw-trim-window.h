/* rw-trim-window.h: where the one screw should stand so that every rail is inside its limits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-fit.h"

G_BEGIN_DECLS

/* One rail's line with its limits. */
typedef struct
{
  double offset, slope; /* V = offset + slope·x */
  double lo, hi;        /* limits, lo < hi; may be infinite */
  int    priority;      /* 1 first; counts only when no x suits all */
} RwTrimRail;

typedef struct
{
  gboolean exists;    /* some x suits every rail */
  double   lo, hi;    /* the window, volts of the reference; NaN when it does not exist; may be infinite */
  int      low_rail;  /* exists: index of the rail that bounds it below (−1: none); else: the two rails */
  int      high_rail; /* that rule each other out: low_rail needs x ≥ its bound, high_rail x ≤ its own;
                       * ties: the first priority, then the lower index */
  double   gap;       /* how far apart those bounds are, volts of the reference; 0 when it exists; INFINITY
                       * when a rail that does not move is outside (low_rail == high_rail then) */
  double   best;      /* the set point: exists: makes the smallest margin largest. Not: of the rails kept by
                       * priority (see kept), the same. NaN when no rail moves */
  double   margin;    /* smallest margin of the rails kept, at best; NaN when best is */
  guint64  kept;      /* bit i: rail i was counted for best (all of them when the window exists) */
  double   compromise; /* makes the smallest margin of all rails largest, be it negative; best when the
                        * window exists. NaN when no rail moves */
} RwTrimWindow;

/* Exact to rounding: the smallest margin is a concave piecewise-linear function of x, so its largest value
 * is at an end of a piece. On a plateau (every rail that bounds it stands still) its middle. @n ≤ 64.
 * @n = 0 or no finite limit at all: exists, best NaN. A limit that is NaN is none. A rail whose line is not
 * finite or whose limits are not lo < hi is passed over: its bit of kept stays 0.
 * Without a window, rails are kept in order of priority, then index, as long as some x suits all kept so far.
 * best never leaves the window of the rails kept, even where a limit on one side only (rw_position ()) would
 * pull it out. O(n²) at worst, about O(n). */
void rw_trim_window_solve (const RwTrimRail *rails, guint n, RwTrimWindow *out);

/* Smallest margin of the rails whose bit is in @kept at x; margin as in rw_margin (). INFINITY for none.
 * Rails passed over by rw_trim_window_solve () do not count. */
double rw_trim_window_margin (const RwTrimRail *rails, guint n, guint64 kept, double x);

/* The chance that all rails of @fit that have a line and limits are inside at once when the reference is set
 * to show @x, read with own standard uncertainty @u_x (rectangular), with the meter's scale off by a common
 * factor, rectangular within ±@percent %. @lo, @hi: limits a rail, NaN for none. Integrated over the common
 * scale and the setting error, which all rails share; given both, rails are taken as independent (their
 * lines' small correlation through shared positions is left out). Good to 1e-3, mostly to 1e-5. 0…1;
 * 1 when no rail has limits; NaN when @x is not finite. */
double rw_trim_window_chance (const RwTrimFit *fit, const double *lo, const double *hi, double x, double u_x,
                              double percent);

G_END_DECLS
