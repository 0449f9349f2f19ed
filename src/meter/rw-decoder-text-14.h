/* rw-decoder-text-14.h: the format "text-14": mode, value and unit as text, when asked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-frame.h"

extern const RwDecoderFrameClass rw_decoder_text_14_class;
