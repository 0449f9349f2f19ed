/* test-belief.c: how likely each cause is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Published: the reduced car start (Jensen), two textbook tests, the burglary alarm (Russell
 * & Norvig); each joint state of several faults is one cause, and being of one part no two come together. The rest is
 * worked out by hand from small-knowledge.json, whose job has the causes low 4, thin 2, worn 1, minus 1, one at a
 * time. Pairs have tests of their own (test-belief-pairs.c).
 */
#include "config.h"

#include <math.h>

#include "job-fixtures.h"
#include "rw-belief.h"

static RwBelief *
believe (RwKnowledge *whole,
         RwSession   *job)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (whole,
                                                                rw_bench_state_get_profile (state));

  return rw_belief_new (knowledge, state);
}

static double
p_of (RwBelief   *belief,
      const char *cause)
{
  return rw_belief_find_cause (belief, cause)->p;
}

/* Beliefs of the small knowledge in the order low, thin, worn, minus, from weights that need
 * no sum. */
static void
assert_beliefs (RwSession *job,
                double     low,
                double     thin,
                double     worn,
                double     minus)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwBelief) belief = believe (whole, job);
  const double sum = low + thin + worn + minus;

  g_assert_cmpuint (rw_belief_get_n_causes (belief), ==, 4);
  g_assert_cmpfloat_with_epsilon (p_of (belief, "low"), low / sum, 1e-12);
  g_assert_cmpfloat_with_epsilon (p_of (belief, "thin"), thin / sum, 1e-12);
  g_assert_cmpfloat_with_epsilon (p_of (belief, "worn"), worn / sum, 1e-12);
  g_assert_cmpfloat_with_epsilon (p_of (belief, "minus"), minus / sum, 1e-12);
}

/* --- published ---------------------------------------------------------------------------------- */

#define CAUSE(id, prior)                                                                                  \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"area\":\"board\",\"part\":\"one\",\"prior\":" prior ",\"repair\":{\"title\":\"r\"," \
  "\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\"}}"
#define SYMPTOM(id, chance) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"group\":\"game\",\"chance\":{" chance "}}"

static void
test_car_start (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("fine", "0.9408") "," CAUSE ("plugs", "0.0392") ","
      CAUSE ("empty", "0.0192") "," CAUSE ("both", "0.0008") "],\"symptoms\":["
      SYMPTOM ("no-start", "\"default\":1,\"fine\":0.01,\"plugs\":0.99") "],"
      "\"checks\":[{\"id\":\"meter\",\"title\":\"Meter\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\","
      "\"outcomes\":[{\"id\":\"full\",\"title\":\"F\"},{\"id\":\"half\",\"title\":\"H\"},{\"id\":\"empty\",\"title\":\"E\"}],"
      "\"chance\":{\"default\":[0.001,0.001,0.998],\"fine\":[0.39,0.6,0.01],\"plugs\":[0.39,0.6,0.01]}}]}");
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "no-start", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) no_start = believe (whole, job);

  g_assert_cmpfloat_with_epsilon (p_of (no_start, "plugs") + p_of (no_start, "both"), 0.5806262,
                                  5e-8);
  g_assert_cmpfloat_with_epsilon (p_of (no_start, "empty") + p_of (no_start, "both"), 0.2931863,
                                  5e-8);
  g_assert_cmpfloat_with_epsilon (p_of (no_start, "fine"), 0.009408 / 0.068216, 1e-12);
  fixture_finding (job, "meter", "half");

  g_autoptr (RwBelief) half = believe (whole, job);

  g_assert_cmpfloat_with_epsilon (p_of (half, "plugs") + p_of (half, "both"), 0.8043496, 5e-8);
  g_assert_cmpfloat_with_epsilon (p_of (half, "empty") + p_of (half, "both"), 0.0006908558, 5e-11);
  fixture_finding (job, "meter", "empty");

  g_autoptr (RwBelief) empty = believe (whole, job);

  g_assert_cmpfloat_with_epsilon (p_of (empty, "plugs") + p_of (empty, "both"), 0.0580408, 5e-8);
  g_assert_cmpfloat_with_epsilon (p_of (empty, "empty") + p_of (empty, "both"), 0.9764135, 5e-8);
}

