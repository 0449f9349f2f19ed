/* test-plan-node.c: the plan as rows that unfold.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "job-fixtures.h"
#include "rw-plan-node.h"

static RwAdvice *
advise (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_advice_new (knowledge, state, NULL);
}

static RwAdvice *
advise_resets (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  return advise (job);
}

static RwPlanNode *
row_at (GListModel *level,
        guint       position)
{
  RwPlanNode *row = g_list_model_get_item (level, position);

  g_assert_true (RW_IS_PLAN_NODE (row));
  return row;
}

/* How often any row below was met, to see that the walk went somewhere. */
typedef struct
{
  guint rows;
  guint checks;
  guint repairs;
} Met;

static void walk_level (GListModel *level,
                        double      reach,
                        GSList     *taken,
                        Met        *met);

static void
walk_row (RwPlanNode *row,
          double      level_reach,
          GSList     *taken,
          Met        *met)
{
  const char *id = rw_plan_node_get_id (row);
  g_autoptr (GListModel) below = rw_plan_node_list_children (row);
  GSList here = { (gpointer) id, taken };

  met->rows++;
  g_assert_cmpstr (rw_plan_node_get_title (row), !=, "");
  g_assert_cmpstr (rw_plan_node_get_detail (row), !=, "");
  switch (rw_plan_node_get_kind (row))
    {
    case RW_PLAN_ROW_CHECK:
      met->checks++;
      g_assert_null (g_slist_find_custom (taken, id, (GCompareFunc) strcmp));
      g_assert_cmpstr (rw_plan_node_get_check (row)->id, ==, id);
      g_assert_cmpfloat (rw_plan_node_get_expected (row), >=, rw_plan_node_get_minutes (row));
      walk_level (below, rw_plan_node_get_reach (row), &here, met);
      break;
    case RW_PLAN_ROW_OUTCOME:
      g_assert_cmpfloat_with_epsilon (rw_plan_node_get_reach (row),
                                      level_reach * rw_plan_node_get_probability (row),
                                      1e-12);
      if (below != NULL && rw_plan_node_get_depth (row) < 4)
        walk_level (below, rw_plan_node_get_reach (row), taken, met);
      break;
    case RW_PLAN_ROW_REPAIR:
      met->repairs++;
      g_assert_cmpstr (rw_plan_node_get_cause (row)->id, ==, id);
      g_assert_null (below);
      break;
    case RW_PLAN_ROW_REST:
    default:
      g_assert_null (below);
    }
}

/* Chances of a level sum to 1, up to what is too little for a row. */
static void
walk_level (GListModel *level,
            double      reach,
            GSList     *taken,
            Met        *met)
{
  const guint n = g_list_model_get_n_items (level);
  double sum = 0;

  g_assert_cmpuint (n, >, 0);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (RwPlanNode) row = row_at (level, i);

      sum += rw_plan_node_get_probability (row);
      walk_row (row, reach, taken, met);
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-6);
}

static void
test_unfolds (void)
{
  g_autoptr (RwAdvice) advice = advise_resets ();
  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);
  Met met = { 0 };

  walk_level (roots, 1, NULL, &met);
  g_assert_cmpuint (met.checks, >, 2);
  g_assert_cmpuint (met.repairs, >=, 3);
}

static void
test_begins_as_the_advice_does (void)
{
  g_autoptr (RwAdvice) advice = advise_resets ();
  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);
  g_autoptr (RwPlanNode) first = row_at (roots, 0);
  g_autoptr (GListModel) outcomes = rw_plan_node_list_children (first);
  const RwAdviceCheck *check = rw_advice_get_check (advice);

  g_assert_cmpuint (g_list_model_get_n_items (roots), ==, 1);
  g_assert_true (rw_plan_node_get_check (first) == check->check);
  g_assert_cmpfloat (rw_plan_node_get_expected (first), ==, check->expected);
  g_assert_cmpfloat (rw_plan_node_get_minutes (first), ==, check->minutes);
  g_assert_cmpint (rw_plan_node_get_hazard (first), ==, check->check->hazard);
  g_assert_cmpuint (g_list_model_get_n_items (outcomes), ==, rw_advice_get_n_outcomes (advice));
  for (guint o = 0; o < rw_advice_get_n_outcomes (advice); o++)
    {
      const RwAdviceOutcome *told = rw_advice_get_outcome (advice, o);
      g_autoptr (RwPlanNode) row = row_at (outcomes, o);
      g_autoptr (GListModel) next = rw_plan_node_list_children (row);

      g_assert_cmpstr (rw_plan_node_get_id (row), ==, told->outcome->id);
      g_assert_cmpfloat_with_epsilon (rw_plan_node_get_probability (row), told->chance, 1e-12);
      g_assert_true (rw_plan_node_get_cause (row) == told->likely);
      if (next == NULL)
        continue;

      g_autoptr (RwPlanNode) after = row_at (next, 0);

      g_assert_cmpstr (rw_plan_node_get_id (after), ==, told->next_id);
      g_assert_cmpfloat (rw_plan_node_get_expected (row), ==, told->expected);
    }
}

