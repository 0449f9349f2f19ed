/* test-belief-other.c: the cause that stands for all that are not listed, and saying that nothing known fits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "job-fixtures.h"
#include "rw-belief.h"

#define CAUSE(id, keys) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"area\":\"board\"," keys ",\"repair\":{\"title\":\"r\",\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}"
#define SIGN(id, chance) "{\"id\":\"" id "\",\"title\":\"" id "\",\"group\":\"game\",\"chance\":{" chance "}}"
#define LOOK(id, chance) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\"," \
  "\"outcomes\":[{\"id\":\"p\",\"title\":\"p\"},{\"id\":\"q\",\"title\":\"q\"},{\"id\":\"r\",\"title\":\"r\"}]," \
  "\"chance\":{" chance "}}"

/* a 3, b 1, other 1; a and b can come together. Rows of "other" are there to be passed over. */
static const char text[] =
    "{\"causes\":[" CAUSE ("a", "\"prior\":3") "," CAUSE ("b", "\"prior\":1") "," CAUSE ("other", "\"prior\":1,\"broad\":true")
    "],\"symptoms\":[" SIGN ("x", "\"default\":0.2,\"a\":0.8,\"other\":0.99") "," SIGN ("y", "\"default\":0.1,\"b\":0.9") "],"
    "\"checks\":[" LOOK ("look", "\"default\":[0.6,0.3,0.1],\"a\":[0.9,0.05,0.05],\"other\":[0,0,1]") ","
    LOOK ("again", "\"default\":[0.9,0.05,0.05]") "]}";

static RwBelief *
believe (RwKnowledge *knowledge,
         RwSession   *job)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_belief_new (knowledge, state);
}

/* Prior-weighted mean of a, b and both (0.15 · 0.6 · 0.2 = 0.018 against 0.6 and 0.2), and a twentieth spread evenly. */
static double
mean_row (double a,
          double b,
          double both,
          double flat)
{
  return 0.95 * (0.6 * a + 0.2 * b + 0.018 * both) / 0.818 + 0.05 * flat;
}

static void
test_shows_what_is_usual (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (text);
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (knowledge, job);

  /* b says nothing of x, so both show it as a does. */
  const double other = 0.2 * mean_row (0.8, 0.2, 0.8, 0.5);
  const double listed = 0.6 * 0.8 + 0.2 * 0.2 + 0.018 * 0.8;

  g_assert_cmpfloat_with_epsilon (rw_belief_get_other (belief), other / (other + listed), 1e-12);
  fixture_finding (job, "look", "r");

  g_autoptr (RwBelief) looked = believe (knowledge, job);
  const double more = other * mean_row (0.05, 0.1, 0.05, 1 / 3.0);
  const double rest = 0.6 * 0.8 * 0.05 + 0.2 * 0.2 * 0.1 + 0.018 * 0.8 * 0.05;

  g_assert_cmpfloat_with_epsilon (rw_belief_get_other (looked), more / (more + rest), 1e-12);
}

static void
test_rows_for_the_plan_are_the_same (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (text);
  g_autoptr (RwHypotheses) all = rw_hypotheses_new (knowledge, RW_SECOND_FAULT);
  const guint wanted[] = { 2, 0, 3 };
  const RwChanceTable *table = &rw_knowledge_find_check (knowledge, "look")->chance;
  double rows[9], likelihood[4], sum = 0;

  rw_hypotheses_fill_rows (all, table, wanted, 3, rows);
  for (guint o = 0; o < 3; o++)
    {
      double weights[3] = { 0 };

      weights[o] = 1;
      rw_hypotheses_fill (all, table, weights, likelihood);
      for (guint k = 0; k < 3; k++)
        g_assert_cmpfloat_with_epsilon (rows[3 * k + o], likelihood[wanted[k]], 1e-15);
      sum += rows[o];
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-12);
}