/* One cause among two, one sign of it. */
static void
assert_sign (const char *prior,
             const char *prior_of_rest,
             const char *chance,
             double      expected)
{
  g_autofree char *text = g_strdup_printf (
      "{\"causes\":[{\"id\":\"it\",\"title\":\"it\",\"area\":\"board\",\"part\":\"one\",\"prior\":%s,\"repair\":{\"title\":\"r\",\"minutes\":1,"
      "\"hazard\":\"none\",\"who\":\"anyone\"}},{\"id\":\"rest\",\"title\":\"rest\",\"area\":\"board\",\"part\":\"one\",\"prior\":%s,"
      "\"repair\":{\"title\":\"r\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\"}}],"
      "\"symptoms\":[{\"id\":\"sign\",\"title\":\"sign\",\"group\":\"game\",\"chance\":{%s}}]}",
      prior, prior_of_rest, chance);
  g_autoptr (RwKnowledge) whole = fixture_knowledge_from (text);
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "sign", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_cmpfloat_with_epsilon (p_of (belief, "it"), expected, 5e-8);
}

static void
test_textbook_signs (void)
{
  assert_sign ("1", "99", "\"default\":0.096,\"it\":0.8", 0.0776398);
  assert_sign ("15", "85", "\"default\":0.2,\"it\":0.8", 0.4137931);
}

/* Alarm .95 .94 .29 .001 given burglary/earthquake; John .90/.05, Mary .70/.01 given alarm.
 * Each joint state is a cause, and both calls are one sign of it. */
static void
test_burglary (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("both", "0.002") "," CAUSE ("burglary",
                                                         "0.998") "," CAUSE ("earthquake",
                                                                             "1.998") ","
      CAUSE ("neither", "997.002") "],\"symptoms\":["
      SYMPTOM ("calls",
               "\"default\":0.001,\"both\":0.598525,\"burglary\":0.59223,\"earthquake\":0.183055,"
                        "\"neither\":0.0011295") "]}");
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "calls", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_cmpfloat_with_epsilon (p_of (belief, "both") + p_of (belief, "burglary"), 0.2841718,
                                  5e-8);
}

/* --- symptoms, findings, readings --------------------------------------------------------------- */

static void
test_symptoms (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  assert_beliefs (job, 4, 2, 1, 1);
  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  assert_beliefs (job, 4 * 0.8, 2 * 0.6, 0.1, 0.1);
  fixture_symptom (job, "hum", RW_SYMPTOM_ABSENT);
  assert_beliefs (job, 4 * 0.8 * 0.8, 2 * 0.6 * 0.8, 0.1 * 0.1, 0.1 * 0.8);
  fixture_symptom (job, "resets", RW_SYMPTOM_CURED);
  assert_beliefs (job, 4 * 0.8, 2 * 0.8, 0.1, 0.8);
  fixture_symptom (job, "never-heard-of", RW_SYMPTOM_PRESENT);
  assert_beliefs (job, 4 * 0.8, 2 * 0.8, 0.1, 0.8);
}

static void
test_last_finding_counts (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_finding (job, "look", "flat");
  fixture_finding (job, "look", "bulged");
  assert_beliefs (job, 4 * 0.1, 2 * 0.1, 0.75, 0.1);
  fixture_finding (job, "look", "no-such-outcome");
  assert_beliefs (job, 4, 2, 1, 1);
}

static void
test_reading_on_the_fence (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.8, 0.01);
  assert_beliefs (job, 4 * (0.9 + 0.08), 2 * (0.7 + 0.28), 0.05 + 0.9, 0.05 + 0.9);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_cmpuint (rw_belief_get_n_evidence (belief), ==, 1);
  g_assert_true (rw_belief_get_evidence (belief, 0)->fence);
  g_assert_cmpint (rw_belief_get_evidence (belief, 0)->kind, ==, RW_EVIDENCE_READING);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  assert_beliefs (job, 4 * 0.9, 2 * 0.7, 0.05, 0.05);

  g_autoptr (RwBelief) clear = believe (whole, job);

  g_assert_false (rw_belief_get_evidence (clear, 0)->fence);
}

