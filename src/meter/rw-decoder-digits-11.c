/* rw-decoder-digits-11.c: the formats "digits-11a" and "digits-11b": range, digits and flags.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each byte is 0x30 + nibble, 7 data bits, odd parity; flags are bits 3 2 1 0:
 *
 *                  a                           b
 *    0    range    0, 1, 2: 6.000, 60.00, 600.0 V (or 4.000, …)
 *    1–4  digits
 *    5    function B: volts
 *    6    status   judge minus battery over    minus battery AC-over over
 *    7    option   HOLD – – –                  HOLD – – –
 *    8    option   DC AC AUTO –                DC(1)/AC(0) AUTO MAN –
 *    9    CR LF
 *
 * The two cannot be told apart by looking: 4 in the status is minus in a and a low battery in
 * b, 8 is "judge" in a and minus in b. So there are two formats, and somebody who knows must
 * choose. Functions other than volts have ranges that we do not know for sure: refused.
 */
#include "config.h"

#include "rw-decoder-digits-11.h"

#include <glib/gi18n-lib.h>

#include "rw-decoder-digits.h"

enum
{
  AT_RANGE = 0,
  AT_DIGITS = 1,
  AT_FUNCTION = 5,
  AT_STATUS = 6,
  AT_OPTION_1 = 7,
  AT_OPTION_2 = 8,
  LENGTH = 11
};

#define N_DIGITS 4

static const guint8 function_volts = 0xB;
static const int range_powers[] = { -3, -2, -1 };

/* What both have, after the status. */
static gboolean
read_frame (const guint8     *frame,
            RwDecoderDisplay *display)
{
  const guint range = frame[AT_RANGE] & 0xF;

  if (!rw_decoder_digits_is_well_formed (frame, LENGTH)
      || (frame[AT_FUNCTION] & 0xF) != function_volts || range >= G_N_ELEMENTS (range_powers))
    return FALSE;
  display->unit = RW_METER_UNIT_VOLT;
  display->power = range_powers[range];
  display->hold = rw_decoder_digits_is_set (frame[AT_OPTION_1], 3);
  return display->over
         || rw_decoder_display_set_digits (display, (const char *) frame + AT_DIGITS, N_DIGITS);
}

static gboolean
read_frame_a (const guint8     *frame,
              RwDecoderDisplay *display)
{
  const guint8 status = frame[AT_STATUS];
  const gboolean dc = rw_decoder_digits_is_set (frame[AT_OPTION_2], 3);
  const gboolean ac = rw_decoder_digits_is_set (frame[AT_OPTION_2], 2);

  display->negative = rw_decoder_digits_is_set (status, 2);
  display->low_battery = rw_decoder_digits_is_set (status, 1);
  display->over = rw_decoder_digits_is_set (status, 0);
  if (dc && ac)
    display->mode = RW_METER_MODE_AC_DC;
  else
    display->mode = dc ? RW_METER_MODE_DC : RW_METER_MODE_AC;
  return (dc || ac) && read_frame (frame, display);
}

static gboolean
read_frame_b (const guint8     *frame,
              RwDecoderDisplay *display)
{
  const guint8 status = frame[AT_STATUS];
  const gboolean dc = rw_decoder_digits_is_set (frame[AT_OPTION_2], 3);

  display->negative = rw_decoder_digits_is_set (status, 3);
  display->low_battery = rw_decoder_digits_is_set (status, 2);
  display->over = rw_decoder_digits_is_set (status, 1) || rw_decoder_digits_is_set (status, 0);
  display->mode = dc ? RW_METER_MODE_DC : RW_METER_MODE_AC;
  return read_frame (frame, display);
}

const RwDecoderFrameClass rw_decoder_digits_11a_class = {
  .parent = {
    .id = "digits-11a",
    .title = N_ ("Four digits and flags, 11 bytes, minus in bit 2"),
    .usual = { .baud = 19200,
               .bits = 7,
               .parity = RW_PARITY_ODD,
               .stop_bits = 1,
               .dtr = TRUE, /* the two of them power the optical cable */
               .rts = FALSE },
    .size = sizeof (RwDecoderFrame),
    .init = rw_decoder_frame_init,
    .feed = rw_decoder_frame_feed,
    .end = rw_decoder_frame_end,
    .restart = rw_decoder_frame_restart,
  },
  .length = LENGTH,
  .bits = RW_DECODER_FRAME_SEVEN_ODD,
  .judge = rw_decoder_digits_judge,
  .parse = read_frame_a,
};

const RwDecoderFrameClass rw_decoder_digits_11b_class = {
  .parent = {
    .id = "digits-11b",
    .title = N_ ("Four digits and flags, 11 bytes, minus in bit 3"),
    .usual = { .baud = 19200,
               .bits = 7,
               .parity = RW_PARITY_ODD,
               .stop_bits = 1,
               .dtr = TRUE,
               .rts = FALSE },
    .size = sizeof (RwDecoderFrame),
    .init = rw_decoder_frame_init,
    .feed = rw_decoder_frame_feed,
    .end = rw_decoder_frame_end,
    .restart = rw_decoder_frame_restart,
  },
  .length = LENGTH,
  .bits = RW_DECODER_FRAME_SEVEN_ODD,
  .judge = rw_decoder_digits_judge,
  .parse = read_frame_b,
};
