/* test-call-score.c: points of calls: worked by hand, against numeric integration, and proper.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "bench-play.h"
#include "fixtures.h"
#include "rw-call-score.h"

/* ∫ (F(y) − [y ≥ x])² dy by midpoints, F from the C library's erfc. */
static double
integrate (double value,
           double sd,
           double x,
           double a,
           double b)
{
  const guint n = 400000;
  const double dy = (b - a) / n;
  double sum = 0;

  for (guint i = 0; i < n; i++)
    {
      const double y = a + (i + 0.5) * dy;
      const double f = sd > 0 ? erfc (-(y - value) / sd / sqrt (2)) / 2 : y >= value;

      sum += (f - (y >= x)) * (f - (y >= x)) * dy;
    }
  return sum;
}

/* φ(0) = 0.3989422804, 1/√π = 0.5641895835; Φ(1) = 0.8413447461, φ(1) = 0.2419707245. */
static void
test_crps_worked_by_hand (void)
{
  g_assert_cmpfloat_with_epsilon (rw_call_crps (0, 1, 0), 0.2336949772, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_crps (0, 1, 1), 0.6024413576, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_crps (0, 1, -1), 0.6024413576, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_crps (11.9, 0.1, 12.0), 0.06024413576, 1e-10);
  g_assert_cmpfloat_with_epsilon (rw_call_crps (11.9, 0, 12.0), 0.1, 1e-12); /* a step: how far off */
  g_assert_cmpfloat_with_epsilon (rw_call_sd (0.1), 0.0607956, 1e-7);
  g_assert_cmpfloat (rw_call_sd (NAN), ==, 0);
  g_assert_true (isnan (rw_call_crps (NAN, 0.1, 1)));
}

static void
test_crps_is_the_integral (void)
{
  static const double rows[][3] = { { 5, 0.1, 5.02 }, { -5, 0.4, -4.2 }, { 12, 0.01, 12.03 }, { 0, 2, -3 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double value = rows[i][0], sd = rows[i][1], x = rows[i][2];
      const double reach = 10 * sd + fabs (x - value);

      g_assert_cmpfloat_with_epsilon (rw_call_crps (value, sd, x),
                                      integrate (value, sd, x, value - reach, value + reach), 1e-5 * reach);
    }
}

/* The stretch of 11.4 … 12.6 V is 10.2 … 13.8 V, 3.6 V long. */
static void
test_points_worked_by_hand (void)
{
  g_assert_cmpfloat_with_epsilon (rw_call_points (12, 0, 12, 11.4, 12.6), 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_points (11.9, 0, 12, 11.4, 12.6), 100 - 10 / 3.6, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_points (11.9, 0.1, 12, 11.4, 12.6), 100 - 6.024413576 / 3.6, 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_call_points (10.2, 0, 13.8, 11.4, 12.6), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_points (0, 0, 20, 11.4, 12.6), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_points (3, 0, 0.1, 11.4, 12.6), 100, 1e-9); /* far too low is one answer */
  g_assert_true (isnan (rw_call_points (12, 0, NAN, 11.4, 12.6)));
  g_assert_true (isnan (rw_call_points (12, 0, 12, 12.6, 11.4)));
  g_assert_true (isnan (rw_call_points (12, 0, 12, 0, INFINITY)));
}

static void
test_points_are_the_integral_over_the_stretch (void)
{
  static const double rows[][3] = { { 5, 0.1, 5.02 }, { 4.6, 0.5, 5.4 }, { 5.45, 0.2, 4.2 }, { 4.0, 0.9, 6 }, { 5.1, 0, 4.95 } };
  const double lo = 4.9, hi = 5.2, a = 4.6, b = 5.5;

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double x = CLAMP (rows[i][2], a, b);
      const double lost = integrate (rows[i][0], rows[i][1], x, a, b) / (b - a);

      g_assert_cmpfloat_with_epsilon (rw_call_points (rows[i][0], rows[i][1], rows[i][2], lo, hi), 100 * (1 - lost), 1e-3);
    }
}

/* Mean points of stating (value, sd) when the reading is normal about (mean, spread). */
static double
mean_points (double value,
             double sd,
             double mean,
             double spread)
{
  double sum = 0, weights = 0;

  for (double z = -6; z <= 6; z += 0.02)
    {
      const double weight = exp (-z * z / 2);

      sum += weight * rw_call_points (value, sd, mean + z * spread, 4.9, 5.2);
      weights += weight;
    }
  return sum / weights;
}

/* Nobody gains by saying anything but what they believe; also at the stretch's edge (4.6 … 5.5 V). */
static void
test_the_true_spread_is_best_on_average (void)
{
  static const double truths[][2] = { { 5.05, 0.02 }, { 5.05, 0.15 }, { 4.65, 0.1 }, { 5.4, 0.3 } };

  for (guint i = 0; i < G_N_ELEMENTS (truths); i++)
    {
      const double mean = truths[i][0], spread = truths[i][1];
      const double honest = mean_points (mean, spread, mean, spread);

      for (double factor = 0; factor <= 3; factor += 0.25)
        if (factor != 1)
          g_assert_cmpfloat (mean_points (mean, factor * spread, mean, spread), <, honest);
      for (double off = -2; off <= 2; off += 0.5)
        if (off != 0)
          g_assert_cmpfloat (mean_points (mean + off * spread, spread, mean, spread), <, honest);
    }
}

static void
test_close_and_sure_beats_close_and_unsure (void)
{
  const double sure = rw_call_points (5.02, 0.01, 5.03, 4.9, 5.2), unsure = rw_call_points (5.02, 0.2, 5.03, 4.9, 5.2);
  const double wrong = rw_call_points (5.3, 0.01, 5.03, 4.9, 5.2), modest = rw_call_points (5.3, 0.2, 5.03, 4.9, 5.2);

  g_assert_cmpfloat (sure, >, unsure);
  g_assert_cmpfloat (modest, >, wrong);
}

