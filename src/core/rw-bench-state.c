/* rw-bench-state.c: what the events say, computed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One walk over the landmarks. A spot's reading is replaced by a later one; a trim, a change of power or
 * board, or a repair makes every earlier reading stale.
 */
#include "config.h"

#include "rw-bench-state-private.h"

#include <math.h>

#include "rw-mistakes.h"
#include "rw-supply-return.h"
#include "rw-trim-book.h"

static void
clear_state (gpointer data)
{
  RwBenchState *self = data;

  g_clear_pointer (&self->profile, rw_profile_unref);
  g_clear_pointer (&self->spots, g_array_unref);
  g_clear_pointer (&self->views, g_array_unref);
  g_clear_pointer (&self->symptoms, g_array_unref);
  g_clear_pointer (&self->findings, g_array_unref);
  g_clear_pointer (&self->repairs, g_array_unref);
  g_clear_pointer (&self->warnings, g_array_unref);
  g_clear_pointer (&self->trim_sets, g_ptr_array_unref);
  g_clear_pointer (&self->mistakes, rw_mistakes_book_free);
}

RwBenchState *
rw_bench_state_ref (RwBenchState *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_bench_state_unref (RwBenchState *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_state);
}

/* --- readings ----------------------------------------------------------------------------------- */

/* Rails in the order of the profile, then ground, then strangers; within a rail by place and kind. */
static guint
rank (const RwBenchState *self,
      const RwReading    *reading)
{
  const int index = rw_profile_index_of (self->profile, reading->rail);
  const guint rail = index >= 0                                     ? (guint) index
                     : g_str_equal (reading->rail, RW_RAIL_GROUND) ? 1000
                                                                   : 1001;

  return (rail * RW_N_PLACES + reading->place) * RW_N_KINDS + reading->kind;
}

static void
judge (RwSpotState *spot)
{
  const gboolean negative = spot->rail != NULL && spot->rail->nominal < 0
                            && spot->reading.place != RW_PLACE_WIRE;

  spot->lo = spot->hi = spot->position = spot->margin = NAN;
  spot->verdict = RW_VERDICT_NONE;
  if (!rw_rail_limits_at (spot->rail, spot->reading.rail, spot->reading.place, spot->reading.kind,
                          &spot->lo, &spot->hi))
    {
      spot->lo = spot->hi = NAN;
      return;
    }
  if (spot->reading.over)
    return;
  spot->position = rw_position (spot->reading.value, spot->lo, spot->hi, negative);
  spot->margin = 1 - fabs (spot->position);
  spot->verdict = rw_verdict_judge (spot->reading.value, spot->u, spot->lo, spot->hi);
}

static gboolean
same_view (const RwSpotState *a,
           const RwSpotState *b)
{
  return rw_reading_same_spot (&a->reading, &b->reading)
         && (a->setup.board_fitted == RW_SAID_NO) == (b->setup.board_fitted == RW_SAID_NO);
}

static guint
last_repair (const RwBenchState *self)
{
  return self->repairs->len > 0 ? g_array_index (self->repairs, RwRepairSeen, self->repairs->len - 1).n : 0;
}

static void
keep_view (RwBenchState      *self,
           const RwSpotState *spot)
{
  const RwSupplyLast last = { .rested = self->rested, .plugged = self->plugged, .repaired = last_repair (self) };
  RwSpotState view = *spot;

  view.came_back = rw_supply_has_returned (self->views, spot, &last);
  for (guint i = 0; i < self->views->len; i++)
    if (same_view (&g_array_index (self->views, RwSpotState, i), spot))
      {
        g_array_index (self->views, RwSpotState, i) = view;
        return;
      }
  g_array_append_val (self->views, view);
}

static void
take_reading (RwBenchState  *self,
              RwSession     *session,
              const RwEvent *event)
{
  const RwMeterFacts *meter = rw_session_find_meter (session, event->reading.meter);
  RwSpotState spot = {
    .reading = event->reading,
    .rail = rw_profile_find_rail (self->profile, event->reading.rail),
    .n = event->n,
    .t = event->t,
    .setup = self->setup,
    .u = rw_meter_facts_u_total (meter, &event->reading),
    .u_own = rw_meter_facts_u_own (meter, &event->reading),
  };
  const guint place = rank (self, &spot.reading);
  guint i = 0;

  judge (&spot);
  rw_mistakes_book_take_reading (self->mistakes, &spot, meter != NULL);
  keep_view (self, &spot);
  for (; i < self->spots->len; i++)
    {
      RwSpotState *other = &g_array_index (self->spots, RwSpotState, i);

      if (rw_reading_same_spot (&other->reading, &spot.reading))
        {
          *other = spot;
          return;
        }
      if (rank (self, &other->reading) > place)
        break;
    }
  g_array_insert_val (self->spots, i, spot);
}

