/* study-test.c: a short study of virtual cabinets: the program finds the fault, sooner than a list does.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bounds are those of a hundred cabinets, where a share of 85 % is uncertain by 4 % and one of
 * 96 % by 2 %; the whole study (study-bench.c) has the figures themselves.
 *
 * RAILWRIGHT_STUDY_CABINETS in the environment: how many cabinets, for slow machines; 104 by default. Shares of fewer say
 * nothing and are not judged.
 */
#include "config.h"

#include <locale.h>
#include <math.h>
#include <stdlib.h>

#include "study-figures.h"

static const guint usual_cabinets = 104;
static const double least_first = 0.76, least_among_three = 0.88, least_fixed = 0.93, most_ratio = 0.60;
static const double most_off = 0.25; /* the chance stated against what came true */
static const guint least_claims = 40;

static Study study;
static guint n_come, n_alike; /* cabinets of the families */

/* Both families of single faults, by their numbers. */
static StudyFigures
figures_of_single_faults (void)
{
  StudyFigures come, alike;

  study_figures (&study, STUDY_AS_THEY_COME, NULL, &come);
  study_figures (&study, STUDY_EACH_ALIKE, NULL, &alike);

  const double share = (double) come.n / (come.n + alike.n);

  for (guint moment = 0; moment < STUDY_N_MOMENTS; moment++)
    {
      come.first[moment] = share * come.first[moment] + (1 - share) * alike.first[moment];
      come.among_three[moment] = share * come.among_three[moment]
                                 + (1 - share) * alike.among_three[moment];
    }
  come.n += alike.n;
  come.fixed += alike.fixed;
  come.against[STUDY_LIST_FILES] += alike.against[STUDY_LIST_FILES];
  come.minutes[STUDY_LIST_FILES] += alike.minutes[STUDY_LIST_FILES];
  return come;
}

static void
test_the_right_cause_comes_first_before_anything_is_repaired (void)
{
  const StudyFigures it = figures_of_single_faults ();

  g_test_message ("first %.3f, among three %.3f of %u", it.first[STUDY_BEFORE_REPAIR],
                  it.among_three[STUDY_BEFORE_REPAIR], it.n);
  g_assert_cmpuint (it.n, ==, n_come + n_alike);
  g_assert_cmpfloat (it.first[STUDY_BEFORE_REPAIR], >=, least_first);
  g_assert_cmpfloat (it.among_three[STUDY_BEFORE_REPAIR], >=, least_among_three);
  g_assert_cmpfloat (it.first[STUDY_BEFORE_REPAIR], >, it.first[STUDY_AFTER_SYMPTOMS]);
}

static void
test_jobs_end_with_the_cabinet_mended (void)
{
  const StudyFigures it = figures_of_single_faults ();

  g_assert_cmpfloat ((double) it.fixed / it.n, >=, least_fixed);
}

static void
test_the_program_takes_at_most_six_tenths_of_a_list (void)
{
  const StudyFigures it = figures_of_single_faults ();
  const double ratio = it.against[STUDY_LIST_FILES] / it.minutes[STUDY_LIST_FILES];

  g_test_message ("ratio %.2f", ratio);
  g_assert_cmpfloat (ratio, <=, most_ratio);
}

static void
test_stated_chances_come_true (void)
{
  StudyDecile deciles[STUDY_DECILES];

  study_calibration (&study, STUDY_AS_THEY_COME, deciles);
  for (guint d = 0; d < STUDY_DECILES; d++)
    if (deciles[d].n >= least_claims)
      {
        g_test_message ("%.2f stated, %.2f right of %u", deciles[d].stated, deciles[d].right,
                        deciles[d].n);
        g_assert_cmpfloat (fabs (deciles[d].stated - deciles[d].right), <=, most_off);
      }
}

/* A supply of this profile, with the fault that has the number. */
static gboolean
can_have (RwProfile *profile,
          guint      fault)
{
  const RwPracticeFault one = { rw_practice_faults_get_id (fault), 0.5 };
  g_autoptr (RwPracticeCabinet) cabinet = rw_practice_cabinet_new (profile, 1, &one, 1, "Tidepool Racer", NULL);

  return cabinet != NULL;
}

