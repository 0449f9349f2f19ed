/* test-axis.c: a straight map from numbers to pixels.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "rw-axis.h"

static void
test_ends_meet_ends (void)
{
  const RwAxis up = rw_axis_make (-2, 6, 400, 0);

  g_assert_false (up.flat);
  g_assert_cmpfloat (rw_axis_to_pixel (&up, -2), ==, 400);
  g_assert_cmpfloat (rw_axis_to_pixel (&up, 6), ==, 0);
  g_assert_cmpfloat (rw_axis_to_pixel (&up, 2), ==, 200);
  g_assert_cmpfloat (rw_axis_slope (&up), ==, -50);
}

static void
test_there_and_back (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 1000; i++)
    {
      const double lo = g_rand_double_range (random, -1e3, 1e3);
      const RwAxis axis = rw_axis_make (lo, lo + g_rand_double_range (random, 1e-3, 1e3), 80, 900);
      const double value = g_rand_double_range (random, -2e3, 2e3);

      g_assert_cmpfloat_with_epsilon (rw_axis_to_value (&axis, rw_axis_to_pixel (&axis, value)),
                                      value, 1e-6);
    }
}

static void
test_any_range_is_made_good (void)
{
  static const double ranges[][2] = { { 3, 3 },
                                      { 0, 0 },
                                      { -5, -5 },
                                      { NAN, 1 },
                                      { 1, NAN },
                                      { INFINITY, 1 },
                                      { -INFINITY, INFINITY },
                                      { 1, 1 + 1e-13 },
                                      { 5e-324, 5e-324 },
                                      { 1e308, 1e308 },
                                      { -1.7e308, 1.7e308 } };

  for (guint i = 0; i < G_N_ELEMENTS (ranges); i++)
    {
      const RwAxis axis = rw_axis_make (ranges[i][0], ranges[i][1], 10, 110);

      g_assert_true (isfinite (axis.lo) && isfinite (axis.hi) && axis.lo < axis.hi);
      g_assert_true (axis.flat);
      g_assert_true (isfinite (rw_axis_to_pixel (&axis, axis.lo)));
    }
}

static void
test_flat_range_keeps_its_value_in_the_middle (void)
{
  const RwAxis axis = rw_axis_make (5, 5, 0, 100);

  g_assert_cmpfloat_with_epsilon (rw_axis_to_pixel (&axis, 5), 50, 1e-9);
}

static void
test_reversed_range_is_turned_round (void)
{
  const RwAxis axis = rw_axis_make (6, 2, 0, 100);

  g_assert_cmpfloat (axis.lo, ==, 2);
  g_assert_cmpfloat (axis.hi, ==, 6);
  g_assert_false (axis.flat);
}

static void
test_axis_without_length_answers (void)
{
  const RwAxis axis = rw_axis_make (1, 2, 50, 50);

  g_assert_cmpfloat (rw_axis_to_value (&axis, 50), ==, 1);
  g_assert_cmpuint (rw_axis_ticks (&axis, 40).n, ==, 0);
}

static void
test_beyond_names_the_side (void)
{
  const RwAxis axis = rw_axis_make (1, 2, 0, 100);

  g_assert_cmpint (rw_axis_beyond (&axis, 0.99), ==, -1);
  g_assert_cmpint (rw_axis_beyond (&axis, 1), ==, 0);
  g_assert_cmpint (rw_axis_beyond (&axis, 2), ==, 0);
  g_assert_cmpint (rw_axis_beyond (&axis, 2.01), ==, 1);
  g_assert_cmpint (rw_axis_beyond (&axis, NAN), ==, 0);
}

static void
test_ticks_keep_their_distance (void)
{
  for (double length = 30; length < 2000; length *= 1.07)
    {
      const RwAxis axis = rw_axis_make (0, 377, 0, length);
      const RwTicks ticks = rw_axis_ticks (&axis, 60), clock = rw_axis_clock_ticks (&axis, 60);

      if (ticks.n > 1)
        g_assert_cmpfloat (ticks.step * rw_axis_slope (&axis), >=, 60 - 1e-6);
      if (clock.n > 1)
        g_assert_cmpfloat (clock.step * rw_axis_slope (&axis), >=, 60 - 1e-6);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/axis/ends-meet-ends", test_ends_meet_ends);
  g_test_add_func ("/axis/there-and-back", test_there_and_back);
  g_test_add_func ("/axis/any-range-is-made-good", test_any_range_is_made_good);
  g_test_add_func ("/axis/flat-range-keeps-its-value-in-the-middle",
                   test_flat_range_keeps_its_value_in_the_middle);
  g_test_add_func ("/axis/reversed-range-is-turned-round", test_reversed_range_is_turned_round);
  g_test_add_func ("/axis/without-length-answers", test_axis_without_length_answers);
  g_test_add_func ("/axis/beyond-names-the-side", test_beyond_names_the_side);
  g_test_add_func ("/axis/ticks-keep-their-distance", test_ticks_keep_their_distance);
  return g_test_run ();
}
