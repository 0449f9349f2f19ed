/* test-compare.c: two sessions of one cabinet: what changed beyond the meters' errors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The uncertainties are worked by hand from ±(0.5 % + 2 counts); the adjusted chances are a published example of
 * Holm's rule. The sessions of the last tests are simulated: their errors are drawn, not stated.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "bench-play.h"
#include "fixtures.h"
#include "rw-compare-words.h"

static const double root_3 = 1.7320508075688772;

static RwCompare *
compare (const char     *then,
         const char     *now,
         RwCompareMeters meters)
{
  g_autoptr (RwSession) a = bench_play (then, NULL);
  g_autoptr (RwSession) b = bench_play (now, NULL);

  return rw_compare_new (a, b, meters);
}

/* The one item of @rail and @what; NULL: there is none. */
static const RwCompareItem *
find (const RwCompare *compare_of,
      RwCompareWhat    what,
      const char      *rail,
      RwPlace          place)
{
  const RwCompareItem *found = NULL;

  for (guint i = 0; i < rw_compare_get_n_items (compare_of); i++)
    {
      const RwCompareItem *item = rw_compare_get_item (compare_of, i);

      if (item->what != what || !g_str_equal (item->rail, rail) || item->place != place)
        continue;
      g_assert_null (found);
      found = item;
    }
  return found;
}

static void
test_holm_as_published (void)
{
  const double p[] = { 0.01, NAN, 0.04, 0.03, 0.005 };
  const double expected[] = { 0.03, NAN, 0.06, 0.06, 0.02 };
  double adjusted[5];

  rw_compare_holm (p, 5, adjusted);
  for (guint i = 0; i < 5; i++)
    if (isnan (p[i]))
      g_assert_true (isnan (adjusted[i]));
    else
      g_assert_cmpfloat_with_epsilon (adjusted[i], expected[i], 1e-12);
}

/* ±(0.5 % + 2 counts of 1 mV) at 5.021 V and 4.950 V. */
static void
test_per_cent_cancels_in_one_meter (void)
{
  g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "one", 0.5, 2);
  const RwReading a = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.021, 0.001, "m1");
  const RwReading b = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 4.950, 0.001, "m1");
  const double own = 0.002 / root_3;
  const double one = sqrt (2 * own * own + pow (0.005 * 0.071 / root_3, 2));
  const double two = sqrt (2 * own * own + pow (0.005 * 5.021 / root_3, 2) + pow (0.005 * 4.950 / root_3, 2));

  g_assert_cmpfloat_with_epsilon (one, 0.00164580, 5e-8); /* by hand */
  g_assert_cmpfloat_with_epsilon (two, 0.02041914, 5e-8);
  g_assert_cmpfloat_with_epsilon (rw_compare_u (&a, meter, &b, meter, TRUE), one, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_compare_u (&a, meter, &b, meter, FALSE), two, 1e-12);
  g_assert_true (isnan (rw_compare_u (&a, NULL, &b, meter, FALSE)));
}

static void
test_a_written_u_stays_whole (void)
{
  g_autoptr (RwMeterFacts) meter = rw_meter_facts_new ("m1", "one", 0.5, 2);
  RwReading a = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.000, 0.001, "m1");
  const RwReading b = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.000, 0.001, "m1");

  a.u = 0.03;
  g_assert_cmpfloat_with_epsilon (rw_compare_u (&a, meter, &b, meter, TRUE),
                                  sqrt (0.03 * 0.03 + pow (0.002 / root_3, 2) + pow (0.025 / root_3, 2)), 1e-12);
}

