/* rw-bench-state.c: what the events say, computed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One walk over the landmarks. A spot's reading is replaced by a later one; a trim, a change of power or
 * board, or a repair makes every earlier reading stale.
 */
#include "config.h"

#include "rw-bench-state.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-trim-book.h"

struct _RwBenchState
{
  RwProfile  *profile;
  RwSetup     setup;
  GArray     *spots;    /* of RwSpotState */
  GArray     *symptoms; /* of RwSymptomSeen */
  GArray     *findings; /* of RwFindingSeen */
  GArray     *repairs;  /* of RwRepairSeen */
  GArray     *warnings; /* of RwWarning */
  GPtrArray  *trim_sets; /* of RwTrimSet */
  guint       n_trims;
  const char *stage;
};

/* Nothing on the DC side of a cabinet carries more (extra-low voltage). */
static const double mains_from = 60.0;

static void
clear_warning (gpointer data)
{
  RwWarning *warning = data;

  g_clear_pointer (&warning->text, g_free);
}

static void
clear_state (gpointer data)
{
  RwBenchState *self = data;

  g_clear_pointer (&self->profile, rw_profile_unref);
  g_clear_pointer (&self->spots, g_array_unref);
  g_clear_pointer (&self->symptoms, g_array_unref);
  g_clear_pointer (&self->findings, g_array_unref);
  g_clear_pointer (&self->repairs, g_array_unref);
  g_clear_pointer (&self->warnings, g_array_unref);
  g_clear_pointer (&self->trim_sets, g_ptr_array_unref);
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

/* @changed: the cabinet itself was changed, not only its setup. */
static void
make_stale (RwBenchState *self,
            gboolean      changed)
{
  for (guint i = 0; i < self->spots->len; i++)
    {
      RwSpotState *spot = &g_array_index (self->spots, RwSpotState, i);

      spot->stale = TRUE;
      spot->changed_since = spot->changed_since || changed;
    }
}

/* --- the other events --------------------------------------------------------------------------- */

static void
take_setup (RwBenchState  *self,
            const RwSetup *setup)
{
  gboolean changed = FALSE;

  if (setup->power_on != RW_SAID_NOT)
    {
      changed = changed || self->setup.power_on != setup->power_on;
      self->setup.power_on = setup->power_on;
    }
  if (setup->board_fitted != RW_SAID_NOT)
    {
      changed = changed || self->setup.board_fitted != setup->board_fitted;
      self->setup.board_fitted = setup->board_fitted;
    }
  if (setup->warm != RW_SAID_NOT)
    self->setup.warm = setup->warm;
  if (changed)
    make_stale (self, FALSE);
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
  for (guint i = 0; i < self->findings->len; i++)
    g_array_index (self->findings, RwFindingSeen, i).changed_since |= changed;
}

static void
take_event (RwBenchState  *self,
            RwSession     *session,
            const RwEvent *event)
{
  switch (event->type)
    {
    case RW_EVENT_SETUP:
      take_setup (self, &event->setup);
      break;
    case RW_EVENT_READING:
      take_reading (self, session, event);
      break;
    case RW_EVENT_TRIM:
      self->n_trims += event->trim.moved;
      if (event->trim.moved)
        make_stale (self, TRUE);
      break;
    case RW_EVENT_SYMPTOM:
      take_symptom (self, event);
      break;
    case RW_EVENT_FINDING:
      take_finding (self, event);
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
    case RW_N_EVENT_TYPES:
    default:
      break;
    }
}

/* --- warnings ----------------------------------------------------------------------------------- */

static void
warn (RwBenchState      *self,
      const RwSpotState *spot,
      const char        *id,
      gboolean           danger,
      char              *text)
{
  const RwWarning warning = { spot->n, id, danger, text };

  g_array_append_val (self->warnings, warning);
}

static const char *
label_of (const RwSpotState *spot)
{
  if (spot->rail != NULL)
    return spot->rail->label;
  return g_str_equal (spot->reading.rail, RW_RAIL_GROUND) ? _ ("ground") : spot->reading.rail;
}

static void
look_for_danger (RwBenchState      *self,
                 const RwSpotState *spot)
{
  const RwReading *reading = &spot->reading;
  g_autofree char *value = rw_quantity_format (reading->value, reading->step, reading->kind);

  if (fabs (reading->value) > mains_from)
    {
      warn (self, spot, "mains-sized", TRUE,
            /* Translators: value, rail. */
            g_strdup_printf (_ ("Stop: %s on %s is a mains-sized voltage. Take the leads away, pull the plug, and find "
                                "out what was touched before going on."),
                             value, label_of (spot)));
      return;
    }
  if (spot->rail == NULL || reading->place == RW_PLACE_WIRE || reading->kind != RW_KIND_DC)
    return;
  if (fabs (reading->value) > spot->rail->never_above)
    {
      g_autofree char *limit = rw_quantity_format (spot->rail->never_above, 0.1, RW_KIND_DC);

      warn (self, spot, "never-above", TRUE,
            /* Translators: value, rail, limit. */
            g_strdup_printf (_ ("%s on %s is past %s. Power off now, and keep the board out until the supply is "
                                "put right."),
                             value, label_of (spot), limit));
    }
  else if (reading->value * spot->rail->nominal < 0
           && fabs (reading->value) > 0.5 * fabs (spot->rail->nominal))
    warn (self, spot, "leads-reversed", FALSE,
          /* Translators: value, rail. */
          g_strdup_printf (_ ("%s on %s has the wrong sign: are the leads the wrong way round?"), value,
                           label_of (spot)));
}

static void
collect_warnings (RwBenchState *self)
{
  for (guint i = 0; i < self->spots->len; i++)
    {
      const RwSpotState *spot = &g_array_index (self->spots, RwSpotState, i);

      /* Mains is AC: it shows where ripple is measured. */
      if ((spot->reading.kind == RW_KIND_DC || spot->reading.kind == RW_KIND_RIPPLE)
          && !spot->reading.over && !spot->stale)
        look_for_danger (self, spot);
    }
}

RwBenchState *
rw_bench_state_new (RwSession *session)
{
  RwBenchState *self = g_atomic_rc_box_new0 (RwBenchState);
  g_autoptr (RwTrimBook) book = rw_trim_book_new (rw_session_get_profile (session));

  self->profile = rw_profile_ref (rw_session_get_profile (session));
  self->setup = (RwSetup){ RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };
  self->spots = g_array_new (FALSE, FALSE, sizeof (RwSpotState));
  self->symptoms = g_array_new (FALSE, FALSE, sizeof (RwSymptomSeen));
  self->findings = g_array_new (FALSE, FALSE, sizeof (RwFindingSeen));
  self->repairs = g_array_new (FALSE, FALSE, sizeof (RwRepairSeen));
  self->warnings = g_array_new (FALSE, FALSE, sizeof (RwWarning));
  g_array_set_clear_func (self->warnings, clear_warning);
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);

      if (!rw_session_is_live (session, index))
        continue;
      take_event (self, session, rw_session_get_event (session, index));
      rw_trim_book_take (book, session, rw_session_get_event (session, index), &self->setup);
    }
  self->trim_sets = rw_trim_book_make_sets (book);
  collect_warnings (self);
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
