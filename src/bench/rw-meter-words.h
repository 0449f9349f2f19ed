/* rw-meter-words.h: meters in words: their accuracy, what they show, where they stay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-meter-book.h"
#include "rw-profile.h"

G_BEGIN_DECLS

/* A figure of a data sheet with as many decimals as it has, three at most: "0.5", "2". (transfer full) */
char *rw_meter_words_figure (double value);

/* "95 % sure", "more than 99 % sure": never all of it. (transfer full) */
char *rw_meter_words_sure (double share);

/* What a person typed as such a figure; a % after it is let be. FALSE with a sentence on what to write. */
gboolean rw_meter_words_read_figure (const char *typed, double *out, GError **error);

/* "±(0.5 % + 2), true RMS"; that nothing is known, when it is not. (transfer full) */
char *rw_meter_words_facts (const RwMeterFacts *facts);

/* "5.012 V DC, step 0.001 V"; "overload, DC". @signless: without its sign, which is not known. (transfer full) */
char *rw_meter_words_value (const RwMeterValue *value, gboolean signless);

/* "digits-14 · /dev/ttyUSB0 · 19200 7O1", or "by eye". (transfer full) */
char *rw_meter_words_where (const RwKnownMeter *meter);

/* "moves about", "stays on +5 V at the board". @rail: (nullable). (transfer full) */
char *rw_meter_words_stay (const RwRail *rail, RwPlace place);

G_END_DECLS
