/* test-call.c: rounds of calls out of a session's events, and what the program itself would have called.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "bench-play.h"
#include "fixtures.h"
#include "rw-call-predict.h"

static void
add (RwSession *session,
     RwCallSaid said)
{
  RwEvent event = rw_event_make_call (rw_session_get_end (session) + 1, &said);

  rw_session_add (session, &event);
  rw_call_said_clear (&said);
}

static void
ask_p12 (RwSession *session,
         double     was)
{
  add (session, rw_call_said_ask ("p12", RW_PLACE_BOARD, RW_KIND_DC, was));
}

static guint
last_n (RwSession *session)
{
  return rw_session_get_event (session, rw_session_get_n_events (session) - 1)->n;
}

static void
undo (RwSession *session)
{
  RwEvent event = rw_event_make_retract (rw_session_get_end (session) + 1, rw_session_get_undo (session));

  rw_session_add (session, &event);
}

static void
test_a_round_from_ask_to_answer (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted; m1; p12 board 11.62; turn", NULL);

  ask_p12 (session, 11.62);
  add (session, rw_call_said_value (" team 1 ", 11.9, 0.1));
  add (session, rw_call_said_value ("Team 2", 11.7, NAN));
  add (session, rw_call_said_hands (3, 5, 12));

  g_autoptr (RwCallBook) asked = rw_call_book_new (session, NULL);
  const RwCallRound *open = rw_call_book_get_open (asked);

  g_assert_nonnull (open);
  g_assert_cmpuint (rw_call_round_find_answer (open, session), ==, 0); /* the one before the ask is none */
  g_assert_true (isnan (open->answer));
  bench_go_on (session, "p12 board 11.93");
  g_assert_cmpuint (rw_call_round_find_answer (open, session), ==, last_n (session));
  add (session, rw_call_said_reveal (last_n (session)));

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);
  const RwCallRound *round = rw_call_book_get_round (book, 0);
  const RwCall *first = round->calls->pdata[0];

  g_assert_cmpuint (rw_call_book_get_n_rounds (book), ==, 1);
  g_assert_null (rw_call_book_get_open (book));
  g_assert_true (rw_call_book_get_last (book) == round);
  g_assert_cmpstr (round->rail, ==, "p12");
  g_assert_cmpfloat (round->was, ==, 11.62);
  g_assert_cmpfloat_with_epsilon (round->was_u, 0.002 / sqrt (3), 1e-12); /* two counts of 1 mV */
  g_assert_cmpuint (round->calls->len, ==, 2);
  g_assert_cmpstr (first->by, ==, "team 1");
  g_assert_cmpfloat (first->give, ==, 0.1);
  g_assert_cmpuint (round->hands[RW_CALL_HIGHER], ==, 12);
  g_assert_cmpint (round->end, ==, RW_CALL_REVEALED);
  g_assert_cmpfloat (round->answer, ==, 11.93);
}

static void
test_who_calls_again_takes_the_first_back (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted", NULL);

  ask_p12 (session, NAN);
  add (session, rw_call_said_value ("Ärmel", 11, 1));
  add (session, rw_call_said_value ("b", 12, NAN));
  add (session, rw_call_said_value ("ÄRMEL ", 11.5, NAN));
  add (session, rw_call_said_hands (9, 0, 0));
  add (session, rw_call_said_hands (0, 0, 8));

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);
  const RwCallRound *round = rw_call_book_get_open (book);
  const RwCall *call = round->calls->pdata[0];

  g_assert_cmpuint (round->calls->len, ==, 2);
  g_assert_cmpstr (call->by, ==, "ÄRMEL");
  g_assert_cmpfloat (call->value, ==, 11.5);
  g_assert_true (isnan (call->give));
  g_assert_cmpuint (round->hands[RW_CALL_LOWER], ==, 0);
}

static void
test_undo_takes_back_what_was_called (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted", NULL);

  ask_p12 (session, NAN);
  add (session, rw_call_said_value ("a", 11, NAN));
  undo (session);

  g_autoptr (RwCallBook) one = rw_call_book_new (session, NULL);

  g_assert_cmpuint (rw_call_book_get_open (one)->calls->len, ==, 0);
  undo (session);

  g_autoptr (RwCallBook) none = rw_call_book_new (session, NULL);

  g_assert_cmpuint (rw_call_book_get_n_rounds (none), ==, 0);
}

