/* test-problem.c: bare problems, and their files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "plan-fixtures.h"
#include "rw-json.h"

#define GOOD_CAUSES "\"causes\":[{\"id\":\"a\",\"prior\":1,\"repair_minutes\":5},{\"id\":\"b\",\"prior\":3,\"repair_minutes\":9}]"
#define GOOD_CHECKS "\"checks\":[{\"id\":\"t\",\"minutes\":2,\"chance\":[[0.9,0.2],[0.1,0.8]]}]"

static RwProblem *
from_text (const char *text,
           GError    **error)
{
  g_autoptr (JsonNode) node = rw_json_parse (text, strlen (text), NULL);

  g_assert_nonnull (node);
  return rw_problem_new_from_node (node, "bad.json", error);
}

static void
test_reads_what_is_there (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProblem) problem = from_text ("{" GOOD_CAUSES "," GOOD_CHECKS ",\"unknown\":[1]}",
                                             &error);

  g_assert_no_error (error);
  g_assert_cmpuint (problem->n_causes, ==, 2);
  g_assert_cmpstr (problem->causes[1].id, ==, "b");
  g_assert_cmpfloat (problem->causes[1].repair_minutes, ==, 9);
  g_assert_cmpuint (problem->n_checks, ==, 1);
  g_assert_cmpfloat (problem->checks[0].minutes, ==, 2);
  g_assert_cmpfloat_with_epsilon (rw_problem_chance (problem, 0, 0, 0), 0.9, 1e-15);
  g_assert_cmpfloat_with_epsilon (rw_problem_chance (problem, 0, 1, 1), 0.8, 1e-15);
  g_assert_cmpuint (problem->n_setups, ==, 1);
}

static void
test_start_is_normalised (void)
{
  g_autoptr (RwProblem) problem = from_text ("{" GOOD_CAUSES "," GOOD_CHECKS "}", NULL);
  g_autoptr (RwPlanState) state = rw_plan_state_new (problem);

  g_assert_cmpfloat_with_epsilon (state->weights[0], 0.25, 1e-15);
  g_assert_cmpfloat_with_epsilon (state->weights[1], 0.75, 1e-15);
}

/* What is wrong, and the words of the message that lead there. */
static const struct
{
  const char *text;
  const char *where;
  const char *key;
} bad[] = {
  { "[1]", "bad.json", "object" },
  { "{" GOOD_CHECKS "}", "bad.json", "causes" },
  { "{" GOOD_CAUSES "}", "bad.json", "checks" },
  { "{\"causes\":[]," GOOD_CHECKS "}", "bad.json", "causes" },
  { "{\"causes\":[7]," GOOD_CHECKS "}", "bad.json: causes[0]", "object" },
  { "{\"causes\":[{\"prior\":1,\"repair_minutes\":5}],\"checks\":[]}", "bad.json: causes[0]",
    "“id”" },
  { "{\"causes\":[{\"id\":\"a\",\"prior\":-1,\"repair_minutes\":5}],\"checks\":[]}", "causes[0]",
    "“prior”" },
  { "{\"causes\":[{\"id\":\"a\",\"prior\":\"1\",\"repair_minutes\":5}],\"checks\":[]}",
    "causes[0]", "“prior”" },
  { "{\"causes\":[{\"id\":\"a\",\"prior\":1}],\"checks\":[]}", "causes[0]", "“repair_minutes”" },
  { "{\"causes\":[{\"id\":\"a\",\"prior\":1,\"repair_minutes\":5},{\"id\":\"a\",\"prior\":1,\"repair_minutes\":5}],\"checks\":[]}",
    "causes[1]", "“id”" },
  { "{\"causes\":[{\"id\":\"a\",\"prior\":0,\"repair_minutes\":5}],\"checks\":[]}", "bad.json",
    "“prior”" },
  { "{" GOOD_CAUSES ",\"checks\":[{\"id\":\"t\",\"chance\":[[1,0],[0,1]]}]}", "checks[0]",
    "“minutes”" },
  { "{" GOOD_CAUSES ",\"checks\":[{\"id\":\"t\",\"minutes\":2}]}", "checks[0]", "“chance”" },
  { "{" GOOD_CAUSES ",\"checks\":[{\"id\":\"t\",\"minutes\":2,\"chance\":[]}]}", "checks[0]",
    "“chance”" },
  { "{" GOOD_CAUSES ",\"checks\":[{\"id\":\"t\",\"minutes\":2,\"chance\":[[1],[0]]}]}",
    "checks[0]", "“chance”" },
  { "{" GOOD_CAUSES ",\"checks\":[{\"id\":\"t\",\"minutes\":2,\"chance\":[[1,0],[0,0.9]]}]}",
    "checks[0]", "“chance”" },
  { "{" GOOD_CAUSES ",\"checks\":[{\"id\":\"t\",\"minutes\":2,\"chance\":[[1.5,0],[-0.5,1]]}]}",
    "checks[0]", "“chance”" },
};

