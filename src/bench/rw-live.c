/* rw-live.c: what the meter shows now.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-live.h"

#include <math.h>

RwLive *
rw_live_new (const char *meter)
{
  RwLive *self = g_new0 (RwLive, 1);

  self->meter = meter;
  return self;
}

void
rw_live_free (RwLive *self)
{
  rw_live_reset (self);
  g_free (self);
}

void
rw_live_push (RwLive          *self,
              double           t,
              const RwReading *sample)
{
  const gboolean moved = !self->has_value || !rw_reading_same_spot (&self->sample, sample)
                         || sample->step != self->sample.step;

  if (moved || self->settle == NULL)
    {
      g_clear_pointer (&self->settle, rw_settle_free);
      self->settle = rw_settle_new (sample->step);
    }
  self->has_value = TRUE;
  self->sample = *sample;
  self->t = t;
  self->settled = rw_settle_push (self->settle, t, sample->over ? (double) NAN : sample->value);
}

void
rw_live_reset (RwLive *self)
{
  g_clear_pointer (&self->settle, rw_settle_free);
  *self = (RwLive){ .meter = self->meter };
}

void
rw_live_unsettle (RwLive *self)
{
  g_clear_pointer (&self->settle, rw_settle_free);
  self->settled = (RwSettled){ 0 };
  rw_trim_notice_reset (&self->notice);
}

gboolean
rw_live_get_settled (const RwLive *self,
                     RwReading    *reading)
{
  if (!self->has_value || !self->settled.settled)
    return FALSE;

  /* The median of readings with a step is such a reading, or half-way between two. */
  *reading = rw_reading_make (self->sample.rail, self->sample.place, self->sample.kind, self->settled.value,
                              self->sample.step, self->sample.meter);
  return TRUE;
}