static void
test_begins_with_a_repair (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  fixture_reading (job, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 4.6, 0.01);
  fixture_reading (job, "p5", RW_PLACE_WIRE, RW_KIND_DC, 0.02, 0.001);

  g_autoptr (RwAdvice) advice = advise (job);
  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);
  g_autoptr (RwPlanNode) first = row_at (roots, 0);
  Met met = { 0 };

  g_assert_cmpint (rw_plan_node_get_kind (first), ==, RW_PLAN_ROW_REPAIR);
  g_assert_cmpstr (rw_plan_node_get_id (first), ==, "low");
  g_assert_cmpfloat (rw_plan_node_get_expected (first), ==, rw_advice_get_expected (advice));
  g_assert_cmpint (rw_plan_node_get_hazard (first), ==, RW_HAZARD_NEAR_MAINS);
  walk_level (roots, 1, NULL, &met);
}

static void
test_done_has_no_plan (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_repair (job, "low", RW_REPAIR_FIXED);

  g_autoptr (RwAdvice) advice = advise (job);
  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);

  g_assert_cmpuint (g_list_model_get_n_items (roots), ==, 0);
}

static void
test_children_are_made_once (void)
{
  g_autoptr (RwAdvice) advice = advise_resets ();
  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);
  g_autoptr (RwPlanNode) first = row_at (roots, 0);
  g_autoptr (RwPlanNode) again = row_at (roots, 0);
  g_autoptr (GListModel) a = rw_plan_node_list_children (first);
  g_autoptr (GListModel) b = rw_plan_node_list_children (again);

  g_assert_true (first == again);
  g_assert_true (a == b);
  g_assert_true (g_list_model_get_item_type (a) == RW_TYPE_PLAN_NODE);
  g_assert_null (g_list_model_get_item (a, g_list_model_get_n_items (a)));
}

static void
test_properties (void)
{
  g_autoptr (RwAdvice) advice = advise_resets ();
  g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);
  g_autoptr (RwPlanNode) row = row_at (roots, 0);
  g_autofree char *id = NULL, *title = NULL, *detail = NULL;
  double probability = 0, reach = 0, minutes = 0, expected = 0;
  int kind = -1;

  g_object_get (row, "kind", &kind, "id", &id, "title", &title, "detail", &detail, "probability",
                &probability, "reach",
                &reach, "minutes", &minutes, "expected", &expected, NULL);
  g_assert_cmpint (kind, ==, RW_PLAN_ROW_CHECK);
  g_assert_cmpstr (id, ==, rw_plan_node_get_id (row));
  g_assert_cmpstr (title, ==, rw_plan_node_get_check (row)->title);
  g_assert_cmpstr (detail, ==, rw_plan_node_get_detail (row));
  g_assert_cmpfloat (probability, ==, 1);
  g_assert_cmpfloat_with_epsilon (reach, 1, 1e-12);
  g_assert_cmpfloat (minutes, ==, rw_plan_node_get_minutes (row));
  g_assert_cmpfloat (expected, ==, rw_plan_node_get_expected (row));
}

static void
test_lets_go_of_everything (void)
{
  RwAdvice *advice = advise_resets ();
  GListModel *roots = rw_plan_node_list_roots (advice);
  RwPlanNode *first = row_at (roots, 0);
  GListModel *outcomes = rw_plan_node_list_children (first);

  g_assert_cmpuint (g_list_model_get_n_items (outcomes), >, 0);

  /* A row keeps what it shows alive by itself. */
  rw_advice_unref (advice);
  g_assert_finalize_object (G_OBJECT (roots));
  g_assert_cmpstr (rw_plan_node_get_title (first), ==, rw_plan_node_get_check (first)->title);
  g_object_unref (outcomes);
  g_assert_finalize_object (first);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-node/unfolds level by level", test_unfolds);
  g_test_add_func ("/plan-node/begins as the advice does", test_begins_as_the_advice_does);
  g_test_add_func ("/plan-node/begins with a repair", test_begins_with_a_repair);
  g_test_add_func ("/plan-node/done has no plan", test_done_has_no_plan);
  g_test_add_func ("/plan-node/children are made once", test_children_are_made_once);
  g_test_add_func ("/plan-node/properties", test_properties);
  g_test_add_func ("/plan-node/lets go of everything", test_lets_go_of_everything);
  return g_test_run ();
}