/* 25 mV are 15 u of one meter and 1.2 u of two. */
static void
test_the_same_meter_sees_more (void)
{
  static const char then[] = "on; fitted; p5 board 5.021", now[] = "on; fitted; p5 board 4.996";
  static const char other[] = "on; fitted; m2; p5 board 4.996";
  g_autoptr (RwCompare) same = compare (then, now, RW_COMPARE_METERS_BY_NAME);
  g_autoptr (RwCompare) two = compare (then, other, RW_COMPARE_METERS_BY_NAME);
  g_autoptr (RwCompare) said = compare (then, other, RW_COMPARE_METERS_SAME);
  g_autoptr (RwCompare) denied = compare (then, now, RW_COMPARE_METERS_OTHER);

  g_assert_cmpint (find (same, RW_COMPARE_READING, "p5", RW_PLACE_BOARD)->result, ==, RW_COMPARE_CHANGED);
  g_assert_cmpint (find (two, RW_COMPARE_READING, "p5", RW_PLACE_BOARD)->result, ==, RW_COMPARE_NOT);
  g_assert_cmpint (find (said, RW_COMPARE_READING, "p5", RW_PLACE_BOARD)->result, ==, RW_COMPARE_CHANGED);
  g_assert_cmpint (find (denied, RW_COMPARE_READING, "p5", RW_PLACE_BOARD)->result, ==, RW_COMPARE_NOT);
}

/* p = 2 Φ(−0.060/0.02035) = 0.0032: a change among 10 pairs, none among 20. */
static void
test_more_pairs_ask_for_more (void)
{
  GString *then = g_string_new ("on; fitted; p5 board 5.030");
  GString *now = g_string_new ("on; fitted; m2; p5 board 4.970");

  for (guint i = 0; i < 19; i++)
    {
      g_autofree char *more = g_strdup_printf ("; x%u board 1.000", i);

      if (i == 9)
        {
          g_autoptr (RwCompare) few = compare (then->str, now->str, RW_COMPARE_METERS_BY_NAME);

          g_assert_cmpuint (rw_compare_get_n_tests (few), ==, 10);
          g_assert_cmpfloat_with_epsilon (rw_compare_get_item (few, 0)->p, 0.00326, 0.0002);
          g_assert_cmpfloat_with_epsilon (rw_compare_get_item (few, 0)->p_adjusted,
                                          10 * rw_compare_get_item (few, 0)->p, 1e-12);
          g_assert_cmpint (rw_compare_get_item (few, 0)->result, ==, RW_COMPARE_CHANGED);
        }
      g_string_append (then, more);
      g_string_append (now, more);
    }

  g_autoptr (RwCompare) many = compare (then->str, now->str, RW_COMPARE_METERS_BY_NAME);

  g_assert_cmpuint (rw_compare_get_n_tests (many), ==, 20);
  g_assert_cmpuint (rw_compare_get_n_results (many, RW_COMPARE_CHANGED), ==, 0);
  g_string_free (then, TRUE);
  g_string_free (now, TRUE);
}

static void
test_the_surest_stands_first (void)
{
  g_autoptr (RwCompare) it = compare ("on; fitted; p5 board 5.030; p12 board 12.00; m5 board -5.000",
                                      "on; fitted; p5 board 5.010; p12 board 11.20; m5 board -5.001",
                                      RW_COMPARE_METERS_BY_NAME);

  g_assert_cmpuint (rw_compare_get_n_items (it), ==, 3);
  g_assert_cmpstr (rw_compare_get_item (it, 0)->rail, ==, "p12");
  g_assert_cmpstr (rw_compare_get_item (it, 1)->rail, ==, "p5");
  g_assert_cmpstr (rw_compare_get_item (it, 2)->rail, ==, "m5");
  g_assert_cmpuint (rw_compare_get_n_results (it, RW_COMPARE_CHANGED), ==, 2);
  g_assert_cmpint (rw_compare_get_item (it, 2)->result, ==, RW_COMPARE_NOT);
}

static void
test_what_was_read_before_a_turn_is_left (void)
{
  g_autoptr (RwCompare) it = compare ("on; fitted; p5 board 4.800; p12 board 11.50; turn; p5 board 5.050",
                                      "on; fitted; p5 board 5.051; p12 board 12.10", RW_COMPARE_METERS_BY_NAME);

  g_assert_cmpuint (rw_compare_get_n_items (it), ==, 1);
  g_assert_cmpfloat (rw_compare_get_item (it, 0)->then.value, ==, 5.05);
  g_assert_cmpuint (rw_compare_get_n_left (it), ==, 1);
  g_assert_cmpstr (rw_compare_get_left (it, 0)->rail, ==, "p12");
  g_assert_true (rw_compare_get_left (it, 0)->outdated);
}

