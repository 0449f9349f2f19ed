/* rw-belief-rank.h: which pairs of causes are worth speaking of. For rw-belief alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-belief.h"

G_BEGIN_DECLS

/* Minutes of a repair and of proving it, and the second part alone: the checks to be taken again (those that
 * apply to the cabinet), or 3 minutes where there are none. *proof: (nullable). */
double rw_belief_repair_minutes (const RwKnowledge *knowledge, const RwCause *cause, double *proof);

/* Pair @k of @hypotheses, the cause to repair first as a. @w: weights of all hypotheses; @p: of each cause being
 * there. */
RwPairBelief rw_belief_pair_of (const RwHypotheses *hypotheses, guint k, const double *w, const double *p);

/* @w: normalised weights of all hypotheses; @p: of each cause being there. The pairs above 0.5 %, or among the ten
 * likeliest hypotheses, but no more than 12; the likeliest first. (transfer full) (element-type RwPairBelief) */
GArray *rw_belief_rank_pairs (const RwHypotheses *hypotheses, const double *w, const double *p);

G_END_DECLS
