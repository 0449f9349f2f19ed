/* rw-practice-meter-lines.c: a practice meter's values as lines of text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-meter-private.h"

/* Decimals of a decimal step: 0.001 → 3. */
static int
decimals_of (double step)
{
  int decimals = 0;

  for (; step < 0.5; step *= 10)
    decimals++;
  return decimals;
}

/* The unit that the display shows, and how many of ours it is. */
static const char *
unit_of (const RwPracticeShown *shown,
         double                *size)
{
  *size = 1;
  if (shown->kind == RW_KIND_AMPS)
    return "A DC";
  if (shown->kind == RW_KIND_OHMS)
    {
      *size = shown->range < 1 ? 1 : shown->range < 4 ? 1e3 : 1e6;
      return shown->range < 1 ? "Ohm" : shown->range < 4 ? "kOhm" : "MOhm";
    }
  if (!shown->milli)
    return shown->ac ? "V AC" : "V DC";
  *size = 0.001;
  return shown->ac ? "mV AC" : "mV DC";
}

static void
append_line (GString               *out,
             const RwPracticeShown *shown)
{
  double size;
  const char *unit = unit_of (shown, &size);
    const double scale = shown->milli ? 1000 : 1 / size;
  char format[16], number[G_ASCII_DTOSTR_BUF_SIZE] = "OL";

  if (!shown->over)
    {
      g_snprintf (format, sizeof format, "%%.%df", decimals_of (shown->step * scale));
      g_ascii_formatd (number, sizeof number, format, shown->value * scale);
    }
  g_string_append_printf (out, "%s %s\r\n", number, unit);
}

GBytes *
rw_practice_meter_take_bytes (RwPracticeMeter *self)
{
  g_autoptr (GArray) shown = rw_practice_meter_take_shown (self);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < shown->len; i++)
    append_line (out, &g_array_index (shown, RwPracticeShown, i));
  return g_string_free_to_bytes (out);
}