/* 3, 5 and 12 of 20: cumulative 0.15, 0.4. */
static void
test_hands_worked_by_hand (void)
{
  const guint hands[] = { 3, 5, 12 }, none[] = { 0, 0, 0 }, all[] = { 0, 7, 0 };

  g_assert_cmpfloat_with_epsilon (rw_call_hands_points (hands, RW_CALL_HIGHER), 90.875, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_hands_points (hands, RW_CALL_SAME), 80.875, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_hands_points (hands, RW_CALL_LOWER), 45.875, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_hands_points (all, RW_CALL_SAME), 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_call_hands_points (all, RW_CALL_LOWER), 50, 1e-9);
  g_assert_true (isnan (rw_call_hands_points (none, RW_CALL_SAME)));
}

/* Two readings of ±2 counts of 1 mV: 1.96 · √2 · 2 mV / √3 = 3.2 mV. */
static void
test_same_is_what_the_meter_cannot_tell (void)
{
  RwCallRound round = { .was = 11.93, .was_u = 0.002 / sqrt (3), .answer_u = 0.002 / sqrt (3) };
  RwCallSide side;

  round.answer = 11.933;
  g_assert_true (rw_call_round_get_side (&round, &side) && side == RW_CALL_SAME);
  round.answer = 11.934;
  g_assert_true (rw_call_round_get_side (&round, &side) && side == RW_CALL_HIGHER);
  round.answer = 11.926;
  g_assert_true (rw_call_round_get_side (&round, &side) && side == RW_CALL_LOWER);
  round.was = NAN;
  g_assert_false (rw_call_round_get_side (&round, &side));
}

static void
say (RwSession *session,
     RwCallSaid said)
{
  RwEvent event = rw_event_make_call (rw_session_get_end (session) + 1, &said);

  rw_session_add (session, &event);
  rw_call_said_clear (&said);
}

static void
reveal (RwSession *session)
{
  say (session, rw_call_said_reveal (rw_session_get_event (session, rw_session_get_n_events (session) - 1)->n));
}

/* Two rounds; the profile's +12 V is 11.4 … 12.6 V at the board. */
static void
test_the_lesson_is_added_up (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted; m1; p5 board 5.000; p12 board 11.800; turn; p5 board 5.100", NULL);

  say (session, rw_call_said_ask ("p12", RW_PLACE_BOARD, RW_KIND_DC, 11.8));
  say (session, rw_call_said_value ("a", 12.0, NAN));
  say (session, rw_call_said_value ("b", 11.8, NAN));
  say (session, rw_call_said_hands (0, 0, 10));
  bench_go_on (session, "p12 board 12.050");
  reveal (session);
  bench_go_on (session, "turn; p5 board 5.050");
  say (session, rw_call_said_ask ("p12", RW_PLACE_BOARD, RW_KIND_DC, NAN));
  say (session, rw_call_said_value ("A", 11.925, NAN));
  say (session, rw_call_said_hands (10, 0, 0)); /* not scored: nothing to be lower than */
  bench_go_on (session, "p12 board 11.925");
  reveal (session);

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);
  const RwRail *p12 = rw_profile_find_rail (rw_session_get_profile (session), "p12");
  g_autoptr (GPtrArray) standings = rw_call_standings (book, session);
  const double length = 3 * (p12->hi - p12->lo);
  guint seen = 0;

  for (guint i = 0; i < standings->len; i++)
    {
      const RwCallStanding *standing = standings->pdata[i];

      if (i > 0)
        g_assert_cmpfloat (((const RwCallStanding *) standings->pdata[i - 1])->points, >=, standing->points);
      if (standing->kind == RW_CALLER_HANDS)
        {
          g_assert_cmpuint (standing->n, ==, 1);
          g_assert_cmpfloat_with_epsilon (standing->points, 100, 1e-9);
        }
      else if (standing->kind == RW_CALLER_PROGRAM)
        {
          g_assert_cmpuint (standing->n, ==, 2);
          g_assert_cmpfloat (standing->points, >, 90);
        }
      else
        {
          const gboolean first = g_str_equal (standing->by, "a");

          g_assert_cmpuint (standing->n, ==, first ? 2 : 1);
          g_assert_cmpfloat_with_epsilon (standing->points, 100 - (first ? 0.05 / 2 : 0.25) / length * 100, 1e-6);
        }
      seen++;
    }
  g_assert_cmpuint (seen, ==, 4);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/call-score/crps-worked-by-hand", test_crps_worked_by_hand);
  g_test_add_func ("/call-score/crps-is-the-integral", test_crps_is_the_integral);
  g_test_add_func ("/call-score/points-worked-by-hand", test_points_worked_by_hand);
  g_test_add_func ("/call-score/points-are-the-integral-over-the-stretch", test_points_are_the_integral_over_the_stretch);
  g_test_add_func ("/call-score/the-true-spread-is-best-on-average", test_the_true_spread_is_best_on_average);
  g_test_add_func ("/call-score/close-and-sure-beats-close-and-unsure", test_close_and_sure_beats_close_and_unsure);
  g_test_add_func ("/call-score/hands-worked-by-hand", test_hands_worked_by_hand);
  g_test_add_func ("/call-score/same-is-what-the-meter-cannot-tell", test_same_is_what_the_meter_cannot_tell);
  g_test_add_func ("/call-score/the-lesson-is-added-up", test_the_lesson_is_added_up);
  return g_test_run ();
}