static void
test_reading_answers_the_check_of_its_setup (void)
{
  g_autoptr (RwSession) bare = fixture_job ();
  g_autoptr (RwSession) loaded = fixture_job ();
  g_autoptr (RwSession) off = fixture_job ();

  fixture_setup (bare, RW_SAID_YES, RW_SAID_NO, RW_SAID_NO);
  fixture_reading (bare, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 4.5, 0.01);
  assert_beliefs (bare, 4 * 0.7, 2 * 0.02, 0.02, 0.02);

  fixture_setup (loaded, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  fixture_reading (loaded, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 4.5, 0.01);
  assert_beliefs (loaded, 4 * 0.95, 2 * 0.05, 0.05, 0.05);

  /* With the power off it answers nothing; nor does ripple at that place. */
  fixture_setup (off, RW_SAID_NO, RW_SAID_YES, RW_SAID_NO);
  fixture_reading (off, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 0.0, 0.01);
  fixture_reading (off, "p5", RW_PLACE_TERMINALS, RW_KIND_RIPPLE, 0.1, 0.01);
  assert_beliefs (off, 4, 2, 1, 1);
}

static void
test_setup_left_unsaid (void)
{
  const RwSetup silent = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };
  const RwSetup volts = rw_belief_complete_setup (silent, RW_PLACE_BOARD, RW_KIND_DC);
  const RwSetup ohms = rw_belief_complete_setup (silent, RW_PLACE_BOARD, RW_KIND_OHMS);
  g_autoptr (RwSession) job = fixture_job ();

  g_assert_cmpint (volts.power_on, ==, RW_SAID_YES);
  g_assert_cmpint (volts.board_fitted, ==, RW_SAID_YES);
  g_assert_cmpint (ohms.power_on, ==, RW_SAID_NO);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  assert_beliefs (job, 4 * 0.9, 2 * 0.7, 0.05, 0.05);
}

static void
test_reading_wins_over_a_click (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_finding (job, "at-board", "right");
  assert_beliefs (job, 4 * 0.08, 2 * 0.28, 0.9, 0.9);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  fixture_finding (job, "at-board", "above");
  assert_beliefs (job, 4 * 0.9, 2 * 0.7, 0.05, 0.05);
}

static void
test_overload_answers_nothing (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_overload (job, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  assert_beliefs (job, 4, 2, 1, 1);
}

/* --- what has changed since --------------------------------------------------------------------- */

static void
test_trim_outdates_readings (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);

  g_autoptr (RwBelief) before = believe (whole, job);

  g_assert_true (rw_belief_is_answered (before, "at-board"));
  fixture_trim (job);
  assert_beliefs (job, 4, 2, 1, 1);

  g_autoptr (RwBelief) after = believe (whole, job);

  g_assert_false (rw_belief_is_answered (after, "at-board"));
}

static void
test_repair_in_vain_leaves_what_was_seen (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  fixture_finding (job, "look", "bulged");
  assert_beliefs (job, 4 * 0.8 * 0.9 * 0.1, 2 * 0.6 * 0.7 * 0.1, 0.1 * 0.05 * 0.75,
                  0.1 * 0.05 * 0.1);
  fixture_repair (job, "worn", RW_REPAIR_NO_CHANGE);
  assert_beliefs (job, 4 * 0.8 * 0.9 * 0.1, 2 * 0.6 * 0.7 * 0.1, 0.1 * 0.05 * 0.75 * 0.05,
                  0.1 * 0.05 * 0.1);
}

static void
test_power_alone_outdates_nothing (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  fixture_setup (job, RW_SAID_NO, RW_SAID_NOT, RW_SAID_NOT);
  assert_beliefs (job, 4 * 0.9, 2 * 0.7, 0.05, 0.05);
}

static void
test_failed_repair_leaves_a_residual (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "low", RW_REPAIR_NO_CHANGE);
  assert_beliefs (job, 4 * 0.8 * 0.05, 2 * 0.6, 0.1, 0.1);

  /* Twice is no second proof. */
  fixture_repair (job, "low", RW_REPAIR_NO_CHANGE);
  assert_beliefs (job, 4 * 0.8 * 0.05, 2 * 0.6, 0.1, 0.1);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_true (rw_belief_find_cause (belief, "low")->tried);
  g_assert_false (rw_belief_find_cause (belief, "thin")->tried);
  g_assert_null (rw_belief_get_fixed (belief));
}

static void
test_successful_repair_is_proof (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "thin", RW_REPAIR_FIXED);
  assert_beliefs (job, 0, 1, 0, 0);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_cmpstr (rw_belief_get_fixed (belief)->id, ==, "thin");
  g_assert_cmpstr (rw_belief_get_cause (belief, 0)->cause->id, ==, "thin");
}

/* It comes back: there was a second fault, of which only what is seen now tells. */
static void
test_symptom_after_a_fix_starts_over (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "low", RW_REPAIR_FIXED);
  fixture_symptom (job, "hum", RW_SYMPTOM_PRESENT);
  assert_beliefs (job, 4 * 0.2 * 0.05, 2 * 0.2, 0.9, 0.2);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_null (rw_belief_get_fixed (belief));
}

/* --- explaining --------------------------------------------------------------------------------- */

