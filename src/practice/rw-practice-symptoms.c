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

typedef struct
{
  const char *id;
  gboolean (*present) (const RwPracticeModel *model);
} SymptomKind;

static const double garble_ripple_volts = 0.06;
static const double bars_ground_volts = 0.02;
static const double weak_bias = 0.90;
static const double hot_chip_share = 1.06; /* 5.30 V on +5 */
static const double held_seconds = 3;      /* longer in reset than any start takes */
static const double loop_seconds = 6; /* resets at least this often: it never gets anywhere */
static const double brown_watts = 0.5;

static gboolean
plays (const RwPracticeModel *model)
{
  return model->state.fitted && model->state.board == RW_PRACTICE_BOARD_RUNNING;
}

static double
board_share (const RwPracticeModel *model,
             guint                  i)
{
  const RwPracticeRail *rail = &model->params.rail[i];
  const double volts = model->state.flow[i].finger_volts - model->state.ground_volts;

  return rail->sign * volts / rail->nominal;
}

static gboolean
resets (const RwPracticeModel *model)
{
  return model->state.power && model->state.reset_age <= RW_PRACTICE_WATCH;
}

static gboolean
boot_loop (const RwPracticeModel *model)
{
  return model->state.power && model->state.resets >= 3
         && model->state.reset_age <= loop_seconds && model->state.reset_gap <= loop_seconds;
}

static gboolean
board_dead (const RwPracticeModel *model)
{
  return model->state.power && model->state.fitted && model->state.on_seconds > held_seconds
         && model->state.reset_age > held_seconds && !plays (model);
}

static gboolean
dead (const RwPracticeModel *model)
{
  return model->state.power && model->params.mains_share <= 0;
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

  if (!plays (model))
    return FALSE;
  if (params->own_garble
      || fabs (model->state.flow[params->reference].chip_volts) < params->garble_below_volts
      || rw_practice_circuit_ripple (model, (int)params->reference, RW_PLACE_BOARD)
             > garble_ripple_volts)
    return TRUE;
  if (params->needs_bias)
    for (guint i = 0; i < params->n_rails; i++)
      if (i != params->reference && board_share (model, i) < weak_bias)
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

  if (audio < 0 || !model->state.fitted || board_share (model, (guint)audio) < 0.5)
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

  return plays (model) && audio >= 0 && board_share (model, (guint)audio) < 0.5;
}

static gboolean
weak_sound (const RwPracticeModel *model)
{
  const int audio = model->params.audio;

  if (!plays (model) || audio < 0)
    return FALSE;

  const double share = board_share (model, (guint)audio);

  return share >= 0.5 && share < 0.88;
}

static gboolean
bars (const RwPracticeModel *model)
{
  return plays (model)
         && (rw_practice_circuit_ripple (model, -1, RW_PLACE_WIRE) > bars_ground_volts
             || rw_practice_circuit_ripple (model, (int)model->params.reference, RW_PLACE_BOARD)
                    > garble_ripple_volts);
}

static gboolean
dim (const RwPracticeModel *model)
{
  return model->state.power && model->state.level > 0.9
         && (model->params.mains_share < 0.9 || model->state.fold < 0.97);
}

static gboolean
chips_hot (const RwPracticeModel *model)
{
  const guint i = model->params.reference;

  return plays (model)
         && fabs (model->state.flow[i].chip_volts)
                > hot_chip_share * model->params.rail[i].nominal;
}

double
rw_practice_symptoms_joint_watts (const RwPracticeModel *model)
{
  const RwPracticeFlow *flow = &model->state.flow[model->params.reference];
  const RwPracticePath *path = &model->params.rail[model->params.reference].path;
  const double ohms = MAX (path->contact_ohms, MAX (path->crimp_ohms, path->screw_ohms));

  return flow->amps * flow->amps * ohms * (1 + path->contact_warm * model->state.warm);
}

static gboolean
smells (const RwPracticeModel *model)
{
  return rw_practice_symptoms_joint_watts (model) > brown_watts;
}

static const SymptomKind kinds[] = {
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

static const SymptomKind *
find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (kinds[i].id, id) == 0)
      return &kinds[i];
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
  const SymptomKind *kind = find (symptom);

  return kind != NULL && kind->present (model);
}
