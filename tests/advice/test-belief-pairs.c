/* test-belief-pairs.c: two faults at once, against sums over all of them written out in the test.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything is compared with an enumeration that shares no code with the program: priors, rows of two causes, and
 * the exact posterior of random small knowledges. Published: a device with two faults (Heckerman and others treat
 * single faults only; the numbers are those of independent faults, π = 0.02, 0.05, 0.03).
 */
#include "config.h"

#include <math.h>

#include "job-fixtures.h"
#include "rw-belief.h"

#define N 5
#define MOST_OUTCOMES 4
#define MOST_CHECKS 6

static RwBelief *
believe (RwKnowledge *knowledge,
         RwSession   *job)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  return rw_belief_new (knowledge, state);
}

/* --- random knowledges -------------------------------------------------------------------------- */

typedef struct
{
  double prior[N];      /* relative */
  double often[N][N];   /* 0: does not come together */
  guint  n_checks;
  guint  n_outcomes[MOST_CHECKS]; /* 1: a symptom */
  double usual[MOST_CHECKS][MOST_OUTCOMES];
  double row[MOST_CHECKS][N][MOST_OUTCOMES];
  int    seen[MOST_CHECKS]; /* outcome; of a symptom 0: absent, 1: present */
} Model;

static void
random_row (GRand  *rand,
            guint   n,
            double *row)
{
  double sum = 0;

  for (guint o = 0; o < n; o++)
    sum += row[o] = n > 1 && g_rand_int_range (rand, 0, 6) == 0 ? 0 : g_rand_double_range (rand, 0.02, 1);
  if (!(sum > 0))
    sum = row[0] = 1;
  for (guint o = 0; o < n && n > 1; o++)
    row[o] /= sum;
  if (n == 1)
    row[0] = g_rand_double_range (rand, 0.02, 0.98);
}

static void
random_model (GRand *rand,
              Model *m)
{
  for (guint i = 0; i < N; i++)
    m->prior[i] = g_rand_double_range (rand, 0.2, 5);
  for (guint i = 0; i < N; i++)
    for (guint j = 0; j < i; j++)
      m->often[i][j] = m->often[j][i] = g_rand_int_range (rand, 0, 4) == 0 ? 3 : 1;
  m->often[0][1] = m->often[1][0] = 0; /* of one part */
  m->n_checks = (guint) g_rand_int_range (rand, 1, MOST_CHECKS + 1);
  for (guint k = 0; k < m->n_checks; k++)
    {
      m->n_outcomes[k] = (guint) g_rand_int_range (rand, 1, MOST_OUTCOMES + 1);
      random_row (rand, m->n_outcomes[k], m->usual[k]);
      for (guint i = 0; i < N; i++)
        random_row (rand, m->n_outcomes[k], m->row[k][i]);
      m->seen[k] = g_rand_int_range (rand, 0, (int) MAX (2, m->n_outcomes[k]));
    }
}

static void
append_numbers (GString      *text,
                const double *row,
                guint         n)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  if (n > 1)
    g_string_append_c (text, '[');
  for (guint o = 0; o < n; o++)
    g_string_append_printf (text, "%s%s", o > 0 ? "," : "",
                            g_ascii_formatd (buffer, sizeof buffer, "%.17g", row[o]));
  if (n > 1)
    g_string_append_c (text, ']');
}

static void
append_table (GString     *text,
              const Model *m,
              guint        k)
{
  g_string_append (text, "\"chance\":{\"default\":");
  append_numbers (text, m->usual[k], m->n_outcomes[k]);
  for (guint i = 0; i < N; i++)
    {
      g_string_append_printf (text, ",\"c%u\":", i);
      append_numbers (text, m->row[k][i], m->n_outcomes[k]);
    }
  g_string_append_c (text, '}');
}

static void
append_causes (GString     *text,
               const Model *m)
{
  for (guint i = 0; i < N; i++)
    {
      g_string_append_printf (text, "%s{\"id\":\"c%u\",\"title\":\"c\",\"area\":\"board\",%s\"prior\":", i > 0 ? "," : "",
                              i, i < 2 ? "\"part\":\"one\"," : "");
      append_numbers (text, &m->prior[i], 1);
      g_string_append (text, ",\"often_with\":{");
      for (guint j = 0, n = 0; j < i; j++)
        if (m->often[i][j] > 1)
          g_string_append_printf (text, "%s\"c%u\":%g", n++ > 0 ? "," : "", j, m->often[i][j]);
      g_string_append (text, "},\"repair\":{\"title\":\"r\",\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}");
    }
}

