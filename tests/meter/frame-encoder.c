/* frame-encoder.c: for tests: a meter that sends what its display shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "frame-encoder.h"

#include <math.h>
#include <string.h>

/* --- what each format can show ------------------------------------------------------- */

/* A range: the number of its display, the unit with its prefix, the mode, and how the format
 * says so. */
typedef struct
{
  const char *full; /* all digits and the point */
  const char *unit;
  const char *mode;
  const char *code;
} Range;

/* code: the signs that are lit. */
static const Range segments_ranges[] = {
  { "4.000", "V", "dc", "dc V" },        { "40.00", "V", "dc", "dc V" },
  { "400.0", "V", "ac", "ac V" },        { "400.0", "mV", "dc", "dc milli V" },
  { "4.000", "V", "ac+dc", "ac dc V" },  { "1.999", "V", "diode", "diode V" },
  { "400.0", "uA", "dc", "dc micro A" }, { "40.00", "mA", "ac", "ac milli A" },
  { "10.00", "A", "dc", "dc A" },        { "400.0", "ohm", "none", "ohm" },
  { "4.000", "kohm", "none", "kilo ohm" }, { "40.00", "Mohm", "none", "mega ohm" },
  { "400.0", "ohm", "continuity", "beep ohm" }, { "40.00", "nF", "none", "nano F" },
  { "40.00", "uF", "none", "micro F" },  { "4.000", "kHz", "none", "kilo Hz" },
  { "4000", "C", "none", "degC" },
};

/* code: function and range. */
static const Range digits_14_ranges[] = {
  { "2.2000", "V", "dc", ";0" },    { "22.000", "V", "dc", ";1" },
  { "220.00", "V", "ac", ";2" },    { "2200.0", "V", "ac+dc", ";3" },
  { "220.00", "mV", "dc", ";4" },   { "220.00", "uA", "dc", "=0" },
  { "2200.0", "uA", "ac", "=1" },   { "22.000", "mA", "dc", "?0" },
  { "220.00", "mA", "dc", "?1" },   { "22.000", "A", "dc", "00" },
  { "220.00", "ohm", "none", "30" }, { "2.2000", "kohm", "none", "31" },
  { "22.000", "kohm", "none", "32" }, { "220.00", "kohm", "none", "33" },
  { "2.2000", "Mohm", "none", "34" }, { "22.000", "Mohm", "none", "35" },
  { "220.00", "Mohm", "none", "36" }, { "220.00", "ohm", "continuity", "50" },
  { "2.2000", "V", "diode", "10" },
};

static const Range digits_11_ranges[] = {
  { "6.000", "V", "dc", ";0" }, { "60.00", "V", "dc", ";1" }, { "600.0", "V", "ac", ";2" },
};

static const Range text_14_ranges[] = {
  { "1.999", "V", "dc", "DC" },    { "19.99", "V", "dc", "DC" },   { "199.9", "mV", "dc", "DC" },
  { "750.0", "V", "ac", "AC" },    { "19.99", "mA", "dc", "DC" },  { "199.9", "uA", "ac", "AC" },
  { "10.00", "A", "dc", "DC" },    { "199.9", "ohm", "none", "OH" },
  { "19.99", "kohm", "none", "OH" }, { "1.999", "Mohm", "none", "OH" },
  { "1999", "mV", "diode", "DI" }, { "19.99", "nF", "none", "CA" },
  { "1.999", "uF", "none", "CA" }, { "19.99", "kHz", "none", "FR" },
  { "199.9", "Hz", "none", "FR" }, { "1999", "C", "none", "TE" },
};

