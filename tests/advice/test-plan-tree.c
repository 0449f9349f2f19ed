/* test-plan-tree.c: the complete plan of a bare problem.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "plan-fixtures.h"

static const RwPlanBudget look_ahead = { 4, 20 * 1000 * 1000, 0 };
static const RwPlanLimits none = { 0 };

/* Sum over leaves of chance × minutes on the way; *chance: the leaves' chances. A repair
 * ends the way for its own cause, so it is a leaf too. */
static double
sum_leaves (const RwPlanTree *node,
            double            minutes,
            double           *chance)
{
  double left = 0;
  double sum = 0;

  minutes += node->minutes;
  for (guint k = 0; k < node->n_children; k++)
    if (node->children[k] != NULL)
      {
        left += node->children[k]->reach;
        sum += sum_leaves (node->children[k], minutes, chance);
      }
  if (node->kind == RW_ACTION_CHECK)
    {
      g_assert_cmpfloat_with_epsilon (left, node->reach, 1e-12);
      return sum;
    }
  *chance += node->reach - left;
  return sum + (node->reach - left) * minutes;
}

static guint
depth_of_last_check (const RwPlanTree *node,
                     guint             depth)
{
  guint deepest = node->kind == RW_ACTION_CHECK ? depth : 0;

  for (guint k = 0; k < node->n_children; k++)
    if (node->children[k] != NULL)
      deepest = MAX (deepest, depth_of_last_check (node->children[k], depth + 1));
  return deepest;
}

static guint
count_nodes (const RwPlanTree *node)
{
  guint n = 1;

  for (guint k = 0; k < node->n_children; k++)
    n += node->children[k] != NULL ? count_nodes (node->children[k]) : 0;
  return n;
}

static RwPlanTree *
solve (const RwProblem    *problem,
       const RwPlanBudget *budget,
       const RwPlanLimits *limits)
{
  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);

  return rw_plan_tree_solve (problem, start, budget, limits);
}

static void
test_root_is_the_sum_of_the_leaves (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint round = 0; round < 24; round++)
    {
      const RwPlanBudget *budget = round % 2 == 0 ? &look_ahead : &rw_plan_budget_file;
      g_autoptr (RwProblem) problem = fixture_random_problem (random, 6, 5, round % 3 == 0);
      g_autoptr (RwPlanTree) tree = solve (problem, budget, &none);
      g_autofree char *json = rw_plan_tree_to_json (tree, problem);
      double chance = 0;
      const double minutes = sum_leaves (tree, 0, &chance);

      g_assert_cmpfloat_with_epsilon (chance, 1, 1e-12);
      g_assert_cmpfloat_with_epsilon (minutes, tree->expected, 1e-9);
      g_assert_cmpfloat_with_epsilon (fixture_plan_cost (json, problem), tree->expected, 1e-9);
    }
}

static void
test_limits_still_end_in_fixed (void)
{
  static const RwPlanLimits limits[] = { { 1, 0, 0 }, { 2, 0, 0 }, { 0, 0.2, 0 }, { 0, 0, 3 },
                                         { 3, 0.05, 5 } };
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  g_autoptr (RwProblem) problem = fixture_random_problem (random, 8, 6, FALSE);
  g_autoptr (RwPlanTree) whole = solve (problem, &look_ahead, &none);

  for (guint k = 0; k < G_N_ELEMENTS (limits); k++)
    {
      g_autoptr (RwPlanTree) tree = solve (problem, &look_ahead, &limits[k]);
      g_autofree char *json = rw_plan_tree_to_json (tree, problem);

      g_assert_cmpfloat_with_epsilon (fixture_plan_cost (json, problem), tree->expected, 1e-9);
      g_assert_cmpfloat (tree->expected, >=, whole->expected * 0.97);
      if (limits[k].depth > 0)
        g_assert_cmpuint (depth_of_last_check (tree, 0), <, limits[k].depth);
    }
}