static void
test_setups_are_compared_apart (void)
{
  static const char both[] = "on; out; p5 terminals 5.200; off; fitted; on; p5 terminals 5.050; p5 board 5.000";
  g_autoptr (RwCompare) it = compare (both, both, RW_COMPARE_METERS_BY_NAME);
  g_autoptr (RwCompare) crossed = compare ("on; out; p5 terminals 5.200", "on; fitted; p5 terminals 5.050",
                                           RW_COMPARE_METERS_BY_NAME);
  g_autoptr (RwCompare) unsaid = compare ("p5 terminals 5.200", "on; fitted; p5 terminals 5.050",
                                          RW_COMPARE_METERS_BY_NAME);

  g_assert_cmpuint (rw_compare_get_n_items (it), ==, 3);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat (rw_compare_get_item (it, i)->difference, ==, 0);
  g_assert_cmpuint (rw_compare_get_n_items (crossed), ==, 0);
  g_assert_cmpuint (rw_compare_get_n_left (crossed), ==, 2);
  g_assert_cmpuint (rw_compare_get_n_items (unsaid), ==, 1);
  g_assert_true (rw_compare_get_item (unsaid, 0)->setup_unsure);
}

/* Plugged in anew, the contact may be another one; with the board out nothing is. */
static void
test_plugging_outdates_what_is_fitted (void)
{
  g_autoptr (RwCompare) it = compare ("on; fitted; p5 board 5.000; off; out; on; p5 terminals 5.100; off; fitted; on",
                                      "on; fitted; p5 board 5.000; off; out; on; p5 terminals 5.100",
                                      RW_COMPARE_METERS_BY_NAME);

  g_assert_cmpuint (rw_compare_get_n_items (it), ==, 1);
  g_assert_cmpint (rw_compare_get_item (it, 0)->place, ==, RW_PLACE_TERMINALS);
}

static void
test_what_cannot_be_told (void)
{
  g_autoptr (RwCompare) overload = compare ("on; fitted; p5 board OL", "on; fitted; p5 board 5.000",
                                            RW_COMPARE_METERS_BY_NAME);
  g_autoptr (RwCompare) nobody = compare ("on; fitted; nobody; p5 board 5.000", "on; fitted; p5 board 5.300",
                                          RW_COMPARE_METERS_BY_NAME);
  /* ±2 counts of 0.1 V against limits 0.3 V apart. */
  g_autoptr (RwCompare) coarse = compare ("on; fitted; step 0.1; p5 board 5.0", "on; fitted; step 0.1; p5 board 5.1",
                                          RW_COMPARE_METERS_BY_NAME);
  const RwCompare *all[] = { overload, nobody, coarse };
  const RwCompareWhy whys[] = { RW_COMPARE_WHY_OVERLOAD, RW_COMPARE_WHY_METER, RW_COMPARE_WHY_COARSE };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      g_assert_cmpuint (rw_compare_get_n_items (all[i]), ==, 1);
      g_assert_cmpint (rw_compare_get_item (all[i], 0)->result, ==, RW_COMPARE_UNTOLD);
      g_assert_cmpint (rw_compare_get_item (all[i], 0)->why, ==, whys[i]);
    }
}

