/* rw-practice-symptoms.c: what somebody standing before a practice cabinet notices.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Thresholds are trade practice (estimates): memory errors below 4.75 V at a chip or with 60 mV
 * of ripple; a memory's bias weaker than 0.90 of nominal garbles; bars with 20 mV AC along
 * ground; a joint of half a watt browns its plug.
 */
#include "config.h"

#include "rw-practice-symptoms.h"

#include <math.h>

#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"
#include "rw-practice-symptoms-private.h"
#include "rw-practice-try.h"

static const double garble_ripple_volts = 0.06; /* slow enough for a dip of its own */
static const double bars_ground_volts = 0.02;
static const double bars_video_ohms = 0.5;
static const double weak_bias = 0.90;
static const double hot_chip_share = 1.06; /* 5.30 V on +5 */
static const double held_seconds = 3;      /* longer in reset than any start takes */
static const double loop_seconds = 6; /* still at it */
static const double distance_share = 0.4; /* a finger feels that of the heat beside the hottest */
static const double garble_switch_volts = 0.10;
static const double no_volts = 0.3; /* share of a rail below which a lamp is dark */
static const double dim_volts = 0.93;
static const double mute_loss = 0.75, mute_path = 0.4, rough_loss = 0.15;
static const double part_watts = 12; /* in one shorted part: it burns */
static const double lamp_wire_amps = 1.5; /* a lamp's thin wire smells */

gboolean
rw_practice_symptoms_plays (const RwPracticeModel *model)
{
  return model->state.fitted && model->state.board == RW_PRACTICE_BOARD_RUNNING;
}

double
rw_practice_symptoms_board_share (const RwPracticeModel *model,
                                  guint                  i)
{
  const RwPracticeRail *rail = &model->params.rail[i];
  const double volts = model->state.flow[i].finger_volts - model->state.ground_volts;

  return rail->sign * volts / rail->nominal;
}

/* Several a second are no resets in play: nobody gets to play. */
static gboolean
resets (const RwPracticeModel *model)
{
  return model->state.power && model->state.reset_age <= RW_PRACTICE_WATCH
         && !rw_practice_symptoms_bark (model);
}

static gboolean
boot_loop (const RwPracticeModel *model)
{
  return model->state.power && model->state.fast_resets >= 2
         && model->state.reset_age <= loop_seconds;
}

/* The rail that lamps on the supply hang on: the sound's, or the logic's. */
static double
lamp_share (const RwPracticeModel *model)
{
  const guint i = rw_practice_params_lamp_rail (&model->params);

  return fabs (model->state.flow[i].terminal_volts) / model->params.rail[i].nominal;
}

/* No lamp either. */
static gboolean
dead (const RwPracticeModel *model)
{
  return model->state.power && !model->state.ticking
         && (model->params.mains_share <= 0
             || (model->params.lamps_on_supply && model->state.on_seconds > held_seconds
                 && lamp_share (model) < no_volts
                 && fabs (model->state.flow[model->params.reference].terminal_volts)
                        < no_volts * model->params.rail[model->params.reference].nominal));
}

static gboolean
board_dead (const RwPracticeModel *model)
{
  return model->state.power && model->state.fitted && model->state.on_seconds > held_seconds
         && model->state.reset_age > held_seconds && !rw_practice_symptoms_plays (model)
         && !dead (model);
}

static gboolean
ticks (const RwPracticeModel *model)
{
  return model->state.ticking;
}

static gboolean
garbled (const RwPracticeModel *model)
{
  const RwPracticeParams *params = &model->params;

  if (!rw_practice_symptoms_plays (model))
    return FALSE;
  if (params->own_garble || params->own_picture
      || fabs (model->state.flow[params->reference].chip_volts) < params->garble_below_volts
      || rw_practice_circuit_hum (model, params->reference) > garble_ripple_volts
      || rw_practice_circuit_ripple (model, (int)params->reference, RW_PLACE_BOARD)
             > garble_switch_volts)
    return TRUE;
  if (params->needs_bias)
    for (guint i = 0; i < params->n_rails; i++)
      if (i != params->reference && rw_practice_symptoms_board_share (model, i) < weak_bias)
        return TRUE;
  return FALSE;
}

static gboolean
memory_error (const RwPracticeModel *model)
{
  return garbled (model) && model->params.own_garble;
}

double
rw_practice_symptoms_hum_volts (const RwPracticeModel *model)
{
  const int audio = model->params.audio;

  if (audio < 0 || !model->state.fitted
      || rw_practice_symptoms_board_share (model, (guint)audio) < 0.5)
    return 0;
  return rw_practice_circuit_hum (model, (guint)audio) + model->params.own_hum_volts;
}

