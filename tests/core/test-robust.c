/* test-robust.c: robust lines and trends against published and exactly worked data.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-distribution.h"
#include "rw-robust.h"

static void
assert_near (double value,
             double expected,
             double relative)
{
  if (!(fabs (value - expected) <= relative * MAX (fabs (expected), 1e-3)))
    g_error ("%.17g is not %.17g", value, expected);
}

static double *
numbers (JsonNode   *data,
         const char *name,
         guint      *n)
{
  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data), "inputs");
  JsonArray *array = json_object_get_array_member (inputs, name);
  double *values = g_new (double, json_array_get_length (array));

  *n = json_array_get_length (array);
  for (guint i = 0; i < *n; i++)
    values[i] = json_array_get_double_element (array, i);
  return values;
}

static void
check_sen (JsonNode     *data,
           const double *x,
           const double *y,
           guint         n)
{
  const RwTheilSen sen = rw_theil_sen (x, y, n, 0.95);
  const RwRepeatedMedian repeated = rw_repeated_median (x, y, n);
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");
  JsonObject *expected = json_object_get_object_member (computed, "theil_sen");
  JsonArray *between = json_object_get_array_member (expected, "sen_95_interp");
  JsonArray *ranks = json_object_get_array_member (expected, "sen_95_rounded_ranks");

  assert_near (sen.slope, fixture_number (data, "computed", "theil_sen", "slope", NULL), 1e-12);
  assert_near (sen.intercept, fixture_number (data, "computed", "theil_sen", "intercept_median_residual", NULL), 1e-12);
  assert_near (sen.conover, json_object_get_double_member (expected, "intercept_conover_median_y_minus_b_median_x"), 1e-12);
  g_assert_cmpint (sen.n_slopes, ==, json_object_get_int_member (expected, "n_slopes"));
  assert_near (sen.lo_rank, json_array_get_double_element (ranks, 0), 1e-12);
  assert_near (sen.hi_rank, json_array_get_double_element (ranks, 1), 1e-12);
  if (json_array_get_null_element (between, 0))
    g_assert_true (isnan (sen.lo) && isnan (sen.hi));
  else
    {
      assert_near (sen.lo, json_array_get_double_element (between, 0), 1e-9);
      assert_near (sen.hi, json_array_get_double_element (between, 1), 1e-9);
    }
  assert_near (repeated.slope, fixture_number (data, "computed", "repeated_median", "slope", NULL), 1e-12);
  assert_near (repeated.intercept,
               fixture_number (data, "computed", "repeated_median", "intercept_median_residual", NULL), 1e-12);
}

static void
test_set (gconstpointer name)
{
  g_autoptr (JsonNode) data = fixture_refdata (name);
  guint n;
  g_autofree double *x = numbers (data, "x", &n);
  g_autofree double *y = numbers (data, "y", &n);
  const RwMannKendall kendall = rw_mann_kendall (x, y, n);
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");
  JsonObject *expected = json_object_get_object_member (computed, "kendall");

  check_sen (data, x, y, n);
  g_assert_cmpint (kendall.s, ==, json_object_get_int_member (expected, "S"));
  assert_near (kendall.variance, json_object_get_double_member (expected, "varS"), 1e-12);
  assert_near (kendall.tau_a, json_object_get_double_member (expected, "tau_a"), 1e-12);
  assert_near (kendall.tau_b, json_object_get_double_member (expected, "tau_b"), 1e-12);
  assert_near (kendall.z, json_object_get_double_member (expected, "Z_continuity"), 1e-12);
  g_assert_cmpfloat_with_epsilon (kendall.p_normal / json_object_get_double_member (expected, "p_two_sided_normal"), 1, 1e-8);
  g_assert_cmpint (kendall.exact, ==, json_object_has_member (expected, "p_two_sided_exact"));
  if (kendall.exact)
    {
      g_assert_cmpfloat_with_epsilon (kendall.p_one_exact / json_object_get_double_member (expected, "p_one_sided_exact"), 1, 1e-8);
      g_assert_cmpfloat_with_epsilon (kendall.p_two_exact / json_object_get_double_member (expected, "p_two_sided_exact"), 1, 1e-8);
    }
}

static void
test_quantiles (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("quantiles.json");
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");
  JsonObjectIter iter;
  const char *key;
  JsonNode *value;

  json_object_iter_init (&iter, json_object_get_object_member (computed, "z"));
  while (json_object_iter_next (&iter, &key, &value))
    assert_near (rw_normal_quantile (g_ascii_strtod (key, NULL)), json_node_get_double (value), 1e-12);
  json_object_iter_init (&iter, json_object_get_object_member (computed, "t_two_sided_95"));
  while (json_object_iter_next (&iter, &key, &value))
    assert_near (rw_t_half_width (0.95, (guint) g_ascii_strtoull (key, NULL, 10)), json_node_get_double (value), 1e-9);
  g_assert_true (isnan (rw_normal_quantile (0)) && isnan (rw_normal_quantile (1)));
  for (double p = 1e-9; p < 0.5; p *= 1.7)
    assert_near (erfc (-rw_normal_quantile (p) / M_SQRT2) / 2 / p, 1, 1e-11);
}

static void
test_medians (void)
{
  const double even[] = { 4, 1, 3, 2 };
  const double odd[] = { 9, 1, 5, 3, 7 };
  double q1, q3;

  g_assert_cmpfloat (rw_robust_median (even, 4), ==, 2.5);
  g_assert_cmpfloat (rw_robust_median (odd, 5), ==, 5);
  rw_robust_quartiles (even, 4, &q1, &q3);
  g_assert_true (q1 == 1.5 && q3 == 3.5);
  rw_robust_quartiles (odd, 5, &q1, &q3);
  g_assert_true (q1 == 2 && q3 == 8);
  rw_robust_quartiles (odd, 1, &q1, &q3);
  g_assert_true (q1 == 9 && q3 == 9);
  g_assert_cmpfloat (rw_robust_mad (odd, 5), ==, 2);
  g_assert_true (isnan (rw_robust_median (NULL, 0)));
}

/* Nearly half wild: the repeated median stands, equal x are dropped. */
static void
test_breakdown (void)
{
  double x[20], y[20];

  for (int i = 0; i < 20; i++)
    {
      x[i] = i;
      y[i] = i % 9 < 4 ? 1e6 * i : 2 * i + 1;
    }
  assert_near (rw_repeated_median (x, y, 20).slope, 2, 1e-9);
  x[1] = x[0];
  g_assert_cmpuint (rw_theil_sen (x, y, 20, 0.95).n_slopes, ==, 189);
  g_assert_true (isnan (rw_theil_sen (x, y, 2, 0.95).slope));
}

