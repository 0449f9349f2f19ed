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
find_set_of (RwJob           *self,
             const RwReading *sample)
{
  if (sample->over || sample->kind != RW_KIND_DC || sample->place == RW_PLACE_WIRE)
    return NULL;
  return rw_bench_state_find_trim_set (rw_job_get_state (self), sample->place);
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
  const RwLive *live = rw_job_get_live (self);
  const RwTrimSet *set = live->has_value ? find_set_of (self, &live->sample) : NULL;
  const int from = set != NULL ? rw_profile_index_of (set->profile, live->sample.rail) : -1;
  const RwMeterFacts *meter = from >= 0 ? rw_session_find_meter (self->session, live->sample.meter) : NULL;

  if (from < 0)
    return NULL;

  const double nominal = rw_profile_get_rail (set->profile, set->reference)->nominal;

  rw_trim_live_init (out, set, (guint) from, live->sample.value, rw_meter_facts_u_own (meter, &live->sample));
  if (fabs (out->x - nominal) <= believable_share * fabs (nominal))
    return set;
  rw_trim_live_clear (out);
  return NULL;
}

/* --- turns that nobody told ----------------------------------------------------------------------- */

/* With several meters the same turn is seen by each. */
static const double one_turn = 4; /* seconds */

void
rw_job_watch_trim (RwJob  *self,
                   RwLive *live)
{
  const RwReading *sample = &live->sample;
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self), sample->rail);
  double from, to;

  if (self->mode == RW_JOB_REPLAY || self->hands_free || rail == NULL || rail->follows_trim == RW_FOLLOWS_NO
      || sample->kind != RW_KIND_DC || sample->place == RW_PLACE_WIRE)
    return;
  if (rw_trim_notice_push (&live->notice, sample, &live->settled, &from, &to))
    {
      self->trim_noticed = TRUE;
      self->trim_from = *sample;
      self->trim_from.value = from;
      self->trim_to = to;
    }
}

/* Positions are told apart for the sake of the readings in them: without one since the last turn there is
 * nothing to tell apart. */
void
rw_job_note_turn (RwJob           *self,
                  const RwReading *from,
                  double           to)
{
  const RwTrimSet *set = find_set_of (self, from);
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self), from->rail);
  const double now = MAX (rw_job_get_now (self), rw_session_get_end (self->session));
  RwEvent event = rw_event_make_trim (0);

  if (set == NULL || !set->is_current || rail == NULL || rail->follows_trim == RW_FOLLOWS_NO
      || !rw_trim_notice_is_turn (from, to)
      || (from->meter != self->turned_meter && now - self->turned_t < one_turn))
    return;
  self->turned_t = now;
  self->turned_meter = from->meter;

  g_autofree char *before = rw_quantity_format (from->value, from->step, RW_KIND_DC);
  g_autofree char *after = rw_quantity_format (to, from->step, RW_KIND_DC);
  /* Translators: rail, value, value. */
  g_autofree char *text = g_strdup_printf (_ ("A turn of the trim was noticed: %s went from %s to %s. If nobody turned "
                                              "it, undo this (Ctrl+Z)."),
                                           rail->label, before, after);

  rw_job_add (self, &event);
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_NOTICED], 0, text);
}

void
rw_job_take_noticed_trim (RwJob *self)
{
  if (!self->trim_noticed)
    return;
  self->trim_noticed = FALSE;
  rw_job_note_turn (self, &self->trim_from, self->trim_to);
}

/* --- reading again -------------------------------------------------------------------------------- */

/* To the rail that tells most of those due. FALSE: none is. */
static gboolean
aim_at_due (RwJob *self)
{
  RwTrimRecheck recheck;
  gboolean due;

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

  /* With a meter on a cable the leads are still where they were: its samples must not be put down to a rail
   * far away, but where it is found out by itself. */
  if ((self->mode != RW_JOB_PRACTICE && self->meters->len > 0 && !self->hands_free) || !aim_at_due (self))
    rw_job_move_rail (self, 1);
}

void
rw_job_aim_next (RwJob           *self,
                 const RwReading *kept)
{
  if (aim_at_due (self) || kept->rail != g_intern_string (rw_job_get_rail (self))
      || kept->place != rw_job_get_place (self))
    return;
  rw_job_move_rail (self, 1);
}
