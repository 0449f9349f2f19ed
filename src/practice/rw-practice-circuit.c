/* rw-practice-circuit.c: the circuit of a cabinet at one instant.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Switcher: one loop holds the reference rail V1; the other windings share its volts per turn:
 *
 *     Vk = (Nk/N1)·(V1 + VF1 + I1·r1) − VFk − Ik·rk
 *
 * so that a rail is a straight line in V1, loads move it up or down, and more current on the
 * reference makes the loop work harder and lifts the rest (cross-regulation). Below its minimum
 * load the loop loses the followers; an unloaded winding rises towards its peaks; past its
 * power all sinks together.
 *
 * Linear: the raw capacitor swings between its peak and peak − I/(f·C). Where the trough falls
 * below output + drop-out, the regulator lets the rest of the saw-tooth through.
 *
 * Wiring: board volts = terminal − I·R(path) − I(ground)·R(ground), so that
 * terminal − board = drop along the wire + drop along ground, always and exactly.
 *
 * The currents depend on the volts and the other way round; the loop below repeats until
 * nothing moves by more than `still` (all gains are far below 1: ohms of wiring against ohms of
 * load). It starts from the last solution, so a step costs few rounds. No libm
 * function but sqrt is called: the digits are the same on every machine.
 */
#include "config.h"

#include "rw-practice-circuit.h"

#include <math.h>

#include "rw-practice-parts.h"

static const double still = 1e-11; /* volts and amperes */
static const guint most_rounds = 200;

static const double idle_share = 0.95; /* of the running load, in reset */
static const double least_fold = 0.02;
static const double light_amps = 1.5;
static const double short_share = 2.2; /* of the power there is: a switcher stops and tries again */
static const double
    regulator_headroom = 0.85; /* fold at which three-terminal regulators drop out */

/* What the board would take at nominal volts. */
static double
asked_watts (const RwPracticeParams *params)
{
  double watts = 0;

  for (guint i = 0; i < params->n_rails; i++)
    if (!params->rail[i].path.open)
      watts += params->rail[i].nominal * params->rail[i].load_amps;
  return watts;
}

gboolean
rw_practice_circuit_ticks (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeRail *reference = &params->rail[params->reference];

  if (params->supply != RW_PRACTICE_SWITCHER || reference->alive <= 0)
    return FALSE;

  const gboolean loaded = model->state.fitted && !reference->path.open;
  const double amps = reference->bleed_amps + (loaded ? reference->load_amps : 0);

  return params->start_weak || amps < params->tick_share * reference->minimum_amps
         || (loaded && asked_watts (params) > short_share * params->limit_watts
             && params->limit_watts > 0);
}

/* What the board would draw at nominal volts now. */
static double
wanted_amps (const RwPracticeModel *model,
             guint                  i)
{
  const RwPracticeRail *rail = &model->params.rail[i];
  const RwPracticeState *state = &model->state;

  if (!state->fitted || rail->path.open)
    return 0;
  if (state->board != RW_PRACTICE_BOARD_RUNNING)
    return rail->load_amps * idle_share;
  return rail->load_amps
         * (1 + state->wander_load + (i == model->params.reference ? state->step_amps : 0));
}

static double
bleed_now (const RwPracticeRail *rail,
           double                terminal)
{
  return rail->bleed_amps * MAX (0, terminal) / rail->nominal;
}

double
rw_practice_circuit_regulated (const RwPracticeModel *model,
                               double                 amps)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeState *state = &model->state;
  const double set = (params->trim_lo_volts
                      + state->trim * (params->trim_hi_volts - params->trim_lo_volts))
                         * (1 + params->warm_reference * state->warm)
                     + state->wander_reference + state->jerk_volts;

  if (params->sense == RW_PRACTICE_SENSE_BOARD)
    return set + state->ground_volts
           + amps * rw_practice_path_ohms (&params->rail[params->reference].path, state);
  if (params->sense == RW_PRACTICE_SENSE_OPEN)
    return set * (1 + params->sense_catch_share * MAX (0, 1 + 0.1 * state->wander_contact));
  return set;
}

/* The reference rail's source: its terminals without the falls that load_ohms and dynamic_ohms
 * make. */
