/* decoder-probe.h: for tests: feeds a decoder and writes down what comes out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-decoder.h"

/* Each value as a line: "5.012 V dc step 0.001", with " over", " low", " hold" where set.
 * (transfer full) */
char *decoder_probe_run (RwDecoder *decoder, const char *bytes, gsize n, gsize chunk, gboolean end);

/* The values themselves, an array of RwMeterValue. (transfer full) */
GArray *decoder_probe_values (RwDecoder *decoder, const GByteArray *bytes, gboolean end);

/* The same of one piece of text in a new decoder. (transfer full) */
char *decoder_probe_text (const char *format_id, const char *text);
