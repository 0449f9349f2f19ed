/* rw-decoder-segments-14.c: the format "segments-14": the segments of a display, 14 bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The high nibble of each byte counts the bytes, 1 to E; the low nibble switches segments and
 * signs of a four-digit display on (bits 3 2 1 0):
 *
 *   1  AC DC AUTO link         6  point 3e 3f 3a      B  milli % mega beep
 *   2  minus 1e 1f 1a          7  3d 3c 3g 3b         C  F Ω relative HOLD
 *   3  1d 1c 1g 1b             8  point 4e 4f 4a      D  A V Hz low-battery
 *   4  point 2e 2f 2a          9  4d 4c 4g 4b         E  – °C – –
 *   5  2d 2c 2g 2b             A  micro nano kilo diode
 *
 * A point stands before its digit. The segments are a (top), b, c (right), d (bottom), e, f
 * (left), g (middle). Leading digits may be blank; an overload is a 0 and an L with blanks
 * around them and the point anywhere.
 *
 * All of it must make sense: indices in order, every digit a glyph, at most one point and one
 * prefix, exactly one unit. The bits of byte E differ from meter to meter; °C is only believed
 * when no other unit is lit.
 */
#include "config.h"

#include "rw-decoder-segments-14.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define N_DIGITS 4

/* Segments of a digit: e f a in bits 6 5 4, d c g b in bits 3 2 1 0, as they are sent. */
static const struct
{
  guint8 segments;
  char   glyph;
} glyphs[] = {
  { 0x00, ' ' }, { 0x7D, '0' }, { 0x05, '1' }, { 0x5B, '2' }, { 0x1F, '3' }, { 0x27, '4' },
  { 0x3E, '5' }, { 0x7E, '6' }, { 0x15, '7' }, { 0x7F, '8' }, { 0x3F, '9' }, { 0x68, 'L' },
};

static gboolean
is_lit (const guint8 *frame,
        guint         index, /* 1 … 14 */
        guint         bit)
{
  return (frame[index - 1] >> bit & 1) != 0;
}

static char
read_glyph (const guint8 *frame,
            guint         digit)
{
  const guint8 *pair = frame + 1 + 2 * digit;
  const guint8 segments = (guint8) ((pair[0] & 0x07) << 4 | (pair[1] & 0x0F));

  for (guint i = 0; i < G_N_ELEMENTS (glyphs); i++)
    if (glyphs[i].segments == segments)
      return glyphs[i].glyph;
  return '\0';
}

/* Digits and the power of ten of the last one, or an overload. */
static gboolean
read_number (const guint8     *frame,
             RwDecoderDisplay *display)
{
  char text[N_DIGITS + 1] = "";
  guint points = 0;

  for (guint i = 0; i < N_DIGITS; i++)
    {
      text[i] = read_glyph (frame, i);
      if (text[i] == '\0')
        return FALSE;
      if (i > 0 && is_lit (frame, 2 + 2 * i, 3))
        {
          display->power = -(int) (N_DIGITS - i);
          points++;
        }
    }

  const gsize blanks = strspn (text, " ");

  if (points > 1)
    return FALSE;
  if (g_str_equal (g_strchomp (text) + blanks, "0L"))
    {
      display->over = TRUE;
      return TRUE;
    }
  return strlen (text) == N_DIGITS
         && rw_decoder_display_set_digits (display, text + blanks, N_DIGITS - blanks);
}