static double
reference_source (RwPracticeModel *model,
                  double           amps)
{
  const RwPracticeParams *params = &model->params;
  RwPracticeState *state = &model->state;
  const RwPracticeRail *rail = &params->rail[params->reference];
  double wanted = state->tripped ? 0
                                 : rw_practice_circuit_regulated (model, amps) * state->level
                                       * state->fold * rail->alive;

  if (params->supply == RW_PRACTICE_LINEAR)
    {
      double peak, pp, loss;

      rw_practice_raw (&rail->raw, params, amps, &peak, &pp);
      rw_practice_dropout (peak * state->level, pp,
                           wanted + params->dropout_volts * state->level, &loss);
      state->raw_volts = MAX (0, peak * state->level - pp / 2);
      state->raw_ripple = pp;
      wanted -= loss;
    }
  return MAX (0, wanted);
}

/* Open-circuit volts of a winding that follows; the formula at the head without I·rk. */
static double
follower_volts (const RwPracticeModel *model,
                guint                  i,
                double                 v1,
                double                 i1)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeRail *rail = &params->rail[i], *first = &params->rail[params->reference];
  const double level = model->state.level;
  const double own = model->state.flow[i].amps + rail->bleed_amps;
  const double unloaded = rail->minimum_amps > 0 ? MAX (0, 1 - own / rail->minimum_amps) : 0;
  const double ringing = params->full_amps > 0 ? MIN (1, i1 / params->full_amps) : 0;
  const double winding = rail->turns * (v1 + level * (first->diode_volts + i1 * first->ohms))
                         * (1 - rw_practice_sink (params, i1))
                         * (1 + rail->peak_share * unloaded * ringing);

  return MAX (0, rail->alive * (winding - level * rail->diode_volts));
}

/* A raw rail is linear in its current, so the mean of the saw-tooth is a source with ohms. */
static double
unregulated_volts (const RwPracticeModel *model,
                   const RwPracticeRail  *rail,
                   double                *ohms)
{
  const double pulses = model->params.mains_hertz * (rail->raw.half_wave ? 1 : 2);
  double peak, pp;

  rw_practice_raw (&rail->raw, &model->params, 0, &peak, &pp);
  *ohms = rail->raw.winding_ohms * (rail->raw.half_wave ? 2 : 1)
          + 0.5 / (pulses * rail->raw.farads);
  return peak * rail->alive * model->state.level;
}

/* Open-circuit volts and source ohms of any rail but the reference. */
static double
other_source (const RwPracticeModel *model,
              guint                  i,
              double                 v1,
              double                 i1,
              double                *ohms)
{
  const RwPracticeRail *rail = &model->params.rail[i];

  switch (rail->feed)
    {
    case RW_PRACTICE_REGULATED:
      *ohms = rail->load_ohms;
      return rail->fixed_volts * rail->alive * model->state.level
             * MIN (1, model->state.fold / regulator_headroom);

    case RW_PRACTICE_UNREGULATED:
      return unregulated_volts (model, rail, ohms);

    case RW_PRACTICE_REFERENCE:
    case RW_PRACTICE_FOLLOWER:
    default:
      *ohms = rail->alive * rail->ohms;
      return follower_volts (model, i, v1, i1);
    }
}

/* By how much the reference rises without load: gone from light_amps on. */
static double
light_rise (const RwPracticeModel *model,
            double                 amps)
{
  const double missing = MAX (0, 1 - amps / light_amps);

  return model->params.light_rise * missing * missing * model->state.level;
}

/* What stands behind a rail's terminals, and through which ohms. */
static double
rail_source (RwPracticeModel *model,
             guint            i,
             double          *ohms)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeState *state = &model->state;
  const RwPracticeRail *rail = &params->rail[i], *first = &params->rail[params->reference];
  const RwPracticeFlow *flow1 = &state->flow[params->reference];
  const double v1 = flow1->terminal_volts * first->sign;
  const double i1 = flow1->amps + bleed_now (first, v1);

  if (i != params->reference)
    return other_source (model, i, v1, i1, ohms);

  const double cold = 1 + params->cold_share * (1 - state->warm);

  *ohms = rail->load_ohms * cold;
  return reference_source (model, flow1->amps)
         - rail->dynamic_ohms * cold * rail->load_amps * state->step_amps * state->level
         + light_rise (model, i1);
}

