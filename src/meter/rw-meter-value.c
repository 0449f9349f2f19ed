/* rw-meter-value.c: one value as a meter sent it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-value.h"

static const char *const unit_ids[RW_N_METER_UNITS] = { NULL, "V", "A", "ohm", "F", "Hz", "C" };
static const char *const mode_ids[RW_N_METER_MODES]
    = { NULL, "dc", "ac", "ac+dc", "diode", "continuity" };

const char *
rw_meter_unit_to_id (RwMeterUnit unit)
{
  g_return_val_if_fail (unit < RW_N_METER_UNITS, NULL);
  return unit_ids[unit];
}

const char *
rw_meter_mode_to_id (RwMeterMode mode)
{
  g_return_val_if_fail (mode < RW_N_METER_MODES, NULL);
  return mode_ids[mode];
}

static gboolean
volts_kind (RwMeterMode mode,
            RwKind     *kind)
{
  if (mode == RW_METER_MODE_NONE || mode == RW_METER_MODE_DC)
    *kind = RW_KIND_DC;
  else if (mode == RW_METER_MODE_AC)
    *kind = RW_KIND_RIPPLE;
  else
    return FALSE;
  return TRUE;
}

gboolean
rw_meter_value_get_kind (const RwMeterValue *self,
                         RwKind             *kind)
{
  switch (self->unit)
    {
    case RW_METER_UNIT_VOLT:
      return volts_kind (self->mode, kind);
    case RW_METER_UNIT_AMPERE:
      if (self->mode != RW_METER_MODE_NONE && self->mode != RW_METER_MODE_DC)
        return FALSE;
      *kind = RW_KIND_AMPS;
      return TRUE;
    case RW_METER_UNIT_OHM:
      *kind = RW_KIND_OHMS;
      return TRUE;
    case RW_METER_UNIT_CELSIUS:
      *kind = RW_KIND_CELSIUS;
      return TRUE;
    case RW_METER_UNIT_NONE:
    case RW_METER_UNIT_FARAD:
    case RW_METER_UNIT_HERTZ:
    case RW_N_METER_UNITS:
    default:
      return FALSE;
    }
}
