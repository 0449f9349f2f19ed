/* rw-drill-best.c: what a drill would have cost in the order that the program advises.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The advice is followed to the letter: its check is taken, its repair done. Answers come from the cabinet (rw-practice-
 * hands.h). A check that the cabinet cannot answer, or that
 * is advised twice in a row, is set aside. Minutes are those of the knowledge.
 */
#include "config.h"

#include "rw-drill-best.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-advice.h"
#include "rw-drill-reckon.h"
#include "rw-practice-hands.h"
#include "rw-quantity.h"
#include "rw-setups.h"

static const guint most_steps = 60;
static const double look_seconds = 20, run_seconds = 20;
/* Every second is lived through. */
static const RwPracticePace pace
    = { .power_on = 10, .power_off = 10, .warm_up = 1200, .cool_down = 1800, .lived = INFINITY, .glance = 0.25 };

typedef struct
{
  RwDrillBest           *out;
  const RwPracticeDrill *drill;
  RwKnowledge           *knowledge; /* for the profile */
  RwPracticeHands        hands;
  GHashTable            *skipped;
  const char            *last; /* check taken last */
} Work;

static void G_GNUC_PRINTF (2, 3)
note (Work       *work,
      const char *format,
      ...)
{
  va_list args;

  va_start (args, format);
  g_ptr_array_add (work->out->steps, g_strdup_vprintf (format, args));
  va_end (args);
}

/* --- checks --------------------------------------------------------------------------------------- */

static void
change_setup (Work *work,
              guint to)
{
  work->out->minutes += rw_setups_minutes (rw_setups_index (rw_practice_hands_get_setup (&work->hands)), to);
  rw_practice_hands_change_setup (&work->hands, rw_setups_get_setup (to));
}

/* The cheapest setup that the check can be taken in. */
static void
take_setup (Work          *work,
            const RwCheck *check)
{
  const guint from = rw_setups_index (rw_practice_hands_get_setup (&work->hands));

  change_setup (work, rw_setups_find_nearest (from, rw_setups_wanted (check)));
  rw_practice_hands_tell_setup (&work->hands);
}

static gboolean
measure (Work          *work,
         const RwCheck *check)
{
  RwReading reading;

  if (!rw_practice_hands_read (&work->hands, check->rail, check->place, check->kind, &reading))
    return FALSE;
  rw_practice_hands_add (&work->hands, rw_event_make_reading (0, &reading));

  g_autofree char *value = rw_quantity_format (reading.value, reading.step, reading.kind);

  /* Translators: title of a check; its value. */
  note (work, _ ("%s: %s"), check->title, reading.over ? _ ("OL") : value);
  return TRUE;
}

static gboolean
look (Work          *work,
      const RwCheck *check)
{
  const char *seen = rw_practice_hands_look (&work->hands, check->id, MIN (60 * check->minutes, look_seconds));
  const int outcome = seen != NULL ? rw_check_find_outcome (check, seen) : -1;

  if (outcome < 0)
    return FALSE;
  rw_practice_hands_add (&work->hands, rw_event_make_finding (0, check->id, seen));
  /* Translators: title of a check; what it showed. */
  note (work, _ ("%s: %s"), check->title, check->outcomes[outcome].title);
  return TRUE;
}

static void
take_check (Work          *work,
            const RwCheck *check)
{
  gboolean answered = FALSE;

  if (check->id != work->last)
    {
      take_setup (work, check);
      answered = check->measures ? measure (work, check) : look (work, check);
    }
  if (answered)
    work->out->minutes += check->minutes;
  else
    g_hash_table_add (work->skipped, (gpointer) check->id);
  work->last = check->id;
}

/* --- repairs -------------------------------------------------------------------------------------- */

static gboolean
is_well (Work *work)
{
  return rw_practice_hands_count_left (&work->hands, work->drill->symptoms, work->drill->n_symptoms) == 0
         && rw_practice_cabinet_get_true_n_faults (work->hands.cabinet) == 0;
}

