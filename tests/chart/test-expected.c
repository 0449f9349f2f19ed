/* test-expected.c: when something is expected of a rail, and what.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "expected-fixture.h"

static void
test_nothing_before_the_data_allow_it (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  g_assert_cmpuint (
      scene_fixture_build (&fixture, EXPECTED_WIDTH, EXPECTED_HEIGHT)->expected->len, ==, 0);
  expected_read (session, 10, "p5", 4.93);
  g_assert_cmpuint (expected_look (&fixture, session)->expected->len, ==, 0);
  expected_read (session, 18, "p12", 4.93);
  expected_read (session, 26, "m5", 4.93);
  g_assert_cmpuint (expected_look (&fixture, session)->expected->len, ==, 0);
  expected_turn (session, 50);
  g_assert_cmpuint (expected_look (&fixture, session)->expected->len, ==, 0);
  expected_read (session, 60, "p5", 5.03);
  g_assert_cmpuint (expected_look (&fixture, session)->expected->len, ==, 2);
  scene_fixture_close (&fixture);
}

static void
test_runs_from_the_turn_to_the_reading (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read (session, 110, "p5", 5.08);
  fixture_event (session, rw_event_make_mark (130, "later"));

  const RwScene *scene = expected_look (&fixture, session);

  for (guint i = 0; i < 2; i++)
    {
      const RwExpectedStretch *now = expected_at (scene, i == 0 ? "p12" : "m5", 120);

      g_assert_cmpfloat (expected_knot (now, 0)->t, ==, 100);
      g_assert_cmpfloat (expected_last_knot (now)->t, ==, 130);
      g_assert_true (now->lasts);
    }
  g_assert_null (expected_at (scene, "p5", 115));
  expected_read (session, 140, "p12", 5.08);
  scene = expected_look (&fixture, session);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "p12", 120))->t, ==, 140);
  g_assert_false (expected_at (scene, "p12", 120)->lasts);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "m5", 120))->t, ==, 140);
  g_assert_true (expected_at (scene, "m5", 120)->lasts);
  /* and so it was in the position before */
  g_assert_cmpfloat (expected_knot (expected_at (scene, "m5", 55), 0)->t, ==, 50);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "m5", 55))->t, ==, 76);
  g_assert_false (expected_at (scene, "m5", 55)->lasts);
  scene_fixture_close (&fixture);
}

static void
test_holds_the_truth (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read (session, 110, "p5", 5.08);

  const RwScene *scene = expected_look (&fixture, session);
  const RwExpectedKnot *p12 = expected_last_knot (expected_at (scene, "p12", 105));
  const RwExpectedKnot *m5 = expected_last_knot (expected_at (scene, "m5", 105));

  g_assert_cmpfloat_with_epsilon (p12->value, expected_truth ("p12", 5.08), 0.02);
  g_assert_cmpfloat_with_epsilon (m5->value, expected_truth ("m5", 5.08), 0.02);
  g_assert_cmpfloat (p12->lo, <, expected_truth ("p12", 5.08));
  g_assert_cmpfloat (p12->hi, >, expected_truth ("p12", 5.08));
  /* no surer than a reading, whose common part is 0.5 % of the value over √3 */
  g_assert_cmpfloat (p12->u, >, 0.005 * 12 / sqrt (3));
  g_assert_cmpfloat (p12->hi - p12->value, >, 1.96 * 0.005 * 12 / sqrt (3));
  scene_fixture_close (&fixture);
}

/* The reference may be what nobody measured. */
static void
test_any_rail_tells_the_others (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read (session, 110, "m5", 5.08);

  const RwScene *scene = expected_look (&fixture, session);

  g_assert_cmpfloat_with_epsilon (expected_last_knot (expected_at (scene, "p5", 105))->value,
                                  5.08, 0.02);
  g_assert_cmpfloat_with_epsilon (expected_last_knot (expected_at (scene, "p12", 105))->value,
                                  expected_truth ("p12", 5.08), 0.04);
  g_assert_null (expected_at (scene, "m5", 105));
  scene_fixture_close (&fixture);
}

/* A reading that comes out otherwise does not change what had been expected. */
static void
test_the_past_is_not_made_right (void)
{
  double values[2];

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (RwSession) session = expected_turned ();
      SceneFixture fixture;

      scene_fixture_open (&fixture, session);
      expected_read (session, 110, "p5", 5.08);
      fixture_reading (session, 120, "p12", RW_PLACE_BOARD, i == 0 ? 12.04 : 12.60);
      expected_read (session, 130, "m5", 5.08);

      const RwScene *scene = expected_look (&fixture, session);

      values[i] = expected_knot (expected_at (scene, "p12", 105), 0)->value;
      scene_fixture_close (&fixture);
    }
  g_assert_cmpfloat (values[0], ==, values[1]);
  g_assert_cmpfloat_with_epsilon (values[0], expected_truth ("p12", 5.08), 0.02);
}

