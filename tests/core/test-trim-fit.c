/* test-trim-fit.c: lines and predictions of all rails from the trim's positions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-coverage.h"
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

/* --- several rails --------------------------------------------------------------------------- */

#define N_RAILS 4
#define N_POSITIONS 5

/* A supply that follows these lines exactly; the reference is rail 1. Errors are added by the
 * tests. */
static const double true_offset[N_RAILS] = { -0.6, 0, 0.35, 0.1 };
static const double true_slope[N_RAILS] = { 2.5, 1, -1.04, 0.02 };
static const double true_x[N_POSITIONS] = { 4.82, 5.11, 4.95, 5.3, 5.02 };
static const RwTrimPrior wide[N_RAILS] = { { 2.4, 0.7 }, { 0, 0 }, { -1, 0.3 }, { 0, 0.07 } };

/* Of what the supply shows: not every rail at every position, position 3 without the reference,
 * one twice. */
static guint
partial_readings (RwTrimReading *out)
{
  static const guint8 read[N_POSITIONS][N_RAILS] = {
    { 1, 1, 1, 1 }, { 1, 1, 0, 1 }, { 0, 1, 1, 0 }, { 1, 0, 1, 1 }, { 2, 1, 0, 0 }
  };
  guint n = 0;

  for (guint k = 0; k < N_POSITIONS; k++)
    for (guint rail = 0; rail < N_RAILS; rail++)
      for (guint i = 0; i < read[k][rail]; i++)
        out[n++] = reading (rail, k, true_offset[rail] + true_slope[rail] * true_x[k],
                            rail == 0 ? 0.012 : 0.005);
  return n;
}

static RwTrimFit *
fit_partial (const RwTrimReading *readings,
             guint                n)
{
  return rw_trim_fit_new (N_RAILS, 1, wide, N_POSITIONS, readings, n);
}

static void
test_exact_readings_give_the_true_lines (void)
{
  RwTrimReading readings[N_RAILS * N_POSITIONS];
  const guint n = partial_readings (readings);
  RwTrimPrior exact[N_RAILS];
  double x, u_x;

  for (guint i = 0; i < N_RAILS; i++)
    exact[i] = (RwTrimPrior){ true_slope[i], wide[i].slope_u };

  g_autoptr (RwTrimFit) fit = rw_trim_fit_new (N_RAILS, 1, exact, N_POSITIONS, readings, n);

  for (guint i = 0; i < N_RAILS; i++)
    {
      RwTrimLine line;

      g_assert_true (rw_trim_fit_get_line (fit, i, &line));
      assert_close (line.slope, true_slope[i], 1e-9);
      assert_close (line.offset, true_offset[i], 1e-8);
    }
  for (guint k = 0; k < N_POSITIONS; k++)
    {
      g_assert_true (rw_trim_fit_get_x (fit, k, &x, &u_x));
      assert_close (x, true_x[k], 1e-9);
      g_assert_cmpfloat (u_x, <, k == 3 ? 0.02 : 0.005);
    }
  assert_close (rw_trim_fit_get_chi2 (fit), 0, 1e-12);
}

/* The sum of squares, worked out here from the readings; x of each position by ternary search. */
static double
sum_at (const RwTrimReading *readings,
        guint                n,
        const double        *offset,
        const double        *slope)
{
  double sum = 0;

  for (guint k = 0; k < N_POSITIONS; k++)
    {
      double num = 0, den = 0;

      for (guint pass = 0; pass < 2; pass++)
        for (guint i = 0; i < n; i++)
          if (readings[i].position == k)
            {
              const double w = 1 / (readings[i].u * readings[i].u), b = slope[readings[i].rail];
              const double rest = readings[i].value - offset[readings[i].rail];

              if (pass == 0)
                {
                  num += w * b * rest;
                  den += w * b * b;
                }
              else
                sum += w * pow (rest - b * num / den, 2);
            }
    }
  for (guint i = 0; i < N_RAILS; i++)
    if (i != 1)
      sum += pow ((slope[i] - wide[i].slope) / wide[i].slope_u, 2);
  return sum;
}