static void
make_spots_stale (GArray  *spots,
                  gboolean changed)
{
  for (guint i = 0; i < spots->len; i++)
    {
      RwSpotState *spot = &g_array_index (spots, RwSpotState, i);

      spot->stale = TRUE;
      spot->changed_since = spot->changed_since || changed;
    }
}

/* @changed: the cabinet itself was changed, not only its setup. */
static void
make_stale (RwBenchState *self,
            gboolean      changed)
{
  make_spots_stale (self->spots, changed);
  make_spots_stale (self->views, changed);
}

/* --- the other events --------------------------------------------------------------------------- */

static void
take_setup (RwBenchState  *self,
            const RwSetup *setup,
            guint          n)
{
  gboolean changed = FALSE;

  if (setup->power_on != RW_SAID_NOT)
    {
      changed = changed || self->setup.power_on != setup->power_on;
      if (self->setup.power_on == RW_SAID_YES && setup->power_on == RW_SAID_NO)
        self->rested = n;
      self->setup.power_on = setup->power_on;
    }
  if (setup->board_fitted != RW_SAID_NOT)
    {
      changed = changed || self->setup.board_fitted != setup->board_fitted;
      if (self->setup.board_fitted != setup->board_fitted)
        self->rested = n; /* nobody pulls or fits a board under power */
      if (self->setup.board_fitted == RW_SAID_NO && setup->board_fitted == RW_SAID_YES)
        self->plugged = n;
      self->setup.board_fitted = setup->board_fitted;
    }
  if (setup->warm != RW_SAID_NOT)
    self->setup.warm = setup->warm;
  if (!changed)
    return;
  make_stale (self, FALSE);
  rw_mistakes_book_take_change (self->mistakes, FALSE);
}

static void
take_symptom (RwBenchState  *self,
              const RwEvent *event)
{
  const RwSymptomSeen seen = { event->symptom.id, event->symptom.state, event->n, event->t };

  for (guint i = 0; i < self->symptoms->len; i++)
    if (g_array_index (self->symptoms, RwSymptomSeen, i).id == seen.id)
      {
        g_array_index (self->symptoms, RwSymptomSeen, i) = seen;
        return;
      }
  g_array_append_val (self->symptoms, seen);
}

static void
take_finding (RwBenchState  *self,
              const RwEvent *event)
{
  const RwFindingSeen seen = { event->finding.check, event->finding.outcome, event->n, event->t, FALSE };

  for (guint i = 0; i < self->findings->len; i++)
    if (g_array_index (self->findings, RwFindingSeen, i).check == seen.check)
      {
        g_array_index (self->findings, RwFindingSeen, i) = seen;
        return;
      }
  g_array_append_val (self->findings, seen);
}

static void
take_repair (RwBenchState  *self,
             const RwEvent *event)
{
  const RwRepairSeen seen = { event->repair.cause, event->repair.result, event->n, event->t };

  /* What a repair that changed nothing left to be measured again still tells of the cause. */
  const gboolean changed = seen.result == RW_REPAIR_FIXED;

  g_array_append_val (self->repairs, seen);
  make_stale (self, changed);
  rw_mistakes_book_take_change (self->mistakes, changed);
  for (guint i = 0; i < self->findings->len; i++)
    g_array_index (self->findings, RwFindingSeen, i).changed_since |= changed;
}

static void
take_trim (RwBenchState  *self,
           const RwEvent *event)
{
  if (!event->trim.moved)
    return;
  self->n_trims++;
  self->turned = event->n;
  make_stale (self, TRUE);
  rw_mistakes_book_take_turn (self->mistakes, event->n, event->t, &self->setup);
}

