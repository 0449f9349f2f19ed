/* rw-job-meter.c: a job's meters: on a cable, or the practice meter through the same decoder.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A value becomes a sample at the spot where the leads of its meter are: on the rail where the meter stays, at
 * the spot that was chosen, or, hands-free, where it is found to be. When a link is lost, a gap is written once;
 * values after that go on as before.
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-link-bytes.h"
#include "rw-practice-meter.h"

RwJobMeter *
rw_job_find_meter (RwJob      *self,
                   const char *id)
{
  for (guint i = 0; i < self->meters->len; i++)
    {
      RwJobMeter *meter = self->meters->pdata[i];

      if (g_strcmp0 (meter->id, id) == 0)
        return meter;
    }
  return NULL;
}

void
rw_job_add_sample (RwJob           *self,
                   double           t,
                   const RwReading *sample)
{
  RwEvent event = rw_event_make_sample (MAX (t, rw_session_get_end (self->session)), sample);

  rw_session_add (self->session, &event);
}

static void
value_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          RwJobMeter         *meter)
{
  RwJob *self = meter->job;
  RwKind kind = meter->rail != NULL ? RW_KIND_DC : self->kind;

  if (value->hold)
    return;
  if (value->mode != RW_METER_MODE_NONE && !rw_meter_value_get_kind (value, &kind))
    return;

  RwReading sample = rw_reading_make (meter->rail != NULL ? meter->rail : rw_job_get_rail (self),
                                      meter->rail != NULL ? meter->place : rw_job_get_place (self), kind,
                                      value->value, value->step, meter->id);
  const double t = (double) (when_us - self->clock_zero) / G_USEC_PER_SEC;

  sample.over = value->over;
  sample.low_battery = value->low_battery;
  if (self->hands_free)
    rw_job_take_in_hands (meter, t, &sample);
  else
    rw_job_add_sample (self, t, &sample);
}

static void
tell_link (RwJob *self)
{
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_LINK], 0, rw_job_get_link_words (self));
}

static void
state_cb (RwLink     *link,
          RwLinkState state,
          const char *message,
          RwJobMeter *meter)
{
  if (state == RW_LINK_LOST)
    {
      RwEvent event = rw_event_make_gap (0, meter->id, message);

      rw_job_leave_contact (meter);
      rw_job_add (meter->job, &event);
    }
  if (state == meter->state && g_strcmp0 (meter->words, message) == 0)
    return;
  meter->state = state;
  g_free (meter->words);
  meter->words = g_strdup (message);
  tell_link (meter->job);
}

void
rw_job_tell_kind (RwJob *self)
{
  for (guint i = 0; i < self->meters->len; i++)
    {
      RwJobMeter *meter = self->meters->pdata[i];

      rw_link_set_kind (meter->link, meter->rail != NULL ? RW_KIND_DC : self->kind);
    }
}

/* --- plugging ------------------------------------------------------------------------------------- */

static void
free_meter (gpointer data)
{
  RwJobMeter *meter = data;

  g_signal_handlers_disconnect_by_data (meter->link, meter);
  rw_link_close (meter->link);
  g_object_unref (meter->link);
  rw_contact_free (meter->contact);
  g_array_unref (meter->pending);
  g_free (meter->name);
  g_free (meter->words);
  g_free (meter);
}

void
rw_job_init_meters (RwJob *self)
{
  self->meters = g_ptr_array_new_with_free_func (free_meter);
}

static gboolean
are_known (RwJob              *self,
           const RwMeterFacts *facts)
{
  const RwMeterFacts *known = rw_session_find_meter (self->session, facts->id);

  return known != NULL && known->percent == facts->percent && known->counts == facts->counts
         && known->ac == facts->ac && g_strcmp0 (known->name, facts->name) == 0;
}

void
rw_job_plug (RwJob              *self,
             const RwMeterFacts *facts,
             RwLink             *link,
             const char         *rail,
             RwPlace             place)
{
  RwJobMeter *meter = g_new0 (RwJobMeter, 1);

  g_return_if_fail (RW_IS_JOB (self) && facts != NULL && RW_IS_LINK (link));
  rw_job_unplug (self, facts->id);
  if (!are_known (self, facts))
    {
      RwEvent event = rw_event_make_meter (0, facts);

      rw_job_add (self, &event);
    }
  meter->job = self;
  meter->id = g_intern_string (facts->id);
  meter->name = g_strdup (facts->name);
  meter->link = link;
  meter->rail = rail != NULL ? g_intern_string (rail) : NULL;
  meter->place = place;
  meter->contact = rw_contact_new ();
  meter->pending = g_array_new (FALSE, FALSE, sizeof (RwHeldSample));
  rw_job_leave_contact (meter);
  g_ptr_array_add (self->meters, meter);
  g_signal_connect (link, "value", G_CALLBACK (value_cb), meter);
  g_signal_connect (link, "state", G_CALLBACK (state_cb), meter);
  rw_job_tell_kind (self);
  rw_link_open (link);
  tell_link (self);
}

