/* test-verdict.c: is a value within its limits, and how sure is that?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers: JCGM 106:2012 clauses 7 and 8 (data/jcgm106_specific.json); sure-pass windows that
 * trade practice gives for common meters, checked as properties.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-verdict.h"

static double
item (JsonNode   *data,
      const char *key,
      guint       index)
{
  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data), "inputs");
  JsonNode *node = json_array_get_element (json_object_get_array_member (inputs, key), index);

  return JSON_NODE_HOLDS_NULL (node) ? (double) -INFINITY : json_node_get_double (node);
}

static void
test_published_chances (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("jcgm106_specific.json");

  g_assert_cmpfloat_with_epsilon (rw_chance_inside (item (data, "oil", 0), item (data, "oil", 1),
                                                    item (data, "oil", 2), item (data, "oil", 3)),
                                  fixture_number (data, "computed", "pc_oil", NULL), 1e-10);
  g_assert_cmpfloat_with_epsilon (rw_chance_inside (item (data, "breakdown", 0),
                                                    item (data, "breakdown", 1),
                                                    item (data, "breakdown", 2),
                                                        item (data, "breakdown", 3)),
                                  fixture_number (data, "computed", "pc_breakdown", NULL), 1e-10);

  /* The speed at which a limit is broken with a chance of 0.999, the meter off by 2 %. */
  const double limit = item (data, "speed", 0), share = item (data, "speed", 1);
  const double speed = fixture_number (data, "computed", "speed_threshold", NULL);

  g_assert_cmpfloat_with_epsilon (1 - rw_chance_inside (speed, share * speed, -INFINITY, limit),
                                  item (data, "speed", 2), 1e-10);
}

static void
test_normal_distribution (void)
{
  /* Abramowitz and Stegun, table 26.1; and the far tail, where a difference would cancel. */
  g_assert_cmpfloat_with_epsilon (rw_normal_cdf (0), 0.5, 1e-15);
  g_assert_cmpfloat_with_epsilon (rw_normal_cdf (1), 0.841344746068543, 1e-14);
  g_assert_cmpfloat_with_epsilon (rw_normal_cdf (1.959963984540054), 0.975, 1e-14);
  g_assert_cmpfloat_with_epsilon (rw_normal_cdf (-10) / 7.619853024160527e-24, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_chance_inside (11, 1, 0, 1) / 7.619853024160527e-24, 1, 1e-4);
  g_assert_cmpfloat_with_epsilon (rw_chance_inside (-10, 1, 0, 1) / 7.619853024160527e-24, 1, 1e-4);
}

/* How far inside the limit the verdict turns to inside, in units of u, limits from 0 to T. */
static double
find_guard (double width,
            double u)
{
  double out = -3 * u, in = width / 2;

  while (in - out > 1e-13 * width)
    {
      const double middle = (in + out) / 2;

      if (rw_verdict_judge (middle, u, 0, width) == RW_VERDICT_INSIDE)
        in = middle;
      else
        out = middle;
    }
  return in / u;
}

static void
test_guard_bands_of_the_table (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("jcgm106_specific.json");
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");
  JsonArray *rows = json_object_get_array_member (computed, "two_sided_guard");
  const double u = 0.017;
  guint tried = 0;

  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      JsonObject *row = json_array_get_object_element (rows, i);
      const double width = json_object_get_double_member (row, "T_over_u") * u;

      g_assert_cmpfloat_with_epsilon (rw_chance_inside (width / 2, u, 0, width),
                                      json_object_get_double_member (row, "max_pc_at_centre"),
                                          1e-10);
      if (json_object_get_null_member (row, "guard_over_u"))
        {
          g_assert_cmpint (rw_verdict_judge (width / 2, u, 0, width), ==, RW_VERDICT_BLIND);
          continue;
        }
      g_assert_cmpfloat_with_epsilon (find_guard (width, u),
                                      json_object_get_double_member (row, "guard_over_u"), 1e-8);
      tried++;
    }
  g_assert_cmpuint (tried, ==, 8);
}

