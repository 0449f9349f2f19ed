/* rw-practice-steps.c: the steps of a script: hands, eyes and ears at a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The language stands at the head of rw-practice-script.c. Here the cabinet's seconds are the
 * session's, and what hands did becomes an event, just as at a real bench.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-bench-state.h"
#include "rw-practice-look.h"
#include "rw-practice-script-private.h"
#include "rw-practice-wiggle.h"
#include "rw-settle.h"

static const double power_seconds = 2, board_seconds = 20, trim_seconds = 3, word_seconds = 1;
static const double move_seconds = 1;    /* leads from one spot to another */
static const double settle_seconds = 15; /* longer nobody waits */
static const double wiggle_every = 2;
static const double mark_gap_seconds = 10;
static const double most_seconds = 100000; /* of one wait: more than a day is a slip */

static double
now (RwPracticeRun *run)
{
  return rw_practice_cabinet_get_seconds (run->cabinet);
}

static void
add (RwPracticeRun *run,
     RwEvent        event)
{
  rw_session_add (run->session, &event);
}

static void
add_setup (RwPracticeRun *run)
{
  const RwSetup setup = {
    rw_practice_cabinet_get_power (run->cabinet) ? RW_SAID_YES : RW_SAID_NO,
    rw_practice_cabinet_get_board_fitted (run->cabinet) ? RW_SAID_YES : RW_SAID_NO,
    rw_practice_cabinet_get_warm (run->cabinet) ? RW_SAID_YES : RW_SAID_NO
  };

  run->warm = rw_practice_cabinet_get_warm (run->cabinet);
  add (run, rw_event_make_setup (now (run), setup));
}

static void
reset_cb (RwPracticeCabinet *cabinet,
          guint              resets,
          gpointer           data)
{
  RwPracticeRun *run = data;

  if (run->on_reset == NULL || !run->streaming || now (run) - run->last_mark < mark_gap_seconds)
    return;
  run->last_mark = now (run);
  add (run, rw_event_make_mark (now (run), run->on_reset));
}

void
rw_practice_run_begin (RwPracticeRun *run)
{
  g_signal_connect (run->cabinet, "reset", G_CALLBACK (reset_cb), run);
  add_setup (run);
}

/* One step of time; tells when the cabinet has become warm, or cold again. */
static void
tick (RwPracticeRun *run)
{
  rw_practice_cabinet_advance (run->cabinet, RW_PRACTICE_STEP);
  if (rw_practice_cabinet_get_warm (run->cabinet) != run->warm)
    add_setup (run);
}

static void
pass (RwPracticeRun *run,
      double         seconds)
{
  const double end = now (run) + seconds - RW_PRACTICE_STEP / 2;

  while (now (run) < end)
    tick (run);
}

static gboolean
step_power (RwPracticeRun *run,
            char         **words,
            const char    *rest,
            GError       **error)
{
  const gboolean on = g_str_equal (words[1], "on");

  if (!on && !g_str_equal (words[1], "off"))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is neither on nor off."), words[1]);
  rw_practice_cabinet_set_power (run->cabinet, on);
  add_setup (run);
  pass (run, power_seconds);
  return TRUE;
}

static gboolean
step_board (RwPracticeRun *run,
            char         **words,
            const char    *rest,
            GError       **error)
{
  const gboolean fit = g_str_equal (words[1], "fit");

  if (!fit && !g_str_equal (words[1], "pull"))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is neither fit nor pull."), words[1]);
  if (rw_practice_cabinet_get_power (run->cabinet))
    return rw_practice_run_fail (
        run, error, RW_PRACTICE_ERROR_STATE,
        _ ("A board is fitted and pulled with power off only. Say “power off” first."));
  pass (run, board_seconds);
  rw_practice_cabinet_set_board_fitted (run->cabinet, fit);
  add_setup (run);
  return TRUE;
}

