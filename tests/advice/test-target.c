/* test-target.c: what a watched rail is led to, and that nobody is led where the screw must not go.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "rw-target.h"

/* --- a job on the shipped profile: +5 V 4.90…5.20, +12 V 10.8…13.2, −5 V −5.50…−4.50 ------------------ */

static RwSession *
new_session (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", "classic-5-12-m5.json", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) profile = rw_profile_load (path, &error);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);

  g_assert_no_error (error);
  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "bench", 0.2, 1));
  return rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, started));
}

static void
set_up (RwSession *session,
        RwSaid     board)
{
  RwEvent event = rw_event_make_setup (rw_session_get_end (session) + 1, (RwSetup){ RW_SAID_YES, board, RW_SAID_YES });

  rw_session_add (session, &event);
}

static void
read_at (RwSession  *session,
         RwPlace     place,
         const char *rail,
         double      value)
{
  const RwReading reading = rw_reading_make (rail, place, RW_KIND_DC, value, 0.001, "m1");
  RwEvent event = rw_event_make_reading (rw_session_get_end (session) + 1, &reading);

  rw_session_add (session, &event);
}

static void
turn (RwSession *session)
{
  RwEvent event = rw_event_make_trim (rw_session_get_end (session) + 1);

  rw_session_add (session, &event);
}

/* +12 V = 2.4·x + 0.1, −5 V = −0.9·x − 0.2. */
static void
read_all (RwSession *session,
          RwPlace    place,
          double     x)
{
  read_at (session, place, "p5", x);
  read_at (session, place, "p12", 2.4 * x + 0.1);
  read_at (session, place, "m5", -0.9 * x - 0.2);
}

/* The trim's lines known at the board, @drop between there and the terminals, the screw at @x. */
static RwSession *
session_with_trim (double x,
                   double drop,
                   RwSaid board)
{
  RwSession *session = new_session ();

  set_up (session, board);
  for (int i = 1; i >= 0; i--)
    {
      read_at (session, RW_PLACE_TERMINALS, "p5", x + 0.08 * i + drop);
      read_all (session, RW_PLACE_BOARD, x + 0.08 * i);
      if (i > 0)
        turn (session);
    }
  return session;
}

static RwTarget
aim_of (RwSession *session,
        RwReading  sample)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwMeterFacts *meter = rw_session_find_meter (session, "m1");
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, sample.place);
  const int from = rw_profile_index_of (rw_bench_state_get_profile (state), sample.rail);
  RwTrimLive live;
  RwTarget target;

  if (set != NULL && from >= 0)
    rw_trim_live_init (&live, set, (guint) from, sample.value, rw_meter_facts_u_own (meter, &sample));
  else
    set = NULL;
  rw_target_init (&target, state, &sample, meter, set, set != NULL ? &live : NULL);
  if (set != NULL)
    rw_trim_live_clear (&live);
  return target;
}

static RwReading
shows (const char *rail,
       double      value)
{
  return rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");
}

/* --- without the trim ----------------------------------------------------------------------------- */

static void
test_middle_of_limits (void)
{
  g_autoptr (RwSession) session = new_session ();
  const RwTarget high = aim_of (session, shows ("p5", 5.15)), low = aim_of (session, shows ("p5", 4.70));

  g_assert_cmpint (high.from, ==, RW_TARGET_LIMITS);
  g_assert_cmpfloat_with_epsilon (high.aim, 5.05, 1e-9);
  g_assert_cmpfloat_with_epsilon (high.half, 0.15, 1e-9);
  g_assert_cmpfloat_with_epsilon (high.distance, 0.10, 1e-9);
  g_assert_true (high.inside);
  g_assert_cmpfloat_with_epsilon (high.past, -0.05, 1e-9);
  g_assert_false (high.weak);
  g_assert_cmpfloat_with_epsilon (low.distance, -0.35, 1e-9);
  g_assert_false (low.inside);
  g_assert_cmpint (low.verdict, ==, RW_VERDICT_OUTSIDE);
  g_assert_cmpfloat_with_epsilon (low.past, 0.20, 1e-9);
  g_assert_cmpfloat (low.limit, ==, 4.90);
  g_assert_true (low.weak);
  g_assert_true (isnan (low.window_lo));
}

