/* rw-job-stages.c: a job's bring-up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The stages are made anew whenever somebody asks: they follow from the events and the time alone, and cost little.
 */
#include "config.h"

#include "rw-job-stages.h"

#include <glib/gi18n-lib.h>

#include "rw-job-private.h"

RwStageWords *
rw_job_get_stage_words (RwJob   *self,
                        GError **error)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  if (self->stage_words == NULL)
    self->stage_words = rw_stage_words_load_shipped (error);
  return self->stage_words;
}

RwStages *
rw_job_dup_stages (RwJob   *self,
                   GError **error)
{
  RwStageWords *words = rw_job_get_stage_words (self, error);

  return words != NULL ? rw_stages_new (self->session, words, rw_job_get_now (self)) : NULL;
}

/* --- what people do ------------------------------------------------------------------------------- */

void
rw_job_enter_stage (RwJob  *self,
                    RwStage stage)
{
  RwEvent event = rw_event_make_stage (0, rw_stage_to_id (stage));

  rw_job_add (self, &event);
}

void
rw_job_read_hazard (RwJob  *self,
                    RwStage stage)
{
  RwEvent event = rw_event_make_stage_read (0, rw_stage_to_id (stage));

  rw_job_add (self, &event);
}

void
rw_job_go_against (RwJob      *self,
                   RwStage     stage,
                   const char *why)
{
  RwEvent event = rw_event_make_stage_against (0, rw_stage_to_id (stage), why);

  rw_job_add (self, &event);
}

void
rw_job_answer_stage (RwJob                 *self,
                     const RwStageQuestion *question,
                     gboolean               yes)
{
  RwEvent event = rw_event_make_finding (0, question->id, yes ? "yes" : "no");

  rw_job_add (self, &event);
}

/* --- off now -------------------------------------------------------------------------------------- */

static char *
look_live (RwJob *self)
{
  const RwLive *live = rw_job_get_live (self);
  RwGateReason reason = { 0 };

  if (!live->has_value || !rw_job_can_write (self) || g_str_equal (live->sample.rail, RW_LIVE_SOMEWHERE))
    return NULL;

  const RwMeterFacts *facts = rw_session_find_meter (self->session, live->sample.meter);
  const double u = rw_meter_facts_u_total (facts, &live->sample);

  if (!rw_stages_look_live (rw_job_get_profile (self), rw_bench_state_get_setup (rw_job_get_state (self)), &live->sample,
                            u, &reason))
    return NULL;

  char *text = g_steal_pointer (&reason.text);

  rw_gate_reason_clear (&reason);
  return text;
}

char *
rw_job_dup_off_now (RwJob *self)
{
  if (rw_bench_state_get_stage (rw_job_get_state (self)) == NULL)
    return NULL;

  g_autoptr (RwStages) stages = rw_job_dup_stages (self, NULL);
  const RwGateReason *off = stages != NULL ? rw_stages_get_off (stages) : NULL;

  return off != NULL ? g_strdup (off->text) : look_live (self);
}

/* --- the label ------------------------------------------------------------------------------------ */

RwLabel *
rw_job_make_label (RwJob      *self,
                   const char *who)
{
  const RwSessionHeader *header = rw_session_get_header (self->session);
  g_autoptr (GDateTime) last = g_date_time_add_seconds (header->started, rw_session_get_end (self->session));
  g_autoptr (GDateTime) local = g_date_time_to_local (last != NULL ? last : header->started);
  g_autofree char *day = g_date_time_format (local, "%Y-%m-%d");

  return rw_label_new (self->session, rw_job_get_state (self), day, who);
}

/* --- words ---------------------------------------------------------------------------------------- */

const RwStageQuestion *
rw_job_find_stage_question (RwJob      *self,
                            const char *check)
{
  RwStageWords *words = rw_job_get_stage_words (self, NULL);

  for (guint i = 0; words != NULL && i < RW_N_STAGES; i++)
    {
      GArray *questions = rw_stage_words_get (words, i)->questions;

      for (guint k = 0; k < questions->len; k++)
        {
          const RwStageQuestion *question = &g_array_index (questions, RwStageQuestion, k);

          if (g_strcmp0 (question->id, check) == 0)
            return question;
        }
    }
  return NULL;
}
