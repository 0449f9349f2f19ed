/* rw-job-stages.c: a job's bring-up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The stages are made anew whenever somebody asks: they follow from the events and the time alone, and cost little. What
 * the meter shows just now stops them as well, for as long as it shows it: "off now" must not wait until a value has
 * settled and is kept.
 *
 * What was shown before the power came on says nothing of it; and a supply comes up, and a meter's display follows, so
 * that a value below nominal is believed only after come_up_seconds, and only at first power, where the leads are clipped
 * on: later they move about, and show little or nothing on the way. What is too high is believed at once, everywhere.
 */
#include "config.h"

#include "rw-job-stages.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-job-private.h"

static const double come_up_seconds = 1.5;

RwStageWords *
rw_job_get_stage_words (RwJob   *self,
                        GError **error)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  if (self->stage_words == NULL)
    self->stage_words = rw_stage_words_load_shipped (error);
  return self->stage_words;
}

static const char *
name_symptom (const char *id,
              gpointer    data)
{
  return rw_job_symptom_title (data, id);
}

/* --- off now -------------------------------------------------------------------------------------- */

/* When the power came on that is on now, by what was said; −∞: nobody said. O(landmarks). */
static double
find_power_on (RwJob *self)
{
  double on = -INFINITY;

  for (guint i = rw_session_get_n_landmarks (self->session); i > 0; i--)
    {
      const guint index = rw_session_get_landmark (self->session, i - 1);
      const RwEvent *event = rw_session_get_event (self->session, index);

      if (event->type != RW_EVENT_SETUP || event->setup.power_on == RW_SAID_NOT
          || !rw_session_is_live (self->session, index))
        continue;
      if (event->setup.power_on == RW_SAID_NO)
        break;
      on = event->t;
    }
  return on;
}

static gboolean
is_first_power (RwJob *self)
{
  const char *stage = rw_bench_state_get_stage (rw_job_get_state (self));

  return g_strcmp0 (stage, rw_stage_to_id (RW_STAGE_FIRST_POWER)) == 0;
}

static gboolean
is_too_early (RwJob        *self,
              const RwLive *live)
{
  const RwProfile *profile = rw_job_get_profile (self);
  const int index = rw_profile_index_of (profile, live->sample.rail);
  const double age = live->t - find_power_on (self);
  const gboolean low = index >= 0
                       && fabs (live->sample.value) < fabs (rw_profile_get_rail (profile, (guint) index)->nominal);

  return age < 0 || (low && (age < come_up_seconds || !is_first_power (self)));
}

static gboolean
look_at_meter (RwJob        *self,
               const RwLive *live,
               RwGateReason *out)
{
  if (!live->has_value || g_str_equal (live->sample.rail, RW_LIVE_SOMEWHERE) || is_too_early (self, live))
    return FALSE;

  const RwMeterFacts *facts = rw_session_find_meter (self->session, live->sample.meter);
  const double u = rw_meter_facts_u_total (facts, &live->sample);

  return rw_stages_look_live (rw_job_get_profile (self), rw_bench_state_get_setup (rw_job_get_state (self)),
                              &live->sample, u, out);
}

gboolean
rw_job_look_live (RwJob        *self,
                  RwGateReason *out)
{
  g_return_val_if_fail (RW_IS_JOB (self) && out != NULL, FALSE);

  if (!rw_job_can_write (self) || rw_bench_state_get_stage (rw_job_get_state (self)) == NULL)
    return FALSE;
  for (guint i = 0; i < self->lives->len; i++)
    if (look_at_meter (self, self->lives->pdata[i], out))
      return TRUE;
  return FALSE;
}

RwStages *
rw_job_dup_stages (RwJob   *self,
                   GError **error)
{
  RwStageWords *words = rw_job_get_stage_words (self, error);

  if (words == NULL)
    return NULL;

  RwStages *stages = rw_stages_new_named (self->session, words, rw_job_get_now (self), name_symptom, self);

  RwGateReason reason;

  if (rw_job_look_live (self, &reason))
    {
      rw_stages_take_live (stages, &reason);
      rw_gate_reason_clear (&reason);
    }
  return stages;
}

char *
rw_job_dup_off_now (RwJob *self)
{
  if (rw_bench_state_get_stage (rw_job_get_state (self)) == NULL)
    return NULL;

  g_autoptr (RwStages) stages = rw_job_dup_stages (self, NULL);
  const RwGateReason *off = stages != NULL ? rw_stages_get_off (stages) : NULL;

  return off != NULL ? g_strdup (off->text) : NULL;
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

const char *
rw_job_stage_title (RwJob      *self,
                    const char *id)
{
  RwStageWords *words = rw_job_get_stage_words (self, NULL);
  RwStage stage;

  return words != NULL && rw_stage_from_id (id, &stage) ? rw_stage_words_get (words, stage)->title : id;
}

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