static void
test_errors_name_file_and_key (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (bad); k++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwProblem) problem = from_text (bad[k].text, &error);

      g_test_message ("%s", bad[k].text);
      g_assert_null (problem);
      g_assert_error (error, RW_PROBLEM_ERROR, RW_PROBLEM_ERROR_FORMAT);
      g_assert_nonnull (strstr (error->message, bad[k].where));
      g_assert_nonnull (strstr (error->message, bad[k].key));
    }
}

static void
test_missing_file_is_told (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_problem_load ("/nowhere/at-all.json", 0, &error));
  g_assert_error (error, RW_PROBLEM_ERROR, RW_PROBLEM_ERROR_READ);
  g_assert_nonnull (strstr (error->message, "at-all.json"));
}

static void
test_collection_has_an_end (void)
{
  g_autofree char *path = fixture_path ("plan_cases.json");
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProblem) last = fixture_problem ("plan_cases.json", 9);

  g_assert_cmpuint (last->n_causes, ==, 7);
  g_assert_null (rw_problem_load (path, 10, &error));
  g_assert_error (error, RW_PROBLEM_ERROR, RW_PROBLEM_ERROR_FORMAT);
  g_assert_nonnull (strstr (error->message, "problems"));
}

static void
test_setup_is_the_cheapest_that_will_do (void)
{
  static const double even[] = { 0.5, 0.5, 0.5, 0.5 };
  g_autoptr (RwProblem) problem = rw_problem_new (2, 1);
  guint after = 9;

  fixture_cause (problem, 0, 1, 1);
  fixture_cause (problem, 1, 1, 1);
  fixture_check (problem, 0, 4, 2, even);
  problem->n_setups = 3;
  problem->change[0][1] = 7;
  problem->change[0][2] = 2;
  g_assert_cmpfloat (rw_problem_minutes (problem, 0, 0, &after), ==, 4);
  g_assert_cmpuint (after, ==, 0);
  problem->checks[0].setups = (1u << 1) | (1u << 2);
  g_assert_cmpfloat (rw_problem_minutes (problem, 0, 0, &after), ==, 6);
  g_assert_cmpuint (after, ==, 2);
  g_assert_cmpfloat (rw_problem_minutes (problem, 0, 1, &after), ==, 4);
  g_assert_cmpuint (after, ==, 1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/problem/reads what is there", test_reads_what_is_there);
  g_test_add_func ("/problem/the start is normalised", test_start_is_normalised);
  g_test_add_func ("/problem/errors name file and key", test_errors_name_file_and_key);
  g_test_add_func ("/problem/a missing file is told", test_missing_file_is_told);
  g_test_add_func ("/problem/a collection has an end", test_collection_has_an_end);
  g_test_add_func ("/problem/the setup is the cheapest that will do",
                   test_setup_is_the_cheapest_that_will_do);
  return g_test_run ();
}
