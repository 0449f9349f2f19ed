/* rw-evidence.h: what was seen, as likelihoods of each hypothesis. For rw-belief alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-belief.h"

G_BEGIN_DECLS

/* P (a repair of the very cause changes nothing): it can be done badly. Also P (a symptom goes by itself just
 * after a repair that had nothing to do with it). */
#define RW_REPAIR_RESIDUAL 0.05

typedef struct
{
  RwEvidence shown;
  double    *likelihood; /* [all hypotheses] P (seen | hypothesis) */
  int        repaired;   /* REPAIR: index of its cause; else −1 */
  gboolean   partly;     /* REPAIR: a symptom went, another stayed */
} RwObservation;

void rw_observation_free (RwObservation *self);

/* Everything that counts, in the order of the events. *fixed: the cause whose repair ended
 * the job, or NULL. (transfer full) (element-type RwObservation) */
GPtrArray *rw_evidence_gather (const RwHypotheses *hypotheses, const RwBenchState *state,
                               const RwCause **fixed);

/* The repair that fixed the cabinet and has not been contradicted since. (nullable) */
const RwRepairSeen *rw_evidence_find_fix (const RwBenchState *state);

/* Share of a reading's value that falls into each outcome of the check, summing to 1. FALSE
 * when the reading tells nothing (an overload that may lie on either side). */
gboolean rw_evidence_weigh (const RwCheck *check, const RwSpotState *spot, double *weights);

G_END_DECLS
