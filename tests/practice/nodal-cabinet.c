/* nodal-cabinet.c: a cabinet's circuit drawn anew from its parameters, and solved by nodal analysis.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For each rail, with 0 the supply's 0 V and G the board's ground:
 *
 *     source ── S ──own ohms── T ──path── F ──trace── C ──load── G ──ground path── 0
 *                              └──bleed resistor── 0
 *
 * A switcher's reference holds S, or with a sense wire F − G, at the set point; a winding's S follows T and the current of
 * the reference by its turns, diodes being fixed drops. A linear reference is the mean of a saw-tooth cut off at the set
 * point, summed up point by point. What bends (a winding below its minimum load, drop-out) is found by repeating; the fold
 * of an overloaded supply by halving the interval it lies in.
 */
#include "config.h"

#include "nodal-cabinet.h"

#include <math.h>

#include "nodal-solver.h"

enum
{
  ZERO,
  GROUND,
  FIRST /* S, T, F, C of the first rail */
};

typedef struct
{
  const RwPracticeParams *params;
  const RwPracticeState  *state;
  double                  fold;
  NodalCircuit            circuit;
  guint                   source[RW_PRACTICE_MAX_RAILS];
  double                  amps[RW_PRACTICE_MAX_RAILS];  /* of source, last round */
  double                  board[RW_PRACTICE_MAX_RAILS]; /* of it into the board */
} Cabinet;

static guint
s_of (guint i)
{
  return FIRST + 4 * i;
}

static guint
t_of (guint i)
{
  return FIRST + 4 * i + 1;
}

static guint
f_of (guint i)
{
  return FIRST + 4 * i + 2;
}

static guint
c_of (guint i)
{
  return FIRST + 4 * i + 3;
}

/* Copper that has warmed by 15 K at 0.39 %/K; joints that grow by contact_warm and tremble. */
static double
way_ohms (const RwPracticePath  *path,
          const RwPracticeState *state)
{
  const double copper = path->wire_ohms * (1 + 0.0039 * 15 * state->warm);
  const double joints = (path->screw_ohms + path->fuse_ohms + path->crimp_ohms + path->contact_ohms)
                        * (1 + path->contact_warm * state->warm);

  return copper + joints * fmax (0.2, 1 + path->wander * state->wander_contact)
         + (path->jerks ? state->jerk_ohms : 0);
}

static double
asked_amps (const Cabinet *self,
            guint          i)
{
  const RwPracticeRail *rail = &self->params->rail[i];
  const RwPracticeState *state = self->state;

  if (state->board != RW_PRACTICE_BOARD_RUNNING)
    return 0.95 * rail->load_amps;
  return rail->load_amps * (1 + state->wander_load + (i == self->params->reference ? state->step_amps : 0));
}

static double
cold_share (const Cabinet *self)
{
  return 1 + self->params->cold_share * (1 - self->state->warm);
}

static double
set_volts (const Cabinet *self)
{
  const RwPracticeParams *params = self->params;
  const double trimmed = params->trim_lo_volts + self->state->trim * (params->trim_hi_volts - params->trim_lo_volts);

  return trimmed * (1 + params->warm_reference * self->state->warm) + self->state->wander_reference
         + self->state->jerk_volts;
}

/* How much of the wanted output a raw capacitor's saw-tooth leaves, on the average. */
static double
cut_by_raw (const Cabinet *self,
            double         wanted)
{
  const RwPracticeParams *params = self->params;
  const RwPracticeRaw *raw = &params->rail[params->reference].raw;
  const double level = self->state->level, amps = self->board[params->reference];
  const double pulses = params->mains_hertz * (raw->half_wave ? 1 : 2);
  const double peak = fmax (0, sqrt (2) * raw->winding_volts * params->mains_share - raw->bridge_volts
                                   - amps * raw->winding_ohms * (raw->half_wave ? 2 : 1));
  const double swing = fmin (peak, amps / (pulses * raw->farads));
  const guint n = 4000;
  double mean = 0;

  for (guint i = 0; i < n; i++)
    mean += fmin (wanted, peak * level - swing * (i + 0.5) / n - params->dropout_volts * level) / n;
  return fmax (0, mean);
}

/* A weak loop lets its output rise below an ampere and a half, all of it where nothing is drawn. */
static double
rise_volts (const Cabinet *self)
{
  const double lightness = fmax (0, 1.5 - self->amps[self->params->reference]) / 1.5;

  return self->params->light_rise * self->state->level * lightness * lightness;
}

