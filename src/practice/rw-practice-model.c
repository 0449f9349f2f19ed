/* rw-practice-model.c: the physics of a cabinet, stepped through time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Slow things are first-order: warmth w moves by (target − w)·dt/τ; wanderings are
 * Ornstein–Uhlenbeck processes, x += −x·dt/τ + σ·√(2dt/τ)·g with g Gaussian, so that they keep
 * the spread σ whatever dt is.
 *
 * The board, on its +5 at the far chip (V):
 *
 *     dead ──V ≥ start_above──▶ reset ──reset_seconds above start_above──▶ running
 *      ▲                         │  ▲                                         │
 *      └──────V < dead_below─────┘  └── V < reset_below for reset_hold, or ───┘
 *                                       a reset of its own making (counted)
 *
 * Power gone, the latch, or V < dead_below sends a running board to dead without counting.
 */
#include "config.h"

#include "rw-practice-model.h"

#include <math.h>
#include <string.h>

#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"

static const double dt = RW_PRACTICE_STEP;

static const double rise_seconds = 0.05;        /* a supply comes up */
static const double fall_loaded_seconds = 0.25; /* its capacitors empty, time constant */
static const double fall_bare_seconds = 2.5;
static const double tick_period_seconds = 0.7;
static const double tick_pulse_seconds = 0.12;
static const double tick_height = 0.4; /* of full output: +5 jumps to about 2 V */
static const double reference_wander_seconds = 8;
static const double load_wander_seconds = 20;
static const double contact_wander_seconds = 1.5;
static const double least_mains = 0.3; /* share below which nothing starts */
static const double meter_seconds = 0.25; /* a meter's own averaging */
static const double usual_seconds = 20;
static const double fast_seconds = 3; /* a reset this soon after the last: it got nowhere */
static const double least_lamp_volts = 6;
static const double rest_seconds = 10; /* its reset's capacitor has emptied */
static const double shortest_jerk = 0.02, longest_jerk = 0.30;
static const double shortest_load_step = 0.03, longest_load_step = 0.10;

int
rw_practice_params_index_of (const RwPracticeParams *self,
                             const char             *rail)
{
  for (guint i = 0; i < self->n_rails; i++)
    if (g_strcmp0 (self->rail[i].id, rail) == 0)
      return (int)i;
  return -1;
}

guint
rw_practice_params_lamp_rail (const RwPracticeParams *self)
{
  guint best = self->reference;

  for (guint i = 0; i < self->n_rails; i++)
    if (i != self->reference && self->rail[i].sign > 0 && self->rail[i].nominal >= least_lamp_volts
        && (best == self->reference || self->rail[i].nominal < self->rail[best].nominal))
      best = i;
  return best;
}

void
rw_practice_model_start (RwPracticeModel *self,
                         guint64          seed)
{
  memset (&self->state, 0, sizeof self->state);
  self->state.fitted = TRUE;
  self->state.trim = CLAMP (self->params.trim_start, 0, 1);
  self->state.fold = 1;
  self->state.reset_age = self->state.reset_gap = INFINITY;
  self->state.edge_lowest = INFINITY;
  self->state.off_seconds = rest_seconds; /* it comes in cold and rested */
  self->state.board = RW_PRACTICE_BOARD_DEAD;
  self->state.tripped = self->params.latched_start;
  rw_practice_random_seed (&self->random, seed);
  rw_practice_circuit_solve (self);
}

/* One step of an Ornstein–Uhlenbeck process. */
static void
wander (RwPracticeModel *self,
        double          *x,
        double           sigma,
        double           seconds)
{
  const double kick = sigma * sqrt (2 * dt / seconds);

  *x += -*x * (dt / seconds) + kick * rw_practice_random_gauss (&self->random);
}

static void
step_latch (RwPracticeModel *self)
{
  const RwPracticeParams *params = &self->params;
  RwPracticeState *state = &self->state;

  if (state->power && state->on_seconds <= 0)
    state->rested = state->off_seconds >= rest_seconds;
  state->on_seconds = state->power ? state->on_seconds + dt : 0;
  state->off_seconds = state->power ? 0 : state->off_seconds + dt;
  if (params->over_volts > 0
      && fabs (state->flow[params->reference].terminal_volts) > params->over_volts)
    state->tripped = TRUE;
  else if (state->tripped && state->off_seconds >= params->over_rest_seconds)
    state->tripped = FALSE;
}