static double
ramp (double t)
{
  return 5.03 + 0.01 * (CLAMP (t, 115, 125) - 115);
}

static void
stream_ramp (RwSession *session,
             double     from,
             double     to)
{
  for (double t = from; t < to; t += 0.25)
    fixture_sample (session, t, "p5", RW_PLACE_BOARD, round (ramp (t) * 1000) / 1000);
}

static void
test_follows_a_stream (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  stream_ramp (session, 110, 130);
  fixture_event (session, rw_event_make_mark (150, "leads away"));

  const RwScene *scene = expected_look (&fixture, session);
  const RwExpectedStretch *p12 = expected_at (scene, "p12", 120);

  g_assert_null (expected_at (scene, "p12", 105)); /* turned, and nothing known yet */
  g_assert_null (expected_at (scene, "p12", 140));
  g_assert_null (expected_at (scene, "p5", 120));
  g_assert_null (expected_at (scene, "p5", 55)); /* a reading does not foretell itself */
  g_assert_cmpfloat_with_epsilon (expected_knot (p12, 0)->t, 110, 1);
  g_assert_cmpfloat_with_epsilon (expected_last_knot (p12)->t, 130, 1);
  for (guint i = 0; i < p12->knots->len; i++)
    {
      const double there = expected_truth ("p12", ramp (expected_knot (p12, i)->t));

      g_assert_cmpfloat (expected_knot (p12, i)->lo, <, there);
      g_assert_cmpfloat (expected_knot (p12, i)->hi, >, there);
      g_assert_cmpfloat_with_epsilon (expected_knot (p12, i)->value, there, 0.03);
    }
  scene_fixture_close (&fixture);
}

/* While the screw is turned and no turn is marked yet, a reading of before says nothing. */
static void
test_a_moving_stream_overrules_what_was_read (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read_all (session, 101, 5.03);
  for (guint i = 0; i < 64; i++) /* the last digit is never still */
    fixture_sample (session, 119 + 0.25 * i, "p5", RW_PLACE_BOARD,
                    round (ramp (114 + 0.25 * i) * 1000 + i % 2) / 1000);

  const RwScene *scene = expected_look (&fixture, session);
  const RwExpectedStretch *m5 = expected_at (scene, "m5", 130);

  g_assert_null (expected_at (scene, "m5", 119.5)); /* the stream says what was read */
  g_assert_cmpfloat (expected_knot (m5, 0)->t, >, 119.9);
  g_assert_cmpfloat_with_epsilon (expected_last_knot (m5)->value, expected_truth ("m5", 5.13),
                                  0.02);
  g_assert_true (m5->lasts);
  scene_fixture_close (&fixture);
}

/* Nor does it where it is the one reading that told the reference. */
static void
test_a_still_stream_says_nothing_new (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read_all (session, 101, 5.03);
  for (guint i = 0; i < 64; i++)
    fixture_sample (session, 119 + 0.25 * i, "m5", RW_PLACE_BOARD,
                    round (expected_truth ("m5", 5.03) * 1000 + i % 2) / 1000);

  const RwScene *scene = expected_look (&fixture, session);

  g_assert_null (expected_at (scene, "p5", 130));
  g_assert_null (expected_at (scene, "p12", 130));
  scene_fixture_close (&fixture);
}

/* The column of the picture in which the turn is still holds samples of before. */
static void
test_a_turn_under_a_stream_leaves_no_spike (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read_all (session, 10, 4.93);
  for (guint i = 0; i < 200; i++)
    {
      if (i == 80)
        expected_turn (session, 49.8);
      fixture_sample (session, 30 + 0.25 * i + (i < 80 ? 0 : 4), "p5", RW_PLACE_BOARD,
                      i < 80 ? 4.93 : 5.03);
    }
  expected_read (session, 85, "p5", 5.03);
  fixture_event (session, rw_event_make_mark (400, "later"));

  const RwScene *scene = expected_look (&fixture, session);
  const RwExpectedStretch *p12 = expected_at (scene, "p12", 70);

  g_assert_cmpfloat (expected_knot (p12, 0)->t, ==, 49.8);
  for (guint i = 0; i < p12->knots->len; i++)
    g_assert_cmpfloat (expected_knot (p12, i)->value, ==, expected_knot (p12, 0)->value);
  g_assert_null (expected_at (scene, "p12", 45));
  scene_fixture_close (&fixture);
}