/* Everything that is drawn and seen is a function of the index, whatever the threads do. */
static void
test_a_study_is_repeated_to_the_minute (void)
{
  const StudyPlan plan = { .n = { 4, 4, 0 }, .every = { 1, 0, 2, 0, 0 } };
  Study again;

  study_run (&again, &plan);
  for (guint i = 0; i < again.results->len; i++)
    {
      const StudyResult *b = study_result (&again, i);
      const StudyResult *a = study_result (&study, b->job.family == STUDY_AS_THEY_COME
                                                       ? b->job.index
                                                       : n_come + b->job.index);

      g_assert_cmpstr (a->job.faults[0].id, ==, b->job.faults[0].id);
      g_assert_true (a->job.seed == b->job.seed);
      g_assert_true (a->done[STUDY_PROGRAM].minutes == b->done[STUDY_PROGRAM].minutes);
    }
  study_clear (&again);
}

/* No pair twice, none of a fault with itself, none missing but those that no supply can have. */
static void
test_every_pair_is_met_once (void)
{
  const guint n = rw_practice_faults_get_n ();
  g_autofree guint *met = g_new0 (guint, n * n);
  g_autofree gboolean *has = g_new (gboolean, study.profiles->len * n);
  guint can_be = 0;

  for (guint i = 0; i < study.profiles->len; i++)
    for (guint a = 0; a < n; a++)
      has[i * n + a] = can_have (study.profiles->pdata[i], a);

  for (guint i = 0; i < study.pairs->len; i++)
    {
      const StudyPair *pair = &g_array_index (study.pairs, StudyPair, i);

      met[pair->a * n + pair->b]++;
      met[pair->b * n + pair->a]++;
    }
  for (guint a = 0; a < n; a++)
    for (guint b = 0; b < n; b++)
      {
        gboolean any = FALSE;

        for (guint i = 0; i < study.profiles->len && a != b; i++)
          any = any || (has[i * n + a] && has[i * n + b]);
        g_assert_cmpuint (met[a * n + b], ==, any ? 1 : 0);
        can_be += any;
      }
  g_assert_cmpuint (can_be, ==, 2 * study.pairs->len);
}

/* Hardly anybody brings in a cabinet that nothing can be seen of; every fault is met. */
static void
test_every_fault_is_met_and_nearly_all_show (void)
{
  guint silent = 0;

  g_autoptr (GHashTable) met = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < study.results->len; i++)
    {
      const StudyCase *job = &study_result (&study, i)->job;

      if (job->family == STUDY_EACH_ALIKE)
        g_hash_table_add (met, (gpointer) job->faults[0].id);
      silent += !job->shows;
    }
  g_test_message ("%u of %u show nothing", silent, study.results->len);
  g_assert_cmpuint (10 * silent, <=, study.results->len);
  g_assert_cmpuint (g_hash_table_size (met), ==, MIN (n_alike, rw_practice_faults_get_n ()));
  g_assert_cmpuint (rw_practice_faults_get_n (), >=, 12);
}

int
main (int    argc,
      char **argv)
{
  const char *asked = g_getenv ("RAILWRIGHT_STUDY_CABINETS");
  const guint n = asked != NULL ? (guint) MAX (16, atoi (asked)) : usual_cabinets;
  int status;

  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  n_come = n * 15 / 26;
  n_alike = n * 9 / 26;

  const StudyPlan plan = { .n = { n_come, n_alike, n / 26, n / 26 }, .every = { 1, 0, 2, 0, 0 } };

  study_run (&study, &plan);
  if (n >= usual_cabinets)
    {
      g_test_add_func ("/study/the-right-cause-comes-first-before-anything-is-repaired",
                       test_the_right_cause_comes_first_before_anything_is_repaired);
      g_test_add_func ("/study/jobs-end-with-the-cabinet-mended", test_jobs_end_with_the_cabinet_mended);
      g_test_add_func ("/study/the-program-takes-at-most-six-tenths-of-a-list",
                       test_the_program_takes_at_most_six_tenths_of_a_list);
      g_test_add_func ("/study/stated-chances-come-true", test_stated_chances_come_true);
    }
  g_test_add_func ("/study/every-pair-is-met-once", test_every_pair_is_met_once);
  g_test_add_func ("/study/a-study-is-repeated-to-the-minute", test_a_study_is_repeated_to_the_minute);
  g_test_add_func ("/study/every-fault-is-met-and-nearly-all-show", test_every_fault_is_met_and_nearly_all_show);
  status = g_test_run ();
  study_clear (&study);
  return status;
}
