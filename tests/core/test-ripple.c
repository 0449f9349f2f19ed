/* test-ripple.c: what an AC reading says, against waves sampled and rectified here.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-ripple.h"

/* What both kinds of meter show for a sawtooth of @half half peak-to-peak. */
static double
shown (double   half,
       gboolean average)
{
  const int n = 200000;
  double sum = 0;

  for (int i = 0; i < n; i++)
    {
      const double v = half * (2 * (i + 0.5) / n - 1);

      sum += average ? fabs (v) : v * v;
    }
  return average ? sum / n * RW_RIPPLE_FORM_SINE : sqrt (sum / n);
}

static RwReading
make (double value,
      RwKind kind)
{
  return rw_reading_make ("raw", RW_PLACE_TERMINALS, kind, value, 0.001, "m1");
}

static void
test_factors (void)
{
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m1", "one", 1, 3);
  RwReading ac = make (shown (0.45, FALSE), RW_KIND_RIPPLE);

  facts->ac = RW_METER_AC_TRUE_RMS;
  g_assert_cmpfloat_with_epsilon (rw_ripple_half_peak (&ac, facts).value, 0.45, 1e-6);
  ac.value = shown (0.45, TRUE);
  facts->ac = RW_METER_AC_AVERAGING;
  g_assert_cmpfloat_with_epsilon (rw_ripple_half_peak (&ac, facts).value, 0.45, 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_ripple_rms (&ac, facts).value, shown (0.45, FALSE), 1e-6);

  const double known = rw_ripple_half_peak (&ac, facts).u;

  facts->ac = RW_METER_AC_UNKNOWN;
  g_assert_cmpfloat (rw_ripple_half_peak (&ac, facts).u, >, known);
  g_assert_cmpfloat_with_epsilon (rw_ripple_half_peak (&ac, facts).value, 0.45, 0.01);
  ac.over = TRUE;
  g_assert_true (isnan (rw_ripple_half_peak (&ac, facts).value));
}

static void
test_trough (void)
{
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m1", "one", 0.5, 2);
  const RwReading dc = make (8.5, RW_KIND_DC);
  const RwReading ac = make (0.4, RW_KIND_RIPPLE), much = make (1.0, RW_KIND_RIPPLE), odd = make (0.866, RW_KIND_RIPPLE);

  facts->ac = RW_METER_AC_TRUE_RMS;

  const RwRippleNumber trough = rw_ripple_trough (&dc, &ac, facts, facts);

  g_assert_cmpfloat_with_epsilon (trough.value, 8.5 - 1.7320508 * 0.4, 1e-6);
  g_assert_cmpint (rw_ripple_trough_verdict (trough, RW_RIPPLE_RAW_LEAST), ==, RW_TROUGH_HOLDS);
  g_assert_cmpint (rw_ripple_trough_verdict (rw_ripple_trough (&dc, &much, facts, facts), 7), ==, RW_TROUGH_TOO_LOW);
  g_assert_cmpint (rw_ripple_trough_verdict (rw_ripple_trough (&dc, &odd, facts, facts), 7), ==, RW_TROUGH_TOO_CLOSE);
}

static void
test_alias (void)
{
  g_assert_cmpfloat_with_epsilon (rw_ripple_alias (100, 3), 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_ripple_alias (100, 4), 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_ripple_alias (120.4, 4), 0.4, 1e-9);
  g_assert_true (isnan (rw_ripple_alias (100, 0)));
  for (double f = 0; f < 500; f += 3.7)
    g_assert_cmpfloat (rw_ripple_alias (f, 2.5), <=, 1.25 + 1e-9);
}

static void
test_words (void)
{
  const RwReading ac = make (0.003, RW_KIND_RIPPLE);
  g_autofree char *unstated = rw_ripple_describe (&ac, NULL, rw_ripple_band ((double) NAN, 50e3), TRUE, 0.05);
  g_autofree char *narrow = rw_ripple_describe (&ac, NULL, rw_ripple_band (400, 50e3), TRUE, 0.001);
  g_autofree char *wide = rw_ripple_describe (&ac, NULL, rw_ripple_band (100e3, 50e3), TRUE, 0.05);
  g_autofree char *stream = rw_ripple_describe_stream (3);

  g_assert_nonnull (strstr (unstated, "weak evidence"));
  g_assert_null (strstr (unstated, "above the limit"));
  g_assert_nonnull (strstr (narrow, "cannot see switching ripple"));
  g_assert_nonnull (strstr (narrow, "above the limit"));
  g_assert_null (strstr (wide, "cannot"));
  g_assert_nonnull (strstr (stream, "never"));
  g_assert_cmpfloat (rw_ripple_would_show (RW_RIPPLE_BAND_UNSTATED, TRUE), <,
                     rw_ripple_would_show (RW_RIPPLE_BAND_UNSTATED, FALSE));
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/ripple/a sawtooth's peaks from either kind of meter", test_factors);
  g_test_add_func ("/ripple/the trough is judged with its error", test_trough);
  g_test_add_func ("/ripple/slow readings fold ripple down", test_alias);
  g_test_add_func ("/ripple/what a meter cannot see is said", test_words);
  return g_test_run ();
}
