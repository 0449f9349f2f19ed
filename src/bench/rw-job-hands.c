/* rw-job-hands.c: hands-free: settled values are kept by themselves, on the rail that they are found to be.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One contact after another (rw-contact.h). A contact's samples are held until its spot is known, since a sample
 * belongs to a rail:
 *
 *   air ──a value──► held ──settles──► which rail? ──sure──► placed: the held samples and the reading are written
 *                                          └──not sure──► a question waits; nothing is written
 *   placed ──moves on without a break──► written as it goes ──settles──► the trim was turned; a new reading
 *   placed ──breaks off──► air
 *
 * A meter that stays on a rail is always placed, and so is the practice meter, whose leads are where they were put.
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

/* One screw's movement between two samples is less than this share; leads that hop to another rail are more. */
static const double break_share = 0.06;
static const double break_steps = 10;

/* Held samples this near to the settled value are of the contact, not of the way to it. */
static const double near_share = 0.01;
static const double near_steps = 5;
static const guint most_held = 256;

static void
tell (RwJob *self)
{
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_HANDS], 0);
}

static void
free_question (RwJobQuestion *question)
{
  g_free (question->text);
  g_free (question);
}

/* @words: (transfer full) (nullable). */
static void
set_words (RwJob *self,
           char  *words)
{
  g_free (self->hands_words);
  self->hands_words = words;
  g_clear_pointer (&self->question, free_question);
}

void
rw_job_leave_contact (RwJobMeter *meter)
{
  meter->placed = FALSE;
  meter->last_value = NAN;
  meter->rested.rail = NULL;
  g_array_set_size (meter->pending, 0);
}

/* --- samples -------------------------------------------------------------------------------------- */

static gboolean
breaks_off (const RwJobMeter *meter,
            const RwReading  *sample)
{
  const double before = meter->last_value, now = sample->value;

  return sample->over || isnan (before)
         || fabs (now - before) > break_share * MAX (fabs (now), fabs (before)) + break_steps * sample->step;
}

static void
put_at (RwReading  *sample,
        const char *rail,
        RwPlace     place)
{
  sample->rail = g_intern_string (rail);
  sample->place = place;
}

/* What the window shows of a meter whose leads may be anywhere. */
static void
show_unplaced (RwJob           *self,
               double           t,
               const RwReading *sample)
{
  RwReading somewhere = *sample;

  put_at (&somewhere, RW_LIVE_SOMEWHERE, sample->place);
  rw_live_push (rw_job_take_live (self, sample->meter), t, &somewhere);
  self->live_news = TRUE;
}

static void
hold (RwJobMeter      *meter,
      double           t,
      const RwReading *sample)
{
  const RwHeldSample held = { t, *sample };

  if (meter->pending->len >= most_held)
    g_array_remove_index (meter->pending, 0);
  g_array_append_val (meter->pending, held);
}

static void
write_held (RwJobMeter *meter,
            double      settled)
{
  for (guint i = 0; i < meter->pending->len; i++)
    {
      RwHeldSample *held = &g_array_index (meter->pending, RwHeldSample, i);

      if (held->sample.over
          || fabs (held->sample.value - settled) > near_share * fabs (settled) + near_steps * held->sample.step)
        continue;
      put_at (&held->sample, meter->at_rail, meter->at_place);
      rw_job_add_sample (meter->job, held->t, &held->sample);
    }
  g_array_set_size (meter->pending, 0);
}

/* --- settled -------------------------------------------------------------------------------------- */

static void
keep (RwJobMeter      *meter,
      const RwReading *reading)
{
  RwJob *self = meter->job;
  RwEvent event = rw_event_make_reading (0, reading);

  if (meter->rested.rail != NULL && rw_reading_same_spot (&meter->rested, reading))
    rw_job_note_turn (self, &meter->rested, reading->value);
  set_words (self, NULL);
  rw_job_add (self, &event);
  meter->rested = *reading;
  if (meter->rail == NULL && self->cabinet == NULL)
    rw_job_aim_next (self, reading);
  tell (self);
}

static void
place_contact (RwJobMeter *meter,
               const char *rail,
               RwPlace     place)
{
  meter->placed = TRUE;
  meter->at_rail = g_intern_string (rail);
  meter->at_place = place;
}

static char *
say_guess (RwJob             *self,
           const RwRailGuess *guess)
{
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self), guess->rail);

  /* Translators: rail, place. */
  return g_strdup_printf (_ ("%s, %s"), rail != NULL ? rail->label : guess->rail, rw_place_get_label (guess->place));
}

/* Takes what may be chosen out of @guesses: spots, not "none", not the wrong way round. */
static RwJobQuestion *
make_question (RwJob             *self,
               const RwReading   *reading,
               const RwRailGuess *guesses,
               guint              n)
{
  RwJobQuestion *question = g_new0 (RwJobQuestion, 1);
  g_autofree char *value = rw_quantity_format (reading->value, reading->step, reading->kind);

  question->reading = *reading;
  for (guint i = 0; i < n && question->n < G_N_ELEMENTS (question->guess); i++)
    if (guesses[i].rail != NULL && !guesses[i].reversed && guesses[i].p >= 0.01)
      question->guess[question->n++] = guesses[i];
  if (question->n == 0)
    {
      free_question (question);
      return NULL;
    }

  g_autofree char *first = say_guess (self, &question->guess[0]);
  g_autofree char *second = question->n > 1 ? say_guess (self, &question->guess[1]) : NULL;

  put_at (&question->reading, question->guess[0].rail, question->guess[0].place);
  question->text = second != NULL
                       /* Translators: value, rail at place, another rail at place. */
                       ? g_strdup_printf (_ ("%s settled. Is it %s (Y) or %s (E)?"), value, first, second)
                       /* Translators: value, rail at place. */
                       : g_strdup_printf (_ ("%s settled. Is it %s (Y)?"), value, first);
  return question;
}

