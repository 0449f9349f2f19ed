/* rw-evidence-private.h: the parts that evidence is gathered in.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-evidence.h"

G_BEGIN_DECLS

/* A gathering. Borrows all but the list. */
typedef struct
{
  GPtrArray          *list; /* of RwObservation */
  const RwHypotheses *hypotheses;
  const RwKnowledge  *knowledge;
  const RwBenchState *state;
  guint               helped; /* event of the last repair that helped in part; 0: none */
} RwGathering;

/* A new one in the list, all likelihoods 1. Takes @title. */
RwObservation *rw_gathering_observe (RwGathering *self, RwEvidenceKind kind, guint n, double t, const char *id,
                                     const char *answer, char *title);

gboolean rw_gathering_is_told (const RwGathering *self, RwEvidenceKind kind, const char *id);

/* Its likelihoods: of the outcomes, each in its share. */
void rw_gathering_take (const RwGathering *self, RwObservation *it, const RwChanceTable *table,
                        const double *weights);

guint rw_evidence_likeliest (const double *weights, guint n);

/* Share of a value, normal with standard uncertainty @u, in the range of each outcome, summing to 1. */
void rw_evidence_weigh_value (const RwOutcome *outcomes, guint n, double value, double u, double *weights);

/* A reading that answers a check. */
typedef struct
{
  const RwCheck     *check;
  const RwSpotState *spot;
} RwAnswer;

/* How a reading hangs on another of the same rail. */
typedef struct
{
  int               base;     /* index of the other; −1: on none */
  const RwComputed *computed; /* what their difference tells; NULL: nothing is known of it */
  double            value;    /* the difference, volts */
  double            u;        /* its standard uncertainty */
  gboolean          told;     /* readings along the wires tell it already */
} RwDependence;

/* Links never form a ring. */
void rw_evidence_find_dependence (const RwGathering *self, const RwAnswer *answers, guint n, guint i,
                                  RwDependence *out);

void rw_evidence_gather_readings (RwGathering *self);
void rw_evidence_gather_trim (RwGathering *self);

G_END_DECLS
