/* test-foretell.c: what is foretold of a check is what comes when it is taken.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "job-fixtures.h"
#include "rw-foretell.h"

static RwAdvice *
advise (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_advice_new (knowledge, state, NULL);
}

static RwSession *
start (void)
{
  RwSession *job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  return job;
}

/* P (outcome) = Σ P (cause) P (outcome | cause), as the small knowledge has it: "drop" is high at 0.9 for thin, else
 * at 0.05. */
static void
test_chances_are_those_of_the_knowledge (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwAdvice) advice = advise (job);
  const RwCheck *drop = rw_knowledge_find_check (rw_advice_get_knowledge (advice), "drop");
  const double thin = rw_belief_find_cause (rw_advice_get_belief (advice), "thin")->p;
  g_autoptr (GArray) list = rw_foretell (advice, drop);

  g_assert_cmpstr (rw_advice_get_check (advice)->check->id, !=, "drop");
  g_assert_cmpuint (list->len, ==, 2);

  const RwAdviceOutcome *good = &g_array_index (list, RwAdviceOutcome, 0);
  const RwAdviceOutcome *high = &g_array_index (list, RwAdviceOutcome, 1);

  g_assert_cmpfloat_with_epsilon (good->chance + high->chance, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (high->chance, 0.9 * thin + 0.05 * (1 - thin), 1e-9);
  g_assert_cmpstr (high->likely->id, ==, "thin");
  g_assert_cmpfloat_with_epsilon (high->likely_p, 0.9 * thin / high->chance, 1e-9);
}

/* Every check that can be looked at, every outcome: then it is seen, and the belief must agree. */
static void
test_it_comes_as_foretold (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwAdvice) advice = advise (job);
  const RwCheck *look = rw_knowledge_find_check (rw_advice_get_knowledge (advice), "look");
  g_autoptr (GArray) list = rw_foretell (advice, look);

  g_assert_cmpuint (list->len, ==, 2);
  for (guint i = 0; i < list->len; i++)
    {
      const RwAdviceOutcome *told = &g_array_index (list, RwAdviceOutcome, i);
      g_autoptr (RwSession) then = start ();

      fixture_finding (then, "look", told->outcome->id);

      g_autoptr (RwAdvice) after = advise (then);
      const RwCauseBelief *likeliest = rw_belief_get_cause (rw_advice_get_belief (after), 0);

      g_assert_cmpstr (told->likely->id, ==, likeliest->cause->id);
      g_assert_cmpfloat_with_epsilon (told->likely_p, likeliest->p, 1e-9);
      g_assert_cmpstr (told->next_id, !=, "look");
      g_assert_nonnull (told->next_title);
      g_assert_cmpfloat (told->expected, >, 0);
    }
}

/* Of the suggested check it says what the advice says; minutes to go then average to the advice's own. */
static void
test_the_suggestion_agrees_with_the_advice (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwAdvice) advice = advise (job);
  const RwAdviceCheck *offer = rw_advice_get_check (advice);
  g_autoptr (GArray) list = rw_foretell (advice, offer->check);
  double sum = offer->minutes;

  g_assert_cmpuint (list->len, ==, rw_advice_get_n_outcomes (advice));
  for (guint i = 0; i < list->len; i++)
    {
      const RwAdviceOutcome *told = &g_array_index (list, RwAdviceOutcome, i);

      g_assert_true (told->outcome == &offer->check->outcomes[i]);
      g_assert_cmpfloat (told->chance, ==, rw_advice_get_outcome (advice, i)->chance);
      g_assert_cmpstr (told->next_id, ==, rw_advice_get_outcome (advice, i)->next_id);
      if (told->chance > 0)
        sum += told->chance * told->expected;
    }
  g_assert_cmpfloat_with_epsilon (sum, offer->expected, 0.02 * offer->expected);
}

/* A check of other knowledge is nothing to foretell. */
static void
test_an_unknown_check (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwAdvice) advice = advise (job);
  const RwCheck stranger = { .id = g_intern_static_string ("stranger"), .n_outcomes = 2 };
  g_autoptr (GArray) list = rw_foretell (advice, &stranger);

  g_assert_cmpuint (list->len, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/foretell/chances are those of the knowledge", test_chances_are_those_of_the_knowledge);
  g_test_add_func ("/foretell/it comes as foretold", test_it_comes_as_foretold);
  g_test_add_func ("/foretell/the suggestion agrees with the advice", test_the_suggestion_agrees_with_the_advice);
  g_test_add_func ("/foretell/an unknown check", test_an_unknown_check);
  return g_test_run ();
}
