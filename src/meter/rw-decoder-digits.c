/* rw-decoder-digits.c: what the formats made of 0x30 + nibble have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-decoder-digits.h"

RwDecoderFrameByte
rw_decoder_digits_judge (gsize  at,
                         guint8 byte)
{
  return byte == '\n' ? RW_DECODER_FRAME_ENDS : RW_DECODER_FRAME_GOES_ON;
}

gboolean
rw_decoder_digits_is_well_formed (const guint8 *frame,
                                  gsize         length)
{
  for (gsize i = 0; i < length - 2; i++)
    if (frame[i] >> 4 != 0x3)
      return FALSE;
  return frame[length - 2] == '\r' && frame[length - 1] == '\n';
}

gboolean
rw_decoder_digits_is_set (guint8 byte,
                          guint  bit)
{
  return (byte >> bit & 1) != 0;
}
