/* rw-trim-evidence.h: what the window of the trim, or the want of one, says about the cause.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* Outcomes of the computed finding "trim-window"; the knowledge names them by their ids. */
typedef enum
{
  RW_TRIM_NONE_SUITS,   /* "none-suits": no position has every rail inside */
  RW_TRIM_HIGHER_SUITS, /* "higher-suits": one has, above where the screw stands */
  RW_TRIM_LOWER_SUITS,  /* "lower-suits": one has, below */
  RW_TRIM_THIS_SUITS,   /* "this-suits": the screw stands in it */
  RW_N_TRIM_OUTCOMES
} RwTrimOutcome;

/* (nullable): no such outcome. */
const char *rw_trim_outcome_to_id (RwTrimOutcome outcome);

/* The newest set whose window is worth counting: every rail in it, the board fitted, at the board or
 * at the terminals, and either two positions or a window that is, or is not, there with a chance of
 * 0.95. (nullable), borrowed from @state. */
const RwTrimSet *rw_trim_evidence_find (const RwBenchState *state);

/* How much of each outcome the set is, 0 … 1; the formula stands at the head of the .c. Where nobody
 * knows where the screw stands the last three all count in full, since only "one of them" is known.
 * @weights: [RW_N_TRIM_OUTCOMES] */
void rw_trim_evidence_weigh (const RwTrimSet *set, double *weights);

/* The rails or the volts that an outcome of the set is about, "−5 V and +12 V rule each other out".
 * Translated. NULL when there is nothing more to say. (transfer full) (nullable) */
char *rw_trim_evidence_detail (const RwTrimSet *set, RwTrimOutcome outcome);

/* One translated sentence: what having no window usually means, for the two rails that rule each other
 * out. NULL when there is a window, or nothing can be told. (transfer full) (nullable) */
char *rw_trim_evidence_why (const RwTrimSet *set);

G_END_DECLS