static gboolean
hums (const RwPracticeModel *model)
{
  return model->params.hum_volts > 0
         && rw_practice_symptoms_hum_volts (model) > model->params.hum_volts;
}

static gboolean
no_sound (const RwPracticeModel *model)
{
  const int audio = model->params.audio;

  return rw_practice_symptoms_plays (model) && audio >= 0
         && (rw_practice_symptoms_board_share (model, (guint)audio) < 0.5
             || model->params.amp_loss > mute_loss
             || model->params.speaker_loss > mute_path);
}

static gboolean
weak_sound (const RwPracticeModel *model)
{
  const int audio = model->params.audio;

  if (!rw_practice_symptoms_plays (model) || audio < 0)
    return FALSE;

  const double share = rw_practice_symptoms_board_share (model, (guint)audio);

  return share >= 0.5 && model->params.amp_loss <= mute_loss
         && model->params.speaker_loss <= mute_path
         && (share < 0.88 || model->params.amp_loss > rough_loss
             || model->params.speaker_loss > rough_loss
             || rw_practice_try_loud (model) > rw_practice_try_loud_usual (model));
}

static gboolean
bars (const RwPracticeModel *model)
{
  if (model->state.power && model->params.mains_share > 0
      && model->params.monitor_hum_share >= 1)
    return TRUE;
  return rw_practice_symptoms_plays (model)
         && (rw_practice_circuit_ripple (model, -1, RW_PLACE_WIRE) > bars_ground_volts
             || model->params.loop_volts > bars_ground_volts
             || (!model->params.colour_wire && model->params.video_ground_ohms > bars_video_ohms)
             || rw_practice_circuit_hum (model, model->params.reference) > garble_ripple_volts);
}

static gboolean
dim (const RwPracticeModel *model)
{
  if (!model->state.power || model->state.level <= 0.9)
    return FALSE;
  if (!model->params.lamps_on_supply)
    return model->params.mains_share > 0 && model->params.mains_share < 0.9;

  const double share = lamp_share (model);

  return share >= no_volts
         && (share < dim_volts
             || rw_practice_try_loud (model) > rw_practice_try_loud_usual (model) + 0.2);
}

static gboolean
chips_hot (const RwPracticeModel *model)
{
  const guint i = model->params.reference;

  return rw_practice_symptoms_plays (model)
         && fabs (model->state.flow[i].chip_volts)
                > hot_chip_share * model->params.rail[i].nominal;
}

static double
hot_watts (const RwPracticeModel *model)
{
  const guint i = model->params.reference;

  return rw_practice_path_hot_watts (&model->params.rail[i].path, model->state.flow[i].amps,
                                     model->state.warm);
}

double
rw_practice_symptoms_plug_watts (const RwPracticeModel *model)
{
  const double amps = model->state.flow[model->params.reference].amps;
  const RwPracticePath *path = &model->params.rail[model->params.reference].path;
  const double rest = amps * amps * path->contact_ohms * (1 - path->contact_hot);

  return MAX (hot_watts (model),
              amps * amps * path->contact_ohms * path->contact_hot + distance_share * rest);
}

static gboolean
smells (const RwPracticeModel *model)
{
  const RwPracticeFlow *flow = &model->state.flow[model->params.reference];
  const double part = (flow->amps - 1.5 * model->params.full_amps) * fabs (flow->chip_volts);

  if (model->state.level < 1)
    return FALSE;
  return hot_watts (model) > RW_PRACTICE_BROWN_WATTS || part > part_watts
         || model->params.lamp_amps > lamp_wire_amps;
}

static const RwPracticeSymptomKind kinds[] = {
  { "resets", resets },
  { "boot-loop", boot_loop },
  { "memory-error", memory_error },
  { "garbled-graphics", garbled },
  { "picture-bars", bars },
  { "audio-hum", hums },
  { "no-sound", no_sound },
  { "distorted-sound", weak_sound },
  { "dead", dead },
  { "board-dead", board_dead },
  { "supply-ticks", ticks },
  { "lamps-dim", dim },
  { "burning-smell", smells },
  { "chips-hot", chips_hot },
};

static const RwPracticeSymptomKind *
find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (kinds[i].id, id) == 0)
      return &kinds[i];
  for (const RwPracticeSymptomKind *kind = rw_practice_symptoms_rest; kind->id != NULL; kind++)
    if (g_strcmp0 (kind->id, id) == 0)
      return kind;
  return NULL;
}

gboolean
rw_practice_symptoms_knows (const char *symptom)
{
  return find (symptom) != NULL;
}

gboolean
rw_practice_symptoms_present (const RwPracticeModel *model,
                              const char            *symptom)
{
  const RwPracticeSymptomKind *kind = find (symptom);

  return kind != NULL && kind->present (model);
}