/* Ten causes, each with a sign of its own: one sign fits one, signs of three fit none, and no two. */
static void
test_grows_when_nothing_fits (void)
{
  g_autoptr (GString) source = g_string_new ("{\"causes\":[" CAUSE ("other", "\"prior\":0.3,\"broad\":true"));
  const char *signs = "";
  g_autoptr (RwSession) job = fixture_job ();
  double before = 0;

  for (guint i = 0; i < 10; i++)
    g_string_append_printf (source, ",{\"id\":\"c%u\",\"title\":\"c\",\"area\":\"board\",\"part\":\"one\",\"prior\":1,\"repair\":"
                                    "{\"title\":\"r\",\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}", i);
  g_string_append (source, "],\"symptoms\":[");
  for (guint i = 0; i < 10; i++, signs = ",")
    g_string_append_printf (source, "%s{\"id\":\"s%u\",\"title\":\"s\",\"group\":\"game\",\"chance\":{\"default\":0.02,\"c%u\":0.8}}",
                            signs, i, i);
  g_string_append (source, "]}");

  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (source->str);

  for (guint k = 0; k < 3; k++)
    {
      g_autofree char *id = g_strdup_printf ("s%u", k);

      fixture_symptom (job, id, RW_SYMPTOM_PRESENT);

      g_autoptr (RwBelief) belief = believe (knowledge, job);
      g_autofree char *words = rw_belief_dup_no_fit (belief);

      g_assert_cmpfloat (rw_belief_get_other (belief), >, k == 0 ? 0 : 1.5 * before);
      g_assert_cmpint (rw_belief_says_no_fit (belief), ==, k == 2);
      g_assert_true ((words != NULL) == (k == 2));
      g_assert_true (words == NULL || g_str_has_prefix (words, "These findings do not fit one cause I know."));
      before = rw_belief_get_other (belief);
    }

  /* The sign of the first, and none of all the others: it fits. */
  g_autoptr (RwSession) fits = fixture_job ();

  fixture_symptom (fits, "s0", RW_SYMPTOM_PRESENT);
  for (guint k = 1; k < 10; k++)
    {
      g_autofree char *id = g_strdup_printf ("s%u", k);

      fixture_symptom (fits, id, RW_SYMPTOM_ABSENT);
    }

  g_autoptr (RwBelief) sure = believe (knowledge, fits);

  g_assert_false (rw_belief_says_no_fit (sure));
  g_assert_cmpfloat (rw_belief_get_other (sure), <, 0.1);
  g_assert_cmpfloat (rw_belief_find_cause (sure, "c0")->p, >, 0.85);
}

/* With two faults known that explain them, two signs do not make "other". */
static void
test_two_known_faults_are_no_unknown_one (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (text);
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (knowledge, job);

  /* Of a (3/4) and b (1/4) alone: P (x) = 0.65, P (y) = 0.3, P (x, y) = 0.105. */
  g_assert_cmpfloat_with_epsilon (rw_belief_get_conflict (belief), log2 (0.65 * 0.3 / 0.105), 1e-12);
  g_assert_cmpuint (rw_belief_get_n_pairs (belief), ==, 1);
}

static void
test_strange_findings_do_not_fit (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "\"prior\":1,\"part\":\"one\"") "," CAUSE ("b", "\"prior\":1,\"part\":\"one\"") "],\"symptoms\":["
      SIGN ("x", "\"default\":0,\"a\":0.5") "," SIGN ("y", "\"default\":0,\"b\":0.5") "]}");
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (knowledge, job);

  g_assert_true (rw_belief_get_evidence (belief, 1)->strange);
  g_assert_true (rw_belief_says_no_fit (belief));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/belief-other/shows what is usual, by hand", test_shows_what_is_usual);
  g_test_add_func ("/belief-other/rows for the plan are the same", test_rows_for_the_plan_are_the_same);
  g_test_add_func ("/belief-other/grows when nothing fits", test_grows_when_nothing_fits);
  g_test_add_func ("/belief-other/two known faults are a pair", test_two_known_faults_are_no_unknown_one);
  g_test_add_func ("/belief-other/strange findings do not fit", test_strange_findings_do_not_fit);
  return g_test_run ();
}