static void
repair (Work          *work,
        const RwCause *cause)
{
  RwPracticeHands *hands = &work->hands;
  const gboolean cured = rw_practice_cabinet_repair (hands->cabinet, cause->id);

  work->out->minutes += cause->repair.minutes;
  change_setup (work, 1 | 2 | (rw_practice_cabinet_get_warm (hands->cabinet) ? 4u : 0u));
  rw_practice_cabinet_advance (hands->cabinet, run_seconds);
  work->out->minutes += RW_DRILL_PROOF_MINUTES;
  rw_practice_hands_tell_setup (hands);

  const gboolean well = cured && is_well (work);

  rw_practice_hands_add (hands, rw_event_make_repair (0, cause->id, well ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  if (cured && !well)
    rw_practice_hands_tell_cured (hands, work->drill->symptoms, work->drill->n_symptoms);
  /* Translators: title of a repair; what came of it. */
  note (work, _ ("%s: %s"), cause->repair.title, well ? _ ("fixed") : cured ? _ ("one of two") : _ ("no change"));
  work->out->fixed = well;
  work->last = NULL;
}

/* Nobody does in vain twice what was done in vain once. (nullable) */
static const RwCause *
not_again (RwBelief      *belief,
           const RwCause *cause)
{
  const RwCauseBelief *it = rw_belief_find_cause (belief, cause->id);

  for (guint rank = 0; it != NULL && it->tried && rank < rw_belief_get_n_causes (belief); rank++)
    if (!rw_belief_get_cause (belief, rank)->tried)
      return rw_belief_get_cause (belief, rank)->cause;
  return cause;
}

/* --- all ------------------------------------------------------------------------------------------ */

static gboolean
work_once (Work *work)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (work->hands.session);
  g_autoptr (RwAdvice) advice = rw_advice_new (work->knowledge, state, work->skipped);

  switch (rw_advice_get_kind (advice))
    {
    case RW_ADVICE_CHECK:
      take_check (work, rw_advice_get_check (advice)->check);
      return TRUE;
    case RW_ADVICE_REPAIR:
      repair (work, not_again (rw_advice_get_belief (advice), rw_advice_get_repair (advice)));
      return !work->out->fixed;
    case RW_ADVICE_DONE:
    case RW_ADVICE_NOTHING:
    default:
      return FALSE;
    }
}

static void
start (Work              *work,
       RwPracticeCabinet *cabinet)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 1, 1, 12, 0, 0);
  RwPracticeMeter *meter = rw_practice_meter_new (cabinet, "m1", "", 0.5, 2, 6000, work->drill->cabinet_seed);
  RwPracticeHands *hands = &work->hands;

  rw_practice_hands_init (hands, cabinet, meter, "", started, &pace);
  work->skipped = g_hash_table_new (g_str_hash, g_str_equal);
  rw_practice_hands_change_setup (hands, (RwSetup) { RW_SAID_YES, RW_SAID_YES, RW_SAID_NO });
  rw_practice_hands_tell_setup (hands);
  for (guint i = 0; i < work->drill->n_symptoms; i++)
    rw_practice_hands_add (hands, rw_event_make_symptom (0, work->drill->symptoms[i], RW_SYMPTOM_PRESENT));
}

void
rw_drill_best_work (RwDrillBest           *out,
                    const RwPracticeDrill *drill,
                    RwKnowledge           *knowledge,
                    GCancellable          *cancellable)
{
  g_autoptr (RwKnowledge) restricted = rw_knowledge_for_profile (knowledge, drill->profile);
  RwPracticeCabinet *cabinet = rw_practice_drill_open (drill, "", NULL);
  Work work = { .out = out, .drill = drill, .knowledge = restricted };

  *out = (RwDrillBest) { .steps = g_ptr_array_new_with_free_func (g_free) };
  if (cabinet == NULL)
    return;
  start (&work, cabinet);
  for (guint i = 0; i < most_steps && !g_cancellable_is_cancelled (cancellable); i++)
    if (!work_once (&work))
      break;
  rw_practice_hands_clear (&work.hands);
  g_hash_table_unref (work.skipped);
}

void
rw_drill_best_clear (RwDrillBest *self)
{
  g_clear_pointer (&self->steps, g_ptr_array_unref);
}
