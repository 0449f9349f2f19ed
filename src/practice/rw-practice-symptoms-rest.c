/* rw-practice-symptoms-rest.c: what is noticed now and then, and beside the board.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Thresholds: a logic input must be below 0.8 V to be low (data sheets); the rest are trade practice
 * (estimates). What happens "when it is cold" or "in the evening" is tried on a copy of the cabinet.
 */
#include "config.h"

#include <math.h>

#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"
#include "rw-practice-symptoms-private.h"
#include "rw-practice-try.h"

static const double low_input_volts = 0.8, pull_up_ohms = 1000;
static const double flat_volts = 2.2;   /* a memory forgets below */
static const double bark_seconds = 0.7; /* from one reset to the next */
static const double loose_wander = 0.02;
static const double dim_tube = 0.75, worn_tube = 0.45 /* one gun first */, dim_mains = 0.80;
static const double evening_mains = 0.93;
static const double sound_ground_volts = 0.008; /* AC that the sound leaves on the picture's ground */
static const double op_amp_share = 0.6, op_amp_ripple_volts = 0.05;
static const double buzz_ground_volts = 0.03, buzz_ripple_volts = 0.08;
static const double hot_loss = 0.3;
static const double blown_ohms = 1e6, slack_ohms = 0.06;

/* A switch closed to ground through @ohms is no longer seen. */
static gboolean
is_unseen (double ohms)
{
  return 5 * ohms / (ohms + pull_up_ohms) > low_input_volts;
}

static gboolean
controls_erratic (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && is_unseen (model->params.panel_ground_ohms);
}

static gboolean
control_dead (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && !model->params.coin_switch
         && is_unseen (model->params.switch_ohms);
}

static gboolean
coins_wrong (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && model->params.coin_switch
         && is_unseen (model->params.switch_ohms);
}

static gboolean
scores_lost (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && model->params.battery_volts < flat_volts;
}

gboolean
rw_practice_symptoms_bark (const RwPracticeModel *model)
{
  return model->state.power && model->state.reset_gap <= bark_seconds
         && model->state.reset_age <= 2 * bark_seconds;
}

/* Something loose, and a fault that comes and goes. */
static gboolean
thump_cures (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const gboolean loose = params->rail[params->reference].path.wander >= loose_wander
                         || params->jerk_rate > 0 || params->knock_resets;

  return loose && model->state.power && model->state.resets > 0
         && model->state.reset_age <= RW_PRACTICE_WATCH;
}

/* The far part of the board starves while its edge is fed. */
static gboolean
sprites_wrong (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;
  const RwPracticeFlow *flow = &model->state.flow[params->reference];

  return rw_practice_symptoms_plays (model) && fabs (flow->chip_volts) < params->garble_below_volts
         && fabs (flow->finger_volts - model->state.ground_volts) > params->garble_below_volts;
}

static gboolean
monitor_on (const RwPracticeModel *model)
{
  return model->state.power && model->params.mains_share > 0;
}

static gboolean
palette_wrong (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && model->params.own_palette;
}

static gboolean
colour_missing (const RwPracticeModel *model)
{
  return monitor_on (model)
         && ((model->params.colour_wire && model->params.video_ground_ohms > 0.5)
             || model->params.tube_share < worn_tube);
}

static gboolean
picture_rolls (const RwPracticeModel *model)
{
  return monitor_on (model)
         && ((!model->params.colour_wire && model->params.video_ground_ohms > 2)
             || model->params.monitor_hum_share > 1.8);
}

static gboolean
picture_dim (const RwPracticeModel *model)
{
  return monitor_on (model)
         && (model->params.tube_share < dim_tube || model->params.mains_share < dim_mains);
}

static gboolean
sound_bars (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;

  if (!rw_practice_symptoms_plays (model) || params->audio < 0)
    return FALSE;
  return params->rail[params->audio].pulse_amps
                 * rw_practice_path_ohms (&params->ground, &model->state)
             > sound_ground_volts
         || rw_practice_try_loud (model) > rw_practice_try_loud_usual (model) + 0.5;
}