/* No step along any line's level or slope lowers the sum, with noise on every reading. */
static void
test_the_lines_are_the_best_there_are (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (guint round = 0; round < 50; round++)
    {
      RwTrimReading readings[N_RAILS * N_POSITIONS];
      const guint n = partial_readings (readings);
      double offset[N_RAILS], slope[N_RAILS];

      for (guint i = 0; i < n; i++)
        readings[i].value += sqrt (3) * readings[i].u * g_rand_double_range (random, -1, 1);

      g_autoptr (RwTrimFit) fit = fit_partial (readings, n);

      if (rw_trim_fit_get_n_outliers (fit) > 0)
        continue;
      for (guint i = 0; i < N_RAILS; i++)
        {
          RwTrimLine line;

          g_assert_true (rw_trim_fit_get_line (fit, i, &line));
          offset[i] = line.offset;
          slope[i] = line.slope;
        }

      const double best = sum_at (readings, n, offset, slope);

      for (guint i = 0; i < 4 * N_RAILS; i++)
        {
          const guint rail = i / 4;
          const double step = i % 2 == 0 ? 1e-4 : -1e-4, turn = i % 4 < 2 ? 0 : step;

          if (rail == 1)
            continue;
          slope[rail] += turn;
          offset[rail] += turn == 0 ? step : -5 * turn;
          g_assert_cmpfloat (sum_at (readings, n, offset, slope), >, best);
          slope[rail] -= turn;
          offset[rail] -= turn == 0 ? step : -5 * turn;
        }
    }
}

/* How a prediction moves with each reading and each prior, by differences; from that its
 * uncertainty and the factor of its band. Readings are exact, so the fit is as good as linear. */
typedef double (*Predict) (const RwTrimFit *fit, double value, RwTrimExpected *out);

static double
predict_at (const RwTrimFit *fit,
            double           value,
            RwTrimExpected  *out)
{
  g_assert_true (rw_trim_fit_expect (fit, 2, value, 0, out));
  return out->value;
}

static double
predict_from (const RwTrimFit *fit,
              double           value,
              RwTrimExpected  *out)
{
  g_assert_true (rw_trim_fit_expect_from (fit, 2, 0, value, 0, out));
  return out->value;
}

static double
predict_x (const RwTrimFit *fit,
           double           value,
           RwTrimExpected  *out)
{
  g_assert_true (rw_trim_fit_get_x (fit, 3, &out->value, &out->u));
  return out->value;
}

static void
check_errors (Predict  predict,
              double   at,
              gboolean check_factor)
{
  RwTrimReading readings[N_RAILS * N_POSITIONS];
  const guint n = partial_readings (readings);
  const double h = 1e-5;
  RwTrimPrior priors[N_RAILS];
  RwTrimExpected expected, unused;
  double variance = 0, sum2 = 0, sum3 = 0;

  for (guint i = 0; i < N_RAILS; i++)
    priors[i] = (RwTrimPrior){ true_slope[i], wide[i].slope_u };

  g_autoptr (RwTrimFit) fit = rw_trim_fit_new (N_RAILS, 1, priors, N_POSITIONS, readings, n);
  const double value = predict (fit, at, &expected);

  for (guint i = 0; i < n + N_RAILS; i++)
    {
      double *moved = i < n ? &readings[i].value : &priors[i - n].slope;
      const double before = *moved, u = i < n ? readings[i].u : priors[i - n].slope_u;

      *moved += h;
      g_autoptr (RwTrimFit) up = rw_trim_fit_new (N_RAILS, 1, priors, N_POSITIONS, readings, n);
      *moved = before - h;
      g_autoptr (RwTrimFit) down = rw_trim_fit_new (N_RAILS, 1, priors, N_POSITIONS, readings, n);
      *moved = before;

      const double part = pow ((predict (up, at, &unused) - predict (down, at,
                                                                     &unused)) / (2 * h) * u, 2);

      variance += part;
      sum2 += i < n ? part * part : 0;
      sum3 += i < n ? part * part * part : 0;
    }
  assert_close (expected.u / sqrt (variance), 1, 2e-3);
  if (check_factor)
    {
      const double factor = rw_coverage_factor_of_many (sum2 / pow (variance, 2),
                                                        sum3 / pow (variance, 3));

      assert_close ((expected.hi - value) / expected.u, factor, 1e-3);
      assert_close ((value - expected.lo) / expected.u, factor, 1e-3);
      g_assert_cmpfloat (factor, <, 1.958);
    }
}