/* An AR(1) stream: r comes back, and the mean's true spread is that of n_eff readings. */
static void
test_n_effective (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  const guint n = 400;
  double e[400], sum_r = 0, sum_means = 0;

  for (int run = 0; run < 400; run++)
    {
      double mean = 0;

      e[0] = g_rand_double_range (random, -1, 1) / 0.8;
      for (guint i = 1; i < n; i++)
        e[i] = 0.6 * e[i - 1] + g_rand_double_range (random, -1, 1);
      for (guint i = 0; i < n; i++)
        mean += e[i] / n;
      sum_r += rw_lag1 (e, n) / 400;
      sum_means += mean * mean / 400;
    }
  assert_near (sum_r, 0.6, 0.03);
  assert_near (1.0 / 3 / (1 - 0.36) / rw_n_effective (n, 0.6), sum_means, 0.25);
  g_assert_cmpfloat (rw_n_effective (10, -0.5), ==, 10);
}

int
main (int    argc,
      char **argv)
{
  static const char *sets[] = { "sen_1968", "helsel_hirsch_outlier", "hollander_wolfe_cloud_seeding",
                                "kendall_tuna_hunter_L", "mannkendall_precipGL" };

  fixture_init (&argc, &argv);
  for (guint i = 0; i < G_N_ELEMENTS (sets); i++)
    {
      g_autofree char *path = g_strdup_printf ("/robust/%s is reproduced", sets[i]);

      g_test_add_data_func_full (path, g_strdup_printf ("%s.json", sets[i]), test_set, g_free);
    }
  g_test_add_func ("/robust/quantiles are those of the tables", test_quantiles);
  g_test_add_func ("/robust/even counts average the middle two", test_medians);
  g_test_add_func ("/robust/nearly half wild points do not turn the repeated median", test_breakdown);
  g_test_add_func ("/robust/correlated readings are worth n_eff", test_n_effective);
  return g_test_run ();
}
