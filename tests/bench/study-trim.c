/* study-trim.c: a technician sets the trim as the program advises.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-trim-advice.h"
#include "study-hands.h"

static const double set_point_share = 1.006; /* of nominal: 5.03 V, where nothing better is advised */
static const guint most_turns = 8;
static const double near_enough = 0.008; /* volts on a reference of 5 V */

/* Which rail to watch, and what it is to show. */
static void
ask_program (StudyHands   *self,
             const RwRail *reference,
             const char  **rail,
             double       *to)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (self->hands.session);
  RwTrimAdvice advice;

  *rail = reference->id;
  *to = set_point_share * reference->nominal;
  rw_trim_advice_work_out (state, NULL, NULL, &advice);
  if (advice.says != RW_TRIM_SAYS_TURN)
    return;
  *rail = rw_profile_get_rail (self->job->profile, advice.watch)->id;
  *to = advice.to;
}

gboolean
study_trim_set (StudyHands *self)
{
  const RwRail *reference = rw_profile_get_reference (self->job->profile);
  const double start = rw_practice_cabinet_get_trim (self->hands.cabinet);
  const char *rail;
  RwReading reading;
  double to;

  study_hands_run (self);
  if (!study_hands_read (self, reference->id, RW_PLACE_BOARD, RW_KIND_DC, &reading) || reading.over)
    return FALSE;
  rw_practice_hands_add (&self->hands, rw_event_make_reading (0, &reading));
  ask_program (self, reference, &rail, &to);
  for (guint turn = 0; turn < most_turns; turn++)
    {
      if (!study_hands_read (self, rail, RW_PLACE_BOARD, RW_KIND_DC, &reading) || reading.over)
        break;

      const double share = (to - reading.value) / to;

      if (fabs (share) * reference->nominal < near_enough)
        break;
      rw_practice_cabinet_turn_trim_volts (self->hands.cabinet,
                                           CLAMP (share, -0.1, 0.1) * reference->nominal);
    }
  if (rw_practice_cabinet_get_trim (self->hands.cabinet) == start)
    return TRUE;
  rw_practice_hands_add (&self->hands, rw_event_make_trim (0));
  rw_practice_hands_add (&self->hands, rw_event_make_reading (0, &reading));
  return TRUE;
}
