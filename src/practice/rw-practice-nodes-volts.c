/* rw-practice-nodes-volts.c: the volts of every point of a practice cabinet, DC and AC.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Along a conductor the current is the same everywhere, so a point between screw and finger stands where the ohms up to
 * it put it. The far chip's ground is the board's ground: the circuit counts the trace there and back as the rail's.
 *
 * A sense screw follows the board's finger; without a sense wire it is linked to the terminals. With the wire broken the
 * regulator holds that screw where it wants the board, and the terminals stand above it by the catch resistor's share.
 *
 * Bare metal is joined to 0 V by leaks only: it stands a tenth of a volt or more off, wanders, and carries some of the
 * mains. How much is the cabinet's own. Without its earth it floats at half of the mains, as far as a meter's 10 MΩ
 * can tell.
 *
 * AC: the winding and the metal move with the mains and add as numbers; all else knows nothing of each other and adds as
 * squares. A transformer's winding swings about the middle of the raw capacitor, each end by half of its volts.
 */
#include "config.h"

#include "rw-practice-nodes-private.h"

#include <math.h>

#include "rw-practice-circuit.h"

static const double winding_share = 1.8; /* rms amperes of a winding that charges a capacitor, over its DC */
static const double blown_ohms = 1e6;   /* of a fuse, or of an earth */
static const double speaker_ohms = 8;
static const double lamp_hot_ohms = 80;
static const double most_amp_share = 0.3; /* of its rail, across the loudspeaker of a dead amplifier */
static const double metal_least_volts = 0.10, metal_most_volts = 0.60;
static const double metal_least_ac = 0.03, metal_most_ac = 0.20;
static const double loose_least_ac = 55, loose_most_ac = 110; /* its earth gone: half of the mains by its filter */
static const double metal_drift_share = 0.15, metal_drift_seconds = 41;
static const double metal_tremble_volts = 0.004;

static gboolean
is_along (const RwPracticeTouch *touch)
{
  return touch->point <= RW_PRACTICE_POINT_CHIP;
}

static gboolean
is_on_board (const RwPracticeTouch *touch)
{
  return touch->point == RW_PRACTICE_POINT_EDGE || touch->point == RW_PRACTICE_POINT_CHIP;
}

/* Share of a conductor's ohms up to a point. */
static double
share_of_way (const RwPracticeModel *model,
              const RwPracticeTouch *touch)
{
  const double all = rw_practice_nodes_path_ohms (model, touch->rail);

  return all > 0 ? rw_practice_nodes_way_ohms (model, touch) / all : is_on_board (touch);
}

static double
ground_volts (const RwPracticeModel *model,
              const RwPracticeTouch *touch)
{
  if (!model->state.fitted)
    return 0;
  if (is_on_board (touch))
    return model->state.ground_volts;
  return model->state.ground_volts * share_of_way (model, touch);
}

static double
rail_volts (const RwPracticeModel *model,
            const RwPracticeTouch *touch)
{
  const RwPracticeRail *rail = &model->params.rail[touch->rail];
  const RwPracticeFlow *flow = &model->state.flow[touch->rail];
  const double way = rw_practice_nodes_way_ohms (model, touch);
  const double left = rw_practice_nodes_path_ohms (model, touch->rail) - way;

  if (!model->state.fitted)
    return is_on_board (touch) || (rail->path.open && touch->point == RW_PRACTICE_POINT_HARNESS_BOARD)
               ? 0
               : flow->terminal_volts;
  if (touch->point == RW_PRACTICE_POINT_CHIP)
    return flow->chip_volts + model->state.ground_volts;
  if (touch->point == RW_PRACTICE_POINT_EDGE
      || (touch->point == RW_PRACTICE_POINT_HARNESS_BOARD && rail->path.open))
    return flow->finger_volts;
  /* From its own end, since what a jerk adds lies between the two crimps. */
  if (touch->point == RW_PRACTICE_POINT_HARNESS_BOARD)
    return flow->finger_volts + rail->sign * flow->amps * left;
  return flow->terminal_volts - rail->sign * flow->amps * way;
}

static double
sense_volts (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeFlow *flow = &model->state.flow[params->reference];

  if (params->sense == RW_PRACTICE_SENSE_OPEN)
    return flow->terminal_volts
           / (1 + params->sense_catch_share * MAX (0, 1 + 0.1 * model->state.wander_contact));
  return params->sense == RW_PRACTICE_SENSE_BOARD && model->state.fitted
                 && !params->rail[params->reference].path.open
             ? flow->finger_volts
             : flow->terminal_volts;
}

/* Between −1 and 1, and back, in a period. */
static double
triangle (double periods)
{
  const double p = periods - floor (periods);

  return p < 0.5 ? 4 * p - 1 : 3 - 4 * p;
}