static gboolean
read_unit (const guint8     *frame,
           RwDecoderDisplay *display)
{
  const struct
  {
    gboolean    lit;
    RwMeterUnit unit;
  } units[] = {
    { is_lit (frame, 0xB, 2), RW_METER_UNIT_NONE }, /* per cent: nothing we have */
    { is_lit (frame, 0xC, 3), RW_METER_UNIT_FARAD },
    { is_lit (frame, 0xC, 2), RW_METER_UNIT_OHM },
    { is_lit (frame, 0xD, 3), RW_METER_UNIT_AMPERE },
    { is_lit (frame, 0xD, 2), RW_METER_UNIT_VOLT },
    { is_lit (frame, 0xD, 1), RW_METER_UNIT_HERTZ },
  };
  guint lit = 0;

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].lit)
      {
        display->unit = units[i].unit;
        lit++;
      }
  if (lit == 0 && is_lit (frame, 0xE, 2))
    {
      display->unit = RW_METER_UNIT_CELSIUS;
      lit++;
    }
  return lit == 1 && display->unit != RW_METER_UNIT_NONE;
}

static gboolean
read_prefix (const guint8     *frame,
             RwDecoderDisplay *display)
{
  const struct
  {
    gboolean lit;
    int      power;
  } prefixes[] = {
    { is_lit (frame, 0xA, 2), -9 }, { is_lit (frame, 0xA, 3), -6 },
    { is_lit (frame, 0xB, 3), -3 }, { is_lit (frame, 0xA, 1), 3 },
    { is_lit (frame, 0xB, 1), 6 },
  };
  guint lit = 0;

  for (guint i = 0; i < G_N_ELEMENTS (prefixes); i++)
    if (prefixes[i].lit)
      {
        display->power += prefixes[i].power;
        lit++;
      }
  return lit <= 1;
}

/* A diode test shows volts, the beeper belongs to ohms or to a diode test. */
static gboolean
read_mode (const guint8     *frame,
           RwDecoderDisplay *display)
{
  const gboolean ac = is_lit (frame, 0x1, 3);
  const gboolean dc = is_lit (frame, 0x1, 2);
  const gboolean diode = is_lit (frame, 0xA, 0);
  const gboolean beep = is_lit (frame, 0xB, 0);

  if (diode && display->unit != RW_METER_UNIT_VOLT)
    return FALSE;
  if (beep && !diode && display->unit != RW_METER_UNIT_OHM)
    return FALSE;
  if (diode)
    display->mode = RW_METER_MODE_DIODE;
  else if (beep)
    display->mode = RW_METER_MODE_CONTINUITY;
  else if (ac && dc)
    display->mode = RW_METER_MODE_AC_DC;
  else if (ac || dc)
    display->mode = ac ? RW_METER_MODE_AC : RW_METER_MODE_DC;
  return TRUE;
}

static gboolean
read_frame (const guint8     *frame,
            RwDecoderDisplay *display)
{
  display->negative = is_lit (frame, 0x2, 3);
  display->hold = is_lit (frame, 0xC, 0);
  display->low_battery = is_lit (frame, 0xD, 0);
  return read_number (frame, display) && read_unit (frame, display)
         && read_prefix (frame, display) && read_mode (frame, display);
}

static RwDecoderFrameByte
judge (gsize  at,
       guint8 byte)
{
  const guint index = byte >> 4;

  if (index == 1)
    return RW_DECODER_FRAME_STARTS;
  if (index != at + 1)
    return RW_DECODER_FRAME_BREAKS;
  return index == 14 ? RW_DECODER_FRAME_ENDS : RW_DECODER_FRAME_GOES_ON;
}

const RwDecoderFrameClass rw_decoder_segments_14_class = {
  .parent = {
    .id = "segments-14",
    .title = N_ ("Display segments, 14 bytes"),
    .usual = { .baud = 2400,
               .bits = 8,
               .parity = RW_PARITY_NONE,
               .stop_bits = 1,
               .dtr = TRUE, /* the two of them power the optical cable */
               .rts = FALSE },
    .size = sizeof (RwDecoderFrame),
    .init = rw_decoder_frame_init,
    .feed = rw_decoder_frame_feed,
    .end = rw_decoder_frame_end,
    .restart = rw_decoder_frame_restart,
  },
  .length = 14,
  .has_start = TRUE,
  .bits = RW_DECODER_FRAME_EIGHT,
  .judge = judge,
  .parse = read_frame,
};
