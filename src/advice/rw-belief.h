/* rw-belief.h: how likely each cause is, given everything seen, and what each thing seen did to it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"
#include "rw-hypotheses.h"

G_BEGIN_DECLS

typedef enum
{
  RW_EVIDENCE_SYMPTOM,  /* id: symptom; answer: "present" or "absent" */
  RW_EVIDENCE_FINDING,  /* id: check; answer: outcome clicked by hand */
  RW_EVIDENCE_READING,  /* id: check; answer: likeliest outcome of the value */
  RW_EVIDENCE_REPAIR,   /* id: cause whose repair was no cure; answer: "no-change", or "partly" when a
                         * symptom was cured after it, before the next repair, and another stays */
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
  gboolean       dependent; /* READING: other readings of this rail tell the same; it counts in part, and their
                             * differences (COMPUTED) beside it */
  gboolean       outdated;  /* READING, FINDING: a repair has helped in part since; it tells of what was there,
                             * and is worth taking again */
} RwEvidence;

typedef struct
{
  const RwCause *cause;
  guint          index; /* in the knowledge (restricted to the profile) */
  double         p;     /* that it is there, alone or with another; 0 … 1 */
  double         prior; /* the same before anything was seen */
  gboolean       tried; /* its repair was done and changed nothing */
  double         alone; /* that it is the only fault, ≤ p */
} RwCauseBelief;

/* Two faults at a time. */
typedef struct
{
  const RwCause *a; /* the one to repair first: the likelier per minute */
  const RwCause *b;
  guint          index_a; /* in the knowledge (restricted to the profile) */
  guint          index_b;
  double         p;       /* that these two are there, 0 … 1 */
} RwPairBelief;

/* Immutable and reference-counted. */
typedef struct _RwBelief RwBelief;

/* @knowledge: restricted to the state's profile. Exact Bayes over single causes and pairs of them.
 * (transfer full) */
RwBelief *rw_belief_new (RwKnowledge *knowledge, RwBenchState *state);
RwBelief *rw_belief_ref (RwBelief *self);
void      rw_belief_unref (RwBelief *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwBelief, rw_belief_unref)

/* Causes, the likeliest first (ties in the order of the knowledge). Chances of causes that come in pairs overlap,
 * so they sum to more than 1 by the chance of two faults. */
guint                rw_belief_get_n_causes (const RwBelief *self);
const RwCauseBelief *rw_belief_get_cause (const RwBelief *self, guint rank);
/* (nullable) */
const RwCauseBelief *rw_belief_find_cause (const RwBelief *self, const char *cause);

/* Posterior by index in the knowledge: that the cause is there; that it is the only fault. */
double rw_belief_get_p (const RwBelief *self, guint index);
double rw_belief_get_alone (const RwBelief *self, guint index);

/* Pairs worth speaking of, the likeliest first: above 0.5 %, or among the ten likeliest of all hypotheses; at most
 * twelve. */
guint               rw_belief_get_n_pairs (const RwBelief *self);
const RwPairBelief *rw_belief_get_pair (const RwBelief *self, guint i);

/* That there are two faults, the pairs not listed too; that it is none of the causes listed. 0 … 1 */
double rw_belief_get_two (const RwBelief *self);
double rw_belief_get_other (const RwBelief *self);

/* Evidence in the order it came. */
guint             rw_belief_get_n_evidence (const RwBelief *self);
const RwEvidence *rw_belief_get_evidence (const RwBelief *self, guint i);

/* What evidence @i did to the odds that the cause is there: > 1 for, < 1 against.
 * prior odds × all factors = posterior odds, exactly (chain rule, in the order of the evidence). */
double rw_belief_get_factor (const RwBelief *self, guint rank, guint i);

/* The cause whose repair fixed the cabinet and has not been contradicted since; NULL while
 * looking. */
const RwCause *rw_belief_get_fixed (const RwBelief *self);

/* TRUE when a live, still valid finding or reading answers the check. */
gboolean rw_belief_is_answered (const RwBelief *self, const char *check);

/* log2 of ∏P(e)/P(all e) over the listed causes one at a time, Jensen's conflict measure: above 0 the things seen
 * do not fit one listed cause. */
double rw_belief_get_conflict (const RwBelief *self);

/* The conflict is above 0, and either "other" has a chance of at least RW_BELIEF_OTHER_HIGH or something seen is
 * strange. */
#define RW_BELIEF_OTHER_HIGH 0.2
gboolean rw_belief_says_no_fit (const RwBelief *self);

/* The same in a translated sentence: "These findings do not fit one cause I know. …". NULL when they do.
 * (transfer full) (nullable) */
char *rw_belief_dup_no_fit (const RwBelief *self);

/* Adds the chance of each pair that is not worth speaking of to that of its cause that is repaired first. @first: a
 * cause of the knowledge. */
void rw_belief_add_rest (const RwBelief *self, double *first);

/* What the chances are worked out over. Borrowed. */
const RwHypotheses *rw_belief_get_hypotheses (const RwBelief *self);

/* The setup a reading was taken in, what nobody said filled in from what was measured where. */
RwSetup rw_belief_complete_setup (RwSetup said, RwPlace place, RwKind kind);

G_END_DECLS
