/* test-plan-exact.c: the optimum of small problems.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Answers: plan_cases.json and plan_instances.json (exact dynamic programming, independent
 * of this program), the worked examples E3 (Pattipati & Alexandridis 1990, published optimum
 * 2.18), E4 (Zimmerman 1959: every split may be tested, Huffman's length), E11 (half-split),
 * E12 and E17, and trying everything.
 */
#include "config.h"

#include <math.h>

#include "plan-fixtures.h"
#include "rw-json.h"

#define N_CASES 10
#define N_INSTANCES 25

static RwPlanChoice *
search (const RwProblem *problem)
{
  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);

  return rw_plan_search (problem, start, &rw_plan_budget_file);
}

/* The collection names checks from 0: its "t0" is the first check, whatever that is called. */
static guint
optimal_first (guint index)
{
  g_autofree char *path = fixture_path ("plan_cases.json");
  g_autoptr (JsonNode) root = rw_json_parse_file (path, NULL);
  JsonArray *problems = rw_json_get_array (json_node_get_object (root), "problems");
  JsonObject *answers = rw_json_get_object (json_array_get_object_element (problems, index),
                                            "answers");
  const char *first = rw_json_get_string (answers, "optimal_first", "");

  g_assert_true (first[0] == 't');
  return (guint) g_ascii_strtoull (first + 1, NULL, 10);
}

static void
test_cases_reach_the_optimum (void)
{
  for (guint k = 0; k < N_CASES; k++)
    {
      g_autoptr (RwProblem) problem = fixture_problem ("plan_cases.json", k);
      g_autoptr (RwPlanChoice) choice = search (problem);
      const double optimum = fixture_answer ("plan_cases.json", k, "optimum_minutes");

      g_assert_true (choice->exact);
      g_assert_cmpfloat_with_epsilon (choice->best.expected, optimum, 1e-9 * optimum);
      g_assert_cmpint (choice->best.kind, ==, RW_ACTION_CHECK);
      g_assert_cmpuint (choice->best.index, ==, optimal_first (k));
      g_assert_cmpfloat_with_epsilon (choice->repairs_only,
                                      fixture_answer ("plan_cases.json", k,
                                                      "repairs_only_minutes"), 1e-9 * optimum);
      g_assert_cmpfloat_with_epsilon (choice->perfect,
                                      fixture_answer ("plan_cases.json", k,
                                                      "perfect_information_minutes"),
                                      1e-9 * optimum);
    }
}

static void
test_plans_of_the_cases_cost_what_they_say (void)
{
  static const RwPlanLimits none = { 0 };

  for (guint k = 0; k < N_CASES; k++)
    {
      g_autoptr (RwProblem) problem = fixture_problem ("plan_cases.json", k);
      g_autofree char *json = fixture_solve (problem, &rw_plan_budget_file, &none);
      const double optimum = fixture_answer ("plan_cases.json", k, "optimum_minutes");

      g_assert_cmpfloat_with_epsilon (fixture_plan_cost (json, problem), optimum, 1e-9 * optimum);
    }
}

static void
test_instances_reach_the_optimum (void)
{
  for (guint k = 0; k < N_INSTANCES; k++)
    {
      g_autoptr (RwProblem) problem = fixture_problem ("plan_instances.json", k);
      g_autoptr (RwPlanChoice) choice = search (problem);
      const double optimum = fixture_answer ("plan_instances.json", k, "optimum");

      g_assert_true (choice->exact);
      g_assert_cmpfloat_with_epsilon (choice->best.expected, optimum, 1e-9 * optimum);
      g_assert_cmpfloat_with_epsilon (choice->repairs_only,
                                      fixture_answer ("plan_instances.json", k,
                                                      "p_over_C_no_tests"), 1e-8 * optimum);
      g_assert_cmpfloat_with_epsilon (choice->perfect,
                                      fixture_answer ("plan_instances.json", k,
                                                      "perfect_information"), 1e-5);
    }
}

/* Pure test sequencing: every repair costs so much that nobody guesses; what is above it is
 * the tests' cost. */
