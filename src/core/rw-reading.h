/* rw-reading.h: one value of one meter at one place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-kinds.h"

G_BEGIN_DECLS

/* A sample or a kept reading. A plain value: strings are interned, nothing is owned. */
typedef struct
{
  const char *rail;  /* interned rail id, "gnd" for the ground return; never NULL */
  const char *meter; /* interned meter id, or NULL when nobody said */
  RwPlace     place;
  RwKind      kind;
  gboolean    over;  /* the meter showed overload; value is NaN then */
  gboolean    low_battery; /* the meter said that its battery is low */
  double      value; /* in the unit of kind */
  double      step;  /* value of the meter's last digit, same unit; 0 when unknown */
  double      u;     /* standard uncertainty written with the reading; NaN when none was */
} RwReading;

/* A reading with everything unknown but where it was taken. */
RwReading rw_reading_make (const char *rail, RwPlace place, RwKind kind, double value, double step,
                           const char *meter);

/* Same rail, place and kind: a later one replaces an earlier one. */
gboolean rw_reading_same_spot (const RwReading *a, const RwReading *b);

G_END_DECLS
