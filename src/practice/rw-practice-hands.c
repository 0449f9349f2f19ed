/* rw-practice-hands.c: hands at a practice cabinet that work by themselves: setups, readings, looks, as events.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing here knows what anybody expects: a check is answered by leads on the cabinet and the meter's value, or by
 * looking. What is done, and when, is for the caller to say.
 */
#include "config.h"

#include "rw-practice-hands.h"

#include <math.h>

#include "rw-practice-cabinet-private.h"
#include "rw-practice-look.h"
#include "rw-settle.h"

static const double settle_seconds = 15, move_seconds = 1;
static const double look_seconds = 20; /* lived through at most, of the time that a look takes */

void
rw_practice_hands_init (RwPracticeHands      *self,
                        RwPracticeCabinet    *cabinet,
                        RwPracticeMeter      *meter,
                        const char           *name,
                        GDateTime            *started,
                        const RwPracticePace *pace)
{
  g_autoptr (GPtrArray) meters = g_ptr_array_new ();

  *self = (RwPracticeHands) { .cabinet = cabinet,
                              .meter = meter,
                              .pace = *pace,
                              .said = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT } };
  g_ptr_array_add (meters, (gpointer) rw_practice_meter_get_facts (meter));
  self->session = rw_session_new (
      rw_session_header_new (rw_practice_cabinet_get_profile (cabinet), name, "", meters, started));
}

void
rw_practice_hands_clear (RwPracticeHands *self)
{
  g_clear_object (&self->meter);
  g_clear_object (&self->cabinet);
  g_clear_object (&self->session);
}

double
rw_practice_hands_now (const RwPracticeHands *self)
{
  return rw_practice_cabinet_get_seconds (self->cabinet) + self->skipped;
}

void
rw_practice_hands_add (RwPracticeHands *self,
                       RwEvent          event)
{
  event.t = rw_practice_hands_now (self);
  rw_session_add (self->session, &event);
}

/* --- setups --------------------------------------------------------------------------------------- */

static RwSaid
said_of (gboolean is)
{
  return is ? RW_SAID_YES : RW_SAID_NO;
}

RwSetup
rw_practice_hands_get_setup (const RwPracticeHands *self)
{
  return (RwSetup) { said_of (rw_practice_cabinet_get_power (self->cabinet)),
                     said_of (rw_practice_cabinet_get_board_fitted (self->cabinet)),
                     said_of (rw_practice_cabinet_get_warm (self->cabinet)) };
}

void
rw_practice_hands_tell_setup (RwPracticeHands *self)
{
  const RwSetup now = rw_practice_hands_get_setup (self);

  if (now.power_on == self->said.power_on && now.board_fitted == self->said.board_fitted
      && now.warm == self->said.warm)
    return;
  self->said = now;
  rw_practice_hands_add (self, rw_event_make_setup (0, now));
}

void
rw_practice_hands_skip (RwPracticeCabinet *cabinet,
                        double             seconds)
{
  RwPracticeState *state = &cabinet->model.state;
  const double target = state->power && !state->tripped ? 1 : 0;

  state->warm += (target - state->warm) * (1 - exp (-seconds / cabinet->model.params.warm_seconds));
  if (state->power)
    state->on_seconds += seconds;
  else
    state->off_seconds += seconds;
  state->reset_age += seconds;
}

void
rw_practice_hands_pass (RwPracticeHands *self,
                        double           seconds,
                        double           lived)
{
  const double skip = MAX (0, seconds - lived);

  if (skip > 0)
    rw_practice_hands_skip (self->cabinet, skip);
  self->skipped += skip;
  rw_practice_cabinet_advance (self->cabinet, MIN (seconds, lived));
}

static void
set_power (RwPracticeHands *self,
           gboolean         on)
{
  if (rw_practice_cabinet_get_power (self->cabinet) == on)
    return;
  rw_practice_cabinet_set_power (self->cabinet, on);
  rw_practice_hands_pass (self, on ? self->pace.power_on : self->pace.power_off, self->pace.lived);
}