/* −5 V follows with 0.8 V a volt then, 0.4 now; a repair at the end of the first visit hides nothing. */
static void
test_the_trims_lines_are_compared (void)
{
  static const char then[] = "on; fitted; p5 board 4.800; p12 board 11.520; m5 board -4.840; turn;"
                             "p5 board 5.000; p12 board 12.000; m5 board -5.000; turn;"
                             "p5 board 5.200; p12 board 12.480; m5 board -5.160; fixed";
  static const char now[] = "on; fitted; p5 board 4.800; p12 board 11.520; m5 board -4.920; turn;"
                            "p5 board 5.000; p12 board 12.000; m5 board -5.000; turn;"
                            "p5 board 5.200; p12 board 12.480; m5 board -5.080";
  g_autoptr (RwCompare) it = compare (then, now, RW_COMPARE_METERS_BY_NAME);
  const RwCompareItem *m5 = find (it, RW_COMPARE_SLOPE, "m5", RW_PLACE_BOARD);
  const RwCompareItem *level = find (it, RW_COMPARE_LEVEL, "m5", RW_PLACE_BOARD);
  const RwCompareItem *p12 = find (it, RW_COMPARE_SLOPE, "p12", RW_PLACE_BOARD);

  g_assert_nonnull (m5);
  g_assert_cmpfloat_with_epsilon (m5->then.value, -0.8, 0.01);
  g_assert_cmpfloat_with_epsilon (m5->now.value, -0.4, 0.01);
  g_assert_cmpfloat_with_epsilon (m5->u, hypot (m5->then.u, m5->now.u), 1e-12);
  g_assert_cmpint (m5->result, ==, RW_COMPARE_CHANGED);
  g_assert_true (m5->then.before_repair);
  g_assert_false (m5->now.before_repair);
  g_assert_cmpfloat (level->x, ==, 5);
  g_assert_cmpfloat_with_epsilon (level->difference, 0, 0.002);
  g_assert_cmpint (level->result, ==, RW_COMPARE_NOT);
  g_assert_cmpint (p12->result, ==, RW_COMPARE_NOT);
  g_assert_null (find (it, RW_COMPARE_SLOPE, "p5", RW_PLACE_BOARD));
  g_assert_nonnull (rw_compare_get_trim_set (it, FALSE));
}

static void
test_symptoms_then_and_now (void)
{
  g_autoptr (RwCompare) it = compare ("seen; p5 board 5.0", "p5 board 5.0", RW_COMPARE_METERS_BY_NAME);

  g_assert_cmpuint (rw_compare_get_n_symptoms (it), ==, 1);
  g_assert_cmpstr (rw_compare_get_symptom (it, 0)->id, ==, "resets");
  g_assert_true (rw_compare_get_symptom (it, 0)->then_said);
  g_assert_false (rw_compare_get_symptom (it, 0)->now_said);

  g_autoptr (RwCompare) other = compare ("p5 board 5.0", "seen; p5 board 5.0", RW_COMPARE_METERS_BY_NAME);

  g_assert_false (rw_compare_get_symptom (other, 0)->then_said);
  g_assert_true (rw_compare_get_symptom (other, 0)->now_said);
  g_assert_cmpint (rw_compare_get_symptom (other, 0)->now, ==, RW_SYMPTOM_PRESENT);
}

static RwSession *
session_of (const char *name,
            const char *started,
            double      hi)
{
  g_autofree char *limits = g_strdup_printf ("\"limits\":[4.9,%.1f]", hi);
  g_auto (GStrv) parts = g_strsplit (FIXTURE_HEADER, "\"limits\":[4.9,5.2]", -1);
  g_autofree char *line = g_strjoinv (limits, parts);
  g_autoptr (GDateTime) at = g_date_time_new_from_iso8601 (started, NULL);
  RwSessionHeader *header = rw_session_header_from_line (line, strlen (line), NULL);

  g_free (header->cabinet_name);
  header->cabinet_name = g_strdup (name);
  g_date_time_unref (header->started);
  header->started = g_date_time_ref (at);
  return rw_session_new (header);
}

static void
test_other_cabinets_and_limits_are_said (void)
{
  g_autoptr (RwSession) late = session_of ("Kelp Gardens", "2027-03-14T09:30:00Z", 5.3);
  g_autoptr (RwSession) early = session_of ("Tidepool Racer", "2026-03-14T09:30:00Z", 5.2);
  g_autoptr (RwCompare) it = rw_compare_new (late, early, RW_COMPARE_METERS_BY_NAME);
  g_autofree char *dates = rw_compare_words_dates (it);

  g_assert_true (rw_compare_get_then (it) == early);
  g_assert_cmpstr (dates, ==, "2026-03-14 and 2027-03-14");
  g_assert_cmpuint (rw_compare_get_n_limits (it), ==, 1);
  g_assert_cmpfloat (rw_compare_get_limit (it, 0)->then_hi, ==, 5.2);
  g_assert_cmpfloat (rw_compare_get_limit (it, 0)->now_hi, ==, 5.3);
  g_assert_cmpuint (rw_compare_get_n_remarks (it), ==, 2); /* the fixture's id is the same, too */
  g_assert_nonnull (strstr (rw_compare_get_remark (it, 1), "Kelp Gardens"));
}