static void
test_what_closes_a_round (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted", NULL);

  add (session, rw_call_said_value ("nobody asked", 1, NAN));
  add (session, rw_call_said_reveal (1));
  ask_p12 (session, NAN);
  ask_p12 (session, NAN); /* gives the first up */
  add (session, rw_call_said_drop ());
  ask_p12 (session, NAN);
  bench_go_on (session, "p12 chip 11.9; p5 board 5.1; p12 board OL");
  add (session, rw_call_said_reveal (last_n (session))); /* overload answers nothing */
  ask_p12 (session, NAN);
  add (session, rw_call_said_reveal (4000)); /* no such event */
  ask_p12 (session, NAN);

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);
  static const RwCallEnd ends[] = { RW_CALL_DROPPED, RW_CALL_DROPPED, RW_CALL_REVEALED, RW_CALL_REVEALED, RW_CALL_OPEN };

  g_assert_cmpuint (rw_call_book_get_n_rounds (book), ==, G_N_ELEMENTS (ends));
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_assert_cmpint (rw_call_book_get_round (book, i)->end, ==, ends[i]);
      g_assert_cmpuint (rw_call_book_get_round (book, i)->answer_n, ==, 0);
    }
  g_assert_null (rw_call_book_get_last (book));
}

static void
test_an_answer_that_is_taken_back_is_none (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted", NULL);

  ask_p12 (session, NAN);
  bench_go_on (session, "p12 board 11.93");

  const guint n = last_n (session);

  add (session, rw_call_said_reveal (n));

  RwEvent back = rw_event_make_retract (rw_session_get_end (session), n);

  rw_session_add (session, &back);

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);

  g_assert_cmpint (rw_call_book_get_round (book, 0)->end, ==, RW_CALL_REVEALED);
  g_assert_cmpuint (rw_call_book_get_round (book, 0)->answer_n, ==, 0);
}

static void
test_a_reading_that_was_taken_back_is_not_the_last_one (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted; p12 board 11.80; p12 board 11.93", NULL);

  undo (session);
  g_assert_cmpfloat (rw_call_last_reading (session, "p12", RW_PLACE_BOARD, RW_KIND_DC)->reading.value, ==, 11.80);
  undo (session);
  g_assert_null (rw_call_last_reading (session, "p12", RW_PLACE_BOARD, RW_KIND_DC));
}

/* Calls over a replayed file stand beside it and say after which event they were made. */
static void
test_calls_beside_a_file_go_where_they_were_made (void)
{
  g_autoptr (RwSession) session = bench_play ("on; fitted; p12 board 11.62; turn; p12 board 11.93", NULL);
  g_autoptr (GArray) beside = g_array_new (FALSE, FALSE, sizeof (RwEvent));
  RwCallSaid saids[] = { rw_call_said_ask ("p12", RW_PLACE_BOARD, RW_KIND_DC, 11.62), rw_call_said_value ("a", 12, NAN),
                         rw_call_said_reveal (5) };
  const guint after[] = { 4, 4, 5 };

  for (guint i = 0; i < G_N_ELEMENTS (saids); i++)
    {
      RwEvent event = rw_event_make_call (10, &saids[i]);

      event.n = after[i];
      g_array_append_val (beside, event);
    }

  g_autoptr (RwCallBook) book = rw_call_book_new (session, beside);
  const RwCallRound *round = rw_call_book_get_round (book, 0);

  g_assert_cmpuint (rw_call_book_get_n_rounds (book), ==, 1);
  g_assert_cmpuint (round->calls->len, ==, 1);
  g_assert_cmpuint (round->answer_n, ==, 5);
  g_assert_cmpfloat (round->answer, ==, 11.93);
  rw_session_rewind (session, 4); /* before the answer */

  g_autoptr (RwCallBook) rewound = rw_call_book_new (session, beside);

  g_assert_cmpuint (rw_call_book_get_round (rewound, 0)->answer_n, ==, 0);
  for (guint i = 0; i < beside->len; i++)
    rw_event_clear (&g_array_index (beside, RwEvent, i));
  for (guint i = 0; i < G_N_ELEMENTS (saids); i++)
    rw_call_said_clear (&saids[i]);
}

