/* test-quantity-format.c: numbers as people read them, in a locale with a point and one with a comma.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-quantity.h"

/* Expected text as in a locale with a point, with the mark of the locale put in. */
static void
assert_text (char       *text,
             const char *wanted)
{
  g_autofree char *got = text;
  g_auto (GStrv) parts = g_strsplit (wanted, ".", -1);
  g_autofree char *local = g_strjoinv (localeconv ()->decimal_point, parts);

  g_assert_cmpstr (got, ==, local);
}

static void
test_number (void)
{
  assert_text (rw_quantity_format_number (5.021, 3), "5.021");
  assert_text (rw_quantity_format_number (-5.021, 2), "−5.02");
  assert_text (rw_quantity_format_number (0, 2), "0.00");
  assert_text (rw_quantity_format_number (-0.0, 2), "0.00");
  assert_text (rw_quantity_format_number (-0.004, 2), "0.00");
  assert_text (rw_quantity_format_number (-0.4, 0), "0");
  assert_text (rw_quantity_format_number (-0.006, 2), "−0.01");
  assert_text (rw_quantity_format_number (-12345.6, 1), "−12345.6");
  assert_text (rw_quantity_format_number (2.675, 2), "2.67"); /* the double lies below */
}

static void
test_decimals_follow_the_step (void)
{
  static const struct
  {
    double step;
    int    decimals;
  } rows[] = { { 10, 0 },   { 1, 0 },    { 0.1, 1 },  { 0.01, 2 }, { 0.001, 3 }, { 0.0001, 4 },
               { 1e-5, 5 }, { 1e-6, 6 }, { 1e-9, 6 }, { 0, 3 },    { -1, 3 },    { NAN, 3 },
               { 0.02, 2 }, { 0.005, 3 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpint (rw_quantity_decimals (rows[i].step), ==, rows[i].decimals);
}

#define N "\u202F" /* narrow no-break space */

static void
test_with_unit (void)
{
  assert_text (rw_quantity_format (5.02, 0.01, RW_KIND_DC), "5.02" N "V");
  assert_text (rw_quantity_format (-5.02, 0.01, RW_KIND_DC), "−5.02" N "V");
  assert_text (rw_quantity_format (5.02, 0.001, RW_KIND_DC), "5.020" N "V");
  assert_text (rw_quantity_format (5.02, 0, RW_KIND_DC), "5.020" N "V");
  assert_text (rw_quantity_format (-0.035, 0.001, RW_KIND_DC), "−35" N "mV");
  assert_text (rw_quantity_format (0.0352, 0.0001, RW_KIND_DC), "35.2" N "mV");
  assert_text (rw_quantity_format (0.0352, 0, RW_KIND_DC), "35.2" N "mV");
  assert_text (rw_quantity_format (0.04, 0.01, RW_KIND_DC),
               "0.04" N "V"); /* the meter does not resolve mV */
  assert_text (rw_quantity_format (0.2, 0.001, RW_KIND_DC), "0.200" N "V");
  assert_text (rw_quantity_format (0.012, 0.001, RW_KIND_RIPPLE), "12" N "mV");
  assert_text (rw_quantity_format (-0.0004, 0.001, RW_KIND_DC), "0" N "mV");
  assert_text (rw_quantity_format (-0.001, 0.01, RW_KIND_DC), "0.00" N "V");
  assert_text (rw_quantity_format (47, 1, RW_KIND_OHMS), "47" N "Ω");
  assert_text (rw_quantity_format (0.02, 0.001, RW_KIND_OHMS), "0.020" N "Ω");
  assert_text (rw_quantity_format (0.25, 0.01, RW_KIND_AMPS), "0.25" N "A");
  assert_text (rw_quantity_format (62, 1, RW_KIND_CELSIUS), "62" N "°C");
  assert_text (rw_quantity_format (NAN, 0.01, RW_KIND_DC), "OL");
  assert_text (rw_quantity_format (-INFINITY, 0.01, RW_KIND_DC), "OL");
}

static void
test_signed (void)
{
  assert_text (rw_quantity_format_signed (0.25, 0.01, RW_KIND_DC), "+0.25" N "V");
  assert_text (rw_quantity_format_signed (-0.25, 0.01, RW_KIND_DC), "−0.25" N "V");
  assert_text (rw_quantity_format_signed (0, 0.01, RW_KIND_DC), "0.00" N "V");
  assert_text (rw_quantity_format_signed (0.001, 0.01, RW_KIND_DC), "0.00" N "V");
  assert_text (rw_quantity_format_signed (-0.001, 0.01, RW_KIND_DC), "0.00" N "V");
  assert_text (rw_quantity_format_signed (0.035, 0.001, RW_KIND_DC), "+35" N "mV");
  assert_text (rw_quantity_format_signed (NAN, 0.01, RW_KIND_DC), "OL");
  assert_text (rw_quantity_format_signed (INFINITY, 0.01, RW_KIND_DC), "OL");
}

static void
test_uncertainty (void)
{
  assert_text (rw_quantity_format_u (0.2, RW_KIND_DC), "±0.39" N "V");
  assert_text (rw_quantity_format_u (0.045 / sqrt (3), RW_KIND_DC), "±51" N "mV");
  assert_text (rw_quantity_format_u (0.0027, RW_KIND_DC), "±5.3" N "mV");
  assert_text (rw_quantity_format_u (0.8, RW_KIND_OHMS), "±1.6" N "Ω");
  assert_text (rw_quantity_format_u (30, RW_KIND_OHMS), "±59" N "Ω");
  assert_text (rw_quantity_format_u (0, RW_KIND_DC), "");
  assert_text (rw_quantity_format_u (NAN, RW_KIND_DC), "");
}

static void
test_clock_and_age (void)
{
  assert_text (rw_quantity_format_clock (0), "0:00");
  assert_text (rw_quantity_format_clock (83.9), "1:23");
  assert_text (rw_quantity_format_clock (3599.999), "59:59");
  assert_text (rw_quantity_format_clock (3765), "1:02:45");
  assert_text (rw_quantity_format_clock (-3), "0:00");
  assert_text (rw_quantity_format_clock (NAN), "0:00");
  assert_text (rw_quantity_format_clock (1e300), "277777:46:40");
  assert_text (rw_quantity_format_age (12.9), "12 s");
  assert_text (rw_quantity_format_age (60), "1 min");
  assert_text (rw_quantity_format_age (3599), "59 min");
  assert_text (rw_quantity_format_age (7200), "2 h");
  assert_text (rw_quantity_format_age (1e300), "277777 h");
}

static void
test_chance (void)
{
  assert_text (rw_quantity_format_chance (0), "0 %");
  assert_text (rw_quantity_format_chance (0.004), "< 1 %");
  assert_text (rw_quantity_format_chance (0.01), "1 %");
  assert_text (rw_quantity_format_chance (0.624), "62 %");
  assert_text (rw_quantity_format_chance (0.99), "99 %");
  assert_text (rw_quantity_format_chance (0.997), "> 99 %");
  assert_text (rw_quantity_format_chance (1), "100 %");
}

/* What is shown can be typed, and is the same then. */
static void
test_shown_reads_back (void)
{
  static const double steps[] = { 0.1, 0.01, 0.001, 0.0001 };

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    for (int counts = -3000; counts <= 3000; counts += 13)
      {
        const double value = counts * steps[i];
        g_autofree char *shown = rw_quantity_format (value, steps[i], RW_KIND_DC);
        g_autoptr (GError) error = NULL;
        RwQuantityTyped typed;

        g_assert_true (rw_quantity_parse (shown, RW_KIND_DC, &typed, &error));
        g_assert_no_error (error);
        g_assert_cmpfloat_with_epsilon (typed.value, value, 1e-9);
        g_assert_cmpfloat_with_epsilon (typed.step, steps[i], 1e-12);
        g_assert_null (strchr (shown, '-'));
        g_assert_null (strchr (shown, ' '));
      }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/quantity/format/number", test_number);
  g_test_add_func ("/quantity/format/decimals-follow-the-step", test_decimals_follow_the_step);
  g_test_add_func ("/quantity/format/with-unit", test_with_unit);
  g_test_add_func ("/quantity/format/signed", test_signed);
  g_test_add_func ("/quantity/format/uncertainty", test_uncertainty);
  g_test_add_func ("/quantity/format/clock-and-age", test_clock_and_age);
  g_test_add_func ("/quantity/format/chance", test_chance);
  g_test_add_func ("/quantity/format/shown-reads-back", test_shown_reads_back);
  return g_test_run ();
}