static RwKnowledge *
knowledge_of (const Model *m)
{
  g_autoptr (GString) text = g_string_new ("{\"causes\":[");
  guint n = 0;

  append_causes (text, m);
  g_string_append (text, "],\"symptoms\":[");
  for (guint k = 0; k < m->n_checks; k++)
    if (m->n_outcomes[k] == 1)
      {
        g_string_append_printf (text, "%s{\"id\":\"k%u\",\"title\":\"s\",\"group\":\"game\",", n++ > 0 ? "," : "", k);
        append_table (text, m, k);
        g_string_append_c (text, '}');
      }
  g_string_append (text, "],\"checks\":[");
  n = 0;
  for (guint k = 0; k < m->n_checks; k++)
    if (m->n_outcomes[k] > 1)
      {
        g_string_append_printf (text, "%s{\"id\":\"k%u\",\"title\":\"k\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\","
                                      "\"outcomes\":[", n++ > 0 ? "," : "", k);
        for (guint o = 0; o < m->n_outcomes[k]; o++)
          g_string_append_printf (text, "%s{\"id\":\"o%u\",\"title\":\"o\"}", o > 0 ? "," : "", o);
        g_string_append (text, "],");
        append_table (text, m, k);
        g_string_append_c (text, '}');
      }
  g_string_append (text, "]}");
  return fixture_knowledge_from (text->str);
}

static void
see (RwSession   *job,
     const Model *m,
     guint        k)
{
  g_autofree char *id = g_strdup_printf ("k%u", k);
  g_autofree char *outcome = g_strdup_printf ("o%d", m->seen[k]);

  if (m->n_outcomes[k] == 1)
    fixture_symptom (job, id, m->seen[k] != 0 ? RW_SYMPTOM_PRESENT : RW_SYMPTOM_ABSENT);
  else
    fixture_finding (job, id, outcome);
}

/* --- the enumeration ---------------------------------------------------------------------------- */

/* All outcomes of a check written out, of a symptom absent and present. */
static guint
spread (const Model  *m,
        guint         k,
        const double *row,
        double       *out)
{
  if (m->n_outcomes[k] > 1)
    {
      for (guint o = 0; o < m->n_outcomes[k]; o++)
        out[o] = row[o];
      return m->n_outcomes[k];
    }
  out[0] = 1 - row[0];
  out[1] = row[0];
  return 2;
}

/* P (what was seen at @k | both), by the rule in words: deviations multiply; a default of 0: the mean; then scaled. */
static double
seen_of_two (const Model *m,
             guint        k,
             guint        i,
             guint        j)
{
  double usual[MOST_OUTCOMES], a[MOST_OUTCOMES], b[MOST_OUTCOMES], both[MOST_OUTCOMES];
  const guint n = spread (m, k, m->usual[k], usual);
  double sum = 0;

  spread (m, k, m->row[k][i], a);
  spread (m, k, m->row[k][j], b);
  for (guint o = 0; o < n; o++)
    {
      both[o] = usual[o] > 0 ? a[o] * b[o] / usual[o] : 0.5 * (a[o] + b[o]);
      sum += both[o];
    }
  return sum > 0 ? both[m->seen[k]] / sum : 0.5 * (a[m->seen[k]] + b[m->seen[k]]);
}

static double
seen_of_one (const Model *m,
             guint        k,
             guint        i)
{
  double row[MOST_OUTCOMES];

  spread (m, k, m->row[k][i], row);
  return row[m->seen[k]];
}

/* w[i][i]: i alone; w[i][j] = w[j][i]: both. */
static void
enumerate (const Model *m,
           double       w[N][N])
{
  double sum = 0;

  for (guint i = 0; i < N; i++)
    sum += m->prior[i];
  for (guint i = 0; i < N; i++)
    for (guint j = 0; j < N; j++)
      {
        w[i][j] = i == j ? m->prior[i] / sum
                         : 0.15 * m->prior[i] / sum * m->prior[j] / sum * m->often[i][j];
        for (guint k = 0; k < m->n_checks; k++)
          w[i][j] *= i == j ? seen_of_one (m, k, i) : seen_of_two (m, k, i, j);
      }
}

static double
total (double w[N][N])
{
  double sum = 0;

  for (guint i = 0; i < N; i++)
    for (guint j = 0; j <= i; j++)
      sum += w[i][j];
  return sum;
}