static void
test_errors_follow_from_those_of_readings_and_priors (void)
{
  check_errors (predict_at, 5.05, TRUE);
  check_errors (predict_at, 4.7, TRUE);
  check_errors (predict_from, true_offset[0] + true_slope[0] * 5.2, TRUE);
  check_errors (predict_x, 0, FALSE);
}

static void
test_the_reading_watched_adds_its_own_error (void)
{
  RwTrimReading readings[N_RAILS * N_POSITIONS];
  const guint n = partial_readings (readings);
  g_autoptr (RwTrimFit) fit = fit_partial (readings, n);
  const double v = true_offset[0] + true_slope[0] * 5.2;
  RwTrimExpected exact, read, at, itself;

  g_assert_true (rw_trim_fit_expect_from (fit, 2, 0, v, 0, &exact));
  g_assert_true (rw_trim_fit_expect_from (fit, 2, 0, v, 0.05, &read));
  assert_close (read.u * read.u - exact.u * exact.u, pow (0.05 * 1.04 / 2.5, 2), 2e-5);

  g_assert_true (rw_trim_fit_expect_from (fit, 2, 1, 5.2, 0.004, &read));
  g_assert_true (rw_trim_fit_expect (fit, 2, 5.2, 0.004, &at));
  assert_close (read.value, at.value, 1e-12);
  assert_close (read.u, at.u, 1e-12);

  g_assert_true (rw_trim_fit_expect_from (fit, 2, 2, -5.1, 0.01, &itself));
  assert_close (itself.value, -5.1, 1e-12);
  assert_close (itself.hi, -5.1 + 0.95 * sqrt (3) * 0.01, 1e-9);
  g_assert_true (rw_trim_fit_expect_from (fit, 1, 0, v, 0, &read));
  assert_close (read.value, 5.2, 0.02);
}

static void
test_a_rail_that_stands_still_tells_nothing (void)
{
  RwTrimReading readings[N_RAILS * N_POSITIONS];
  const guint n = partial_readings (readings);
  g_autoptr (RwTrimFit) fit = fit_partial (readings, n);
  RwTrimExpected out = { .value = 77 };

  g_assert_false (rw_trim_fit_expect_from (fit, 2, 3, 0.2, 0.01, &out));
  assert_close (out.value, 77, 0);
  g_assert_true (rw_trim_fit_expect (fit, 3, 5.05, 0, &out));
}

/* --- what is tied to what -------------------------------------------------------------------- */

static void
test_one_position_predicts_by_the_prior (void)
{
  const RwTrimReading readings[] = { reading (1, 0, 5, 0.003), reading (0, 0, 12, 0.01) };
  g_autoptr (RwTrimFit) fit = rw_trim_fit_new (N_RAILS, 1, wide, 1, readings, 2);
  RwTrimExpected out;
  RwTrimLine line;

  g_assert_true (rw_trim_fit_expect (fit, 0, 5.1, 0, &out));
  assert_close (out.value, 12.24, 1e-9);
  assert_close (out.u, sqrt (pow (0.01, 2) + pow (2.4 * 0.003, 2) + pow (0.1 * 0.7, 2)), 1e-4);
  g_assert_cmpuint (rw_trim_fit_get_dof (fit), ==, 0);
  assert_close (rw_trim_fit_get_p (fit), 1, 0);
  g_assert_false (rw_trim_fit_get_line (fit, 2, &line));
  g_assert_false (rw_trim_fit_expect (fit, 2, 5.1, 0, &out));
}

