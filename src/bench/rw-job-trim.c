/* rw-job-trim.c: a job's trim: what a watched rail says of the others, and turns that nobody told.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-trim-recheck.h"

/* A reference further from its nominal than this is no reference: the leads are elsewhere. */
static const double believable_share = 0.25;

static const RwTrimSet *
find_live_set (RwJob *self)
{
  if (!self->live.has_value || self->live.sample.over || self->live.sample.kind != RW_KIND_DC
      || self->live.sample.place == RW_PLACE_WIRE)
    return NULL;
  return rw_bench_state_find_trim_set (rw_job_get_state (self), self->live.sample.place);
}

const RwTrimSet *
rw_job_get_trim_set (RwJob *self)
{
  RwBenchState *state = rw_job_get_state (self);
  const RwPlace places[] = { rw_job_get_place (self), RW_PLACE_BOARD, RW_PLACE_CHIP, RW_PLACE_TERMINALS };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      const RwTrimSet *set = rw_bench_state_find_trim_set (state, places[i]);

      if (set != NULL)
        return set;
    }
  return rw_bench_state_get_n_trim_sets (state) > 0 ? rw_bench_state_get_trim_set (state, 0) : NULL;
}

const RwTrimSet *
rw_job_get_trim_live (RwJob      *self,
                      RwTrimLive *out)
{
  const RwTrimSet *set = find_live_set (self);
  const int from = set != NULL ? rw_profile_index_of (set->profile, self->live.sample.rail) : -1;
  const RwMeterFacts *meter = rw_session_find_meter (self->session, self->live.sample.meter);

  if (from < 0)
    return NULL;

  const double nominal = rw_profile_get_rail (set->profile, set->reference)->nominal;

  rw_trim_live_init (out, set, (guint) from, self->live.sample.value,
                     rw_meter_facts_u_own (meter, &self->live.sample));
  if (fabs (out->x - nominal) <= believable_share * fabs (nominal))
    return set;
  rw_trim_live_clear (out);
  return NULL;
}

/* --- turns that nobody told ----------------------------------------------------------------------- */

void
rw_job_watch_trim (RwJob           *self,
                   const RwReading *sample)
{
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self), sample->rail);
  double from, to;

  if (self->mode == RW_JOB_REPLAY || rail == NULL || rail->follows_trim == RW_FOLLOWS_NO
      || sample->kind != RW_KIND_DC || sample->place == RW_PLACE_WIRE)
    return;
  if (rw_trim_notice_push (&self->trim_notice, sample, &self->live.settled, &from, &to))
    {
      self->trim_noticed = TRUE;
      self->trim_from = from;
      self->trim_to = to;
    }
}

/* Positions are told apart for the sake of the readings in them: without one since the last turn there is
 * nothing to tell apart. */
void
rw_job_take_noticed_trim (RwJob *self)
{
  RwEvent event = rw_event_make_trim (0);

  if (!self->trim_noticed)
    return;
  self->trim_noticed = FALSE;

  const RwTrimSet *set = find_live_set (self);

  if (set == NULL || !set->is_current)
    return;

  g_autofree char *before = rw_quantity_format (self->trim_from, self->live.sample.step, RW_KIND_DC);
  g_autofree char *after = rw_quantity_format (self->trim_to, self->live.sample.step, RW_KIND_DC);
  const RwRail *rail = rw_profile_find_rail (set->profile, self->live.sample.rail);
  /* Translators: rail, value, value. */
  g_autofree char *text = g_strdup_printf (_ ("A turn of the trim was noticed: %s went from %s to %s. If nobody turned "
                                              "it, undo this (Ctrl+Z)."),
                                           rail->label, before, after);

  rw_job_add (self, &event);
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_NOTICED], 0, text);
}

/* --- reading again -------------------------------------------------------------------------------- */

/* To the rail that tells most of those due. FALSE: none is. */
static gboolean
aim_at_due (RwJob *self)
{
  RwTrimRecheck recheck;
  gboolean due;

  /* With a meter on a cable the leads are still where they were: its samples must not be put down to a rail
   * far away. */
  if (self->mode != RW_JOB_PRACTICE && self->link != NULL)
    return FALSE;
  rw_trim_recheck_init (&recheck, rw_job_get_state (self));
  due = recheck.n_due > 0;
  if (due)
    rw_job_set_spot (self, rw_profile_get_rail (rw_job_get_profile (self), recheck.due[0])->id, recheck.place,
                     RW_KIND_DC);
  rw_trim_recheck_clear (&recheck);
  return due;
}

void
rw_job_move_on (RwJob *self)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (!aim_at_due (self))
    rw_job_move_rail (self, 1);
}
