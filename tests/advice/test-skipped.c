/* test-skipped.c: checks that were set aside.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "job-fixtures.h"
#include "rw-advice.h"
#include "rw-skipped.h"

static GHashTable *
gather (RwSession *job)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_skipped_gather (state);
}

static RwAdvice *
advise (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (GHashTable) skipped = rw_skipped_gather (state);

  return rw_advice_new (knowledge, state, skipped);
}

static gboolean
is_offered (const RwAdvice *advice,
            const char     *check)
{
  for (guint i = 0; i < rw_advice_get_n_checks (advice); i++)
    if (g_str_equal (rw_advice_get_ranked (advice, i)->check->id, check))
      return TRUE;
  return FALSE;
}

static void
test_only_what_was_set_aside (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_finding (job, "look", "flat");
  fixture_finding (job, "drop", RW_SKIPPED_OUTCOME);
  fixture_finding (job, "inside", RW_SKIPPED_OUTCOME);

  g_autoptr (GHashTable) set = gather (job);

  g_assert_cmpuint (g_hash_table_size (set), ==, 2);
  g_assert_true (g_hash_table_contains (set, "drop"));
  g_assert_true (g_hash_table_contains (set, "inside"));
}

static void
test_an_answer_ends_it (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_finding (job, "look", RW_SKIPPED_OUTCOME);
  fixture_finding (job, "look", "bulged");

  g_autoptr (GHashTable) set = gather (job);

  g_assert_cmpuint (g_hash_table_size (set), ==, 0);
}

static void
test_undo_brings_it_back (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_finding (job, "look", RW_SKIPPED_OUTCOME);

  RwEvent back = rw_event_make_retract (rw_session_get_end (job) + 1, rw_session_get_undo (job));

  rw_session_add (job, &back);

  g_autoptr (GHashTable) set = gather (job);
  g_autoptr (RwAdvice) advice = advise (job);

  g_assert_cmpuint (g_hash_table_size (set), ==, 0);
  g_assert_true (is_offered (advice, "look"));
}

/* The suggested check goes, the others stay, and no cause is more or less likely for it. */
static void
test_it_is_not_asked_and_tells_nothing (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);

  g_autoptr (RwAdvice) before = advise (job);

  g_assert_cmpint (rw_advice_get_kind (before), ==, RW_ADVICE_CHECK);

  const char *check = rw_advice_get_check (before)->check->id;

  fixture_finding (job, check, RW_SKIPPED_OUTCOME);

  g_autoptr (RwAdvice) after = advise (job);
  RwBelief *was = rw_advice_get_belief (before), *is = rw_advice_get_belief (after);

  g_assert_true (is_offered (before, check));
  g_assert_false (is_offered (after, check));
  g_assert_cmpuint (rw_advice_get_n_checks (after) + 1, ==, rw_advice_get_n_checks (before));
  g_assert_cmpfloat (rw_advice_get_expected (after), >=, rw_advice_get_expected (before) - 1e-9);
  g_assert_cmpuint (rw_belief_get_n_causes (is), ==, rw_belief_get_n_causes (was));
  for (guint i = 0; i < rw_belief_get_n_causes (was); i++)
    g_assert_cmpfloat_with_epsilon (rw_belief_get_cause (is, i)->p, rw_belief_get_cause (was, i)->p, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/skipped/only what was set aside", test_only_what_was_set_aside);
  g_test_add_func ("/skipped/an answer after all ends it", test_an_answer_ends_it);
  g_test_add_func ("/skipped/undo brings the check back", test_undo_brings_it_back);
  g_test_add_func ("/skipped/it is not asked again and tells nothing", test_it_is_not_asked_and_tells_nothing);
  return g_test_run ();
}
