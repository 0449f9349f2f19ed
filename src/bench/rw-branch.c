/* rw-branch.c: from any moment of a replay on in a new session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The practice cabinet is a healthy one, or has the fault that was asked for; nothing of what was wrong with the other
 * cabinet is guessed. Its trim is turned until the reference rail reads what it read last in the session, at the same
 * place and with the board as it was then: V(x) is monotonous, so the difference itself, turned a few times, gets there
 * or to an end of the travel. Then every other rail that was read is compared, and what differs is told.
 */
#include "config.h"

#include "rw-branch.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-job-practice.h"
#include "rw-quantity.h"

static const double settle_seconds = 3;
static const double most_warm_minutes = 20;
static const double trim_close_volts = 0.005;
static const guint trim_turns = 6;
static const double alike_share = 0.03; /* of the nominal volts: two cabinets differ by as much */

/* --- the copy ------------------------------------------------------------------------------------- */

static RwSessionHeader *
make_header (RwJob     *replay,
             GDateTime *now)
{
  RwSession *source = rw_job_get_session (replay);
  const RwSessionHeader *old = rw_session_get_header (source);
  const double t = rw_replay_get_position (rw_job_get_replay (replay));
  const guint n = rw_session_get_n_events (source);
  g_autoptr (GDateTime) started = g_date_time_add (now, (GTimeSpan) (-t * G_USEC_PER_SEC));
  g_autofree char *name = g_path_get_basename (rw_job_get_path (replay));
  g_autofree char *shown = g_filename_display_name (name);
  RwSessionHeader *header
      = rw_session_header_new (old->profile, old->cabinet_name, old->cabinet_tag, old->meters, started);

  header->from = rw_session_from_new (old->id, n > 0 ? rw_session_get_event (source, n - 1)->n : 0, t, shown);
  return header;
}

RwSession *
rw_branch_copy (RwJob     *replay,
                GDateTime *now)
{
  g_return_val_if_fail (RW_IS_JOB (replay) && rw_job_get_replay (replay) != NULL, NULL);

  RwSession *source = rw_job_get_session (replay);
  RwSession *session = rw_session_new (make_header (replay, now));

  for (guint i = 0; i < rw_session_get_n_events (source); i++)
    {
      RwEvent copy = rw_event_copy (rw_session_get_event (source, i));

      rw_session_add (session, &copy);
    }
  return session;
}

RwJob *
rw_branch_bench (RwJob      *replay,
                 const char *path,
                 GError    **error)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autoptr (RwSession) session = rw_branch_copy (replay, now);

  return rw_job_new_bench_branch (session, path, error);
}

/* --- the practice cabinet --------------------------------------------------------------------------- */

GPtrArray *
rw_branch_list_faults (RwProfile *profile)
{
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    {
      const RwPracticeFault fault = { rw_practice_faults_get_id (i), 1 };
      g_autoptr (RwPracticeCabinet) cabinet = rw_practice_cabinet_new (profile, 1, &fault, 1, "", NULL);

      if (cabinet != NULL)
        g_ptr_array_add (list, (gpointer) fault.id);
    }
  return list;
}

static void
append_sentence (GString    *words,
                 const char *sentence)
{
  g_string_append_printf (words, "%s%s", words->len > 0 ? " " : "", sentence);
}

/* "+5 V at the board: 4.71 V" */
static char *
say_volts (const RwRail *rail,
           RwPlace       place,
           double        volts)
{
  g_autofree char *value = rw_quantity_format (volts, 0.01, RW_KIND_DC);

  /* Translators: rail, place, value with its unit. */
  return g_strdup_printf (_ ("%s, %s: %s"), rail->label, rw_place_get_label (place), value);
}

static double
volts_at (RwPracticeCabinet *cabinet,
          const RwSpotState *spot)
{
  return rw_practice_cabinet_get_true_volts (cabinet, spot->reading.rail, spot->reading.place, RW_KIND_DC);
}

/* Switched on with the board as it was when @spot was read. */
static void
set_up_as (RwPracticeCabinet *cabinet,
           const RwSpotState *spot)
{
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, settle_seconds);
  rw_practice_cabinet_set_board_fitted (cabinet, spot->setup.board_fitted != RW_SAID_NO);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, settle_seconds);
}

/* A board is never put onto what its rail must not reach, not even a simulated one. */
static gboolean
may_set (const RwRail      *rail,
         const RwSpotState *spot)
{
  return !spot->reading.over && isfinite (spot->reading.value)
         && (spot->setup.board_fitted == RW_SAID_NO || fabs (spot->reading.value) < rail->never_above);
}

