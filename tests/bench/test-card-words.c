/* test-card-words.c: what the card of the next check says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "job-fixtures.h"
#include "rw-card-words.h"

static void
assert_words (char       *words,
              const char *wanted)
{
  g_assert_cmpstr (words, ==, wanted);
  g_free (words);
}

static RwAdvice *
advise (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_advice_new (knowledge, state, NULL);
}

static void
test_minutes_have_a_tenth_only_where_it_matters (void)
{
  assert_words (rw_card_words_minutes (3), "3 min");
  assert_words (rw_card_words_minutes (0.5), "0.5 min");
  assert_words (rw_card_words_minutes (9.96), "10 min");
  assert_words (rw_card_words_minutes (12.5), "12 min");
}

static void
test_a_sign_stands_before_what_can_hurt (void)
{
  g_autofree char *mains = rw_card_words_hazard (RW_HAZARD_NEAR_MAINS, RW_WHO_ANYONE);
  g_autofree char *low = rw_card_words_hazard (RW_HAZARD_LOW_VOLTAGE, RW_WHO_ANYONE);
  g_autofree char *trained = rw_card_words_hazard (RW_HAZARD_NONE, RW_WHO_TRAINED);

  g_assert_true (g_str_has_prefix (mains, "⚠ "));
  g_assert_nonnull (strstr (mains, rw_hazard_get_label (RW_HAZARD_NEAR_MAINS)));
  g_assert_null (strstr (low, "⚠"));
  g_assert_true (g_str_has_prefix (trained, "⚠ "));
  g_assert_nonnull (strstr (trained, rw_who_get_label (RW_WHO_TRAINED)));
}

/* --- the setup ------------------------------------------------------------------------------------ */

static void
test_only_what_is_not_so_yet_is_missing (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  const RwCheck *bare = rw_knowledge_find_check (knowledge, "bare"); /* power on, board out */
  const RwSetup running = { RW_SAID_YES, RW_SAID_YES, RW_SAID_NO }, ready = { RW_SAID_YES, RW_SAID_NO, RW_SAID_NO };
  const RwSetup unknown = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };
  const RwSetup pull = rw_card_words_missing (bare, running);
  const RwSetup none = rw_card_words_missing (bare, ready);
  const RwSetup all = rw_card_words_missing (bare, unknown);

  g_assert_cmpint (pull.power_on, ==, RW_SAID_NOT);
  g_assert_cmpint (pull.board_fitted, ==, RW_SAID_NO);
  assert_words (rw_card_words_change (&pull), "power down, pull the board");
  g_assert_null (rw_card_words_change (&none));
  assert_words (rw_card_words_change (&all), "power down, pull the board, power up");
}

/* The board is never moved under power, and nothing is told of a way from where nobody knows. */
static void
test_the_way_there_begins_with_switching_off (void)
{
  const RwSetup pull = { RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT }, fit = { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT };
  const RwSetup running = { RW_SAID_YES, RW_SAID_YES, RW_SAID_YES }, out = { RW_SAID_NO, RW_SAID_NO, RW_SAID_NO };
  const RwSetup unknown = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };
  g_autofree char *off = rw_card_words_way_there (&pull, &running);
  g_autofree char *on = rw_card_words_way_there (&fit, &out);

  g_assert_true (g_str_has_prefix (off, "First switch off"));
  g_assert_true (g_str_has_prefix (on, "First switch off"));
  g_assert_true (g_str_has_suffix (on, "Then switch on."));
  g_assert_null (rw_card_words_way_there (&pull, &unknown));
}

static void
test_minutes_of_the_setup_are_told_apart (void)
{
  const RwAdviceCheck offer = { .minutes = 6, .setup_minutes = 3.5 };
  const RwSetup pull = { RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT }, none = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

  assert_words (rw_card_words_time (&offer, &pull), "6 min: power down, pull the board 3.5 min, the check itself 2.5 min");
  assert_words (rw_card_words_time (&offer, &none), "6 min");
}

/* --- why ------------------------------------------------------------------------------------------ */

static void
test_another_way_says_what_it_costs_more (void)
{
  assert_words (rw_card_words_more (13, 10), "+3.0 min expected");
  assert_words (rw_card_words_more (70.4, 50), "+20 min expected");
  assert_words (rw_card_words_more (8, 10), "−2.0 min expected");
  assert_words (rw_card_words_more (10.04, 10), "equally good");
  assert_words (rw_card_words_more (10.06, 10), "+0.1 min expected");
}