static void
test_without_a_prior_it_takes_two_positions (void)
{
  const RwTrimPrior priors[] = { no_prior, no_prior };
  const RwTrimReading readings[] = { reading (0, 0, 5, 0.003), reading (1, 0, 12, 0.01),
                                     reading (0, 1, 5.2, 0.003), reading (1, 1, 12.5, 0.01) };
  g_autoptr (RwTrimFit) one = rw_trim_fit_new (2, 0, priors, 2, readings, 3);
  g_autoptr (RwTrimFit) two = rw_trim_fit_new (2, 0, priors, 2, readings, 4);
  RwTrimLine line;

  g_assert_false (rw_trim_fit_get_line (one, 1, &line));
  g_assert_true (rw_trim_fit_get_line (two, 1, &line));
  assert_close (line.slope, 2.5, 1e-9);
}

/* Rail 2 is only read where rail 0 was, rail 0 has its line from the reference: a chain. */
static void
test_x_is_inferred_from_rail_to_rail (void)
{
  const RwTrimReading readings[] = {
    reading (1, 0, 5, 0.002),    reading (0, 0, 12, 0.004),   reading (1, 1, 5.2, 0.002),
    reading (0, 1, 12.5, 0.004), reading (0, 2, 12.25, 0.004), reading (2, 2, -5, 0.004),
    reading (0, 3, 12.75, 0.004), reading (2, 3, -5.3, 0.004), reading (2, 4, -5.15, 0.004),
    reading (3, 5, 1, 0.004)
  };
  g_autoptr (RwTrimFit) fit = rw_trim_fit_new (N_RAILS, 1, wide, 6, readings,
                                               G_N_ELEMENTS (readings));
  RwTrimLine line;
  double x, u_x;

  g_assert_true (rw_trim_fit_get_x (fit, 3, &x, &u_x));
  assert_close (x, 5.3, 0.003);
  g_assert_true (rw_trim_fit_get_line (fit, 2, &line));
  assert_close (line.slope, -1.5, 0.05);
  g_assert_true (rw_trim_fit_get_x (fit, 4, &x, &u_x));
  assert_close (x, 5.2, 0.004);
  g_assert_cmpfloat (u_x, >, 0.002);
  g_assert_false (rw_trim_fit_get_x (fit, 5, &x, &u_x));
  g_assert_false (rw_trim_fit_get_line (fit, 3, &line));
}

static void
test_order_and_repeats_do_not_matter (void)
{
  RwTrimReading readings[N_RAILS * N_POSITIONS], other[N_RAILS * N_POSITIONS];
  const guint n = partial_readings (readings);
  guint m = 0;

  for (guint i = 0; i < n; i++)
    readings[i].value += 0.003 * ((i * 7 + 3) % 5 - 2.0);
  for (guint i = n; i-- > 0;)
    other[m++] = readings[i];

  /* both readings of rail 0 at the last position: two that say their mean say the same */
  g_assert_true (other[1].rail == 0 && other[2].rail == 0);
  other[1].value = other[2].value = (other[1].value + other[2].value) / 2;

  g_autoptr (RwTrimFit) a = fit_partial (readings, n);
  g_autoptr (RwTrimFit) b = fit_partial (other, m);

  for (guint i = 0; i < N_RAILS; i++)
    {
      RwTrimLine one, two;

      g_assert_true (rw_trim_fit_get_line (a, i, &one) && rw_trim_fit_get_line (b, i, &two));
      assert_close (one.slope, two.slope, 1e-9);
      assert_close (one.offset, two.offset, 1e-8);
      assert_close (one.slope_u, two.slope_u, 1e-9);
    }
}

static void
test_bad_input_is_passed_over (void)
{
  const RwTrimReading readings[] = {
    reading (1, 0, 5, 0),      reading (0, 0, 12, 0),        reading (0, 0, NAN, 0.1),
    reading (9, 0, 5, 0.1),    reading (0, 9, 5, 0.1),       reading (0, 0, 12, INFINITY),
    reading (2, 0, 5, -1),     reading (0, 0, INFINITY, 0.1), reading (2, 0, 5, NAN),
  };
  g_autoptr (RwTrimFit) fit = rw_trim_fit_new (N_RAILS, 1, wide, 1, readings,
                                               G_N_ELEMENTS (readings));
  g_autoptr (RwTrimFit) empty = rw_trim_fit_new (N_RAILS, 1, wide, 0, NULL, 0);
  RwTrimLine line;

  g_assert_true (rw_trim_fit_get_line (fit, 0, &line));
  g_assert_cmpuint (line.n_readings, ==, 1);
  assert_close (line.slope, 2.4, 1e-9);
  g_assert_false (rw_trim_fit_get_line (fit, 2, &line));
  g_assert_true (rw_trim_fit_get_line (empty, 1, &line));
  assert_close (line.slope, 1, 0);
  g_assert_false (rw_trim_fit_get_line (empty, 0, &line));
}

