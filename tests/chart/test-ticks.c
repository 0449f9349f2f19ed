/* test-ticks.c: round numbers along an axis.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>
#include <stdlib.h>

#include "rw-ticks.h"

/* 1, 2 or 5 when @step is that times a power of ten; 0 otherwise. Read from its decimal digits. */
static int
mantissa_of (double step)
{
  g_autofree char *digits = g_strdup_printf ("%.6e", step);

  return g_str_has_prefix (digits, "1.000000") ? 1
         : g_str_has_prefix (digits, "2.000000") ? 2
         : g_str_has_prefix (digits, "5.000000") ? 5
                                                 : 0;
}

static void
test_step_is_the_smallest_that_fits (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 2000; i++)
    {
      const double span = pow (10, g_rand_double_range (random, -9, 9));
      const double most = g_rand_double_range (random, 1, 40);
      const double step = rw_ticks_step (span, most);
      const int mantissa = mantissa_of (step);

      g_assert_cmpint (mantissa, !=, 0);
      g_assert_cmpfloat (span / step, <=, most * (1 + 1e-6));
      g_assert_cmpfloat (span / (step / (mantissa == 5 ? 2.5 : 2)), >, most);
    }
}

static void
test_clock_steps_are_those_of_a_clock (void)
{
  static const struct
  {
    double span, most, step;
  } cases[] = {
    { 10, 10, 1 },         { 11, 10, 2 },         { 60, 10, 10 },         { 100, 10, 10 },
    { 101, 10, 15 },       { 151, 10, 30 },       { 301, 10, 60 },        { 601, 10, 120 },
    { 1201, 10, 300 },     { 3001, 10, 600 },     { 6001, 10, 900 },      { 9001, 10, 1800 },
    { 18001, 10, 3600 },   { 36001, 10, 7200 },   { 72001, 10, 10800 },   { 108001, 10, 21600 },
    { 216001, 10, 43200 }, { 432001, 10, 86400 }, { 864001, 10, 172800 }, { 4, 10, 0.5 },
    { 0.4, 10, 0.05 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (rw_ticks_clock_step (cases[i].span, cases[i].most),
                                    cases[i].step, 1e-9);
}

static void
test_ticks_lie_in_the_range_and_miss_none (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (2);

  for (guint i = 0; i < 2000; i++)
    {
      const double lo = g_rand_double_range (random, -100, 100),
                   hi = lo + pow (10, g_rand_double_range (random, -4, 4));
      const RwTicks ticks = i % 2 == 0 ? rw_ticks_decimal (lo, hi, 8) : rw_ticks_clock (lo, hi, 8);
      const double slack = ticks.step * 1e-6;

      if (ticks.n == 0)
        {
          g_assert_true (i % 2 == 1 || hi - lo < 1e-3 || rw_ticks_step (hi - lo, 8) > hi - lo);
          continue;
        }
      g_assert_cmpuint (ticks.n, <=, 10);
      g_assert_cmpfloat (rw_ticks_at (&ticks, 0), >=, lo - slack);
      g_assert_cmpfloat (rw_ticks_at (&ticks, 0) - ticks.step, <, lo + slack);
      g_assert_cmpfloat (rw_ticks_at (&ticks, ticks.n - 1), <=, hi + slack);
      g_assert_cmpfloat (rw_ticks_at (&ticks, ticks.n - 1) + ticks.step, >, hi - slack);
    }
}

/* The tick called 0.3 is the double 0.3, not three times 0.1. */
static void
test_ticks_are_the_numbers_they_print (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint i = 0; i < 1000; i++)
    {
      const double lo = g_rand_double_range (random, -20, 20);
      const RwTicks ticks = rw_ticks_decimal (
          lo, lo + pow (10, g_rand_double_range (random, -3, 2)), 12);

      for (guint k = 0; k < ticks.n; k++)
        {
          g_autofree char *printed = g_strdup_printf ("%.*f", ticks.decimals,
                                                      rw_ticks_at (&ticks, k));

          g_assert_cmpfloat (g_ascii_strtod (printed, NULL), ==, rw_ticks_at (&ticks, k));
        }
    }
}

static void
test_ends_of_the_range_are_ticks (void)
{
  const RwTicks ticks = rw_ticks_decimal (0, 0.3, 3);

  g_assert_cmpuint (ticks.n, ==, 4);
  g_assert_cmpfloat (rw_ticks_at (&ticks, 3), ==, 0.3);
  g_assert_cmpint (ticks.decimals, ==, 1);
}

static void
test_bad_ranges_have_no_ticks (void)
{
  static const double bad[][3] = { { 0, 0, 5 },         { 1, 0, 5 },
                                   { NAN, 1, 5 },       { 0, NAN, 5 },
                                   { 0, INFINITY, 5 },  { -INFINITY, INFINITY, 5 },
                                   { 0, 1, 0 },         { 0, 1, -3 },
                                   { 0, 1, NAN },       { 1e300, 1.0000000001e300, 5 },
                                   { 1, 1 + 1e-15, 5 }, { 0, 1, 1e9 } };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      const RwTicks decimal = rw_ticks_decimal (bad[i][0], bad[i][1], bad[i][2]);
      const RwTicks clock = rw_ticks_clock (bad[i][0], bad[i][1], bad[i][2]);

      g_assert_cmpuint (decimal.n, <=, i == 9 || i == 10 ? 8 : 0);
      g_assert_cmpuint (clock.n, <=, i == 9 || i == 10 ? 8 : 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ticks/step-is-the-smallest-that-fits", test_step_is_the_smallest_that_fits);
  g_test_add_func ("/ticks/clock-steps-are-those-of-a-clock",
                   test_clock_steps_are_those_of_a_clock);
  g_test_add_func ("/ticks/lie-in-the-range-and-miss-none",
                   test_ticks_lie_in_the_range_and_miss_none);
  g_test_add_func ("/ticks/are-the-numbers-they-print", test_ticks_are_the_numbers_they_print);
  g_test_add_func ("/ticks/ends-of-the-range-are-ticks", test_ends_of_the_range_are_ticks);
  g_test_add_func ("/ticks/bad-ranges-have-none", test_bad_ranges_have_no_ticks);
  return g_test_run ();
}