static void
test_stops_while_the_setup_is_another (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  fixture_event (session,
                 rw_event_make_setup (1, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT }));
  expected_read_all (session, 10, 4.93);
  expected_turn (session, 50);
  expected_read (session, 60, "p5", 5.03);
  fixture_event (session,
                 rw_event_make_setup (70, (RwSetup){ RW_SAID_NO, RW_SAID_NOT, RW_SAID_NOT }));
  fixture_event (session,
                 rw_event_make_setup (90, (RwSetup){ RW_SAID_YES, RW_SAID_NOT, RW_SAID_NOT }));
  fixture_event (session,
                 rw_event_make_setup (110, (RwSetup){ RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT }));
  fixture_event (session, rw_event_make_mark (130, "later"));

  const RwScene *scene = expected_look (&fixture, session);

  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "p12", 65))->t, ==, 70);
  g_assert_null (expected_at (scene, "p12", 80));
  g_assert_cmpfloat (expected_knot (expected_at (scene, "p12", 100), 0)->t, ==, 90);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "p12", 100))->t, ==, 110);
  g_assert_null (expected_at (scene, "p12", 120));
  g_assert_null (rw_scene_expected_now (
      scene, scene_fixture_trace (&fixture, "p12", RW_PLACE_BOARD, RW_KIND_DC)));
  scene_fixture_close (&fixture);
}

/* What was expected before a repair that helped is still there; afterwards nobody knows anything. */
static void
test_a_repair_leaves_the_past_as_it_was (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  expected_read (session, 110, "p5", 5.08);
  fixture_event (session, rw_event_make_mark (130, "now"));

  const RwScene *scene = expected_look (&fixture, session);
  const double before = expected_last_knot (expected_at (scene, "m5", 105))->value;

  fixture_event (session, rw_event_make_repair (130, "edge-connector", RW_REPAIR_FIXED));
  expected_read (session, 140, "p5", 5.2);
  fixture_event (session, rw_event_make_mark (150, "later"));
  scene = expected_look (&fixture, session);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "m5", 105))->value, ==, before);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "m5", 105))->t, ==, 130);
  g_assert_false (expected_at (scene, "m5", 105)->lasts);
  g_assert_null (expected_at (scene, "m5", 145));
  g_assert_nonnull (expected_at (scene, "m5", 55));
  scene_fixture_close (&fixture);
}

static guint
count_knots (const RwScene *scene)
{
  guint n = 0;

  for (guint i = 0; i < scene->expected->len; i++)
    n += rw_scene_stretch (scene, i)->knots->len;
  return n;
}

static void
test_points_do_not_grow_with_samples (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  for (guint i = 0; i < 100000; i++)
    fixture_sample (session, 110 + i * 0.01, "p5", RW_PLACE_BOARD, 5.05 + 0.03 * sin (i * 0.001));

  const RwScene *scene = expected_look (&fixture, session);

  g_assert_cmpuint (count_knots (scene), >, 200);
  g_assert_cmpfloat (count_knots (scene), <=, 2 * (scene->plot.width / 2 + 8));
  scene_fixture_close (&fixture);
}

/* +5 V, which nobody measured, is further out than all that was. */
static void
test_scale_counts_what_is_expected (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);

  const double before = expected_look (&fixture, session)->scale.lo;

  expected_read (session, 110, "p12", 4.75);

  const RwScene *scene = expected_look (&fixture, session);
  const guint p5 = scene_fixture_trace (&fixture, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  const RwTrace *trace = rw_scene_trace (scene, p5);

  g_assert_cmpfloat (scene->scale.lo, <, before);
  g_assert_cmpfloat (scene->scale.lo, <=,
                     trace->gain * rw_scene_expected_now (scene, p5)->lo + trace->offset);
  scene_fixture_close (&fixture);
}

static void
test_scale_in_volts_counts_it_unless_far_off (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;

  scene_fixture_open (&fixture, session);
  rw_view_set_mode (fixture.view, RW_VIEW_VOLTS);
  rw_view_set_rail (fixture.view, "p12");

  const double before = expected_look (&fixture, session)->scale.lo;

  expected_read (session, 110, "p5", 4.6);

  const RwScene *scene = expected_look (&fixture, session);

  g_assert_cmpfloat (scene->scale.lo, <, before);
  g_assert_cmpfloat (scene->scale.lo, <=,
                     expected_last_knot (expected_at (scene, "p12", 105))->lo);
  expected_turn (session, 120);
  expected_read (session, 130, "p5", 3.1); /* +12 V would be at 7.4 V */
  scene = expected_look (&fixture, session);
  g_assert_cmpfloat (expected_last_knot (expected_at (scene, "p12", 125))->value, <, 8);
  g_assert_cmpfloat (scene->scale.lo, >, 12.1 - 0.7 * (RW_SCENE_FAR + 0.3));
  scene_fixture_close (&fixture);
}

