/* rw-report-words.h: the small phrases that the text reports share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-advice.h"

G_BEGIN_DECLS

/* A blank line and a line of its own. */
void rw_report_words_append_heading (GString *out, const char *heading);

/* A line: what following a plan costs (@expected minutes), what repairing straight away and
 * knowing the cause would. */
void rw_report_words_append_account (GString *out, const RwAdvice *advice, double expected);

/* All of these: translated, numbers as the locale writes them, (transfer full). */

/* "3 min", "0.5 min". */
char *rw_report_words_minutes (double minutes);

/* What a check shows: the outcome's title, and for a measuring check the range of values unless a
 * number stands in the title already: "4.80 to 4.90 V", "a little low (4.80 V to 4.90 V)". */
char *rw_report_words_outcome (const RwCheck *check, const RwOutcome *outcome);

/* What can hurt and who may do it: "mains; licensed people only". (nullable): NULL when anyone
 * may and no more than a live low voltage is met. */
char *rw_report_words_danger (RwHazard hazard, RwWho who);

/* "power on · board fitted". (nullable): NULL when nothing is asked for. */
char *rw_report_words_setup (RwSetup setup);

/* The same for what a check asks for. (nullable) */
char *rw_report_words_wanted (const RwCheck *check);

/* Why no position of the trim suits all rails of @set, one translated sentence. (transfer full) */
char *rw_report_words_conflict (const RwTrimSet *set);

G_END_DECLS
