/* rw-hypotheses.c: what can be wrong: each cause by itself, and each two that can come together.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Priors. With p_i the chance of cause i alone among all (its share of the knowledge's weights), two independent
 * faults a and b are there together with a chance in proportion to p_a · p_b:
 *   prior (a, b) ∝ r · p_a · p_b · f_ab,   prior (i) ∝ p_i,
 * r = RW_SECOND_FAULT and f_ab what the knowledge says under "often_with" (1 where it says nothing; the larger
 * where both causes name each other). For faults with small independent chances π_i, p_i = o_i / Σ o with the odds
 * o = π / (1 − π), this is the exact prior of "one or two faults" with r = Σ o. 0.15 is an estimate: of cabinets
 * that come in with a fault, about one in fifteen has a second one that matters.
 * Causes of the area "none" (nothing wrong with the supply or wiring), those that stand for all others, and causes
 * of one same part do not come together.
 *
 * Likelihoods of pairs: rw_chance_table_fill_pair (). A broad cause ("other") stands for all that is not listed, of
 * which nobody knows what it shows; it gets the mean row of all listed hypotheses by their priors, mixed with a
 * uniform share ε:
 *   P (o | other) = (1 − ε) Σ_h prior_h P (o | h) / Σ_h prior_h + ε / outcomes.
 * So it loses a little to the causes that explain a thing and gains on those that do not: after things seen
 * e_1 … e_k its odds against all listed together have changed by about ∏ P (e) / P (all e), which is 2 to the power
 * of Jensen's conflict measure. It grows just when the things seen do not fit together under what is listed.
 */
#include "config.h"

#include "rw-hypotheses.h"

#include <string.h>

#include "rw-problem.h"

static const double uniform_share = 0.05;

/* --- making ------------------------------------------------------------------------------------- */

static double
times_of (const RwCause *a,
          const RwCause *b)
{
  const double *ab = g_hash_table_lookup (a->often_with, b->id);
  const double *ba = g_hash_table_lookup (b->often_with, a->id);

  if (ab != NULL && ba != NULL)
    return MAX (*ab, *ba);
  return ab != NULL ? *ab : ba != NULL ? *ba : 1;
}

static gboolean
stands_alone (const RwCause *cause)
{
  return cause->broad || g_str_equal (cause->area, "none");
}

static gboolean
can_come_together (const RwCause *a,
                   const RwCause *b)
{
  return !stands_alone (a) && !stands_alone (b) && (a->part == NULL || a->part != b->part)
         && times_of (a, b) > 0;
}

static void
add_pairs (RwHypotheses *self,
           double        second)
{
  self->pairs = g_new (RwTwoCauses, MAX (1, self->n * (self->n - 1) / 2));
  for (guint b = 1; b < self->n && second > 0; b++)
    for (guint a = 0; a < b; a++)
      {
        const RwCause *one = rw_knowledge_get_cause (self->knowledge, a);
        const RwCause *other = rw_knowledge_get_cause (self->knowledge, b);

        if (!can_come_together (one, other))
          continue;
        self->prior[self->n + self->n_pairs] = second * self->prior[a] * self->prior[b]
                                               * times_of (one, other);
        self->pairs[self->n_pairs++] = (RwTwoCauses) { a, b };
      }
  self->n_all = self->n + self->n_pairs;
}

static void
scale (double *values,
       guint   n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += values[i];
  for (guint i = 0; i < n; i++)
    values[i] /= sum;
}

RwHypotheses *
rw_hypotheses_new (const RwKnowledge *knowledge,
                   double             second)
{
  RwHypotheses *self = g_new0 (RwHypotheses, 1);

  self->knowledge = knowledge;
  self->n = rw_knowledge_get_n_causes (knowledge);
  self->prior = g_new0 (double, MAX (1, self->n * (self->n + 1) / 2));
  self->broad = g_new0 (gboolean, MAX (1, self->n));
  for (guint i = 0; i < self->n; i++)
    {
      self->prior[i] = rw_knowledge_get_cause (knowledge, i)->prior;
      self->broad[i] = rw_knowledge_get_cause (knowledge, i)->broad;
    }
  scale (self->prior, self->n);
  add_pairs (self, second);
  scale (self->prior, self->n_all);
  return self;
}

void
rw_hypotheses_free (RwHypotheses *self)
{
  if (self == NULL)
    return;
  g_free (self->pairs);
  g_free (self->broad);
  g_free (self->prior);
  g_free (self);
}