static void
set_trim (RwPracticeCabinet *cabinet,
          RwBenchState      *state,
          const RwRail      *rail,
          GString           *words)
{
  const RwSpotState *spot = rw_bench_state_find_rail (state, rail->id);

  if (spot == NULL || !may_set (rail, spot))
    {
      append_sentence (words, _ ("Its trim stands where it stood: no reading of the reference rail says where to."));
      return;
    }
  set_up_as (cabinet, spot);
  for (guint i = 0; i < trim_turns && fabs (spot->reading.value - volts_at (cabinet, spot)) > trim_close_volts; i++)
    {
      rw_practice_cabinet_turn_trim_volts (cabinet, spot->reading.value - volts_at (cabinet, spot));
      rw_practice_cabinet_advance (cabinet, settle_seconds);
    }

  const double now = volts_at (cabinet, spot);
  g_autofree char *there = say_volts (rail, spot->reading.place, spot->reading.value);
  g_autofree char *here = rw_quantity_format (now, 0.01, RW_KIND_DC);
  /* Translators: a reading; the value that it has here. */
  g_autofree char *sentence
      = fabs (now - spot->reading.value) <= alike_share / 3 * fabs (rail->nominal)
            ? g_strdup_printf (_ ("Its trim was turned until it read as in the session (%s)."), there)
            : g_strdup_printf (_ ("Its trim cannot bring it to what was read in the session (%s): here it is %s."), there,
                               here);

  append_sentence (words, sentence);
}

static void
warm_up (RwPracticeCabinet *cabinet)
{
  for (double minutes = 0; minutes < most_warm_minutes && !rw_practice_cabinet_get_warm (cabinet); minutes++)
    rw_practice_cabinet_advance (cabinet, 60);
}

/* What was read with the board as it is now and is not so here. */
static void
tell_differences (RwPracticeCabinet *cabinet,
                  RwBenchState      *state,
                  RwProfile         *profile,
                  GString           *words)
{
  const RwSaid fitted = rw_practice_cabinet_get_board_fitted (cabinet) ? RW_SAID_YES : RW_SAID_NO;

  for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);
      const RwRail *rail = rw_profile_find_rail (profile, spot->reading.rail);

      if (rail == NULL || spot->reading.kind != RW_KIND_DC || spot->reading.over || spot->reading.place == RW_PLACE_WIRE
          || (spot->setup.board_fitted != RW_SAID_NOT && spot->setup.board_fitted != fitted))
        continue;

      const double now = volts_at (cabinet, spot);

      if (!isfinite (now) || fabs (now - spot->reading.value) <= alike_share * fabs (rail->nominal))
        continue;

      g_autofree char *there = say_volts (rail, spot->reading.place, spot->reading.value);
      g_autofree char *here = rw_quantity_format (now, 0.01, RW_KIND_DC);
      /* Translators: a reading; the value that it has here. */
      g_autofree char *sentence = g_strdup_printf (_ ("In the session %s; here %s."), there, here);

      append_sentence (words, sentence);
    }
}

/* Sets the cabinet up and tells how. (transfer full) */
static char *
set_up (RwPracticeCabinet *cabinet,
        RwJob             *replay)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (rw_job_get_session (replay));
  RwProfile *profile = rw_job_get_profile (replay);
  const RwSetup setup = rw_bench_state_get_setup (state);
  GString *words = g_string_new (_ ("From here on it is a practice cabinet."));

  set_trim (cabinet, state, rw_profile_get_reference (profile), words);
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, settle_seconds);
  rw_practice_cabinet_set_board_fitted (cabinet, setup.board_fitted != RW_SAID_NO);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, settle_seconds);
  if (setup.warm == RW_SAID_YES)
    warm_up (cabinet);
  tell_differences (cabinet, state, profile, words);
  rw_practice_cabinet_set_power (cabinet, setup.power_on == RW_SAID_YES);
  append_sentence (words, _ ("Of the other cabinet it knows no symptom, no finding and no repair: those above are copies, "
                             "and what is seen here may contradict them."));
  return g_string_free (words, FALSE);
}

/* It reads as exactly as the session's own meter, since both go by one name in the file. */
static RwPracticeMeter *
make_meter (RwPracticeCabinet *cabinet,
            RwSession         *session)
{
  const RwMeterFacts *facts = rw_session_find_meter (session, "m1");

  return rw_practice_meter_new (cabinet, "m1", _ ("practice meter"), facts != NULL ? facts->percent : 0.5,
                                facts != NULL ? facts->counts : 2, 6000, rw_practice_cabinet_get_seed (cabinet));
}

RwJob *
rw_branch_practice (RwJob      *replay,
                    const char *fault,
                    guint64     seed,
                    const char *path,
                    GError    **error)
{
  g_return_val_if_fail (RW_IS_JOB (replay) && rw_job_get_replay (replay) != NULL, NULL);

  const RwPracticeFault planted = { fault, 1 };
  const RwSessionHeader *header = rw_session_get_header (rw_job_get_session (replay));
  g_autoptr (RwPracticeCabinet) cabinet = rw_practice_cabinet_new (
      header->profile, seed, fault != NULL ? &planted : NULL, fault != NULL ? 1 : 0, header->cabinet_name, error);

  if (cabinet == NULL)
    return NULL;

  g_autofree char *words = set_up (cabinet, replay);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autoptr (RwSession) session = rw_branch_copy (replay, now);
  RwJob *job = rw_job_new_practice_branch (session, cabinet, make_meter (cabinet, session), path, error);

  if (job == NULL)
    return NULL;
  rw_job_note (job, words);
  rw_job_set_setup (job, (RwSetup){ rw_practice_cabinet_get_power (cabinet) ? RW_SAID_YES : RW_SAID_NO,
                                    rw_practice_cabinet_get_board_fitted (cabinet) ? RW_SAID_YES : RW_SAID_NO,
                                    rw_practice_cabinet_get_warm (cabinet) ? RW_SAID_YES : RW_SAID_NO });
  return job;
}
