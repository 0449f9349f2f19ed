/* rw-decoder-text-14.c: the format "text-14": mode, value and unit as text, when asked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   characters 1–2   mode: DC AC OH DI CA FR TE HF
 *              3–9   value, with sign, point and blanks
 *              10–13 unit: V mV A mA uA ohm kohm Mohm nF uF Hz kHz C
 *              14    CR
 *
 * sent for each "D" that the meter is sent. Read by field: blanks are stripped, then the value
 * must be a plain number (rw-number.h, no exponent) or a word for overload. A sign may stand
 * at the left of its field with blanks behind it. Mode and unit must fit each other; HF, a
 * transistor's gain, has no unit and is refused.
 */
#include "config.h"

#include "rw-decoder-text-14.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-number.h"

enum
{
  AT_MODE = 0,
  AT_VALUE = 2,
  AT_UNIT = 9,
  AT_END = 13,
  LENGTH = 14
};

static const struct
{
  const char *text;
  RwMeterUnit unit;
  int         power;
} units[] = {
  { "V", RW_METER_UNIT_VOLT, 0 },    { "mV", RW_METER_UNIT_VOLT, -3 },
  { "A", RW_METER_UNIT_AMPERE, 0 },  { "mA", RW_METER_UNIT_AMPERE, -3 },
  { "uA", RW_METER_UNIT_AMPERE, -6 }, { "ohm", RW_METER_UNIT_OHM, 0 },
  { "kohm", RW_METER_UNIT_OHM, 3 },  { "Mohm", RW_METER_UNIT_OHM, 6 },
  { "nF", RW_METER_UNIT_FARAD, -9 }, { "uF", RW_METER_UNIT_FARAD, -6 },
  { "Hz", RW_METER_UNIT_HERTZ, 0 },  { "kHz", RW_METER_UNIT_HERTZ, 3 },
  { "C", RW_METER_UNIT_CELSIUS, 0 },
};

static const struct
{
  const char *text;
  RwMeterUnit unit;
  RwMeterMode mode;
} modes[] = {
  { "DC", RW_METER_UNIT_VOLT, RW_METER_MODE_DC },
  { "DC", RW_METER_UNIT_AMPERE, RW_METER_MODE_DC },
  { "AC", RW_METER_UNIT_VOLT, RW_METER_MODE_AC },
  { "AC", RW_METER_UNIT_AMPERE, RW_METER_MODE_AC },
  { "OH", RW_METER_UNIT_OHM, RW_METER_MODE_NONE },
  { "DI", RW_METER_UNIT_VOLT, RW_METER_MODE_DIODE },
  { "CA", RW_METER_UNIT_FARAD, RW_METER_MODE_NONE },
  { "FR", RW_METER_UNIT_HERTZ, RW_METER_MODE_NONE },
  { "TE", RW_METER_UNIT_CELSIUS, RW_METER_MODE_NONE },
};

/* A field without the blanks around it. */
static char *
strip (const guint8 *frame,
       guint         begin,
       guint         end,
       char          field[LENGTH])
{
  memcpy (field, frame + begin, end - begin);
  field[end - begin] = '\0';
  return g_strstrip (field);
}

static gboolean
read_unit (const char       *text,
           RwDecoderDisplay *display)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_equal (units[i].text, text))
      {
        display->unit = units[i].unit;
        display->power = units[i].power;
        return TRUE;
      }
  return FALSE;
}

static gboolean
read_mode (const char       *text,
           RwDecoderDisplay *display)
{
  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    if (modes[i].unit == display->unit && g_str_equal (modes[i].text, text))
      {
        display->mode = modes[i].mode;
        return TRUE;
      }
  return FALSE;
}

static gboolean
is_overload (const char *text)
{
  return *text != '\0' && rw_number_scan_overload (text, strlen (text)) == strlen (text);
}

/* After the unit: adds to its power. */
static gboolean
read_value (const char       *text,
            RwDecoderDisplay *display)
{
  const gboolean sign = *text == '-' || *text == '+';
  const char *bare = sign ? text + 1 : text;
  RwNumber number;

  bare += strspn (bare, " ");
  display->negative = *text == '-';
  if (is_overload (text) || (g_ascii_isalnum (*bare) && is_overload (bare)))
    {
      display->over = TRUE;
      return TRUE;
    }
  if (strspn (bare, "0123456789.") != strlen (bare)
      || rw_number_parse (bare, strlen (bare), &number) != RW_NUMBER_GOOD)
    return FALSE;
  display->power += number.power;
  return rw_decoder_display_set_digits (display, number.digits, strlen (number.digits));
}

static gboolean
read_frame (const guint8     *frame,
            RwDecoderDisplay *display)
{
  char field[LENGTH];

  for (guint i = 0; i < AT_END; i++)
    if (!g_ascii_isprint ((char) frame[i]))
      return FALSE;
  return read_unit (strip (frame, AT_UNIT, AT_END, field), display)
         && read_mode (strip (frame, AT_MODE, AT_VALUE, field), display)
         && read_value (strip (frame, AT_VALUE, AT_UNIT, field), display);
}

static RwDecoderFrameByte
judge (gsize  at,
       guint8 byte)
{
  /* Some adapters put a LF behind the CR. */
  return byte == '\r' || (at == 0 && byte == '\n') ? RW_DECODER_FRAME_ENDS : RW_DECODER_FRAME_GOES_ON;
}

const RwDecoderFrameClass rw_decoder_text_14_class = {
  .parent = {
    .id = "text-14",
    .title = N_ ("Mode, value and unit, 14 characters, when asked"),
    .usual = { .baud = 1200,
               .bits = 7,
               .parity = RW_PARITY_NONE,
               .stop_bits = 2,
               .dtr = TRUE, /* the two of them power the optical cable */
               .rts = FALSE },
    .poll = "D",
    .size = sizeof (RwDecoderFrame),
    .init = rw_decoder_frame_init,
    .feed = rw_decoder_frame_feed,
    .end = rw_decoder_frame_end,
    .restart = rw_decoder_frame_restart,
  },
  .length = LENGTH,
  .is_text = TRUE,
  .bits = RW_DECODER_FRAME_SEVEN_ONES,
  .judge = judge,
  .parse = read_frame,
};