static const Range text_16_ranges[] = {
  { "199.9", "mV", "dc", "18" },   { "199.99", "V", "dc", "34" }, { "199.9", "mV", "ac", "49" },
  { "750.0", "V", "ac", "50" },    { "199.9", "uA", "dc", "35" }, { "19.999", "mA", "dc", "37" },
  { "10.00", "A", "dc", "36" },    { "199.9", "uA", "ac", "51" }, { "19.99", "mA", "ac", "53" },
  { "10.00", "A", "ac", "52" },    { "199.9", "ohm", "none", "38" },
  { "19.999", "kohm", "none", "39" }, { "19.99", "Mohm", "none", "40" },
  { "199.9", "Hz", "none", "31" }, { "19.99", "kHz", "none", "33" },
  { "1.999", "MHz", "none", "67" }, { "1999", "pF", "none", "A4" },
  { "19.99", "nF", "none", "43" }, { "1.999", "uF", "none", "44" },
  { "199.9", "C", "none", "01" },  { "1.999", "V", "diode", "46" },
};

static const struct
{
  const char  *format_id;
  const Range *ranges;
  guint        n_ranges;
  gboolean     has_over;
  gboolean     has_flags;
} formats[] = {
  { "segments-14", segments_ranges, G_N_ELEMENTS (segments_ranges), TRUE, TRUE },
  { "digits-14", digits_14_ranges, G_N_ELEMENTS (digits_14_ranges), TRUE, TRUE },
  { "digits-11a", digits_11_ranges, G_N_ELEMENTS (digits_11_ranges), TRUE, TRUE },
  { "digits-11b", digits_11_ranges, G_N_ELEMENTS (digits_11_ranges), TRUE, TRUE },
  { "text-14", text_14_ranges, G_N_ELEMENTS (text_14_ranges), TRUE, FALSE },
  { "text-16", text_16_ranges, G_N_ELEMENTS (text_16_ranges), FALSE, FALSE },
};

static guint
find_format (const char *format_id)
{
  guint i = 0;

  while (!g_str_equal (formats[i].format_id, format_id))
    i++;
  return i;
}

static guint
count_decimals (const char *full)
{
  const char *point = strchr (full, '.');

  return point != NULL ? (guint) strlen (point + 1) : 0;
}

static guint
count_digits (const char *full)
{
  return (guint) strlen (full) - (strchr (full, '.') != NULL);
}

static const Range *
find_range (guint            format,
            const FrameShow *show)
{
  for (guint i = 0; i < formats[format].n_ranges; i++)
    {
      const Range *range = &formats[format].ranges[i];

      if (g_str_equal (range->unit, show->unit) && g_str_equal (range->mode, show->mode)
          && count_decimals (range->full) == show->decimals)
        return range;
    }
  return NULL;
}

/* --- segments ------------------------------------------------------------------------ */

/* What each bit of each byte lights, bit 3 first. */
static const char *const segment_bits[14][4] = {
  { "ac", "dc", "auto", "link" },      { "minus", "1e", "1f", "1a" },
  { "1d", "1c", "1g", "1b" },          { "point1", "2e", "2f", "2a" },
  { "2d", "2c", "2g", "2b" },          { "point2", "3e", "3f", "3a" },
  { "3d", "3c", "3g", "3b" },          { "point3", "4e", "4f", "4a" },
  { "4d", "4c", "4g", "4b" },          { "micro", "nano", "kilo", "diode" },
  { "milli", "percent", "mega", "beep" }, { "F", "ohm", "relative", "hold" },
  { "A", "V", "Hz", "battery" },       { "x", "degC", "y", "z" },
};

static const char *
get_segments (char glyph)
{
  static const char *const digits[] = { "abcdef", "bc",     "abdeg", "abcdg",   "bcfg",
                                        "acdfg",  "acdefg", "abc",   "abcdefg", "abcdfg" };

  if (glyph == 'L')
    return "def";
  return glyph == ' ' ? "" : digits[glyph - '0'];
}

static void
light (guint8     *frame,
       const char *name)
{
  for (guint i = 0; i < 14; i++)
    for (guint k = 0; k < 4; k++)
      if (g_str_equal (segment_bits[i][k], name))
        {
          frame[i] |= (guint8) (8 >> k);
          return;
        }
  g_assert_not_reached ();
}

static void
light_glyphs (guint8     *frame,
              const char *text)
{
  for (guint i = 0; i < 4; i++)
    for (const char *segment = get_segments (text[i]); *segment != '\0'; segment++)
      {
        const char name[] = { (char) ('1' + i), *segment, '\0' };

        light (frame, name);
      }
}