/* The sentences are the advice's own: both ways with their minutes, and what no single reading can do. */
static void
test_sure_enough_comes_from_the_advice (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);

  g_autoptr (RwAdvice) open = advise (job);
  g_autofree char *words = rw_card_words_sure (open);
  g_autofree char *sure = rw_advice_dup_sure (open);

  g_assert_true (g_str_has_prefix (words, sure));
  g_assert_true (g_str_has_prefix (words, rw_advice_is_sure_enough (open) ? "Sure enough" : "Not sure enough"));

  fixture_finding (job, "drop", "high");
  fixture_finding (job, "look", "flat");
  fixture_reading (job, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.05, 0.005);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.60, 0.005);

  g_autoptr (RwAdvice) closed = advise (job);
  g_autofree char *now = rw_card_words_sure (closed);
  g_autofree char *reach = rw_advice_dup_reach (closed);

  g_assert_cmpint (rw_advice_get_kind (closed), ==, RW_ADVICE_REPAIR);
  g_assert_cmpint (rw_advice_get_reach (closed), ==, RW_ADVICE_NO_READING);
  g_assert_true (g_str_has_suffix (now, reach));

  fixture_repair (job, "thin", RW_REPAIR_FIXED);

  g_autoptr (RwAdvice) done = advise (job);

  g_assert_null (rw_card_words_sure (done));
}

static void
test_why_names_the_dearest_mix_up_of_the_suggestion_only (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);

  g_autoptr (RwAdvice) advice = advise (job);
  const RwAdviceCheck *best = rw_advice_get_check (advice);
  const RwAdviceCheck *other = rw_advice_get_ranked (advice, 1);
  const RwAdvicePair *pair = rw_advice_get_pair (advice, 0);
  g_autofree char *why = rw_card_words_why (advice, best);
  g_autofree char *plain = rw_card_words_why (advice, other);

  g_assert_nonnull (strstr (why, pair->a->title));
  g_assert_nonnull (strstr (why, pair->b->title));
  g_assert_cmpstr (plain, ==, other->check->why);
}

/* --- repairs -------------------------------------------------------------------------------------- */

/* The caution is the first step of the data: it stands above, and is not said twice. */
static void
test_a_repair_beside_mains_says_so_before_its_steps (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  const RwCause *low = rw_knowledge_find_cause (knowledge, "low");
  const RwCause *thin = rw_knowledge_find_cause (knowledge, "thin");
  const RwCause *worn = rw_knowledge_find_cause (knowledge, "worn");

  assert_words (rw_card_words_repair_safety (low), "Cover the mains screws.");
  assert_words (rw_card_words_repair_steps (low), "1. Turn.");
  g_assert_null (rw_card_words_repair_safety (thin));
  assert_words (rw_card_words_repair_safety (worn), "Local rules decide who may do it.");
}

static void
test_steps_are_numbered (void)
{
  char *steps[] = { (char *) "Black on ground.", (char *) "Red on +5 V.", NULL };

  assert_words (rw_card_words_steps (steps), "1. Black on ground.\n2. Red on +5 V.");
  assert_words (rw_card_words_steps (NULL), "");
}

static void
test_a_repair_says_what_it_takes_and_what_to_check_again (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwAdvice) advice = advise (job);
  RwKnowledge *knowledge = rw_advice_get_knowledge (advice);
  const RwCause *low = rw_knowledge_find_cause (knowledge, "low");

  assert_words (rw_card_words_repair_facts (advice, low), "15 min, and 3 min to prove it · no parts needed");
  assert_words (rw_card_words_recheck (knowledge, low), "Check again afterwards: +5 V at the board.");
  g_assert_null (rw_card_words_recheck (knowledge, rw_knowledge_find_cause (knowledge, "thin")));
  assert_words (rw_card_words_was (low), "It was: Trim low. What cured it: Turn the trim.");
}

static void
test_costs_out_of_range_do_no_harm (void)
{
  g_assert_cmpstr (rw_card_words_cost (-1), ==, "no parts needed");
  g_assert_cmpstr (rw_card_words_cost (4), ==, "dear");
  g_assert_cmpstr (rw_card_words_cost (99), ==, "dear");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/card-words/minutes have a tenth only where it matters",
                   test_minutes_have_a_tenth_only_where_it_matters);
  g_test_add_func ("/card-words/a sign stands before what can hurt", test_a_sign_stands_before_what_can_hurt);
  g_test_add_func ("/card-words/only what is not so yet is missing", test_only_what_is_not_so_yet_is_missing);
  g_test_add_func ("/card-words/the way there begins with switching off", test_the_way_there_begins_with_switching_off);
  g_test_add_func ("/card-words/minutes of the setup are told apart", test_minutes_of_the_setup_are_told_apart);
  g_test_add_func ("/card-words/another way says what it costs more", test_another_way_says_what_it_costs_more);
  g_test_add_func ("/card-words/sure enough comes from the advice", test_sure_enough_comes_from_the_advice);
  g_test_add_func ("/card-words/why names the dearest mix-up of the suggestion only",
                   test_why_names_the_dearest_mix_up_of_the_suggestion_only);
  g_test_add_func ("/card-words/a repair beside mains says so before its steps",
                   test_a_repair_beside_mains_says_so_before_its_steps);
  g_test_add_func ("/card-words/steps are numbered", test_steps_are_numbered);
  g_test_add_func ("/card-words/a repair says what it takes, and what to check again",
                   test_a_repair_says_what_it_takes_and_what_to_check_again);
  g_test_add_func ("/card-words/costs out of range do no harm", test_costs_out_of_range_do_no_harm);
  return g_test_run ();
}
