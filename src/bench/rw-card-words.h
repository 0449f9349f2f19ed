/* rw-card-words.h: what the card of the next check says, without a widget.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All texts are translated and (transfer full).
 */
#pragma once

#include "rw-advice.h"

G_BEGIN_DECLS

/* Two ways whose expected minutes differ by less than this share are equally good. */
#define RW_CARD_AS_GOOD 0.005

/* "3 min", "0.5 min". */
char *rw_card_words_minutes (double minutes);

/* The line that stands first: what can hurt and who may do it. "⚠ beside bare mains parts · anyone". */
char *rw_card_words_hazard (RwHazard hazard, RwWho who);

/* What a check needs changed, as things stand. All RW_SAID_NOT: nothing. */
RwSetup rw_card_words_missing (const RwCheck *check, RwSetup now);

/* "power down, pull the board". NULL when nothing is to be changed. (nullable) */
char *rw_card_words_change (const RwSetup *missing);

/* In full sentences; NULL when it is not known how things stand now. (nullable) */
char *rw_card_words_way_there (const RwSetup *missing, const RwSetup *now);

/* "6 min: 3 min to power down, pull the board, 3 min for the check itself", or "3 min". */
char *rw_card_words_time (const RwAdviceCheck *offer, const RwSetup *missing);

/* "42 min expected in all, 61 min without measuring." */
char *rw_card_words_account (const RwAdvice *advice, const RwAdviceCheck *offer);

/* Whether it is sure enough to repair, with the minutes of both ways, and whether any single reading can change that:
 * the sentences of the advice. NULL when there is nothing to choose. (nullable) */
char *rw_card_words_sure (const RwAdvice *advice);

/* Which two causes the suggested check tells apart, and what mixing them up costs. NULL: it is about none in
 * particular. (nullable) */
char *rw_card_words_pair (const RwAdvice *advice);

/* What another way costs beside the best one: "+3.2 min expected", or "equally good". @expected, @best: minutes. */
char *rw_card_words_more (double expected, double best);

/* "It was: Edge connector oxidised. What cured it: Clean the edge." */
char *rw_card_words_was (const RwCause *cause);

/* 0 … 4: "no parts needed" … "dear". Static. */
const char *rw_card_words_cost (int cost);

/* "1. …\n2. …" */
char *rw_card_words_steps (char **steps);

/* What is to be measured again after a repair: "Check again afterwards: …". NULL: nothing is named. (nullable) */
char *rw_card_words_recheck (const RwKnowledge *knowledge, const RwCause *cause);

/* The hazard of a repair before its steps: the first step of one beside or past mains says it (a rule of the data).
 * NULL: nothing beyond the hazard line. (nullable) */
char *rw_card_words_repair_safety (const RwCause *cause);

/* The other steps, numbered from 1. */
char *rw_card_words_repair_steps (const RwCause *cause);

/* Why to take a check, and what it tells apart if it is the suggested one. */
char *rw_card_words_why (RwAdvice *advice, const RwAdviceCheck *offer);

/* "20 min, and 3 min to prove it · cheap"; without advice "20 min · cheap". @advice: (nullable) */
char *rw_card_words_repair_facts (RwAdvice *advice, const RwCause *cause);

/* "Repair · 62 % likely: Edge connector oxidised"; without advice "Repair: Edge connector oxidised". @advice:
 * (nullable) */
char *rw_card_words_repair_kicker (RwAdvice *advice, const RwCause *cause);

/* Why to repair: the minutes of both ways when it is suggested, else, when it was @chosen, only what the cause is.
 * @advice: (nullable) */
char *rw_card_words_repair_why (RwAdvice *advice, const RwCause *cause, gboolean chosen);

G_END_DECLS