static void
test_negative_rail_by_magnitude (void)
{
  g_autoptr (RwSession) session = new_session ();
  const RwTarget weak = aim_of (session, shows ("m5", -4.40)), strong = aim_of (session, shows ("m5", -5.60));

  g_assert_cmpfloat_with_epsilon (weak.distance, -0.60, 1e-9);
  g_assert_true (weak.weak);
  g_assert_cmpfloat_with_epsilon (weak.past, 0.10, 1e-9);
  g_assert_cmpfloat_with_epsilon (strong.distance, 0.60, 1e-9);
  g_assert_false (strong.weak);
}

/* As near to the limit as the meter's error: nobody is told that it is good. */
static void
test_fence_is_not_inside (void)
{
  g_autoptr (RwSession) session = new_session ();

  g_assert_false (aim_of (session, shows ("p5", 4.901)).inside);
  g_assert_cmpint (aim_of (session, shows ("p5", 4.901)).verdict, ==, RW_VERDICT_CLOSE);
}

static void
test_open_limits_have_no_middle (void)
{
  g_autoptr (RwSession) session = new_session ();
  RwReading ripple = shows ("p5", 0.031);

  ripple.kind = RW_KIND_RIPPLE;

  const RwTarget target = aim_of (session, ripple);

  g_assert_cmpint (target.from, ==, RW_TARGET_NONE);
  g_assert_cmpint (target.verdict, ==, RW_VERDICT_INSIDE);
  g_assert_cmpfloat (target.limit, ==, 0.05);
  g_assert_true (isnan (target.distance) && isnan (target.half));
}

static void
test_stranger_has_no_target (void)
{
  g_autoptr (RwSession) session = new_session ();
  const RwTarget target = aim_of (session, shows ("?", 8.1));

  g_assert_cmpint (target.from, ==, RW_TARGET_NONE);
  g_assert_null (target.rail);
  g_assert_true (isnan (target.lo) && isnan (target.distance));
  g_assert_cmpint (target.verdict, ==, RW_VERDICT_NONE);
}

static void
test_what_is_wrong_is_told (void)
{
  g_autoptr (RwSession) session = new_session ();
  RwReading over = shows ("p5", NAN), wire = shows ("p5", 0.02);

  over.over = TRUE;
  wire.place = RW_PLACE_WIRE;
  g_assert_false (aim_of (session, shows ("p5", 0.03)).touched);
  g_assert_false (aim_of (session, shows ("m5", 0.0)).touched);
  g_assert_true (aim_of (session, shows ("p5", 3.0)).touched);
  g_assert_true (aim_of (session, wire).touched);
  g_assert_true (aim_of (session, shows ("p5", -5.02)).reversed);
  g_assert_true (aim_of (session, shows ("m5", 5.02)).reversed);
  g_assert_false (aim_of (session, shows ("m5", -5.02)).reversed);
  g_assert_true (aim_of (session, shows ("p5", 5.51)).danger);
  g_assert_true (aim_of (session, shows ("m5", -7.01)).danger);
  g_assert_false (aim_of (session, shows ("p5", 5.49)).danger);
  g_assert_false (aim_of (session, over).danger);
  g_assert_true (isnan (aim_of (session, over).distance) && isnan (aim_of (session, over).value));
}

/* --- with the trim -------------------------------------------------------------------------------- */

static double
best_of (RwSession *session)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  return rw_bench_state_find_trim_set (state, RW_PLACE_BOARD)->window.best;
}

