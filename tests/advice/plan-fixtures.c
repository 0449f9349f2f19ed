/* plan-fixtures.c: what the tests of problems and plans share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "plan-fixtures.h"

#include <math.h>

#include "rw-json.h"

char *
fixture_path (const char *name)
{
  return g_test_build_filename (G_TEST_DIST, "advice", name, NULL);
}

RwProblem *
fixture_problem (const char *collection,
                 guint       index)
{
  g_autofree char *path = fixture_path (collection);
  g_autoptr (GError) error = NULL;
  RwProblem *problem = rw_problem_load (path, index, &error);

  g_assert_no_error (error);
  return problem;
}

double
fixture_answer (const char *collection,
                guint       index,
                const char *key)
{
  g_autofree char *path = fixture_path (collection);
  g_autoptr (JsonNode) root = rw_json_parse_file (path, NULL);
  JsonArray *problems = rw_json_get_array (json_node_get_object (root), "problems");
  JsonObject *problem = json_array_get_object_element (problems, index);
  double value = NAN;

  g_assert_true (rw_json_get_number (rw_json_get_object (problem, "answers"), key, &value));
  return value;
}

void
fixture_cause (RwProblem *problem,
               guint      index,
               double     weight,
               double     minutes)
{
  problem->causes[index].id = g_strdup_printf ("c%u", index + 1);
  problem->causes[index].weight = weight;
  problem->causes[index].repair_minutes = minutes;
}

void
fixture_check (RwProblem    *problem,
               guint         index,
               double        minutes,
               guint         n_outcomes,
               const double *chance)
{
  problem->checks[index].id = g_strdup_printf ("t%u", index + 1);
  problem->checks[index].minutes = minutes;
  rw_problem_set_outcomes (problem, index, n_outcomes);
  for (guint k = 0; k < n_outcomes * problem->n_causes; k++)
    problem->checks[index].chance[k] = chance[k];
}

static void
random_check (GRand     *random,
              RwProblem *problem,
              guint      index,
              gboolean   exact)
{
  const guint n = problem->n_causes;
  const guint n_outcomes = (guint) g_rand_int_range (random, 2, 4);
  g_autofree double *chance = g_new0 (double, n_outcomes * n);

  for (guint i = 0; i < n; i++)
    {
      const guint shown = (guint) g_rand_int_range (random, 0, (int) n_outcomes);
      const double error = exact ? 0 : g_rand_double_range (random, 0.01, 0.2);

      for (guint o = 0; o < n_outcomes; o++)
        chance[o * n + i] = o == shown ? 1 - error : error / (n_outcomes - 1);
    }
  fixture_check (problem, index, g_rand_double_range (random, 1, 12), n_outcomes, chance);
}

RwProblem *
fixture_random_problem (GRand   *random,
                        guint    n_causes,
                        guint    n_checks,
                        gboolean exact)
{
  RwProblem *problem = rw_problem_new (n_causes, n_checks);

  for (guint i = 0; i < n_causes; i++)
    fixture_cause (problem, i, -log (1 - g_rand_double (random)),
                   g_rand_double_range (random, 2, 60));
  for (guint j = 0; j < n_checks; j++)
    random_check (random, problem, j, exact);
  return problem;
}

RwProblem *
fixture_bench_example (void)
{
  static const double weight[] = { 0.15, 0.25, 0.20, 0.10, 0.30 };
  static const double minutes[] = { 5, 25, 20, 30, 10 };
  static const double vin[] = { 1, 0, 0, 0, 1, 0, 1, 1, 1, 0 };
  static const double vout[] = { 1, 1, 0, 1, 1, 0, 0, 1, 0, 0 };
  static const double ohm[] = { 1, 0, 0, 1, 0, 0, 1, 1, 0, 1 };
  RwProblem *problem = rw_problem_new (5, 3);

  for (guint i = 0; i < 5; i++)
    fixture_cause (problem, i, weight[i], minutes[i]);
  fixture_check (problem, 0, 1, 2, vin);
  fixture_check (problem, 1, 2, 2, vout);
  fixture_check (problem, 2, 4, 2, ohm);
  return problem;
}

RwProblem *
fixture_myopic_trap (void)
{
  static const double chance[] = { 0.7, 0.3, 0.3, 0.7 };
  RwProblem *problem = rw_problem_new (2, 6);

  fixture_cause (problem, 0, 0.75, 30);
  fixture_cause (problem, 1, 0.25, 30);
  for (guint j = 0; j < 6; j++)
    fixture_check (problem, j, 0.5, 2, chance);
  return problem;
}

/* --- the cost of a plan, worked out the other way round ----------------------------------------- */

