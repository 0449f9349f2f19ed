/* rw-decoder-digits-11.h: the formats "digits-11a" and "digits-11b": range, four digits, flags.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-frame.h"

extern const RwDecoderFrameClass rw_decoder_digits_11a_class;
extern const RwDecoderFrameClass rw_decoder_digits_11b_class;
