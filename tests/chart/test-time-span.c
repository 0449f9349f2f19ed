/* test-time-span.c: how the visible stretch moves.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-time-span.h"

static RwTimeSpan
of_extent (double extent)
{
  return rw_time_span_with_extent (rw_time_span_make (), extent);
}

static void
assert_sound (RwTimeSpan span)
{
  g_assert_true (isfinite (span.start) && isfinite (span.end));
  g_assert_cmpfloat (span.end - span.start, >=, RW_TIME_SPAN_SHORTEST - 1e-6);
  g_assert_cmpfloat (span.start, >=, 0);
  g_assert_cmpfloat (span.end, <=, rw_time_span_fit_end (span.extent));
  if (span.fit)
    g_assert_true (span.follow && span.start == 0);
  if (span.follow)
    g_assert_cmpfloat (span.end, >=, span.extent - 1e-6);
}

static void
test_empty_session_shows_a_minute (void)
{
  const RwTimeSpan span = rw_time_span_make ();

  g_assert_cmpfloat (span.start, ==, 0);
  g_assert_cmpfloat (span.end, ==, 60);
  g_assert_true (span.fit && span.follow);
}

/* Round, past the newest event, never far past it, and seldom another. */
static void
test_fit_ends_at_a_round_time_a_little_past (void)
{
  double last = 0;
  guint n_ends = 0;

  for (double extent = 0; extent < 20000; extent += 0.5)
    {
      const double end = rw_time_span_fit_end (extent);

      g_assert_cmpfloat (end, >=, MAX (extent, 60));
      if (extent > 60)
        g_assert_cmpfloat (end, <=, extent * 1.15);
      g_assert_cmpfloat (end, >=, last);
      g_assert_cmpfloat (fmod (end, 5), ==, 0);
      n_ends += end != last ? 1 : 0;
      last = end;
    }
  g_assert_cmpuint (n_ends, <, 200);
  g_assert_cmpfloat (rw_time_span_fit_end (NAN), ==, 60);
}

static void
test_fit_grows_with_the_session (void)
{
  RwTimeSpan span = rw_time_span_make ();

  span = rw_time_span_with_extent (span, 300);
  g_assert_true (span.fit);
  g_assert_cmpfloat (span.end, ==, rw_time_span_fit_end (300));
  span = rw_time_span_with_extent (span, 10);
  g_assert_cmpfloat (span.end, ==, 60);
}

static void
test_following_keeps_length_and_newest (void)
{
  RwTimeSpan span = rw_time_span_moved (of_extent (300), 250, 305);
  const double length = span.end - span.start;

  g_assert_true (span.follow && !span.fit);
  for (double extent = 301; extent < 900; extent += 7)
    {
      span = rw_time_span_with_extent (span, extent);
      g_assert_cmpfloat_with_epsilon (span.end - span.start, length, 1e-9);
      g_assert_cmpfloat (span.end, >=, extent);
      g_assert_cmpfloat (span.end, <=, extent + 0.1 * length);
    }
}

static void
test_put_elsewhere_it_stays (void)
{
  RwTimeSpan span = rw_time_span_moved (of_extent (300), 100, 150);

  g_assert_false (span.follow || span.fit);
  span = rw_time_span_with_extent (span, 900);
  g_assert_cmpfloat (span.start, ==, 100);
  g_assert_cmpfloat (span.end, ==, 150);
}

static void
test_panning_away_and_back_leaves_and_takes_up_follow (void)
{
  RwTimeSpan span = rw_time_span_moved (of_extent (300), 250, 305);

  span = rw_time_span_panned (span, -1);
  g_assert_false (span.follow);
  g_assert_cmpfloat_with_epsilon (span.start, 195, 1e-9);
  span = rw_time_span_panned (span, 5);
  g_assert_true (span.follow);
}

static void
test_zoom_keeps_the_time_under_the_pointer (void)
{
  const RwTimeSpan span = rw_time_span_moved (of_extent (1000), 400, 500);

  for (double about = 400; about <= 500; about += 12.5)
    {
      const RwTimeSpan closer = rw_time_span_zoomed (span, 0.4, about);
      const double share = (about - 400) / 100;

      g_assert_cmpfloat_with_epsilon (closer.end - closer.start, 40, 1e-9);
      g_assert_cmpfloat_with_epsilon (closer.start + share * 40, about, 1e-9);
    }
}