void
rw_job_unplug (RwJob      *self,
               const char *id)
{
  RwJobMeter *meter = rw_job_find_meter (self, id);

  g_return_if_fail (RW_IS_JOB (self));
  if (meter == NULL)
    return;
  rw_job_forget_lives (self, meter->id);
  g_ptr_array_remove (self->meters, meter);
  tell_link (self);
}

void
rw_job_stay_on (RwJob      *self,
                const char *id,
                const char *rail,
                RwPlace     place)
{
  RwJobMeter *meter = rw_job_find_meter (self, id);

  if (meter == NULL)
    return;
  meter->rail = rail != NULL ? g_intern_string (rail) : NULL;
  meter->place = place;
  rw_job_tell_kind (self);
  rw_job_leave_contact (meter);
  rw_job_forget_lives (self, meter->id);
  tell_link (self);
}

guint
rw_job_get_n_meters (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), 0);
  return self->meters->len;
}

gboolean
rw_job_get_meter (RwJob          *self,
                  guint           i,
                  RwJobMeterInfo *out)
{
  if (i >= self->meters->len)
    return FALSE;

  const RwJobMeter *meter = self->meters->pdata[i];

  *out = (RwJobMeterInfo){
    .id = meter->id,
    .name = meter->name,
    .words = meter->words != NULL ? meter->words : "",
    .trouble = rw_link_get_trouble (meter->link),
    .state = meter->state,
    .rail = meter->rail,
    .place = meter->place,
  };
  return TRUE;
}

const char *
rw_job_get_link_words (RwJob *self)
{
  RwJobMeterInfo info;

  return rw_job_get_meter (self, 0, &info) ? info.words : NULL;
}

/* --- what they show ------------------------------------------------------------------------------- */

RwLive *
rw_job_take_live (RwJob      *self,
                  const char *meter)
{
  for (guint i = 0; i < self->lives->len; i++)
    {
      RwLive *live = self->lives->pdata[i];

      if (live->meter == meter)
        {
          self->newest_live = i;
          return live;
        }
    }
  self->newest_live = self->lives->len;
  g_ptr_array_add (self->lives, rw_live_new (meter));
  return self->lives->pdata[self->newest_live];
}

const RwLive *
rw_job_find_live (RwJob      *self,
                  const char *rail)
{
  const RwLive *found = NULL;

  for (guint i = 0; i < self->lives->len; i++)
    {
      const RwLive *live = self->lives->pdata[i];

      if (live->has_value && g_strcmp0 (live->sample.rail, rail) == 0 && (found == NULL || live->t > found->t))
        found = live;
    }
  return found;
}

/* The meter that moves about. (nullable) */
static const RwLive *
find_roving (RwJob *self)
{
  for (guint i = 0; i < self->lives->len; i++)
    {
      const RwLive *live = self->lives->pdata[i];
      const RwJobMeter *meter = rw_job_find_meter (self, live->meter);

      if (live->has_value && meter != NULL && meter->rail == NULL)
        return live;
    }
  return NULL;
}

const RwLive *
rw_job_get_live (RwJob *self)
{
  static const RwLive nothing = { 0 };
  const RwLive *live = find_roving (self);

  if (live == NULL)
    live = rw_job_find_live (self, rw_job_get_rail (self));
  if (live == NULL && self->newest_live < self->lives->len)
    live = self->lives->pdata[self->newest_live];
  return live != NULL ? live : &nothing;
}

void
rw_job_forget_lives (RwJob      *self,
                     const char *meter)
{
  for (guint i = 0; i < self->lives->len; i++)
    {
      RwLive *live = self->lives->pdata[i];

      if (meter == NULL || live->meter == meter)
        rw_live_reset (live);
    }
  self->live_news = TRUE;
}

/* --- practice ------------------------------------------------------------------------------------- */

void
rw_job_start_practice_meter (RwJob *self)
{
  rw_job_plug (self, rw_practice_meter_get_facts (self->meter), rw_link_bytes_new (rw_decoder_new ("lines")), NULL,
               RW_PLACE_BOARD);
  rw_job_move_practice_leads (self);
}

void
rw_job_move_practice_leads (RwJob *self)
{
  RwJobMeter *meter = rw_job_find_meter (self, RW_JOB_METER);

  if (!self->leads_by_hand)
    rw_practice_cabinet_set_leads (self->cabinet, rw_job_get_rail (self), rw_job_get_place (self), self->kind);
  rw_job_forget_lives (self, NULL);
  if (meter != NULL)
    rw_job_leave_contact (meter);
}

void
rw_job_advance_practice (RwJob *self,
                         double seconds)
{
  RwJobMeter *meter = rw_job_find_meter (self, RW_JOB_METER);

  rw_practice_cabinet_advance (self->cabinet, seconds);

  g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (self->meter);
  gsize n = 0;
  const guint8 *data = g_bytes_get_data (bytes, &n);

  if (n > 0 && meter != NULL)
    rw_link_bytes_push (RW_LINK_BYTES (meter->link), data, n, g_get_monotonic_time ());
}