/* How far the supply has come up. */
static void
step_level (RwPracticeModel *self)
{
  RwPracticeState *state = &self->state;
  /* A linear one holds back its regulator only. */
  const gboolean held = state->tripped && self->params.supply == RW_PRACTICE_SWITCHER;
  const gboolean gives = state->power && !held
                         && self->params.mains_share > least_mains;

  state->ticking = gives && rw_practice_circuit_ticks (self);
  if (state->ticking)
    {
      state->tick_phase += dt;
      if (state->tick_phase >= tick_period_seconds)
        state->tick_phase -= tick_period_seconds;
      state->level = state->tick_phase < tick_pulse_seconds
                         ? tick_height * state->tick_phase / tick_pulse_seconds
                         : state->level * (1 - dt / fall_loaded_seconds);
    }
  else if (gives)
    state->level = MIN (1, state->level + dt / rise_seconds);
  else
    state->level *= 1 - dt / (state->fitted ? fall_loaded_seconds : fall_bare_seconds);
  if (state->level < 1e-6)
    state->level = 0;
}

static void
step_slow (RwPracticeModel *self)
{
  const RwPracticeParams *params = &self->params;
  RwPracticeState *state = &self->state;
  const double target = state->power && !state->tripped ? 1 : 0;

  state->warm += (target - state->warm) * dt / MAX (dt, params->warm_seconds);
  wander (self, &state->wander_reference, params->reference_noise, reference_wander_seconds);
  wander (self, &state->wander_load, params->load_noise, load_wander_seconds);
  wander (self, &state->wander_contact, 1, contact_wander_seconds);
}

/* What the game does makes it draw more now and then, for a moment. */
static void
step_load (RwPracticeModel *self)
{
  const RwPracticeParams *params = &self->params;
  RwPracticeState *state = &self->state;
  const gboolean begins = rw_practice_random_uniform (&self->random) < params->step_rate * dt;

  state->step_left -= dt;
  if (begins && state->board == RW_PRACTICE_BOARD_RUNNING)
    {
      state->step_left = rw_practice_random_between (&self->random, shortest_load_step,
                                                     longest_load_step);
      state->step_amps = rw_practice_random_between (&self->random, 0.3, 1)
                         * params->step_share;
    }
  else if (state->step_left <= 0)
    {
      state->step_left = 0;
      state->step_amps = 0;
    }
}

/* Something loose moves by itself. The generator is asked only where something is loose. */
static void
step_jerk (RwPracticeModel *self)
{
  const RwPracticeParams *params = &self->params;
  RwPracticeState *state = &self->state;

  state->shake_left = MAX (0, state->shake_left - dt);
  if (state->shake_left <= 0)
    state->shake_ohms = 0;
  state->jerk_left = MAX (0, state->jerk_left - dt);
  if (state->jerk_left <= 0)
    state->jerk_ohms = state->jerk_volts = 0;
  if (params->jerk_rate <= 0
      || rw_practice_random_uniform (&self->random) >= params->jerk_rate * dt)
    return;
  state->jerk_left = rw_practice_random_between (&self->random, shortest_jerk, longest_jerk);
  state->jerk_ohms = params->jerk_ohms * rw_practice_random_uniform (&self->random);
  state->jerk_volts = params->jerk_volts * rw_practice_random_between (&self->random, -1, 1);
}

/* What a meter on the edge connector would have seen, MIN/MAX on. */
static void
step_edge (RwPracticeModel *self)
{
  RwPracticeState *state = &self->state;
  const double volts = fabs (state->flow[self->params.reference].finger_volts
                             - state->ground_volts);

  if (!state->fitted || state->level < 1 || state->board == RW_PRACTICE_BOARD_DEAD)
    {
      state->edge_shown = state->edge_usual = volts;
      return;
    }
  state->edge_shown += (volts - state->edge_shown) * (dt / meter_seconds);
  state->edge_usual += (volts - state->edge_usual) * (dt / usual_seconds);
  state->edge_lowest = MIN (state->edge_lowest, state->edge_shown);
}

static gboolean
reset_board (RwPracticeState *state,
             double           volts)
{
  state->reset_chip_volts = volts;
  state->fast_resets = state->reset_age <= fast_seconds ? state->fast_resets + 1 : 0;
  state->board = RW_PRACTICE_BOARD_RESET;
  state->start_seconds = 0;
  state->below_seconds = 0;
  state->step_amps = 0;
  state->resets++;
  state->reset_gap = state->reset_age;
  state->reset_age = 0;
  return TRUE;
}