static void
draw_reference (Cabinet *self)
{
  const RwPracticeParams *params = self->params;
  const RwPracticeState *state = self->state;
  const guint i = params->reference, source = self->source[i];
  const RwPracticeRail *rail = &params->rail[i];
  const double share = state->tripped ? 0 : state->level * self->fold * rail->alive;
  const double falls = rail->dynamic_ohms * cold_share (self) * rail->load_amps * state->step_amps * state->level
                       - rise_volts (self);
  double set = set_volts (self);

  if (params->sense == RW_PRACTICE_SENSE_OPEN)
    set *= 1 + params->sense_catch_share * fmax (0, 1 + 0.1 * state->wander_contact);
  if (params->supply == RW_PRACTICE_LINEAR)
    {
      const NodalCircuit *last = &self->circuit;

      if (params->sense == RW_PRACTICE_SENSE_BOARD)
        set += nodal_volts (last, GROUND) + self->board[i] * (way_ohms (&rail->path, state) + state->shake_ohms);
      self->circuit.source[source].volts = cut_by_raw (self, set * share) - falls;
      return;
    }
  self->circuit.source[source].volts = set * share - falls;
  if (params->sense != RW_PRACTICE_SENSE_BOARD || rail->path.open)
    return;
  nodal_gain_volts (&self->circuit, source, t_of (i), share);
  nodal_gain_volts (&self->circuit, source, f_of (i), -share);
  nodal_gain_volts (&self->circuit, source, GROUND, share);
}

/* Share of its turns that a winding gives: less when the reference draws too little, more when it is idle itself. */
static double
winding_share (const Cabinet *self,
               guint          i)
{
  const RwPracticeParams *params = self->params;
  const RwPracticeRail *rail = &params->rail[i], *first = &params->rail[params->reference];
  const double i1 = self->amps[params->reference];
  double share = 1;

  if (first->minimum_amps > 0 && i1 < first->minimum_amps)
    share -= params->sink_share * pow (1 - fmax (0, i1) / first->minimum_amps, 3);
  if (rail->minimum_amps > 0 && params->full_amps > 0)
    share *= 1 + rail->peak_share * fmax (0, 1 - (self->board[i] + rail->bleed_amps) / rail->minimum_amps)
                     * fmin (1, i1 / params->full_amps);
  return share;
}

static void
draw_follower (Cabinet *self,
               guint    i)
{
  const RwPracticeParams *params = self->params;
  const guint reference = params->reference;
  const RwPracticeRail *rail = &params->rail[i], *first = &params->rail[reference];
  const double level = self->state->level;
  const double gain = rail->alive * rail->turns * winding_share (self, i);
  const double v1 = nodal_volts (&self->circuit, t_of (reference));
  const double diodes = gain * level * first->diode_volts - rail->alive * level * rail->diode_volts;
  const double amps = gain * level * first->ohms;

  /* Diodes let nothing back. */
  if (gain * v1 + amps * self->amps[reference] + diodes < 0)
    return;
  self->circuit.source[self->source[i]].volts = diodes;
  nodal_gain_volts (&self->circuit, self->source[i], t_of (reference), gain);
  nodal_gain_amps (&self->circuit, self->source[i], self->source[reference], amps);
}

static double
own_ohms (const Cabinet *self,
          guint          i)
{
  const RwPracticeParams *params = self->params;
  const RwPracticeRail *rail = &params->rail[i];

  if (i == params->reference)
    return rail->load_ohms * cold_share (self);
  if (rail->feed == RW_PRACTICE_REGULATED)
    return rail->load_ohms;
  if (rail->feed == RW_PRACTICE_UNREGULATED)
    return rail->raw.winding_ohms * (rail->raw.half_wave ? 2 : 1)
           + 0.5 / (params->mains_hertz * (rail->raw.half_wave ? 1 : 2) * rail->raw.farads);
  return rail->alive * rail->ohms;
}

static void
draw_source (Cabinet *self,
             guint    i)
{
  const RwPracticeParams *params = self->params;
  const RwPracticeRail *rail = &params->rail[i];
  const gboolean plus = rail->sign > 0;

  self->source[i] = nodal_source (&self->circuit, plus ? s_of (i) : ZERO, plus ? ZERO : s_of (i), 0);
  if (i == params->reference)
    draw_reference (self);
  else if (rail->feed == RW_PRACTICE_FOLLOWER)
    draw_follower (self, i);
  else if (rail->feed == RW_PRACTICE_REGULATED)
    self->circuit.source[self->source[i]].volts
        = rail->fixed_volts * rail->alive * self->state->level * fmin (1, self->fold / 0.85);
  else
    self->circuit.source[self->source[i]].volts
        = fmax (0, sqrt (2) * rail->raw.winding_volts * params->mains_share - rail->raw.bridge_volts) * rail->alive
          * self->state->level;
}

