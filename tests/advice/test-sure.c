/* test-sure.c: when to repair rather than measure on, what it all costs, and two faults in the plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "job-fixtures.h"
#include "rw-advice.h"

#define CAUSE(id, keys, minutes) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"area\":\"board\"," keys ",\"repair\":{\"title\":\"Mend " id "\",\"minutes\":" minutes \
  ",\"hazard\":\"none\",\"who\":\"anyone\"}}"
#define CHECK(id, minutes, chance) \
  "{\"id\":\"" id "\",\"title\":\"Look at " id "\",\"minutes\":" minutes ",\"hazard\":\"none\",\"who\":\"anyone\"," \
  "\"outcomes\":[{\"id\":\"p\",\"title\":\"p\"},{\"id\":\"q\",\"title\":\"q\"}],\"chance\":{" chance "}}"

static RwAdvice *
advise (const char *text,
        RwSession  *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (text);
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_advice_new (knowledge, state, NULL);
}

static void
test_minutes_of_proof (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, NULL);
  RwKnowledge *known = rw_advice_get_knowledge (advice);
  double proof = 0;

  g_assert_cmpfloat (rw_advice_get_repair_minutes (advice, rw_knowledge_find_cause (known, "low"), &proof), ==, 18);
  g_assert_cmpfloat (proof, ==, 3);
  g_assert_cmpfloat (rw_advice_get_repair_minutes (advice, rw_knowledge_find_cause (known, "worn"), NULL), ==, 43);
}

/* 0.75 and 0.25, repairs of 27 and 3 minutes, readings of half a minute that are right in 7 of 10 cases: no single one
 * changes which repair comes first, two that agree do. (Repairing now takes 37.5 minutes.) */
#define WEAK(id) CHECK (id, "0.5", "\"default\":[0.3,0.7],\"a\":[0.7,0.3]")
static const char trap[] = "{\"causes\":[" CAUSE ("a", "\"part\":\"one\",\"prior\":3", "27") ","
    CAUSE ("b", "\"part\":\"one\",\"prior\":1", "27") "],\"checks\":[" WEAK ("1") "," WEAK ("2") "," WEAK ("3") ","
    WEAK ("4") "," WEAK ("5") "," WEAK ("6") "]}";

static void
test_two_readings_together (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwAdvice) advice = advise (trap, job);
  g_autofree char *words = rw_advice_dup_reach (advice);
  g_autofree char *sure = rw_advice_dup_sure (advice);

  g_assert_cmpint (rw_advice_get_kind (advice), ==, RW_ADVICE_CHECK);
  g_assert_cmpint (rw_advice_get_reach (advice), ==, RW_ADVICE_TWO_READINGS);
  g_assert_nonnull (strstr (words, rw_advice_get_check (advice)->check->title));
  g_assert_false (rw_advice_is_sure_enough (advice));
  g_assert_cmpfloat_with_epsilon (rw_advice_get_repairs_only (advice), 37.5, 1e-12);
  g_assert_cmpfloat (rw_advice_get_check_first (advice), ==, rw_advice_get_expected (advice));
  g_assert_cmpfloat (rw_advice_get_check_first (advice), <=, 35.53);
  g_assert_cmpfloat (rw_advice_get_repair_first (advice), >, rw_advice_get_check_first (advice));
  g_assert_true (g_str_has_prefix (sure, "Not sure enough"));
}

static void
test_one_reading (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwAdvice) advice = advise ("{\"causes\":[" CAUSE ("a", "\"part\":\"one\",\"prior\":1", "30") ","
                                        CAUSE ("b", "\"part\":\"one\",\"prior\":1", "30") "],\"checks\":["
                                        CHECK ("it", "1", "\"default\":[0.1,0.9],\"a\":[0.9,0.1]") "]}", job);

  g_assert_cmpint (rw_advice_get_reach (advice), ==, RW_ADVICE_ONE_READING);
  g_assert_null (rw_advice_dup_reach (advice));
}

/* Nine to one: repairing a takes 30 minutes and then, in one case of ten, b's 30; looking first costs its own 8. */
static void
test_sure_enough (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwAdvice) advice = advise ("{\"causes\":[" CAUSE ("a", "\"part\":\"one\",\"prior\":9", "27") ","
                                        CAUSE ("b", "\"part\":\"one\",\"prior\":1", "27") "],\"checks\":["
                                        CHECK ("it", "8", "\"default\":[0.1,0.9],\"a\":[0.9,0.1]") "]}", job);
  g_autofree char *words = rw_advice_dup_sure (advice);
  g_autofree char *reach = rw_advice_dup_reach (advice);

  g_assert_true (rw_advice_is_sure_enough (advice));
  g_assert_cmpstr (rw_advice_get_repair (advice)->id, ==, "a");
  g_assert_cmpfloat_with_epsilon (rw_advice_get_repair_first (advice), 33, 1e-9);

  /* Whatever it shows, a comes first: so it is the same, and 8 minutes later. */
  g_assert_cmpfloat_with_epsilon (rw_advice_get_check_first (advice), 41, 1e-9);
  g_assert_cmpint (rw_advice_get_reach (advice), ==, RW_ADVICE_NO_READING);
  g_assert_true (g_str_has_prefix (words, "Sure enough to repair"));
  g_assert_nonnull (strstr (words, "33"));
  g_assert_nonnull (strstr (words, "41"));
  g_assert_nonnull (reach);
}

