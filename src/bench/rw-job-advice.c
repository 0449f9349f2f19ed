/* rw-job-advice.c: the advice of a job, worked out in a thread.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * State and knowledge are immutable, so the thread shares them without a lock. Only one thread works at a
 * time; what changes meanwhile starts it over when it is done.
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>

#include "rw-job-stages.h"
#include "rw-skipped.h"

/* --- the restorer's own record ------------------------------------------------------------------- */

static const char *
session_id (RwJob *self)
{
  return rw_session_get_header (self->session)->id;
}

static void
note_record_problem (RwJob  *self,
                     GError *error)
{
  if (error == NULL)
    return;
  g_free (self->record_problem);
  self->record_problem = g_strdup (error->message);
}

/* What this very job ended in before is no evidence for it. */
static void
load_record (RwJob *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = rw_record_dup_path ();

  if (self->record != NULL || self->mode == RW_JOB_PRACTICE)
    return;
  self->record = rw_record_load (path, &error);
  note_record_problem (self, error);
  rw_record_set (self->record, session_id (self), NULL);
}

static void
count_record (RwJob *self)
{
  g_clear_pointer (&self->counted, rw_knowledge_unref);
  load_record (self);
  if (self->uses_record && self->record != NULL)
    self->counted = rw_knowledge_with_record (self->knowledge, self->record);
}

/* The file is read anew each time, since another window may have written to it. */
static void
keep_record (RwJob *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = rw_record_dup_path ();

  if (self->mode != RW_JOB_BENCH)
    return;

  const RwCause *fixed = self->advice != NULL ? rw_belief_get_fixed (rw_advice_get_belief (self->advice)) : NULL;

  if ((fixed != NULL ? fixed->id : NULL) == self->fixed)
    return;
  self->fixed = fixed != NULL ? fixed->id : NULL;

  g_autoptr (RwRecord) record = rw_record_load (path, &error);

  if (error == NULL && rw_record_take (record, session_id (self), rw_job_get_state (self)))
    rw_record_save (record, path, &error);
  note_record_problem (self, error);
}

const RwRecord *
rw_job_get_record (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  return self->record;
}

gboolean
rw_job_get_uses_record (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), FALSE);
  return self->uses_record && self->mode != RW_JOB_PRACTICE;
}

void
rw_job_set_uses_record (RwJob   *self,
                        gboolean uses)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (self->uses_record == uses)
    return;
  self->uses_record = uses;
  g_object_notify (G_OBJECT (self), "uses-record");
  if (self->knowledge == NULL)
    return;
  count_record (self);
  rw_job_refresh_advice (self);
}

const char *
rw_job_get_record_problem (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  return self->record_problem;
}

/* --- asking -------------------------------------------------------------------------------------- */

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
  keep_record (self);
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_ADVICE], 0);
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
  if (self->knowledge != NULL)
    count_record (self);
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
  if (self->unadvised)
    {
      g_clear_pointer (&self->advice, rw_advice_unref);
      g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_ADVICE], 0);
      return;
    }
  if (self->advising)
    return;

  g_autoptr (GTask) task = g_task_new (self, NULL, done_cb, NULL);
  Question *question = g_new0 (Question, 1);

  question->knowledge = rw_knowledge_ref (self->counted != NULL ? self->counted : self->knowledge);
  question->state = rw_bench_state_ref (rw_job_get_state (self));
  question->skipped = rw_skipped_gather (question->state);
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

/* --- saying -------------------------------------------------------------------------------------- */

void
rw_job_skip_check (RwJob      *self,
                   const char *check,
                   const char *reason)
{
  g_return_if_fail (RW_IS_JOB (self) && check != NULL);

  const RwCheck *known = self->knowledge != NULL ? rw_knowledge_find_check (self->knowledge, check) : NULL;
  RwEvent skipped = rw_event_make_finding (0, check, RW_SKIPPED_OUTCOME);

  if (reason != NULL && *reason != '\0')
    {
      /* Translators: title of a check, why it is not done. */
      g_autofree char *text = g_strdup_printf (_ ("Set aside: %s: %s"), known != NULL ? known->title : check, reason);
      RwEvent note = rw_event_make_note (0, text);

      rw_job_add (self, &note);
    }
  rw_job_add (self, &skipped);
}

void
rw_job_repair_partly (RwJob      *self,
                      const char *cause,
                      GPtrArray  *gone)
{
  g_return_if_fail (RW_IS_JOB (self) && cause != NULL && gone != NULL);

  RwEvent repair = rw_event_make_repair (0, cause, RW_REPAIR_NO_CHANGE);

  rw_job_add (self, &repair);
  for (guint i = 0; i < gone->len; i++)
    {
      RwEvent cured = rw_event_make_symptom (0, gone->pdata[i], RW_SYMPTOM_CURED);

      rw_job_add (self, &cured);
    }
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

  const RwStageQuestion *question = rw_job_find_stage_question (self, event->finding.check);

  if (check != NULL)
    event->finding.check = check->title;
  if (question != NULL)
    {
      event->finding.check = question->text;
      event->finding.outcome = g_strcmp0 (event->finding.outcome, "yes") == 0 ? _ ("yes") : _ ("no");
    }
  else if (outcome >= 0)
    event->finding.outcome = check->outcomes[outcome].title;
  else if (g_strcmp0 (event->finding.outcome, RW_SKIPPED_OUTCOME) == 0)
    event->finding.outcome = _ ("set aside");
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
  else if (event->type == RW_EVENT_STAGE)
    named.stage.id = rw_job_stage_title (self, event->stage.id);
  return rw_event_describe (&named, rw_job_get_profile (self));
}
