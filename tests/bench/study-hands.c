/* study-hands.c: a technician's hands, eyes and ears at a virtual cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing here knows what the knowledge expects: a check is answered by the hands of a practice cabinet. Seconds that
 * only warm or cool something are passed at once; all others are lived through step by step.
 *
 * Minutes: a check costs its own and what the change of setup costs from the one that the cabinet is in;
 * a repair its own, the change to a running cabinet, and the checks that prove it.
 */
#include "config.h"

#include "study-hands.h"

#include <math.h>

#include "rw-setups.h"

static const double usual_proof_minutes = 3, prove_seconds = 20, reset_seconds = 60;
static const guint most_absent = 4;
static const RwPracticePace pace = { .power_on = 30,
                                     .power_off = 120,
                                     .board = 180,
                                     .warm_up = 1200,
                                     .cool_down = 1800,
                                     .lived = 4 };

void
study_hands_init (StudyHands      *self,
                  const StudyCase *job)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  RwPracticeCabinet *cabinet = study_case_open (job);

  *self = (StudyHands) { .job = job };
  rw_practice_hands_init (&self->hands, cabinet,
                          rw_practice_meter_new (cabinet, "m1", "bench meter", job->percent, job->counts,
                                                 job->full_counts, ~job->seed),
                          "Tidepool Racer", started, &pace);
  rw_practice_random_seed (&self->random, job->seed ^ 0x5eed);
}

void
study_hands_clear (StudyHands *self)
{
  rw_practice_hands_clear (&self->hands);
}

static guint
setup_now (StudyHands *self)
{
  return rw_setups_index (rw_practice_hands_get_setup (&self->hands));
}

/* Its minutes are spent. */
static void
change_setup (StudyHands *self,
              guint       to)
{
  self->minutes += rw_setups_minutes (setup_now (self), to);
  rw_practice_hands_change_setup (&self->hands, rw_setups_get_setup (to));
  rw_practice_hands_tell_setup (&self->hands);
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

gboolean
study_hands_read (StudyHands *self,
                  const char *rail,
                  RwPlace     place,
                  RwKind      kind,
                  RwReading  *out)
{
  if (!rw_practice_hands_read (&self->hands, rail, place, kind, out))
    return FALSE;
  /* A person keeps what the display says, in whole counts. */
  if (!out->over)
    out->value = floor (out->value / out->step + 0.5) * out->step;
  return TRUE;
}

static const RwOutcome *
measure (StudyHands    *self,
         const RwCheck *check)
{
  RwReading reading;

  if (!study_hands_read (self, check->rail, check->place, check->kind, &reading))
    return NULL;
  rw_practice_hands_tell_setup (&self->hands);
  rw_practice_hands_add (&self->hands, rw_event_make_reading (0, &reading));
  return outcome_of (check, &reading);
}

/* What happens at a reset can be told by one who has seen a reset. The minutes are spent either way. */
static gboolean
saw_no_reset (StudyHands    *self,
              const RwCheck *check)
{
  RwPracticeCabinet *cabinet = self->hands.cabinet;
  const guint before = rw_practice_cabinet_get_resets (cabinet);

  if (!g_str_equal (check->id, "p5-minmax-reset"))
    return FALSE;
  rw_practice_cabinet_advance (cabinet, reset_seconds);
  if (rw_practice_cabinet_get_resets (cabinet) > before)
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

  const char *seen = rw_practice_hands_look (&self->hands, check->id, 60 * check->minutes);
  const int outcome = seen != NULL ? rw_check_find_outcome (check, seen) : -1;

  rw_practice_hands_tell_setup (&self->hands);
  if (outcome < 0)
    return NULL;
  rw_practice_hands_add (&self->hands, rw_event_make_finding (0, check->id, seen));
  return &check->outcomes[outcome];
}

const RwOutcome *
study_hands_check (StudyHands    *self,
                   const RwCheck *check)
{
  change_setup (self, rw_setups_find_nearest (setup_now (self), rw_setups_wanted (check)));

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
      rw_practice_hands_add (&self->hands, rw_event_make_symptom (0, list[i],
                                                    RW_SYMPTOM_ABSENT));
      told++;
    }
}

void
study_hands_tell_symptoms (StudyHands *self)
{
  rw_practice_hands_tell_setup (&self->hands);
  for (guint i = 0; i < self->job->n_symptoms; i++)
    rw_practice_hands_add (&self->hands, rw_event_make_symptom (0, self->job->symptoms[i],
                                                  RW_SYMPTOM_PRESENT));
  tell_absent (self);
}

void
study_hands_run (StudyHands *self)
{
  change_setup (self, 1 | 2 | (rw_practice_cabinet_get_warm (self->hands.cabinet) ? 4u : 0u));
  rw_practice_cabinet_advance (self->hands.cabinet, prove_seconds);
  rw_practice_hands_tell_setup (&self->hands);
}

static gboolean
is_trim (const RwCause *cause)
{
  return g_str_equal (cause->id, "trim-low") || g_str_equal (cause->id, "trim-high");
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
  if (rw_practice_cabinet_get_trim (self->hands.cabinet) == trim)
    return;
  rw_practice_cabinet_turn_trim (self->hands.cabinet, trim - rw_practice_cabinet_get_trim (self->hands.cabinet));
  rw_practice_hands_add (&self->hands, rw_event_make_trim (0));
}

gboolean
study_hands_repair (StudyHands        *self,
                    const RwKnowledge *knowledge,
                    const RwCause     *cause)
{
  const double trim = rw_practice_cabinet_get_trim (self->hands.cabinet);

  self->minutes += cause->repair.minutes;
  if (is_trim (cause))
    study_trim_set (self);

  const gboolean cured = rw_practice_cabinet_repair (self->hands.cabinet, cause->id);

  /* It made up for something else: back to the mark. */
  if (is_trim (cause) && !cured)
    turn_back (self, trim);
  study_hands_run (self);

  const gboolean well
      = cured && rw_practice_hands_count_left (&self->hands, self->job->symptoms, self->job->n_symptoms) == 0;

  rw_practice_hands_add (&self->hands, rw_event_make_repair (0, cause->id,
                                               well ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  if (cured && !well)
    rw_practice_hands_tell_cured (&self->hands, self->job->symptoms, self->job->n_symptoms);
  prove (self, knowledge, cause);
  return well && rw_practice_cabinet_get_true_n_faults (self->hands.cabinet) == 0;
}
