/* study-hands.c: a technician's hands, eyes and ears at a virtual cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing here knows what the knowledge expects: a check is answered by leads on the cabinet and the
 * meter's value, or by looking. Seconds that only warm or cool something are passed at once; all
 * others are lived through step by step.
 *
 * Minutes: a check costs its own and what the change of setup costs from the one that the cabinet is in;
 * a repair its own, the change to a running cabinet, and the checks that prove it.
 */
#include "config.h"

#include "study-hands.h"

#include <math.h>

#include "rw-practice-look.h"
#include "rw-settle.h"
#include "rw-setups.h"

static const double settle_seconds = 15, move_seconds = 1, start_seconds = 4;
static const double look_seconds = 20; /* lived through at most, of a check's minutes */
static const double usual_proof_minutes = 3, prove_seconds = 20, reset_seconds = 60;
static const double board_seconds = 180, warm_seconds = 1200, cool_seconds = 1800;
static const guint most_absent = 4;

void
study_hands_init (StudyHands      *self,
                  const StudyCase *job)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  g_autoptr (GPtrArray)
      meters = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_facts_free);

  *self = (StudyHands) { .job = job, .said = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT } };
  self->cabinet = study_case_open (job);
  self->meter = rw_practice_meter_new (self->cabinet, "m1", "bench meter", job->percent, job->counts,
                                       job->full_counts, ~job->seed);
  g_ptr_array_add (meters, rw_meter_facts_copy (rw_practice_meter_get_facts (self->meter)));
  self->session = rw_session_new (
      rw_session_header_new (job->profile, "Tidepool Racer", "", meters, started));
  rw_practice_random_seed (&self->random, job->seed ^ 0x5eed);
}

void
study_hands_clear (StudyHands *self)
{
  g_clear_object (&self->meter);
  g_clear_object (&self->cabinet);
  g_clear_object (&self->session);
}

double
study_hands_now (StudyHands *self)
{
  return rw_practice_cabinet_get_seconds (self->cabinet) + self->skipped;
}

void
study_hands_add (StudyHands *self,
                 RwEvent     event)
{
  rw_session_add (self->session, &event);
}

static RwSaid
said_of (gboolean is)
{
  return is ? RW_SAID_YES : RW_SAID_NO;
}

static RwSetup
setup_now (StudyHands *self)
{
  return (RwSetup) { said_of (rw_practice_cabinet_get_power (self->cabinet)),
                     said_of (rw_practice_cabinet_get_board_fitted (self->cabinet)),
                     said_of (rw_practice_cabinet_get_warm (self->cabinet)) };
}

static void
tell_setup (StudyHands *self)
{
  const RwSetup now = setup_now (self);

  if (now.power_on == self->said.power_on && now.board_fitted == self->said.board_fitted
      && now.warm == self->said.warm)
    return;
  self->said = now;
  study_hands_add (self, rw_event_make_setup (study_hands_now (self), now));
}

/* @seconds of which at most @lived are lived through. */
static void
pass (StudyHands *self,
      double      seconds,
      double      lived)
{
  const double skip = MAX (0, seconds - lived);

  if (skip > 0)
    study_skip (self->cabinet, skip);
  self->skipped += skip;
  rw_practice_cabinet_advance (self->cabinet, MIN (seconds, lived));
}

static void
set_power (StudyHands *self,
           gboolean    on)
{
  if (rw_practice_cabinet_get_power (self->cabinet) == on)
    return;
  rw_practice_cabinet_set_power (self->cabinet, on);
  pass (self, on ? 30 : 120, start_seconds);
}

static gboolean
suits (RwSaid   wanted,
       gboolean is)
{
  return wanted == RW_SAID_NOT || (wanted == RW_SAID_YES) == is;
}

/* The cheapest of the setups that a check can be taken in; its minutes are spent. */
static guint
choose_setup (StudyHands *self,
              guint       wanted)
{
  const guint from = rw_setups_index (setup_now (self));
  guint best = from;
  double least = INFINITY;

  for (guint s = 0; s < RW_N_SETUPS; s++)
    if ((wanted & (1u << s)) != 0 && rw_setups_minutes (from, s) < least)
      {
        least = rw_setups_minutes (from, s);
        best = s;
      }
  if (isfinite (least))
    self->minutes += least;
  return best;
}

