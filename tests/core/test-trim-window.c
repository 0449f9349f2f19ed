/* test-trim-window.c: where the one screw should stand so that every rail is inside its limits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Worked answers from exact arithmetic (data/trim_window_worked.json: x is the travel of the screw there) and
 * from the model of windings that share their volts per turn (data/multi_output_line_model.json); plateaus,
 * missing limits and ties.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-trim-window.h"

#define MAX_N 7

static JsonObject *
worked_case (JsonNode *data,
             guint     index)
{
  return json_array_get_object_element (
    json_object_get_array_member (json_node_get_object (data), "computed"), index);
}

/* A member that is a number or the text of one. */
static double
number (JsonObject *object,
        const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return json_node_get_value_type (node) == G_TYPE_STRING
           ? g_ascii_strtod (json_node_get_string (node), NULL)
           : json_node_get_double (node);
}

static guint
worked_rails (JsonObject *it,
              RwTrimRail *rails)
{
  JsonArray *list = json_object_get_array_member (it, "rails");

  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      JsonObject *rail = json_array_get_object_element (list, i);

      rails[i] = (RwTrimRail){ number (rail, "a"), number (rail, "b"), number (rail, "lo"),
                               number (rail, "hi"), 1 };
    }
  return json_array_get_length (list);
}

static int
worked_index (JsonObject *it,
              const char *key)
{
  JsonArray *list = json_object_get_array_member (it, "rails");
  const char *name = json_object_get_string_member (it, key);

  for (guint i = 0; i < json_array_get_length (list); i++)
    if (g_str_equal (json_object_get_string_member (json_array_get_object_element (list, i), "name"), name))
      return (int) i;
  return -1;
}

static void
assert_close (double value,
              double expected,
              double relative)
{
  g_assert_cmpfloat_with_epsilon (value, expected, relative * MAX (fabs (expected), 1e-3));
}

static void
assert_worked_case (JsonObject *it)
{
  RwTrimRail rails[MAX_N];
  const guint n = worked_rails (it, rails);
  JsonArray *windows = json_object_get_array_member (it, "windows");
  JsonNode *both = json_object_get_member (it, "intersection");
  RwTrimWindow all, one;

  for (guint i = 0; i < n; i++)
    {
      JsonArray *ends = json_array_get_array_element (windows, i);

      rw_trim_window_solve (&rails[i], 1, &one);
      assert_close (one.lo, json_array_get_double_element (ends, 0), 1e-12);
      assert_close (one.hi, json_array_get_double_element (ends, 1), 1e-12);
      g_assert_cmpfloat_with_epsilon (one.margin, 1, 1e-12);
    }
  rw_trim_window_solve (rails, n, &all);
  g_assert_cmpint (all.exists, ==, !JSON_NODE_HOLDS_NULL (both));
  if (all.exists)
    {
      assert_close (all.lo, json_array_get_double_element (json_node_get_array (both), 0), 1e-12);
      assert_close (all.hi, json_array_get_double_element (json_node_get_array (both), 1), 1e-12);
      g_assert_cmpfloat (all.best, ==, all.compromise);
    }
  assert_close (all.gap, number (it, "gap"), 1e-12);
  g_assert_cmpint (all.low_rail, ==, worked_index (it, "limiting_low"));
  g_assert_cmpint (all.high_rail, ==, worked_index (it, "limiting_high"));
  g_assert_cmpfloat_with_epsilon (all.compromise, number (it, "minimax_t"), 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_trim_window_margin (rails, n, (1u << n) - 1, all.compromise),
                                  1 - number (it, "minimax_worst_normalised_deviation"), 1e-11);
}

static void
test_worked_cases (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("trim_window_worked.json");

  assert_worked_case (worked_case (data, 0));
  assert_worked_case (worked_case (data, 1));
}

