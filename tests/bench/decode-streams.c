/* decode-streams.c: what meters of each format send, written by an encoder of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "decode-streams.h"

#include <stdlib.h>

typedef void (*Encoder) (int      counts,
                         GString *out);

static guint
digit_of (int   counts,
          guint power)
{
  return (guint) abs (counts) / power % 10;
}

/* Byte 1 says DC and automatic; two bytes a digit, e f a then d c g b; a point behind digit 1. */
static void
encode_segments_14 (int      counts,
                    GString *out)
{
  /* Upper nibble: e f a, lower: d c g b, as the display lights them for 0 to 9. */
  static const guint8 glyphs[] = { 0x7D, 0x05, 0x5B, 0x1F, 0x27, 0x3E, 0x7E, 0x15, 0x7F, 0x3F };
  static const guint8 tail[] = { 0xA0, 0xB0, 0xC0, 0xD4, 0xE0 };
  static const guint powers[] = { 1000, 100, 10, 1 };

  g_string_append_c (out, 0x17);
  for (guint i = 0; i < 4; i++)
    {
      const guint8 glyph = glyphs[digit_of (counts, powers[i])];
      const gboolean mark = i == 0 ? counts < 0 : i == 1;

      g_string_append_c (out, (char) ((2 + 2 * i) << 4 | (mark ? 8 : 0) | glyph >> 4));
      g_string_append_c (out, (char) ((3 + 2 * i) << 4 | (glyph & 15)));
    }
  g_string_append_len (out, (const char *) tail, sizeof tail);
}

/* Range 1 of the volts ends in 1 mV. */
static void
encode_digits_14 (int      counts,
                  GString *out)
{
  g_string_append_printf (out, "1%05d;%c00:0\r\n", abs (counts), counts < 0 ? '4' : '0');
}

static void
encode_digits_11a (int      counts,
                   GString *out)
{
  g_string_append_printf (out, "0%04d;%c0:\r\n", abs (counts), counts < 0 ? '4' : '0');
}

static void
encode_digits_11b (int      counts,
                   GString *out)
{
  g_string_append_printf (out, "0%04d;%c0<\r\n", abs (counts), counts < 0 ? '8' : '0');
}

static void
encode_text_14 (int      counts,
                GString *out)
{
  g_string_append_printf (out, "DC%c%u.%03u    V\r", counts < 0 ? '-' : ' ',
                          digit_of (counts, 1000), (guint) abs (counts) % 1000);
}

static void
encode_text_16 (int      counts,
                GString *out)
{
  g_string_append_printf (out, "\x02" "4134%c3%08d\r", counts < 0 ? '1' : '0', abs (counts));
}

static void
encode_lines (int      counts,
              GString *out)
{
  g_string_append_printf (out, "%s%u.%03u V DC\r\n", counts < 0 ? "-" : "",
                          digit_of (counts, 1000), (guint) abs (counts) % 1000);
}

static void
encode_scpi (int      counts,
             GString *out)
{
  g_string_append_printf (out, "%c%u.%03u00000E+00\n", counts < 0 ? '-' : '+',
                          digit_of (counts, 1000), (guint) abs (counts) % 1000);
}

static const struct
{
  const char *id;
  Encoder     encode;
} encoders[] = {
  { "segments-14", encode_segments_14 }, { "digits-14", encode_digits_14 },
  { "digits-11a", encode_digits_11a },   { "digits-11b", encode_digits_11b },
  { "text-14", encode_text_14 },         { "text-16", encode_text_16 },
  { "lines", encode_lines },             { "scpi", encode_scpi },
};

gboolean
decode_streams_append (const char *format_id,
                       int         counts,
                       GString    *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (encoders); i++)
    if (g_str_equal (encoders[i].id, format_id))
      {
        encoders[i].encode (counts, out);
        return TRUE;
      }
  return FALSE;
}
