/* rw-practice-shunt.c: what a meter in its amps jack does to a practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ten amperes' worth of shunt, fuse and leads are 0.03–0.07 Ω: a short circuit. Between a rail and ground it is a load,
 * of the supply where the red lead is on the supply's side of the wire, of the board where it is on the board's side,
 * through the ohms on the way there; the circuit is solved with it, so that rails fold back, boards reset and fuses of
 * meters blow as they would. Between two rails it loads the higher one. Along one conductor it takes a share of the
 * current, Is = V/(R + Rs), V being the drop without it: too little to move anything else.
 */
#include "config.h"

#include <math.h>

#include "rw-practice-nodes-private.h"

/* A load that the shunt makes. */
typedef struct
{
  int      rail;     /* index; −1: no load */
  gboolean at_board; /* else at the supply */
  double   siemens;  /* at the rail's volts */
  double   sign;     /* red on the rail: 1 */
} Shunt;

static const RwPracticeTouch *
touch_at (const RwPracticeCabinet *self,
          RwPracticeLead           lead)
{
  const char *id = self->lead[lead];
  const int i = id != NULL ? rw_practice_nodes_find (self->nodes, id) : -1;

  return i >= 0 ? &g_array_index (self->nodes, RwPracticeTouch, i) : NULL;
}

static gboolean
is_along (const RwPracticeTouch *touch)
{
  return touch->point <= RW_PRACTICE_POINT_CHIP;
}

static gboolean
is_at_board (const RwPracticeTouch *touch)
{
  return is_along (touch) && touch->point >= RW_PRACTICE_POINT_HARNESS_BOARD;
}

/* The rail that feeds a point: an index, or that of ground or nothing. */
static int
fed_by (const RwPracticeCabinet *self,
        const RwPracticeTouch   *touch)
{
  const RwPracticePoint point = touch->point;

  if (point == RW_PRACTICE_POINT_RAW_PLUS || point == RW_PRACTICE_POINT_SENSE)
    return (int) self->model.params.reference;
  if (point == RW_PRACTICE_POINT_LAMP_PLUS && !self->model.params.lamp_fuse_open)
    return (int) rw_practice_params_lamp_rail (&self->model.params);
  if (point == RW_PRACTICE_POINT_RAW_MINUS || point == RW_PRACTICE_POINT_LAMP_MINUS
      || point == RW_PRACTICE_POINT_SOUND_GROUND || point == RW_PRACTICE_POINT_SPEAKER_MINUS)
    return RW_PRACTICE_GROUND;
  return touch->rail;
}

/* Volts that a rail of this model would have with nothing in the way. */
static double
nominal_of (const RwPracticeCabinet *self,
            int                      rail)
{
  return rail >= 0 ? self->model.params.rail[rail].sign * self->model.params.rail[rail].nominal : 0;
}

/* Ohms on the way that the circuit does not count itself. */
static double
way_to (const RwPracticeCabinet *self,
        const RwPracticeTouch   *touch)
{
  if (touch->point == RW_PRACTICE_POINT_SENSE && self->model.params.sense != RW_PRACTICE_SENSE_NONE)
    return RW_PRACTICE_CATCH_OHMS;
  if (is_along (touch) && !is_at_board (touch))
    return rw_practice_nodes_way_ohms (&self->model, touch);
  return touch->point == RW_PRACTICE_POINT_LAMP_PLUS || touch->point == RW_PRACTICE_POINT_LAMP_MINUS
             ? RW_PRACTICE_LAMP_WIRE_OHMS
             : 0;
}

static Shunt
find_load (const RwPracticeCabinet *self)
{
  const RwPracticeTouch *red = touch_at (self, RW_PRACTICE_RED), *black = touch_at (self, RW_PRACTICE_BLACK);
  Shunt shunt = { .rail = -1 };

  if (red == NULL || black == NULL || isinf (self->dial.shunt_ohms))
    return shunt;

  const int a = fed_by (self, red), b = fed_by (self, black);

  if (a == b || a == RW_PRACTICE_NO_RAIL || b == RW_PRACTICE_NO_RAIL)
    return shunt;

  const double across = nominal_of (self, a) - nominal_of (self, b);
  const gboolean red_loads = fabs (nominal_of (self, a)) >= fabs (nominal_of (self, b));
  const RwPracticeTouch *at = red_loads ? red : black;
  const double ohms = self->dial.shunt_ohms + way_to (self, red) + way_to (self, black);

  if (is_at_board (at) && (!self->model.state.fitted || self->model.params.rail[red_loads ? a : b].path.open))
    return shunt;
  shunt.rail = red_loads ? a : b;
  shunt.at_board = is_at_board (at);
  shunt.siemens = fabs (across / nominal_of (self, shunt.rail)) / ohms;
  shunt.sign = across >= 0 ? 1 : -1;
  return shunt;
}

/* A resistor beside the board is a load that follows the volts. */
static void
apply (RwPracticeParams *params,
       const Shunt      *shunt)
{
  RwPracticeRail *rail = &params->rail[shunt->rail];
  const double amps = rail->nominal * shunt->siemens;

  if (!shunt->at_board)
    {
      rail->bleed_amps += amps;
      return;
    }
  rail->load_follow = (rail->load_follow * rail->load_amps + amps) / (rail->load_amps + amps);
  rail->load_amps += amps;
}

gboolean
rw_practice_cabinet_step_shunted (RwPracticeCabinet *self)
{
  const Shunt shunt = find_load (self);

  if (shunt.rail < 0)
    return rw_practice_model_step (&self->model);

  const RwPracticeParams without = self->model.params;

  apply (&self->model.params, &shunt);

  const gboolean reset = rw_practice_model_step (&self->model);

  self->model.params = without;
  return reset;
}

double
rw_practice_cabinet_get_shunt_amps (const RwPracticeCabinet *self)
{
  const Shunt shunt = find_load (self);
  const RwPracticeFlow *flow = &self->model.state.flow[MAX (0, shunt.rail)];
  RwPracticePair pair;

  if (isinf (self->dial.shunt_ohms))
    return 0;
  if (shunt.rail >= 0)
    return shunt.sign * shunt.siemens * fabs (shunt.at_board ? flow->chip_volts : flow->terminal_volts);
  rw_practice_cabinet_measure ((RwPracticeCabinet *) self, self->lead[RW_PRACTICE_RED],
                               self->lead[RW_PRACTICE_BLACK], &pair);
  return pair.open ? 0 : sqrt (pair.dc * pair.dc + pair.ac * pair.ac) / (pair.ohms + self->dial.shunt_ohms) * (pair.dc < 0 ? -1 : 1);
}