static void
test_zoom_while_following_keeps_the_newest (void)
{
  RwTimeSpan span = rw_time_span_moved (of_extent (1000), 900, 1005);

  span = rw_time_span_zoomed (span, 0.5, 910);
  g_assert_true (span.follow);
  g_assert_cmpfloat (span.end, >=, 1000);
}

static void
test_zoomed_out_to_all_is_fit_again (void)
{
  RwTimeSpan span = rw_time_span_moved (of_extent (300), 100, 150);

  span = rw_time_span_zoomed (span, 100, 120);
  g_assert_true (span.fit);
  span = rw_time_span_zoomed (span, 0.5, 100);
  g_assert_false (span.fit);
}

static void
test_nonsense_changes_nothing (void)
{
  const RwTimeSpan span = rw_time_span_moved (of_extent (300), 100, 150);
  const RwTimeSpan tries[] = {
    rw_time_span_moved (span, NAN, 200),  rw_time_span_moved (span, 100, INFINITY),
    rw_time_span_moved (span, 200, 100),  rw_time_span_zoomed (span, 0, 120),
    rw_time_span_zoomed (span, -1, 120),  rw_time_span_zoomed (span, NAN, 120),
    rw_time_span_zoomed (span, 2, NAN),   rw_time_span_panned (span, NAN),
    rw_time_span_with_extent (span, NAN),
  };

  for (guint i = 0; i < G_N_ELEMENTS (tries); i++)
    {
      g_assert_cmpfloat (tries[i].start, ==, 100);
      g_assert_cmpfloat (tries[i].end, ==, 150);
    }
}

static RwTimeSpan
random_move (RwTimeSpan span,
             GRand     *random)
{
  const double a = g_rand_double_range (random, -100, 2000),
               b = g_rand_double_range (random, -100, 2000);

  switch (g_rand_int_range (random, 0, 6))
    {
    case 0:
      return rw_time_span_with_extent (span, MAX (a, 0));
    case 1:
      return rw_time_span_moved (span, MIN (a, b), MAX (a, b));
    case 2:
      return rw_time_span_zoomed (span, exp (g_rand_double_range (random, -3, 3)), a);
    case 3:
      return rw_time_span_panned (span, g_rand_double_range (random, -3, 3));
    case 4:
      return rw_time_span_following (span, g_rand_boolean (random));
    default:
      return g_rand_int_range (random, 0, 5) == 0 ? rw_time_span_fitted (span) : span;
    }
}

static void
test_any_moves_leave_it_sound (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  RwTimeSpan span = rw_time_span_make ();

  for (guint i = 0; i < 20000; i++)
    {
      span = random_move (span, random);
      assert_sound (span);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/time-span/empty-session-shows-a-minute", test_empty_session_shows_a_minute);
  g_test_add_func ("/time-span/fit-ends-at-a-round-time-a-little-past",
                   test_fit_ends_at_a_round_time_a_little_past);
  g_test_add_func ("/time-span/fit-grows-with-the-session", test_fit_grows_with_the_session);
  g_test_add_func ("/time-span/following-keeps-length-and-newest",
                   test_following_keeps_length_and_newest);
  g_test_add_func ("/time-span/put-elsewhere-it-stays", test_put_elsewhere_it_stays);
  g_test_add_func ("/time-span/panning-away-and-back",
                   test_panning_away_and_back_leaves_and_takes_up_follow);
  g_test_add_func ("/time-span/zoom-keeps-the-time-under-the-pointer",
                   test_zoom_keeps_the_time_under_the_pointer);
  g_test_add_func ("/time-span/zoom-while-following-keeps-the-newest",
                   test_zoom_while_following_keeps_the_newest);
  g_test_add_func ("/time-span/zoomed-out-to-all-is-fit-again",
                   test_zoomed_out_to_all_is_fit_again);
  g_test_add_func ("/time-span/nonsense-changes-nothing", test_nonsense_changes_nothing);
  g_test_add_func ("/time-span/any-moves-leave-it-sound", test_any_moves_leave_it_sound);
  return g_test_run ();
}
