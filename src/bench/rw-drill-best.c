/* rw-drill-best.c: what a drill would have cost in the order that the program advises.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The advice is followed to the letter: its check is taken, its repair done. Answers come from the cabinet: leads and
 * meter for what is measured, rw_practice_look () for what is seen. A check that the cabinet cannot answer, or that
 * is advised twice in a row, is set aside. Minutes are those of the knowledge.
 */
#include "config.h"

#include "rw-drill-best.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-advice.h"
#include "rw-drill-reckon.h"
#include "rw-practice-look.h"
#include "rw-practice-meter.h"
#include "rw-quantity.h"
#include "rw-settle.h"
#include "rw-setups.h"

static const guint most_steps = 60;
static const double settle_seconds = 15, move_seconds = 1, look_seconds = 20, run_seconds = 20;
static const double warm_seconds = 1200, cool_seconds = 1800, start_seconds = 10;

typedef struct
{
  RwDrillBest           *out;
  const RwPracticeDrill *drill;
  RwKnowledge           *knowledge; /* for the profile */
  RwPracticeCabinet     *cabinet;
  RwPracticeMeter       *meter;
  RwSession             *session;
  RwSetup                said;
  GHashTable            *skipped;
  const char            *last; /* check taken last */
} Work;

static void
add (Work   *work,
     RwEvent event)
{
  event.t = MAX (rw_practice_cabinet_get_seconds (work->cabinet), rw_session_get_end (work->session));
  rw_session_add (work->session, &event);
}

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

/* --- setup ---------------------------------------------------------------------------------------- */

static RwSaid
said_of (gboolean is)
{
  return is ? RW_SAID_YES : RW_SAID_NO;
}

static RwSetup
setup_now (Work *work)
{
  return (RwSetup) { said_of (rw_practice_cabinet_get_power (work->cabinet)),
                     said_of (rw_practice_cabinet_get_board_fitted (work->cabinet)),
                     said_of (rw_practice_cabinet_get_warm (work->cabinet)) };
}

static void
tell_setup (Work *work)
{
  const RwSetup now = setup_now (work);

  if (now.power_on == work->said.power_on && now.board_fitted == work->said.board_fitted && now.warm == work->said.warm)
    return;
  work->said = now;
  add (work, rw_event_make_setup (0, now));
}

static void
set_power (Work    *work,
           gboolean on)
{
  if (rw_practice_cabinet_get_power (work->cabinet) == on)
    return;
  rw_practice_cabinet_set_power (work->cabinet, on);
  rw_practice_cabinet_advance (work->cabinet, start_seconds);
}

/* The board moves with the power off only; warming needs power, cooling needs it off. */
static void
change_setup (Work *work,
              guint to)
{
  const gboolean power = (to & 1) != 0, board = (to & 2) != 0, warm = (to & 4) != 0;

  work->out->minutes += rw_setups_minutes (rw_setups_index (setup_now (work)), to);
  if (rw_practice_cabinet_get_board_fitted (work->cabinet) != board)
    {
      set_power (work, FALSE);
      rw_practice_cabinet_set_board_fitted (work->cabinet, board);
    }
  if (rw_practice_cabinet_get_warm (work->cabinet) != warm)
    {
      set_power (work, warm);
      rw_practice_cabinet_advance (work->cabinet, warm ? warm_seconds : cool_seconds);
    }
  set_power (work, power);
}

/* The cheapest setup that the check can be taken in. */
static void
take_setup (Work          *work,
            const RwCheck *check)
{
  const guint wanted = rw_setups_wanted (check), from = rw_setups_index (setup_now (work));
  guint best = from;
  double least = INFINITY;

  for (guint to = 0; to < RW_N_SETUPS; to++)
    if ((wanted & (1u << to)) != 0 && rw_setups_minutes (from, to) < least)
      {
        least = rw_setups_minutes (from, to);
        best = to;
      }
  if (best != from)
    change_setup (work, best);
  tell_setup (work);
}

/* --- checks --------------------------------------------------------------------------------------- */

/* The settled value on the leads; the last one shown when it does not settle. FALSE: no such spot, or no value. */
static gboolean
read_meter (Work          *work,
            const RwCheck *check,
            RwReading     *out)
{
  g_autoptr (RwSettle) settle = NULL;
  double step = 0;
  gboolean any = FALSE, settled = FALSE;

  if (!rw_practice_cabinet_set_leads (work->cabinet, check->rail, check->place, check->kind))
    return FALSE;
  rw_practice_cabinet_advance (work->cabinet, move_seconds);
  g_array_unref (rw_practice_meter_take_shown (work->meter));
  for (double waited = 0; waited < settle_seconds && !settled; waited += 0.25)
    {
      rw_practice_cabinet_advance (work->cabinet, 0.25);

      g_autoptr (GArray) shown = rw_practice_meter_take_shown (work->meter);

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
          *out = rw_reading_make (check->rail, check->place, check->kind, settled ? state.value : value->value, step,
                                  rw_practice_meter_get_facts (work->meter)->id);
          out->over = value->over;
          any = TRUE;
        }
    }
  return any;
}