static void
test_published_test_sequence (void)
{
  static const double p[] = { 0.70, 0.01, 0.02, 0.10, 0.05, 0.12 };
  static const int fails[5][6] = { { 0, 0, 0, 1, 1, 1 },
                                   { 0, 1, 0, 0, 1, 1 },
                                   { 0, 0, 1, 0, 0, 1 },
                                   { 0, 0, 1, 1, 0, 1 },
                                   { 0, 1, 0, 1, 0, 0 } };
  g_autoptr (RwProblem) problem = rw_problem_new (6, 5);

  for (guint i = 0; i < 6; i++)
    fixture_cause (problem, i, p[i], 1000);
  for (guint j = 0; j < 5; j++)
    {
      double chance[12];

      for (guint i = 0; i < 6; i++)
        {
          chance[i] = 1 - fails[j][i];
          chance[6 + i] = fails[j][i];
        }
      fixture_check (problem, j, 1, 2, chance);
    }

  g_autoptr (RwPlanChoice) choice = search (problem);

  g_assert_cmpfloat_with_epsilon (choice->best.expected, 1002.18, 1e-9);
  g_assert_cmpint (choice->best.kind, ==, RW_ACTION_CHECK);
  g_assert_cmpuint (choice->best.index, ==, 1);
}

/* Test sequencing again: check @index fails for the causes whose bit is set in @fails. */
static void
add_split (RwProblem *problem,
           guint      index,
           guint      fails)
{
  const guint n = problem->n_causes;
  g_autofree double *chance = g_new (double, 2 * n);

  for (guint i = 0; i < n; i++)
    {
      chance[i] = (fails >> i & 1) == 0;
      chance[n + i] = 1 - chance[i];
    }
  fixture_check (problem, index, 1, 2, chance);
}

/* Where every split may be tested, the tests are as many as the bits of the best code. */
static void
test_every_split_is_the_best_code (void)
{
  static const struct
  {
    guint  n;
    double p[6], length;
  } codes[] = { { 5, { .4, .2, .2, .1, .1 }, 2.2 },
                { 4, { .4, .3, .2, .1 }, 1.9 },
                { 6, { .45, .13, .12, .16, .09, .05 }, 2.24 } };

  for (guint k = 0; k < G_N_ELEMENTS (codes); k++)
    {
      const guint n_splits = (1u << (codes[k].n - 1)) - 1;
      g_autoptr (RwProblem) problem = rw_problem_new (codes[k].n, n_splits);

      for (guint i = 0; i < codes[k].n; i++)
        fixture_cause (problem, i, codes[k].p[i], 1000);
      for (guint j = 0; j < n_splits; j++)
        add_split (problem, j, j + 1);

      g_autoptr (RwPlanChoice) choice = search (problem);

      g_assert_true (choice->exact);
      g_assert_cmpfloat_with_epsilon (choice->best.expected, 1000 + codes[k].length, 1e-9);
    }
}

/* Equal stages in a row are probed in the middle first. */
static void
test_half_split (void)
{
  for (guint probes = 2; probes <= 4; probes++)
    {
      const guint n = 1u << probes;
      g_autoptr (RwProblem) problem = rw_problem_new (n, n - 1);

      for (guint i = 0; i < n; i++)
        fixture_cause (problem, i, 1, 1000);
      for (guint j = 0; j < n - 1; j++)
        add_split (problem, j, (1u << (j + 1)) - 1);

      g_autoptr (RwPlanChoice) choice = search (problem);

      g_assert_true (choice->exact);
      g_assert_cmpfloat_with_epsilon (choice->best.expected, 1000 + probes, 1e-9);
      g_assert_cmpuint (choice->best.index, ==, n / 2 - 1);
    }
}

