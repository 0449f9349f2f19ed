/* rw-practice-cabinet.c: a simulated cabinet that one can switch, plug, trim and probe.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariants:
 *  1. parameters = what profile and seed build, changed by the faults that are left, in order;
 *  2. state moves only in rw_practice_cabinet_advance (), by whole steps; what is left of a step
 *     stays in `owed`, so that ten calls of 0.1 s and one of 1 s are the same;
 *  3. hands act between steps: what they change shows after the next one.
 */
#include "config.h"

#include "rw-practice-cabinet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-practice-build.h"
#include "rw-practice-cabinet-private.h"
#include "rw-practice-nodes-private.h"

static const double slack = 1e-6; /* of a step: sums of 0.1 are not quite what they should be */

enum
{
  PROP_0,
  PROP_POWER,
  PROP_BOARD_FITTED,
  PROP_WARM,
  PROP_TRIPPED,
  PROP_TRIM,
  PROP_BOARD_STATE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];
static guint reset_signal;

G_DEFINE_QUARK (rw_practice_error, rw_practice_error)
G_DEFINE_FINAL_TYPE (RwPracticeCabinet, rw_practice_cabinet, G_TYPE_OBJECT)

static void
rw_practice_cabinet_get_property (GObject    *object,
                                  guint       id,
                                  GValue     *value,
                                  GParamSpec *spec)
{
  RwPracticeCabinet *self = RW_PRACTICE_CABINET (object);

  switch (id)
    {
    case PROP_POWER:
      g_value_set_boolean (value, self->model.state.power);
      break;

    case PROP_BOARD_FITTED:
      g_value_set_boolean (value, self->model.state.fitted);
      break;

    case PROP_WARM:
      g_value_set_boolean (value, rw_practice_cabinet_get_warm (self));
      break;

    case PROP_TRIPPED:
      g_value_set_boolean (value, self->model.state.tripped);
      break;

    case PROP_TRIM:
      g_value_set_double (value, self->model.state.trim);
      break;

    case PROP_BOARD_STATE:
      g_value_set_int (value, (int)self->model.state.board);
      break;

    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
    }
}

static void
rw_practice_cabinet_finalize (GObject *object)
{
  RwPracticeCabinet *self = RW_PRACTICE_CABINET (object);

  g_clear_pointer (&self->profile, rw_profile_unref);
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->faults, g_array_unref);
  g_clear_pointer (&self->nodes, g_array_unref);
  G_OBJECT_CLASS (rw_practice_cabinet_parent_class)->finalize (object);
}

static void
rw_practice_cabinet_class_init (RwPracticeCabinetClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = rw_practice_cabinet_get_property;
  object_class->finalize = rw_practice_cabinet_finalize;

  props[PROP_POWER] = g_param_spec_boolean ("power", NULL, NULL, FALSE, flags);
  props[PROP_BOARD_FITTED] = g_param_spec_boolean ("board-fitted", NULL, NULL, TRUE, flags);
  props[PROP_WARM] = g_param_spec_boolean ("warm", NULL, NULL, FALSE, flags);
  props[PROP_TRIPPED] = g_param_spec_boolean ("tripped", NULL, NULL, FALSE, flags);
  props[PROP_TRIM] = g_param_spec_double ("trim", NULL, NULL, 0, 1, 0.5, flags);
  props[PROP_BOARD_STATE] = g_param_spec_int ("board-state", NULL, NULL, RW_PRACTICE_BOARD_DEAD,
                                              RW_PRACTICE_BOARD_RUNNING, RW_PRACTICE_BOARD_DEAD,
                                              flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  reset_signal = g_signal_new ("reset", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                               NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  g_signal_new ("lethal", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                G_TYPE_STRING, G_TYPE_STRING);
  g_signal_new ("leads-moved", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
rw_practice_cabinet_init (RwPracticeCabinet *self)
{
  self->faults = g_array_new (FALSE, TRUE, sizeof (RwPracticeFault));
  self->dial.shunt_ohms = INFINITY;
}

/* Invariant 1. */
static void
rebuild (RwPracticeCabinet *self)
{
  rw_practice_build (&self->model.params, self->profile, self->seed);
  for (guint i = 0; i < self->faults->len; i++)
    {
      const RwPracticeFault *fault = &g_array_index (self->faults, RwPracticeFault, i);

      rw_practice_faults_apply (fault->id, fault->strength, &self->model.params);
    }
}

static gboolean
check_profile (RwProfile *profile,
               GError   **error)
{
  const int reference = rw_profile_index_of (profile, rw_profile_get_reference (profile)->id);

  if (reference < 0 || reference >= RW_PRACTICE_MAX_RAILS)
    {
      g_set_error (
          error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_PROFILE,
          _ ("A practice cabinet has at most %d rails, and the reference rail of profile “%s” "
             "is not among the first. Move it to the front of the profile."),
          RW_PRACTICE_MAX_RAILS, rw_profile_get_id (profile));
      return FALSE;
    }
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);

      if (isfinite (rail->nominal) && fabs (rail->nominal) >= 0.5 && fabs (rail->nominal) <= 60)
        continue;
      g_set_error (
          error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_PROFILE,
          _ ("A practice cabinet cannot have rail “%s” of profile “%s”: its nominal volts must lie "
             "between 0.5 and 60. Choose another profile."),
          rail->id, rw_profile_get_id (profile));
      return FALSE;
    }
  return TRUE;
}

static gboolean
add_faults (RwPracticeCabinet     *self,
            const RwPracticeFault *faults,
            guint                  n_faults,
            GError               **error)
{
  for (guint i = 0; i < n_faults; i++)
    {
      const RwPracticeFault fault = { g_intern_string (faults[i].id), faults[i].strength };

      if (!rw_practice_faults_has (fault.id))
        {
          g_set_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_FAULT,
                       _ ("A practice cabinet cannot have “%s”. Choose one of its own faults."),
                       fault.id);
          return FALSE;
        }
      if (!rw_practice_faults_fit (fault.id, &self->model.params))
        {
          g_set_error (
              error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_FAULT,
              _ ("The fault “%s” does not fit the supply of profile “%s”. Choose another of the "
                 "two."),
              fault.id, rw_profile_get_id (self->profile));
          return FALSE;
        }
      if (!(fault.strength >= 0 && fault.strength <= 1))
        {
          g_set_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_FAULT,
                       _ ("The strength of fault “%s” must lie between 0 and 1."), fault.id);
          return FALSE;
        }
      g_array_append_val (self->faults, fault);
    }
  return TRUE;
}

