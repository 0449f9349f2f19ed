/* study-bench.c: the whole study of virtual cabinets, as a benchmark.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Prints its tables; RAILWRIGHT_STUDY_TABLE names a file for them, RAILWRIGHT_STUDY_ROWS one for the
 * rows of the knowledge that are at odds with the physics, RAILWRIGHT_STUDY_LOG one for protocols of
 * the jobs that went wrong, RAILWRIGHT_STUDY_CABINETS says how many (2200), of which every pair, a further
 * family, has at most two thirds as many again, enough for each of them once.
 */
#include "config.h"

#include <locale.h>
#include <stdlib.h>

#include "study-figures.h"

static const guint usual_cabinets = 2200, worst_rows = 30, rows_a_fault = 12;

static void
save (const char    *variable,
      const GString *text)
{
  g_autoptr (GError) error = NULL;
  const char *path = g_getenv (variable);

  if (path == NULL)
    return;
  g_file_set_contents (path, text->str, (gssize) text->len, &error);
  g_assert_no_error (error);
}

static void
print_speed (const Study *study)
{
  double advising[2] = { 0, 0 }, slowest[2] = { 0, 0 };
  guint n[2] = { 0, 0 };

  for (guint i = 0; i < study->results->len; i++)
    for (guint way = STUDY_PROGRAM; way <= STUDY_SCREEN; way++)
      {
        const StudyJob *done = &study_result (study, i)->done[way];

        advising[way] += done->advising;
        slowest[way] = MAX (slowest[way], done->slowest);
        n[way] += done->n_advised;
      }
  g_print ("# %.0f s\n", study->seconds);
  for (guint way = STUDY_PROGRAM; way <= STUDY_SCREEN; way++)
    g_print ("# %s: advice %u times, mean %.1f ms, slowest %.0f ms\n", study_way_get_label (way),
             n[way], advising[way] / MAX (1, n[way]), slowest[way]);
}

static void
write_tables (const Study *study)
{
  g_autoptr (GString) text = g_string_new (NULL);

  study_append_families (study, text);
  g_string_append_c (text, '\n');
  study_append_pairs (study, text);
  g_string_append_c (text, '\n');
  study_append_each_fault (study, text);
  g_string_append_c (text, '\n');
  study_append_ways (study, text);
  g_string_append_c (text, '\n');
  study_append_calibration (study, text);
  g_string_append_c (text, '\n');
  study_append_faults (study, STUDY_AS_THEY_COME, text);
  g_string_append_c (text, '\n');
  study_append_faults (study, STUDY_EACH_ALIKE, text);
  g_string_append_c (text, '\n');
  study_append_alike (text);
  g_print ("%s\n", text->str);
  print_speed (study);
  save ("RAILWRIGHT_STUDY_TABLE", text);
}

static void
write_rows (const Study *study)
{
  g_autoptr (GString) text = g_string_new (
      "# bits lost a cabinet, fault, check, cabinets, then each outcome: physics/table\n\n");

  study_rows_append (study->rows, text, NULL, worst_rows);
  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    {
      g_string_append_printf (text, "\n## %s\n", rw_practice_faults_get_id (i));
      study_rows_append (study->rows, text, rw_practice_faults_get_id (i), rows_a_fault);
    }
  save ("RAILWRIGHT_STUDY_ROWS", text);
}

static void
write_logs (const Study *study)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < study->results->len; i++)
    {
      const StudyResult *result = study_result (study, i);
      const StudyJob *done = &result->done[STUDY_PROGRAM];

      if (done->rank[STUDY_BEFORE_REPAIR] == 1 && done->n_repairs == 1)
        continue;
      g_string_append_printf (text, "\n## %s %u %s: %s %.2f%s%s:",
                              study_family_get_label (result->job.family), result->job.index,
                              rw_profile_get_id (result->job.profile), result->job.faults[0].id,
                              result->job.faults[0].strength,
                              result->job.n_faults > 1 ? " and " : "",
                              result->job.n_faults > 1 ? result->job.faults[1].id : "");
      for (guint k = 0; k < result->job.n_symptoms; k++)
        g_string_append_printf (text, " %s", result->job.symptoms[k]);
      g_string_append_printf (text, "\n%s", done->log->str);
    }
  save ("RAILWRIGHT_STUDY_LOG", text);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");

  const char *wanted = g_getenv ("RAILWRIGHT_STUDY_CABINETS");
  const guint n = wanted != NULL ? (guint) strtoul (wanted, NULL, 10) : usual_cabinets;
  const guint faults = rw_practice_faults_get_n ();
  const StudyPlan plan = { .n = { n / 2, (n * 4 / 10 + faults - 1) / faults * faults, n / 10, n * 2 / 3 },
                           .every = { 1, 6, 2, 6, 6 },
                           .survey = TRUE,
                           .log = g_getenv ("RAILWRIGHT_STUDY_LOG") != NULL };
  Study study;

  study_run (&study, &plan);
  write_tables (&study);
  write_rows (&study);
  if (plan.log)
    write_logs (&study);
  study_clear (&study);
  return 0;
}