/* --- by chance ---------------------------------------------------------------------------------- */

/* A meter of ±(0.5 % + 2): what it shows. */
static double
show (double volts,
      double scale,
      double step,
      GRand *random)
{
  const double off = volts * scale + 1.5 * step * g_rand_double_range (random, -1, 1);

  return round (off / step) * step; /* rounding takes the other half count */
}

/* A visit: bare, then loaded, then the trim tried and turned back. @up: volts more on −5 V than it should have. */
static RwSession *
visit (double scale,
       double up,
       GRand *random)
{
  static const double bare[] = { 5.10, 12.2, -5.1 }, turns[] = { 5.02, 5.12, 4.95 };
  static const char *const rails[] = { "p5", "p12", "m5" };
  static const double slopes[] = { 1, 2.3, -0.9 }, offsets[] = { 0, 0.5, -0.5 }, steps[] = { 0.001, 0.01, 0.001 };
  static const char *const places[] = { "board", "terminals" };
  GString *script = g_string_new ("on; out");

  for (guint i = 0; i < 3; i++)
    g_string_append_printf (script, "; step %g; %s terminals %.3f", steps[i], rails[i],
                            show (bare[i], scale, steps[i], random));
  g_string_append (script, "; off; fitted; on");
  for (guint k = 0; k < 4; k++)
    {
      for (guint at = 0; at < 2; at++)
        for (guint i = 0; i < 3; i++)
          {
            const double true_volts = offsets[i] + slopes[i] * turns[k % 3] * (at == 1 ? 1.01 : 1) + (i == 2 ? up : 0);

            g_string_append_printf (script, "; step %g; %s %s %.3f", steps[i], rails[i], places[at],
                                    show (true_volts, scale, steps[i], random));
          }
      g_string_append (script, k < 3 ? "; turn" : "");
    }
  g_string_append_printf (script, "; step 0.001; p5 wire %.3f; gnd wire %.3f", show (0.04, scale, 0.001, random),
                          show (0.02, scale, 0.001, random));

  RwSession *session = bench_play (script->str, NULL);

  g_string_free (script, TRUE);
  return session;
}

/* Of @n pairs of visits, those that call any change. @found: of −5 V at the board, as the first of all. */
static guint
count_alarms (guint           n,
              RwCompareMeters meters,
              double          up,
              guint          *found,
              GRand          *random)
{
  guint alarms = 0;

  for (guint i = 0; i < n; i++)
    {
      const double scale = 1 + 0.005 * g_rand_double_range (random, -1, 1);
      const double other = meters == RW_COMPARE_METERS_SAME ? scale : 1 + 0.005 * g_rand_double_range (random, -1, 1);
      g_autoptr (RwSession) a = visit (scale, 0, random);
      g_autoptr (RwSession) b = visit (other, up, random);
      g_autoptr (RwCompare) it = rw_compare_new (a, b, meters);

      g_assert_cmpuint (rw_compare_get_n_items (it), ==, 6 + 2 + 8); /* the turns outdate what was bare */
      alarms += rw_compare_get_n_results (it, RW_COMPARE_CHANGED) > 0;
      if (found != NULL)
        *found += find (it, RW_COMPARE_READING, "m5", RW_PLACE_BOARD)->result == RW_COMPARE_CHANGED;
    }
  return alarms;
}

static void
test_false_alarms_are_few (void)
{
  static const guint n = 1000;
  g_autoptr (GRand) random = g_rand_new_with_seed (1979);
  guint same, other;

  same = count_alarms (n, RW_COMPARE_METERS_SAME, 0, NULL, random);
  other = count_alarms (n, RW_COMPARE_METERS_OTHER, 0, NULL, random);
  g_test_message ("any change called: %u of %u with one meter, %u with two", same, n, other);
  g_assert_cmpfloat (same, <=, RW_COMPARE_ALPHA * n);
  g_assert_cmpfloat (other, <=, RW_COMPARE_ALPHA * n);
}

