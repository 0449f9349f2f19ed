/* rw-cause-words.h: how likely a cause is, in words, and why, as factors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of a chance p: "almost certain" from 0.9, "likely" from 0.5, "possible" from 0.1, "unlikely" below.
 *
 * Why: the odds p / (1 − p) before anything was seen, times the factor of each thing seen, are the odds shown
 * (rw_belief_get_factor). Factors nearer to 1 than RW_CAUSE_SMALL are told together.
 */
#pragma once

#include "rw-belief.h"
#include "rw-record.h"

G_BEGIN_DECLS

#define RW_CAUSE_CERTAIN 0.9
#define RW_CAUSE_LIKELY 0.5
#define RW_CAUSE_POSSIBLE 0.1

/* Changes of the odds by less than this factor either way are "the same", and are not told one by one. */
#define RW_CAUSE_SMALL 1.1

/* Static, translated. */
const char *rw_cause_words_chance (double p);

typedef struct
{
  double factor; /* on the odds: > 1 for, < 1 against */
  char  *title;  /* owned, translated */
} RwReason;

/* (transfer full) (element-type RwReason) the largest first either way; what is small comes last, as one. */
GPtrArray *rw_cause_words_reasons (const RwBelief *belief, guint rank);

/* What the last event that told anything did to the odds; 1 when nothing was seen yet, 0 when the cause is proved. */
double rw_cause_words_trend (const RwBelief *belief, guint rank);

/* "×12", "÷5.0", "=". (transfer full) */
char *rw_cause_words_factor (double factor);

/* "▲ ×2.1", "▼ ÷3.0", "=". (transfer full) */
char *rw_cause_words_trend_text (double factor);
char *rw_cause_words_trend_spoken (double factor); /* "up by a factor of 2.1 since the last finding" */

/* "3.2 : 1" or "1 : 24". (transfer full) */
char *rw_cause_words_odds (double p);

/* "Before anything was seen 1 : 24 (4 %)." (transfer full) */
char *rw_cause_words_prior (const RwCauseBelief *cause);

/* The line that shows that it multiplies: "1 : 24 ×12 ÷2.0 = 1 : 4.0, that is 20 %". (transfer full) */
char *rw_cause_words_product (const RwCauseBelief *cause, GPtrArray *reasons);

/* "Your own record: 3 of 21 jobs." @record (nullable); NULL when it is empty. (transfer full) (nullable) */
char *rw_cause_words_record (const RwRecord *record, const char *cause);

G_END_DECLS
