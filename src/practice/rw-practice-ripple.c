/* rw-practice-ripple.c: the AC that rides on a cabinet's rails, as an averaging meter shows it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts that know nothing of each other add as squares. At the supply: the saw-tooth of a raw
 * capacitor, what a regulator lets through (all of it where it drops out), or what is left of
 * the switching frequency after the meter's own narrow band. On the way to the board: the
 * board's AC currents times the ohms they pass.
 */
#include "config.h"

#include <math.h>

#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"

static const double
    logic_ac_share = 0.08; /* of the reference current that is AC at the board */

static double
squares (double a,
         double b)
{
  return sqrt (a * a + b * b);
}

/* AC current that the board draws through a rail. */
static double
ac_amps (const RwPracticeModel *model,
         guint                  i)
{
  const RwPracticeRail *rail = &model->params.rail[i];
  const RwPracticeFlow *flow = &model->state.flow[i];

  if (!model->state.fitted || rail->path.open || flow->amps <= 0)
    return 0;
  return i == model->params.reference ? logic_ac_share * flow->amps : rail->pulse_amps;
}

static double
ground_ripple (const RwPracticeModel *model)
{
  double amps = 0;

  for (guint i = 0; i < model->params.n_rails; i++)
    amps = squares (amps, ac_amps (model, i));
  return amps * rw_practice_path_ohms (&model->params.ground, &model->state);
}

/* What comes through at twice the mains frequency and in the time of the sound: no switching
 * frequency. */
static double
low_ripple (const RwPracticeModel *model,
            guint                  i)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeState *state = &model->state;
  const RwPracticeRail *rail = &params->rail[i];
  const RwPracticeFlow *flow = &state->flow[i];
  double peak, pp, loss;

  if (rail->feed == RW_PRACTICE_UNREGULATED)
    {
      rw_practice_raw (&rail->raw, params, flow->amps, &peak, &pp);
      return rail->alive * state->level * rw_practice_sawtooth_reading (pp, pp);
    }
  if (params->supply == RW_PRACTICE_LINEAR && i == params->reference)
    {
      rw_practice_raw (&rail->raw, params, flow->amps, &peak, &pp);

      const double needed = rw_practice_circuit_regulated (model, flow->amps) * state->fold
                            + params->dropout_volts;
      const double depth = rw_practice_dropout (peak, pp, needed, &loss);

      return rail->alive * state->level
             * squares (params->ripple_rejection * rw_practice_sawtooth_reading (pp, pp),
                        rw_practice_sawtooth_reading (pp, depth));
    }

  /* The loop takes care of the copper inside it, not of a follower's. */
  return state->level * ac_amps (model, i)
         * (rail->feed == RW_PRACTICE_FOLLOWER ? rail->ohms : rail->load_ohms);
}

static double
switch_ripple (const RwPracticeModel *model,
               guint                  i)
{
  const double share = model->state.flow[model->params.reference].amps
                       / MAX (1e-3, model->params.full_amps);

  return model->params.rail[i].switch_ripple_volts * model->params.rail[i].alive
         * model->state.level * (0.3 + 0.7 * MIN (1.5, share));
}

/* What the way to the board adds, and the board's own filter leaves. */
static double
board_ripple (const RwPracticeModel *model,
              guint                  i,
              double                 at_terminals)
{
  const RwPracticeRail *rail = &model->params.rail[i];
  const double amps = ac_amps (model, i);

  if (rail->path.open)
    return ground_ripple (model);
  return squares (squares (at_terminals, amps * model->state.flow[i].path_ohms),
                  squares (amps * rail->filter_ohms, ground_ripple (model)));
}

double
rw_practice_circuit_hum (const RwPracticeModel *model,
                         guint                  rail)
{
  return board_ripple (model, rail, low_ripple (model, rail));
}

double
rw_practice_circuit_ripple (const RwPracticeModel *model,
                            int                    rail,
                            RwPlace                place)
{
  if (rail < 0)
    return ground_ripple (model);

  const guint i = (guint)rail;
  const double amps = ac_amps (model, i);

  if (place == RW_PLACE_WIRE)
    return amps * model->state.flow[i].path_ohms;

  const double at_terminals = squares (low_ripple (model, i), switch_ripple (model, i));

  if (place == RW_PLACE_TERMINALS)
    return at_terminals;

  const double at_board = board_ripple (model, i, at_terminals);

  return place == RW_PLACE_CHIP
             ? squares (at_board, amps * model->params.rail[i].path.trace_ohms)
             : at_board;
}