/* Board and bleed currents of one rail, and its terminals. Returns how far anything moved. */
static double
settle_rail (RwPracticeModel *model,
             guint            i)
{
  RwPracticeState *state = &model->state;
  const RwPracticeRail *rail = &model->params.rail[i];
  RwPracticeFlow *flow = &state->flow[i];
  const double was_amps = flow->amps, was_volts = flow->terminal_volts * rail->sign;
  double ohms;

  flow->path_ohms = rw_practice_path_ohms (&rail->path, state)
                    + (i == model->params.reference ? state->shake_ohms : 0);

  /* Ground lifts the board towards a positive rail and away from a negative one. */
  const double source = rail_source (model, i, &ohms);
  const double open = source - ohms * bleed_now (rail, was_volts);

  flow->amps = rw_practice_load (open - rail->sign * state->ground_volts,
                                 ohms + flow->path_ohms + rail->path.trace_ohms,
                                 wanted_amps (model, i), rail->nominal, rail->load_follow);

  /* A raw capacitor deep in drop-out answers the current so strongly that whole steps would
   * hunt. */
  if (rail->feed == RW_PRACTICE_REFERENCE && model->params.supply == RW_PRACTICE_LINEAR)
    flow->amps = (flow->amps + was_amps) / 2;

  const double terminal = MAX (0, open - ohms * flow->amps);

  flow->terminal_volts = rail->sign * terminal;
  return MAX (fabs (flow->amps - was_amps), fabs (terminal - was_volts));
}

/* Watts asked for against watts there are; the square root keeps loads of either kind from
 * hunting. */
static void
settle_fold (RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  RwPracticeState *state = &model->state;
  const double mains = params->supply == RW_PRACTICE_SWITCHER && params->mains_needed > 0
                           ? MIN (1, params->mains_share / params->mains_needed)
                           : 1;
  double watts = 0;

  for (guint i = 0; i < params->n_rails; i++)
    if (params->supply == RW_PRACTICE_SWITCHER || i == params->reference)
      {
        const double volts = fabs (state->flow[i].terminal_volts);

        watts += volts * (state->flow[i].amps + bleed_now (&params->rail[i], volts));
      }

  const double limit = params->limit_watts * (1 - params->limit_warm * state->warm);

  if (limit > 0 && watts > 0)
    state->fold *= sqrt (limit / watts);
  state->fold = CLAMP (state->fold, least_fold, MAX (least_fold, mains));
}

static double
settle_ground (RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  RwPracticeState *state = &model->state;
  const double was = state->ground_volts;
  double amps = 0;

  for (guint i = 0; i < params->n_rails; i++)
    amps += params->rail[i].sign * state->flow[i].amps;
  state->ground_volts = amps * rw_practice_path_ohms (&params->ground, state);
  return fabs (state->ground_volts - was);
}

static void
fill_board_end (RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  RwPracticeState *state = &model->state;

  for (guint i = 0; i < params->n_rails; i++)
    {
      const RwPracticeRail *rail = &params->rail[i];
      RwPracticeFlow *flow = &state->flow[i];

      if (rail->path.open)
        flow->finger_volts = state->ground_volts + rail->ghost_volts * state->level;
      else
        flow->finger_volts = flow->terminal_volts - rail->sign * flow->amps * flow->path_ohms;
      flow->chip_volts = flow->finger_volts - state->ground_volts
                         - rail->sign * flow->amps * rail->path.trace_ohms;
    }
}

/* One round over everything. Returns how far anything moved. */
static double
settle_all (RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const double fold = model->state.fold;
  double moved = settle_rail (model, params->reference);

  for (guint i = 0; i < params->n_rails; i++)
    if (i != params->reference)
      moved = fmax (moved, settle_rail (model, i));
  moved = fmax (moved, settle_ground (model));
  settle_fold (model);
  return fmax (moved, fabs (model->state.fold - fold));
}

void
rw_practice_circuit_solve (RwPracticeModel *model)
{
  double moved = INFINITY;

  for (guint round = 0; round < most_rounds && moved > still; round++)
    moved = settle_all (model);
  fill_board_end (model);
}
