/* rw-belief.h: how likely each cause is, given everything seen, and what each thing seen did to it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"
#include "rw-knowledge.h"

G_BEGIN_DECLS

typedef enum
{
  RW_EVIDENCE_SYMPTOM,  /* id: symptom; answer: "present" or "absent" */
  RW_EVIDENCE_FINDING,  /* id: check; answer: outcome clicked by hand */
  RW_EVIDENCE_READING,  /* id: check; answer: likeliest outcome of the value */
  RW_EVIDENCE_REPAIR,   /* id: cause whose repair changed nothing; answer: "no-change" */
  RW_EVIDENCE_COMPUTED, /* id: computed entry; answer: its likeliest outcome */
} RwEvidenceKind;

typedef struct
{
  RwEvidenceKind kind;
  guint          n;      /* event number */
  double         t;      /* seconds */
  const char    *id;     /* interned */
  const char    *answer; /* interned */
  char          *title;  /* for people, translated: "Resets by itself: present" */
  gboolean       fence;   /* READING, COMPUTED: no outcome has 0.95 of it; all count in their share */
  gboolean       strange; /* no cause listed can show this with the rest; it was softened */
} RwEvidence;

typedef struct
{
  const RwCause *cause;
  guint          index; /* in the knowledge (restricted to the profile) */
  double         p;     /* 0 … 1 */
  double         prior; /* 0 … 1 */
  gboolean       tried; /* its repair was done and changed nothing */
} RwCauseBelief;

/* Immutable and reference-counted. */
typedef struct _RwBelief RwBelief;

/* @knowledge: restricted to the state's profile. Exact Bayes over single causes. (transfer full) */
RwBelief *rw_belief_new (RwKnowledge *knowledge, RwBenchState *state);
RwBelief *rw_belief_ref (RwBelief *self);
void      rw_belief_unref (RwBelief *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwBelief, rw_belief_unref)

/* Causes, the likeliest first (ties in the order of the knowledge). */
guint                rw_belief_get_n_causes (const RwBelief *self);
const RwCauseBelief *rw_belief_get_cause (const RwBelief *self, guint rank);
/* (nullable) */
const RwCauseBelief *rw_belief_find_cause (const RwBelief *self, const char *cause);

/* Posterior by index in the knowledge. */
double rw_belief_get_p (const RwBelief *self, guint index);

/* Evidence in the order it came. */
guint             rw_belief_get_n_evidence (const RwBelief *self);
const RwEvidence *rw_belief_get_evidence (const RwBelief *self, guint i);

/* What evidence @i did to the odds of the cause against all the rest: > 1 for, < 1 against.
 * prior odds × all factors = posterior odds, exactly (chain rule, in the order of the evidence). */
double rw_belief_get_factor (const RwBelief *self, guint rank, guint i);

/* The cause whose repair fixed the cabinet and has not been contradicted since; NULL while
 * looking. */
const RwCause *rw_belief_get_fixed (const RwBelief *self);

/* TRUE when a live, still valid finding or reading answers the check. */
gboolean rw_belief_is_answered (const RwBelief *self, const char *check);

/* log2 of ∏P(e)/P(all e), Jensen's conflict measure: above 0 the things seen do not fit one
 * listed cause. */
double rw_belief_get_conflict (const RwBelief *self);

/* The setup a reading was taken in, what nobody said filled in from what was measured where. */
RwSetup rw_belief_complete_setup (RwSetup said, RwPlace place, RwKind kind);

G_END_DECLS