static double
any_number (GRand *random)
{
  static const double odd[] = { 0, 5, 5, -5, 12, 1e-300, 1e300, NAN, INFINITY, -1e-3, 1e9 };
  const guint i = (guint) g_rand_int_range (random, 0, 2 * G_N_ELEMENTS (odd));

  return i < G_N_ELEMENTS (odd) ? odd[i] : 10 * g_rand_double (random) - 5;
}

/* Whatever comes in, an answer comes out, and where one is given it is a number. */
static void
test_anything_ends_in_numbers_or_none (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);

  for (guint round = 0; round < 3000; round++)
    {
      RwTrimReading readings[24];
      RwTrimPrior priors[N_RAILS];
      const guint n = (guint) g_rand_int_range (random, 0, G_N_ELEMENTS (readings) + 1);

      for (guint i = 0; i < n; i++)
        readings[i] = reading ((guint) g_rand_int_range (random, 0, N_RAILS),
                               (guint) g_rand_int_range (random, 0, N_POSITIONS),
                               any_number (random), fabs (any_number (random)));
      for (guint i = 0; i < N_RAILS; i++)
        priors[i] = (RwTrimPrior){ any_number (random), fabs (any_number (random)) };

      g_autoptr (RwTrimFit) fit = rw_trim_fit_new (N_RAILS, 1, priors, N_POSITIONS, readings, n);

      for (guint i = 0; i < N_RAILS; i++)
        {
          RwTrimExpected out;
          RwTrimLine line;

          if (rw_trim_fit_get_line (fit, i, &line))
            {
              g_assert_true (isfinite (line.slope) && isfinite (line.offset));
              g_assert_true (line.slope_u >= 0 && line.offset_u >= 0);
              g_assert_true (rw_trim_fit_expect (fit, i, 5, 0.01, &out));
              g_assert_true (out.u >= 0 && out.lo <= out.value && out.value <= out.hi);
            }
          if (rw_trim_fit_expect_from (fit, i, 0, 12, 0.01, &out))
            g_assert_true (out.lo <= out.value && out.value <= out.hi);
        }
      g_assert_true (rw_trim_fit_get_p (fit) >= 0 && rw_trim_fit_get_p (fit) <= 1);
    }
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-fit/exact-readings-give-the-true-lines",
                   test_exact_readings_give_the_true_lines);
  g_test_add_func ("/trim-fit/the-lines-are-the-best-there-are",
                   test_the_lines_are_the_best_there_are);
  g_test_add_func ("/trim-fit/errors-follow-from-those-of-readings-and-priors",
                   test_errors_follow_from_those_of_readings_and_priors);
  g_test_add_func ("/trim-fit/the-reading-watched-adds-its-own-error",
                   test_the_reading_watched_adds_its_own_error);
  g_test_add_func ("/trim-fit/a-rail-that-stands-still-tells-nothing",
                   test_a_rail_that_stands_still_tells_nothing);
  g_test_add_func ("/trim-fit/one-position-predicts-by-the-prior",
                   test_one_position_predicts_by_the_prior);
  g_test_add_func ("/trim-fit/without-a-prior-it-takes-two-positions",
                   test_without_a_prior_it_takes_two_positions);
  g_test_add_func ("/trim-fit/x-is-inferred-from-rail-to-rail",
                   test_x_is_inferred_from_rail_to_rail);
  g_test_add_func ("/trim-fit/order-and-repeats-do-not-matter",
                   test_order_and_repeats_do_not_matter);
  g_test_add_func ("/trim-fit/bad-input-is-passed-over", test_bad_input_is_passed_over);
  g_test_add_func ("/trim-fit/anything-ends-in-numbers-or-none", test_anything_ends_in_numbers_or_none);
  return g_test_run ();
}