/* A winding's rail: V = (N/N5)·(V5 + F5) − F, limits a share around nominal. */
static RwTrimRail
winding (JsonNode   *data,
         const char *name,
         double      nominal,
         double      share)
{
  const double turns = fixture_number (data, "inputs", "N", name, NULL)
                       / fixture_number (data, "inputs", "N", "5", NULL);
  const double offset = turns * fixture_number (data, "inputs", "VF", "5", NULL)
                        - fixture_number (data, "inputs", "VF", name, NULL);
  const double sign = nominal < 0 ? -1 : 1, half = share * fabs (nominal);

  return (RwTrimRail){ sign * offset, sign * turns, nominal - half, nominal + half, 1 };
}

static void
assert_window_of (JsonNode         *data,
                  const char       *key,
                  const RwTrimRail *rail)
{
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");
  JsonArray *ends = json_object_get_array_member (computed, key);
  RwTrimWindow window;

  rw_trim_window_solve (rail, 1, &window);
  g_assert_cmpfloat_with_epsilon (window.lo, json_array_get_double_element (ends, 0), 1e-12);
  g_assert_cmpfloat_with_epsilon (window.hi, json_array_get_double_element (ends, 1), 1e-12);
}

static void
test_shared_windings (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("multi_output_line_model.json");
  const RwTrimRail rails[] = { winding (data, "5", 5, 0.05), winding (data, "12", 12, 0.05),
                               winding (data, "-12", -12, 0.10) };
  RwTrimWindow window;

  g_assert_cmpfloat_with_epsilon (rails[1].offset + 5 * rails[1].slope, 12.21, 1e-12);
  assert_window_of (data, "window_5V_5pct", &rails[0]);
  assert_window_of (data, "window_from_12V_5pct", &rails[1]);
  assert_window_of (data, "window_from_neg12_10pct", &rails[2]);
  rw_trim_window_solve (rails, 3, &window);
  g_assert_cmpfloat_with_epsilon (window.lo, 4.75, 1e-12);
  g_assert_cmpfloat_with_epsilon (window.hi, 5.1625, 1e-12);
  g_assert_cmpint (window.low_rail, ==, 0);
  g_assert_cmpint (window.high_rail, ==, 1);
}

static void
test_plateau_gives_its_middle (void)
{
  /* Alone, +5 and +12 would meet at 4.8889 with margin 0.44; the rail that stands still allows 0.2. */
  const RwTrimRail rails[] = {
    { 0, 1, 4.8, 5.2, 1 }, { 0, 2.5, 11.25, 12.5, 1 }, { 3.48, 0, 3.3, 3.5, 1 }
  };
  RwTrimWindow window;

  rw_trim_window_solve (rails, 2, &window);
  g_assert_cmpfloat_with_epsilon (window.best, 2.2 / 0.45, 1e-12);
  rw_trim_window_solve (rails, 3, &window);
  g_assert_cmpfloat_with_epsilon (window.margin, 0.2, 1e-12);
  /* 1 − |x − 5| / 0.2 ≥ 0.2 from 4.84 to 5.16; 1 − |x − 4.75| / 0.25 ≥ 0.2 from 4.55 to 4.95. */
  g_assert_cmpfloat_with_epsilon (window.best, (4.84 + 4.95) / 2, 1e-12);
}

/* The margin of a rail with one limit is 1 at zero: that pulls the set point, but never out of the window. */
static void
test_one_sided_limit_never_pulls_out_of_the_window (void)
{
  const RwTrimRail above = { 0, 1, 4.9, INFINITY, 1 };
  const RwTrimRail below = { 0, 1, -INFINITY, -4.9, 1 };
  const RwTrimRail pair[] = { { 0, 1, 4.9, 5.2, 1 }, { 0, 2, -INFINITY, 9.9, 1 } };
  RwTrimWindow window;

  rw_trim_window_solve (&above, 1, &window);
  g_assert_true (window.exists && isinf (window.hi));
  g_assert_cmpfloat_with_epsilon (window.best, 4.9, 1e-12);
  rw_trim_window_solve (&below, 1, &window);
  g_assert_true (window.exists && isinf (window.lo));
  g_assert_cmpfloat_with_epsilon (window.best, -4.9, 1e-12);
  rw_trim_window_solve (pair, 2, &window);
  g_assert_cmpfloat_with_epsilon (window.hi, 4.95, 1e-12);
  g_assert_cmpint (window.high_rail, ==, 1);
  g_assert_cmpfloat (window.best, >=, window.lo);
  g_assert_cmpfloat (window.best, <=, window.hi);
}

