/* rw-evidence.h: what was seen, as likelihoods of each cause. For rw-belief alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-belief.h"

G_BEGIN_DECLS

typedef struct
{
  RwEvidence shown;
  double    *likelihood; /* [causes of the knowledge] P (seen | cause) */
} RwObservation;

void rw_observation_free (RwObservation *self);

/* Everything that counts, in the order of the events. *fixed: the cause whose repair ended
 * the job, or NULL. (transfer full) (element-type RwObservation) */
GPtrArray *rw_evidence_gather (const RwKnowledge *knowledge, const RwBenchState *state,
                               const RwCause **fixed);

/* Share of a reading's value that falls into each outcome of the check, summing to 1. FALSE
 * when the reading tells nothing (an overload that may lie on either side). */
gboolean rw_evidence_weigh (const RwCheck *check, const RwSpotState *spot, double *weights);

G_END_DECLS
