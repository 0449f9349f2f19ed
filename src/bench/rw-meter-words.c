/* rw-meter-words.c: meters in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-decoder.h"
#include "rw-quantity.h"

char *
rw_meter_words_figure (double value)
{
  int decimals = 0;

  for (double scale = 1; decimals < 3 && fabs (value * scale - round (value * scale)) > 1e-6; scale *= 10)
    decimals++;
  return rw_quantity_format_number (value, decimals);
}

char *
rw_meter_words_sure (double share)
{
  static const double most = 0.99;
  g_autofree char *chance = rw_quantity_format_chance (MIN (share, most));

  /* Translators: per cent. */
  return g_strdup_printf (share > most ? _ ("more than %s sure") : _ ("%s sure"), chance);
}

gboolean
rw_meter_words_read_figure (const char *typed,
                            double     *out,
                            GError    **error)
{
  g_autofree char *text = g_strstrip (g_strdup (typed));
  RwQuantityTyped number;

  if (g_str_has_suffix (text, "%"))
    text[strlen (text) - 1] = '\0';
  if (rw_quantity_parse (g_strstrip (text), RW_KIND_DC, &number, NULL) && !number.over && !number.has_unit
      && number.value >= 0)
    {
      *out = number.value;
      return TRUE;
    }
  g_set_error (error, RW_QUANTITY_ERROR, RW_QUANTITY_ERROR_NUMBER,
               _ ("“%s” is no such figure. Write a number from 0 up, as the meter's manual gives it, such as 0.5."),
               typed);
  return FALSE;
}

char *
rw_meter_words_facts (const RwMeterFacts *facts)
{
  g_autofree char *percent = rw_meter_words_figure (facts->percent);
  g_autofree char *counts = rw_meter_words_figure (facts->counts);
  /* Translators: per cent of the value, steps of the last digit. */
  g_autofree char *text = facts->percent > 0 || facts->counts > 0
                              ? g_strdup_printf (_ ("±(%s %% + %s)"), percent, counts)
                              : g_strdup (_ ("accuracy not known"));

  switch (facts->ac)
    {
    case RW_METER_AC_AVERAGING:
      /* Translators: accuracy, and how AC volts are worked out. */
      return g_strdup_printf (_ ("%s, averaging"), text);
    case RW_METER_AC_TRUE_RMS:
      return g_strdup_printf (_ ("%s, true RMS"), text);
    case RW_METER_AC_UNKNOWN:
    default:
      return g_steal_pointer (&text);
    }
}

static const char *
unit_symbol (RwMeterUnit unit)
{
  static const char *const symbols[RW_N_METER_UNITS] = { "", "V", "A", "Ω", "F", "Hz", "°C" };

  return unit < RW_N_METER_UNITS ? symbols[unit] : "";
}

static const char *
mode_words (RwMeterMode mode)
{
  switch (mode)
    {
    case RW_METER_MODE_DC:
      return _ ("DC");
    case RW_METER_MODE_AC:
      return _ ("AC");
    case RW_METER_MODE_AC_DC:
      return _ ("AC and DC");
    case RW_METER_MODE_DIODE:
      return _ ("diode test");
    case RW_METER_MODE_CONTINUITY:
      return _ ("continuity");
    case RW_METER_MODE_NONE:
    case RW_N_METER_MODES:
    default:
      return "";
    }
}

static void
append_flags (GString            *text,
              const RwMeterValue *value)
{
  if (value->low_battery)
    g_string_append_printf (text, ", %s", _ ("battery low"));
  if (value->hold)
    g_string_append_printf (text, ", %s", _ ("held: no new measurement"));
}

char *
rw_meter_words_value (const RwMeterValue *value,
                      gboolean            signless)
{
  const int decimals = rw_quantity_decimals (value->step);
  const char *mode = mode_words (value->mode);
  const char *unit = unit_symbol (value->unit);
  GString *text = g_string_new (NULL);

  if (value->over)
    g_string_append (text, _ ("overload"));
  else
    {
      g_autofree char *number = rw_quantity_format_number (signless ? fabs (value->value) : value->value, decimals);

      g_string_append_printf (text, "%s\u202f%s", number, unit);
    }
  if (*mode != '\0')
    g_string_append_printf (text, value->over ? ", %s" : " %s", mode);
  if (!value->over && value->step > 0)
    {
      g_autofree char *step = rw_quantity_format_number (value->step, decimals);

      /* Translators: value of the meter's last digit, and its unit. */
      g_string_append_printf (text, _ (", step %s\u202f%s"), step, unit);
    }
  append_flags (text, value);
  return g_string_free (text, FALSE);
}

char *
rw_meter_words_where (const RwKnownMeter *meter)
{
  if (meter->address == NULL)
    return g_strdup (_ ("by eye"));

  g_autofree char *place = rw_meter_address_to_words (meter->address);

  return g_strdup_printf ("%s · %s", place, meter->format != NULL ? meter->format : "?");
}

char *
rw_meter_words_stay (const RwRail *rail,
                     RwPlace       place)
{
  if (rail == NULL)
    return g_strdup (_ ("moves about"));
  if (place == RW_PLACE_TERMINALS)
    /* Translators: rail. */
    return g_strdup_printf (_ ("stays on %s at the terminals"), rail->label);
  return g_strdup_printf (_ ("stays on %s at the board"), rail->label);
}
