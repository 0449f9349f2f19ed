/* rw-decoder-digits-14.c: the format "digits-14": range, five digits, function and flags.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each byte is 0x30 + nibble, 7 data bits, odd parity; flags are bits 3 2 1 0:
 *
 *    0     range              8   MAX MIN relative RMR
 *    1–5   digits             9   underload peak-max peak-min 0
 *    6     function          10   DC AC AUTO VAHZ
 *    7     judge minus       11   0 bar HOLD low-pass
 *          low-battery over  12   CR LF
 *
 * The ranges of 22 000 counts:
 *
 *   B  volts       2.2000  22.000  220.00  2200.0 V  220.00 mV
 *   3  ohms        220.00 Ω  2.2000  22.000  220.00 kΩ  2.2000  22.000  220.00 MΩ
 *   D  amperes     220.00  2200.0 µA
 *   F  amperes     22.000  220.00 mA
 *   0  amperes     22.000 A
 *   5  continuity  220.00 Ω
 *   1  diode       2.2000 V
 *
 * The functions 2 (frequency), 6 (capacitance), 4 (temperature), 9 and E have ranges or units
 * that we do not know for sure, and with VAHZ the digits may be a frequency: these frames are
 * refused rather than guessed at. MAX, MIN and the peaks show a stored value, no new one:
 * hold. Relative is passed on as it is.
 */
#include "config.h"

#include "rw-decoder-digits-14.h"

#include <glib/gi18n-lib.h>

#include "rw-decoder-digits.h"

enum
{
  AT_RANGE = 0,
  AT_DIGITS = 1,
  AT_FUNCTION = 6,
  AT_STATUS = 7,
  AT_OPTION_1 = 8,
  AT_OPTION_2 = 9,
  AT_OPTION_3 = 10,
  AT_OPTION_4 = 11,
  LENGTH = 14
};

#define N_DIGITS 5
#define MAX_RANGES 7

typedef struct
{
  guint8      code; /* low nibble */
  RwMeterUnit unit;
  RwMeterMode mode; /* NONE: of the flags */
  gboolean    takes_current_flags; /* DC or AC must be lit */
  guint       n_ranges;
  int         powers[MAX_RANGES]; /* of ten, of the last digit */
} Function;

static const Function functions[] = {
  { 0xB, RW_METER_UNIT_VOLT, RW_METER_MODE_NONE, TRUE, 5, { -4, -3, -2, -1, -5 } },
  { 0xD, RW_METER_UNIT_AMPERE, RW_METER_MODE_NONE, TRUE, 2, { -8, -7 } },
  { 0xF, RW_METER_UNIT_AMPERE, RW_METER_MODE_NONE, TRUE, 2, { -6, -5 } },
  { 0x0, RW_METER_UNIT_AMPERE, RW_METER_MODE_NONE, TRUE, 1, { -3 } },
  { 0x3, RW_METER_UNIT_OHM, RW_METER_MODE_NONE, FALSE, 7, { -2, -1, 0, 1, 2, 3, 4 } },
  { 0x5, RW_METER_UNIT_OHM, RW_METER_MODE_CONTINUITY, FALSE, 1, { -2 } },
  { 0x1, RW_METER_UNIT_VOLT, RW_METER_MODE_DIODE, FALSE, 1, { -4 } },
};

static const Function *
find_function (guint8 byte)
{
  for (guint i = 0; i < G_N_ELEMENTS (functions); i++)
    if (functions[i].code == (byte & 0xF))
      return &functions[i];
  return NULL;
}

static gboolean
read_mode (const Function   *function,
           guint8            option,
           RwDecoderDisplay *display)
{
  const gboolean dc = rw_decoder_digits_is_set (option, 3);
  const gboolean ac = rw_decoder_digits_is_set (option, 2);

  display->mode = function->mode;
  if (!function->takes_current_flags)
    return TRUE;
  if (dc && ac)
    display->mode = RW_METER_MODE_AC_DC;
  else
    display->mode = dc ? RW_METER_MODE_DC : RW_METER_MODE_AC;
  return dc || ac;
}

static gboolean
read_frame (const guint8     *frame,
            RwDecoderDisplay *display)
{
  const Function *function = find_function (frame[AT_FUNCTION]);
  const guint range = frame[AT_RANGE] & 0xF;
  const guint8 status = frame[AT_STATUS];
  const guint8 option_2 = frame[AT_OPTION_2];
  const gboolean underload = rw_decoder_digits_is_set (option_2, 3);

  if (!rw_decoder_digits_is_well_formed (frame, LENGTH) || function == NULL
      || range >= function->n_ranges)
    return FALSE;
  if (rw_decoder_digits_is_set (option_2, 0)
      || rw_decoder_digits_is_set (frame[AT_OPTION_3], 0)
      || rw_decoder_digits_is_set (frame[AT_OPTION_4], 3))
    return FALSE;
  display->unit = function->unit;
  display->power = function->powers[range];
  display->negative = rw_decoder_digits_is_set (status, 2);
  display->low_battery = rw_decoder_digits_is_set (status, 1);
  display->over = rw_decoder_digits_is_set (status, 0) || underload;
  display->hold = rw_decoder_digits_is_set (frame[AT_OPTION_4], 1)
                  || (frame[AT_OPTION_1] & 0xC) != 0 || (option_2 & 0x6) != 0;
  return read_mode (function, frame[AT_OPTION_3], display)
         && (display->over
             || rw_decoder_display_set_digits (display, (const char *) frame + AT_DIGITS,
                                               N_DIGITS));
}

const RwDecoderFrameClass rw_decoder_digits_14_class = {
  .parent = {
    .id = "digits-14",
    .title = N_ ("Five digits and flags, 14 bytes"),
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
  .parse = read_frame,
};