static double
present (double w[N][N],
         guint  i)
{
  double sum = 0;

  for (guint j = 0; j < N; j++)
    sum += w[i][j];
  return sum / total (w);
}

static void
assert_as_enumerated (RwBelief *belief,
                      double    w[N][N])
{
  double two = 0;

  for (guint i = 0; i < N; i++)
    {
      g_assert_cmpfloat_with_epsilon (rw_belief_get_p (belief, i), present (w, i), 1e-12);
      g_assert_cmpfloat_with_epsilon (rw_belief_get_alone (belief, i), w[i][i] / total (w), 1e-12);
      for (guint j = 0; j < i; j++)
        two += w[i][j] / total (w);
    }
  g_assert_cmpfloat_with_epsilon (rw_belief_get_two (belief), two, 1e-12);
  for (guint k = 0; k < rw_belief_get_n_pairs (belief); k++)
    {
      const RwPairBelief *pair = rw_belief_get_pair (belief, k);

      g_assert_cmpfloat_with_epsilon (pair->p, w[pair->index_a][pair->index_b] / total (w), 1e-12);
    }
}

static void
test_random_knowledges (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (52);
  guint compared = 0;

  for (guint trial = 0; trial < 150; trial++)
    {
      Model m = { 0 };
      double w[N][N];

      random_model (rand, &m);
      enumerate (&m, w);

      g_autoptr (RwKnowledge) knowledge = knowledge_of (&m);
      g_autoptr (RwSession) job = fixture_job ();

      for (guint k = 0; k < m.n_checks; k++)
        see (job, &m, k);

      g_autoptr (RwBelief) belief = believe (knowledge, job);

      if (!(total (w) > 0))
        continue; /* nothing listed can show it */
      compared++;
      assert_as_enumerated (belief, w);
    }
  g_assert_cmpuint (compared, >, 120);
}

/* Repairs in vain, and in part, between what is seen. */
static void
test_random_repairs (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (17);

  for (guint trial = 0; trial < 60; trial++)
    {
      Model m = { 0 };
      double w[N][N];
      const guint i = (guint) g_rand_int_range (rand, 0, N);
      g_autofree char *id = g_strdup_printf ("c%u", i);

      random_model (rand, &m);
      enumerate (&m, w);
      if (!(total (w) > 0))
        continue;

      g_autoptr (RwKnowledge) knowledge = knowledge_of (&m);
      g_autoptr (RwSession) job = fixture_job ();

      for (guint k = 0; k < m.n_checks; k++)
        see (job, &m, k);
      fixture_repair (job, id, RW_REPAIR_NO_CHANGE);
      w[i][i] *= 0.05;
      for (guint j = 0; j < N; j++)
        if (j != i)
          {
            w[j][j] += 0.95 * w[i][j];
            w[i][j] = w[j][i] = 0.05 * w[i][j];
          }

      g_autoptr (RwBelief) belief = believe (knowledge, job);

      assert_as_enumerated (belief, w);
    }
}

static void
test_factors_multiply_to_the_odds (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);

  for (guint trial = 0; trial < 40; trial++)
    {
      Model m = { 0 };

      random_model (rand, &m);
      for (guint k = 0; k < m.n_checks; k++)
        for (guint i = 0; i < N; i++)
          for (guint o = 0; o < m.n_outcomes[k]; o++)
            m.row[k][i][o] = m.n_outcomes[k] == 1 ? m.row[k][i][o]
                                                  : 0.9 * m.row[k][i][o] + 0.1 / m.n_outcomes[k];

      g_autoptr (RwKnowledge) knowledge = knowledge_of (&m);
      g_autoptr (RwSession) job = fixture_job ();

      for (guint k = 0; k < m.n_checks; k++)
        see (job, &m, k);
      fixture_repair (job, "c2", RW_REPAIR_NO_CHANGE);

      g_autoptr (RwBelief) belief = believe (knowledge, job);

      for (guint rank = 0; rank < N; rank++)
        {
          const RwCauseBelief *cause = rw_belief_get_cause (belief, rank);
          double odds = cause->prior / (1 - cause->prior);

          for (guint e = 0; e < rw_belief_get_n_evidence (belief); e++)
            odds *= rw_belief_get_factor (belief, rank, e);
          g_assert_cmpfloat_with_epsilon (odds / (cause->p / (1 - cause->p)), 1, 1e-9);
          g_assert_cmpfloat (cause->alone, <=, cause->p * (1 + 1e-12));
        }
    }
}

/* --- what comes together ------------------------------------------------------------------------ */