static void
test_missing_and_odd_limits_are_taken_as_they_are (void)
{
  const RwTrimRail free = { 0, 1, -INFINITY, INFINITY, 1 };
  const RwTrimRail not_said = { 0, 1, NAN, NAN, 1 };
  const RwTrimRail good = { 0, 1, 4.9, 5.2, 1 };
  const RwTrimRail odd[] = {
    good, { 0, 1, 5.2, 4.9, 1 }, { NAN, 1, 4.9, 5.2, 1 }, { 0, INFINITY, 4.9, 5.2, 1 }
  };
  RwTrimWindow window;

  rw_trim_window_solve (NULL, 0, &window);
  g_assert_true (window.exists && isnan (window.best) && isinf (window.lo) && isinf (window.hi));
  g_assert_cmpint (window.low_rail, ==, -1);
  rw_trim_window_solve (&free, 1, &window);
  g_assert_true (window.exists && isnan (window.best) && window.kept == 1);
  rw_trim_window_solve (&not_said, 1, &window);
  g_assert_true (window.exists && isnan (window.best) && isinf (window.hi));
  rw_trim_window_solve (odd, 4, &window);
  g_assert_cmpuint (window.kept, ==, 1);
  g_assert_cmpfloat_with_epsilon (window.best, 5.05, 1e-12);
}

static void
test_still_rail_outside_rules_itself_out (void)
{
  const RwTrimRail rails[] = { { 0, 1, 4.9, 5.1, 2 }, { 11.0, 0, 11.4, 12.6, 1 }, { 0, 2, 9.6, 10.4, 3 } };
  RwTrimWindow window;

  rw_trim_window_solve (rails, 3, &window);
  g_assert_false (window.exists);
  g_assert_true (isinf (window.gap));
  g_assert_cmpint (window.low_rail, ==, 1);
  g_assert_cmpint (window.high_rail, ==, 1);
  g_assert_cmpuint (window.kept, ==, 5);
  g_assert_cmpfloat_with_epsilon (window.best, 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (window.margin, 1, 1e-12);

  rw_trim_window_solve (&rails[1], 1, &window);
  g_assert_true (!window.exists && isnan (window.best) && isnan (window.margin) && window.kept == 0);
}

static void
test_one_priority_goes_by_index (void)
{
  RwTrimRail rails[] = { { 0, 1, 4.9, 5.0, 1 }, { 0, 1, 5.1, 5.2, 1 } };
  RwTrimWindow window;

  rw_trim_window_solve (rails, 2, &window);
  g_assert_cmpuint (window.kept, ==, 1);
  g_assert_cmpfloat_with_epsilon (window.best, 4.95, 1e-12);
  g_assert_cmpfloat_with_epsilon (window.gap, 0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (window.compromise, 5.05, 1e-12);
  rails[1].priority = 0;
  rw_trim_window_solve (rails, 2, &window);
  g_assert_cmpuint (window.kept, ==, 2);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-window/worked-cases", test_worked_cases);
  g_test_add_func ("/trim-window/shared-windings", test_shared_windings);
  g_test_add_func ("/trim-window/plateau-gives-its-middle", test_plateau_gives_its_middle);
  g_test_add_func ("/trim-window/one-sided-limit-never-pulls-out",
                   test_one_sided_limit_never_pulls_out_of_the_window);
  g_test_add_func ("/trim-window/missing-and-odd-limits", test_missing_and_odd_limits_are_taken_as_they_are);
  g_test_add_func ("/trim-window/still-rail-outside-rules-itself-out",
                   test_still_rail_outside_rules_itself_out);
  g_test_add_func ("/trim-window/one-priority-goes-by-index", test_one_priority_goes_by_index);
  return g_test_run ();
}
