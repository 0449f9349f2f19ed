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

static const struct
{
  const char    *supply; /* as it stands in the profile */
  RwRippleSupply is;
} supplies[] = { { "\"supply\":\"linear\",", RW_RIPPLE_SUPPLY_LINEAR },
                 { "\"supply\":\"switcher\",", RW_RIPPLE_SUPPLY_SWITCHER },
                 { "", RW_RIPPLE_SUPPLY_UNSAID } };

/* A rail of 5 V with a limit of 30 mV, and a raw one of 12 V with one of 0.7 V. (transfer full) */
static RwProfile *
make_profile (const char *supply)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strdup_printf (
      "{\"id\":\"two\",\"title\":\"Two\",%s\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[4.9,5.2],\"ripple_limit\":0.03},"
      "{\"id\":\"raw12\",\"nominal\":12,\"limits\":[10.8,15],\"ripple_limit\":0.7}]}", supply);
  g_autoptr (JsonNode) node = json_from_string (text, &error);

  g_assert_no_error (error);

  RwProfile *profile = rw_profile_new_from_node (node, "two", &error);

  g_assert_no_error (error);
  return profile;
}

static void
test_supply_and_raw_rail (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (supplies); i++)
    {
      g_autoptr (RwProfile) profile = make_profile (supplies[i].supply);

      g_assert_cmpint (rw_ripple_supply_of (profile), ==, supplies[i].is);
      g_assert_false (rw_ripple_is_raw (rw_profile_get_rail (profile, 0)));
      g_assert_true (rw_ripple_is_raw (rw_profile_get_rail (profile, 1)));
    }
}

/* What is said, and what must not be: no switching noise from a linear supply, no certainty from a switcher. */
static void
test_words (void)
{
  static const struct
  {
    RwRippleSupply supply;
    guint          rail;
    double         value;
    const char    *says, *never;
  } cases[] = {
    { RW_RIPPLE_SUPPLY_LINEAR, 0, 0.003, "sees all of it", "tens of kilohertz" },
    { RW_RIPPLE_SUPPLY_LINEAR, 0, 0.060, "raw rail ahead of it", "sees all of it" },
    { RW_RIPPLE_SUPPLY_LINEAR, 1, 0.400, "half of the rectifier", "above the limit" },
    { RW_RIPPLE_SUPPLY_LINEAR, 1, 0.800, "above the limit", "capacitors are good" },
    { RW_RIPPLE_SUPPLY_SWITCHER, 0, 0.003, "weak evidence", "above the limit" },
    { RW_RIPPLE_SUPPLY_SWITCHER, 0, 0.060, "above the limit", "linear" },
    { RW_RIPPLE_SUPPLY_UNSAID, 0, 0.003, "If the supply is a switcher", "linear" },
  };
  g_autoptr (RwProfile) profile = make_profile ("");

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const RwReading ac = make (cases[i].value, RW_KIND_RIPPLE);
      g_autofree char *words
          = rw_ripple_describe (&ac, NULL, cases[i].supply, rw_profile_get_rail (profile, cases[i].rail));

      g_test_message ("%s", words);
      g_assert_nonnull (strstr (words, cases[i].says));
      g_assert_null (strstr (words, cases[i].never));
    }

  RwReading over = make (0, RW_KIND_RIPPLE);

  over.over = TRUE;

  g_autofree char *stream = rw_ripple_describe_stream (3);
  g_autofree char *out = rw_ripple_describe (&over, NULL, RW_RIPPLE_SUPPLY_LINEAR, NULL);

  g_assert_nonnull (strstr (stream, "never"));
  g_assert_nonnull (strstr (out, "higher AC volts range"));
}

/* The two kinds of meter, and what a narrow pulse does to an average. */
static void
test_meter_words (void)
{
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m1", "one", 1, 3);
  g_autofree char *nobody = rw_ripple_describe_meter (NULL, RW_RIPPLE_SUPPLY_LINEAR);

  facts->ac = RW_METER_AC_AVERAGING;

  g_autofree char *linear = rw_ripple_describe_meter (facts, RW_RIPPLE_SUPPLY_LINEAR);
  g_autofree char *switcher = rw_ripple_describe_meter (facts, RW_RIPPLE_SUPPLY_SWITCHER);

  facts->ac = RW_METER_AC_TRUE_RMS;

  g_autofree char *rms = rw_ripple_describe_meter (facts, RW_RIPPLE_SUPPLY_LINEAR);

  g_assert_nonnull (strstr (nobody, "Nobody said"));
  g_assert_nonnull (strstr (linear, "4 per cent low"));
  g_assert_null (strstr (linear, "spikes"));
  g_assert_nonnull (strstr (switcher, "spikes"));
  g_assert_nonnull (strstr (rms, "sawtooth"));
  /* 4 per cent: the average of a sawtooth, scaled as if it were a sine, against its RMS. */
  g_assert_cmpfloat_with_epsilon (shown (1, TRUE) / shown (1, FALSE), 0.96, 0.005);
}

static void
test_trough_words (void)
{
  g_autofree char *holds = rw_ripple_describe_trough ((RwRippleNumber){ 8, 0.1 });
  g_autofree char *low = rw_ripple_describe_trough ((RwRippleNumber){ 6.5, 0.1 });
  g_autofree char *close = rw_ripple_describe_trough ((RwRippleNumber){ 7.05, 0.1 });
  g_autofree char *none = rw_ripple_describe_trough ((RwRippleNumber){ NAN, NAN });

  g_assert_nonnull (strstr (holds, "has the 7.0"));
  g_assert_nonnull (strstr (low, "dips with the ripple"));
  g_assert_nonnull (strstr (close, "too close"));
  g_assert_nonnull (strstr (none, "DC volts"));
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/ripple/a sawtooth's peaks from either kind of meter", test_factors);
  g_test_add_func ("/ripple/the trough is judged with its error", test_trough);
  g_test_add_func ("/ripple/the profile tells supply and raw rails", test_supply_and_raw_rail);
  g_test_add_func ("/ripple/averaging and true RMS are told apart", test_meter_words);
  g_test_add_func ("/ripple/the trough is put in words", test_trough_words);
  g_test_add_func ("/ripple/what a meter cannot see is said", test_words);
  return g_test_run ();
}
