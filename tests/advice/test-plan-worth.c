/* test-plan-worth.c: what a look is worth, and repairs that overlap: worked examples.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The planner counts minutes until fixed, and each of its repairs mends one cause. So what is
 * tested here is what it moves through: the states of a problem after a reading and after a repair
 * that did not help, whose weights are the chances of getting there. Decisions between gains
 * (E8: H. Raiffa, Decision Analysis (1968), the oil well; S. Russell and P. Norvig, the used
 * car) are made here on those states, and so are the orders of repairs that mend two causes each
 * (E2: F. V. Jensen, Bayesian Networks and Decision Graphs (2001)): the planner plans no such.
 */
#include "config.h"

#include <math.h>

#include "plan-fixtures.h"

/* --- what a look is worth ----------------------------------------------------------------------- */

/* Of doing it, and of leaving it alone, which gains nothing; × weight. */
static double
best_gain (const RwPlanState *state,
           guint              n,
           const double      *gain)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += state->weights[i] * gain[i];
  return fmax (sum, 0);
}

/* The same when the first check may be taken first, for nothing. */
static double
gain_with_look (const RwProblem *problem,
                const double    *gain)
{
  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);
  double sum = 0;

  for (guint o = 0; o < problem->checks[0].n_outcomes; o++)
    {
      g_autoptr (RwPlanState) after = rw_plan_state_after_check (start, problem, 0, o);

      g_assert_true (after->used[0]);
      sum += best_gain (after, problem->n_causes, gain);
    }
  return sum;
}

static void
assert_near (double value,
             double expected,
             double within)
{
  g_assert_cmpfloat_with_epsilon (value, expected, within);
}

/* Dry, wet, soaking; a sounding that shows a closed structure, an open one, or none. */
static void
test_oil_well (void)
{
  static const double chance[] = { 0.1, 0.3, 0.5, 0.3, 0.4, 0.4, 0.6, 0.3, 0.1 };
  static const double p[] = { 0.5, 0.3, 0.2 }, gain[] = { -70, 50, 200 };
  static const double outcomes[] = { 0.24, 0.35, 0.41 };
  const double sounding = 10;
  g_autoptr (RwProblem) problem = rw_problem_new (3, 1);
  double known = 0;

  for (guint i = 0; i < 3; i++)
    {
      fixture_cause (problem, i, p[i], 1);
      known += p[i] * fmax (gain[i], 0);
    }
  fixture_check (problem, 0, sounding, 3, chance);

  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);
  const double without = best_gain (start, 3, gain);
  const double with = gain_with_look (problem, gain);

  for (guint o = 0; o < 3; o++)
    {
      g_autoptr (RwPlanState) after = rw_plan_state_after_check (start, problem, 0, o);

      assert_near (rw_plan_state_mass (after, problem), outcomes[o], 1e-12);
    }
  assert_near (without, 20, 1e-12);
  assert_near (with, 32.5, 1e-12);
  assert_near (with - without, 12.5, 1e-12);
  assert_near (with - problem->checks[0].minutes, 22.5, 1e-12);
  assert_near (known - without, 35, 1e-12);
}

/* Good or bad; the mechanic's look is passed or failed, and it is bought either way. */
static void
test_used_car (void)
{
  static const double chance[] = { 0.8, 0.35, 0.2, 0.65 };
  static const double gain[] = { 500, -200 };
  g_autoptr (RwProblem) problem = rw_problem_new (2, 1);

  fixture_cause (problem, 0, 0.7, 1);
  fixture_cause (problem, 1, 0.3, 1);
  fixture_check (problem, 0, 1, 2, chance);

  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);
  g_autoptr (RwPlanState) pass = rw_plan_state_after_check (start, problem, 0, 0);
  g_autoptr (RwPlanState) fail = rw_plan_state_after_check (start, problem, 0, 1);
  const double passed = rw_plan_state_mass (pass, problem);
  const double failed = rw_plan_state_mass (fail, problem);

  assert_near (passed, 0.665, 1e-12);
  assert_near (pass->weights[0] / passed, 0.8421053, 5.1e-8);
  assert_near (fail->weights[0] / failed, 0.4179104, 5.1e-8);
  assert_near (best_gain (start, 2, gain), 290, 1e-10);
  assert_near (best_gain (pass, 2, gain) / passed, 389.47, 5.1e-3);
  assert_near (best_gain (fail, 2, gain) / failed, 92.54, 5.1e-3);
  assert_near (gain_with_look (problem, gain) - best_gain (start, 2, gain), 0, 1e-10);
}

