/* rw-compare-words.h: what two sessions have to say of each other, in words that text, window and picture share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All: translated, numbers as the locale writes them, (transfer full).
 */
#pragma once

#include "rw-compare.h"

G_BEGIN_DECLS

/* "+5 V, board, warm", "+12 V for each volt on +5 V, board". */
char *rw_compare_words_spot (const RwCompareItem *item);

/* "5.04 V"; "overload". */
char *rw_compare_words_value (const RwCompareItem *item, const RwCompareValue *value);

/* "weaker by 0.11 V (±0.03 V)", "no difference"; "" when there is none to tell. */
char *rw_compare_words_difference (const RwCompareItem *item);

/* "changed; inside then, too close to call now", "cannot be told with these meters: …". */
char *rw_compare_words_result (const RwCompareItem *item);

/* All of it in one sentence, for lists and for people who hear it. */
char *rw_compare_words_item (const RwCompareItem *item);

/* "+5 V, along the wire: read then only", without an end. */
char *rw_compare_words_left (const RwCompareLeft *left);

/* "+5 V, at the terminals: 4.75 V to 5.40 V then, 4.80 V to 5.40 V now". */
char *rw_compare_words_limit (const RwCompareLimit *limit);

/* "present then, cured now". */
char *rw_compare_words_symptom (const RwCompareSymptom *symptom);

/* The main thing, one or two sentences: "2 of 14 values changed beyond the meters' errors." */
char *rw_compare_words_headline (const RwCompare *self);

/* What was counted as the meters' errors, and how many pairs the correction is for. */
char *rw_compare_words_method (const RwCompare *self);

/* "Tidepool Racer · B-07", of the later session. */
char *rw_compare_words_cabinet (const RwCompare *self);

/* The day that a session began: "2026-03-14", in UTC as files have it. */
char *rw_compare_words_date (RwSession *session);

/* "2026-03-14 and 2027-03-20"; with the time of day where the days are the same. */
char *rw_compare_words_dates (const RwCompare *self);

G_END_DECLS
