/* rw-decoder-digits.h: what the formats made of 0x30 + nibble have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "digits-14", "digits-11a" and "digits-11b": every byte but the last two is 0x30 and four
 * bits: a digit, a code, or four flags. CR LF ends the frame.
 */
#pragma once

#include "rw-decoder-frame.h"

G_BEGIN_DECLS

/* LF ends a frame; every other byte goes on. */
RwDecoderFrameByte rw_decoder_digits_judge (gsize at, guint8 byte);

/* A frame of @length bytes has a nibble in each of its bytes up to CR LF. */
gboolean rw_decoder_digits_is_well_formed (const guint8 *frame, gsize length);

/* Bit 0 … 3 of a byte. */
gboolean rw_decoder_digits_is_set (guint8 byte, guint bit);

G_END_DECLS
