/* test-change.c: steps, drifts and charts against published and exactly worked data.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "change-statistics.h"
#include "fixtures.h"
#include "rw-change.h"
#include "rw-robust.h"

typedef struct
{
  JsonNode *node;
  guint     n;
  double    x[512], y[512];
} Data;

static Data data;

static void
load (const char *name,
      const char *member)
{
  g_clear_pointer (&data.node, json_node_unref);
  data.node = fixture_refdata (name);

  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data.node), "inputs");
  JsonArray *array = json_object_get_array_member (inputs, member);
  const double dt = json_object_get_double_member_with_default (inputs, "dt_s", 1);

  data.n = json_array_get_length (array);
  for (guint i = 0; i < data.n; i++)
    {
      data.x[i] = i * dt;
      data.y[i] = json_array_get_double_element (array, i);
    }
}

#define EXPECT(value, tolerance, ...)                                                                \
  g_assert_cmpfloat_with_epsilon ((value) / fixture_number (data.node, "computed", __VA_ARGS__, NULL), 1, tolerance)

static void
test_nile (void)
{
  load ("nile_change_point.json", "flow");

  const RwChange change = rw_change_find (data.x, data.y, data.n, 15, 0);
  const RwChangeFit *step = &change.fit[RW_CHANGE_STEP];
  const RwPettitt pettitt = rw_pettitt (data.y, data.n);
  const double still = change.fit[RW_CHANGE_NONE].rss;
  const RwMannKendall trend = rw_mann_kendall (data.x, data.y, data.n);

  g_assert_cmpint (change.kind, ==, RW_CHANGE_STEP);
  g_assert_cmpuint (step->after, ==, 28);
  EXPECT (step->step, 1e-10, "step");
  EXPECT (step->scatter, 1e-10, "residual_sd_two_means");
  EXPECT ((still - step->rss) / (step->rss / 98), 1e-10, "supF", "value");
  g_assert_cmpfloat_with_epsilon (still, 2835156.75, 1e-4);
  g_assert_cmpfloat_with_epsilon (step->rss, 1597457.1944444445, 1e-4);
  g_assert_cmpuint (rw_change_find (data.x, data.y, data.n, 2, 0).fit[RW_CHANGE_STEP].after, ==, 28);
  g_assert_cmpuint (pettitt.after, ==, 28);
  g_assert_cmpfloat (pettitt.k, ==, 1617);
  EXPECT (pettitt.p, 1e-10, "pettitt", "p_approx");
  g_assert_cmpint (trend.s, ==, -1387);
  EXPECT (trend.p_normal, 1e-8, "mann_kendall", "p_two_sided_normal");
  EXPECT (rw_theil_sen (data.x, data.y, data.n, 0.95).slope, 1e-10, "theil_sen_slope");
}

static void
test_step (void)
{
  load ("stream_step.json", "y");

  const RwChange change = rw_change_find (data.x, data.y, data.n, 2, 0.001);
  const RwChangeFit *step = &change.fit[RW_CHANGE_STEP];

  g_assert_cmpint (change.kind, ==, RW_CHANGE_STEP);
  g_assert_cmpuint (step->after, ==, 120);
  EXPECT (step->step, 1e-10, "step");
  EXPECT (step->u_step, 1e-10, "se_step");
  EXPECT (step->scatter, 1e-10, "residual_sd");
  EXPECT ((change.fit[RW_CHANGE_NONE].rss - step->rss) / (step->rss / (data.n - 2)), 1e-9, "F_vs_no_change");
}

static void
test_drift (void)
{
  load ("stream_drift.json", "y");

  const RwChange change = rw_change_find (data.x, data.y, data.n, 2, 0.001);
  const RwLeastLine line = rw_least_line (data.x, data.y, data.n);

  g_test_message ("BIC %.1f %.1f %.1f %.1f, after %u", change.fit[0].bic, change.fit[1].bic, change.fit[2].bic,
                  change.fit[3].bic, change.fit[3].after);
  g_assert_cmpint (change.kind, ==, RW_CHANGE_LINE);
  EXPECT (line.slope, 1e-10, "ols_slope");
  EXPECT (line.u_slope, 1e-10, "ols_se");
  EXPECT (line.intercept, 1e-10, "intercept");
  EXPECT (line.scatter, 1e-10, "residual_sd");
  EXPECT (rw_theil_sen (data.x, data.y, data.n, 0.95).slope, 1e-10, "theil_sen_slope");
}

/* The step is named when there is one beside a drift, with the truth within three errors. */
static void
test_both (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (9);

  for (int i = 0; i < 120; i++)
    {
      data.x[i] = i;
      data.y[i] = 5 + 0.001 * i + (i >= 70 ? -0.08 : 0) + 0.004 * g_rand_double_range (random, -1, 1);
    }

  const RwChange change = rw_change_find (data.x, data.y, 120, 2, 0);
  const RwChangeFit *both = &change.fit[RW_CHANGE_BOTH];

  g_assert_cmpint (change.kind, ==, RW_CHANGE_BOTH);
  g_assert_cmpuint (both->after, ==, 70);
  g_assert_cmpfloat (fabs (both->step + 0.08), <, 3 * both->u_step);
  g_assert_cmpfloat (fabs (both->slope - 0.001), <, 3 * both->u_slope);
}