/* DC and AC volts of bare metal. The cabinet's own generator is left alone. */
static void
metal_volts (const RwPracticeCabinet *self,
             double                  *dc,
             double                  *ac)
{
  const RwPracticeState *state = &self->model.state;
  const double seconds = (double) state->steps * RW_PRACTICE_STEP;
  RwPracticeRandom random;

  rw_practice_random_seed (&random, self->seed ^ G_GUINT64_CONSTANT (0x6d6574616c));

  const double size = rw_practice_random_between (&random, metal_least_volts, metal_most_volts);
  const double sign = rw_practice_random_uniform (&random) < 0.5 ? -1 : 1;
  const double hum = rw_practice_random_between (&random, metal_least_ac, metal_most_ac);
  const double phase = rw_practice_random_uniform (&random);
  const double loose = rw_practice_random_between (&random, loose_least_ac, loose_most_ac);
  const double drift = metal_drift_share * triangle (seconds / metal_drift_seconds + phase);

  *dc = state->level * (sign * size * (1 + drift) + metal_tremble_volts * state->wander_contact);
  *ac = self->model.params.earth_ohms > blown_ohms ? (state->power ? loose : 0) : state->level * hum;
}

/* The two ends of a lamp in series with its wires. */
static double
lamp_volts (const RwPracticeModel *model,
            gboolean               plus)
{
  const guint i = rw_practice_params_lamp_rail (&model->params);
  const double lamp = 1 / (1 / lamp_hot_ohms + model->params.lamp_amps / model->params.rail[i].nominal);
  const double share = RW_PRACTICE_LAMP_WIRE_OHMS / (lamp + 2 * RW_PRACTICE_LAMP_WIRE_OHMS);
  const double volts = model->params.lamp_fuse_open ? 0 : model->state.flow[i].terminal_volts;

  return volts * (plus ? 1 - share : share);
}

/* An amplifier that is going puts part of its rail across the loudspeaker. */
static double
sound_volts (const RwPracticeModel *model,
             gboolean               plus)
{
  if (!model->state.fitted)
    return 0;
  return model->state.ground_volts
         + (plus ? most_amp_share * model->params.amp_loss * model->state.flow[model->params.audio].chip_volts : 0);
}

static gboolean
is_winding (RwPracticePoint point)
{
  return point == RW_PRACTICE_POINT_AC1 || point == RW_PRACTICE_POINT_AC2 || point == RW_PRACTICE_POINT_FUSE1
         || point == RW_PRACTICE_POINT_FUSE2;
}

static gboolean
is_metal (RwPracticePoint point)
{
  return point == RW_PRACTICE_POINT_CHASSIS || point == RW_PRACTICE_POINT_EARTH;
}

/* Their ground is the board's. */
static gboolean
is_beyond_board (RwPracticePoint point)
{
  return point == RW_PRACTICE_POINT_MONITOR || point == RW_PRACTICE_POINT_SOUND_GROUND
         || point == RW_PRACTICE_POINT_SPEAKER_PLUS || point == RW_PRACTICE_POINT_SPEAKER_MINUS;
}

static double
part_volts (const RwPracticeCabinet *self,
            RwPracticePoint          point)
{
  const RwPracticeModel *model = &self->model;
  double dc, ac;

  if (point == RW_PRACTICE_POINT_SENSE)
    return sense_volts (model);
  if (point == RW_PRACTICE_POINT_RAW_PLUS)
    return model->state.raw_volts;
  if (is_winding (point))
    return model->state.raw_volts / 2;
  if (point == RW_PRACTICE_POINT_LAMP_PLUS || point == RW_PRACTICE_POINT_LAMP_MINUS)
    return lamp_volts (model, point == RW_PRACTICE_POINT_LAMP_PLUS);
  if (is_beyond_board (point))
    return sound_volts (model, point == RW_PRACTICE_POINT_SPEAKER_PLUS);
  if (!is_metal (point))
    return 0;
  metal_volts (self, &dc, &ac);
  return dc;
}

double
rw_practice_nodes_volts (const RwPracticeCabinet *self,
                         const RwPracticeTouch   *touch)
{
  if (!is_along (touch))
    return part_volts (self, touch->point);
  return touch->rail == RW_PRACTICE_GROUND ? ground_volts (&self->model, touch)
                                           : rail_volts (&self->model, touch);
}

/* --- AC ------------------------------------------------------------------------------------------ */