static void
draw_rail (Cabinet *self,
           guint    i)
{
  const RwPracticeRail *rail = &self->params->rail[i];
  const double shaken = i == self->params->reference ? self->state->shake_ohms : 0;
  NodalCircuit *circuit = &self->circuit;

  draw_source (self, i);
  nodal_resistor (circuit, s_of (i), t_of (i), own_ohms (self, i));
  if (rail->bleed_amps > 0)
    nodal_resistor (circuit, t_of (i), ZERO, rail->nominal / rail->bleed_amps);
  nodal_resistor (circuit, f_of (i), c_of (i), rail->path.trace_ohms);
  if (!self->state->fitted || rail->path.open)
    {
      nodal_resistor (circuit, c_of (i), GROUND, 1);
      return;
    }
  nodal_resistor (circuit, t_of (i), f_of (i), way_ohms (&rail->path, self->state) + shaken);
  if (rail->sign > 0)
    nodal_load (circuit, c_of (i), GROUND, asked_amps (self, i), rail->nominal, rail->load_follow);
  else
    nodal_load (circuit, GROUND, c_of (i), asked_amps (self, i), rail->nominal, rail->load_follow);
}

/* Draws it with what is known of the currents, solves it, and learns them. Returns how far they moved; NaN: no
 * solution. */
static double
one_round (Cabinet *self)
{
  const NodalCircuit last = self->circuit;
  double moved = 0;

  nodal_start (&self->circuit, FIRST + 4 * self->params->n_rails);
  for (guint i = 0; i < last.n_nodes + last.n_sources; i++)
    self->circuit.x[i] = last.x[i];
  nodal_resistor (&self->circuit, GROUND, ZERO, way_ohms (&self->params->ground, self->state));
  /* The reference first: the others lean on its source. */
  draw_rail (self, self->params->reference);
  for (guint i = 0; i < self->params->n_rails; i++)
    if (i != self->params->reference)
      draw_rail (self, i);
  if (!nodal_solve (&self->circuit))
    return NAN;
  for (guint i = 0; i < self->params->n_rails; i++)
    {
      const RwPracticeRail *rail = &self->params->rail[i];
      const double volts = fabs (nodal_volts (&self->circuit, t_of (i)));
      const double amps = nodal_amps (&self->circuit, self->source[i]);

      moved = fmax (moved, fabs (amps - self->amps[i]));
      /* Half the way: a raw capacitor in drop-out hunts. */
      self->amps[i] += (amps - self->amps[i]) / 2;
      self->board[i] = self->amps[i] - rail->bleed_amps * volts / rail->nominal;
    }
  return moved;
}

static gboolean
settle (Cabinet *self)
{
  double moved = INFINITY;

  for (guint round = 0; round < 400 && moved > 1e-9; round++)
    moved = one_round (self);
  return moved < 1e-5;
}

static double
watts (const Cabinet *self)
{
  double sum = 0;

  for (guint i = 0; i < self->params->n_rails; i++)
    if (self->params->supply == RW_PRACTICE_SWITCHER || i == self->params->reference)
      sum += fabs (nodal_volts (&self->circuit, t_of (i))) * self->amps[i];
  return sum;
}

static gboolean
find_fold (Cabinet *self)
{
  const RwPracticeParams *params = self->params;
  const double limit = params->limit_watts * (1 - params->limit_warm * self->state->warm);
  double lo = 0.02, hi = 1;

  if (params->supply == RW_PRACTICE_SWITCHER && params->mains_needed > 0)
    hi = fmax (lo, fmin (1, params->mains_share / params->mains_needed));
  self->fold = hi;
  if (!settle (self))
    return FALSE;
  if (limit <= 0 || watts (self) <= limit)
    return TRUE;
  for (guint i = 0; i < 30; i++)
    {
      self->fold = (lo + hi) / 2;
      if (!settle (self))
        return FALSE;
      if (watts (self) > limit)
        hi = self->fold;
      else
        lo = self->fold;
    }
  return TRUE;
}

gboolean
nodal_cabinet_solve (const RwPracticeParams *params,
                     const RwPracticeState  *state,
                     NodalAnswer            *out)
{
  Cabinet *self = g_new0 (Cabinet, 1);
  gboolean settled;

  self->params = params;
  self->state = state;
  for (guint i = 0; i < params->n_rails; i++)
    {
      self->board[i] = state->fitted ? params->rail[i].load_amps : 0;
      self->amps[i] = self->board[i] + params->rail[i].bleed_amps;
      for (guint node = s_of (i); node <= c_of (i); node++)
        self->circuit.x[node] = params->rail[i].sign * params->rail[i].nominal;
    }
  self->circuit.n_nodes = FIRST + 4 * params->n_rails;
  settled = find_fold (self);
  out->fold = self->fold;
  out->ground = nodal_volts (&self->circuit, GROUND);
  for (guint i = 0; i < params->n_rails; i++)
    {
      out->terminal[i] = nodal_volts (&self->circuit, t_of (i));
      out->finger[i] = nodal_volts (&self->circuit, f_of (i));
      out->chip[i] = nodal_volts (&self->circuit, c_of (i)) - out->ground;
    }
  g_free (self);
  return settled;
}
