/* rw-class-trim.c: what the trim map shows a class.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-class-trim.h"

#include <math.h>

#include "rw-live-target.h"

/* A reference further from its nominal than this is no reference: the leads are elsewhere. */
static const double believable_share = 0.25;

void
rw_class_trim_clear (RwClassTrim *self)
{
  if (self->has_live)
    rw_trim_live_clear (&self->live);
  self->has_live = FALSE;
  g_clear_pointer (&self->set, rw_trim_set_unref);
}

/* At the place that is looked at, else at any. (nullable) */
static const RwTrimSet *
find_set (RwJob        *job,
          RwBenchState *state)
{
  const RwPlace places[] = { rw_job_get_place (job), RW_PLACE_BOARD, RW_PLACE_CHIP, RW_PLACE_TERMINALS };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      const RwTrimSet *set = rw_bench_state_find_trim_set (state, places[i]);

      if (set != NULL)
        return set;
    }
  return rw_bench_state_get_n_trim_sets (state) > 0 ? rw_bench_state_get_trim_set (state, 0) : NULL;
}

/* The meter is on a rail that may be seen, at the place of the set, and touches something. */
static gboolean
take_live (RwClassTrim *self,
           RwJob       *job,
           GHashTable  *hidden)
{
  const RwLive *live = rw_job_get_live (job);
  const RwReading *sample = &live->sample;
  const int from = live->has_value ? rw_profile_index_of (self->set->profile, sample->rail) : -1;

  if (from < 0 || sample->over || sample->kind != RW_KIND_DC || sample->place != self->set->place
      || g_hash_table_contains (hidden, g_intern_string (sample->rail))
      || rw_job_get_now (job) - live->t > RW_LIVE_TARGET_OLD)
    return FALSE;

  const RwRail *reference = rw_profile_get_rail (self->set->profile, self->set->reference);
  const RwMeterFacts *meter = rw_session_find_meter (rw_job_get_session (job), sample->meter);

  rw_trim_live_init (&self->live, self->set, (guint) from, sample->value, rw_meter_facts_u_own (meter, sample));
  if (fabs (self->live.x - reference->nominal) <= believable_share * fabs (reference->nominal))
    return TRUE;
  rw_trim_live_clear (&self->live);
  return FALSE;
}

gboolean
rw_class_trim_take (RwClassTrim  *self,
                    RwJob        *job,
                    RwBenchState *state,
                    GHashTable   *hidden)
{
  const RwTrimSet *set = find_set (job, state);
  const gboolean had_live = self->has_live, other = set != self->set;
  const double was = had_live ? self->live.x : (double) NAN;
  const guint was_from = had_live ? self->live.from : 0;

  if (had_live)
    rw_trim_live_clear (&self->live);
  if (other)
    {
      g_clear_pointer (&self->set, rw_trim_set_unref);
      self->set = set != NULL ? rw_trim_set_ref ((RwTrimSet *) set) : NULL;
    }
  self->has_live = self->set != NULL && take_live (self, job, hidden);
  return other || self->has_live != had_live
         || (had_live && (self->live.x != was || self->live.from != was_from));
}
