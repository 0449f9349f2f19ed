/* test-meter-facts.c: the uncertainty that follows from a meter's specification.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures: JCGM 100:2008, 4.3.7 example 2; and the half-widths that trade practice gives for
 * common hand meters at 5.00 V and 12 V.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-meter-facts.h"

static RwReading
volts (double value,
       double step)
{
  return rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, value, step, "m1");
}

static void
test_published_voltmeter (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("gum_4_3_7_voltmeter_spec.json");
  const double ppm_range = fixture_number (data, "inputs", "ppm_range", NULL);
  const double range = fixture_number (data, "inputs", "range_V", NULL);
  const double ppm_reading = fixture_number (data, "inputs", "ppm_reading", NULL);
  /* Its part of the range is two counts of one millionth each. */
  g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "dvm", ppm_reading / 1e4, ppm_range);
  const RwReading reading = volts (fixture_number (data, "inputs", "V", NULL), range * 1e-6);
  const double wanted = fixture_number (data, "computed", "u", NULL);

  g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_total (meter, &reading), wanted, 1e-12 * wanted);
  g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_total (meter, &reading),
                                  fixture_number (data, "expected_published", "u", NULL), 0.05e-6);
}

static void
test_common_hand_meters (void)
{
  static const struct
  {
    double percent, counts, step, volts, half_width;
  } rows[] = {
    { 0.5, 2, 0.010, 5.00, 0.045 },  { 0.5, 2, 0.001, 5.00, 0.027 },  { 0.8, 3, 0.010, 5.00, 0.070 },
    { 0.09, 2, 0.001, 5.00, 0.0065 }, { 0.05, 3, 0.001, 5.00, 0.0055 }, { 0.5, 2, 0.010, 12.0, 0.080 },
    { 0.5, 2, 0.010, -5.00, 0.045 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "", rows[i].percent,
                                                           rows[i].counts);
      const RwReading reading = volts (rows[i].volts, rows[i].step);

      g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_total (meter, &reading) * sqrt (3),
                                      rows[i].half_width, 1e-12);
      g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_own (meter, &reading) * sqrt (3),
                                      rows[i].counts * rows[i].step, 1e-12);
      g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_common (meter, &reading) * sqrt (3),
                                      rows[i].percent / 100 * fabs (rows[i].volts), 1e-12);
    }
}

static void
test_resolution_is_the_floor (void)
{
  g_autoptr (RwMeterFacts) perfect = rw_meter_facts_new ("m1", "", 0, 0);
  g_autoptr (RwMeterFacts) fine = rw_meter_facts_new ("m1", "", 0, 0.1);
  const RwReading reading = volts (5.02, 0.01);
  const double floor = 0.01 / sqrt (12);

  g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_total (perfect, &reading), floor, 1e-15);
  g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_own (perfect, &reading), floor, 1e-15);
  g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_own (fine, &reading), floor, 1e-15);
  g_assert_cmpfloat_with_epsilon (rw_meter_facts_u_total (NULL, &reading), floor, 1e-15);
  g_assert_cmpfloat (rw_meter_facts_u_common (NULL, &reading), ==, 0);
}

static void
test_written_u_wins (void)
{
  g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "", 0.5, 2);
  RwReading reading = volts (5.02, 0.01);

  reading.u = 0.0123;
  g_assert_cmpfloat (rw_meter_facts_u_total (meter, &reading), ==, 0.0123);
  g_assert_cmpfloat (rw_meter_facts_u_own (meter, &reading), ==, 0.0123);
  g_assert_cmpfloat (rw_meter_facts_u_common (meter, &reading), ==, 0);
}

static void
test_nothing_known_and_overload (void)
{
  g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", NULL, 0.5, 2);
  const RwReading unknown = volts (5.02, 0), over = volts (NAN, 0.01);

  g_assert_cmpfloat (rw_meter_facts_u_total (NULL, &unknown), ==, 0);
  g_assert_true (over.over);
  g_assert_true (isnan (rw_meter_facts_u_total (meter, &over)));
  g_assert_true (isnan (rw_meter_facts_u_own (meter, &over)));
  g_assert_true (isnan (rw_meter_facts_u_common (meter, &over)));
  g_assert_cmpstr (meter->name, ==, "");
}

static void
test_parts_make_the_whole (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint i = 0; i < 1000; i++)
    {
      g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "",
                                                           g_rand_double_range (random, 0, 2),
                                                           g_rand_double_range (random, 1, 5));
      const RwReading reading = volts (g_rand_double_range (random, -30, 30), 0.01);
      const double own = rw_meter_facts_u_own (meter, &reading);
      const double common = rw_meter_facts_u_common (meter, &reading);

      /* Half-widths of one rectangle add up; the parts' standard uncertainties do so with them. */
      g_assert_cmpfloat_with_epsilon (own + common, rw_meter_facts_u_total (meter, &reading), 1e-12);
    }
}

static void
test_copy_is_equal_and_apart (void)
{
  g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "bench meter", 0.5, 2);
  g_autoptr (RwMeterFacts) copy = rw_meter_facts_copy (meter);

  g_assert_cmpstr (copy->id, ==, "m1");
  g_assert_cmpstr (copy->name, ==, "bench meter");
  g_assert_true (copy->id != meter->id && copy->name != meter->name);
  g_assert_cmpfloat (copy->percent, ==, 0.5);
  g_assert_cmpfloat (copy->counts, ==, 2);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/meter-facts/published-voltmeter", test_published_voltmeter);
  g_test_add_func ("/meter-facts/common-hand-meters", test_common_hand_meters);
  g_test_add_func ("/meter-facts/resolution-is-the-floor", test_resolution_is_the_floor);
  g_test_add_func ("/meter-facts/written-u-wins", test_written_u_wins);
  g_test_add_func ("/meter-facts/nothing-known-and-overload", test_nothing_known_and_overload);
  g_test_add_func ("/meter-facts/parts-make-the-whole", test_parts_make_the_whole);
  g_test_add_func ("/meter-facts/copy-is-equal-and-apart", test_copy_is_equal_and_apart);
  return g_test_run ();
}