void
rw_bench_state_take (RwBenchState  *self,
                     RwSession     *session,
                     const RwEvent *event)
{
  switch (event->type)
    {
    case RW_EVENT_SETUP:
      take_setup (self, &event->setup, event->n);
      break;
    case RW_EVENT_READING:
      take_reading (self, session, event);
      break;
    case RW_EVENT_TRIM:
      take_trim (self, event);
      break;
    case RW_EVENT_SYMPTOM:
      take_symptom (self, event);
      rw_mistakes_book_take_deed (self->mistakes, event->t);
      break;
    case RW_EVENT_FINDING:
      take_finding (self, event);
      rw_mistakes_book_take_deed (self->mistakes, event->t);
      break;
    case RW_EVENT_REPAIR:
      take_repair (self, event);
      break;
    case RW_EVENT_STAGE:
      self->stage = event->stage.id;
      break;
    case RW_EVENT_UNKNOWN:
    case RW_EVENT_SAMPLE:
    case RW_EVENT_MARK:
    case RW_EVENT_NOTE:
    case RW_EVENT_RETRACT:
    case RW_EVENT_GAP:
    case RW_EVENT_METER:
    case RW_EVENT_CALL:
    case RW_N_EVENT_TYPES:
    default:
      break;
    }
}

/* --- all of it ---------------------------------------------------------------------------------- */

RwBenchState *
rw_bench_state_begin (RwProfile *profile)
{
  RwBenchState *self = g_atomic_rc_box_new0 (RwBenchState);

  self->profile = rw_profile_ref (profile);
  self->setup = (RwSetup){ RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };
  self->spots = g_array_new (FALSE, FALSE, sizeof (RwSpotState));
  self->views = g_array_new (FALSE, FALSE, sizeof (RwSpotState));
  self->symptoms = g_array_new (FALSE, FALSE, sizeof (RwSymptomSeen));
  self->findings = g_array_new (FALSE, FALSE, sizeof (RwFindingSeen));
  self->repairs = g_array_new (FALSE, FALSE, sizeof (RwRepairSeen));
  self->mistakes = rw_mistakes_book_new (rw_profile_get_reference (profile));
  self->warnings = g_array_new (FALSE, FALSE, sizeof (RwWarning));
  g_array_set_clear_func (self->warnings, (GDestroyNotify) rw_warning_clear);
  return self;
}

RwBenchState *
rw_bench_state_new (RwSession *session)
{
  RwBenchState *self = rw_bench_state_begin (rw_session_get_profile (session));
  g_autoptr (RwTrimBook) book = rw_trim_book_new (self->profile);

  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);

      if (!rw_session_is_live (session, index))
        continue;
      rw_bench_state_take (self, session, rw_session_get_event (session, index));
      rw_trim_book_take (book, session, rw_session_get_event (session, index), &self->setup);
    }
  self->trim_sets = rw_trim_book_make_sets (book);
  rw_mistakes_look (self, self->mistakes, self->warnings);
  g_clear_pointer (&self->mistakes, rw_mistakes_book_free);
  return self;
}

/* --- getters ------------------------------------------------------------------------------------ */

RwProfile *
rw_bench_state_get_profile (const RwBenchState *self)
{
  return self->profile;
}

RwSetup
rw_bench_state_get_setup (const RwBenchState *self)
{
  return self->setup;
}

guint
rw_bench_state_get_n_spots (const RwBenchState *self)
{
  return self->spots->len;
}

const RwSpotState *
rw_bench_state_get_spot (const RwBenchState *self,
                         guint               i)
{
  g_return_val_if_fail (i < self->spots->len, NULL);
  return &g_array_index (self->spots, RwSpotState, i);
}

const RwSpotState *
rw_bench_state_find_spot (const RwBenchState *self,
                          const char         *rail,
                          RwPlace             place,
                          RwKind              kind)
{
  for (guint i = 0; i < self->spots->len; i++)
    {
      const RwSpotState *spot = &g_array_index (self->spots, RwSpotState, i);

      if (g_str_equal (spot->reading.rail, rail) && spot->reading.place == place
          && spot->reading.kind == kind)
        return spot;
    }
  return NULL;
}