static void
test_one_sided_guard (void)
{
  /* A limit on one side only: 1.645 u inside it the verdict turns. */
  const double guard = 1.6448536269514726, u = 0.004;

  g_assert_cmpint (rw_verdict_judge (0.05 - (guard + 1e-9) * u, u, -INFINITY, 0.05), ==,
                   RW_VERDICT_INSIDE);
  g_assert_cmpint (rw_verdict_judge (0.05 - (guard - 1e-9) * u, u, -INFINITY, 0.05), ==,
                   RW_VERDICT_CLOSE);
  g_assert_cmpint (rw_verdict_judge (0.05 + (guard - 1e-9) * u, u, -INFINITY, 0.05), ==,
                   RW_VERDICT_CLOSE);
  g_assert_cmpint (rw_verdict_judge (0.05 + (guard + 1e-9) * u, u, -INFINITY, 0.05), ==,
                   RW_VERDICT_OUTSIDE);
  g_assert_cmpint (rw_verdict_judge (0.05 + (guard + 1e-9) * u, u, 0.05, INFINITY), ==,
                   RW_VERDICT_INSIDE);
}

static void
test_narrow_limits_are_blind (void)
{
  /* 3.9199 u and 3.9200 u lie on both sides of 2·1.95996 u. */
  g_assert_cmpint (rw_verdict_judge (5, 1 / 3.9199, 4.5, 5.5), ==, RW_VERDICT_BLIND);
  g_assert_cmpint (rw_verdict_judge (5, 1 / 3.9200, 4.5, 5.5), ==, RW_VERDICT_INSIDE);
  g_assert_cmpint (rw_verdict_judge (5.4, 1 / 3.9200, 4.5, 5.5), ==, RW_VERDICT_CLOSE);
}

static void
test_far_outside_stays_outside (void)
{
  static const double us[] = { 0.5, 1, 2, 5 };

  for (guint i = 0; i < G_N_ELEMENTS (us); i++)
    {
      const double u = us[i];

      g_assert_cmpint (rw_verdict_judge (5.5 + 1.65 * u, u, 4.5, 5.5), ==, RW_VERDICT_OUTSIDE);
      g_assert_cmpint (rw_verdict_judge (4.5 - 1.65 * u, u, 4.5, 5.5), ==, RW_VERDICT_OUTSIDE);
      g_assert_cmpint (rw_verdict_judge (5.5 + 1.64 * u, u, 4.5, 5.5), ==, RW_VERDICT_BLIND);
    }
}

/* However coarse the meter: a value between the limits is never proven outside, one beyond them
 * never inside. */
static void
test_no_verdict_against_the_value (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);

  for (guint i = 0; i < 200000; i++)
    {
      const double half = g_rand_double_range (random, 0.01, 1);
      const double value = g_rand_double_range (random, -3, 3);
      const double u = half * exp (g_rand_double_range (random, -7, 7));
      const RwVerdict verdict = rw_verdict_judge (value, u, -half, half);

      g_assert_cmpint (verdict, !=, fabs (value) <= half ? RW_VERDICT_OUTSIDE : RW_VERDICT_INSIDE);
      g_assert_cmpint (verdict, ==, rw_verdict_judge (-value, u, -half, half));
      if (2 * half < 3.919 * u)
        g_assert_true (verdict == RW_VERDICT_BLIND || verdict == RW_VERDICT_OUTSIDE);
      if (2 * half > 3.92 * u)
        g_assert_cmpint (verdict, !=, RW_VERDICT_BLIND);
    }
}

