/* rw-log-value.c: one value of a meter, as a line for people or for programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-log-value.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json-out.h"
#include "rw-quantity.h"

/* --- a value as text ------------------------------------------------------------------------ */

typedef struct
{
  double      size;
  const char *symbol;
} Prefix;

static const Prefix prefixes[] = { { 1e6, "M" }, { 1e3, "k" }, { 1, "" }, { 1e-3, "m" },
                                   { 1e-6, "µ" }, { 1e-9, "n" }, { 1e-12, "p" } };

static const char *const symbols[RW_N_METER_UNITS] = { "", "V", "A", "Ω", "F", "Hz", "°C" };

/* The largest prefix that leaves at least 1 before the point; none for °C, and for nothing. */
static const Prefix *
pick_prefix (const RwMeterValue *value)
{
  static const Prefix none = { 1, "" };

  if (value->unit == RW_METER_UNIT_CELSIUS || value->unit == RW_METER_UNIT_NONE
      || value->value == 0)
    return &none;
  for (guint i = 0; i < G_N_ELEMENTS (prefixes); i++)
    if (fabs (value->value) >= prefixes[i].size * (1 - 1e-12))
      return &prefixes[i];
  return &none;
}

void
rw_log_value_append_text (const RwMeterValue *value,
                          GString            *out)
{
  const char *mode = rw_meter_mode_to_id (value->mode);

  if (value->over)
    g_string_append_printf (out, "OL %s", symbols[value->unit]);
  else
    {
      const Prefix *prefix = pick_prefix (value);
      const int decimals = rw_quantity_decimals (value->step / prefix->size);
      g_autofree char *number = rw_quantity_format_number (value->value / prefix->size, decimals);

      g_string_append_printf (out, "%s %s%s", number, prefix->symbol, symbols[value->unit]);
    }
  if (mode != NULL)
    g_string_append_printf (out, " %s", mode);
  if (value->hold)
    g_string_append_printf (out, ", %s", _ ("hold"));
  if (value->low_battery)
    g_string_append_printf (out, ", %s", _ ("battery low"));
  g_string_append_c (out, '\n');
}

/* --- a value as JSON ------------------------------------------------------------------------ */

void
rw_log_value_append_json (const RwMeterValue *value,
                          GString            *out)
{
  rw_json_out_open (out, '{');
  rw_json_out_number (out, "value", value->over ? (double) NAN : value->value);
  rw_json_out_string (out, "unit", rw_meter_unit_to_id (value->unit));
  rw_json_out_string (out, "mode", rw_meter_mode_to_id (value->mode));
  rw_json_out_number (out, "step", value->step);
  rw_json_out_boolean (out, "over", value->over);
  rw_json_out_boolean (out, "low_battery", value->low_battery);
  rw_json_out_boolean (out, "hold", value->hold);
  rw_json_out_close (out, '}');
  g_string_append_c (out, '\n');
}