/* What moves with the mains. */
static double
mains_ac (const RwPracticeCabinet *self,
          const RwPracticeTouch   *touch)
{
  const RwPracticeParams *params = &self->model.params;
  const RwPracticeFlow *flow = &self->model.state.flow[params->reference];
  const double half = self->model.state.power
                          ? params->rail[params->reference].raw.winding_volts * params->mains_share / 2
                          : 0;
  double dc, ac;

  if (touch->point == RW_PRACTICE_POINT_AC2)
    return -half;
  if (touch->point == RW_PRACTICE_POINT_FUSE2)
    /* A blown one leaves its far end with the other end of the winding. */
    return params->fuse_ohms > blown_ohms
               ? -half
               : half - MIN (half, params->fuse_ohms * winding_share * flow->amps);
  if (is_winding (touch->point))
    return half;
  if (!is_metal (touch->point))
    return 0;
  metal_volts (self, &dc, &ac);
  return ac;
}

/* What moves by itself, against the ground beside it. */
static double
own_ac (const RwPracticeCabinet *self,
        const RwPracticeTouch   *touch)
{
  const RwPracticeModel *model = &self->model;
  const gboolean runs = model->state.board == RW_PRACTICE_BOARD_RUNNING && model->params.audio >= 0;
  const int lamp = (int) rw_practice_params_lamp_rail (&model->params);

  if (touch->point == RW_PRACTICE_POINT_RAW_PLUS)
    return rw_practice_model_get_volts (model, RW_PRACTICE_RAIL_RAW, RW_PLACE_TERMINALS, RW_KIND_RIPPLE);
  if (touch->point == RW_PRACTICE_POINT_SENSE)
    return rw_practice_circuit_ripple (model, (int) model->params.reference, RW_PLACE_TERMINALS);
  if (touch->point == RW_PRACTICE_POINT_SOUND_GROUND)
    return self->model.state.level * model->params.loop_volts;
  if (touch->point == RW_PRACTICE_POINT_LAMP_PLUS && !model->params.lamp_fuse_open)
    return rw_practice_circuit_ripple (model, lamp, RW_PLACE_TERMINALS);
  if (touch->point == RW_PRACTICE_POINT_SPEAKER_PLUS && runs)
    return model->params.rail[model->params.audio].pulse_amps * speaker_ohms * (1 - model->params.speaker_loss)
           + model->params.own_hum_volts;
  if (!is_along (touch) || touch->rail < 0 || (is_on_board (touch) && !model->state.fitted))
    return 0;
  if (touch->point == RW_PRACTICE_POINT_CHIP)
    return rw_practice_circuit_ripple (model, touch->rail, RW_PLACE_CHIP);
  return rw_practice_circuit_ripple (model, touch->rail,
                                     is_on_board (touch) ? RW_PLACE_BOARD : RW_PLACE_TERMINALS);
}

/* How much of the ground return a point has under it: 0 at the supply, 1 at the board. */
static double
ground_share (const RwPracticeCabinet *self,
              const RwPracticeTouch   *touch)
{
  if (is_along (touch) && touch->rail == RW_PRACTICE_GROUND)
    return share_of_way (&self->model, touch);
  return is_on_board (touch) || is_beyond_board (touch->point);
}

/* Along one conductor only its own drop is seen. */
static double
wire_ac (const RwPracticeCabinet *self,
         const RwPracticeTouch   *a,
         const RwPracticeTouch   *b)
{
  const RwPracticeModel *model = &self->model;
  const double wire = rw_practice_circuit_ripple (model, a->rail, RW_PLACE_WIRE)
                      * fabs (share_of_way (model, a) - share_of_way (model, b));

  if (a->rail < 0 || (a->point == RW_PRACTICE_POINT_CHIP) == (b->point == RW_PRACTICE_POINT_CHIP))
    return wire;

  const double chip = rw_practice_circuit_ripple (model, a->rail, RW_PLACE_CHIP);
  const double edge = rw_practice_circuit_ripple (model, a->rail, RW_PLACE_BOARD);

  return wire + sqrt (MAX (0, chip * chip - edge * edge));
}

double
rw_practice_nodes_ac (const RwPracticeCabinet *self,
                      const RwPracticeTouch   *a,
                      const RwPracticeTouch   *b)
{
  const RwPracticeModel *model = &self->model;

  if (a == b)
    return 0;
  if (is_along (a) && is_along (b) && a->rail == b->rail)
    return model->state.fitted ? wire_ac (self, a, b) : 0;

  const double mains = mains_ac (self, a) - mains_ac (self, b);
  const double own_a = own_ac (self, a), own_b = own_ac (self, b);
  const double between = model->state.fitted
                             ? rw_practice_circuit_ripple (model, -1, RW_PLACE_WIRE)
                                   * (ground_share (self, a) - ground_share (self, b))
                             : 0;

  return sqrt (mains * mains + own_a * own_a + own_b * own_b + between * between);
}
