/* rw-belief-rank.c: which pairs of causes are worth speaking of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of the two causes of a pair the likelier per minute of repair (and of proving it) comes first: so their repairs
 * are best ordered when both must be tried anyway.
 */
#include "config.h"

#include "rw-belief-rank.h"

#include <stdlib.h>

#define MOST_PAIRS 12
#define FIRST_FEW 10

static const double worth_speaking_of = 0.005;
static const double usual_proof = 3; /* minutes */

double
rw_belief_repair_minutes (const RwKnowledge *knowledge,
                          const RwCause     *cause,
                          double            *proof)
{
  double checks = 0;

  for (const char **id = cause->repair.recheck; *id != NULL; id++)
    {
      const RwCheck *check = rw_knowledge_find_check (knowledge, *id);

      checks += check != NULL ? check->minutes : 0;
    }
  if (!(checks > 0))
    checks = usual_proof;
  if (proof != NULL)
    *proof = checks;
  return cause->repair.minutes + checks;
}

RwPairBelief
rw_belief_pair_of (const RwHypotheses *hypotheses,
                   guint               k,
                   const double       *w,
                   const double       *p)
{
  const RwTwoCauses pair = hypotheses->pairs[k];
  const RwCause *a = rw_knowledge_get_cause (hypotheses->knowledge, pair.a);
  const RwCause *b = rw_knowledge_get_cause (hypotheses->knowledge, pair.b);
  const double minutes_a = rw_belief_repair_minutes (hypotheses->knowledge, a, NULL);
  const double minutes_b = rw_belief_repair_minutes (hypotheses->knowledge, b, NULL);

  if (p[pair.b] * minutes_a > p[pair.a] * minutes_b)
    return (RwPairBelief) { b, a, pair.b, pair.a, w[hypotheses->n + k] };
  return (RwPairBelief) { a, b, pair.a, pair.b, w[hypotheses->n + k] };
}

static int
compare_pairs (gconstpointer a,
               gconstpointer b)
{
  const double x = ((const RwPairBelief *) a)->p;
  const double y = ((const RwPairBelief *) b)->p;

  return (x < y) - (x > y);
}

static int
compare_doubles_down (const void *a,
                      const void *b)
{
  const double x = *(const double *) a;
  const double y = *(const double *) b;

  return (x < y) - (x > y);
}

/* The least weight of those that are among the first few. */
static double
weight_of_few (const RwHypotheses *hypotheses,
               const double       *w)
{
  const guint n = hypotheses->n_all;
  g_autofree double *sorted = g_memdup2 (w, n * sizeof *w);

  if (n <= FIRST_FEW)
    return 0;
  qsort (sorted, n, sizeof *sorted, compare_doubles_down);
  return sorted[FIRST_FEW - 1];
}

GArray *
rw_belief_rank_pairs (const RwHypotheses *hypotheses,
                      const double       *w,
                      const double       *p)
{
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (RwPairBelief));
  const double least = MIN (worth_speaking_of, weight_of_few (hypotheses, w));

  for (guint k = 0; k < hypotheses->n_pairs; k++)
    {
      const double weight = w[hypotheses->n + k];

      if (weight > 0 && (weight > worth_speaking_of || weight >= least))
        {
          const RwPairBelief pair = rw_belief_pair_of (hypotheses, k, w, p);

          g_array_append_val (pairs, pair);
        }
    }
  g_array_sort (pairs, compare_pairs);
  if (pairs->len > MOST_PAIRS)
    g_array_set_size (pairs, MOST_PAIRS);
  return pairs;
}