static void
test_deeper_plans_cost_less (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (9);
  double before = INFINITY;

  g_autoptr (RwProblem) problem = fixture_random_problem (random, 12, 10, TRUE);

  for (guint depth = 1; depth <= 5; depth++)
    {
      const RwPlanLimits limits = { depth, 0, 0 };
      g_autoptr (RwPlanTree) tree = solve (problem, &rw_plan_budget_file, &limits);

      g_assert_cmpfloat (tree->expected, <=, before + 1e-9);
      before = tree->expected;
    }
}

/* Too large to solve, and too large to write out whole. */
static void
test_large_problem_stays_small (void)
{
  static const RwPlanLimits printed = { 5, 0.01, 0 };
  g_autoptr (GRand) random = g_rand_new_with_seed (31);
  g_autoptr (RwProblem) problem = fixture_random_problem (random, 40, 45, FALSE);
  g_autoptr (RwPlanTree) tree = solve (problem, &rw_plan_budget_screen, &printed);
  g_autofree char *json = rw_plan_tree_to_json (tree, problem);

  g_assert_cmpuint (count_nodes (tree), <, 20000);
  g_assert_cmpfloat_with_epsilon (fixture_plan_cost (json, problem), tree->expected,
                                  1e-9 * tree->expected);
}

static void
test_impossible_outcome_is_null (void)
{
  static const double chance[] = { 1, 0, 0, 1, 0, 0 };
  g_autoptr (RwProblem) problem = rw_problem_new (2, 1);

  fixture_cause (problem, 0, 1, 30);
  fixture_cause (problem, 1, 1, 30);
  fixture_check (problem, 0, 1, 3, chance);

  g_autofree char *json = fixture_solve (problem, &rw_plan_budget_file, &none);

  g_assert_cmpstr (json, ==,
                   "{\"expected_minutes\":31.0,\"plan\":{\"check\":\"t1\",\"outcomes\":["
                   "{\"repair\":\"c1\",\"else\":null},{\"repair\":\"c2\",\"else\":null},null]}}");
}

/* A check that costs nothing and tells nothing must not be taken for ever. */
static void
test_free_and_useless_check_is_left_out (void)
{
  static const double even[] = { 0.5, 0.5, 0.5, 0.5 };
  g_autoptr (RwProblem) problem = rw_problem_new (2, 1);

  fixture_cause (problem, 0, 2, 10);
  fixture_cause (problem, 1, 1, 10);
  fixture_check (problem, 0, 0, 2, even);
  for (guint k = 0; k < 2; k++)
    {
      g_autofree char *json = fixture_solve (problem, k == 0 ? &rw_plan_budget_file : &look_ahead,
                                             &none);

      g_assert_null (strstr (json, "check"));
      g_assert_cmpfloat_with_epsilon (fixture_plan_cost (json, problem), 40.0 / 3, 1e-12);
    }
}

static void
test_nothing_to_plan (void)
{
  g_autoptr (RwProblem) problem = fixture_bench_example ();
  g_autoptr (RwPlanState) state = rw_plan_state_new (problem);

  for (guint i = 0; i < problem->n_causes; i++)
    state->weights[i] = 0;
  g_assert_null (rw_plan_tree_solve (problem, state, &look_ahead, &none));

  g_autofree char *json = rw_plan_tree_to_json (NULL, problem);

  g_assert_cmpstr (json, ==, "{\"expected_minutes\":0.0,\"plan\":null}");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-tree/the root is the sum of the leaves",
                   test_root_is_the_sum_of_the_leaves);
  g_test_add_func ("/plan-tree/limits still end in fixed", test_limits_still_end_in_fixed);
  g_test_add_func ("/plan-tree/deeper plans cost less", test_deeper_plans_cost_less);
  g_test_add_func ("/plan-tree/a large problem stays small", test_large_problem_stays_small);
  g_test_add_func ("/plan-tree/an impossible outcome is null", test_impossible_outcome_is_null);
  g_test_add_func ("/plan-tree/a free and useless check is left out",
                   test_free_and_useless_check_is_left_out);
  g_test_add_func ("/plan-tree/nothing to plan", test_nothing_to_plan);
  return g_test_run ();
}
