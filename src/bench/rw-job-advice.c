/* rw-job-advice.c: the advice of a job, worked out in a thread.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * State and knowledge are immutable, so the thread shares them without a lock. Only one thread works at a
 * time; what changes meanwhile starts it over when it is done.
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  RwKnowledge  *knowledge;
  RwBenchState *state;
  GHashTable   *skipped;
} Question;

static void
question_free (gpointer data)
{
  Question *question = data;

  rw_knowledge_unref (question->knowledge);
  rw_bench_state_unref (question->state);
  g_hash_table_unref (question->skipped);
  g_free (question);
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  const Question *question = data;

  g_task_return_pointer (task, rw_advice_new (question->knowledge, question->state, question->skipped),
                         (GDestroyNotify) rw_advice_unref);
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  RwJob *self = RW_JOB (source);
  RwAdvice *advice = g_task_propagate_pointer (G_TASK (result), NULL);

  self->advising = FALSE;
  if (self->advice_outdated)
    {
      g_clear_pointer (&advice, rw_advice_unref);
      rw_job_refresh_advice (self);
      return;
    }
  g_clear_pointer (&self->advice, rw_advice_unref);
  self->advice = advice;
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_ADVICE], 0);
}

/* The thread's own copy: the job's may grow meanwhile. */
static GHashTable *
copy_set (GHashTable *set)
{
  GHashTable *copy = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GHashTableIter iter;
  gpointer key;

  g_hash_table_iter_init (&iter, set);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    g_hash_table_add (copy, g_strdup (key));
  return copy;
}

static void
load_knowledge (RwJob *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);

  self->knowledge = rw_knowledge_load (problems, &error);
  if (self->knowledge == NULL)
    self->advice_problem = g_strdup (error->message);
  else if (problems->len > 0)
    self->advice_problem = g_strdup (problems->pdata[0]);
}

void
rw_job_refresh_advice (RwJob *self)
{
  if (self->knowledge == NULL && self->advice_problem == NULL)
    load_knowledge (self);
  if (self->knowledge == NULL)
    {
      g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_ADVICE], 0);
      return;
    }
  self->advice_outdated = self->advising;
  if (self->advising)
    return;

  g_autoptr (GTask) task = g_task_new (self, NULL, done_cb, NULL);
  Question *question = g_new0 (Question, 1);

  question->knowledge = rw_knowledge_ref (self->knowledge);
  question->state = rw_bench_state_ref (rw_job_get_state (self));
  question->skipped = copy_set (self->skipped);
  g_task_set_task_data (task, question, question_free);
  self->advising = TRUE;
  g_task_run_in_thread (task, work);
}

RwAdvice *
rw_job_get_advice (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  return self->advice;
}

const char *
rw_job_get_advice_problem (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  return self->advice_problem;
}

void
rw_job_skip_check (RwJob      *self,
                   const char *check)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (g_hash_table_add (self->skipped, g_strdup (check)))
    rw_job_refresh_advice (self);
}

const char *
rw_job_symptom_title (RwJob      *self,
                      const char *id)
{
  const RwSymptom *symptom = self->knowledge != NULL ? rw_knowledge_find_symptom (self->knowledge, id) : NULL;

  return symptom != NULL ? symptom->title : id;
}

const char *
rw_job_cause_title (RwJob      *self,
                    const char *id)
{
  const RwCause *cause = self->knowledge != NULL ? rw_knowledge_find_cause (self->knowledge, id) : NULL;

  return cause != NULL ? cause->title : id;
}

/* The words of a check and of what it showed. */
static void
name_finding (RwJob   *self,
              RwEvent *event)
{
  const RwCheck *check = self->knowledge != NULL ? rw_knowledge_find_check (self->knowledge, event->finding.check) : NULL;
  const int outcome = check != NULL ? rw_check_find_outcome (check, event->finding.outcome) : -1;

  if (check != NULL)
    event->finding.check = check->title;
  if (outcome >= 0)
    event->finding.outcome = check->outcomes[outcome].title;
}

char *
rw_job_describe (RwJob         *self,
                 const RwEvent *event)
{
  /* A shallow copy whose ids are words: it is only read, and owns nothing. */
  RwEvent named = *event;

  if (event->type == RW_EVENT_SYMPTOM)
    named.symptom.id = rw_job_symptom_title (self, event->symptom.id);
  else if (event->type == RW_EVENT_REPAIR)
    named.repair.cause = rw_job_cause_title (self, event->repair.cause);
  else if (event->type == RW_EVENT_FINDING)
    name_finding (self, &named);
  return rw_event_describe (&named, rw_job_get_profile (self));
}