static gboolean
step_trim (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  const gboolean milli = g_str_has_suffix (words[1], "mV");
  g_autofree char *number = g_strndup (words[1], strlen (words[1]) - (milli ? 2 : 0));
  double turn = 0;

  if (!rw_practice_run_number (run, number[0] != '\0' ? number : words[1], milli ? -2000 : -1,
                               milli ? 2000 : 1, &turn, error))
    return FALSE;
  if (milli)
    rw_practice_cabinet_turn_trim_volts (run->cabinet, turn / 1000);
  else
    rw_practice_cabinet_turn_trim (run->cabinet, turn);
  add (run, rw_event_make_trim (now (run)));
  pass (run, trim_seconds);
  return TRUE;
}

static gboolean
step_wait (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  double seconds = 0;

  if (!rw_practice_run_number (run, words[1], 0, most_seconds, &seconds, error))
    return FALSE;
  pass (run, seconds);
  return TRUE;
}

static gboolean
step_await (RwPracticeRun *run,
            char         **words,
            const char    *rest,
            GError       **error)
{
  double seconds = 0;

  if (!g_str_equal (words[1], "reset"))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("Only “await reset” is known."));
  if (!rw_practice_run_number (run, words[2], 0, most_seconds, &seconds, error))
    return FALSE;

  const double end = now (run) + seconds;
  const guint before = rw_practice_cabinet_get_resets (run->cabinet);

  while (now (run) < end)
    {
      tick (run);
      if (rw_practice_cabinet_get_resets (run->cabinet) > before)
        return TRUE;
    }
  return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                               _ ("The board did not reset in %s s."), words[2]);
}

/* Leads on a spot; @kind_word may be NULL. */
static gboolean
place_leads (RwPracticeRun *run,
             const char    *rail,
             const char    *place_word,
             const char    *kind_word,
             GError       **error)
{
  RwPlace place, was_place;
  RwKind kind = RW_KIND_DC, was_kind;

  if (!rw_place_from_id (place_word, &place))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT, _ ("“%s” is no place."),
                                 place_word);
  if (kind_word != NULL && !rw_kind_from_id (kind_word, &kind))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is neither dc nor ripple."), kind_word);

  const char *was = rw_practice_cabinet_get_leads (run->cabinet, &was_place, &was_kind);

  run->has_live = FALSE;
  if (g_strcmp0 (was, rail) == 0 && was_place == place && was_kind == kind)
    return TRUE;
  if (!rw_practice_cabinet_set_leads (run->cabinet, rail, place, kind))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("This cabinet has no %s at “%s” to be measured."), rail,
                                 place_word);
  pass (run, move_seconds);
  return TRUE;
}

static RwReading
reading_of (RwPracticeRun         *run,
            const RwPracticeShown *shown)
{
  RwPlace place;
  RwKind kind;
  const char *rail = rw_practice_cabinet_get_leads (run->cabinet, &place, &kind);
  RwReading reading = rw_reading_make (rail, place, kind, shown->value, shown->step,
                                       rw_practice_meter_get_facts (run->meter)->id);

  reading.over = shown->over;
  return reading;
}

/* Watches the meter for @seconds, or until it settles when @until_settled; the settled value
 * (or the last one, when it never does) is left in run->live. With @samples each value becomes
 * an event. */
static void
watch (RwPracticeRun *run,
       double         seconds,
       gboolean       until_settled,
       gboolean       samples)
{
  g_autoptr (RwSettle) settle = NULL;
  g_autoptr (GArray) before = rw_practice_meter_take_shown (run->meter);
  const double end = now (run) + seconds;
  double settle_step = 0;
  gboolean settled = FALSE;

  while (now (run) < end && !(until_settled && settled))
    {
      tick (run);

      g_autoptr (GArray) shown = rw_practice_meter_take_shown (run->meter);

      for (guint i = 0; i < shown->len; i++)
        {
          const RwPracticeShown *value = &g_array_index (shown, RwPracticeShown, i);
          const RwReading reading = reading_of (run, value);

          if (samples)
            add (run, rw_event_make_sample (value->t, &reading));
          if (settle == NULL || settle_step != value->step)
            {
              g_clear_pointer (&settle, rw_settle_free);
              settle = rw_settle_new (value->step);
              settle_step = value->step;
            }

          const RwSettled state = rw_settle_push (settle, value->t, value->value);

          run->live = reading;
          run->has_live = TRUE;
          settled = state.settled;
          /* A person keeps what the display says, in whole counts. */
          if (settled)
            run->live.value = floor (state.value / value->step + 0.5) / (1 / value->step);
        }
    }
}