#define CAUSE(id, keys) \
  "{\"id\":\"" id "\",\"title\":\"" id "\"," keys ",\"repair\":{\"title\":\"r\",\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}"

static void
test_what_does_not_come_together (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("fine", "\"area\":\"none\",\"prior\":1") ","
      CAUSE ("other", "\"area\":\"board\",\"broad\":true,\"prior\":1") ","
      CAUSE ("up", "\"area\":\"supply\",\"part\":\"trim\",\"prior\":1") ","
      CAUSE ("down", "\"area\":\"supply\",\"part\":\"trim\",\"prior\":1") ","
      CAUSE ("wire", "\"area\":\"wiring\",\"prior\":1,\"often_with\":{\"up\":0}") "]}");
  g_autoptr (RwHypotheses) all = rw_hypotheses_new (knowledge, RW_SECOND_FAULT);

  g_assert_cmpuint (all->n, ==, 5);
  g_assert_cmpuint (all->n_pairs, ==, 1);
  g_assert_cmpint (rw_hypotheses_find_pair (all, 4, 3), ==, 5);
  g_assert_cmpint (rw_hypotheses_find_pair (all, 2, 3), ==, -1);
  g_assert_cmpfloat_with_epsilon (all->prior[5], 0.15 * 0.04 / (1 + 0.15 * 0.04), 1e-15);
}

/* A cause that the table says nothing of leaves the other's row as it is, even where the default is 0. */
static void
test_a_cause_without_a_row_changes_nothing (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "\"area\":\"board\",\"prior\":1") "," CAUSE ("b", "\"area\":\"board\",\"prior\":1")
      "],\"symptoms\":[{\"id\":\"s\",\"title\":\"s\",\"group\":\"game\",\"chance\":{\"default\":0,\"a\":0.7}}]}");
  const RwChanceTable *table = &rw_knowledge_get_symptom (knowledge, 0)->chance;
  double both = 0;

  rw_chance_table_fill_pair (table, rw_chance_table_get (table, "a"), rw_chance_table_get (table, "b"), &both);
  g_assert_cmpfloat (both, ==, 0.7);
}

/* Two signs, each of one cause only: no single cause explains both. */
static void
test_two_signs_two_faults (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "\"area\":\"board\",\"prior\":1") "," CAUSE ("b", "\"area\":\"sound\",\"prior\":1") ","
      CAUSE ("c", "\"area\":\"board\",\"prior\":2") "],\"symptoms\":["
      "{\"id\":\"x\",\"title\":\"x\",\"group\":\"game\",\"chance\":{\"default\":0.01,\"a\":0.9}},"
      "{\"id\":\"y\",\"title\":\"y\",\"group\":\"game\",\"chance\":{\"default\":0.01,\"b\":0.9}}]}");
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "x", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) one = believe (knowledge, job);

  g_assert_cmpfloat (rw_belief_get_two (one), <, 0.2);
  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) two = believe (knowledge, job);

  g_assert_cmpfloat (rw_belief_get_pair (two, 0)->p, >, 0.4);
  g_assert_cmpfloat (rw_belief_get_conflict (two), >, 0);

  /* The first was cured, the second stays: so it was both, and b is left. */
  fixture_repair (job, "a", RW_REPAIR_NO_CHANGE);
  fixture_symptom (job, "x", RW_SYMPTOM_CURED);

  g_autoptr (RwBelief) helped = believe (knowledge, job);
  guint e = 0;

  while (rw_belief_get_evidence (helped, e)->kind != RW_EVIDENCE_REPAIR)
    e++;
  g_assert_cmpstr (rw_belief_get_evidence (helped, e)->answer, ==, "partly");
  g_assert_cmpstr (rw_belief_get_cause (helped, 0)->cause->id, ==, "b");
  g_assert_cmpfloat (rw_belief_get_alone (helped, 1), >, 0.8);
}