static gboolean
step_running (RwPracticeModel *self,
              double           volts)
{
  const RwPracticeParams *params = &self->params;
  RwPracticeState *state = &self->state;
  const double rate = params->own_reset_rate + params->own_reset_warm * state->warm;
  const gboolean of_its_own = rw_practice_random_uniform (&self->random) < rate * dt
                              || (state->knocked && params->knock_resets);

  if (volts >= params->reset_below_volts)
    {
      state->below_seconds = 0;
      return of_its_own && reset_board (state, volts);
    }
  state->below_seconds += dt;
  /* Half a step of slack: 0.02 must be two steps, not three. */
  if (of_its_own || state->below_seconds > params->reset_hold_seconds - dt / 2)
    return reset_board (state, volts);
  return FALSE;
}

static gboolean
step_board (RwPracticeModel *self)
{
  const RwPracticeParams *params = &self->params;
  RwPracticeState *state = &self->state;
  const double volts = state->fitted ? fabs (state->flow[params->reference].chip_volts) : 0;

  state->reset_age += dt;

  const gboolean going_off = (!state->power || state->tripped)
                             && volts < params->reset_below_volts;

  if (!state->fitted || going_off || volts < params->dead_below_volts)
    {
      state->board = RW_PRACTICE_BOARD_DEAD;
      return FALSE;
    }
  switch (state->board)
    {
    case RW_PRACTICE_BOARD_RUNNING:
      return step_running (self, volts);

    case RW_PRACTICE_BOARD_RESET:
      state->start_seconds = volts < params->start_above_volts
                                     || (params->slow_start && state->rested)
                                 ? 0
                                 : state->start_seconds + dt;
      if (state->start_seconds >= params->reset_seconds)
        {
          state->board = RW_PRACTICE_BOARD_RUNNING;
          state->below_seconds = 0;
        }
      return FALSE;

    case RW_PRACTICE_BOARD_DEAD:
    default:
      if (volts >= params->start_above_volts && !params->own_dead)
        {
          state->board = RW_PRACTICE_BOARD_RESET;
          state->start_seconds = 0;
        }
      return FALSE;
    }
}

gboolean
rw_practice_model_step (RwPracticeModel *self)
{
  self->state.steps++;
  step_latch (self);
  step_level (self);
  step_slow (self);
  step_load (self);
  step_jerk (self);
  rw_practice_circuit_solve (self);
  step_edge (self);

  const gboolean reset = step_board (self);

  self->state.knocked = FALSE;
  return reset;
}

gboolean
rw_practice_model_has_spot (const RwPracticeModel *self,
                            const char            *rail,
                            RwPlace                place,
                            RwKind                 kind)
{
  if (rail == NULL || (kind != RW_KIND_DC && kind != RW_KIND_RIPPLE))
    return FALSE;
  if (g_str_equal (rail, RW_RAIL_GROUND))
    return place == RW_PLACE_WIRE;
  if (g_str_equal (rail, RW_PRACTICE_RAIL_RAW))
    return place == RW_PLACE_TERMINALS && self->params.supply == RW_PRACTICE_LINEAR;
  return rw_practice_params_index_of (&self->params, rail) >= 0
         && (place == RW_PLACE_TERMINALS || place == RW_PLACE_BOARD || place == RW_PLACE_CHIP
             || place == RW_PLACE_WIRE);
}

static double
dc_volts (const RwPracticeState *state,
          int                    i,
          RwPlace                place)
{
  if (i < 0)
    return state->ground_volts;

  const RwPracticeFlow *flow = &state->flow[i];

  switch (place)
    {
    case RW_PLACE_TERMINALS:
      return flow->terminal_volts;

    case RW_PLACE_BOARD:
      return flow->finger_volts - state->ground_volts;

    case RW_PLACE_CHIP:
      return flow->chip_volts;

    case RW_PLACE_WIRE:
      return flow->terminal_volts - flow->finger_volts;

    case RW_N_PLACES:
    default:
      return NAN;
    }
}

double
rw_practice_model_get_volts (const RwPracticeModel *self,
                             const char            *rail,
                             RwPlace                place,
                             RwKind                 kind)
{
  if (!rw_practice_model_has_spot (self, rail, place, kind))
    return NAN;
  if (g_str_equal (rail, RW_PRACTICE_RAIL_RAW))
    return kind == RW_KIND_DC ? self->state.raw_volts
                              : self->state.level
                                    * rw_practice_sawtooth_reading (self->state.raw_ripple,
                                                                    self->state.raw_ripple);
  if (place != RW_PLACE_TERMINALS && !self->state.fitted)
    return NAN;

  const int i = rw_practice_params_index_of (&self->params, rail);

  return kind == RW_KIND_DC ? dc_volts (&self->state, i, place)
                            : rw_practice_circuit_ripple (self, i, place);
}