static guint
find_cause (const RwProblem *problem,
            const char      *id)
{
  for (guint i = 0; i < problem->n_causes; i++)
    if (g_str_equal (problem->causes[i].id, id))
      return i;
  g_error ("the plan repairs %s, which is no cause", id);
}

static guint
find_check (const RwProblem *problem,
            const char      *id)
{
  for (guint j = 0; j < problem->n_checks; j++)
    if (g_str_equal (problem->checks[j].id, id))
      return j;
  g_error ("the plan takes %s, which is no check", id);
}

/* Minutes when @cause is the one present. @taken: checks on the way here, by bit. */
static double
walk (JsonNode        *node,
      const RwProblem *problem,
      guint            cause,
      guint            setup,
      guint64          taken)
{
  g_assert_true (JSON_NODE_HOLDS_OBJECT (node));

  JsonObject *object = json_node_get_object (node);
  const char *repair = rw_json_get_string (object, "repair", NULL);

  if (repair != NULL)
    {
      const guint i = find_cause (problem, repair);
      const double minutes = problem->causes[i].repair_minutes;

      return i == cause ? minutes
                        : minutes + walk (json_object_get_member (object, "else"), problem, cause,
                                          setup, taken);
    }

  const guint j = find_check (problem, rw_json_get_string (object, "check", ""));
  JsonArray *outcomes = rw_json_get_array (object, "outcomes");
  guint after = setup;
  double minutes = rw_problem_minutes (problem, j, setup, &after);

  g_assert_cmpuint (json_array_get_length (outcomes), ==, problem->checks[j].n_outcomes);
  g_assert_true (j >= 64 || (taken & (G_GUINT64_CONSTANT (1) << j)) == 0);
  for (guint o = 0; o < problem->checks[j].n_outcomes; o++)
    {
      const double p = rw_problem_chance (problem, j, o, cause);

      if (p > 0)
        minutes += p * walk (json_array_get_element (outcomes, o), problem, cause, after,
                             taken | (j < 64 ? G_GUINT64_CONSTANT (1) << j : 0));
    }
  return minutes;
}

double
fixture_plan_cost (const char      *json,
                   const RwProblem *problem)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  double total = 0;
  double cost = 0;

  g_assert_true (json_parser_load_from_data (parser, json, -1, NULL));

  JsonObject *root = json_node_get_object (json_parser_get_root (parser));

  for (guint i = 0; i < problem->n_causes; i++)
    total += problem->causes[i].weight;
  for (guint i = 0; i < problem->n_causes; i++)
    if (problem->causes[i].weight > 0)
      cost += problem->causes[i].weight / total
              * walk (json_object_get_member (root, "plan"), problem, i, problem->setup, 0);
  return cost;
}

/* Minutes × weight. */
static double
try_everything (const RwProblem   *problem,
                const RwPlanState *state)
{
  const double mass = rw_plan_state_mass (state, problem);
  double best = INFINITY;

  if (!(mass > 0))
    return 0;
  for (guint i = 0; i < problem->n_causes; i++)
    if (state->weights[i] > 0)
      {
        g_autoptr (RwPlanState) next = rw_plan_state_after_repair (state, problem, i);

        best = fmin (best,
                     problem->causes[i].repair_minutes * mass + try_everything (problem, next));
      }
  for (guint j = 0; j < problem->n_checks; j++)
    if (!state->used[j])
      {
        double value = rw_problem_minutes (problem, j, state->setup, NULL) * mass;

        for (guint o = 0; o < problem->checks[j].n_outcomes; o++)
          {
            g_autoptr (RwPlanState) next = rw_plan_state_after_check (state, problem, j, o);

            value += try_everything (problem, next);
          }
        best = fmin (best, value);
      }
  return best;
}

double
fixture_brute_force (const RwProblem   *problem,
                     const RwPlanState *state)
{
  return try_everything (problem, state) / rw_plan_state_mass (state, problem);
}

char *
fixture_solve (const RwProblem    *problem,
               const RwPlanBudget *budget,
               const RwPlanLimits *limits)
{
  g_autoptr (RwPlanState) start = rw_plan_state_new (problem);
  g_autoptr (RwPlanTree) tree = rw_plan_tree_solve (problem, start, budget, limits);

  return rw_plan_tree_to_json (tree, problem);
}
