/* rw-job-practice.c: hands on the practice cabinet of a job, when leads are put by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-job-practice.h"

#include <glib/gi18n-lib.h>

#include "rw-job-private.h"

static const double most_minutes = 60;

RwPracticeMeter *
rw_job_get_practice_meter (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  return self->meter;
}

/* The tips moved, or the dial did: what came before settles nothing. */
static void
break_contact (RwJob *self)
{
  RwJobMeter *meter = rw_job_find_meter (self, RW_JOB_METER);

  rw_job_forget_lives (self, NULL);
  if (meter != NULL)
    rw_job_leave_contact (meter);
}

void
rw_job_set_leads_by_hand (RwJob   *self,
                          gboolean by_hand)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (self->cabinet == NULL || self->leads_by_hand == by_hand)
    return;
  self->leads_by_hand = by_hand;
  if (by_hand)
    return;
  rw_practice_meter_set_mode (self->meter, RW_PRACTICE_MODE_FOLLOW, RW_PRACTICE_JACK_VOLTS);
  rw_practice_meter_set_range (self->meter, RW_PRACTICE_RANGE_AUTO);
  rw_job_move_practice_leads (self);
}

gboolean
rw_job_get_leads_by_hand (RwJob *self)
{
  return self->leads_by_hand;
}

gboolean
rw_job_put_lead (RwJob         *self,
                 RwPracticeLead lead,
                 const char    *node)
{
  g_return_val_if_fail (RW_IS_JOB (self) && self->cabinet != NULL, FALSE);
  if (!rw_practice_cabinet_put_lead (self->cabinet, lead, node))
    return FALSE;
  break_contact (self);
  return TRUE;
}

void
rw_job_set_practice_meter (RwJob         *self,
                           RwPracticeMode mode,
                           RwPracticeJack jack,
                           int            range)
{
  g_return_if_fail (RW_IS_JOB (self) && self->meter != NULL);
  rw_practice_meter_set_mode (self->meter, mode, jack);
  rw_practice_meter_set_range (self->meter, range);
  break_contact (self);
}

void
rw_job_note (RwJob      *self,
             const char *text)
{
  RwEvent event = rw_event_make_note (0, text);

  rw_job_add (self, &event);
}

/* What a hand on the case would tell. */
static void
tell_warmth (RwJob *self)
{
  const RwSaid warm = rw_practice_cabinet_get_warm (self->cabinet) ? RW_SAID_YES : RW_SAID_NO;

  if (rw_bench_state_get_setup (rw_job_get_state (self)).warm != warm)
    rw_job_set_setup (self, (RwSetup) { RW_SAID_NOT, RW_SAID_NOT, warm });
}

void
rw_job_let_pass (RwJob *self,
                 double minutes)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (self->cabinet == NULL || !(minutes > 0))
    return;
  minutes = MIN (minutes, most_minutes);
  rw_practice_cabinet_advance (self->cabinet, 60 * minutes);
  g_bytes_unref (rw_practice_meter_take_bytes (self->meter));
  self->clock_zero -= (gint64) (60 * minutes * G_USEC_PER_SEC);
  break_contact (self);

  /* Translators: number of minutes. */
  g_autofree char *text = g_strdup_printf (ngettext ("%.0f minute passed.", "%.0f minutes passed.", (gulong) minutes),
                                           minutes);

  rw_job_note (self, text);
  tell_warmth (self);
}

RwKnowledge *
rw_job_get_knowledge (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), NULL);
  return self->knowledge;
}

void
rw_job_stop_advising (RwJob      *self,
                      const char *why)
{
  g_return_if_fail (RW_IS_JOB (self));
  self->unadvised = TRUE;
  g_free (self->advice_problem);
  self->advice_problem = g_strdup (why);
  rw_job_refresh_advice (self);
}

gboolean
rw_job_gives_advice (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), FALSE);
  return !self->unadvised;
}
