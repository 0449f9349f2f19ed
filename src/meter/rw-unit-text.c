/* rw-unit-text.c: units as meters write them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-unit-text.h"

#include <string.h>

typedef struct
{
  const char *text;
  int         power;
} Prefix;

typedef struct
{
  const char *text;
  RwMeterUnit unit;
  gboolean    takes_prefix;
} UnitName;

/* --- SCPI suffixes ------------------------------------------------------------------- */

/* Two letters first, so that MA is tried before M. */
static const Prefix suffix_prefixes[] = {
  { "EX", 18 }, { "PE", 15 }, { "MA", 6 }, { "T", 12 }, { "G", 9 }, { "K", 3 }, { "M", -3 },
  { "U", -6 }, { "N", -9 }, { "P", -12 }, { "F", -15 }, { "A", -18 }, { "", 0 },
};

static const char *const suffix_units[] = { "V", "A", "OHM", "F", "HZ", "S", "" };

static gboolean
equals (const char *word,
        gsize       n,
        const char *text)
{
  return strlen (text) == n && g_ascii_strncasecmp (word, text, n) == 0;
}

/* The unit that is all of word, or NULL. */
static const char *
find_suffix_unit (const char *word,
                  gsize       n)
{
  for (guint i = 0; i < G_N_ELEMENTS (suffix_units); i++)
    if (equals (word, n, suffix_units[i]))
      return suffix_units[i];
  return NULL;
}

/* A multiplier and a unit, or a multiplier alone. */
static gboolean
split_multiplier (const char  *suffix,
                  gsize        n,
                  int         *power,
                  const char **unit)
{
  for (guint i = 0; i < G_N_ELEMENTS (suffix_prefixes); i++)
    {
      const gsize length = strlen (suffix_prefixes[i].text);
      const char *found;

      if (length > n || g_ascii_strncasecmp (suffix, suffix_prefixes[i].text, length) != 0)
        continue;
      found = find_suffix_unit (suffix + length, n - length);
      if (found == NULL)
        continue;
      *power = suffix_prefixes[i].power;
      *unit = found;
      return TRUE;
    }
  return FALSE;
}

gboolean
rw_unit_text_split_suffix (const char  *suffix,
                           gsize        n,
                           int         *power,
                           const char **unit)
{
  const char *plain = find_suffix_unit (suffix, n);

  /* The unit before the multiplier: A and F alone are the ampere and the farad. */
  if (plain != NULL)
    {
      *power = 0;
      *unit = plain;
      return TRUE;
    }
  /* Milliampere, not mega of nothing. */
  if (equals (suffix, n, "MA"))
    {
      *power = -3;
      *unit = "A";
      return TRUE;
    }
  if (!split_multiplier (suffix, n, power, unit))
    return FALSE;
  if (equals (suffix, n, "MHZ") || equals (suffix, n, "MOHM"))
    *power = 6;
  return TRUE;
}

/* --- meter text ---------------------------------------------------------------------- */

static const Prefix si_prefixes[] = {
  { "", 0 }, { "p", -12 }, { "n", -9 }, { "u", -6 },
  { "\u00B5", -6 }, /* micro sign */
  { "\u03BC", -6 }, /* Greek small mu */
  { "m", -3 }, { "k", 3 }, { "K", 3 }, { "M", 6 }, { "G", 9 },
};

static const UnitName si_units[] = {
  { "V", RW_METER_UNIT_VOLT, TRUE },
  { "v", RW_METER_UNIT_VOLT, TRUE },
  { "Volt", RW_METER_UNIT_VOLT, FALSE },
  { "Volts", RW_METER_UNIT_VOLT, FALSE },
  { "volt", RW_METER_UNIT_VOLT, FALSE },
  { "volts", RW_METER_UNIT_VOLT, FALSE },
  { "A", RW_METER_UNIT_AMPERE, TRUE },
  { "Amp", RW_METER_UNIT_AMPERE, FALSE },
  { "Amps", RW_METER_UNIT_AMPERE, FALSE },
  { "amps", RW_METER_UNIT_AMPERE, FALSE },
  { "\u03A9", RW_METER_UNIT_OHM, TRUE }, /* Greek capital omega */
  { "\u2126", RW_METER_UNIT_OHM, TRUE }, /* ohm sign */
  { "ohm", RW_METER_UNIT_OHM, TRUE },
  { "ohms", RW_METER_UNIT_OHM, TRUE },
  { "Ohm", RW_METER_UNIT_OHM, TRUE },
  { "Ohms", RW_METER_UNIT_OHM, TRUE },
  { "OHM", RW_METER_UNIT_OHM, TRUE },
  { "OHMS", RW_METER_UNIT_OHM, TRUE },
  { "F", RW_METER_UNIT_FARAD, TRUE },
  { "Hz", RW_METER_UNIT_HERTZ, TRUE },
  { "hz", RW_METER_UNIT_HERTZ, TRUE },
  { "HZ", RW_METER_UNIT_HERTZ, TRUE },
  { "C", RW_METER_UNIT_CELSIUS, FALSE },
  { "\u00B0C", RW_METER_UNIT_CELSIUS, FALSE },
  { "\u00BAC", RW_METER_UNIT_CELSIUS, FALSE }, /* the ordinal mark that some fonts of meters hold */
  { "\u2103", RW_METER_UNIT_CELSIUS, FALSE },
  { "degC", RW_METER_UNIT_CELSIUS, FALSE },
  { "DEGC", RW_METER_UNIT_CELSIUS, FALSE },
  { "Celsius", RW_METER_UNIT_CELSIUS, FALSE },
};

