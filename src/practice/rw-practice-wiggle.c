/* rw-practice-wiggle.c: moving a plug, a screw or a board of a practice cabinet with a dry stick.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A joint's ohms above those of a good one, times how much it trembles untouched, times `shaken`: a
 * crimp of 45 mΩ that trembles by 3 % moves by some 30–80 mΩ, which at 3 A is the 0.1–0.2 V that trade
 * practice reports; a good joint moves by a tenth of its own milliohm or two.
 */
#include "config.h"

#include "rw-practice-wiggle.h"

#include <glib/gi18n-lib.h>

#include "rw-practice-cabinet-private.h"

static const double shortest_shake = 0.25, longest_shake = 0.60;
static const double good_ohms = 0.004; /* of any clean joint */
static const double loose_sense_volts = 0.3; /* trade practice: 0.1 to 0.5 V with a touch */
static const double good_share = 0.1, shaken = 40;

static const struct
{
  const char *id, *label;
} spots[] = {
  [RW_PRACTICE_SPOT_EDGE] = { "edge", N_ ("Edge connector") },
  [RW_PRACTICE_SPOT_HARNESS] = { "harness", N_ ("Harness and plugs") },
  [RW_PRACTICE_SPOT_SCREWS] = { "screws", N_ ("Screws of the supply") },
  [RW_PRACTICE_SPOT_BOARD] = { "board", N_ ("Game board") },
  [RW_PRACTICE_SPOT_SUPPLY] = { "supply", N_ ("Case of the supply") },
};

const char *
rw_practice_spot_get_label (RwPracticeSpot spot)
{
  g_return_val_if_fail (spot < RW_PRACTICE_N_SPOTS, NULL);
  return _ (spots[spot].label);
}

const char *
rw_practice_spot_to_id (RwPracticeSpot spot)
{
  g_return_val_if_fail (spot < RW_PRACTICE_N_SPOTS, NULL);
  return spots[spot].id;
}

RwPracticeSpot
rw_practice_spot_from_id (const char *id)
{
  for (RwPracticeSpot spot = 0; spot < RW_PRACTICE_N_SPOTS; spot++)
    if (g_strcmp0 (spots[spot].id, id) == 0)
      return spot;
  return RW_PRACTICE_N_SPOTS;
}

/* By how much a joint of the reference rail may move. */
static double
joint_moves (const RwPracticePath *path,
             double                ohms)
{
  return good_share * MIN (ohms, good_ohms) + MAX (0, ohms - good_ohms) * path->wander * shaken;
}

/* The most that shaking there adds to the reference rail's path. */
static double
moves (const RwPracticeParams *params,
       RwPracticeSpot          spot)
{
  const RwPracticePath *path = &params->rail[params->reference].path;
  const double crack = path->jerks ? params->jerk_ohms : 0;

  switch (spot)
    {
    case RW_PRACTICE_SPOT_EDGE:
      return joint_moves (path, path->contact_ohms);

    case RW_PRACTICE_SPOT_HARNESS:
      return joint_moves (path, path->crimp_ohms) + joint_moves (path, path->fuse_ohms) + crack;

    case RW_PRACTICE_SPOT_SCREWS:
      return joint_moves (path, path->screw_ohms);

    case RW_PRACTICE_SPOT_BOARD:
      return params->crack_on_board ? crack : 0;

    case RW_PRACTICE_SPOT_SUPPLY:
      return params->crack_on_board ? 0 : crack;

    case RW_PRACTICE_N_SPOTS:
    default:
      return 0;
    }
}

/* The most by which shaking there makes the reference jump, volts. */
static double
jumps (const RwPracticeParams *params,
       RwPracticeSpot          spot)
{
  const RwPracticeSpot sense = params->crack_on_board ? RW_PRACTICE_SPOT_EDGE
                                                      : RW_PRACTICE_SPOT_HARNESS;

  if (spot == RW_PRACTICE_SPOT_SUPPLY)
    return params->jerk_volts;
  return params->sense == RW_PRACTICE_SENSE_OPEN && spot == sense ? loose_sense_volts : 0;
}

void
rw_practice_cabinet_wiggle (RwPracticeCabinet *self,
                            RwPracticeSpot     spot)
{
  g_return_if_fail (RW_IS_PRACTICE_CABINET (self));
  g_return_if_fail (spot < RW_PRACTICE_N_SPOTS);

  const RwPracticeParams *params = &self->model.params;
  RwPracticeState *state = &self->model.state;
  RwPracticeRandom *random = &self->model.random;
  const gboolean at_board = spot == RW_PRACTICE_SPOT_BOARD || spot == RW_PRACTICE_SPOT_EDGE;
  const double seconds = rw_practice_random_between (random, shortest_shake, longest_shake);
  const double share = rw_practice_random_between (random, 0.5, 1);
  const double jerk = jumps (params, spot);
  const double way = rw_practice_random_uniform (random) < 0.5 ? -1 : 1;

  if (at_board && !state->fitted)
    return;
  state->shake_left = seconds;
  state->shake_ohms = share * moves (params, spot);
  state->knocked = spot == RW_PRACTICE_SPOT_BOARD;
  if (jerk > 0)
    {
      state->jerk_left = seconds;
      state->jerk_volts = way * share * jerk;
    }
}
