/* rw-practice-try.c: what would happen if: experiments on a copy of the cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-try.h"

#include <math.h>

#include "rw-practice-circuit.h"

static const double loud_amps = 0.5; /* what a loud passage adds */
static const double usual_regulator_volts = 3.8; /* 8.8 V raw, 5 V out */
static const double usual_limit_share = 2.0 / 3; /* of what a supply can give */
static const double usual_loud_fall = 0.5;
static const double trim_try_share = 0.01;

/* A copy under power, running, nothing wandering. */
static RwPracticeModel
settled_copy (const RwPracticeModel *model)
{
  RwPracticeModel copy = *model;

  copy.state.power = TRUE;
  copy.state.fitted = TRUE;
  copy.state.level = (copy.state.tripped && copy.params.supply == RW_PRACTICE_SWITCHER)
                             || copy.params.mains_share <= 0
                         ? 0
                         : 1;
  copy.state.board = RW_PRACTICE_BOARD_RUNNING;
  copy.state.step_amps = 0;
  copy.state.wander_contact = 0;
  copy.state.wander_load = 0;
  copy.state.wander_reference = 0;
  copy.state.jerk_ohms = copy.state.jerk_volts = 0;
  return copy;
}

static RwPracticeTry
result_of (RwPracticeModel *copy)
{
  const RwPracticeFlow *flow = &copy->state.flow[copy->params.reference];
  RwPracticeTry result;

  rw_practice_circuit_solve (copy);
  result.terminal_volts = fabs (flow->terminal_volts);
  result.board_volts = copy->state.fitted ? fabs (flow->finger_volts - copy->state.ground_volts)
                                          : (double)NAN;
  result.board_ripple = copy->state.fitted
                            ? rw_practice_circuit_ripple (copy, (int) copy->params.reference,
                                                          RW_PLACE_BOARD)
                            : 0;
  result.ticks = rw_practice_circuit_ticks (copy);
  return result;
}

RwPracticeTry
rw_practice_try_warmth (const RwPracticeModel *model,
                        double                 warm)
{
  RwPracticeModel copy = settled_copy (model);

  copy.state.warm = warm;
  return result_of (&copy);
}

double
rw_practice_try_chip (const RwPracticeModel *model,
                      double                 warm,
                      double                 mains)
{
  RwPracticeModel copy = settled_copy (model);

  copy.state.warm = warm;
  copy.params.mains_share *= mains;
  rw_practice_circuit_solve (&copy);
  return fabs (copy.state.flow[copy.params.reference].chip_volts);
}

RwPracticeTry
rw_practice_try_dummy (const RwPracticeModel *model,
                       double                 amps)
{
  RwPracticeModel copy = settled_copy (model);
  RwPracticeRail *reference = &copy.params.rail[copy.params.reference];

  /* A load on the screws themselves is the same as one more bleed resistor. */
  reference->bleed_amps += amps;
  copy.state.fitted = FALSE;
  return result_of (&copy);
}

RwPracticeTry
rw_practice_try_split (const RwPracticeModel *model,
                       double                 share)
{
  RwPracticeModel copy = settled_copy (model);

  copy.state.warm = model->state.warm;
  copy.params.rail[copy.params.reference].load_amps *= 1 - share;
  if (share > 0 && copy.params.audio >= 0)
    copy.params.rail[copy.params.audio].load_amps = 0;
  return result_of (&copy);
}

double
rw_practice_try_heat (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeFlow *flow = &model->state.flow[params->reference];
  double watts = 0;

  if (params->supply == RW_PRACTICE_LINEAR)
    return (model->state.raw_volts - fabs (flow->terminal_volts)) * flow->amps
           / (usual_regulator_volts * params->full_amps);
  if (model->state.ticking)
    return 0;
  for (guint i = 0; i < params->n_rails; i++)
    {
      const double volts = fabs (model->state.flow[i].terminal_volts);

      watts += volts * (model->state.flow[i].amps
                        + params->rail[i].bleed_amps * volts / params->rail[i].nominal);
    }
  return params->limit_watts > 0 ? watts / (usual_limit_share * params->limit_watts) : 0;
}

double
rw_practice_try_trim (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const double travel = 1.2 * params->rail[params->reference].nominal
                        / 5; /* what the dial promises */
  RwPracticeModel copy = settled_copy (model);

  /* Away from the stop. */
  const double turn = copy.state.trim > 0.5 ? -trim_try_share : trim_try_share;
  const double before = result_of (&copy).terminal_volts;

  copy.state.trim += turn;
  return (result_of (&copy).terminal_volts - before) / (turn * travel);
}

/* Regulated: half a volt. A raw rail has its winding and bridge behind it, and its capacitor's
 * saw-tooth: a twentieth of its volts more. */
double
rw_practice_try_loud_usual (const RwPracticeModel *model)
{
  const int audio = model->params.audio;

  if (audio < 0 || model->params.rail[audio].feed != RW_PRACTICE_UNREGULATED)
    return usual_loud_fall;
  return usual_loud_fall + 0.05 * model->params.rail[audio].nominal;
}

double
rw_practice_try_loud (const RwPracticeModel *model)
{
  const int audio = model->params.audio;
  RwPracticeModel copy = settled_copy (model);

  if (audio < 0)
    return 0;
  rw_practice_circuit_solve (&copy);

  RwPracticeRail *rail = &copy.params.rail[audio];
  const RwPracticeFlow *flow = &copy.state.flow[audio];
  const double before = flow->finger_volts - copy.state.ground_volts;

  rail->load_amps += loud_amps;
  rw_practice_circuit_solve (&copy);
  /* Peaks come out of the board's filter capacitor as far as there is any left. */
  return before - (flow->finger_volts - copy.state.ground_volts)
         + loud_amps * rail->filter_ohms;
}