void
rw_practice_hands_change_setup (RwPracticeHands *self,
                                RwSetup          to)
{
  const gboolean board = to.board_fitted == RW_SAID_YES, warm = to.warm == RW_SAID_YES;

  if (rw_practice_cabinet_get_board_fitted (self->cabinet) != board)
    {
      set_power (self, FALSE);
      rw_practice_hands_pass (self, self->pace.board, self->pace.lived);
      rw_practice_cabinet_set_board_fitted (self->cabinet, board);
    }
  if (rw_practice_cabinet_get_warm (self->cabinet) != warm)
    {
      set_power (self, warm);
      rw_practice_hands_pass (self, warm ? self->pace.warm_up : self->pace.cool_down, self->pace.lived);
    }
  set_power (self, to.power_on == RW_SAID_YES);
}

/* --- readings and looks --------------------------------------------------------------------------- */

static RwReading
reading_of (RwPracticeHands       *self,
            const RwPracticeShown *shown,
            const RwSettled       *state)
{
  RwPlace place;
  RwKind kind;
  const char *rail = rw_practice_cabinet_get_leads (self->cabinet, &place, &kind);
  RwReading reading = rw_reading_make (rail, place, kind, shown->value, shown->step,
                                       rw_practice_meter_get_facts (self->meter)->id);

  reading.over = shown->over;
  if (state->settled)
    reading.value = state->value;
  return reading;
}

gboolean
rw_practice_hands_read (RwPracticeHands *self,
                        const char      *rail,
                        RwPlace          place,
                        RwKind           kind,
                        RwReading       *out)
{
  g_autoptr (RwSettle) settle = NULL;
  const double glance
      = self->pace.glance > 0 ? self->pace.glance : rw_practice_meter_get_interval (self->meter);
  double step = 0, end;
  gboolean settled = FALSE, any = FALSE;

  if (!rw_practice_cabinet_set_leads (self->cabinet, rail, place, kind))
    return FALSE;
  rw_practice_cabinet_advance (self->cabinet, move_seconds);
  g_array_unref (rw_practice_meter_take_shown (self->meter));
  end = rw_practice_cabinet_get_seconds (self->cabinet) + settle_seconds;
  while (rw_practice_cabinet_get_seconds (self->cabinet) < end && !settled)
    {
      rw_practice_cabinet_advance (self->cabinet, glance);

      g_autoptr (GArray) shown = rw_practice_meter_take_shown (self->meter);

      for (guint i = 0; i < shown->len; i++)
        {
          const RwPracticeShown *value = &g_array_index (shown, RwPracticeShown, i);

          if (settle == NULL || value->step != step)
            {
              g_clear_pointer (&settle, rw_settle_free);
              settle = rw_settle_new (value->step);
              step = value->step;
            }

          const RwSettled state = rw_settle_push (settle, value->t, value->value);

          settled = state.settled;
          *out = reading_of (self, value, &state);
          any = TRUE;
        }
    }
  return any;
}

const char *
rw_practice_hands_look (RwPracticeHands *self,
                        const char      *check,
                        double           seconds)
{
  rw_practice_hands_pass (self, seconds, look_seconds);
  return rw_practice_look (self->cabinet, check);
}

/* --- symptoms ------------------------------------------------------------------------------------- */

guint
rw_practice_hands_count_left (const RwPracticeHands *self,
                              const char *const     *symptoms,
                              guint                  n)
{
  guint left = 0;

  for (guint i = 0; i < n; i++)
    left += rw_practice_cabinet_has_symptom (self->cabinet, symptoms[i]) ? 1 : 0;
  return left;
}

void
rw_practice_hands_tell_cured (RwPracticeHands   *self,
                              const char *const *symptoms,
                              guint              n)
{
  for (guint i = 0; i < n; i++)
    if (!rw_practice_cabinet_has_symptom (self->cabinet, symptoms[i]))
      rw_practice_hands_add (self, rw_event_make_symptom (0, symptoms[i], RW_SYMPTOM_CURED));
}
