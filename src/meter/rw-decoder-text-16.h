/* rw-decoder-text-16.h: the format "text-16": unit code, sign, point and eight digits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-frame.h"

extern const RwDecoderFrameClass rw_decoder_text_16_class;