/* Stillness is called so nine times in ten at least. */
static void
test_still (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);
  guint named = 0;

  for (int run = 0; run < 200; run++)
    {
      for (int i = 0; i < 60; i++)
        {
          data.x[i] = i;
          data.y[i] = g_rand_double (random) + g_rand_double (random) + g_rand_double (random);
        }
      named += rw_change_find (data.x, data.y, 60, 4, 0).kind != RW_CHANGE_NONE;
    }
  g_assert_cmpuint (named, <, 20);
  for (int i = 0; i < 60; i++)
    data.y[i] = 5;
  g_assert_cmpint (rw_change_find (data.x, data.y, 60, 4, 0.001).kind, ==, RW_CHANGE_NONE);
  g_assert_cmpint (rw_change_find (data.x, data.y, 3, 4, 0.001).kind, ==, RW_CHANGE_NONE);
}

/* Bai's limits of the Nile's step as published; and they hold, on series that step by two to six times their scatter (a
 * step of one scatter is hardly to be found at all). */
static void
test_place (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (12);
  static const double sizes[] = { 2, 3, 4, 6 };
  double y[60];
  guint lo, hi;

  load ("nile_change_point.json", "flow");

  JsonArray *limits = json_object_get_array_member (
    json_object_get_object_member (json_node_get_object (data.node), "expected_published"), "confint_obs");

  rw_change_place (data.y, data.n, 28, 0, 1, &lo, &hi);
  g_assert_cmpint (lo, ==, json_array_get_int_element (limits, 0));
  g_assert_cmpint (hi, ==, json_array_get_int_element (limits, 1));
  for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
    {
      guint within = 0;
      double width = 0;

      for (int run = 0; run < 300; run++)
        {
          for (int i = 0; i < 60; i++)
            {
              data.x[i] = i;
              y[i] = sizes[k] * (i >= 25);
              for (int of = 0; of < 12; of++) /* near normal, sigma 1 */
                y[i] += g_rand_double (random) - 0.5;
            }

          const RwChange change = rw_change_find (data.x, y, 60, 3, 0);

          rw_change_place (y, 60, change.fit[RW_CHANGE_STEP].after, 0, 1, &lo, &hi);
          within += lo <= 25 && hi >= 25;
          width += (hi - lo) / 300.0;
        }
      g_test_message ("step of %g scatters: within in %u of 300, width %.2f", sizes[k], within, width);
      g_assert_cmpuint (within, >=, 279); /* 93 % */
      g_assert_cmpfloat (width, <, 30 / (sizes[k] * sizes[k]));
    }
}

/* Four statistics of other makers, and the best partition, put the change where rw_change_find () does. */
static void
test_other_statistics (void)
{
  load ("nile_change_point.json", "flow");

  const guint after = rw_change_find (data.x, data.y, data.n, 15, 0).fit[RW_CHANGE_STEP].after;
  const ChangeStatistic snht = change_snht (data.y, data.n);
  const ChangeStatistic range = change_buishand_range (data.y, data.n);
  const ChangeStatistic cusum = change_ols_cusum (data.y, data.n);
  const ChangeStatistic sup = change_sup_f (data.y, data.n, 0.15);

  EXPECT (snht.value, 1e-10, "snht", "T");
  EXPECT (range.value, 1e-10, "buishand", "R");
  EXPECT (range.value / sqrt (data.n), 1e-10, "buishand", "R_over_sqrt_n");
  EXPECT (change_buishand_u (data.y, data.n), 1e-10, "buishand", "U");
  EXPECT (cusum.value, 1e-10, "ols_cusum", "S0");
  EXPECT (change_kolmogorov_tail (cusum.value), 1e-10, "ols_cusum", "p_kolmogorov");
  EXPECT (sup.value, 1e-10, "supF", "value");
  g_assert_cmpuint (snht.after, ==, after);
  g_assert_cmpuint (range.after, ==, after);
  g_assert_cmpuint (cusum.after, ==, after);
  g_assert_cmpuint (sup.after, ==, after);
}

