/* test-trim-outliers.c: a wrong reading is named where the others can tell, and only there.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-trim-fit.h"

#define assert_close(a, b, tolerance) g_assert_cmpfloat (fabs ((a) - (b)), <=, (tolerance))

#define N_RAILS 3

static const RwTrimPrior no_prior = { 0, INFINITY };
/* The reference is rail 1. */
static const RwTrimPrior wide[N_RAILS] = { { 2.4, 0.7 }, { 0, 0 }, { -1, 0.3 } };

static RwTrimReading
reading (guint  rail,
         guint  position,
         double value,
         double u)
{
  return (RwTrimReading){ rail, position, value, u, FALSE };
}

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

static void
test_the_one_bad_reading_of_nine_is_named (void)
{
  JsonNode *data = fixture_refdata ("rail_trim_one_outlier.json");
  const RwTrimPrior priors[] = { no_prior, { 0.5, 0.15 } };
  double x[9], y[9];
  RwTrimReading readings[18];
  RwTrimLine line;

  get_numbers (data, "x", x);
  get_numbers (data, "y", y);
  for (guint i = 0; i < 9; i++)
    {
      readings[i] = reading (0, i, x[i], 1e-5);
      readings[9 + i] = reading (1, i, y[i], 0.001);
    }

  g_autoptr (RwTrimFit) fit = rw_trim_fit_new (2, 0, priors, 9, readings, 18);

  g_assert_cmpuint (rw_trim_fit_get_n_outliers (fit), ==, 1);
  g_assert_cmpuint (rw_trim_fit_get_outlier (fit, 0), ==, 9 + 4);
  g_assert_false (rw_trim_fit_get_unclear (fit));
  g_assert_true (rw_trim_fit_get_line (fit, 1, &line));
  assert_close (line.slope, fixture_number (data, "computed", "theil_sen", "slope", NULL), 0.001);
  g_assert_cmpuint (line.n_readings, ==, 8);
  g_assert_cmpfloat (rw_trim_fit_get_p (fit), >, 0.05);
  json_node_unref (data);
}

/* Of two rails that say otherwise at one position either may be wrong; a third decides. */
static void
test_of_two_rails_neither_is_named_and_a_third_decides (void)
{
  static const double x[] = { 4.8, 4.9, 5, 5.1, 5.2, 5.3 };
  RwTrimReading readings[18];

  for (guint k = 0; k < 6; k++)
    {
      readings[k] = reading (1, k, x[k], 0.002);
      readings[6 + k] = reading (0, k, 2.4 * x[k], 0.004);
      readings[12 + k] = reading (2, k, -x[k], 0.002);
    }
  readings[6 + 2].value += 0.3;

  g_autoptr (RwTrimFit) two = rw_trim_fit_new (N_RAILS, 1, wide, 6, readings, 12);
  g_autoptr (RwTrimFit) three = rw_trim_fit_new (N_RAILS, 1, wide, 6, readings, 18);

  g_assert_true (rw_trim_fit_get_unclear (two));
  g_assert_cmpuint (rw_trim_fit_get_n_outliers (two), ==, 0);
  g_assert_cmpuint (rw_trim_fit_get_n_outliers (three), ==, 1);
  g_assert_cmpuint (rw_trim_fit_get_outlier (three, 0), ==, 8);

  readings[1].value -= 0.2;
  g_autoptr (RwTrimFit) both = rw_trim_fit_new (N_RAILS, 1, wide, 6, readings, 18);

  g_assert_cmpuint (rw_trim_fit_get_n_outliers (both), ==, 2);
  g_assert_cmpuint (rw_trim_fit_get_outlier (both, 0), ==, 1);
  g_assert_cmpuint (rw_trim_fit_get_outlier (both, 1), ==, 8);
}

/* A follower with an exact reference at @n positions. */
static RwTrimFit *
fit_points (const double *x,
            const double *y,
            guint         n)
{
  const RwTrimPrior priors[] = { no_prior, { 1, 0.5 } };
  RwTrimReading readings[20];

  for (guint i = 0; i < n; i++)
    {
      readings[i] = reading (0, i, x[i], 0);
      readings[n + i] = reading (1, i, y[i], 0.002);
    }
  return rw_trim_fit_new (2, 0, priors, n, readings, 2 * n);
}

static void
test_three_points_name_none_and_four_only_when_three_agree (void)
{
  static const double x[] = { 4.8, 4.95, 5.1, 5.25 };
  static const double three[] = { 4.8, 5.05, 5.1 }, agree[] = { 4.8, 4.95, 5.2, 5.25 };
  static const double no_two[] = { 4.8, 5.0, 5.1, 5.17 };
  g_autoptr (RwTrimFit) a = fit_points (x, three, 3);
  g_autoptr (RwTrimFit) b = fit_points (x, agree, 4);
  g_autoptr (RwTrimFit) c = fit_points (x, no_two, 4);

  g_assert_cmpfloat (rw_trim_fit_get_p (a), <, 0.01);
  g_assert_true (rw_trim_fit_get_unclear (a));
  g_assert_cmpuint (rw_trim_fit_get_n_outliers (a), ==, 0);
  g_assert_false (rw_trim_fit_get_unclear (b));
  g_assert_cmpuint (rw_trim_fit_get_n_outliers (b), ==, 1);
  g_assert_cmpuint (rw_trim_fit_get_outlier (b, 0), ==, 4 + 2);
  g_assert_true (rw_trim_fit_get_unclear (c));
  g_assert_cmpuint (rw_trim_fit_get_n_outliers (c), ==, 0);
}

/* The middle one of three is off by fifty of its uncertainties: what is expected there must not be surer than
 * that. Truth is one of the lines through two of the points. */
static void
test_an_unclear_misfit_widens_what_is_expected (void)
{
  static const double x[] = { 4.8, 4.95, 5.1 };
  static const double straight[] = { 4.8, 4.95, 5.1 }, off[] = { 4.8, 5.05, 5.1 };
  g_autoptr (RwTrimFit) a = fit_points (x, straight, 3);
  g_autoptr (RwTrimFit) b = fit_points (x, off, 3);
  RwTrimExpected sure, unsure;

  g_assert_true (rw_trim_fit_expect (a, 1, 4.95, 0, &sure));
  g_assert_true (rw_trim_fit_expect (b, 1, 4.95, 0, &unsure));
  g_assert_true (rw_trim_fit_get_unclear (b));
  g_assert_cmpfloat (unsure.u, >, 20 * sure.u);
  g_assert_cmpfloat (unsure.lo, <, 4.95);
  g_assert_cmpfloat (unsure.hi, >, 5.05);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-outliers/the-one-bad-reading-of-nine-is-named",
                   test_the_one_bad_reading_of_nine_is_named);
  g_test_add_func ("/trim-outliers/of-two-rails-neither-is-named-and-a-third-decides",
                   test_of_two_rails_neither_is_named_and_a_third_decides);
  g_test_add_func ("/trim-outliers/three-points-name-none-and-four-only-when-three-agree",
                   test_three_points_name_none_and_four_only_when_three_agree);
  g_test_add_func ("/trim-outliers/an-unclear-misfit-widens-what-is-expected",
                   test_an_unclear_misfit_widens_what_is_expected);
  return g_test_run ();
}