/* Whichever rail is watched, it is led to where the same turn of the screw takes it. */
static void
test_set_point_on_every_rail (void)
{
  g_autoptr (RwSession) session = session_with_trim (5.19, 0.02, RW_SAID_YES);
  const double best = best_of (session), x = 5.19;
  const RwTarget p5 = aim_of (session, shows ("p5", x)), p12 = aim_of (session, shows ("p12", 2.4 * x + 0.1)),
                 m5 = aim_of (session, shows ("m5", -0.9 * x - 0.2));

  g_assert_cmpint (p5.from, ==, RW_TARGET_TRIM);
  g_assert_cmpint (p12.from, ==, RW_TARGET_TRIM);
  g_assert_cmpint (m5.from, ==, RW_TARGET_TRIM);
  g_assert_cmpfloat_with_epsilon (p5.aim, best, 1e-6);
  g_assert_cmpfloat_with_epsilon (p12.aim, 2.4 * best + 0.1, 0.02);
  g_assert_cmpfloat_with_epsilon (m5.aim, -0.9 * best - 0.2, 0.02);
  g_assert_false (p5.inside || p12.inside || m5.inside);
  g_assert_cmpfloat (p5.distance, >, 0.02);
  g_assert_cmpfloat (p12.distance, >, 0.02);
  g_assert_cmpfloat (m5.distance, >, 0.02);
  g_assert_cmpfloat (m5.window_lo, <, m5.window_hi);
  g_assert_true (m5.aim > m5.window_lo && m5.aim < m5.window_hi);
  g_assert_cmpfloat_with_epsilon (p5.half, (p5.window_hi - p5.window_lo) / 2, 1e-9);
}

static void
test_steady_at_set_point (void)
{
  g_autoptr (RwSession) session = session_with_trim (5.19, 0.02, RW_SAID_YES);
  const RwTarget there = aim_of (session, shows ("p5", best_of (session)));

  g_assert_cmpint (there.from, ==, RW_TARGET_TRIM);
  g_assert_true (there.inside);
  g_assert_cmpfloat_with_epsilon (there.distance, 0, 1e-9);
}

/* A drop that is a matter of wiring, and a board that is out: nobody is led by the screw. */
static void
test_screw_is_not_led_past_a_fault (void)
{
  g_autoptr (RwSession) wiring = session_with_trim (4.75, 0.45, RW_SAID_YES);
  g_autoptr (RwSession) bare = session_with_trim (4.95, 0.02, RW_SAID_NO);
  g_autoptr (RwSession) sound = session_with_trim (4.91, 0.02, RW_SAID_YES);

  g_assert_cmpint (aim_of (sound, shows ("p5", 4.91)).from, ==, RW_TARGET_TRIM);
  g_assert_cmpint (aim_of (wiring, shows ("p5", 4.75)).from, ==, RW_TARGET_LIMITS);
  g_assert_cmpint (aim_of (bare, shows ("p5", 4.95)).from, !=, RW_TARGET_TRIM);
}

static void
test_danger_ends_the_leading (void)
{
  g_autoptr (RwSession) session = session_with_trim (5.19, 0.02, RW_SAID_YES);
  const RwTarget target = aim_of (session, shows ("p5", 5.6));

  g_assert_true (target.danger);
  g_assert_cmpint (target.from, ==, RW_TARGET_LIMITS);
  g_assert_false (target.inside);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/target/without a trim the middle of the limits", test_middle_of_limits);
  g_test_add_func ("/target/a negative rail by magnitude", test_negative_rail_by_magnitude);
  g_test_add_func ("/target/on the fence is not inside", test_fence_is_not_inside);
  g_test_add_func ("/target/open limits have no middle", test_open_limits_have_no_middle);
  g_test_add_func ("/target/a stranger has none", test_stranger_has_no_target);
  g_test_add_func ("/target/air, wrong sign, overload, danger", test_what_is_wrong_is_told);
  g_test_add_func ("/target/the set point on whichever rail", test_set_point_on_every_rail);
  g_test_add_func ("/target/at the set point all is well", test_steady_at_set_point);
  g_test_add_func ("/target/a fault is not trimmed away", test_screw_is_not_led_past_a_fault);
  g_test_add_func ("/target/danger ends the leading", test_danger_ends_the_leading);
  return g_test_run ();
}
