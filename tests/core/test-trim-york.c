/* test-trim-york.c: with one follower, the trim's fit is the published line.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-trim-fit.h"

static const RwTrimPrior no_prior = { 0, INFINITY };

#define assert_close(a, b, tolerance) g_assert_cmpfloat (fabs ((a) - (b)), <=, (tolerance))

static RwTrimReading
reading (guint  rail,
         guint  position,
         double value,
         double u)
{
  return (RwTrimReading){ rail, position, value, u, FALSE };
}

#define N_PEARSON 10

typedef struct
{
  double x[N_PEARSON], y[N_PEARSON], wx[N_PEARSON], wy[N_PEARSON];
} Pearson;

static void
get_numbers (JsonNode   *data,
             const char *name,
             double     *out)
{
  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data), "inputs");
  JsonArray *array = json_object_get_array_member (inputs, name);

  for (guint i = 0; i < json_array_get_length (array); i++)
    out[i] = json_array_get_double_element (array, i);
}

static Pearson
get_pearson (JsonNode *data)
{
  Pearson it;

  get_numbers (data, "x", it.x);
  get_numbers (data, "y", it.y);
  get_numbers (data, "wx", it.wx);
  get_numbers (data, "wy", it.wy);
  return it;
}

/* @share_x, @share_y scale the uncertainties. */
static RwTrimFit *
fit_pearson (const Pearson *it,
             guint          reference,
             double         share_x,
             double         share_y)
{
  const RwTrimPrior priors[] = { no_prior, no_prior };
  RwTrimReading readings[2 * N_PEARSON];

  for (guint i = 0; i < N_PEARSON; i++)
    {
      readings[2 * i] = reading (0, i, it->x[i], share_x / sqrt (it->wx[i]));
      readings[2 * i + 1] = reading (1, i, it->y[i], share_y / sqrt (it->wy[i]));
    }
  return rw_trim_fit_new (2, reference, priors, N_PEARSON, readings, 2 * N_PEARSON);
}

static void
test_one_follower_is_york_2004 (void)
{
  JsonNode *data = fixture_refdata ("york_pearson_1901_york_1966.json");
  const Pearson pearson = get_pearson (data);
  g_autoptr (RwTrimFit) fit = fit_pearson (&pearson, 0, 1, 1);
  RwTrimLine line;

  g_assert_true (rw_trim_fit_get_line (fit, 1, &line));
  assert_close (line.offset, fixture_number (data, "computed", "intercept", NULL), 1e-9);
  assert_close (line.slope, fixture_number (data, "computed", "slope", NULL), 1e-10);
  assert_close (line.offset_u, fixture_number (data, "computed", "se_intercept", NULL), 1e-9);
  assert_close (line.slope_u, fixture_number (data, "computed", "se_slope", NULL), 1e-9);
  assert_close (line.cov, fixture_number (data, "computed", "cov", NULL), 1e-9);
  assert_close (rw_trim_fit_get_chi2 (fit), fixture_number (data, "computed", "S", NULL), 1e-9);
  g_assert_cmpuint (rw_trim_fit_get_dof (fit), ==, 8);
  assert_close (rw_trim_fit_get_p (fit), fixture_number (data, "computed", "p_chi2", NULL), 1e-9);
  g_assert_cmpuint (line.n_readings, ==, N_PEARSON);
  json_node_unref (data);
}

static void
test_exchanged_rails_give_the_same_line (void)
{
  JsonNode *data = fixture_refdata ("york_pearson_1901_york_1966.json");
  const Pearson pearson = get_pearson (data);
  g_autoptr (RwTrimFit) fit = fit_pearson (&pearson, 1, 1, 1);
  RwTrimLine line;

  g_assert_true (rw_trim_fit_get_line (fit, 0, &line));
  assert_close (line.slope, fixture_number (data, "also", "swapped_xy_slope", NULL), 1e-9);
  assert_close (line.offset, fixture_number (data, "also", "swapped_xy_intercept", NULL), 1e-8);
  json_node_unref (data);
}

/* A reference that claims no error makes it the weighted line in one variable, when the misfit
 * allows. */
static void
test_an_exact_reference_is_legal (void)
{
  JsonNode *data = fixture_refdata ("york_pearson_1901_york_1966.json");
  const Pearson pearson = get_pearson (data);
  g_autoptr (RwTrimFit) fit = fit_pearson (&pearson, 0, 0, 10);
  RwTrimLine line;

  g_assert_true (rw_trim_fit_get_line (fit, 1, &line));
  assert_close (line.slope, fixture_number (data, "also", "x_exact_weighted_y", "slope", NULL),
                1e-9);
  assert_close (line.offset, fixture_number (data, "also", "x_exact_weighted_y", "intercept",
                                             NULL), 1e-8);
  assert_close (line.slope_u, 10 * fixture_number (data, "also", "x_exact_weighted_y", "se_slope",
                                                   NULL), 1e-8);
  json_node_unref (data);
}

static void
test_an_exact_follower_is_legal (void)
{
  JsonNode *data = fixture_refdata ("york_pearson_1901_york_1966.json");
  const Pearson pearson = get_pearson (data);
  g_autoptr (RwTrimFit) fit = fit_pearson (&pearson, 0, 10, 0);
  RwTrimLine line;

  g_assert_true (rw_trim_fit_get_line (fit, 1, &line));
  assert_close (line.slope, fixture_number (data, "also", "y_exact_weighted_x", "slope", NULL),
                1e-8);
  assert_close (line.offset, fixture_number (data, "also", "y_exact_weighted_x", "intercept",
                                             NULL), 1e-7);
  json_node_unref (data);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-york/one-follower-is-york-2004", test_one_follower_is_york_2004);
  g_test_add_func ("/trim-york/exchanged-rails-give-the-same-line",
                   test_exchanged_rails_give_the_same_line);
  g_test_add_func ("/trim-york/an-exact-reference-is-legal", test_an_exact_reference_is_legal);
  g_test_add_func ("/trim-york/an-exact-follower-is-legal", test_an_exact_follower_is_legal);
  return g_test_run ();
}
