/* test-cause-words.c: how likely a cause is, in words, and that the factors multiply to the odds shown.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "job-fixtures.h"
#include "rw-cause-words.h"

static RwBelief *
believe (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwKnowledge) ours = rw_knowledge_for_profile (knowledge, rw_session_get_profile (job));

  return rw_belief_new (ours, state);
}

static RwSession *
start (void)
{
  RwSession *job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "hum", RW_SYMPTOM_ABSENT);
  fixture_finding (job, "look", "flat");
  return job;
}

static double
odds (double p)
{
  return p / (1 - p);
}

static guint
rank_of (RwBelief   *belief,
         const char *cause)
{
  for (guint i = 0; i < rw_belief_get_n_causes (belief); i++)
    if (g_str_equal (rw_belief_get_cause (belief, i)->cause->id, cause))
      return i;
  g_assert_not_reached ();
}

/* The reasons told, small ones together, are the whole way from the odds before to the odds now. */
static void
test_reasons_multiply_to_the_odds (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwBelief) belief = believe (job);

  for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
    {
      const RwCauseBelief *cause = rw_belief_get_cause (belief, rank);
      g_autoptr (GPtrArray) reasons = rw_cause_words_reasons (belief, rank);
      double product = odds (cause->prior);

      g_assert_cmpuint (reasons->len, >, 0);
      for (guint i = 0; i < reasons->len; i++)
        product *= ((const RwReason *) reasons->pdata[i])->factor;
      g_assert_cmpfloat (cause->p, >, 0);
      g_assert_cmpfloat_with_epsilon (product / odds (cause->p), 1, 1e-6);
    }
}

static void
test_the_largest_reason_comes_first (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwBelief) belief = believe (job);
  guint n_small = 0;

  for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
    {
      g_autoptr (GPtrArray) reasons = rw_cause_words_reasons (belief, rank);
      double last = HUGE_VAL;

      for (guint i = 0; i < reasons->len; i++)
        {
          const RwReason *reason = reasons->pdata[i];

          if (strstr (reason->title, "changed little") != NULL)
            {
              n_small++;
              g_assert_cmpuint (i + 1, ==, reasons->len);
              continue;
            }
          g_assert_cmpfloat (fabs (log (reason->factor)), <=, last);
          last = fabs (log (reason->factor));
          g_assert_cmpfloat (last, >=, log (RW_CAUSE_SMALL) - 1e-12);
        }
    }
  g_assert_cmpuint (n_small, >, 0); /* else nothing was shown */
}

/* Trend: the odds now by the odds before the last event. */
static void
test_the_trend_is_what_the_last_finding_did (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) before = believe (job);

  fixture_finding (job, "look", "bulged");

  g_autoptr (RwBelief) after = believe (job);

  for (guint rank = 0; rank < rw_belief_get_n_causes (after); rank++)
    {
      const RwCauseBelief *cause = rw_belief_get_cause (after, rank);
      const double was = rw_belief_find_cause (before, cause->cause->id)->p;

      g_assert_cmpfloat_with_epsilon (rw_cause_words_trend (after, rank), odds (cause->p) / odds (was), 1e-6);
    }
  g_assert_cmpfloat (rw_cause_words_trend (after, rank_of (after, "worn")), >, 2);
}

static void
test_no_trend_without_a_finding_nor_after_the_cure (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwBelief) at_first = believe (job);

  g_assert_cmpfloat (rw_cause_words_trend (at_first, 0), ==, 1);
  fixture_repair (job, "low", RW_REPAIR_FIXED);

  g_autoptr (RwBelief) fixed = believe (job);

  g_assert_cmpfloat (rw_cause_words_trend (fixed, 0), ==, 0);
}

static void
test_words_of_chances (void)
{
  g_assert_cmpstr (rw_cause_words_chance (0.9), ==, "almost certain");
  g_assert_cmpstr (rw_cause_words_chance (0.8999), ==, "likely");
  g_assert_cmpstr (rw_cause_words_chance (0.5), ==, "likely");
  g_assert_cmpstr (rw_cause_words_chance (0.4999), ==, "possible");
  g_assert_cmpstr (rw_cause_words_chance (0.1), ==, "possible");
  g_assert_cmpstr (rw_cause_words_chance (0.0999), ==, "unlikely");
}