/* Board with power off only; warming needs power, cooling needs it off. */
static void
change_setup (StudyHands *self,
              guint       to)
{
  const gboolean power = (to & 1) != 0, board = (to & 2) != 0, warm = (to & 4) != 0;

  if (rw_practice_cabinet_get_board_fitted (self->cabinet) != board)
    {
      set_power (self, FALSE);
      pass (self, board_seconds, start_seconds);
      rw_practice_cabinet_set_board_fitted (self->cabinet, board);
    }
  if (rw_practice_cabinet_get_warm (self->cabinet) != warm)
    {
      set_power (self, warm);
      pass (self, warm ? warm_seconds : cool_seconds, start_seconds);
    }
  set_power (self, power);
  tell_setup (self);
}

/* What the cabinet is in already is kept where the check does not mind. */
static void
take_setup (StudyHands    *self,
            const RwCheck *check)
{
  const RwSetup now = setup_now (self);

  if (suits (check->power, now.power_on == RW_SAID_YES)
      && suits (check->board, now.board_fitted == RW_SAID_YES)
      && suits (check->warm, now.warm == RW_SAID_YES))
    tell_setup (self);
  else
    change_setup (self, choose_setup (self, rw_setups_wanted (check)));
}

static RwReading
reading_of (StudyHands            *self,
            const RwPracticeShown *shown,
            const RwSettled       *state)
{
  RwPlace place;
  RwKind kind;
  const char *rail = rw_practice_cabinet_get_leads (self->cabinet, &place, &kind);
  RwReading reading = rw_reading_make (rail, place, kind, shown->value, shown->step,
                                       rw_practice_meter_get_facts (self->meter)->id);

  reading.over = shown->over;
  /* A person keeps what the display says, in whole counts. */
  if (state->settled)
    reading.value = floor (state->value / shown->step + 0.5) * shown->step;
  return reading;
}

