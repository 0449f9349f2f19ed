/* rw-decoder-scpi.h: the format "scpi": the answers to READ? and MEAS?.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder-text.h"

extern const RwDecoderTextClass rw_decoder_scpi_class;