static void
test_chances_add_up (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (12);

  for (guint i = 0; i < 20000; i++)
    {
      const double y = g_rand_double_range (random, -9, 9);
      const double u = g_rand_double_range (random, 0.01, 4);
      const double below = rw_chance_inside (y, u, -INFINITY, -1);
      const double within = rw_chance_inside (y, u, -1, 2);
      const double above = rw_chance_inside (y, u, 2, INFINITY);

      g_assert_cmpfloat_with_epsilon (below + within + above, 1, 1e-14);
      g_assert_true (within >= 0 && within <= 1);
    }
}

static void
test_sure_pass_of_common_meters (void)
{
  /* A bound treated as rectangular: at 4.75–5.25 the verdict must turn no later than at the bound. */
  static const double bounds[] = { 0.045, 0.027, 0.070, 0.0065, 0.0055 };

  for (guint i = 0; i < G_N_ELEMENTS (bounds); i++)
    {
      const double u = bounds[i] / sqrt (3);

      g_assert_cmpint (rw_verdict_judge (4.75 + bounds[i], u, 4.75, 5.25), ==, RW_VERDICT_INSIDE);
      g_assert_cmpint (rw_verdict_judge (4.75 + 0.9 * bounds[i], u, 4.75, 5.25), ==,
                       RW_VERDICT_CLOSE);
      g_assert_cmpint (rw_verdict_judge (4.75 - bounds[i], u, 4.75, 5.25), ==, RW_VERDICT_OUTSIDE);
    }
}

static void
test_nothing_to_judge (void)
{
  g_assert_cmpint (rw_verdict_judge (NAN, 0.1, 0, 1), ==, RW_VERDICT_NONE);
  g_assert_cmpint (rw_verdict_judge (0.5, NAN, 0, 1), ==, RW_VERDICT_NONE);
  g_assert_cmpint (rw_verdict_judge (0.5, 0.1, NAN, NAN), ==, RW_VERDICT_NONE);
  g_assert_true (isnan (rw_chance_inside (NAN, 1, 0, 1)));

  /* Nothing known of the meter: the limit itself still counts as inside. */
  g_assert_cmpint (rw_verdict_judge (1, 0, 0, 1), ==, RW_VERDICT_INSIDE);
  g_assert_cmpint (rw_verdict_judge (1.0000001, 0, 0, 1), ==, RW_VERDICT_OUTSIDE);
}

static void
test_words_and_shapes_differ (void)
{
  static const char *const ids[RW_N_VERDICTS] = { "none", "inside", "close", "outside", "blind" };

  for (int i = 0; i < RW_N_VERDICTS; i++)
    {
      g_assert_cmpstr (rw_verdict_to_id ((RwVerdict) i), ==, ids[i]);
      for (int j = 0; j < i; j++)
        {
          g_assert_cmpstr (rw_verdict_get_label ((RwVerdict) i), !=,
                           rw_verdict_get_label ((RwVerdict) j));
          g_assert_cmpstr (rw_verdict_get_glyph ((RwVerdict) i), !=,
                           rw_verdict_get_glyph ((RwVerdict) j));
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/verdict/published-chances", test_published_chances);
  g_test_add_func ("/verdict/normal-distribution", test_normal_distribution);
  g_test_add_func ("/verdict/guard-bands-of-the-table", test_guard_bands_of_the_table);
  g_test_add_func ("/verdict/one-sided-guard", test_one_sided_guard);
  g_test_add_func ("/verdict/narrow-limits-are-blind", test_narrow_limits_are_blind);
  g_test_add_func ("/verdict/far-outside-stays-outside", test_far_outside_stays_outside);
  g_test_add_func ("/verdict/no-verdict-against-the-value", test_no_verdict_against_the_value);
  g_test_add_func ("/verdict/chances-add-up", test_chances_add_up);
  g_test_add_func ("/verdict/sure-pass-of-common-meters", test_sure_pass_of_common_meters);
  g_test_add_func ("/verdict/nothing-to-judge", test_nothing_to_judge);
  g_test_add_func ("/verdict/words-and-shapes-differ", test_words_and_shapes_differ);
  return g_test_run ();
}
