/* rw-job-meter.c: a job's meter: on a cable, or the practice meter through the same decoder.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value becomes a sample at the spot where the leads are said to be. When the link is lost, a gap is
 * written once; values after that go on as before.
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-link-bytes.h"
#include "rw-practice-meter.h"

static void
value_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          RwJob              *self)
{
  RwKind kind = self->kind;

  if (value->hold)
    return;
  if (value->mode != RW_METER_MODE_NONE && !rw_meter_value_get_kind (value, &kind))
    return;

  RwReading sample = rw_reading_make (rw_job_get_rail (self), rw_job_get_place (self), kind, value->value,
                                      value->step, RW_JOB_METER);

  sample.over = value->over;

  const double t = (double) (when_us - self->clock_zero) / G_USEC_PER_SEC;
  RwEvent event = rw_event_make_sample (MAX (t, rw_session_get_end (self->session)), &sample);

  rw_session_add (self->session, &event);
}

static void
set_words (RwJob      *self,
           const char *words)
{
  if (g_strcmp0 (self->link_words, words) == 0)
    return;
  g_free (self->link_words);
  self->link_words = g_strdup (words);
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_LINK], 0, self->link_words);
}

static void
state_cb (RwLink     *link,
          RwLinkState state,
          const char *message,
          RwJob      *self)
{
  if (state == RW_LINK_LOST)
    {
      RwEvent event = rw_event_make_gap (0, RW_JOB_METER, message);

      rw_job_add (self, &event);
    }
  set_words (self, message);
}

void
rw_job_set_link (RwJob  *self,
                 RwLink *link)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (self->link != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->link, self);
      rw_link_close (self->link);
      g_clear_object (&self->link);
      rw_live_reset (&self->live);
      set_words (self, NULL);
    }
  self->link = link;
  if (link == NULL)
    return;
  g_signal_connect (link, "value", G_CALLBACK (value_cb), self);
  g_signal_connect (link, "state", G_CALLBACK (state_cb), self);
  rw_link_open (link);
}

const char *
rw_job_get_link_words (RwJob *self)
{
  return self->link_words;
}

/* --- practice ------------------------------------------------------------------------------------- */

void
rw_job_start_practice_meter (RwJob *self)
{
  rw_job_set_link (self, rw_link_bytes_new (rw_decoder_new ("lines")));
  rw_job_move_practice_leads (self);
}

void
rw_job_move_practice_leads (RwJob *self)
{
  rw_practice_cabinet_set_leads (self->cabinet, rw_job_get_rail (self), rw_job_get_place (self), self->kind);
  rw_live_reset (&self->live);
}

void
rw_job_advance_practice (RwJob *self,
                         double seconds)
{
  rw_practice_cabinet_advance (self->cabinet, seconds);

  g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (self->meter);
  gsize n = 0;
  const guint8 *data = g_bytes_get_data (bytes, &n);

  if (n > 0 && RW_IS_LINK_BYTES (self->link))
    rw_link_bytes_push (RW_LINK_BYTES (self->link), data, n, g_get_monotonic_time ());
}
