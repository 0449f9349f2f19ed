/* test-trim-advice.c: when a turn of the trim is advised, by how much, and when it is not.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#include "rw-sentence.h"
#include "rw-trim-advice.h"

/* −5 V is laid down narrowly so that it decides; m1 is ±(0.5 % + 1). */
static const char *const profile_text =
    "{\"id\":\"three\",\"title\":\"Three rails\",\"reference\":\"p5\",\"rails\":["
    "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2],\"bare_limits\":[4.75,5.4],"
    "\"never_above\":5.5,\"priority\":1},"
    "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[10.8,13.2],\"never_above\":15,\"priority\":2},"
    "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5],\"never_above\":7,\"priority\":3}]}";

static RwSession *
start (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (profile_text, &error);
  g_autoptr (RwProfile) profile = rw_profile_new_from_node (node, "three", &error);
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  g_autoptr (GPtrArray) meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);

  g_assert_no_error (error);
  g_ptr_array_add (meters, rw_meter_facts_new ("m1", "meter", 0.5, 1));
  return rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "B-07", meters, started));
}

static void
add (RwSession *job,
     RwEvent    event)
{
  rw_session_add (job, &event);
}

static void
read_at (RwSession  *job,
         RwPlace     place,
         const char *rail,
         double      value)
{
  const RwReading reading = rw_reading_make (g_intern_string (rail), place, RW_KIND_DC, value, 0.001,
                                             g_intern_string ("m1"));

  add (job, rw_event_make_reading (rw_session_get_end (job) + 1, &reading));
}

static void
turn (RwSession *job)
{
  add (job, rw_event_make_trim (rw_session_get_end (job) + 1));
}

static void
board (RwSession *job,
       RwSaid     fitted)
{
  add (job, rw_event_make_setup (rw_session_get_end (job) + 1, (RwSetup){ RW_SAID_YES, fitted, RW_SAID_NOT }));
}

/* +12 V = 2.4·x; −5 V = −x + @weak. */
static void
read_all (RwSession *job,
          RwPlace    place,
          double     x,
          double     weak)
{
  read_at (job, place, "p5", x);
  read_at (job, place, "p12", 2.4 * x);
  read_at (job, place, "m5", -x + weak);
}

static void
assert_says (RwSession   *job,
             const char  *on_rail,
             RwTrimSays   says,
             RwTrimAdvice *advice)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autofree char *text = NULL;

  rw_trim_advice_work_out (state, on_rail, NULL, advice);
  g_assert_cmpint (advice->says, ==, says);
  text = rw_trim_advice_say (advice);
  g_assert_true ((text != NULL) == (says != RW_TRIM_SAYS_NOTHING));
  advice->set = NULL; /* it goes with the state */
}

static void
test_down_by_the_right_amount (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  read_all (job, RW_PLACE_BOARD, 4.95, 0);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 5.25, 0);
  /* Margins 1 − (5.05 − x)/0.15 of +5 V and 1 − 2(x − 5) of the others cross at 43.6667/8.6667. */
  assert_says (job, NULL, RW_TRIM_SAYS_TURN, &advice);
  g_assert_false (advice.up);
  g_assert_cmpfloat_with_epsilon (advice.now, 5.25, 0.002);
  g_assert_cmpfloat_with_epsilon (advice.to, 5.03846, 0.002);

  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  gboolean danger;
  g_autofree char *sentence = rw_sentence_new (state, NULL, &danger);

  g_assert_false (danger);
  g_assert_true (g_str_has_prefix (sentence, "Down 0.2"));
  g_assert_nonnull (strstr (sentence, "+12 V about 12.09"));
  g_assert_nonnull (strstr (sentence, "−5 V about −5.04"));
}

static void
test_in_volts_of_the_rail_the_meter_is_on (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  read_all (job, RW_PLACE_BOARD, 4.95, 0.1);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 5.25, 0.1);
  assert_says (job, "p12", RW_TRIM_SAYS_TURN, &advice);
  g_assert_cmpuint (advice.watch, ==, 1);
  g_assert_cmpfloat_with_epsilon (advice.now, 2.4 * 5.25, 0.01);
  g_assert_cmpfloat (advice.to, <, advice.now);
  assert_says (job, "m5", RW_TRIM_SAYS_TURN, &advice);
  g_assert_cmpuint (advice.watch, ==, 2);
  g_assert_false (advice.up); /* −5 V becomes weaker too: its magnitude goes down */
  g_assert_cmpfloat (advice.to, >, advice.now);
}

static void
test_up_asks_for_the_terminals_first (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  board (job, RW_SAID_YES);
  read_all (job, RW_PLACE_BOARD, 5.05, 0);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 4.80, 0);
  assert_says (job, NULL, RW_TRIM_SAYS_TERMINALS, &advice);
  /* Little is lost on the way: then up it is. */
  read_at (job, RW_PLACE_TERMINALS, "p5", 4.86);
  assert_says (job, NULL, RW_TRIM_SAYS_TURN, &advice);
  g_assert_true (advice.up);
}

static void
test_a_drop_is_not_trimmed_away (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  board (job, RW_SAID_YES);
  read_all (job, RW_PLACE_BOARD, 4.70, 0);
  read_at (job, RW_PLACE_TERMINALS, "p5", 5.02);
  assert_says (job, NULL, RW_TRIM_SAYS_WIRING, &advice);
  g_assert_cmpfloat_with_epsilon (advice.drop, 0.32, 0.005);
}

static void
test_a_ground_drop_counts_too (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  read_all (job, RW_PLACE_BOARD, 4.80, 0);
  read_at (job, RW_PLACE_WIRE, RW_RAIL_GROUND, 0.180);
  assert_says (job, NULL, RW_TRIM_SAYS_WIRING, &advice);
}

