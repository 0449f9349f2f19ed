/* test-coverage.c: the factor that holds a sum of rectangular and normal errors 95 % of the time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-coverage.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat (fabs ((a) / (b) - 1), <=, (tolerance))

static JsonObject *
element (JsonNode   *data,
         const char *array,
         guint       i)
{
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");

  return json_array_get_object_element (json_object_get_array_member (computed, array), i);
}

static double
number (JsonObject *object,
        const char *name)
{
  return json_object_get_double_member (object, name);
}

static guint
count (JsonNode   *data,
       const char *array)
{
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");

  return json_array_get_length (json_object_get_array_member (computed, array));
}

static void
test_one_rectangle_and_a_normal_error (void)
{
  JsonNode *data = fixture_refdata ("coverage_factor_rect_normal.json");

  assert_near (rw_coverage_factor (0.3, 0, 0), fixture_number (data, "computed",
                                                               "single_rect_k95", NULL), 1e-9);
  g_assert_cmpuint (count (data, "one_rectangle_plus_normal"), ==, 10);
  for (guint i = 0; i < 10; i++)
    {
      JsonObject *row = element (data, "one_rectangle_plus_normal", i);

      assert_near (rw_coverage_factor (number (row, "u_rect"), 0, number (row, "sigma")),
                   number (row, "k95"), 1e-8);
      assert_near (rw_coverage_factor (0, number (row, "u_rect"), number (row, "sigma")),
                   number (row, "k95"), 1e-8);
    }
  json_node_unref (data);
}

static void
test_two_rectangles_and_a_small_normal_error (void)
{
  JsonNode *data = fixture_refdata ("coverage_factor_rect_normal.json");

  g_assert_cmpuint (count (data, "two_rectangles"), ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      JsonObject *row = element (data, "two_rectangles", i);

      assert_near (rw_coverage_factor (number (row, "a") / sqrt (3), number (row, "b") / sqrt (3),
                                       0),
                   number (row, "k95"), 1e-8);
    }
  assert_near (rw_coverage_factor (0.05 / sqrt (3), 0.011 / sqrt (3), 0.001),
               fixture_number (data, "computed", "ea_4_02_s9", "k95", NULL), 1e-8);
  json_node_unref (data);
}

static void
test_normal_and_nothing_give_1_96 (void)
{
  assert_near (rw_coverage_factor (0, 0, 0.2), 1.959963984540054, 1e-12);
  assert_near (rw_coverage_factor (0, 0, 0), 1.959963984540054, 1e-12);
  assert_near (rw_coverage_factor (1e-3, 1e-4, 1), 1.959963984540054, 1e-9);
  assert_near (rw_coverage_factor_of_many (0, 0), 1.959963984540054, 1e-12);
}

/* The share of the variance of each rectangle; the rest is normal. By the inversion of the
 * characteristic function: P(|X| ≤ x) = 2/π ∫ sin (tx)/t ∏ sin (t a)/(t a) exp (−t² s/2) dt,
 * midpoints, fine enough where the normal part damps it. */
static double
chance_within (double        x,
               const double *shares,
               guint         n)
{
  const double dt = 0.01;
  double rest = 1, sum = 0;

  for (guint i = 0; i < n; i++)
    rest -= shares[i];
  for (double t = dt / 2; t < 400; t += dt)
    {
      double phi = exp (-t * t * rest / 2) * sin (t * x) / t;

      for (guint i = 0; i < n; i++)
        phi *= sin (t * sqrt (3 * shares[i])) / (t * sqrt (3 * shares[i]));
      sum += phi;
    }
  return sum * dt * 2 / G_PI;
}

static double
factor_by_inversion (const double *shares,
                     guint         n)
{
  double lo = 1.5, hi = 2.1;

  while (hi - lo > 1e-7)
    *(chance_within ((lo + hi) / 2, shares, n) < 0.95 ? &lo : &hi) = (lo + hi) / 2;
  return (lo + hi) / 2;
}

static void
test_many_rectangles_within_four_in_a_thousand (void)
{
  static const double cases[][6] = {
    { 1 / 3.0, 1 / 3.0, 1 / 3.0 },
    { 0.25, 0.25, 0.25, 0.25 },
    { 0.6, 0.2, 0.1, 0.1 },
    { 0.8, 0.05, 0.05, 0.05 },
    { 0.5, 0.3, 0.1 },
    { 0.4, 0.1 },
    { 0.9, 0.09, 0.005 },
    { 0.3, 0.2, 0.1, 0.1, 0.1, 0.1 },
    { 0.45, 0.45, 0.1 },
    { 0.7, 0.1, 0.1, 0.1 },
    { 0.48, 0.32, 0.2 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double sum2 = 0, sum3 = 0;
      guint n = 0;

      for (; n < 6 && cases[i][n] > 0; n++)
        {
          sum2 += pow (cases[i][n], 2);
          sum3 += pow (cases[i][n], 3);
        }

      const double exact = factor_by_inversion (cases[i],
                                                n), fast = rw_coverage_factor_of_many (sum2,
                                                                                       sum3);

      g_test_message ("case %u: exact %.5f, fast %.5f (%+.3f %%)", i, exact, fast,
                      100 * (fast / exact - 1));
      assert_near (fast, exact, 0.004);
    }
}

static void
test_two_are_matched_exactly (void)
{
  for (double p = 0.05; p < 1; p += 0.1)
    for (double q = 0; q <= MIN (p, 1 - p); q += 0.05)
      assert_near (rw_coverage_factor_of_many (p * p + q * q, pow (p, 3) + pow (q, 3)),
                   rw_coverage_factor (sqrt (p), sqrt (q), sqrt (MAX (0, 1 - p - q))), 1e-8);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/coverage/one-rectangle-and-a-normal-error",
                   test_one_rectangle_and_a_normal_error);
  g_test_add_func ("/coverage/two-rectangles-and-a-small-normal-error",
                   test_two_rectangles_and_a_small_normal_error);
  g_test_add_func ("/coverage/normal-and-nothing-give-1.96", test_normal_and_nothing_give_1_96);
  g_test_add_func ("/coverage/many-rectangles-within-four-in-a-thousand",
                   test_many_rectangles_within_four_in_a_thousand);
  g_test_add_func ("/coverage/two-are-matched-exactly", test_two_are_matched_exactly);
  return g_test_run ();
}
