/* rw-decoder-lines.h: the format "lines": a number and a unit in a line of text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-text.h"

extern const RwDecoderTextClass rw_decoder_lines_class;
