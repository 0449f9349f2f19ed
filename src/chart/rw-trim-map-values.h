/* rw-trim-map-values.h: the numbers that the trim map shows, from the set and the meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-set.h"

G_BEGIN_DECLS

/* Where the screw stands now. Volts of the reference. */
typedef struct
{
  double x, u_x; /* NaN: not known */
  gboolean live; /* the meter says so just now; FALSE: the readings of this trim position do */
  int      from; /* live: profile index of the rail that the meter is on; else −1 */
} RwTrimMapNow;

/* @live: (nullable). FALSE: nobody knows; x and u_x are NaN then. */
gboolean rw_trim_map_now (const RwTrimSet *set, const RwTrimLive *live, RwTrimMapNow *out);

/* @rail was read at the trim position that lasts, and not as an outlier. */
gboolean rw_trim_map_is_read_now (const RwTrimSet *set, guint rail);

/* What @rail is expected to show there. FALSE: nothing can be said. */
gboolean rw_trim_map_expect_now (const RwTrimSet *set, const RwTrimLive *live,
                                 const RwTrimMapNow *now, guint rail, RwTrimExpected *out);

/* @value volts of @rail between its limits in this set; NaN where there are none. */
double rw_trim_map_position (const RwTrimSet *set, guint rail, double value);

/* The rail has limits here, at least on one side. */
gboolean rw_trim_map_has_limits (const RwTrimSet *set, guint rail);

/* Volts of the reference at which the line of @rail comes within its limits (@lower) or leaves them
 * again, from left to right. NaN: it has no line or does not cross. */
double rw_trim_map_bound (const RwTrimSet *set, guint rail, gboolean lower);

/* Last digit with which the window's ends can be told apart: 0.01 V, or finer when it is narrow. */
double rw_trim_map_digit (const RwTrimSet *set);

/* Same for a reading, from its own standard uncertainty. */
double rw_trim_map_reading_digit (double u);

G_END_DECLS
