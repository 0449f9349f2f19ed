/* plan-levels.c: large random problems whose checks read a value, and jobs run on them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "plan-levels.h"

#include <math.h>

#include "plan-fixtures.h"

static const double misplaced = 0.05;

struct _Levels
{
  RwProblem *problem;
  double    *sd;    /* [check] */
  guint     *level; /* [check · n_causes + cause] */
};

static double
below (double x)
{
  return 0.5 * erfc (-x / sqrt (2));
}

/* Chance that a value at @level is taken for @outcome: it lies nearest to it. */
static double
bin_chance (double sd,
            guint  level,
            guint  outcome,
            guint  n_levels)
{
  const double low = outcome == 0 ? 0 : below ((outcome - 0.5 - level) / sd);
  const double high = outcome + 1 == n_levels ? 1 : below ((outcome + 0.5 - level) / sd);

  return high - low;
}

/* Σ over levels, the cause's own and the others it may be misplaced to. */
typedef double (*AtLevel) (double sd, guint level, double at, guint n_levels);

static double
bin_at (double sd,
        guint  level,
        double at,
        guint  n_levels)
{
  return bin_chance (sd, level, (guint) at, n_levels);
}

static double
density_at (double sd,
            guint  level,
            double at,
            guint  n_levels)
{
  const double z = (at - level) / sd;

  return exp (-z * z / 2) / sd;
}

static double
mixed (AtLevel at_level,
       double  sd,
       guint   own,
       double  at,
       guint   n_levels)
{
  double sum = 0;

  for (guint l = 0; l < n_levels; l++)
    sum += at_level (sd, l, at, n_levels) * (l == own ? 1 - misplaced : misplaced / (n_levels - 1));
  return sum;
}

static void
draw_check (Levels *self,
            GRand  *random,
            guint   check,
            double  minutes)
{
  const guint n = self->problem->n_causes;
  const guint n_levels = (guint) g_rand_int_range (random, 2, 5);
  const double share = g_rand_double_range (random, 0.1, 0.5);
  g_autofree double *chance = g_new (double, n * n_levels);

  self->sd[check] = g_rand_double_range (random, 0.15, 0.35);
  for (guint i = 0; i < n; i++)
    {
      const gboolean abnormal = g_rand_double (random) < share;
      const guint own = abnormal ? (guint) g_rand_int_range (random, 1, (int) n_levels) : 0;

      self->level[check * n + i] = own;
      for (guint o = 0; o < n_levels; o++)
        chance[o * n + i] = mixed (bin_at, self->sd[check], own, o, n_levels);
    }
  fixture_check (self->problem, check, minutes, n_levels, chance);
}

Levels *
levels_new (GRand *random,
            Regime regime,
            guint  n_causes,
            guint  n_checks)
{
  Levels *self = g_new0 (Levels, 1);

  self->problem = family_problem_sized (random, FAMILY_EXACT_2, regime, n_causes, n_checks);
  self->sd = g_new (double, n_checks);
  self->level = g_new (guint, n_checks * n_causes);
  for (guint j = 0; j < n_checks; j++)
    {
      g_clear_pointer (&self->problem->checks[j].id, g_free);
      draw_check (self, random, j, self->problem->checks[j].minutes);
    }
  return self;
}

void
levels_free (Levels *self)
{
  rw_problem_free (self->problem);
  g_free (self->sd);
  g_free (self->level);
  g_free (self);
}

const RwProblem *
levels_get_problem (const Levels *self)
{
  return self->problem;
}

LevelsCase
levels_draw (const Levels *self,
             GRand        *random)
{
  const RwProblem *problem = self->problem;
  LevelsCase it = { 0, g_new (double, problem->n_checks) };
  double sum = 0, at;

  for (guint i = 0; i < problem->n_causes; i++)
    sum += problem->causes[i].weight;
  at = g_rand_double_range (random, 0, sum);
  while (it.cause + 1 < problem->n_causes && at >= problem->causes[it.cause].weight)
    at -= problem->causes[it.cause++].weight;
  for (guint j = 0; j < problem->n_checks; j++)
    {
      const guint n_levels = problem->checks[j].n_outcomes;
      guint level = self->level[j * problem->n_causes + it.cause];

      if (g_rand_double (random) < misplaced)
        level = (level + (guint) g_rand_int_range (random, 1, (int) n_levels)) % n_levels;
      it.value[j] = level + self->sd[j] * random_normal (random);
    }
  return it;
}

static void
learn (const Levels *self,
       RwPlanState  *state,
       guint         check,
       double        value)
{
  const guint n = self->problem->n_causes;
  double sum = 0;

  for (guint i = 0; i < n; i++)
    {
      state->weights[i] *= mixed (density_at, self->sd[check], self->level[check * n + i], value,
                                  self->problem->checks[check].n_outcomes);
      sum += state->weights[i];
    }
  for (guint i = 0; i < n; i++)
    state->weights[i] /= sum;
  state->used[check] = TRUE;
}

double
levels_run (const Levels     *self,
            const LevelsCase *broken,
            Policy            policy,
            gconstpointer     data)
{
  g_autoptr (RwPlanState) state = rw_plan_state_new (self->problem);
  double minutes = 0;

  for (;;)
    {
      const PolicyMove move = policy (self->problem, state, data);

      if (move.kind == RW_ACTION_CHECK)
        {
          minutes += self->problem->checks[move.index].minutes;
          learn (self, state, move.index, broken->value[move.index]);
          continue;
        }
      g_assert_cmpint (move.kind, ==, RW_ACTION_REPAIR);
      minutes += self->problem->causes[move.index].repair_minutes;
      if (move.index == broken->cause)
        return minutes;
      state->weights[move.index] = 0;
    }
}