static void
encode_segments (const FrameShow *show,
                 const Range     *range,
                 GByteArray      *out)
{
  g_auto (GStrv) signs = g_strsplit (range->code, " ", -1);
  guint8 frame[14];
  char text[16];

  for (guint i = 0; i < 14; i++)
    frame[i] = (guint8) ((i + 1) << 4);
  g_snprintf (text, sizeof text, show->over ? " 0L " : show->decimals == 0 ? "%4u" : "%04u",
              show->counts);
  light_glyphs (frame, text);
  if (show->decimals > 0)
    {
      g_snprintf (text, sizeof text, "point%u", 4 - show->decimals);
      light (frame, text);
    }
  for (guint i = 0; signs[i] != NULL; i++)
    light (frame, signs[i]);
  if (show->negative)
    light (frame, "minus");
  if (show->low_battery)
    light (frame, "battery");
  if (show->hold)
    light (frame, "hold");
  light (frame, "auto");
  light (frame, "link");
  g_byte_array_append (out, frame, 14);
}

/* --- digits -------------------------------------------------------------------------- */

static char
flags (gboolean b3,
       gboolean b2,
       gboolean b1,
       gboolean b0)
{
  return (char) (0x30 + (b3 ? 8 : 0) + (b2 ? 4 : 0) + (b1 ? 2 : 0) + (b0 ? 1 : 0));
}

static void
encode_digits (const char      *format_id,
               const FrameShow *show,
               const Range     *range,
               GByteArray      *out)
{
  const gboolean dc = strstr (range->mode, "dc") != NULL;
  const gboolean ac = strstr (range->mode, "ac") != NULL;
  const char status_a = flags (FALSE, show->negative, show->low_battery, show->over);
  const char status_b = flags (show->negative, show->low_battery, FALSE, show->over);
  char text[32];

  if (g_str_equal (format_id, "digits-14"))
    g_snprintf (text, sizeof text, "%c%05u%c%c%c%c%c%c\r\n", range->code[1], show->counts,
                range->code[0], status_a, '0', '0', flags (dc, ac, TRUE, FALSE),
                flags (FALSE, FALSE, show->hold, FALSE));
  else if (g_str_equal (format_id, "digits-11a"))
    g_snprintf (text, sizeof text, "%c%04u%c%c%c%c\r\n", range->code[1], show->counts,
                range->code[0], status_a, flags (show->hold, FALSE, FALSE, FALSE),
                flags (dc, ac, TRUE, FALSE));
  else
    g_snprintf (text, sizeof text, "%c%04u%c%c%c%c\r\n", range->code[1], show->counts,
                range->code[0], status_b, flags (show->hold, FALSE, FALSE, FALSE),
                flags (dc, TRUE, FALSE, FALSE));
  g_byte_array_append (out, (const guint8 *) text, (guint) strlen (text));
}

/* --- text ---------------------------------------------------------------------------- */

/* "12.06": the digits of the range with their point. (transfer full) */
static char *
format_number (const FrameShow *show)
{
  const double size = pow (10, show->decimals);
  const guint whole = (guint) (show->counts / size);

  if (show->decimals == 0)
    return g_strdup_printf ("%u", show->counts);
  return g_strdup_printf ("%u.%0*u", whole, (int) show->decimals,
                          show->counts - whole * (guint) size);
}

static void
encode_text_14 (const FrameShow *show,
                const Range     *range,
                GByteArray      *out)
{
  g_autofree char *number = show->over ? g_strdup ("O.L") : format_number (show);
  g_autofree char *value = g_strconcat (show->negative ? "-" : "", number, NULL);
  g_autofree char *text = g_strdup_printf ("%s%7s%4s\r", range->code, value, show->unit);

  g_byte_array_append (out, (const guint8 *) text, (guint) strlen (text));
}

