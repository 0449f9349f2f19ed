/* rw-decoder-digits-14.h: the format "digits-14": range, five digits, function and flags.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-frame.h"

extern const RwDecoderFrameClass rw_decoder_digits_14_class;
