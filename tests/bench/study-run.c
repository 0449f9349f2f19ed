/* study-run.c: the study itself: many cases, each done in several ways, on two threads.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "study-run.h"

static const int threads = 2;

/* Faults come round in the order of their numbers: each round begins one later, so that every fault has its turn. Of
 * every pair only what the program does is asked. */
static gboolean
is_due (const StudyCase *job,
        StudyWay         way,
        guint            every)
{
  if (job->family == STUDY_EVERY_PAIR)
    return way == STUDY_PROGRAM && every > 0;

  const guint n = rw_practice_faults_get_n ();

  return every > 0 && (job->index % n + job->index / n) % every == 0;
}

static void
do_case (gpointer item,
         gpointer data)
{
  Study *study = data;
  StudyResult *result = item;

  study_case_draw (&result->job, result->job.family, result->job.index, study->profiles,
                   study->pairs);
  for (guint way = 0; way < STUDY_N_WAYS; way++)
    if (is_due (&result->job, way, study->plan.every[way]))
      {
        study_job_run (&result->done[way], &result->job, way, study->knowledge,
                       study->plan.log && way == STUDY_PROGRAM);
        result->gone[way] = TRUE;
      }
  if (study->rows != NULL && result->job.family != STUDY_EVERY_PAIR)
    study_rows_survey (study->rows, &result->job, &result->done[STUDY_PROGRAM]);
}

static void
list_cases (Study *self)
{
  for (guint family = 0; family < STUDY_N_FAMILIES; family++)
    for (guint i = 0; i < self->plan.n[family]; i++)
      {
        const StudyResult result = { .job = { .family = family, .index = i } };

        g_array_append_val (self->results, result);
      }
}

void
study_run (Study           *out,
           const StudyPlan *plan)
{
  g_autoptr (GError) error = NULL;
  const gint64 before = g_get_monotonic_time ();

  *out = (Study) { .plan = *plan };
  out->knowledge = rw_knowledge_load (NULL, &error);
  g_assert_no_error (error);
  out->profiles = study_profiles_new ();
  out->pairs = study_pairs_new (out->profiles);
  out->plan.n[STUDY_EVERY_PAIR] = MIN (plan->n[STUDY_EVERY_PAIR], out->pairs->len);
  out->results = g_array_new (FALSE, TRUE, sizeof (StudyResult));
  out->rows = plan->survey ? study_rows_new (out->knowledge) : NULL;
  list_cases (out);

  GThreadPool *pool = g_thread_pool_new (do_case, out, threads, TRUE, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < out->results->len; i++)
    g_thread_pool_push (pool, &g_array_index (out->results, StudyResult, i), NULL);
  g_thread_pool_free (pool, FALSE, TRUE);
  out->seconds = (double) (g_get_monotonic_time () - before) / G_USEC_PER_SEC;
}

void
study_clear (Study *self)
{
  for (guint i = 0; i < self->results->len; i++)
    for (guint way = 0; way < STUDY_N_WAYS; way++)
      study_job_clear (&g_array_index (self->results, StudyResult, i).done[way]);
  g_array_unref (self->results);
  g_ptr_array_unref (self->profiles);
  g_array_unref (self->pairs);
  rw_knowledge_unref (self->knowledge);
  g_clear_pointer (&self->rows, study_rows_free);
}
