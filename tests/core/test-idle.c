/* test-idle.c: skipping the waiting: a map of time that can be gone both ways, and that leaves alone what happens.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-idle.h"

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static void
add_sample (RwSession *session,
            double     t,
            double     value)
{
  const RwReading sample = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");

  add (session, rw_event_make_sample (t, &sample));
}

/* Anything, with pauses of any length between, and streams that stay put or do not. */
static RwSession *
make_random (GRand *random)
{
  RwSession *session = fixture_session ();
  double t = 0;

  for (guint i = 0; i < 60; i++)
    {
      const guint n = (guint) g_rand_int_range (random, 0, 40);
      const double wanders = g_rand_boolean (random) ? 0.003 : 0.2;

      t += g_rand_boolean (random) ? g_rand_double_range (random, 0, 4) : g_rand_double_range (random, 4, 300);
      if (g_rand_int_range (random, 0, 3) > 0)
        {
          add (session, fixture_random_event (random, t, i));
          continue;
        }
      for (guint k = 0; k < n; k++, t += 0.5)
        add_sample (session, t, 5 + g_rand_double_range (random, -wanders, wanders));
    }
  return session;
}

static void
test_map (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20261125);

  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (RwSession) session = make_random (random);
      g_autoptr (RwIdle) idle = rw_idle_new (session);
      const double end = rw_session_get_end (session);
      double before = -1, played = -1;

      g_assert_cmpfloat (rw_idle_to_play (idle, 0), ==, 0);
      g_assert_cmpfloat_with_epsilon (rw_idle_to_play (idle, end), end - rw_idle_get_saved (idle), 1e-6);
      for (guint i = 0; i <= 500; i++)
        {
          const double t = end * 1.1 * i / 500, play = rw_idle_to_play (idle, t);

          g_assert_cmpfloat (play, >, played);
          g_assert_cmpfloat (play - MAX (played, 0), <=, t - MAX (before, 0) + 1e-9);
          g_assert_cmpfloat_with_epsilon (rw_idle_to_session (idle, play), t, 1e-9 * (1 + end));
          g_assert_cmpfloat_with_epsilon (rw_idle_to_play (idle, rw_idle_to_session (idle, t)), t, 1e-9 * (1 + end));
          before = t;
          played = play;
        }
    }
}

/* Every landmark has its second and a half on both sides at its own pace. */
static void
test_beside (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (2);

  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (RwSession) session = make_random (random);
      g_autoptr (RwIdle) idle = rw_idle_new (session);

      for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
        {
          const double t = rw_session_get_event (session, rw_session_get_landmark (session, i))->t;
          const double from = MAX (t - 1.5, 0), to = MIN (t + 1.5, rw_session_get_end (session));

          g_assert_cmpfloat_with_epsilon (rw_idle_to_play (idle, to) - rw_idle_to_play (idle, from), to - from, 1e-6);
        }
      for (guint i = 0; i < rw_idle_get_n (idle); i++)
        {
          const RwIdleStretch *stretch = rw_idle_get (idle, i);

          g_assert_cmpfloat (stretch->to, >, stretch->from);
          g_assert_cmpfloat_with_epsilon (
              rw_idle_to_play (idle, stretch->to) - rw_idle_to_play (idle, stretch->from), 1, 1e-6);
          if (i > 0)
            g_assert_cmpfloat (stretch->from, >, rw_idle_get (idle, i - 1)->to);
        }
    }
}

/* One hundred seconds between two marks, with @at added by @more in between. */
static double
saved_with (double value,
            double odd,
            double odd_t)
{
  g_autoptr (RwSession) session = fixture_session ();

  add (session, rw_event_make_mark (0, "a"));
  for (double t = 0.25; t < 100; t += 0.25)
    add_sample (session, t, t == odd_t ? odd : value + 0.002 * sin (t));
  add (session, rw_event_make_mark (100, "b"));

  g_autoptr (RwIdle) idle = rw_idle_new (session);

  return rw_idle_get_saved (idle);
}

static void
test_samples (void)
{
  /* From the first sample, 0.25 s: 99.75 s pass in 1.5 + 1 + 1.5. */
  g_assert_cmpfloat_with_epsilon (saved_with (5, 5, 50), 95.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (saved_with (5, 5.015, 50), 95.75, 1e-9); /* within its noise */
  /* 4.7 V for one sample is news, and so is 5 V after it: 49.75 and 49.75 s, each by 4 s. */
  g_assert_cmpfloat_with_epsilon (saved_with (5, 4.7, 50), 91.5, 1e-9);
}

/* One hundred seconds between two marks, all samples alike but for their spot after the fiftieth. */
static double
saved_when_moved (const char *rail,
                  RwPlace     place,
                  RwKind      kind,
                  const char *meter)
{
  g_autoptr (RwSession) session = fixture_session ();
  const RwReading before = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5, 0.001, "m1");
  const RwReading after = rw_reading_make (rail, place, kind, 5, 0.001, meter);

  add (session, rw_event_make_mark (0, "a"));
  for (double t = 0.25; t < 100; t += 0.25)
    add (session, rw_event_make_sample (t, t < 50 ? &before : &after));
  add (session, rw_event_make_mark (100, "b"));

  g_autoptr (RwIdle) idle = rw_idle_new (session);

  return rw_idle_get_saved (idle);
}

/* The leads went elsewhere: news, though the figure is the same. Then 49.75 s and 50 s, each by 4 s. */
static void
test_spots (void)
{
  g_assert_cmpfloat_with_epsilon (saved_when_moved ("p5", RW_PLACE_BOARD, RW_KIND_DC, "m1"), 95.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (saved_when_moved ("p12", RW_PLACE_BOARD, RW_KIND_DC, "m1"), 91.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (saved_when_moved ("p5", RW_PLACE_TERMINALS, RW_KIND_DC, "m1"), 91.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (saved_when_moved ("p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, "m1"), 91.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (saved_when_moved ("p5", RW_PLACE_BOARD, RW_KIND_DC, "m2"), 91.75, 1e-9);
}

static void
test_short (void)
{
  g_autoptr (RwSession) empty = fixture_session (), brisk = fixture_session ();
  g_autoptr (RwIdle) none = rw_idle_new (empty);

  for (guint i = 0; i < 30; i++)
    add (brisk, rw_event_make_mark (5 * i, "step"));

  g_autoptr (RwIdle) alike = rw_idle_new (brisk);

  g_assert_cmpuint (rw_idle_get_n (none), ==, 0);
  g_assert_cmpuint (rw_idle_get_n (alike), ==, 0);
  g_assert_cmpfloat (rw_idle_to_play (none, 7), ==, 7);
  g_assert_cmpfloat (rw_idle_to_session (none, 7), ==, 7);
  g_assert_cmpfloat (rw_idle_to_play (alike, 77.7), ==, 77.7);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/idle/the map rises, never runs slower than life, and is undone by its inverse", test_map);
  g_test_add_func ("/idle/what happens keeps its pace, a wait takes one second", test_beside);
  g_test_add_func ("/idle/samples that stay put are waiting, one that leaves is not", test_samples);
  g_test_add_func ("/idle/samples of another spot are news, whatever their value", test_spots);
  g_test_add_func ("/idle/without waits nothing is shortened", test_short);
  return g_test_run ();
}
