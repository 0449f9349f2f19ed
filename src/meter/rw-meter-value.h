/* rw-meter-value.h: one value as a meter sent it, whatever its format.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-kinds.h"

G_BEGIN_DECLS

typedef enum
{
  RW_METER_UNIT_NONE, /* the meter did not say */
  RW_METER_UNIT_VOLT,
  RW_METER_UNIT_AMPERE,
  RW_METER_UNIT_OHM,
  RW_METER_UNIT_FARAD,
  RW_METER_UNIT_HERTZ,
  RW_METER_UNIT_CELSIUS,
  RW_N_METER_UNITS
} RwMeterUnit;

typedef enum
{
  RW_METER_MODE_NONE, /* the meter did not say */
  RW_METER_MODE_DC,
  RW_METER_MODE_AC,
  RW_METER_MODE_AC_DC,
  RW_METER_MODE_DIODE,
  RW_METER_MODE_CONTINUITY,
  RW_N_METER_MODES
} RwMeterMode;

/* A plain value; nothing is owned. */
typedef struct
{
  double      value;       /* in the unit's base size (volts, never millivolts); NaN when over */
  double      step;        /* value of the last digit sent, same size; 0 when unknown or over */
  RwMeterUnit unit;
  RwMeterMode mode;
  gboolean    over;        /* overload, or the meter says it has no valid value */
  gboolean    low_battery;
  gboolean    hold;        /* the display is frozen: this is no new measurement */
} RwMeterValue;

/* "V", "A", "ohm", "F", "Hz", "C"; NULL for RW_METER_UNIT_NONE. Static strings. */
const char *rw_meter_unit_to_id (RwMeterUnit unit);

/* "dc", "ac", "ac+dc", "diode", "continuity"; NULL for RW_METER_MODE_NONE. Static strings. */
const char *rw_meter_mode_to_id (RwMeterMode mode);

/* What a value measures on a rail: volts are dc, or ripple when the meter says AC; ohms,
 * amperes and °C are themselves. FALSE, and *kind untouched, for what no rail has (farads,
 * hertz, a diode test, AC+DC, alternating current) and for a value without a unit. */
gboolean rw_meter_value_get_kind (const RwMeterValue *self, RwKind *kind);

G_END_DECLS
