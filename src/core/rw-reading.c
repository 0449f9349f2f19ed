/* rw-reading.c: one value of one meter at one place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-reading.h"

#include <math.h>

RwReading
rw_reading_make (const char *rail,
                 RwPlace     place,
                 RwKind      kind,
                 double      value,
                 double      step,
                 const char *meter)
{
  return (RwReading){
    .rail = g_intern_string (rail),
    .meter = meter != NULL ? g_intern_string (meter) : NULL,
    .place = place,
    .kind = kind,
    .over = isnan (value),
    .value = value,
    .step = step,
    .u = NAN,
  };
}

gboolean
rw_reading_same_spot (const RwReading *a,
                      const RwReading *b)
{
  return a->rail == b->rail && a->place == b->place && a->kind == b->kind;
}