gboolean
study_hands_read (StudyHands *self,
                  const char *rail,
                  RwPlace     place,
                  RwKind      kind,
                  RwReading  *out)
{
  g_autoptr (RwSettle) settle = NULL;
  double step = 0, end;
  gboolean settled = FALSE, any = FALSE;

  if (!rw_practice_cabinet_set_leads (self->cabinet, rail, place, kind))
    return FALSE;
  rw_practice_cabinet_advance (self->cabinet, move_seconds);
  g_array_unref (rw_practice_meter_take_shown (self->meter));
  end = rw_practice_cabinet_get_seconds (self->cabinet) + settle_seconds;
  while (rw_practice_cabinet_get_seconds (self->cabinet) < end && !settled)
    {
      rw_practice_cabinet_advance (self->cabinet, rw_practice_meter_get_interval (self->meter));

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

static const RwOutcome *
outcome_of (const RwCheck   *check,
            const RwReading *reading)
{
  const double value = reading->place == RW_PLACE_WIRE ? fabs (reading->value) : reading->value;

  for (guint o = 0; o < check->n_outcomes; o++)
    if (reading->over ? isinf (check->outcomes[o].to)
                      : value >= check->outcomes[o].from && value < check->outcomes[o].to)
      return &check->outcomes[o];
  return NULL;
}

static const RwOutcome *
measure (StudyHands    *self,
         const RwCheck *check)
{
  RwReading reading;

  if (!study_hands_read (self, check->rail, check->place, check->kind, &reading))
    return NULL;
  tell_setup (self);
  study_hands_add (self, rw_event_make_reading (study_hands_now (self), &reading));
  return outcome_of (check, &reading);
}

/* What happens at a reset can be told by one who has seen a reset. The minutes are spent either way. */
static gboolean
saw_no_reset (StudyHands    *self,
              const RwCheck *check)
{
  const guint before = rw_practice_cabinet_get_resets (self->cabinet);

  if (!g_str_equal (check->id, "p5-minmax-reset"))
    return FALSE;
  rw_practice_cabinet_advance (self->cabinet, reset_seconds);
  if (rw_practice_cabinet_get_resets (self->cabinet) > before)
    return FALSE;
  self->minutes += check->minutes;
  return TRUE;
}

static const RwOutcome *
look (StudyHands    *self,
      const RwCheck *check)
{
  if (saw_no_reset (self, check))
    return NULL;
  pass (self, 60 * check->minutes, look_seconds);

  const char *seen = rw_practice_look (self->cabinet, check->id);
  const int outcome = seen != NULL ? rw_check_find_outcome (check, seen) : -1;

  tell_setup (self);
  if (outcome < 0)
    return NULL;
  study_hands_add (self, rw_event_make_finding (study_hands_now (self), check->id, seen));
  return &check->outcomes[outcome];
}

const RwOutcome *
study_hands_check (StudyHands    *self,
                   const RwCheck *check)
{
  take_setup (self, check);

  const RwOutcome *outcome = check->measures ? measure (self, check) : look (self, check);

  if (outcome != NULL)
    self->minutes += check->minutes;
  return outcome;
}

/* Those that were not seen and can be asked: of a game that does not run most cannot be told. */
static void
tell_absent (StudyHands *self)
{
  static const char *const asked[] = { "resets", "garbled-graphics", "audio-hum", "no-sound",
                                       "picture-bars", "burning-smell", "distorted-sound" };
  static const char *const always[] = { "burning-smell", "supply-ticks", "dead" };
  const char *const *list = self->job->plays ? asked : always;
  const guint n = self->job->plays ? G_N_ELEMENTS (asked) : G_N_ELEMENTS (always);
  guint told = 0;

  for (guint i = 0; i < n && told < most_absent; i++)
    {
      gboolean present = FALSE;

      for (guint k = 0; k < self->job->n_symptoms; k++)
        present = present || g_str_equal (self->job->symptoms[k], list[i]);
      if (present || rw_practice_random_uniform (&self->random) < 0.4)
        continue;
      study_hands_add (self, rw_event_make_symptom (study_hands_now (self), list[i],
                                                    RW_SYMPTOM_ABSENT));
      told++;
    }
}

void
study_hands_tell_symptoms (StudyHands *self)
{
  tell_setup (self);
  for (guint i = 0; i < self->job->n_symptoms; i++)
    study_hands_add (self, rw_event_make_symptom (study_hands_now (self), self->job->symptoms[i],
                                                  RW_SYMPTOM_PRESENT));
  tell_absent (self);
}

void
study_hands_run (StudyHands *self)
{
  const guint running = 1 | 2 | (rw_practice_cabinet_get_warm (self->cabinet) ? 4u : 0u);

  self->minutes += rw_setups_minutes (rw_setups_index (setup_now (self)), running);
  change_setup (self, running);
  rw_practice_cabinet_advance (self->cabinet, prove_seconds);
  tell_setup (self);
}

static gboolean
is_trim (const RwCause *cause)
{
  return g_str_equal (cause->id, "trim-low") || g_str_equal (cause->id, "trim-high");
}

/* Symptoms that were told as there and still are. */
static guint
count_left (StudyHands *self)
{
  guint left = 0;

  for (guint i = 0; i < self->job->n_symptoms; i++)
    left += rw_practice_cabinet_has_symptom (self->cabinet, self->job->symptoms[i]);
  return left;
}

/* Some symptoms went with the repair, others did not: the first of two faults is gone. */
static void
tell_cured (StudyHands *self)
{
  for (guint i = 0; i < self->job->n_symptoms; i++)
    if (!rw_practice_cabinet_has_symptom (self->cabinet, self->job->symptoms[i]))
      study_hands_add (self, rw_event_make_symptom (study_hands_now (self), self->job->symptoms[i],
                                                    RW_SYMPTOM_CURED));
}

/* What proves a repair: the checks to be taken again after it, or some minutes of looking. */
static void
prove (StudyHands        *self,
       const RwKnowledge *knowledge,
       const RwCause     *cause)
{
  guint taken = 0;

  for (const char **id = cause->repair.recheck; *id != NULL; id++)
    {
      const RwCheck *check = rw_knowledge_find_check (knowledge, *id);

      taken += check != NULL && study_hands_check (self, check) != NULL;
    }
  if (taken == 0)
    self->minutes += usual_proof_minutes;
}

static void
turn_back (StudyHands *self,
           double      trim)
{
  if (rw_practice_cabinet_get_trim (self->cabinet) == trim)
    return;
  rw_practice_cabinet_turn_trim (self->cabinet, trim - rw_practice_cabinet_get_trim (self->cabinet));
  study_hands_add (self, rw_event_make_trim (study_hands_now (self)));
}

gboolean
study_hands_repair (StudyHands        *self,
                    const RwKnowledge *knowledge,
                    const RwCause     *cause)
{
  const double trim = rw_practice_cabinet_get_trim (self->cabinet);

  self->minutes += cause->repair.minutes;
  if (is_trim (cause))
    study_trim_set (self);

  const gboolean cured = rw_practice_cabinet_repair (self->cabinet, cause->id);

  /* It made up for something else: back to the mark. */
  if (is_trim (cause) && !cured)
    turn_back (self, trim);
  study_hands_run (self);

  const gboolean well = cured && count_left (self) == 0;

  study_hands_add (self, rw_event_make_repair (study_hands_now (self), cause->id,
                                               well ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  if (cured && !well)
    tell_cured (self);
  prove (self, knowledge, cause);
  return well && rw_practice_cabinet_get_true_n_faults (self->cabinet) == 0;
}