static void
test_factors_multiply_to_the_odds (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_reading (job, "p5", RW_PLACE_BOARD, RW_KIND_DC, 4.795, 0.01);
  fixture_finding (job, "look", "bulged");
  fixture_symptom (job, "hum", RW_SYMPTOM_ABSENT);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_cmpuint (rw_belief_get_n_evidence (belief), ==, 4);
  for (guint rank = 0; rank < 4; rank++)
    {
      const RwCauseBelief *cause = rw_belief_get_cause (belief, rank);
      double odds = cause->prior / (1 - cause->prior);

      for (guint e = 0; e < 4; e++)
        odds *= rw_belief_get_factor (belief, rank, e);
      g_assert_cmpfloat_with_epsilon (odds / (cause->p / (1 - cause->p)), 1, 1e-12);
    }

  /* By hand: P (resets | low) against the mean of the rest. */
  const double rest = (2 * 0.6 + 0.1 + 0.1) / 4;

  g_assert_cmpstr (rw_belief_get_cause (belief, 0)->cause->id, ==, "low");
  g_assert_cmpfloat_with_epsilon (rw_belief_get_factor (belief, 0, 0), 0.8 / rest, 1e-12);
}

static void
test_causes_are_ranked (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "hum", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (whole, job);
  double sum = 0;

  for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
    {
      const RwCauseBelief *cause = rw_belief_get_cause (belief, rank);

      sum += cause->p;
      g_assert_cmpfloat (cause->p, ==, rw_belief_get_p (belief, cause->index));
      if (rank > 0)
        g_assert_cmpfloat (cause->p, <=, rw_belief_get_cause (belief, rank - 1)->p);
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-12);
}

/* A symptom that no cause listed can show. */
static void
test_impossible_is_marked_not_swallowed (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "1") "," CAUSE ("b", "3") "],\"symptoms\":["
      SYMPTOM ("never", "\"default\":0") "," SYMPTOM ("likely", "\"default\":0.1,\"a\":0.9") "]}");
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "never", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "likely", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_true (rw_belief_get_evidence (belief, 0)->strange);
  g_assert_false (rw_belief_get_evidence (belief, 1)->strange);
  g_assert_cmpfloat_with_epsilon (p_of (belief, "a"), 0.9 / (0.9 + 0.3), 1e-12);
}

/* log2 of P(e1) P(e2) / P(e1, e2), by hand. */
static void
test_conflict (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "1") "," CAUSE ("b", "1") "],\"symptoms\":["
      SYMPTOM ("x", "\"default\":0.1,\"a\":0.9") "," SYMPTOM ("y",
                                                              "\"default\":0.1,\"b\":0.9") "]}");
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (whole, job);

  g_assert_cmpfloat_with_epsilon (rw_belief_get_conflict (belief), log2 (0.5 * 0.5 / 0.09), 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/belief/the car that will not start", test_car_start);
  g_test_add_func ("/belief/two textbook signs", test_textbook_signs);
  g_test_add_func ("/belief/the burglary", test_burglary);
  g_test_add_func ("/belief/symptoms present, absent, cured", test_symptoms);
  g_test_add_func ("/belief/the last finding counts", test_last_finding_counts);
  g_test_add_func ("/belief/a reading on the fence counts as both", test_reading_on_the_fence);
  g_test_add_func ("/belief/a reading answers the check of its setup",
                   test_reading_answers_the_check_of_its_setup);
  g_test_add_func ("/belief/a setup left unsaid is filled in", test_setup_left_unsaid);
  g_test_add_func ("/belief/a reading wins over a click", test_reading_wins_over_a_click);
  g_test_add_func ("/belief/an overload answers nothing", test_overload_answers_nothing);
  g_test_add_func ("/belief/a trim outdates readings", test_trim_outdates_readings);
  g_test_add_func ("/belief/a repair in vain leaves what was seen", test_repair_in_vain_leaves_what_was_seen);
  g_test_add_func ("/belief/power alone outdates nothing", test_power_alone_outdates_nothing);
  g_test_add_func ("/belief/a failed repair leaves a residual",
                   test_failed_repair_leaves_a_residual);
  g_test_add_func ("/belief/a successful repair is proof", test_successful_repair_is_proof);
  g_test_add_func ("/belief/a symptom after a fix starts over",
                   test_symptom_after_a_fix_starts_over);
  g_test_add_func ("/belief/factors multiply to the odds", test_factors_multiply_to_the_odds);
  g_test_add_func ("/belief/causes are ranked", test_causes_are_ranked);
  g_test_add_func ("/belief/the impossible is marked, not swallowed",
                   test_impossible_is_marked_not_swallowed);
  g_test_add_func ("/belief/things that do not fit one cause show", test_conflict);
  return g_test_run ();
}
