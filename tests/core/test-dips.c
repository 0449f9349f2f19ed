/* test-dips.c: dips and steps in streams of known truth.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-dips.h"

static GRand *chance;

static double
noise (double sigma)
{
  double sum = -6;

  for (int i = 0; i < 12; i++)
    sum += g_rand_double (chance);
  return sigma * sum;
}

static gboolean
push (RwDips *dips,
      double  t,
      double  value,
      double  step)
{
  const RwReading sample = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, step > 0 ? round (value / step) * step : value,
                                            step, "m1");

  return rw_dips_push (dips, t, &sample);
}

/* A dip each 20 s, of 60 mV, two samples long. */
static void
test_dips (void)
{
  g_autoptr (RwDips) dips = rw_dips_new (100);

  for (int i = 0; i < 800; i++)
    push (dips, i * 0.25, 5.02 + noise (0.002) - (i % 80 >= 40 && i % 80 < 42 ? 0.06 : 0), 0.001);
  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_DIP), ==, 10);
  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_STEP) + rw_dips_get_count (dips, RW_DIP_PEAK), ==, 0);
  for (guint i = 0; i < 10; i++)
    {
      const RwDip *dip = rw_dips_get (dips, i);

      g_assert_cmpfloat (dip->start, ==, (80 * i + 40) * 0.25);
      g_assert_cmpfloat (dip->end, ==, (80 * i + 41) * 0.25);
      g_assert_cmpfloat_with_epsilon (dip->size, -0.06, 0.01);
    }
  g_assert_true (rw_dips_find_before (dips, 10.8, 1) == rw_dips_get (dips, 0));
  g_assert_null (rw_dips_find_before (dips, 11.5, 1));
  g_assert_null (rw_dips_find_before (dips, 9.9, 1));
}

static void
test_step (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("stream_step.json");
  JsonArray *y = json_object_get_array_member (
    json_object_get_object_member (json_node_get_object (data), "inputs"), "y");
  g_autoptr (RwDips) dips = rw_dips_new (10);

  for (guint i = 0; i < json_array_get_length (y); i++)
    push (dips, i * 0.5, json_array_get_double_element (y, i), 0.001);
  g_assert_cmpuint (rw_dips_get_n (dips), ==, 1);
  g_assert_cmpint (rw_dips_get (dips, 0)->kind, ==, RW_DIP_STEP);
  g_assert_cmpfloat (rw_dips_get (dips, 0)->start, ==, 60);
  g_assert_cmpfloat_with_epsilon (rw_dips_get (dips, 0)->size, 0.01983, 0.003);
}

static void
test_drift (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("stream_drift.json");
  JsonArray *y = json_object_get_array_member (
    json_object_get_object_member (json_node_get_object (data), "inputs"), "y");
  g_autoptr (RwDips) dips = rw_dips_new (10);
  g_autoptr (RwDips) fast = rw_dips_new (10);

  for (guint i = 0; i < json_array_get_length (y); i++)
    push (dips, i, json_array_get_double_element (y, i), 0.001);
  g_assert_cmpuint (rw_dips_get_n (dips), ==, 0);
  for (int i = 0; i < 400; i++)
    push (fast, i * 0.25, 5 - 0.0005 * i + noise (0.0005), 0.001);
  g_assert_cmpuint (rw_dips_get_n (fast), ==, 0);

  /* Ever faster: in the end it moves twice the threshold in half a window, 7 samples, and only a baseline that is carried on
   * keeps up, either way. */
  for (int way = -1; way <= 1; way += 2)
    {
      g_autoptr (RwDips) faster = rw_dips_new (10);

      for (int i = 0; i < 400; i++)
        {
          const double u = MIN (i, 300), moved = 0.0015 * (u * u / 600 + (i - u));

          push (faster, i * 0.25, 5 + way * moved, 0.001);
        }
      g_assert_cmpuint (rw_dips_get_n (faster), ==, 0);
    }
}

