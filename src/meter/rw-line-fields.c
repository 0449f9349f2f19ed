/* rw-line-fields.c: what has been found in a line of text so far.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-line-fields.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

typedef struct
{
  const char *word;
  gsize       flag; /* offset of the gboolean in RwLineFields that it sets */
} FlagWord;

#define FLAG(name) offsetof (RwLineFields, name)

static const FlagWord mode_words[] = {
  { "DC", FLAG (dc) }, { "AC", FLAG (ac) },
  { "ACDC", FLAG (dc) }, { "ACDC", FLAG (ac) },
  { "DIODE", FLAG (diode) }, { "DIOD", FLAG (diode) }, { "DIO", FLAG (diode) },
  { "CONT", FLAG (continuity) }, { "CONTINUITY", FLAG (continuity) }, { "BEEP", FLAG (continuity) },
};

/* A display lights its battery sign only when the battery is low. */
static const FlagWord flag_words[] = {
  { "HOLD", FLAG (hold) },          { "BAT", FLAG (low_battery) },
  { "BATT", FLAG (low_battery) },   { "BATTERY", FLAG (low_battery) },
  { "LOBAT", FLAG (low_battery) },  { "LOBATT", FLAG (low_battery) },
  { "LOWBAT", FLAG (low_battery) }, { "LOWBATT", FLAG (low_battery) },
};

/* A multiplier that stands alone belongs to a unit we would read too large or too small. */
static const char *const lone_multipliers[] = {
  "p",    "n",    "u",     "\u00B5", "\u03BC", "m",    "k",    "K", "M", "G",
  "pico", "nano", "micro", "milli",  "kilo",   "mega", "giga", "E", "e",
};

/* Sets every flag of the table that the word names; FALSE when it names none. */
static gboolean
take_flags (RwLineFields   *self,
            const FlagWord *table,
            guint           length,
            const char     *word,
            gsize           n)
{
  gboolean found = FALSE;

  for (guint i = 0; i < length; i++)
    if (strlen (table[i].word) == n && g_ascii_strncasecmp (word, table[i].word, n) == 0)
      {
        *(gboolean *) ((char *) self + table[i].flag) = TRUE;
        found = TRUE;
      }
  return found;
}

gboolean
rw_line_fields_take_mode (RwLineFields *self,
                          const char   *word,
                          gsize         n)
{
  return take_flags (self, mode_words, G_N_ELEMENTS (mode_words), word, n);
}

/* The meter itself says that a number beside these is none. */
static const char *const no_numbers[] = { "nan", "inf", "infinity" };

static gboolean
spoils_the_line (const char *word,
                 gsize       n)
{
  for (guint i = 0; i < G_N_ELEMENTS (lone_multipliers); i++)
    if (strlen (lone_multipliers[i]) == n && memcmp (word, lone_multipliers[i], n) == 0)
      return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (no_numbers); i++)
    if (strlen (no_numbers[i]) == n && g_ascii_strncasecmp (word, no_numbers[i], n) == 0)
      return TRUE;
  return FALSE;
}

static RwLineWord
take_unit (RwLineFields     *self,
           const RwUnitText *unit)
{
  const RwUnitText *had = &self->unit;

  if (self->has_unit
      && (had->unit != unit->unit || had->power != unit->power
          || had->fahrenheit != unit->fahrenheit))
    return RW_LINE_WORD_AGAINST;
  self->unit = *unit;
  self->has_unit = TRUE;
  self->dc |= unit->mode == RW_METER_MODE_DC;
  self->ac |= unit->mode == RW_METER_MODE_AC;
  return RW_LINE_WORD_TAKEN;
}

RwLineWord
rw_line_fields_take_word (RwLineFields *self,
                          const char   *word,
                          gsize         n)
{
  RwUnitText unit;

  if (rw_line_fields_take_mode (self, word, n)
      || take_flags (self, flag_words, G_N_ELEMENTS (flag_words), word, n))
    return RW_LINE_WORD_TAKEN;
  if (rw_unit_text_read (word, n, &unit))
    return take_unit (self, &unit);
  return spoils_the_line (word, n) ? RW_LINE_WORD_AGAINST : RW_LINE_WORD_UNKNOWN;
}

static RwMeterMode
get_mode (const RwLineFields *self,
          RwMeterMode         assumed)
{
  if (self->diode)
    return RW_METER_MODE_DIODE;
  if (self->continuity)
    return RW_METER_MODE_CONTINUITY;
  if (self->dc && self->ac)
    return RW_METER_MODE_AC_DC;
  if (self->dc)
    return RW_METER_MODE_DC;
  return self->ac ? RW_METER_MODE_AC : assumed;
}

/* °C = (°F − 32)/1.8, exactly by definition. */
static void
make_celsius (RwMeterValue *value)
{
  value->value = (value->value - 32) / 1.8;
  value->step /= 1.8;
}

gboolean
rw_line_fields_get_value (const RwLineFields *self,
                          RwMeterUnit         assumed_unit,
                          RwMeterMode         assumed_mode,
                          RwMeterValue       *value)
{
  const RwMeterUnit unit = self->has_unit ? self->unit.unit : assumed_unit;
  RwNumber number;

  *value = (RwMeterValue){ .value = NAN,
                           .unit = unit,
                           .mode = get_mode (self, assumed_mode),
                           .over = self->over,
                           .low_battery = self->low_battery,
                           .hold = self->hold };
  if (unit == RW_METER_UNIT_NONE || self->has_number == self->over)
    return FALSE;
  if (self->over)
    return TRUE;

  number = self->number;
  number.negative = number.negative || (self->signed_apart && self->negative);
  if (rw_number_get (&number, self->has_unit ? self->unit.power : 0, &value->value,
                     &value->step)
      != RW_NUMBER_GOOD)
    return FALSE;
  if (rw_number_is_sentinel (value->value))
    *value = (RwMeterValue){ .value = NAN, .unit = unit, .mode = value->mode, .over = TRUE,
                             .low_battery = self->low_battery, .hold = self->hold };
  else if (self->has_unit && self->unit.fahrenheit)
    make_celsius (value);
  return TRUE;
}
