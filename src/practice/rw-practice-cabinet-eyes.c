/* rw-practice-cabinet-eyes.c: what can be seen and heard of a practice cabinet, and the truth
 * behind it. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-cabinet-private.h"
#include "rw-practice-symptoms.h"

static const double warm_enough = 0.6321; /* 1 − 1/e: past one time constant */

double
rw_practice_cabinet_get_seconds (RwPracticeCabinet *self)
{
  return (double)self->model.state.steps / (1 / RW_PRACTICE_STEP);
}

RwProfile *
rw_practice_cabinet_get_profile (RwPracticeCabinet *self)
{
  return self->profile;
}

const char *
rw_practice_cabinet_get_name (RwPracticeCabinet *self)
{
  return self->name;
}

guint64
rw_practice_cabinet_get_seed (RwPracticeCabinet *self)
{
  return self->seed;
}

gboolean
rw_practice_cabinet_get_power (RwPracticeCabinet *self)
{
  return self->model.state.power;
}

gboolean
rw_practice_cabinet_get_board_fitted (RwPracticeCabinet *self)
{
  return self->model.state.fitted;
}

gboolean
rw_practice_cabinet_get_warm (RwPracticeCabinet *self)
{
  return self->model.state.warm >= warm_enough;
}

double
rw_practice_cabinet_get_on_minutes (RwPracticeCabinet *self)
{
  return self->model.state.on_seconds / 60;
}

double
rw_practice_cabinet_get_trim (RwPracticeCabinet *self)
{
  return self->model.state.trim;
}

gboolean
rw_practice_cabinet_get_trim_turned (RwPracticeCabinet *self)
{
  return self->trim_turned;
}

RwPracticeBoard
rw_practice_cabinet_get_board_state (RwPracticeCabinet *self)
{
  return self->model.state.board;
}

guint
rw_practice_cabinet_get_resets (RwPracticeCabinet *self)
{
  return self->model.state.resets;
}

gboolean
rw_practice_cabinet_get_ticking (RwPracticeCabinet *self)
{
  return self->model.state.ticking;
}

gboolean
rw_practice_cabinet_get_tripped (RwPracticeCabinet *self)
{
  return self->model.state.tripped;
}

gboolean
rw_practice_cabinet_has_symptom (RwPracticeCabinet *self,
                                 const char        *symptom)
{
  return rw_practice_symptoms_present (&self->model, symptom);
}

gboolean
rw_practice_cabinet_knows_symptom (const char *symptom)
{
  return rw_practice_symptoms_knows (symptom);
}

double
rw_practice_cabinet_get_true_volts (RwPracticeCabinet *self,
                                    const char        *rail,
                                    RwPlace            place,
                                    RwKind             kind)
{
  return rw_practice_model_get_volts (&self->model, rail, place, kind);
}

guint
rw_practice_cabinet_get_true_n_faults (RwPracticeCabinet *self)
{
  return self->faults->len;
}

const RwPracticeFault *
rw_practice_cabinet_get_true_fault (RwPracticeCabinet *self,
                                    guint              index)
{
  g_return_val_if_fail (index < self->faults->len, NULL);
  return &g_array_index (self->faults, RwPracticeFault, index);
}

const RwPracticeModel *
rw_practice_cabinet_get_true_model (RwPracticeCabinet *self)
{
  return &self->model;
}