/* --- repairs that overlap ----------------------------------------------------------------------- */

enum
{
  N_FAULTS = 4,
  N_ACTIONS = 3,
};

/* Action k mends faults k and k + 1, in a minute. */
static RwProblem *
overlapping_problem (void)
{
  static const double p[N_FAULTS] = { 0.20, 0.25, 0.40, 0.15 };
  RwProblem *problem = rw_problem_new (N_FAULTS, 0);

  for (guint i = 0; i < N_FAULTS; i++)
    fixture_cause (problem, i, p[i], 1);
  return problem;
}

static RwPlanState *
after_action (const RwPlanState *state,
              const RwProblem   *problem,
              guint              action)
{
  g_autoptr (RwPlanState) half = rw_plan_state_after_repair (state, problem, action);

  return rw_plan_state_after_repair (half, problem, action + 1);
}

/* Each action takes its minute when all before it were no cure. */
static double
order_cost (const RwProblem *problem,
            const guint     *order)
{
  g_autoptr (RwPlanState) state = rw_plan_state_new (problem);
  double minutes = 0;

  for (guint k = 0; k < N_ACTIONS; k++)
    {
      RwPlanState *next = after_action (state, problem, order[k]);

      minutes += rw_plan_state_mass (state, problem);
      rw_plan_state_free (state);
      state = next;
    }
  assert_near (rw_plan_state_mass (state, problem), 0, 1e-15);
  return minutes;
}

/* What mends most a minute comes first. */
static void
order_greedily (const RwProblem *problem,
                guint           *order)
{
  g_autoptr (RwPlanState) state = rw_plan_state_new (problem);

  for (guint k = 0; k < N_ACTIONS; k++)
    {
      guint best = 0;
      double least = INFINITY;

      for (guint a = 0; a < N_ACTIONS; a++)
        {
          g_autoptr (RwPlanState) left = after_action (state, problem, a);

          if (rw_plan_state_mass (left, problem) < least - 1e-12)
            {
              least = rw_plan_state_mass (left, problem);
              best = a;
            }
        }

      RwPlanState *next = after_action (state, problem, best);

      order[k] = best;
      rw_plan_state_free (state);
      state = next;
    }
}

static void
test_overlapping_repairs (void)
{
  static const struct
  {
    guint  order[N_ACTIONS];
    double minutes;
  } orders[] = {
    { { 0, 1, 2 }, 1.70 }, { { 0, 2, 1 }, 1.55 }, { { 1, 0, 2 }, 1.50 },
    { { 1, 2, 0 }, 1.55 }, { { 2, 0, 1 }, 1.45 }, { { 2, 1, 0 }, 1.65 },
  };
  g_autoptr (RwProblem) problem = overlapping_problem ();
  guint greedy[N_ACTIONS];
  double least = INFINITY;

  for (guint k = 0; k < G_N_ELEMENTS (orders); k++)
    {
      const double minutes = order_cost (problem, orders[k].order);

      assert_near (minutes, orders[k].minutes, 1e-12);
      least = fmin (least, minutes);
    }
  order_greedily (problem, greedy);
  g_assert_cmpuint (greedy[0], ==, 1);
  assert_near (order_cost (problem, greedy), 1.50, 1e-12);
  assert_near (least, 1.45, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-worth/a sounding of an oil well", test_oil_well);
  g_test_add_func ("/plan-worth/a look at a used car is worth nothing", test_used_car);
  g_test_add_func ("/plan-worth/overlapping repairs cost what is printed", test_overlapping_repairs);
  return g_test_run ();
}
