/* rw-decoder-text-16.c: the format "text-16": unit code, sign, point and eight digits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *    0      STX (02)
 *    1      '4'
 *    2      display: '1' upper, '2' lower or middle, '3'
 *    3–4    unit code
 *    5      '0' plus, '1' minus
 *    6      decimal places, '0' to '3'
 *    7–14   eight digits
 *    15     CR
 *
 * A meter with several displays sends them in turn; the upper is the main one.
 */
#include "config.h"

#include "rw-decoder-text-16.h"

#include <glib/gi18n-lib.h>
#include <string.h>

enum
{
  AT_START = 0,
  AT_KIND = 1,
  AT_PLACE = 2,
  AT_UNIT = 3,
  AT_SIGN = 5,
  AT_POINT = 6,
  AT_DIGITS = 7,
  AT_END = 15,
  LENGTH = 16
};

#define STX 0x02

static const struct
{
  char        code[3];
  RwMeterUnit unit;
  RwMeterMode mode;
  int         power;
  gboolean    fahrenheit;
} units[] = {
  { "18", RW_METER_UNIT_VOLT, RW_METER_MODE_DC, -3 },
  { "34", RW_METER_UNIT_VOLT, RW_METER_MODE_DC, 0 },
  { "49", RW_METER_UNIT_VOLT, RW_METER_MODE_AC, -3 },
  { "50", RW_METER_UNIT_VOLT, RW_METER_MODE_AC, 0 },
  { "46", RW_METER_UNIT_VOLT, RW_METER_MODE_DIODE, 0 },
  { "35", RW_METER_UNIT_AMPERE, RW_METER_MODE_DC, -6 },
  { "37", RW_METER_UNIT_AMPERE, RW_METER_MODE_DC, -3 },
  { "36", RW_METER_UNIT_AMPERE, RW_METER_MODE_DC, 0 },
  { "51", RW_METER_UNIT_AMPERE, RW_METER_MODE_AC, -6 },
  { "53", RW_METER_UNIT_AMPERE, RW_METER_MODE_AC, -3 },
  { "52", RW_METER_UNIT_AMPERE, RW_METER_MODE_AC, 0 },
  { "38", RW_METER_UNIT_OHM, RW_METER_MODE_NONE, 0 },
  { "39", RW_METER_UNIT_OHM, RW_METER_MODE_NONE, 3 },
  { "40", RW_METER_UNIT_OHM, RW_METER_MODE_NONE, 6 },
  { "31", RW_METER_UNIT_HERTZ, RW_METER_MODE_NONE, 0 },
  { "33", RW_METER_UNIT_HERTZ, RW_METER_MODE_NONE, 3 },
  { "67", RW_METER_UNIT_HERTZ, RW_METER_MODE_NONE, 6 },
  { "A4", RW_METER_UNIT_FARAD, RW_METER_MODE_NONE, -12 },
  { "43", RW_METER_UNIT_FARAD, RW_METER_MODE_NONE, -9 },
  { "44", RW_METER_UNIT_FARAD, RW_METER_MODE_NONE, -6 },
  { "01", RW_METER_UNIT_CELSIUS, RW_METER_MODE_NONE, 0 },
  { "02", RW_METER_UNIT_CELSIUS, RW_METER_MODE_NONE, 0, TRUE },
};

static gboolean
read_unit (const guint8     *code,
           RwDecoderDisplay *display)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (memcmp (units[i].code, code, 2) == 0)
      {
        display->unit = units[i].unit;
        display->mode = units[i].mode;
        display->power = units[i].power;
        display->fahrenheit = units[i].fahrenheit;
        return TRUE;
      }
  return FALSE;
}

static gboolean
read_frame (const guint8     *frame,
            RwDecoderDisplay *display)
{
  if (frame[AT_KIND] != '4' || frame[AT_PLACE] < '1' || frame[AT_PLACE] > '3'
      || frame[AT_SIGN] < '0' || frame[AT_SIGN] > '1' || frame[AT_POINT] < '0'
      || frame[AT_POINT] > '3' || !read_unit (frame + AT_UNIT, display))
    return FALSE;
  display->place = (guint) (frame[AT_PLACE] - '1');
  display->negative = frame[AT_SIGN] == '1';
  display->power -= frame[AT_POINT] - '0';
  return rw_decoder_display_set_digits (display, (const char *) frame + AT_DIGITS,
                                        AT_END - AT_DIGITS);
}

static RwDecoderFrameByte
judge (gsize  at,
       guint8 byte)
{
  if (byte == STX)
    return RW_DECODER_FRAME_STARTS;
  return byte == '\r' ? RW_DECODER_FRAME_ENDS : RW_DECODER_FRAME_GOES_ON;
}

const RwDecoderFrameClass rw_decoder_text_16_class = {
  .parent = {
    .id = "text-16",
    .title = N_ ("Unit code and eight digits, 16 characters"),
    .usual = { .baud = 9600,
               .bits = 8,
               .parity = RW_PARITY_NONE,
               .stop_bits = 1,
               .dtr = TRUE,
               .rts = TRUE },
    .size = sizeof (RwDecoderFrame),
    .init = rw_decoder_frame_init,
    .feed = rw_decoder_frame_feed,
    .end = rw_decoder_frame_end,
    .restart = rw_decoder_frame_restart,
  },
  .length = LENGTH,
  .has_start = TRUE,
  .bits = RW_DECODER_FRAME_EIGHT,
  .judge = judge,
  .parse = read_frame,
};