static gboolean
keep_live (RwPracticeRun *run,
           GError       **error)
{
  if (!run->has_live)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                                 _ ("There is nothing to keep: no stream before it."));
  add (run, rw_event_make_reading (now (run), &run->live));
  return TRUE;
}

static gboolean
step_read (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  if (!place_leads (run, words[1], words[2], words[3], error))
    return FALSE;
  watch (run, settle_seconds, TRUE, FALSE);
  return keep_live (run, error);
}

static gboolean
step_stream (RwPracticeRun *run,
             char         **words,
             const char    *rest,
             GError       **error)
{
  double seconds = 0;

  if (!rw_practice_run_number (run, words[3], 0, most_seconds, &seconds, error)
      || !place_leads (run, words[1], words[2], words[4], error))
    return FALSE;
  run->streaming = TRUE;
  watch (run, seconds, FALSE, TRUE);
  run->streaming = FALSE;
  return TRUE;
}

/* A stream while something is shaken every two seconds. */
static gboolean
step_wiggle (RwPracticeRun *run,
             char         **words,
             const char    *rest,
             GError       **error)
{
  const RwPracticeSpot spot = rw_practice_spot_from_id (words[1]);
  double seconds = 0;

  if (spot == RW_PRACTICE_N_SPOTS)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT, _ ("There is no “%s” to wiggle."), words[1]);
  if (!rw_practice_run_number (run, words[4], 0, most_seconds, &seconds, error)
      || !place_leads (run, words[2], words[3], NULL, error))
    return FALSE;
  run->streaming = TRUE;
  for (const double end = now (run) + seconds; now (run) < end;)
    {
      rw_practice_cabinet_wiggle (run->cabinet, spot);
      watch (run, MIN (wiggle_every, end - now (run)), FALSE, TRUE);
    }
  run->streaming = FALSE;
  return TRUE;
}

static gboolean
step_keep (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  return keep_live (run, error);
}

static gboolean
was_present (RwPracticeRun *run,
             const char    *symptom)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (run->session);

  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    if (g_strcmp0 (rw_bench_state_get_symptom (state, i)->id, symptom) == 0)
      return rw_bench_state_get_symptom (state, i)->state != RW_SYMPTOM_ABSENT;
  return FALSE;
}

static gboolean
step_symptom (RwPracticeRun *run,
              char         **words,
              const char    *rest,
              GError       **error)
{
  static const char *const state_words[] = { "present", "absent", "cured", NULL };
  static const RwSymptomState states[] = { RW_SYMPTOM_PRESENT, RW_SYMPTOM_ABSENT,
                                           RW_SYMPTOM_CURED };
  const gboolean known = rw_practice_cabinet_knows_symptom (words[1]);
  const gboolean there = rw_practice_cabinet_has_symptom (run->cabinet, words[1]);
  RwSymptomState state = there                         ? RW_SYMPTOM_PRESENT
                         : was_present (run, words[1]) ? RW_SYMPTOM_CURED
                                                       : RW_SYMPTOM_ABSENT;
  guint told = 0;

  if (words[2] == NULL && !known)
    return rw_practice_run_fail (
        run, error, RW_PRACTICE_ERROR_SCRIPT,
        _ ("The cabinet cannot tell of “%s”. Say present, absent or cured."), words[1]);
  for (; words[2] != NULL && state_words[told] != NULL
         && !g_str_equal (words[2], state_words[told]);)
    told++;
  if (state_words[told] == NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is none of present, absent, cured."), words[2]);
  if (words[2] != NULL)
    state = states[told];
  if (words[2] != NULL && known && rw_practice_cabinet_get_power (run->cabinet)
      && there != (state == RW_SYMPTOM_PRESENT))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                                 _ ("The cabinet does not agree that “%s” is %s."), words[1],
                                 words[2]);
  add (run, rw_event_make_symptom (now (run), words[1], state));
  pass (run, word_seconds);
  return TRUE;
}