static void
check_partition (JsonObject *wanted)
{
  g_autoptr (GArray) changes = g_array_new (FALSE, FALSE, sizeof (guint));
  const double cost = change_partition (data.y, data.n, json_object_get_double_member (wanted, "penalty_on_raw_SSE"), changes);
  JsonArray *places = json_object_get_array_member (wanted, "changes_after");

  g_assert_cmpfloat_with_epsilon (cost / json_object_get_double_member (wanted, "optimal_cost"), 1, 1e-10);
  g_assert_cmpuint (changes->len, ==, json_array_get_length (places));
  for (guint i = 0; i < changes->len; i++)
    g_assert_cmpint (g_array_index (changes, guint, i), ==, json_array_get_int_element (places, i));
}

static void
test_partitions (void)
{
  load ("nile_change_point.json", "flow");

  JsonArray *wanted = json_object_get_array_member (
    json_object_get_object_member (json_node_get_object (data.node), "computed"), "optimal_partition_SSE_plus_beta_per_change");

  g_assert_cmpuint (json_array_get_length (wanted), ==, 5);
  for (guint i = 0; i < 5; i++)
    check_partition (json_array_get_object_element (wanted, i));
}

static void
check_cusum (const char *name,
             int         first)
{
  load (name, "x");

  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data.node), "inputs");
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data.node), "computed");
  RwCusum cusum = { .target = json_object_get_double_member (inputs, "target"),
                    .k = json_object_get_double_member (inputs, "k"),
                    .h = json_object_get_double_member (inputs, "h") };
  int signal = 0;

  for (guint i = 0; i < data.n; i++)
    {
      const int side = rw_cusum_push (&cusum, data.y[i]);

      if (side != 0 && signal == 0)
        signal = side * (int) (i + 1);
      g_assert_cmpfloat_with_epsilon (
        cusum.high, json_array_get_double_element (json_object_get_array_member (computed, "S_hi"), i), 1e-9);
      g_assert_cmpfloat_with_epsilon (
        cusum.low, json_array_get_double_element (json_object_get_array_member (computed, "S_lo"), i), 1e-9);
    }
  g_assert_cmpint (signal, ==, first);
}

static void
test_cusum (void)
{
  check_cusum ("cusum_nist_handbook.json", 14);
  check_cusum ("cusum_montgomery_concentration.json", 0);
}

static void
test_ewma (void)
{
  RwEwma ewma = { 0.3, 50 };

  load ("ewma_nist_handbook.json", "x");

  JsonObject *computed = json_object_get_object_member (json_node_get_object (data.node), "computed");

  for (guint i = 0; i < data.n; i++)
    g_assert_cmpfloat_with_epsilon (
      rw_ewma_push (&ewma, data.y[i]),
      json_array_get_double_element (json_object_get_array_member (computed, "ewma"), i), 1e-9);
  g_assert_cmpfloat_with_epsilon (50 + rw_ewma_half_width (0.3, 2.0539),
                                  json_object_get_double_member (computed, "UCL_asymptotic"), 1e-9);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/change/the Nile stepped after 1898 and did not drift", test_nile);
  g_test_add_func ("/change/a step of 20 mV is a step", test_step);
  g_test_add_func ("/change/a drift is a drift", test_drift);
  g_test_add_func ("/change/a step on a drift is both", test_both);
  g_test_add_func ("/change/stillness is seldom named anything else", test_still);
  g_test_add_func ("/change/where a step lies: the published limits, and they hold", test_place);
  g_test_add_func ("/change/other statistics put the change at the same place", test_other_statistics);
  g_test_add_func ("/change/so do the best partitions, at any price of a change", test_partitions);
  g_test_add_func ("/change/CUSUM as published", test_cusum);
  g_test_add_func ("/change/EWMA as published", test_ewma);

  const int result = g_test_run ();

  g_clear_pointer (&data.node, json_node_unref);
  return result;
}
