/* rw-drill.c: a drill as a job, and what its end says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which check decided: of all that was seen before the first repair, what raised the odds of the planted fault most.
 * Repairs are left out, since after a cure there is nothing left to tell apart.
 */
#include "config.h"

#include "rw-drill.h"

#include <glib/gi18n-lib.h>

#include "rw-belief.h"
#include "rw-drill-best.h"
#include "rw-drill-reckon.h"
#include "rw-job-practice.h"

static const char drill_key[] = "rw-drill";

/* --- beginning ------------------------------------------------------------------------------------ */

static void
free_drill (gpointer data)
{
  rw_practice_drill_clear (data);
  g_free (data);
}

static char *
new_path (const char *code)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *stamp = g_date_time_format (now, "%Y-%m-%d-%H%M%S");
  g_autofree char *name = g_strdup_printf ("%s-drill-%s.rwlog", stamp, code);

  return g_build_filename (g_get_user_state_dir (), "railwright", "practice", name, NULL);
}

static char *
say_complaint (RwJob                 *job,
               const RwPracticeDrill *drill)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < drill->n_symptoms; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", rw_job_symptom_title (job, drill->symptoms[i]));
  if (drill->n_symptoms == 0)
    g_string_append (text, _ ("nobody noticed anything, but it is not as it should be"));
  /* Translators: what a player said. */
  return g_strdup_printf (_ ("The complaint: %s."), text->str);
}

static void
note_drill (RwJob      *job,
            const char *code,
            guint       level,
            gboolean    suggestions)
{
  /* Translators: code of a drill; what its level means; with or without suggestions. */
  g_autofree char *text = g_strdup_printf (_ ("Drill %s: %s, %s."), code, rw_practice_drill_level_label (level),
                                           suggestions ? _ ("with suggestions") : _ ("without suggestions"));

  rw_job_note (job, text);
}

RwJob *
rw_drill_begin (guint    level,
                guint64  seed,
                gboolean suggestions,
                GError **error)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  RwPracticeDrill drill;

  if (!rw_practice_drill_draw (&drill, level, seed, profiles, error))
    return NULL;

  g_autofree char *code = rw_practice_drill_dup_code (level, seed);
  g_autofree char *path = new_path (code);
  /* Translators: code of a drill. */
  g_autofree char *name = g_strdup_printf (_ ("Drill %s"), code);
  g_autoptr (RwPracticeCabinet) cabinet = rw_practice_drill_open (&drill, name, error);
  RwJob *job = cabinet != NULL ? rw_job_new_practice (cabinet, path, error) : NULL;

  if (job == NULL)
    {
      rw_practice_drill_clear (&drill);
      return NULL;
    }
  g_object_set_data_full (G_OBJECT (job), drill_key, g_memdup2 (&drill, sizeof drill), free_drill);
  if (!suggestions)
    rw_job_stop_advising (job, _ ("This drill is worked without suggestions: measure, look and listen as you see fit. "
                                  "When you know what is wrong, do its repair (Ctrl+R), or end the drill (F8)."));
  note_drill (job, code, level, suggestions);

  g_autofree char *complaint = rw_drill_dup_complaint (job);

  rw_job_note (job, complaint);
  rw_job_set_setup (job, (RwSetup) { RW_SAID_YES, RW_SAID_YES, RW_SAID_NO });
  return job;
}

const RwPracticeDrill *
rw_drill_of (RwJob *job)
{
  return job != NULL ? g_object_get_data (G_OBJECT (job), drill_key) : NULL;
}

char *
rw_drill_dup_complaint (RwJob *job)
{
  const RwPracticeDrill *drill = rw_drill_of (job);

  return drill != NULL ? say_complaint (job, drill) : NULL;
}

/* --- the end: what is asked ----------------------------------------------------------------------- */

typedef struct
{
  RwPracticeDrill drill;
  RwKnowledge    *knowledge;
  RwBenchState   *seen; /* before the first repair */
  const char     *verdict;
  double          reckoned, clock; /* minutes */
  guint           n_stopped;
} Question;

static void
question_free (gpointer data)
{
  Question *question = data;

  rw_practice_drill_clear (&question->drill);
  rw_knowledge_unref (question->knowledge);
  rw_bench_state_unref (question->seen);
  g_free (question);
}

/* The session without its samples and all from the first repair on. */
static RwBenchState *
state_before_repair (RwSession *session)
{
  g_autoptr (RwSession) copy = rw_session_new (rw_session_header_copy (rw_session_get_header (session)));

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->type == RW_EVENT_REPAIR && rw_session_is_live (session, index))
        break;

      RwEvent taken = rw_event_copy (event);

      rw_session_add (copy, &taken);
    }
  return rw_bench_state_new (copy);
}

/* --- the end: what is said ------------------------------------------------------------------------ */

static const char *
title_of (const Question *question,
          const char     *cause)
{
  const RwCause *it = rw_knowledge_find_cause (question->knowledge, cause);

  return it != NULL ? it->title : cause;
}