/* By hand: b alone 1/2 · L, a and b r/4 · L; L = 0.9 for the sign that stays, 0.1 by default. */
static void
test_helped_in_part_by_hand (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "\"area\":\"board\",\"prior\":1") "," CAUSE ("b", "\"area\":\"sound\",\"prior\":1")
      "],\"symptoms\":[{\"id\":\"x\",\"title\":\"x\",\"group\":\"game\",\"chance\":{\"default\":0.5}},"
      "{\"id\":\"y\",\"title\":\"y\",\"group\":\"game\",\"chance\":{\"default\":0.1,\"b\":0.9}}]}");
  g_autoptr (RwSession) job = fixture_job ();
  const double a = 0.5 * 0.1 * 0.05;
  const double both = 0.15 * 0.25 * 0.9;
  const double b = 0.5 * 0.9 * 0.05 + 0.95 * both;
  const double sum = a + b + 0.0025 * both;

  fixture_symptom (job, "y", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "a", RW_REPAIR_NO_CHANGE);
  fixture_symptom (job, "x", RW_SYMPTOM_CURED);

  g_autoptr (RwBelief) belief = believe (knowledge, job);

  g_assert_cmpfloat_with_epsilon (rw_belief_get_alone (belief, 0), a / sum, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_belief_get_alone (belief, 1), b / sum, 1e-12);
}

/* Only what is worth speaking of is listed, the likeliest first. */
static void
test_few_pairs_are_listed (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_load (NULL, &error);
  g_autoptr (RwSession) job = fixture_job ();

  g_assert_no_error (error);
  for (guint s = 0; s < 3; s++)
    fixture_symptom (job, rw_knowledge_get_symptom (knowledge, s * 9)->id, RW_SYMPTOM_PRESENT);

  g_autoptr (RwBelief) belief = believe (knowledge, job);
  const guint n = rw_belief_get_n_pairs (belief);

  g_assert_cmpuint (n, <=, 12);
  for (guint k = 1; k < n; k++)
    g_assert_cmpfloat (rw_belief_get_pair (belief, k)->p, <=, rw_belief_get_pair (belief, k - 1)->p);
}

/* --- published ---------------------------------------------------------------------------------- */

/* Independent faults, at least one of three present; three at once (0.0003095 of all) is not a hypothesis here, so
 * the published chances are of all but that. */
static void
test_two_faults_of_three (void)
{
  static const double pi[] = { 0.02, 0.05, 0.03 };
  static const double published[] = { 0.19013721, 0.49035386, 0.28814608, 0.01000722, 0.00588053, 0.01516558 };
  const double triple = 0.0003095;
  g_autoptr (GString) text = g_string_new ("{\"causes\":[");
  double odds[3], sum = 0;

  for (guint i = 0; i < 3; i++)
    {
      char buffer[G_ASCII_DTOSTR_BUF_SIZE];

      sum += odds[i] = pi[i] / (1 - pi[i]);
      g_string_append_printf (text, "%s{\"id\":\"c%u\",\"title\":\"c\",\"area\":\"board\",\"prior\":%s,\"repair\":{\"title\":\"r\","
                                    "\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\"}}",
                              i > 0 ? "," : "", i, g_ascii_formatd (buffer, sizeof buffer, "%.17g", odds[i]));
    }
  g_string_append (text, "]}");

  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (text->str);
  g_autoptr (RwHypotheses) all = rw_hypotheses_new (knowledge, sum);
  const double exact[] = { odds[0], odds[1], odds[2], odds[0] * odds[1], odds[0] * odds[2], odds[1] * odds[2] };
  double of_all = 0;

  for (guint h = 0; h < 6; h++)
    of_all += exact[h];
  g_assert_cmpuint (all->n_all, ==, 6);
  for (guint h = 0; h < 6; h++)
    {
      g_assert_cmpfloat_with_epsilon (all->prior[h], exact[h] / of_all, 1e-12);
      g_assert_cmpfloat_with_epsilon (all->prior[h] * (1 - triple), published[h], 5e-8);
    }
}

int
main (int    argc,
      char **argv)
{
  fixture_leave_home ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/belief-pairs/random knowledges as enumerated", test_random_knowledges);
  g_test_add_func ("/belief-pairs/a repair in vain as enumerated", test_random_repairs);
  g_test_add_func ("/belief-pairs/factors multiply to the odds", test_factors_multiply_to_the_odds);
  g_test_add_func ("/belief-pairs/some causes do not come together", test_what_does_not_come_together);
  g_test_add_func ("/belief-pairs/a cause without a row changes nothing", test_a_cause_without_a_row_changes_nothing);
  g_test_add_func ("/belief-pairs/two signs of two causes are two faults", test_two_signs_two_faults);
  g_test_add_func ("/belief-pairs/a repair that helped in part, by hand", test_helped_in_part_by_hand);
  g_test_add_func ("/belief-pairs/few pairs are listed", test_few_pairs_are_listed);
  g_test_add_func ("/belief-pairs/two faults of three, published", test_two_faults_of_three);

  const int status = g_test_run ();

  fixture_come_home ();
  return status;
}
