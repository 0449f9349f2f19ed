/* expected-fixture.c: a supply whose followers are straight lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "expected-fixture.h"

double
expected_truth (const char *rail,
                double      x)
{
  if (g_str_equal (rail, "p12"))
    return 2.36 * x + 0.05;
  return g_str_equal (rail, "m5") ? -1.06 * x + 0.42 : x;
}

void
expected_read (RwSession  *session,
               double      t,
               const char *rail,
               double      x)
{
  fixture_reading (session, t, rail, RW_PLACE_BOARD, expected_truth (rail, x));
}

/* Every rail at one position, 8 s apart. */
void
expected_read_all (RwSession *session,
                   double     t,
                   double     x)
{
  expected_read (session, t, "p5", x);
  expected_read (session, t + 8, "p12", x);
  expected_read (session, t + 16, "m5", x);
}

void
expected_turn (RwSession *session,
               double     t)
{
  fixture_event (session, rw_event_make_trim (t));
}

/* Two positions known in full, at 10 s and at 60 s, and a third turn at 100 s. */
RwSession *
expected_turned (void)
{
  RwSession *session = fixture_empty ();

  expected_read_all (session, 10, 4.93);
  expected_turn (session, 50);
  expected_read_all (session, 60, 5.03);
  expected_turn (session, 100);
  return session;
}

/* The scene of all of @session as its events are now. */
const RwScene *
expected_look (SceneFixture *fixture,
               RwSession    *session)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  g_autoptr (RwForesight) old = g_steal_pointer (&fixture->foresight);

  rw_scene_clear (&fixture->scene);
  rw_chart_data_catch_up (fixture->data);
  fixture->foresight = rw_foresight_new (session, state, old);
  return scene_fixture_build (fixture, EXPECTED_WIDTH, EXPECTED_HEIGHT);
}

/* The only stretch of @rail that is there at @t. (nullable) */
const RwExpectedStretch *
expected_at (const RwScene *scene,
             const char    *rail,
             double         t)
{
  const RwExpectedStretch *found = NULL;

  for (guint i = 0; i < scene->expected->len; i++)
    {
      const RwExpectedStretch *stretch = rw_scene_stretch (scene, i);
      const GArray *knots = stretch->knots;

      if (!g_str_equal (rw_scene_trace (scene, stretch->trace)->channel->rail, rail)
          || g_array_index (knots, RwExpectedKnot, 0).t > t
          || g_array_index (knots, RwExpectedKnot, knots->len - 1).t < t)
        continue;
      g_assert_null (found);
      found = stretch;
    }
  return found;
}

const RwExpectedKnot *
expected_knot (const RwExpectedStretch *stretch,
               guint                    i)
{
  g_assert_nonnull (stretch);
  g_assert_cmpuint (i, <, stretch->knots->len);
  return &g_array_index (stretch->knots, RwExpectedKnot, i);
}

const RwExpectedKnot *
expected_last_knot (const RwExpectedStretch *stretch)
{
  g_assert_nonnull (stretch);
  return expected_knot (stretch, stretch->knots->len - 1);
}