/* What is going on is known while it goes on; the sample that settles what it was says so. */
static void
test_while_it_happens (void)
{
  g_autoptr (RwDips) dips = rw_dips_new (10);

  for (int i = 0; i < 40; i++)
    g_assert_false (push (dips, i, 5, 0.001));
  g_assert_false (rw_dips_is_away (dips));
  for (int i = 40; i < 40 + RW_DIPS_STEP; i++)
    {
      const gboolean last = i == 40 + RW_DIPS_STEP - 1;

      g_assert_cmpint (push (dips, i, 4.9, 0.001), ==, last);
      g_assert_cmpint (rw_dips_is_away (dips), ==, !last);
    }
  g_assert_false (push (dips, 48, 4.9, 0.001));
  g_assert_false (push (dips, 49, 4.8, 0.001));
  g_assert_true (push (dips, 50, 4.9, 0.001));
  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_STEP), ==, 1);
  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_DIP), ==, 1);
}

/* Four hours of plain noise at 4 samples a second, three sizes of noise: hardly ever a dip. */
static void
test_quiet (void)
{
  static const double sigmas[] = { 0.0003, 0.002, 0.01 };

  for (int s = 0; s < 3; s++)
    {
      g_autoptr (RwDips) dips = rw_dips_new (10);

      for (int i = 0; i < 57600; i++)
        push (dips, i * 0.25, 5 + noise (sigmas[s]), 0.001);
      g_test_message ("sigma %g: %u", sigmas[s], rw_dips_get_n (dips));
      g_assert_cmpuint (rw_dips_get_n (dips), <=, 3);
    }
}

static void
test_interruptions (void)
{
  g_autoptr (RwDips) dips = rw_dips_new (10);

  for (int i = 0; i < 400; i++)
    {
      RwReading sample = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5 + noise (0.001), i < 300 ? 0.001 : 0.01, "m1");

      if (i >= 100 && i < 104)
        sample.value = i == 100 ? 2.5 : 0.003;
      if (i == 200)
        {
          sample.over = TRUE;
          sample.value = (double) NAN;
        }
      if (i >= 300)
        sample.value = 5.03;
      rw_dips_push (dips, i * 0.25, &sample);
    }
  g_assert_cmpuint (rw_dips_get_n (dips), ==, 0);
  g_assert_cmpuint (rw_dips_get_interruptions (dips), ==, 2);
  g_assert_cmpfloat_with_epsilon (rw_dips_get_base (dips), 5.03, 1e-9);
  g_assert_cmpfloat (rw_dips_get_watched (dips), >, 85);
  g_assert_cmpfloat (rw_dips_get_watched (dips), <, 96);
}

static void
test_negative (void)
{
  g_autoptr (RwDips) dips = rw_dips_new (10);

  for (int i = 0; i < 100; i++)
    push (dips, i * 0.25, i == 50 ? -4.8 : i == 70 ? -5.2 : -5, 0.001);
  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_DIP), ==, 1);
  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_PEAK), ==, 1);
}

static void
test_cost (void)
{
  g_autoptr (RwDips) dips = rw_dips_new (1000);

  g_test_timer_start ();
  for (int i = 0; i < 20000; i++)
    push (dips, i * 0.25, 5 + noise (0.002), 0.001);
  g_assert_cmpfloat (g_test_timer_elapsed (), <, 20000 * 200e-6);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  chance = g_rand_new_with_seed (21);
  g_test_add_func ("/dips/each dip is counted, timed and sized", test_dips);
  g_test_add_func ("/dips/a new level is one step", test_step);
  g_test_add_func ("/dips/a slow drift is no dip", test_drift);
  g_test_add_func ("/dips/what happens is known while it happens", test_while_it_happens);
  g_test_add_func ("/dips/noise is no dip", test_quiet);
  g_test_add_func ("/dips/lifted leads, overload and ranges are no dips", test_interruptions);
  g_test_add_func ("/dips/a negative rail dips towards nought", test_negative);
  g_test_add_func ("/dips/a sample costs little", test_cost);

  const int result = g_test_run ();

  g_rand_free (chance);
  return result;
}