int
rw_hypotheses_find_pair (const RwHypotheses *self,
                         guint               a,
                         guint               b)
{
  for (guint k = 0; k < self->n_pairs; k++)
    if (self->pairs[k].a == MIN (a, b) && self->pairs[k].b == MAX (a, b))
      return (int) (self->n + k);
  return -1;
}

/* --- chances ------------------------------------------------------------------------------------ */

/* The rows of the causes, looked up once. (transfer full) */
static const double **
rows_of (const RwHypotheses  *self,
         const RwChanceTable *table)
{
  const double **rows = g_new (const double *, MAX (1, self->n));

  for (guint i = 0; i < self->n; i++)
    rows[i] = rw_chance_table_get (table, rw_knowledge_get_cause (self->knowledge, i)->id);
  return rows;
}

/* Σ weights · row; of a table with one outcome the second weight is of its opposite. */
static double
weigh (const double *row,
       const double *weights,
       guint         n)
{
  double sum = 0;

  if (n == 1)
    return weights[0] * row[0] + weights[1] * (1 - row[0]);
  for (guint o = 0; o < n; o++)
    sum += weights[o] * row[o];
  return sum;
}

/* P (o | @hypothesis), which is not broad. */
static void
fill_row (const RwHypotheses  *self,
          const RwChanceTable *table,
          const double *const *rows,
          guint                hypothesis,
          double              *row)
{
  if (hypothesis < self->n)
    {
      memcpy (row, rows[hypothesis], table->n_outcomes * sizeof *row);
      return;
    }

  const RwTwoCauses pair = self->pairs[hypothesis - self->n];

  rw_chance_table_fill_pair (table, rows[pair.a], rows[pair.b], row);
}

/* Adds @share of a row. */
static void
add_row (double       *sum,
         const double *row,
         double        share,
         guint         n)
{
  for (guint o = 0; o < n; o++)
    sum[o] += share * row[o];
}

/* What "other" shows, from what the listed hypotheses do. */
static void
fill_broad (const RwHypotheses  *self,
            const RwChanceTable *table,
            const double *const *rows,
            double              *broad)
{
  const guint n = table->n_outcomes;
  const double flat = 1.0 / MAX (n, 2);
  double row[RW_PROBLEM_MAX_OUTCOMES];
  double mass = 0;

  for (guint o = 0; o < n; o++)
    broad[o] = 0;
  for (guint h = 0; h < self->n_all; h++)
    {
      if (h < self->n && self->broad[h])
        continue;
      fill_row (self, table, rows, h, row);
      add_row (broad, row, self->prior[h], n);
      mass += self->prior[h];
    }
  for (guint o = 0; o < n; o++)
    broad[o] = mass > 0 ? (1 - uniform_share) * broad[o] / mass + uniform_share * flat : flat;
}

/* The row of a broad cause; NULL when there is none. (transfer full) (nullable) */
static double *
broad_of (const RwHypotheses  *self,
          const RwChanceTable *table,
          const double *const *rows)
{
  for (guint i = 0; i < self->n; i++)
    if (self->broad[i])
      {
        double *broad = g_new (double, table->n_outcomes);

        fill_broad (self, table, rows, broad);
        return broad;
      }
  return NULL;
}

void
rw_hypotheses_fill (const RwHypotheses  *self,
                    const RwChanceTable *table,
                    const double        *weights,
                    double              *likelihood)
{
  g_autofree const double **rows = rows_of (self, table);
  g_autofree double *broad = broad_of (self, table, rows);
  double row[RW_PROBLEM_MAX_OUTCOMES];

  for (guint h = 0; h < self->n_all; h++)
    {
      if (h < self->n && self->broad[h])
        {
          likelihood[h] = weigh (broad, weights, table->n_outcomes);
          continue;
        }
      fill_row (self, table, rows, h, row);
      likelihood[h] = weigh (row, weights, table->n_outcomes);
    }
}

void
rw_hypotheses_fill_rows (const RwHypotheses  *self,
                         const RwChanceTable *table,
                         const guint         *wanted,
                         guint                n_wanted,
                         double              *out)
{
  const guint n = table->n_outcomes;
  g_autofree const double **rows = rows_of (self, table);
  g_autofree double *broad = broad_of (self, table, rows);

  for (guint k = 0; k < n_wanted; k++)
    if (wanted[k] < self->n && self->broad[wanted[k]])
      memcpy (out + k * n, broad, n * sizeof *out);
    else
      fill_row (self, table, rows, wanted[k], out + k * n);
}