static char *
say_faults (const Question *question)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < question->drill.n_faults; i++)
    {
      const RwPracticeFault *fault = &question->drill.faults[i];
      const char *size = fault->strength < 0.4 ? _ ("slight") : fault->strength < 0.75 ? _ ("fair") : _ ("strong");

      /* Translators: a fault; how strong it was. */
      g_string_append_printf (text, i > 0 ? "\n%s" : "%s", title_of (question, fault->id));
      g_string_append_printf (text, " (%s)", size);
    }
  return g_string_free (text, FALSE);
}

static char *
say_verdict (const Question *question)
{
  if (question->verdict == NULL)
    return g_strdup (_ ("You named no fault."));
  for (guint i = 0; i < question->drill.n_faults; i++)
    if (g_str_equal (question->drill.faults[i].id, question->verdict))
      return question->drill.n_faults > 1 ? g_strdup (_ ("✓ That is one of the two."))
                                          : g_strdup (_ ("✓ That is it."));
  /* Translators: what the person thought it was. */
  return g_strdup_printf (_ ("▲ It was not this: %s."), title_of (question, question->verdict));
}

static char *
say_best (const RwDrillBest *best)
{
  if (!best->fixed)
    return g_strdup (_ ("The program does not get to the end of this one either."));
  /* Translators: number of minutes. */
  return g_strdup_printf (ngettext ("%.0f minute", "%.0f minutes", (gulong) best->minutes), best->minutes);
}

/* What raised the odds of one of the faults most. */
static char *
say_decided (const Question *question)
{
  g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (question->knowledge, question->drill.profile);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, question->seen);
  const RwEvidence *decided = NULL;
  double most = 1;

  for (guint rank = 0; rank < rw_belief_get_n_causes (belief); rank++)
    for (guint k = 0; k < question->drill.n_faults; k++)
      if (g_str_equal (rw_belief_get_cause (belief, rank)->cause->id, question->drill.faults[k].id))
        for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
          if (rw_belief_get_factor (belief, rank, i) > most)
            {
              most = rw_belief_get_factor (belief, rank, i);
              decided = rw_belief_get_evidence (belief, i);
            }
  if (decided == NULL)
    return g_strdup (_ ("Nothing that was seen spoke for it."));
  /* Translators: what was seen; how many times more likely it made the fault. */
  return g_strdup_printf (_ ("%s: it made the fault ×%.1f as likely."), decided->title, most);
}

static char *
say_spent (const Question *question)
{
  /* Translators: two numbers of minutes. */
  return g_strdup_printf (_ ("%.0f minutes, as checks, changes of setup and repairs are reckoned; %.0f by the clock"),
                          question->reckoned, question->clock);
}

void
rw_drill_end_free (RwDrillEnd *self)
{
  if (self == NULL)
    return;
  g_free (self->faults);
  g_free (self->verdict);
  g_free (self->spent);
  g_free (self->best);
  g_free (self->decided);
  g_free (self->stopped);
  g_clear_pointer (&self->steps, g_ptr_array_unref);
  g_free (self);
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  const Question *question = data;
  RwDrillEnd *end = g_new0 (RwDrillEnd, 1);
  RwDrillBest best;

  rw_drill_best_work (&best, &question->drill, question->knowledge, cancellable);
  end->faults = say_faults (question);
  end->verdict = say_verdict (question);
  end->spent = say_spent (question);
  end->best = say_best (&best);
  end->decided = say_decided (question);
  end->steps = g_steal_pointer (&best.steps);
  if (question->n_stopped > 0)
    end->stopped = g_strdup_printf (ngettext ("%u time a lead was on its way to the mains. On a real bench that kills.",
                                              "%u times a lead was on its way to the mains. On a real bench that kills.",
                                              question->n_stopped),
                                    question->n_stopped);
  rw_drill_best_clear (&best);
  g_task_return_pointer (task, end, (GDestroyNotify) rw_drill_end_free);
}

void
rw_drill_end_async (RwJob              *job,
                    const char         *verdict,
                    GCancellable       *cancellable,
                    GAsyncReadyCallback callback,
                    gpointer            data)
{
  g_autoptr (GTask) task = g_task_new (job, cancellable, callback, data);
  const RwPracticeDrill *drill = rw_drill_of (job);
  RwKnowledge *knowledge = rw_job_get_knowledge (job);

  if (drill == NULL || knowledge == NULL)
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_NOT_FOUND,
                               _ ("This is no drill, or the knowledge could not be read."));
      return;
    }

  Question *question = g_new0 (Question, 1);
  RwSession *session = rw_job_get_session (job);

  rw_practice_drill_copy (drill, &question->drill);
  question->knowledge = rw_knowledge_ref (knowledge);
  question->seen = state_before_repair (session);
  question->verdict = g_intern_string (verdict);
  question->reckoned = rw_drill_reckon (session, knowledge);
  question->clock = rw_session_get_end (session) / 60;
  question->n_stopped = rw_practice_cabinet_get_n_lethal (rw_job_get_cabinet (job));
  g_task_set_task_data (task, question, question_free);
  g_task_run_in_thread (task, work);
}

RwDrillEnd *
rw_drill_end_finish (RwJob        *job,
                     GAsyncResult *result,
                     GError      **error)
{
  g_return_val_if_fail (g_task_is_valid (result, job), NULL);
  return g_task_propagate_pointer (G_TASK (result), error);
}