const RwSpotState *
rw_bench_state_find_rail (const RwBenchState *self,
                          const char         *rail)
{
  const RwSpotState *newest = NULL;

  for (guint i = 0; i < self->spots->len; i++)
    {
      const RwSpotState *spot = &g_array_index (self->spots, RwSpotState, i);

      if (g_str_equal (spot->reading.rail, rail) && spot->reading.kind == RW_KIND_DC
          && spot->reading.place != RW_PLACE_WIRE && (newest == NULL || spot->n > newest->n))
        newest = spot;
    }
  return newest;
}

guint
rw_bench_state_get_n_views (const RwBenchState *self)
{
  return self->views->len;
}

const RwSpotState *
rw_bench_state_get_view (const RwBenchState *self,
                         guint               i)
{
  g_return_val_if_fail (i < self->views->len, NULL);
  return &g_array_index (self->views, RwSpotState, i);
}

const RwSpotState *
rw_bench_state_find_view (const RwBenchState *self,
                          const char         *rail,
                          RwPlace             place,
                          RwKind              kind,
                          gboolean            out)
{
  for (guint i = 0; i < self->views->len; i++)
    {
      const RwSpotState *view = &g_array_index (self->views, RwSpotState, i);

      if (g_str_equal (view->reading.rail, rail) && view->reading.place == place
          && view->reading.kind == kind && (view->setup.board_fitted == RW_SAID_NO) == out)
        return view;
    }
  return NULL;
}

guint
rw_bench_state_get_plugged (const RwBenchState *self)
{
  return self->plugged;
}

guint
rw_bench_state_get_turned (const RwBenchState *self)
{
  return self->turned;
}

guint
rw_bench_state_get_n_symptoms (const RwBenchState *self)
{
  return self->symptoms->len;
}

const RwSymptomSeen *
rw_bench_state_get_symptom (const RwBenchState *self,
                            guint               i)
{
  g_return_val_if_fail (i < self->symptoms->len, NULL);
  return &g_array_index (self->symptoms, RwSymptomSeen, i);
}

guint
rw_bench_state_get_n_findings (const RwBenchState *self)
{
  return self->findings->len;
}

const RwFindingSeen *
rw_bench_state_get_finding (const RwBenchState *self,
                            guint               i)
{
  g_return_val_if_fail (i < self->findings->len, NULL);
  return &g_array_index (self->findings, RwFindingSeen, i);
}

guint
rw_bench_state_get_n_repairs (const RwBenchState *self)
{
  return self->repairs->len;
}

const RwRepairSeen *
rw_bench_state_get_repair (const RwBenchState *self,
                           guint               i)
{
  g_return_val_if_fail (i < self->repairs->len, NULL);
  return &g_array_index (self->repairs, RwRepairSeen, i);
}

guint
rw_bench_state_get_n_warnings (const RwBenchState *self)
{
  return self->warnings->len;
}

const RwWarning *
rw_bench_state_get_warning (const RwBenchState *self,
                            guint               i)
{
  g_return_val_if_fail (i < self->warnings->len, NULL);
  return &g_array_index (self->warnings, RwWarning, i);
}

const RwWarning *
rw_bench_state_find_danger (const RwBenchState *self)
{
  for (guint i = 0; i < self->warnings->len; i++)
    if (g_array_index (self->warnings, RwWarning, i).danger)
      return &g_array_index (self->warnings, RwWarning, i);
  return NULL;
}

guint
rw_bench_state_get_n_trim_sets (const RwBenchState *self)
{
  return self->trim_sets->len;
}

const RwTrimSet *
rw_bench_state_get_trim_set (const RwBenchState *self,
                             guint               i)
{
  g_return_val_if_fail (i < self->trim_sets->len, NULL);
  return self->trim_sets->pdata[i];
}

const RwTrimSet *
rw_bench_state_find_trim_set (const RwBenchState *self,
                              RwPlace             place)
{
  const RwSaid board = rw_trim_book_board_at (place, self->setup.board_fitted);

  for (guint i = 0; i < self->trim_sets->len; i++)
    {
      const RwTrimSet *set = self->trim_sets->pdata[i];

      if (set->place == place && set->board == board)
        return set;
    }
  return NULL;
}

guint
rw_bench_state_get_n_trims (const RwBenchState *self)
{
  return self->n_trims;
}

const char *
rw_bench_state_get_stage (const RwBenchState *self)
{
  return self->stage;
}
