/* plan-family.c: random problems of seven families.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "plan-family.h"

#include <math.h>

#include "plan-fixtures.h"

#define MOST_CAUSES 64

typedef struct
{
  const char *title;
  guint       n_causes, n_checks, most_outcomes;
  gboolean    chain, noisy;
} Kind;

static const Kind kinds[N_FAMILIES] = {
  [FAMILY_EXACT_2] = { "exact, 2 outcomes", 12, 10, 2, FALSE, FALSE },
  [FAMILY_EXACT_23] = { "exact, 2–3 outcomes", 14, 12, 3, FALSE, FALSE },
  [FAMILY_CHAIN] = { "exact, chain", 14, 12, 3, TRUE, FALSE },
  [FAMILY_NOISY_2] = { "noisy, 2 outcomes", 10, 8, 2, FALSE, TRUE },
  [FAMILY_NOISY_2_12] = { "noisy, 12 causes", 12, 8, 2, FALSE, TRUE },
  [FAMILY_NOISY_23] = { "noisy, 2–3 outcomes", 10, 8, 3, FALSE, TRUE },
  [FAMILY_NOISY_CHAIN] = { "noisy, chain", 10, 8, 3, TRUE, TRUE },
};

static const struct
{
  const char *title;
  double      check[2], repair[2];
} regimes[N_ALL_REGIMES] = {
  [REGIME_CHEAP] = { "cheap", { 1, 5 }, { 10, 60 } },
  [REGIME_MID] = { "mid", { 2, 15 }, { 5, 60 } },
  [REGIME_DEAR] = { "dear", { 5, 30 }, { 2, 30 } },
  [REGIME_LARGE] = { "checks 1–5, repairs 5–60", { 1, 5 }, { 5, 60 } },
};

const char *
family_title (Family family)
{
  return kinds[family].title;
}

const char *
regime_title (Regime regime)
{
  return regimes[regime].title;
}

gboolean
family_is_noisy (Family family)
{
  return kinds[family].noisy;
}

double
random_log_uniform (GRand *random,
                    double least,
                    double most)
{
  return exp (g_rand_double_range (random, log (least), log (most)));
}

/* Box & Muller 1958. */
double
random_normal (GRand *random)
{
  const double radius = sqrt (-2 * log (1 - g_rand_double (random)));

  return radius * cos (2 * G_PI * g_rand_double (random));
}

/* The outcome each cause shows when nothing errs: 0 is normal. Never the same for all. */
static void
draw_pattern (GRand      *random,
              const Kind *kind,
              guint       n,
              guint       n_outcomes,
              guint      *shown)
{
  guint n_shown = 0;

  while (n_shown == 0 || n_shown == n)
    {
      const double share = g_rand_double_range (random, 0.1, 0.5);
      const gboolean cut = kind->chain && g_rand_double (random) < 0.75;
      const guint stage = (guint) g_rand_int_range (random, 1, (int) n);

      n_shown = 0;
      for (guint i = 0; i < n; i++)
        {
          const gboolean abnormal = cut ? i >= stage : g_rand_double (random) < share;

          shown[i] = abnormal ? (guint) g_rand_int_range (random, 1, (int) n_outcomes) : 0;
          n_shown += abnormal;
        }
    }
}

static void
draw_check (GRand      *random,
            RwProblem  *problem,
            guint       index,
            const Kind *kind,
            double      minutes)
{
  const guint n = problem->n_causes;
  const guint n_outcomes = (guint) g_rand_int_range (random, 2, (int) kind->most_outcomes + 1);
  const double miss = kind->noisy ? g_rand_double_range (random, 0.02, 0.15) : 0;
  const double alarm = kind->noisy ? g_rand_double_range (random, 0.01, 0.08) : 0;
  g_autofree double *chance = g_new0 (double, n_outcomes * n);
  guint shown[MOST_CAUSES];

  draw_pattern (random, kind, n, n_outcomes, shown);
  for (guint i = 0; i < n; i++)
    for (guint o = 0; o < n_outcomes; o++)
      {
        const double error = shown[i] > 0 ? miss : alarm;

        chance[o * n + i] = o == shown[i] ? 1 - error : error / (n_outcomes - 1);
      }
  fixture_check (problem, index, minutes, n_outcomes, chance);
}

RwProblem *
family_problem_sized (GRand *random,
                      Family family,
                      Regime regime,
                      guint  n_causes,
                      guint  n_checks)
{
  RwProblem *problem = rw_problem_new (n_causes, n_checks);
  const double *check = regimes[regime].check, *repair = regimes[regime].repair;

  g_assert_cmpuint (n_causes, <=, MOST_CAUSES);
  for (guint i = 0; i < n_causes; i++)
    fixture_cause (problem, i, -log (1 - g_rand_double (random)),
                   random_log_uniform (random, repair[0], repair[1]));
  for (guint j = 0; j < n_checks; j++)
    draw_check (random, problem, j, &kinds[family],
                random_log_uniform (random, check[0], check[1]));
  return problem;
}

RwProblem *
family_problem (GRand *random,
                Family family,
                Regime regime)
{
  return family_problem_sized (random, family, regime, kinds[family].n_causes,
                               kinds[family].n_checks);
}

/* Scales what is not the likeliest outcome of a cause: by @alarm where that is the normal one,
 * else by @miss. */
static void
mistake_column (RwProblem *problem,
                guint      check,
                guint      cause,
                double     alarm,
                double     miss)
{
  RwProblemCheck *it = &problem->checks[check];
  const guint n = problem->n_causes;
  guint likely = 0;

  for (guint o = 1; o < it->n_outcomes; o++)
    if (it->chance[o * n + cause] > it->chance[likely * n + cause])
      likely = o;

  const double error = 1 - it->chance[likely * n + cause];

  if (!(error > 0))
    return;

  const double wrong = MIN (0.45, error * (likely == 0 ? alarm : miss));

  for (guint o = 0; o < it->n_outcomes; o++)
    it->chance[o * n + cause] *= o == likely ? (1 - wrong) / (1 - error) : wrong / error;
}

RwProblem *
family_mistaken (GRand           *random,
                 const RwProblem *truth,
                 double           chances,
                 double           minutes)
{
  RwProblem *self = rw_problem_new (truth->n_causes, truth->n_checks);

  for (guint i = 0; i < truth->n_causes; i++)
    fixture_cause (self, i, truth->causes[i].weight * pow (chances, random_normal (random)),
                   truth->causes[i].repair_minutes * pow (minutes, random_normal (random)));
  for (guint j = 0; j < truth->n_checks; j++)
    {
      const RwProblemCheck *it = &truth->checks[j];

      fixture_check (self, j, it->minutes * pow (minutes, random_normal (random)), it->n_outcomes,
                     it->chance);

      const double alarm = pow (chances, random_normal (random));
      const double miss = pow (chances, random_normal (random));

      for (guint i = 0; i < truth->n_causes; i++)
        mistake_column (self, j, i, alarm, miss);
    }
  return self;
}