static void
test_not_with_the_board_out (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  board (job, RW_SAID_NO);
  read_all (job, RW_PLACE_TERMINALS, 5.05, 0);
  assert_says (job, NULL, RW_TRIM_SAYS_NOTHING, &advice);
  turn (job);
  read_all (job, RW_PLACE_TERMINALS, 5.45, 0);
  assert_says (job, NULL, RW_TRIM_SAYS_LOAD, &advice);
}

static void
test_the_board_rules (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  board (job, RW_SAID_YES);
  read_all (job, RW_PLACE_TERMINALS, 5.42, 0);
  assert_says (job, NULL, RW_TRIM_SAYS_BOARD, &advice);
}

static void
test_no_window (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  read_all (job, RW_PLACE_BOARD, 4.95, 1.0);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 5.15, 1.0);
  assert_says (job, NULL, RW_TRIM_SAYS_NO_WINDOW, &advice);
}

static void
test_what_stands_well_is_left (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  read_all (job, RW_PLACE_BOARD, 4.95, 0);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 5.05, 0);
  assert_says (job, NULL, RW_TRIM_SAYS_LEAVE, &advice);
}

static void
test_a_rail_not_read_is_asked_for (void)
{
  g_autoptr (RwSession) job = start ();
  RwTrimAdvice advice;

  read_at (job, RW_PLACE_BOARD, "p5", 5.25);
  read_at (job, RW_PLACE_BOARD, "p12", 12.5);
  assert_says (job, NULL, RW_TRIM_SAYS_READ, &advice);
  g_assert_cmpuint (advice.rail, ==, 2);
  /* It is dead: no matter of the trim. */
  read_at (job, RW_PLACE_BOARD, "m5", -0.02);
  assert_says (job, NULL, RW_TRIM_SAYS_NOTHING, &advice);
}

/* --- while the screw is turned --------------------------------------------------------------------- */

/* What is said while −5 V, 1 V weak, shows @value. (transfer full) (nullable) */
static char *
warn_at (double    value,
         gboolean *danger)
{
  g_autoptr (RwSession) job = start ();

  read_all (job, RW_PLACE_BOARD, 4.95, 0.8);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 5.10, 0.8);

  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  const RwTrimSet *set = rw_bench_state_find_trim_set (state, RW_PLACE_BOARD);
  RwTrimLive live;
  char *text;

  rw_trim_live_init (&live, set, 2, value, 0.0006);
  text = rw_trim_live_warn (set, &live, danger);
  rw_trim_live_clear (&live);
  return text;
}

static void
test_chasing_minus_five (void)
{
  gboolean danger;

  /* +5 V at 5.10, where it was read: nothing moved. */
  g_autofree char *still = warn_at (-4.30, &danger);

  g_assert_null (still);

  /* 5.15: inside with its band. */
  g_autofree char *early = warn_at (-4.35, &danger);

  g_assert_null (early);

  /* 5.197: the band passes 5.2 before the value does. */
  g_autofree char *near = warn_at (-4.397, &danger);

  g_assert_nonnull (near);
  g_assert_nonnull (strstr (near, "+5 V is expected at 5.20"));
  g_assert_false (danger);

  /* −5 V has come to −4.70, and +5 V to 5.50: a board does not survive that. */
  g_autofree char *past = warn_at (-4.70, &danger);

  g_assert_nonnull (past);
  g_assert_true (danger);
}

static void
test_a_danger_goes_before_all_else (void)
{
  g_autoptr (RwSession) job = start ();

  read_all (job, RW_PLACE_BOARD, 4.95, 0.8);
  turn (job);
  read_all (job, RW_PLACE_BOARD, 5.10, 0.8);
  turn (job);

  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  RwTrimLive live;
  RwSentenceLive now = { "m5", rw_bench_state_find_trim_set (state, RW_PLACE_BOARD), &live };
  gboolean danger;

  rw_trim_live_init (&live, now.set, 2, -4.75, 0.0006);

  g_autofree char *sentence = rw_sentence_new (state, &now, &danger);

  rw_trim_live_clear (&live);
  g_assert_true (danger);
  g_assert_true (g_str_has_prefix (sentence, "Stop turning"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trim-advice/down by the right amount, with what follows", test_down_by_the_right_amount);
  g_test_add_func ("/trim-advice/in volts of the rail the meter is on", test_in_volts_of_the_rail_the_meter_is_on);
  g_test_add_func ("/trim-advice/up asks for the terminals first", test_up_asks_for_the_terminals_first);
  g_test_add_func ("/trim-advice/a drop is not trimmed away", test_a_drop_is_not_trimmed_away);
  g_test_add_func ("/trim-advice/a ground drop counts too", test_a_ground_drop_counts_too);
  g_test_add_func ("/trim-advice/not with the board out", test_not_with_the_board_out);
  g_test_add_func ("/trim-advice/the board rules, not the terminals", test_the_board_rules);
  g_test_add_func ("/trim-advice/no window", test_no_window);
  g_test_add_func ("/trim-advice/what stands well is left", test_what_stands_well_is_left);
  g_test_add_func ("/trim-advice/a rail not read is asked for, a dead one is no matter of the trim",
                   test_a_rail_not_read_is_asked_for);
  g_test_add_func ("/trim-advice/chasing −5 V: +5 V is warned of before it passes", test_chasing_minus_five);
  g_test_add_func ("/trim-advice/a danger goes before all else", test_a_danger_goes_before_all_else);
  return g_test_run ();
}