static const char *const fahrenheit_names[] = { "\u00B0F", "\u00BAF", "\u2109", "degF", "DEGF" };

static const UnitName suffix_meanings[] = {
  { "V", RW_METER_UNIT_VOLT, TRUE },
  { "A", RW_METER_UNIT_AMPERE, TRUE },
  { "OHM", RW_METER_UNIT_OHM, TRUE },
  { "F", RW_METER_UNIT_FARAD, TRUE },
  { "HZ", RW_METER_UNIT_HERTZ, TRUE },
};

static gboolean
starts_with (const char *word,
             gsize       n,
             const char *text)
{
  const gsize length = strlen (text);

  return length <= n && memcmp (word, text, length) == 0;
}

static gboolean
is_exactly (const char *word,
            gsize       n,
            const char *text)
{
  return strlen (text) == n && memcmp (word, text, n) == 0;
}

/* TRUE when prefix and unit may stand together and mean one thing only. */
static gboolean
is_clear (const Prefix   *prefix,
          const UnitName *name)
{
  if (*prefix->text == '\0')
    return TRUE;
  if (!name->takes_prefix)
    return FALSE;
  if (prefix->power == -3
      && (g_str_has_prefix (name->text, "ohm") || g_str_equal (name->text, "hz")))
    return FALSE;
  return TRUE;
}

static gboolean
read_si (const char *word,
         gsize       n,
         RwUnitText *out)
{
  for (guint p = 0; p < G_N_ELEMENTS (si_prefixes); p++)
    {
      const Prefix *prefix = &si_prefixes[p];
      const gsize length = strlen (prefix->text);

      if (!starts_with (word, n, prefix->text))
        continue;
      for (guint u = 0; u < G_N_ELEMENTS (si_units); u++)
        {
          const UnitName *name = &si_units[u];

          if (!is_exactly (word + length, n - length, name->text) || !is_clear (prefix, name))
            continue;
          /* M is milli except before ohm and hertz, as in SCPI: no rail has megavolts. */
          const gboolean mega
              = name->unit == RW_METER_UNIT_OHM || name->unit == RW_METER_UNIT_HERTZ;

          out->unit = name->unit;
          out->power = prefix->power == 6 && !mega ? -3 : prefix->power;
          return TRUE;
        }
    }
  return FALSE;
}

static gboolean
read_fahrenheit (const char *word,
                 gsize       n,
                 RwUnitText *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (fahrenheit_names); i++)
    if (is_exactly (word, n, fahrenheit_names[i]))
      {
        out->unit = RW_METER_UNIT_CELSIUS;
        out->fahrenheit = TRUE;
        return TRUE;
      }
  return FALSE;
}

/* All capitals: the rules of SCPI suffixes, without the multipliers that no meter shows (AV
 * is a word for "average" on a display, not the attovolt). */
static gboolean
read_suffix (const char *word,
             gsize       n,
             RwUnitText *out)
{
  const char *unit;

  for (gsize i = 0; i < n; i++)
    if (!g_ascii_isupper (word[i]))
      return FALSE;
  if (!rw_unit_text_split_suffix (word, n, &out->power, &unit) || out->power < -12
      || out->power > 9)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (suffix_meanings); i++)
    if (g_str_equal (unit, suffix_meanings[i].text))
      {
        out->unit = suffix_meanings[i].unit;
        return TRUE;
      }
  return FALSE;
}

static gboolean
read_plain (const char *word,
            gsize       n,
            RwUnitText *out)
{
  *out = (RwUnitText){ 0 };
  return read_si (word, n, out) || read_fahrenheit (word, n, out) || read_suffix (word, n, out);
}

static RwMeterMode
current_mode (const char *two)
{
  if (g_ascii_strncasecmp (two, "DC", 2) == 0)
    return RW_METER_MODE_DC;
  if (g_ascii_strncasecmp (two, "AC", 2) == 0)
    return RW_METER_MODE_AC;
  return RW_METER_MODE_NONE;
}

gboolean
rw_unit_text_read (const char *word,
                   gsize       n,
                   RwUnitText *out)
{
  if (read_plain (word, n, out))
    return TRUE;
  if (n < 3)
    return FALSE;

  const RwMeterMode behind = current_mode (word + n - 2);
  const RwMeterMode before = current_mode (word);

  if (behind != RW_METER_MODE_NONE && read_plain (word, n - 2, out))
    out->mode = behind;
  else if (before != RW_METER_MODE_NONE && read_plain (word + 2, n - 2, out))
    out->mode = before;
  else
    return FALSE;
  return TRUE;
}