#define TWO_TURNS "on; fitted; m1; p5 board 5.000; p12 board 11.800; turn; p5 board 5.100; p12 board 12.050; turn; p5 board 5.050"

static RwCallPrediction
predict (const char *answer)
{
  g_autoptr (RwSession) session = bench_play (TWO_TURNS, NULL);
  RwCallPrediction out;

  ask_p12 (session, 12.05);
  bench_go_on (session, answer);
  add (session, rw_call_said_reveal (last_n (session)));
  bench_go_on (session, "turn; p5 board 5.2; p12 board 13");

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);

  g_assert_true (rw_call_predict (rw_call_book_get_round (book, 0), session, &out));
  return out;
}

/* Where the line says +12 V is: what the meter adds comes on top. */
static double
expected_p12_u (void)
{
  g_autoptr (RwSession) session = bench_play (TWO_TURNS, NULL);
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);
  RwTrimExpected expected;

  g_assert_true (rw_trim_fit_expect (set->fit, (guint) rw_profile_index_of (set->profile, "p12"), set->x, set->u_x,
                                     &expected));
  return expected.u;
}

/* The line through (5.00, 11.80) and (5.10, 12.05) is at 11.925 where the reference reads 5.05. */
static void
test_the_prediction_comes_from_what_was_known_before_the_reading (void)
{
  const RwCallPrediction right = predict ("p12 board 11.93"), wild = predict ("p12 board 9.00");
  const double own = 0.002 / sqrt (3);

  g_assert_cmpfloat_with_epsilon (right.value, 11.925, 0.003);
  g_assert_cmpfloat_with_epsilon (right.u, hypot (expected_p12_u (), own), 1e-12);
  g_assert_cmpfloat (right.u, <, 0.02);
  g_assert_cmpfloat (right.lo, <, right.value - 1.9 * own);
  g_assert_cmpfloat (right.hi, >, right.value + 1.9 * own);
  g_assert_cmpfloat_with_epsilon (right.value - right.lo, 1.96 * right.u, 0.3 * right.u);
  g_assert_cmpfloat (wild.value, ==, right.value); /* the answer tells it nothing */
  g_assert_cmpfloat (wild.hi, ==, right.hi);
}

static void
test_no_prediction_without_a_reading_since_the_turn (void)
{
  g_autoptr (RwSession) session = bench_play (TWO_TURNS "; turn", NULL);
  RwCallPrediction out;

  ask_p12 (session, 12.05);

  g_autoptr (RwCallBook) book = rw_call_book_new (session, NULL);

  g_assert_false (rw_call_predict (rw_call_book_get_open (book), session, &out));
  bench_go_on (session, "p5 board 5.02");
  g_assert_true (rw_call_predict (rw_call_book_get_open (book), session, &out));
  g_assert_cmpfloat_with_epsilon (out.value, 11.85, 0.004);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/call/a-round-from-ask-to-answer", test_a_round_from_ask_to_answer);
  g_test_add_func ("/call/who-calls-again-takes-the-first-back", test_who_calls_again_takes_the_first_back);
  g_test_add_func ("/call/undo-takes-back-what-was-called", test_undo_takes_back_what_was_called);
  g_test_add_func ("/call/what-closes-a-round", test_what_closes_a_round);
  g_test_add_func ("/call/an-answer-that-is-taken-back-is-none", test_an_answer_that_is_taken_back_is_none);
  g_test_add_func ("/call/a-reading-that-was-taken-back-is-not-the-last-one",
                   test_a_reading_that_was_taken_back_is_not_the_last_one);
  g_test_add_func ("/call/calls-beside-a-file-go-where-they-were-made", test_calls_beside_a_file_go_where_they_were_made);
  g_test_add_func ("/call/the-prediction-comes-from-what-was-known-before-the-reading",
                   test_the_prediction_comes_from_what_was_known_before_the_reading);
  g_test_add_func ("/call/no-prediction-without-a-reading-since-the-turn",
                   test_no_prediction_without_a_reading_since_the_turn);
  return g_test_run ();
}