/* A negative rail that no memory needs feeds what stands before the volume control. */
static gboolean
hum_with_volume (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;

  if (!rw_practice_symptoms_plays (model) || params->audio < 0 || params->needs_bias
      || rw_practice_symptoms_board_share (model, (guint) params->audio) < op_amp_share)
    return FALSE;
  for (guint i = 0; i < params->n_rails; i++)
    if (params->rail[i].sign < 0
        && (rw_practice_symptoms_board_share (model, i) < op_amp_share
            || rw_practice_circuit_hum (model, i) > op_amp_ripple_volts))
      return TRUE;
  return FALSE;
}

static gboolean
picture_buzz (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && model->params.audio >= 0
         && (rw_practice_circuit_ripple (model, -1, RW_PLACE_WIRE) > buzz_ground_volts
             || (rw_practice_circuit_ripple (model, (int) model->params.reference, RW_PLACE_BOARD)
                     > buzz_ripple_volts
                 && rw_practice_circuit_hum (model, model->params.reference) < buzz_ripple_volts / 2));
}

static gboolean
amp_hot (const RwPracticeModel *model)
{
  return rw_practice_symptoms_plays (model) && model->params.audio >= 0
         && model->params.amp_loss > hot_loss;
}

static gboolean
runs_at (const RwPracticeModel *model,
         double                 warm,
         double                 mains)
{
  return rw_practice_try_chip (model, warm, mains) >= model->params.reset_below_volts;
}

static gboolean
cold_start (const RwPracticeModel *model)
{
  if (!model->state.power || model->params.own_dead)
    return FALSE;
  return model->params.slow_start || (!runs_at (model, 0, 1) && runs_at (model, 1, 1));
}

static gboolean
warm_freeze (const RwPracticeModel *model)
{
  if (!model->state.power || model->params.own_dead)
    return FALSE;
  return model->params.own_reset_warm > 0.005
         || (runs_at (model, 0, 1) && !runs_at (model, 1, 1));
}

static gboolean
evening_fails (const RwPracticeModel *model)
{
  return model->state.power && !model->params.own_dead
         && runs_at (model, model->state.warm, 1)
         && !runs_at (model, model->state.warm, evening_mains);
}

static gboolean
fuse_blows (const RwPracticeModel *model)
{
  return model->params.lamp_fuse_open
         || (model->params.supply == RW_PRACTICE_LINEAR && model->params.fuse_ohms > blown_ohms);
}

static gboolean
mains_fuse_blows (const RwPracticeModel *model)
{
  return model->params.supply == RW_PRACTICE_SWITCHER && model->params.fuse_ohms > blown_ohms;
}

static gboolean
fuse_later (const RwPracticeModel *model)
{
  return model->params.fuse_ohms > slack_ohms && model->params.fuse_ohms <= blown_ohms;
}

static gboolean
tingles (const RwPracticeModel *model)
{
  return model->params.earth_ohms > 1;
}

const RwPracticeSymptomKind rw_practice_symptoms_rest[] = {
  { "controls-erratic", controls_erratic },
  { "control-dead", control_dead },
  { "coins-wrong", coins_wrong },
  { "scores-lost", scores_lost },
  { "watchdog-barks", rw_practice_symptoms_bark },
  { "thump-cures", thump_cures },
  { "sprites-wrong", sprites_wrong },
  { "palette-wrong", palette_wrong },
  { "colour-missing", colour_missing },
  { "picture-rolls", picture_rolls },
  { "picture-dim", picture_dim },
  { "sound-bars", sound_bars },
  { "hum-with-volume", hum_with_volume },
  { "picture-buzz", picture_buzz },
  { "amp-hot", amp_hot },
  { "cold-start", cold_start },
  { "warm-freeze", warm_freeze },
  { "evening-fails", evening_fails },
  { "fuse-blows", fuse_blows },
  { "mains-fuse-blows", mains_fuse_blows },
  { "fuse-later", fuse_later },
  { "tingle", tingles },
  { NULL, NULL },
};
