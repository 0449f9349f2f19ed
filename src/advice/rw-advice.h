/* rw-advice.h: what to do next, and why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of knowledge, bench state and the checks a person does not want. Immutable and
 * reference-counted (atomically), so it can be made in a thread.
 */
#pragma once

#include "rw-belief.h"
#include "rw-plan-search.h"

G_BEGIN_DECLS

typedef enum
{
  RW_ADVICE_CHECK,   /* take a check */
  RW_ADVICE_REPAIR,  /* repair now: no check pays */
  RW_ADVICE_DONE,    /* fixed */
  RW_ADVICE_NOTHING, /* the knowledge has no cause for this cabinet */
} RwAdviceKind;

typedef struct
{
  const RwCheck *check;
  double         minutes;       /* change of setup included */
  double         setup_minutes; /* the change of setup alone */
  double         expected;      /* expected minutes until fixed when it is taken first */
  double         saves;         /* minutes saved against repairing straight away; may be < 0 */
} RwAdviceCheck;

/* One outcome of the suggested check. */
typedef struct
{
  const RwOutcome *outcome;
  double           chance;      /* of seeing it, 0 … 1 */
  const RwCause   *likely;      /* likeliest cause then; NULL when the outcome cannot happen */
  double           likely_p;    /* that it is there then */
  RwActionKind     next;        /* what follows */
  const char      *next_id;     /* check or cause id; NULL for none */
  const char      *next_title;  /* for people */
  double           expected;    /* minutes to go after it */
} RwAdviceOutcome;

/* Two causes that the suggested check tells apart, and what mixing them up costs (terms of
 * all pairs sum to the check's value of one step). */
typedef struct
{
  const RwCause *a;
  const RwCause *b;
  double         minutes;
} RwAdvicePair;

typedef struct _RwAdvice RwAdvice;

/* @knowledge: whole or restricted; restricted to the state's profile here. @skipped: (nullable)
 * (element-type utf8 utf8) a set of check ids not to be offered. (transfer full) */
RwAdvice *rw_advice_new (RwKnowledge *knowledge, RwBenchState *state, GHashTable *skipped);
RwAdvice *rw_advice_ref (RwAdvice *self);
void      rw_advice_unref (RwAdvice *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwAdvice, rw_advice_unref)

RwAdviceKind rw_advice_get_kind (const RwAdvice *self);
RwBelief    *rw_advice_get_belief (const RwAdvice *self);    /* borrowed */
RwKnowledge *rw_advice_get_knowledge (const RwAdvice *self); /* for the profile; borrowed */

/* The suggested check; NULL unless the kind is CHECK. */
const RwAdviceCheck *rw_advice_get_check (const RwAdvice *self);

/* The best repair now, also while a check is suggested (likeliest per minute); with the kind
 * DONE the cause that was fixed; NULL when there is none. Of two faults the one to repair first;
 * rw_advice_get_repair_then () is the other, NULL when it is one fault. */
const RwCause *rw_advice_get_repair (const RwAdvice *self);
const RwCause *rw_advice_get_repair_then (const RwAdvice *self);

/* Minutes of a cause's repair and of proving it: the checks to be taken again after it, or 3 minutes where none
 * is named. A repair that was no cure costs the same. *proof (nullable): the second part alone. */
double rw_advice_get_repair_minutes (const RwAdvice *self, const RwCause *cause, double *proof);

/* Expected minutes until fixed: following the advice; repairing straight away by chance per
 * minute; and if the cause were known. */
double rw_advice_get_expected (const RwAdvice *self);
double rw_advice_get_repairs_only (const RwAdvice *self);
double rw_advice_get_perfect (const RwAdvice *self);

/* Sure enough: repairing is better now than measuring on. The minutes until fixed of both ways: the best repair
 * first and then what is best; the best check first (NAN: there is none to take). */
gboolean rw_advice_is_sure_enough (const RwAdvice *self);
double   rw_advice_get_repair_first (const RwAdvice *self);
double   rw_advice_get_check_first (const RwAdvice *self);

/* The same as a translated sentence. NULL unless the kind is CHECK or REPAIR. (transfer full) (nullable) */
char *rw_advice_dup_sure (const RwAdvice *self);

/* How far one must look to find a reading that pays. */
typedef enum
{
  RW_ADVICE_ONE_READING,  /* one alone can change what is done next, and saves more than it takes */
  RW_ADVICE_TWO_READINGS, /* none alone, but two or more together; the suggestion is the first of them */
  RW_ADVICE_NO_READING,   /* none */
} RwAdviceReach;
RwAdviceReach rw_advice_get_reach (const RwAdvice *self);

/* A translated sentence about it. NULL for ONE_READING and unless the kind is CHECK or REPAIR. (transfer full)
 * (nullable) */
char *rw_advice_dup_reach (const RwAdvice *self);

/* Why: what each outcome of the suggested check would tell. */
guint                  rw_advice_get_n_outcomes (const RwAdvice *self);
const RwAdviceOutcome *rw_advice_get_outcome (const RwAdvice *self, guint i);
guint                  rw_advice_get_n_pairs (const RwAdvice *self); /* 0 … 3, the dearest first */
const RwAdvicePair    *rw_advice_get_pair (const RwAdvice *self, guint i);

/* Every check that could be taken now, the suggested one first if there is one, then by
 * expected minutes. */
guint                rw_advice_get_n_checks (const RwAdvice *self);
const RwAdviceCheck *rw_advice_get_ranked (const RwAdvice *self, guint i);

/* The best action from a state of this advice's problem, within @budget, as rw_plan_search has
 * it. *expected (nullable): minutes to go. */
RwActionKind rw_advice_decide (const RwAdvice *self, const RwPlanState *state,
                               const RwPlanBudget *budget, guint *index, double *expected);

/* The bare problem behind it and where one stands; borrowed. Checks have the indices of the restricted knowledge,
 * and so have single causes; behind those come the pairs of rw_belief_get_pair (), in order, each as one cause
 * whose repair is both. Answered and skipped checks are marked used. */
const RwProblem   *rw_advice_get_problem (const RwAdvice *self);
const RwPlanState *rw_advice_get_state (const RwAdvice *self);

/* The cause behind an index of the problem; of a pair the one that is repaired first, and *then (nullable) the
 * other, NULL when it is one. */
const RwCause *rw_advice_get_cause (const RwAdvice *self, guint index, const RwCause **then);

/* The index in the problem of what rw_advice_get_repair () is the first part of; −1 when there is none. */
int rw_advice_get_repair_index (const RwAdvice *self);

/* The likeliest cause in a state of the problem, alone or in a pair, and *p (nullable) its share of the state.
 * NULL when nothing has weight. */
const RwCause *rw_advice_get_likely (const RwAdvice *self, const RwPlanState *state, double *p);

G_END_DECLS