static void
assert_words (char       *words,
              const char *wanted)
{
  g_assert_cmpstr (words, ==, wanted);
  g_free (words);
}

static void
test_factors_and_odds_in_figures (void)
{
  assert_words (rw_cause_words_factor (12.2), "×12");
  assert_words (rw_cause_words_factor (0.2), "÷5.0");
  assert_words (rw_cause_words_factor (1.05), "×1.05");
  assert_words (rw_cause_words_factor (1 / 1.04), "÷1.04");
  assert_words (rw_cause_words_trend_text (2.1), "▲ ×2.1");
  assert_words (rw_cause_words_trend_text (1 / 3.0), "▼ ÷3.0");
  assert_words (rw_cause_words_trend_text (1.05), "=");
  assert_words (rw_cause_words_odds (0.75), "3.0 : 1");
  assert_words (rw_cause_words_odds (0.04), "1 : 24");
  assert_words (rw_cause_words_odds (1), "∞ : 1");
  assert_words (rw_cause_words_odds (0), "1 : ∞");
}

/* "1 : 1.0 ×… = …, that is …": every reason stands in the line, and so does the chance shown. */
static void
test_the_product_is_spelled_out (void)
{
  g_autoptr (RwSession) job = start ();
  g_autoptr (RwBelief) belief = believe (job);
  const guint rank = rank_of (belief, "low");
  const RwCauseBelief *cause = rw_belief_get_cause (belief, rank);
  g_autoptr (GPtrArray) reasons = rw_cause_words_reasons (belief, rank);
  g_autofree char *line = rw_cause_words_product (cause, reasons);
  g_autofree char *before = rw_cause_words_odds (cause->prior);
  g_autofree char *now = rw_cause_words_odds (cause->p);
  g_autofree char *end = g_strdup_printf (" = %s, that is %.0f %%.", now, 100 * cause->p);

  g_assert_true (g_str_has_prefix (line, before));
  g_assert_true (g_str_has_suffix (line, end));
  for (guint i = 0; i < reasons->len; i++)
    {
      g_autofree char *factor = rw_cause_words_factor (((const RwReason *) reasons->pdata[i])->factor);

      g_assert_nonnull (strstr (line, factor));
    }
}

static void
test_the_own_record_is_told_when_there_is_one (void)
{
  g_autoptr (RwRecord) record = rw_record_new ();

  g_assert_null (rw_cause_words_record (NULL, "low"));
  g_assert_null (rw_cause_words_record (record, "low"));
  rw_record_set (record, "one", "low");
  assert_words (rw_cause_words_record (record, "low"), "Your own record: 1 of 1 job.");
  rw_record_set (record, "two", "thin");
  rw_record_set (record, "three", "low");
  assert_words (rw_cause_words_record (record, "low"), "Your own record: 2 of 3 jobs.");
  assert_words (rw_cause_words_record (record, "worn"), "Your own record: 0 of 3 jobs.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cause-words/reasons multiply to the odds", test_reasons_multiply_to_the_odds);
  g_test_add_func ("/cause-words/the largest reason comes first", test_the_largest_reason_comes_first);
  g_test_add_func ("/cause-words/the trend is what the last finding did", test_the_trend_is_what_the_last_finding_did);
  g_test_add_func ("/cause-words/no trend without a finding, nor after the cure",
                   test_no_trend_without_a_finding_nor_after_the_cure);
  g_test_add_func ("/cause-words/words of chances", test_words_of_chances);
  g_test_add_func ("/cause-words/factors and odds in figures", test_factors_and_odds_in_figures);
  g_test_add_func ("/cause-words/the product is spelled out", test_the_product_is_spelled_out);
  g_test_add_func ("/cause-words/the own record is told when there is one", test_the_own_record_is_told_when_there_is_one);
  return g_test_run ();
}