static void
encode_text_16 (const FrameShow *show,
                const Range     *range,
                GByteArray      *out)
{
  g_autofree char *text = g_strdup_printf ("\002" "41%s%d%u%08u\r", range->code,
                                           show->negative ? 1 : 0, show->decimals, show->counts);

  g_byte_array_append (out, (const guint8 *) text, (guint) strlen (text));
}

/* --- public -------------------------------------------------------------------------- */

gboolean
frame_encode (const char      *format_id,
              const FrameShow *show,
              GByteArray      *out)
{
  const Range *range = find_range (find_format (format_id), show);

  if (range == NULL)
    return FALSE;
  if (g_str_equal (format_id, "segments-14"))
    encode_segments (show, range, out);
  else if (g_str_equal (format_id, "text-14"))
    encode_text_14 (show, range, out);
  else if (g_str_equal (format_id, "text-16"))
    encode_text_16 (show, range, out);
  else
    encode_digits (format_id, show, range, out);
  return TRUE;
}

void
frame_show_random (const char *format_id,
                   GRand      *rand,
                   FrameShow  *show)
{
  const guint format = find_format (format_id);
  const guint n = formats[format].n_ranges;
  const Range *range = &formats[format].ranges[g_rand_int_range (rand, 0, (gint32) n)];
  const double size = pow (10, count_digits (range->full));
  const gboolean flagged = formats[format].has_flags;

  *show = (FrameShow){ .unit = range->unit,
                       .mode = range->mode,
                       .decimals = count_decimals (range->full),
                       .negative = g_rand_boolean (rand),
                       .over = formats[format].has_over && g_rand_int_range (rand, 0, 8) == 0,
                       .low_battery = flagged && g_rand_int_range (rand, 0, 4) == 0,
                       .hold = flagged && g_rand_int_range (rand, 0, 4) == 0 };
  show->counts = show->over ? 0 : (guint) g_rand_int_range (rand, 0, (gint32) size);
}

/* A unit's letters without the prefix, and its power of ten. */
static const char *
split_unit (const char *unit,
            int        *power)
{
  static const char prefixes[] = "pnumkM";
  static const int powers[] = { -12, -9, -6, -3, 3, 6 };
  const char *found = strlen (unit) > 1 && !g_str_equal (unit, "ohm") && !g_str_equal (unit, "Hz")
                          ? strchr (prefixes, *unit)
                          : NULL;

  *power = found != NULL ? powers[found - prefixes] : 0;
  return found != NULL ? unit + 1 : unit;
}

const char *
frame_show_get_unit (const FrameShow *show)
{
  int power;

  return split_unit (show->unit, &power);
}

double
frame_show_get_value (const FrameShow *show)
{
  int power;

  split_unit (show->unit, &power);

  g_autofree char *number = g_strdup_printf ("%s%ue%d", show->negative ? "-" : "", show->counts,
                                             power - (int) show->decimals);

  return show->counts == 0 ? 0 : g_ascii_strtod (number, NULL);
}

char *
frame_show_to_probe (const FrameShow *show)
{
  int power;
  const char *unit = split_unit (show->unit, &power);
  g_autofree char *last = g_strdup_printf ("1e%d", power - (int) show->decimals);
  char value[G_ASCII_DTOSTR_BUF_SIZE];
  char step[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (value, sizeof value, "%.15g", frame_show_get_value (show));
  g_ascii_formatd (step, sizeof step, "%.15g", show->over ? 0 : g_ascii_strtod (last, NULL));
  return g_strdup_printf ("%s %s %s step %s%s%s%s\n", show->over ? "-" : value, unit, show->mode,
                          step, show->over ? " over" : "", show->low_battery ? " low" : "",
                          show->hold ? " hold" : "");
}

void
frame_add_parity (GByteArray *bytes)
{
  for (guint i = 0; i < bytes->len; i++)
    {
      guint ones = 0;

      for (guint bit = 0; bit < 7; bit++)
        ones += bytes->data[i] >> bit & 1;
      if (ones % 2 == 0)
        bytes->data[i] |= 0x80;
    }
}

void
frame_add_ones (GByteArray *bytes)
{
  for (guint i = 0; i < bytes->len; i++)
    bytes->data[i] |= 0x80;
}
