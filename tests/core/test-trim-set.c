/* test-trim-set.c: readings sorted into trim sets and positions, and what the bench state says of them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-bench-state.h"
#include "rw-trim-recheck.h"

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static double
next (RwSession *session)
{
  return rw_session_get_end (session) + 1;
}

static void
read_at (RwSession  *session,
         RwPlace     place,
         const char *rail,
         double      value)
{
  const RwReading reading = rw_reading_make (rail, place, RW_KIND_DC, value, 0.001, "m1");

  add (session, rw_event_make_reading (next (session), &reading));
}

static void
set_up (RwSession *session,
        RwSaid     power,
        RwSaid     board,
        RwSaid     warm)
{
  add (session, rw_event_make_setup (next (session), (RwSetup){ power, board, warm }));
}

/* What an honest supply shows: +12 V = 2.4·x + 0.1, −5 V = −0.9·x − 0.2. */
static void
read_all (RwSession *session,
          RwPlace    place,
          double     x)
{
  read_at (session, place, "p5", x);
  read_at (session, place, "p12", 2.4 * x + 0.1);
  read_at (session, place, "m5", -0.9 * x - 0.2);
}

static void
turn (RwSession *session)
{
  add (session, rw_event_make_trim (next (session)));
}

static void
assert_near (double a,
             double b,
             double within)
{
  g_assert_cmpfloat_with_epsilon (a, b, within);
}

static void
test_two_positions_give_the_lines (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_all (session, RW_PLACE_BOARD, 4.95);
  turn (session);
  read_all (session, RW_PLACE_BOARD, 5.15);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);
  RwTrimLine line;

  g_assert_nonnull (set);
  g_assert_cmpuint (set->positions->len, ==, 2);
  g_assert_true (set->complete);
  g_assert_true (set->is_current);
  assert_near (set->x, 5.15, 0.002);
  g_assert_true (rw_trim_fit_get_line (set->fit, 1, &line));
  assert_near (line.slope, 2.4, 0.02);
  g_assert_true (rw_trim_fit_get_line (set->fit, 2, &line));
  assert_near (line.slope, -0.9, 0.02);
  /* +5 V: 4.9…5.2; −5 V reaches −4.5 at 4.78; +12 V is wide: the reference alone bounds the window. */
  g_assert_true (set->window.exists);
  assert_near (set->window.lo, 4.90, 1e-9);
  assert_near (set->window.hi, 5.20, 1e-9);
  g_assert_cmpuint (set->predicted->len, ==, 2);
}

static void
test_one_position_predicts_by_the_profile (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_all (session, RW_PLACE_BOARD, 5.10);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);
  RwTrimExpected here, there;

  /* Sure where it was read, less so a tenth of a volt away. */
  g_assert_true (rw_trim_fit_expect (set->fit, 1, 5.10, 0, &here));
  g_assert_true (rw_trim_fit_expect (set->fit, 1, 5.00, 0, &there));
  assert_near (here.value, 2.4 * 5.10 + 0.1, 1e-6);
  assert_near (there.value, 2.4 * 5.10 + 0.1 - 0.1 * 12 / 5, 1e-3);
  g_assert_cmpfloat (there.u, >, 5 * here.u);
}

static void
test_places_and_loads_are_fitted_apart (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  set_up (session, RW_SAID_YES, RW_SAID_NO, RW_SAID_NOT);
  read_all (session, RW_PLACE_TERMINALS, 5.30);
  set_up (session, RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT);
  read_all (session, RW_PLACE_TERMINALS, 5.20);
  read_all (session, RW_PLACE_BOARD, 5.10);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  g_assert_cmpuint (rw_bench_state_get_n_trim_sets (state), ==, 3);

  const RwTrimSet *terminals = rw_bench_state_find_trim_set (state, RW_PLACE_TERMINALS);

  g_assert_cmpint (terminals->board, ==, RW_SAID_YES);
  assert_near (terminals->x, 5.20, 1e-6);
  assert_near (rw_bench_state_find_trim_set (state, RW_PLACE_BOARD)->x, 5.10, 1e-6);
  g_assert_null (rw_bench_state_find_trim_set (state, RW_PLACE_CHIP));
}

static void
test_the_reference_is_inferred (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_all (session, RW_PLACE_BOARD, 4.95);
  turn (session);
  read_all (session, RW_PLACE_BOARD, 5.15);
  turn (session);
  read_at (session, RW_PLACE_BOARD, "p12", 2.4 * 5.05 + 0.1);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);
  RwTrimExpected minus;

  g_assert_true (set->is_current);
  assert_near (set->x, 5.05, 0.002);
  g_assert_true (rw_trim_fit_expect (set->fit, 2, set->x, set->u_x, &minus));
  assert_near (minus.value, -0.9 * 5.05 - 0.2, 0.005);
}

static void
test_what_is_of_no_use_stays_out (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_at (session, RW_PLACE_BOARD, "p5", 5.0);
  read_at (session, RW_PLACE_BOARD, "p5", -5.0); /* leads the wrong way round */
  read_at (session, RW_PLACE_BOARD, "p12", 0.3); /* dead */
  read_at (session, RW_PLACE_WIRE, "p5", 0.05);
  set_up (session, RW_SAID_NO, RW_SAID_YES, RW_SAID_NOT);
  read_at (session, RW_PLACE_BOARD, "m5", -5.0); /* with the power off */

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  g_assert_cmpuint (rw_bench_state_get_n_trim_sets (state), ==, 1);
  g_assert_cmpuint (rw_bench_state_get_trim_set (state, 0)->points->len, ==, 1);
  g_assert_false (rw_bench_state_get_trim_set (state, 0)->complete);
}