RwPracticeCabinet *
rw_practice_cabinet_new (RwProfile             *profile,
                         guint64                seed,
                         const RwPracticeFault *faults,
                         guint                  n_faults,
                         const char            *name,
                         GError               **error)
{
  g_return_val_if_fail (profile != NULL, NULL);
  g_return_val_if_fail (faults != NULL || n_faults == 0, NULL);

  if (!check_profile (profile, error))
    return NULL;

  g_autoptr (RwPracticeCabinet) self = g_object_new (RW_TYPE_PRACTICE_CABINET, NULL);

  self->profile = rw_profile_ref (profile);
  self->name = g_strdup (name != NULL ? name : "");
  self->seed = seed;
  rebuild (self);
  self->nodes = rw_practice_nodes_build (&self->model.params, profile);
  if (!add_faults (self, faults, n_faults, error))
    return NULL;
  rebuild (self);
  rw_practice_model_start (&self->model, seed);
  return g_steal_pointer (&self);
}

static void
notify_changes (RwPracticeCabinet     *self,
                const RwPracticeState *was,
                gboolean               was_warm)
{
  const RwPracticeState *now = &self->model.state;

  if (now->board != was->board)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_BOARD_STATE]);
  if (now->tripped != was->tripped)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TRIPPED]);
  if (rw_practice_cabinet_get_warm (self) != was_warm)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_WARM]);
}

static void
step (RwPracticeCabinet *self)
{
  const RwPracticeState was = self->model.state;
  const gboolean was_warm = rw_practice_cabinet_get_warm (self);
  const gboolean reset = rw_practice_cabinet_step_shunted (self);

  if (self->step_func != NULL)
    self->step_func (self, self->step_data);
  notify_changes (self, &was, was_warm);
  if (reset)
    g_signal_emit (self, reset_signal, 0, self->model.state.resets);
}

void
rw_practice_cabinet_advance (RwPracticeCabinet *self,
                             double             seconds)
{
  g_return_if_fail (RW_IS_PRACTICE_CABINET (self));

  if (!(seconds > 0) || isinf (seconds))
    return;
  self->owed += seconds;

  const double whole = floor (self->owed / RW_PRACTICE_STEP + slack);

  self->owed = MAX (0, self->owed - whole * RW_PRACTICE_STEP);
  g_object_ref (self);
  for (double i = 0; i < whole; i++)
    step (self);
  g_object_unref (self);
}

void
rw_practice_cabinet_set_power (RwPracticeCabinet *self,
                               gboolean           on)
{
  on = on ? TRUE : FALSE;
  if (self->model.state.power == on)
    return;
  self->model.state.power = on;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_POWER]);
}

void
rw_practice_cabinet_set_board_fitted (RwPracticeCabinet *self,
                                      gboolean           fitted)
{
  fitted = fitted ? TRUE : FALSE;
  if (self->model.state.fitted == fitted)
    return;
  self->model.state.fitted = fitted;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_BOARD_FITTED]);
}

/* What was seen before hands changed something says nothing of now. */
static void
forget_resets (RwPracticeCabinet *self)
{
  self->model.state.reset_age = INFINITY;
  self->model.state.reset_gap = INFINITY;
  self->model.state.fast_resets = 0;
  self->model.state.edge_lowest = INFINITY;
}

static void
set_trim (RwPracticeCabinet *self,
          double             position)
{
  if (isnan (position))
    return;
  position = CLAMP (position, 0, 1);
  if (position == self->model.state.trim)
    return;
  self->model.state.trim = position;
  forget_resets (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TRIM]);
}

void
rw_practice_cabinet_turn_trim (RwPracticeCabinet *self,
                               double             delta)
{
  self->trim_turned = TRUE;
  set_trim (self, self->model.state.trim + delta);
}

void
rw_practice_cabinet_turn_trim_volts (RwPracticeCabinet *self,
                                     double             volts)
{
  const RwPracticeParams *params = &self->model.params;

  rw_practice_cabinet_turn_trim (self, volts / (params->trim_hi_volts - params->trim_lo_volts));
}

gboolean
rw_practice_cabinet_repair (RwPracticeCabinet *self,
                            const char        *cause)
{
  guint removed = 0;

  for (guint i = self->faults->len; i-- > 0;)
    if (g_strcmp0 (g_array_index (self->faults, RwPracticeFault, i).id, cause) == 0)
      {
        g_array_remove_index (self->faults, i);
        removed++;
      }
  if (removed == 0)
    return FALSE;

  const gboolean was_latched = self->model.params.latched_start;

  rebuild (self);
  if (!self->trim_turned)
    set_trim (self, self->model.params.trim_start);
  if (was_latched && !self->model.params.latched_start)
    self->model.state.tripped = FALSE;
  forget_resets (self);
  return TRUE;
}

void
rw_practice_cabinet_set_step_func (RwPracticeCabinet *self,
                                   RwPracticeStepFunc func,
                                   gpointer           data)
{
  self->step_func = func;
  self->step_data = data;
}
