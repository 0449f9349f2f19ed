/* plan-policy.c: what following a rule costs, until fixed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Weights are left unnormalised, so the cost of a state depends on what was seen and repaired
 * and not on the order, and is worked out once.
 */
#include "config.h"

#include "plan-policy.h"

#include <stdlib.h>

#include "rw-repair-order.h"

static const double rare = 1e-6;

typedef struct
{
  const RwProblem *believed;
  const RwProblem *truth;
  Policy           policy;
  gconstpointer    data;
  GHashTable      *known; /* bytes of the way here → double */
} Walk;

/* One byte for each check (outcome + 1) and each cause (1: repaired). */
static GBytes *
key_after (GBytes *way,
           guint   place,
           guint8  what)
{
  gsize size = 0;
  gpointer copy = g_memdup2 (g_bytes_get_data (way, &size), g_bytes_get_size (way));

  ((guint8 *) copy)[place] = what;
  return g_bytes_new_take (copy, size);
}

static double
repair_through (const RwProblem   *problem,
                const RwPlanState *state)
{
  g_autofree double *minutes = g_new (double, problem->n_causes);

  for (guint i = 0; i < problem->n_causes; i++)
    minutes[i] = problem->causes[i].repair_minutes;
  return rw_repair_cost (problem->n_causes, state->weights, minutes);
}

static double walk (Walk *self, const RwPlanState *believed, const RwPlanState *truth,
                    GBytes *way);

static double
follow (Walk              *self,
        const RwPlanState *believed,
        const RwPlanState *truth,
        GBytes            *way)
{
  const PolicyMove move = self->policy (self->believed, believed, self->data);
  const double mass = rw_plan_state_mass (truth, self->truth);
  double cost = 0;

  if (move.kind == RW_ACTION_REPAIR)
    {
      g_autoptr (RwPlanState) b = rw_plan_state_after_repair (believed, self->believed, move.index);
      g_autoptr (RwPlanState) t = rw_plan_state_after_repair (truth, self->truth, move.index);
      g_autoptr (GBytes) next = key_after (way, self->truth->n_checks + move.index, 1);

      g_assert_cmpfloat (believed->weights[move.index], >, 0);
      return self->truth->causes[move.index].repair_minutes * mass + walk (self, b, t, next);
    }
  g_assert_cmpint (move.kind, ==, RW_ACTION_CHECK);
  g_assert_false (believed->used[move.index]);
  cost = self->truth->checks[move.index].minutes * mass;
  for (guint o = 0; o < self->truth->checks[move.index].n_outcomes; o++)
    {
      g_autoptr (RwPlanState) b = rw_plan_state_after_check (believed, self->believed, move.index,
                                                             o);
      g_autoptr (RwPlanState) t = rw_plan_state_after_check (truth, self->truth, move.index, o);
      g_autoptr (GBytes) next = key_after (way, move.index, (guint8) (o + 1));

      cost += walk (self, b, t, next);
    }
  return cost;
}

/* Minutes × weight. */
static double
walk (Walk              *self,
      const RwPlanState *believed,
      const RwPlanState *truth,
      GBytes            *way)
{
  const double mass = rw_plan_state_mass (truth, self->truth);
  const double *known = g_hash_table_lookup (self->known, way);

  if (!(mass > 0))
    return 0;
  if (known != NULL)
    return *known;
  if (mass < rare)
    return repair_through (self->truth, truth);

  double *cost = g_new (double, 1);

  *cost = follow (self, believed, truth, way);
  g_hash_table_insert (self->known, g_bytes_ref (way), cost);
  return *cost;
}

double
policy_cost (const RwProblem *believed,
             const RwProblem *truth,
             Policy           policy,
             gconstpointer    data)
{
  g_autoptr (GHashTable) known
      = g_hash_table_new_full (g_bytes_hash, g_bytes_equal, (GDestroyNotify) g_bytes_unref, g_free);
  g_autoptr (RwPlanState) b = rw_plan_state_new (believed);
  g_autoptr (RwPlanState) t = rw_plan_state_new (truth);
  const guint size = truth->n_checks + truth->n_causes;
  g_autoptr (GBytes) way = g_bytes_new_take (g_malloc0 (size), size);
  Walk self = { believed, truth, policy, data, known };

  return walk (&self, b, t, way);
}

PolicyMove
policy_search (const RwProblem   *problem,
               const RwPlanState *state,
               gconstpointer      data)
{
  g_autoptr (RwPlanChoice) choice = rw_plan_search (problem, state, data);

  return (PolicyMove){ choice->best.kind, choice->best.index };
}

static int
compare_doubles (const void *a,
                 const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

PolicySummary
policy_sum_up (double *percent,
               guint   n)
{
  PolicySummary sum = { 0 };

  qsort (percent, n, sizeof *percent, compare_doubles);
  for (guint k = 0; k < n; k++)
    {
      sum.mean += percent[k] / n;
      sum.within += percent[k] <= 1 ? 1.0 / n : 0;
    }
  sum.p95 = percent[n * 95 / 100];
  sum.worst = percent[n - 1];
  return sum;
}