static char *
say_not_kept (RwJob             *self,
              const RwReading   *reading,
              const RwRailGuess *best)
{
  g_autofree char *value = rw_quantity_format (reading->value, reading->step, reading->kind);

  if (best != NULL && best->rail != NULL && best->reversed)
    {
      const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self), best->rail);

      /* Translators: value, rail. */
      return g_strdup_printf (_ ("%s looks like %s with the leads the wrong way round. Swap them; nothing was kept."),
                              value, rail != NULL ? rail->label : best->rail);
    }
  /* Translators: value. */
  return g_strdup_printf (_ ("%s fits no rail of this cabinet, so it was not kept. Check where both leads are, or choose "
                             "the rail and press Space."),
                          value);
}

/* A value came to rest somewhere: where? */
static void
recognise (RwJobMeter *meter,
           RwReading  *reading,
           double      u)
{
  RwJob *self = meter->job;
  const RwMeterFacts *facts = rw_session_find_meter (self->session, meter->id);
  RwRailGuess guesses[8];
  RwRailGuessInput input = { .state = rw_job_get_state (self),
                             .asked_rail = rw_job_get_rail (self),
                             .asked_place = rw_job_get_place (self),
                             .place_said = TRUE,
                             .kind = reading->kind,
                             .value = reading->value };

  input.u_own = MAX (u, rw_meter_facts_u_own (facts, reading));
  input.u = hypot (input.u_own, rw_meter_facts_u_common (facts, reading));

  const guint n = rw_rail_guess (&input, guesses, G_N_ELEMENTS (guesses));
  const RwRailGuess *best = n > 0 ? &guesses[0] : NULL;

  if (best != NULL && best->p >= RW_RAIL_GUESS_SURE && best->rail != NULL && !best->reversed)
    {
      place_contact (meter, best->rail, best->place);
      write_held (meter, reading->value);
      put_at (reading, best->rail, best->place);
      keep (meter, reading);
      return;
    }

  const gboolean none = best == NULL || (best->p >= RW_RAIL_GUESS_SURE && (best->rail == NULL || best->reversed));
  RwJobQuestion *question = none ? NULL : make_question (self, reading, guesses, n);

  set_words (self, question != NULL ? g_strdup (question->text) : say_not_kept (self, reading, best));
  self->question = question;
  tell (self);
}

static void
settle (RwJobMeter      *meter,
        const RwReading *sample,
        const RwSettled *settled)
{
  RwReading reading = rw_reading_make (sample->rail, sample->place, sample->kind, settled->value, sample->step,
                                       meter->id);

  reading.low_battery = sample->low_battery;
  if (meter->placed)
    keep (meter, &reading);
  else
    recognise (meter, &reading, settled->u);
}

/* --- the stream ----------------------------------------------------------------------------------- */

void
rw_job_take_in_hands (RwJobMeter *meter,
                      double      t,
                      RwReading  *sample)
{
  RwJob *self = meter->job;
  const gboolean fixed = meter->rail != NULL || self->cabinet != NULL;
  RwSettled settled;
  const RwContactState state
      = rw_contact_push (meter->contact, t, sample->over ? (double) NAN : sample->value, sample->step, &settled);

  if (state == RW_CONTACT_NONE || breaks_off (meter, sample))
    rw_job_leave_contact (meter);
  meter->last_value = sample->over ? (double) NAN : sample->value;
  if (fixed && !meter->placed)
    place_contact (meter, sample->rail, sample->place);
  if (meter->placed)
    {
      put_at (sample, meter->at_rail, meter->at_place);
      rw_job_add_sample (self, t, sample);
    }
  else
    {
      hold (meter, t, sample);
      show_unplaced (self, t, sample);
    }
  if (state == RW_CONTACT_SETTLED)
    settle (meter, sample, &settled);
}

/* --- what people do ------------------------------------------------------------------------------- */

void
rw_job_set_hands_free (RwJob   *self,
                       gboolean on)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (self->hands_free == on)
    return;
  self->hands_free = on;
  set_words (self, NULL);
  for (guint i = 0; i < self->meters->len; i++)
    {
      RwJobMeter *meter = self->meters->pdata[i];

      rw_contact_reset (meter->contact);
      rw_job_leave_contact (meter);
    }
  rw_job_forget_lives (self, NULL);
  tell (self);
}

gboolean
rw_job_get_hands_free (RwJob *self)
{
  return self->hands_free;
}

const RwJobQuestion *
rw_job_get_question (RwJob *self)
{
  return self->question;
}

const char *
rw_job_get_hands_words (RwJob *self)
{
  return self->hands_words;
}

void
rw_job_answer (RwJob *self,
               guint  i)
{
  if (self->question == NULL || i >= self->question->n)
    return;

  const RwRailGuess guess = self->question->guess[i];
  RwReading reading = self->question->reading;
  RwJobMeter *meter = rw_job_find_meter (self, reading.meter);

  put_at (&reading, guess.rail, guess.place);
  if (meter != NULL && !isnan (meter->last_value) && meter->pending->len > 0)
    {
      place_contact (meter, guess.rail, guess.place);
      write_held (meter, reading.value);
    }
  if (meter != NULL)
    keep (meter, &reading);
}

void
rw_job_drop_question (RwJob *self)
{
  set_words (self, NULL);
  tell (self);
}

void
rw_job_clear_hands (RwJob *self)
{
  set_words (self, NULL);
}