/* 0.15 V weaker: 6 u with two meters. */
static void
test_real_changes_are_found (void)
{
  static const guint n = 60;
  g_autoptr (GRand) random = g_rand_new_with_seed (1893);
  guint same = 0, other = 0;

  count_alarms (n, RW_COMPARE_METERS_SAME, 0.02, &same, random);
  count_alarms (n, RW_COMPARE_METERS_OTHER, 0.15, &other, random);
  g_test_message ("found: %u of %u with one meter (20 mV), %u with two (150 mV)", same, n, other);
  g_assert_cmpuint (same, >=, n * 95 / 100);
  g_assert_cmpuint (other, >=, n * 95 / 100);
}

static double
draw_normal (GRand *random)
{
  return sqrt (-2 * log (1 - g_rand_double (random))) * cos (2 * G_PI * g_rand_double (random));
}

/* Errors as normal as the test takes them for: then 5 % is what must come out, neither more nor far less. */
static void
test_normal_errors_give_the_stated_rate (void)
{
  static const guint n = 2000, rails = 20;
  g_autoptr (GRand) random = g_rand_new_with_seed (2026);
  guint alarms = 0;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (RwSession) a = fixture_session ();
      g_autoptr (RwSession) b = fixture_session ();

      for (guint k = 0; k < 2 * rails; k++)
        {
          g_autofree char *id = g_strdup_printf ("r%u", k / 2);
          RwReading reading = rw_reading_make (g_intern_string (id), RW_PLACE_BOARD, RW_KIND_DC,
                                               5 + 0.01 * draw_normal (random), 0.001, "m1");
          RwEvent event;

          reading.u = 0.01;
          event = rw_event_make_reading (k, &reading);
          rw_session_add (k % 2 == 0 ? a : b, &event);
        }

      g_autoptr (RwCompare) it = rw_compare_new (a, b, RW_COMPARE_METERS_BY_NAME);

      g_assert_cmpuint (rw_compare_get_n_tests (it), ==, rails);
      alarms += rw_compare_get_n_results (it, RW_COMPARE_CHANGED) > 0;
    }
  g_test_message ("any change called: %u of %u", alarms, n);
  /* 5 %, three standard deviations of a count of 2000 either way. */
  g_assert_cmpfloat_with_epsilon (alarms / (double) n, 0.05, 0.015);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/compare/Holm's correction as published", test_holm_as_published);
  g_test_add_func ("/compare/per cent cancels in one meter only", test_per_cent_cancels_in_one_meter);
  g_test_add_func ("/compare/a reading's own u stays whole", test_a_written_u_stays_whole);
  g_test_add_func ("/compare/the same meter sees smaller changes", test_the_same_meter_sees_more);
  g_test_add_func ("/compare/more pairs ask for more", test_more_pairs_ask_for_more);
  g_test_add_func ("/compare/the surest change stands first", test_the_surest_stands_first);
  g_test_add_func ("/compare/what was read before a turn is left", test_what_was_read_before_a_turn_is_left);
  g_test_add_func ("/compare/setups are compared apart", test_setups_are_compared_apart);
  g_test_add_func ("/compare/plugging outdates what was read fitted", test_plugging_outdates_what_is_fitted);
  g_test_add_func ("/compare/what cannot be told is said", test_what_cannot_be_told);
  g_test_add_func ("/compare/the trim's lines are compared", test_the_trims_lines_are_compared);
  g_test_add_func ("/compare/symptoms then and now", test_symptoms_then_and_now);
  g_test_add_func ("/compare/other cabinets and limits are said", test_other_cabinets_and_limits_are_said);
  g_test_add_func ("/compare/false alarms are few", test_false_alarms_are_few);
  g_test_add_func ("/compare/real changes are found", test_real_changes_are_found);
  g_test_add_func ("/compare/normal errors give the stated rate", test_normal_errors_give_the_stated_rate);
  return g_test_run ();
}