static gboolean
measure (Work          *work,
         const RwCheck *check)
{
  RwReading reading;

  if (!read_meter (work, check, &reading))
    return FALSE;
  add (work, rw_event_make_reading (0, &reading));

  g_autofree char *value = rw_quantity_format (reading.value, reading.step, reading.kind);

  /* Translators: title of a check; its value. */
  note (work, _ ("%s: %s"), check->title, reading.over ? _ ("OL") : value);
  return TRUE;
}

static gboolean
look (Work          *work,
      const RwCheck *check)
{
  rw_practice_cabinet_advance (work->cabinet, MIN (60 * check->minutes, look_seconds));

  const char *seen = rw_practice_look (work->cabinet, check->id);
  const int outcome = seen != NULL ? rw_check_find_outcome (check, seen) : -1;

  if (outcome < 0)
    return FALSE;
  add (work, rw_event_make_finding (0, check->id, seen));
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
  for (guint i = 0; i < work->drill->n_symptoms; i++)
    if (rw_practice_cabinet_has_symptom (work->cabinet, work->drill->symptoms[i]))
      return FALSE;
  return TRUE;
}

/* The first of two faults is gone: what went with it is told. */
static void
tell_cured (Work *work)
{
  for (guint i = 0; i < work->drill->n_symptoms; i++)
    if (!rw_practice_cabinet_has_symptom (work->cabinet, work->drill->symptoms[i]))
      add (work, rw_event_make_symptom (0, work->drill->symptoms[i], RW_SYMPTOM_CURED));
}

static void
repair (Work          *work,
        const RwCause *cause)
{
  const gboolean cured = rw_practice_cabinet_repair (work->cabinet, cause->id);

  work->out->minutes += cause->repair.minutes;
  change_setup (work, 1 | 2 | (rw_practice_cabinet_get_warm (work->cabinet) ? 4u : 0u));
  rw_practice_cabinet_advance (work->cabinet, run_seconds);
  work->out->minutes += RW_DRILL_PROOF_MINUTES;
  tell_setup (work);

  const gboolean well = cured && is_well (work) && rw_practice_cabinet_get_true_n_faults (work->cabinet) == 0;

  add (work, rw_event_make_repair (0, cause->id, well ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  if (cured && !well)
    tell_cured (work);
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
  g_autoptr (RwBenchState) state = rw_bench_state_new (work->session);
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
start (Work *work)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 1, 1, 12, 0, 0);
  g_autoptr (GPtrArray) meters = g_ptr_array_new ();

  work->meter = rw_practice_meter_new (work->cabinet, "m1", "", 0.5, 2, 6000, work->drill->cabinet_seed);
  g_ptr_array_add (meters, (gpointer) rw_practice_meter_get_facts (work->meter));
  work->session = rw_session_new (rw_session_header_new (work->drill->profile, "", "", meters, started));
  work->skipped = g_hash_table_new (g_str_hash, g_str_equal);
  set_power (work, TRUE);
  tell_setup (work);
  for (guint i = 0; i < work->drill->n_symptoms; i++)
    add (work, rw_event_make_symptom (0, work->drill->symptoms[i], RW_SYMPTOM_PRESENT));
}

void
rw_drill_best_work (RwDrillBest           *out,
                    const RwPracticeDrill *drill,
                    RwKnowledge           *knowledge,
                    GCancellable          *cancellable)
{
  g_autoptr (RwKnowledge) restricted = rw_knowledge_for_profile (knowledge, drill->profile);
  Work work = { .out = out, .drill = drill, .knowledge = restricted, .said = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT } };

  *out = (RwDrillBest) { .steps = g_ptr_array_new_with_free_func (g_free) };
  work.cabinet = rw_practice_drill_open (drill, "", NULL);
  if (work.cabinet == NULL)
    return;
  start (&work);
  for (guint i = 0; i < most_steps && !g_cancellable_is_cancelled (cancellable); i++)
    if (!work_once (&work))
      break;
  g_object_unref (work.meter);
  g_object_unref (work.cabinet);
  g_object_unref (work.session);
  g_hash_table_unref (work.skipped);
}

void
rw_drill_best_clear (RwDrillBest *self)
{
  g_clear_pointer (&self->steps, g_ptr_array_unref);
}
