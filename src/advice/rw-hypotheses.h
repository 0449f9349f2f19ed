/* rw-hypotheses.h: what can be wrong: each cause by itself, and each two that can come together.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Index 0 … n − 1: the cause of that index alone ("other", which stands for all causes not listed, is one of
 * them); n …: the pairs.
 */
#pragma once

#include "rw-knowledge.h"

G_BEGIN_DECLS

typedef struct
{
  guint a, b; /* causes, a < b */
} RwTwoCauses;

/* Immutable, all fields read-only. Borrows the knowledge's causes. */
typedef struct
{
  const RwKnowledge *knowledge;
  guint              n;       /* causes */
  guint              n_pairs;
  guint              n_all;   /* n + n_pairs */
  RwTwoCauses       *pairs;   /* [n_pairs] */
  gboolean          *broad;   /* [n] */
  double            *prior;   /* [n_all], sums to 1 */
} RwHypotheses;

/* A second fault's share: two independent faults have p_a · p_b times this, and times what the knowledge says
 * of causes that often come together. */
#define RW_SECOND_FAULT 0.15

/* @second: RW_SECOND_FAULT, or another share; 0: no pairs. @knowledge must outlive it. (transfer full) */
RwHypotheses *rw_hypotheses_new (const RwKnowledge *knowledge, double second);
void          rw_hypotheses_free (RwHypotheses *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwHypotheses, rw_hypotheses_free)

/* Index of the pair of causes @a and @b in either order, or −1 when they cannot come together. */
int rw_hypotheses_find_pair (const RwHypotheses *self, guint a, guint b);

/* Σ_o weights[o] P (o | hypothesis) for every hypothesis. A table of one "outcome" takes two weights: of it and of
 * its opposite. @likelihood: [n_all]. O(n_all · outcomes) */
void rw_hypotheses_fill (const RwHypotheses *self, const RwChanceTable *table, const double *weights,
                         double *likelihood);

/* P (o | hypothesis) of a check's every outcome. @rows: [n_wanted][n_outcomes], the hypotheses @wanted in order. */
void rw_hypotheses_fill_rows (const RwHypotheses *self, const RwChanceTable *table, const guint *wanted,
                              guint n_wanted, double *rows);

G_END_DECLS