static gboolean
step_finding (RwPracticeRun *run,
              char         **words,
              const char    *rest,
              GError       **error)
{
  const char *seen = rw_practice_look (run->cabinet, words[1]);
  const char *told = words[2] != NULL ? words[2] : seen;

  if (told == NULL)
    return rw_practice_run_fail (
        run, error, RW_PRACTICE_ERROR_STATE,
        _ ("The cabinet cannot answer “%s” as it stands. Change the setup or say the outcome."),
        words[1]);
  if (seen != NULL && !g_str_equal (seen, told))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                                 _ ("Looking shows “%s”, not “%s”."), seen, told);
  add (run, rw_event_make_finding (now (run), words[1], told));
  pass (run, word_seconds);
  return TRUE;
}

static gboolean
step_repair (RwPracticeRun *run,
             char         **words,
             const char    *rest,
             GError       **error)
{
  const gboolean fixed = g_str_equal (words[2], "fixed");

  if (!fixed && !g_str_equal (words[2], "no-change"))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is neither fixed nor no-change."), words[2]);
  if (rw_practice_cabinet_repair (run->cabinet, words[1]) != fixed)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                                 fixed ? _ ("The cabinet did not have “%s”: nothing was fixed.")
                                       : _ ("The cabinet had “%s”: that would have fixed it."),
                                 words[1]);
  add (run, rw_event_make_repair (now (run), words[1],
                                  fixed ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE));
  pass (run, word_seconds);
  return TRUE;
}

static gboolean
step_mark (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  add (run, rw_event_make_mark (now (run), rest));
  return TRUE;
}

static gboolean
step_note (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  add (run, rw_event_make_note (now (run), rest));
  pass (run, word_seconds);
  return TRUE;
}

static gboolean
step_stage (RwPracticeRun *run,
            char         **words,
            const char    *rest,
            GError       **error)
{
  const gboolean against = words[2] != NULL && g_str_equal (words[2], "against") && words[3] != NULL;
  const gboolean read = words[2] != NULL && g_str_equal (words[2], "read") && words[3] == NULL;

  if (words[2] != NULL && !against && !read)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("Behind a stage comes nothing, read, or against and why."));
  if (against)
    {
      g_autofree char *why = g_strjoinv (" ", words + 3);

      add (run, rw_event_make_stage_against (now (run), words[1], why));
    }
  else
    add (run, read ? rw_event_make_stage_read (now (run), words[1]) : rw_event_make_stage (now (run), words[1]));
  return TRUE;
}

static gboolean
step_undo (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  const guint n = rw_session_get_undo (run->session);

  if (n == 0)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_STATE,
                                 _ ("There is nothing to undo."));
  add (run, rw_event_make_retract (now (run), n));
  pass (run, word_seconds);
  return TRUE;
}

const RwPracticeLine rw_practice_steps[] = {
  { "power", 1, 1, FALSE, step_power },     { "board", 1, 1, FALSE, step_board },
  { "trim", 1, 1, FALSE, step_trim },       { "wait", 1, 1, FALSE, step_wait },
  { "await", 2, 2, FALSE, step_await },     { "read", 2, 3, FALSE, step_read },
  { "stream", 3, 4, FALSE, step_stream },   { "keep", 0, 0, FALSE, step_keep },
  { "symptom", 1, 2, FALSE, step_symptom }, { "finding", 1, 2, FALSE, step_finding },
  { "repair", 2, 2, FALSE, step_repair },   { "mark", 1, 0, FALSE, step_mark },
  { "note", 1, 0, FALSE, step_note },       { "stage", 1, 0, FALSE, step_stage },
  { "undo", 0, 0, FALSE, step_undo },       { "wiggle", 4, 4, FALSE, step_wiggle },
  { "call", 1, 0, FALSE, rw_practice_step_call }, { NULL },
};
