/* rw-decoder-segments-14.h: the format "segments-14": the segments of a display, 14 bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-frame.h"

extern const RwDecoderFrameClass rw_decoder_segments_14_class;