static void
test_bench_example (void)
{
  static const RwPlanLimits none = { 0 };
  g_autoptr (RwProblem) problem = fixture_bench_example ();
  g_autoptr (RwPlanChoice) choice = search (problem);
  g_autofree char *json = fixture_solve (problem, &rw_plan_budget_file, &none);

  g_assert_cmpfloat_with_epsilon (choice->repairs_only, 36.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (choice->perfect, 17, 1e-12);
  g_assert_cmpfloat_with_epsilon (choice->best.expected, 22, 1e-12);
  g_assert_cmpstr (json, ==,
                   "{\"expected_minutes\":22.0,\"plan\":{\"check\":\"t1\",\"outcomes\":["
                   "{\"repair\":\"c1\",\"else\":{\"repair\":\"c5\",\"else\":null}},"
                   "{\"check\":\"t2\",\"outcomes\":[{\"check\":\"t3\",\"outcomes\":["
                   "{\"repair\":\"c4\",\"else\":null},{\"repair\":\"c2\",\"else\":null}]},"
                   "{\"repair\":\"c3\",\"else\":null}]}]}}");
}

static void
test_myopic_trap (void)
{
  g_autoptr (RwProblem) problem = fixture_myopic_trap ();
  g_autoptr (RwPlanChoice) choice = search (problem);

  g_assert_cmpfloat_with_epsilon (choice->repairs_only, 37.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (choice->best.expected, 35.413235, 5e-7);
  g_assert_cmpint (choice->best.kind, ==, RW_ACTION_CHECK);
}

/* Setups of two kinds, with a price both ways. */
static void
add_setups (RwProblem *problem,
            GRand     *random)
{
  problem->n_setups = 2;
  problem->change[0][1] = g_rand_double_range (random, 1, 3);
  problem->change[1][0] = g_rand_double_range (random, 1, 3);
  for (guint j = 0; j < problem->n_checks; j++)
    {
      problem->checks[j].minutes *= 0.2; /* so that several are worth taking */
      problem->checks[j].setups = (guint) g_rand_int_range (random, 0, 4);
    }
}

static void
test_agrees_with_trying_everything (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (guint round = 0; round < 40; round++)
    {
      const gboolean setups = round % 4 > 1;
      const gboolean exact = round % 2 == 0;
      g_autoptr (RwProblem) problem = fixture_random_problem (random, setups ? 5 : 4, 3, exact);
      g_autoptr (RwPlanState) start = NULL;
      g_autoptr (RwPlanChoice) choice = NULL;

      if (setups)
        add_setups (problem, random);
      start = rw_plan_state_new (problem);
      choice = rw_plan_search (problem, start, &rw_plan_budget_file);

      const double optimum = fixture_brute_force (problem, start);

      g_assert_true (choice->exact);
      g_assert_cmpfloat_with_epsilon (choice->best.expected, optimum, 1e-12 * optimum);
    }
}

static void
test_check_that_tells_nothing_only_costs (void)
{
  static const double even[] = { 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5 };
  g_autoptr (RwProblem) bench = fixture_bench_example ();
  g_autoptr (RwProblem) problem = rw_problem_new (5, 2);

  for (guint i = 0; i < 5; i++)
    fixture_cause (problem, i, bench->causes[i].weight, bench->causes[i].repair_minutes);
  fixture_check (problem, 0, 3, 2, even);
  fixture_check (problem, 1, 0, 2, even);

  g_autoptr (RwPlanChoice) choice = search (problem);

  g_assert_cmpint (choice->best.kind, ==, RW_ACTION_REPAIR);
  g_assert_cmpuint (choice->n_checks, ==, 2);
  g_assert_cmpuint (choice->checks[1].index, ==, 0);
  g_assert_cmpfloat_with_epsilon (choice->checks[1].expected, 39.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (choice->checks[1].saves, -3, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-exact/given cases reach the optimum", test_cases_reach_the_optimum);
  g_test_add_func ("/plan-exact/their plans cost what they say",
                   test_plans_of_the_cases_cost_what_they_say);
  g_test_add_func ("/plan-exact/given instances reach the optimum",
                   test_instances_reach_the_optimum);
  g_test_add_func ("/plan-exact/a published test sequence", test_published_test_sequence);
  g_test_add_func ("/plan-exact/every split may be tested: the best code",
                   test_every_split_is_the_best_code);
  g_test_add_func ("/plan-exact/equal stages are probed in the middle", test_half_split);
  g_test_add_func ("/plan-exact/the bench example", test_bench_example);
  g_test_add_func ("/plan-exact/two readings together pay", test_myopic_trap);
  g_test_add_func ("/plan-exact/agrees with trying everything", test_agrees_with_trying_everything);
  g_test_add_func ("/plan-exact/a check that tells nothing only costs",
                   test_check_that_tells_nothing_only_costs);
  return g_test_run ();
}
