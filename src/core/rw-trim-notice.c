/* rw-trim-notice.c: was the trim turned?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-trim-notice.h"

#include <math.h>

static const double least_steps = 5;
static const double least_share = 0.004;

/* No screw moves a rail by more without passing its limits; a lifted lead does. */
static const double lost_share = 0.20;

void
rw_trim_notice_reset (RwTrimNotice *self)
{
  self->resting = FALSE;
}

static gboolean
is_same_contact (const RwTrimNotice *self,
                 const RwReading    *sample)
{
  return rw_reading_same_spot (&self->at, sample) && !sample->over
         && fabs (sample->value - self->at.value) <= lost_share * fabs (self->at.value);
}

gboolean
rw_trim_notice_is_turn (const RwReading *from,
                        double           to)
{
  return fabs (to - from->value) > MAX (least_steps * from->step, least_share * fabs (from->value));
}

gboolean
rw_trim_notice_push (RwTrimNotice    *self,
                     const RwReading *sample,
                     const RwSettled *settled,
                     double          *from,
                     double          *to)
{
  gboolean moved = FALSE;

  if (self->resting && !is_same_contact (self, sample))
    self->resting = FALSE;
  if (!settled->settled || sample->over)
    return FALSE;
  if (self->resting)
    {
      moved = rw_trim_notice_is_turn (&self->at, settled->value);
      if (moved)
        {
          *from = self->at.value;
          *to = settled->value;
        }
    }
  self->at = *sample;
  self->at.value = settled->value;
  self->resting = TRUE;
  return moved;
}