static void
test_no_check_left (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (RwAdvice) advice = advise ("{\"causes\":[" CAUSE ("a", "\"prior\":1", "27") "]}", job);
  g_autofree char *words = rw_advice_dup_sure (advice);

  g_assert_true (isnan (rw_advice_get_check_first (advice)));
  g_assert_nonnull (strstr (words, "Mend a"));
}

/* --- two faults --------------------------------------------------------------------------------- */

#define SIGN(id, chance) "{\"id\":\"" id "\",\"title\":\"" id "\",\"group\":\"game\",\"chance\":{" chance "}}"
static const char two[] = "{\"causes\":[" CAUSE ("a", "\"prior\":1", "50") "," CAUSE ("b", "\"prior\":1", "5") ","
    CAUSE ("c", "\"prior\":1", "20") "],\"symptoms\":[" SIGN ("x", "\"default\":0.005,\"a\":0.95") ","
    SIGN ("y", "\"default\":0.005,\"b\":0.95") "],\"checks\":["
    CHECK ("it", "2", "\"default\":[0.5,0.5],\"a\":[0.9,0.1],\"b\":[0.8,0.2]") "]}";

static void
test_pairs_stand_behind_the_causes (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);

  g_autoptr (RwAdvice) advice = advise (two, job);
  RwBelief *belief = rw_advice_get_belief (advice);
  const RwProblem *problem = rw_advice_get_problem (advice);
  const RwCause *then = NULL;
  double mass = 0;

  g_assert_cmpuint (rw_belief_get_n_pairs (belief), ==, 3);
  g_assert_cmpuint (problem->n_causes, ==, 6);
  for (guint i = 0; i < 6; i++)
    mass += problem->causes[i].weight;
  g_assert_cmpfloat_with_epsilon (mass, 1, 1e-12);

  /* The likeliest is both; b is the quicker, so it comes first. 53 + 8 minutes. */
  g_assert_cmpfloat (rw_belief_get_pair (belief, 0)->p, >, 0.5);
  g_assert_cmpfloat (problem->causes[3].repair_minutes, ==, 61);
  g_assert_cmpstr (rw_advice_get_cause (advice, 3, &then)->id, ==, "b");
  g_assert_cmpstr (then->id, ==, "a");
  g_assert_cmpstr (rw_advice_get_cause (advice, 2, &then)->id, ==, "c");
  g_assert_null (then);

  /* Both deviate: 0.9 · 0.8 / 0.5 against 0.1 · 0.2 / 0.5. */
  g_assert_cmpfloat_with_epsilon (rw_problem_chance (problem, 0, 0, 3), 0.72 / 0.74, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_problem_chance (problem, 0, 1, 3), 0.02 / 0.74, 1e-12);
}

static void
test_a_pair_is_repaired_first_part_first (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);
  fixture_finding (job, "it", "p");

  g_autoptr (RwAdvice) advice = advise (two, job);
  double p = 0;

  g_assert_cmpint (rw_advice_get_kind (advice), ==, RW_ADVICE_REPAIR);
  g_assert_cmpstr (rw_advice_get_repair (advice)->id, ==, "b");
  if (rw_advice_get_repair_index (advice) >= 3)
    g_assert_nonnull (rw_advice_get_repair_then (advice));
  g_assert_cmpstr (rw_advice_get_likely (advice, rw_advice_get_state (advice), &p)->id, ==, "a");
  g_assert_cmpfloat (p, >, 0.5);

  /* b was not it alone: a is left. */
  fixture_repair (job, "b", RW_REPAIR_NO_CHANGE);
  fixture_symptom (job, "y", RW_SYMPTOM_CURED);

  g_autoptr (RwAdvice) after = advise (two, job);

  g_assert_cmpstr (rw_advice_get_repair (after)->id, ==, "a");
}

/* 28 pairs, all alike: twelve are planned with, the others count to the cause that is repaired first. */
static void
test_pairs_left_out_are_not_lost (void)
{
  g_autoptr (GString) text = g_string_new ("{\"causes\":[");
  g_autoptr (RwSession) job = fixture_job ();
  double mass = 0;

  for (guint i = 0; i < 8; i++)
    g_string_append_printf (text, "%s{\"id\":\"c%u\",\"title\":\"c\",\"area\":\"board\",\"prior\":1,\"repair\":{\"title\":\"r\","
                                  "\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}", i > 0 ? "," : "", i);
  g_string_append (text, "]}");

  g_autoptr (RwAdvice) advice = advise (text->str, job);
  const RwProblem *problem = rw_advice_get_problem (advice);

  g_assert_cmpuint (problem->n_causes, ==, 8 + 12);
  for (guint i = 0; i < problem->n_causes; i++)
    mass += problem->causes[i].weight;
  g_assert_cmpfloat_with_epsilon (mass, 1, 1e-12);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sure/a repair costs its proof too", test_minutes_of_proof);
  g_test_add_func ("/sure/two readings together", test_two_readings_together);
  g_test_add_func ("/sure/one reading by itself", test_one_reading);
  g_test_add_func ("/sure/sure enough", test_sure_enough);
  g_test_add_func ("/sure/no check left", test_no_check_left);
  g_test_add_func ("/sure/pairs stand behind the causes", test_pairs_stand_behind_the_causes);
  g_test_add_func ("/sure/of a pair the first part comes first", test_a_pair_is_repaired_first_part_first);
  g_test_add_func ("/sure/pairs left out are not lost", test_pairs_left_out_are_not_lost);
  return g_test_run ();
}