static void
test_undo_takes_a_turn_back (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_all (session, RW_PLACE_BOARD, 5.10);
  turn (session);
  add (session, rw_event_make_retract (next (session), 4));
  read_all (session, RW_PLACE_BOARD, 5.10);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);

  g_assert_cmpuint (set->positions->len, ==, 1);
  g_assert_cmpuint (set->points->len, ==, 6);
}

static void
test_a_repair_that_fixed_starts_afresh (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  read_all (session, RW_PLACE_BOARD, 5.10);
  add (session, rw_event_make_repair (next (session), "minus-regulator", RW_REPAIR_NO_CHANGE));
  g_assert_cmpuint (rw_session_get_n_events (session), ==, 4);

  g_autoptr (RwBenchState) before = rw_bench_state_new (session);

  g_assert_cmpuint (rw_bench_state_get_n_trim_sets (before), ==, 1);
  add (session, rw_event_make_repair (next (session), "plus12-capacitor", RW_REPAIR_FIXED));

  g_autoptr (RwBenchState) after = rw_bench_state_new (session);

  g_assert_cmpuint (rw_bench_state_get_n_trim_sets (after), ==, 0);
}

static void
test_warming_up_is_a_position_of_its_own (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  set_up (session, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  read_all (session, RW_PLACE_BOARD, 5.10);
  set_up (session, RW_SAID_NOT, RW_SAID_NOT, RW_SAID_YES);
  read_all (session, RW_PLACE_BOARD, 5.06);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);

  g_assert_cmpuint (set->positions->len, ==, 2);
  assert_near (set->x, 5.06, 0.001);
}

/* --- reading again -------------------------------------------------------------------------------- */

static void
test_the_reference_is_asked_for_first (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  RwTrimRecheck recheck;

  read_all (session, RW_PLACE_BOARD, 4.95);
  turn (session);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  rw_trim_recheck_init (&recheck, state);
  g_assert_true (recheck.on);
  g_assert_false (recheck.complete);
  g_assert_cmpint (recheck.place, ==, RW_PLACE_BOARD);
  g_assert_cmpuint (recheck.n_due, ==, 3);
  g_assert_cmpuint (recheck.due[0], ==, 0);
  g_assert_cmpuint (rw_trim_recheck_rank (&recheck, 0), ==, 1);
  rw_trim_recheck_clear (&recheck);
}

/* At 4.75 V −5 V is expected at −4.475, outside; +12 V is far inside although its priority is higher. */
static void
test_then_the_rail_most_likely_outside (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  RwTrimRecheck recheck;

  read_all (session, RW_PLACE_BOARD, 4.95);
  turn (session);
  read_all (session, RW_PLACE_BOARD, 5.15);
  turn (session);
  read_at (session, RW_PLACE_BOARD, "p5", 4.75);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  rw_trim_recheck_init (&recheck, state);
  g_assert_cmpuint (recheck.n_due, ==, 2);
  g_assert_cmpuint (recheck.due[0], ==, 2);
  g_assert_cmpuint (recheck.due[1], ==, 1);
  g_assert_cmpuint (rw_trim_recheck_rank (&recheck, 0), ==, 0);
  rw_trim_recheck_clear (&recheck);
}

static void
test_the_recheck_ends (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  RwTrimRecheck recheck;

  read_all (session, RW_PLACE_BOARD, 4.95);
  turn (session);
  read_all (session, RW_PLACE_BOARD, 5.15);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  rw_trim_recheck_init (&recheck, state);
  g_assert_true (recheck.complete);
  g_assert_cmpuint (recheck.n_due, ==, 0);
  rw_trim_recheck_clear (&recheck);
}

static void
test_nothing_is_due_without_a_turn (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  RwTrimRecheck recheck;

  read_all (session, RW_PLACE_BOARD, 4.95);

  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  rw_trim_recheck_init (&recheck, state);
  g_assert_false (recheck.on);
  g_assert_false (recheck.complete);
  g_assert_cmpuint (recheck.n_due, ==, 0);
  rw_trim_recheck_clear (&recheck);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-set/two positions give the lines and the window", test_two_positions_give_the_lines);
  g_test_add_func ("/trim-set/one position predicts by the profile", test_one_position_predicts_by_the_profile);
  g_test_add_func ("/trim-set/places and loads are fitted apart", test_places_and_loads_are_fitted_apart);
  g_test_add_func ("/trim-set/the reference is inferred where it was not read", test_the_reference_is_inferred);
  g_test_add_func ("/trim-set/what is of no use stays out", test_what_is_of_no_use_stays_out);
  g_test_add_func ("/trim-set/undo takes a turn back", test_undo_takes_a_turn_back);
  g_test_add_func ("/trim-set/a repair that fixed starts afresh", test_a_repair_that_fixed_starts_afresh);
  g_test_add_func ("/trim-set/warming up is a position of its own", test_warming_up_is_a_position_of_its_own);
  g_test_add_func ("/trim-recheck/the reference is asked for first", test_the_reference_is_asked_for_first);
  g_test_add_func ("/trim-recheck/then the rail most likely outside", test_then_the_rail_most_likely_outside);
  g_test_add_func ("/trim-recheck/it ends when every rail was read", test_the_recheck_ends);
  g_test_add_func ("/trim-recheck/nothing is due without a turn", test_nothing_is_due_without_a_turn);
  return g_test_run ();
}