/* Every finished line is kept; only what is new is fitted. */
static void
test_lines_of_before_are_taken_over (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  g_autoptr (RwBenchState) first = rw_bench_state_new (session);
  g_autoptr (RwForesight) early = rw_foresight_new (session, first, NULL);
  const guint known = rw_foresight_count_known (early, 0, 1);
  const RwTrimFit *fit = rw_foresight_get_fit (early, 0, known);

  g_assert_cmpuint (known, ==, 4);
  expected_read (session, 110, "p5", 5.08);

  g_autoptr (RwBenchState) second = rw_bench_state_new (session);
  g_autoptr (RwForesight) late = rw_foresight_new (session, second, early);

  g_assert_true (rw_foresight_get_fit (late, 0, known) == fit);
  g_assert_true (rw_foresight_get_fit (late, 0, 7) == rw_bench_state_get_trim_set (second, 0)->fit);
  g_assert_cmpuint (rw_foresight_count_until (late, 0, 1), ==, 6);
}

static void
check_scene (const RwScene *scene)
{
  for (guint i = 0; i < scene->expected->len; i++)
    {
      const RwExpectedStretch *stretch = rw_scene_stretch (scene, i);

      g_assert_cmpuint (stretch->trace, <, scene->traces->len);
      g_assert_cmpuint (stretch->knots->len, >=, 2);
      for (guint k = 0; k < stretch->knots->len; k++)
        {
          const RwExpectedKnot *it = expected_knot (stretch, k);

          g_assert_true (isfinite (it->t + it->value + it->u + it->lo + it->hi));
          g_assert_cmpfloat (it->lo, <=, it->value);
          g_assert_cmpfloat (it->hi, >=, it->value);
          g_assert_cmpfloat (it->t, >=, scene->time.lo);
          g_assert_cmpfloat (it->t, <=, scene->time.hi);
          if (k > 0)
            g_assert_cmpfloat (it->t, >=, expected_knot (stretch, k - 1)->t);
        }
    }
}

static void
test_any_session_is_drawn (void)
{
  guint n = 0;

  for (guint32 seed = 1; seed <= 150; seed++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      g_autoptr (RwSession) session = fixture_random (seed, 150);
      SceneFixture fixture;

      scene_fixture_open (&fixture, session);
      if (seed % 3 == 0)
        rw_view_set_span (fixture.view, seed % 60, seed % 60 + 20);
      for (guint i = 0; i < 4; i++)
        {
          const RwScene *scene = expected_look (&fixture, session);

          check_scene (scene);
          n += scene->expected->len;
          expected_read_all (session, 200 + i * 40, 4.9 + 0.1 * i);
          expected_turn (session, 230 + i * 40);
        }
      rw_session_rewind (session, seed);
      check_scene (expected_look (&fixture, session));
      scene_fixture_close (&fixture);
    }
  g_assert_cmpuint (n, >, 100);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/expected/nothing-before-the-data-allow-it",
                   test_nothing_before_the_data_allow_it);
  g_test_add_func ("/expected/runs-from-the-turn-to-the-reading",
                   test_runs_from_the_turn_to_the_reading);
  g_test_add_func ("/expected/holds-the-truth", test_holds_the_truth);
  g_test_add_func ("/expected/any-rail-tells-the-others", test_any_rail_tells_the_others);
  g_test_add_func ("/expected/the-past-is-not-made-right", test_the_past_is_not_made_right);
  g_test_add_func ("/expected/follows-a-stream", test_follows_a_stream);
  g_test_add_func ("/expected/a-moving-stream-overrules-what-was-read",
                   test_a_moving_stream_overrules_what_was_read);
  g_test_add_func ("/expected/a-still-stream-says-nothing-new",
                   test_a_still_stream_says_nothing_new);
  g_test_add_func ("/expected/a-turn-under-a-stream-leaves-no-spike",
                   test_a_turn_under_a_stream_leaves_no_spike);
  g_test_add_func ("/expected/stops-while-the-setup-is-another",
                   test_stops_while_the_setup_is_another);
  g_test_add_func ("/expected/a-repair-leaves-the-past-as-it-was",
                   test_a_repair_leaves_the_past_as_it_was);
  g_test_add_func ("/expected/points-do-not-grow-with-samples",
                   test_points_do_not_grow_with_samples);
  g_test_add_func ("/expected/scale-counts-what-is-expected", test_scale_counts_what_is_expected);
  g_test_add_func ("/expected/scale-in-volts-counts-it-unless-far-off",
                   test_scale_in_volts_counts_it_unless_far_off);
  g_test_add_func ("/expected/lines-of-before-are-taken-over",
                   test_lines_of_before_are_taken_over);
  g_test_add_func ("/expected/any-session-is-drawn", test_any_session_is_drawn);
  return g_test_run ();
}
