/* rw-setups.c: the setups of a cabinet as numbers, and what changing from one to another costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The minutes are estimates from trade practice. Pulling or fitting the board includes
 * powering down and waiting; it leaves the power off. Warming up needs power, cooling down
 * needs it off.
 */
#include "config.h"

#include "rw-setups.h"

#include <math.h>

enum
{
  POWER = 1,
  BOARD = 2,
  WARM = 4,
};

static const double power_on = 0.5;
static const double power_off = 2;
static const double move_board = 3;
static const double warm_up = 20;
static const double cool_down = 30;

guint
rw_setups_index (RwSetup setup)
{
  return (setup.power_on == RW_SAID_YES ? POWER : 0u)
         | (setup.board_fitted == RW_SAID_NO ? 0u : BOARD)
         | (setup.warm == RW_SAID_YES ? WARM : 0u);
}

static RwSaid
said_of (guint index,
         guint bit)
{
  return (index & bit) != 0 ? RW_SAID_YES : RW_SAID_NO;
}

RwSetup
rw_setups_get_setup (guint index)
{
  return (RwSetup) { said_of (index, POWER), said_of (index, BOARD), said_of (index, WARM) };
}

static gboolean
suits (RwSaid   wanted,
       gboolean is)
{
  return wanted == RW_SAID_NOT || (wanted == RW_SAID_YES) == is;
}

guint
rw_setups_wanted (const RwCheck *check)
{
  guint wanted = 0;

  for (guint s = 0; s < RW_N_SETUPS; s++)
    if (suits (check->power, (s & POWER) != 0) && suits (check->board, (s & BOARD) != 0)
        && suits (check->warm, (s & WARM) != 0))
      wanted |= 1u << s;
  return wanted;
}

/* Minutes of one step; INFINITY when it takes more than one. */
static double
step_minutes (guint from,
              guint to)
{
  switch (from ^ to)
    {
    case 0:
      return 0;
    case POWER:
      return (to & POWER) != 0 ? power_on : power_off;
    case BOARD:
      return (from & POWER) == 0 ? move_board : (double) INFINITY;
    case BOARD | POWER:
      return (from & POWER) != 0 ? move_board : (double) INFINITY;
    case WARM:
      if ((to & WARM) != 0)
        return (from & POWER) != 0 ? warm_up : (double) INFINITY;
      return (from & POWER) == 0 ? cool_down : (double) INFINITY;
    default:
      return INFINITY;
    }
}

/* The cheapest way of steps, by relaxing all of them as often as a way can be long. */
double
rw_setups_minutes (guint from,
                   guint to)
{
  double minutes[RW_N_SETUPS];

  for (guint s = 0; s < RW_N_SETUPS; s++)
    minutes[s] = s == from ? 0 : (double) INFINITY;
  for (guint round = 1; round < RW_N_SETUPS; round++)
    for (guint a = 0; a < RW_N_SETUPS; a++)
      for (guint b = 0; b < RW_N_SETUPS; b++)
        minutes[b] = MIN (minutes[b], minutes[a] + step_minutes (a, b));
  return minutes[to];
}

guint
rw_setups_find_nearest (guint from,
                        guint wanted)
{
  guint best = from;
  double least = INFINITY;

  for (guint to = 0; to < RW_N_SETUPS; to++)
    if ((wanted & (1u << to)) != 0 && rw_setups_minutes (from, to) < least)
      {
        least = rw_setups_minutes (from, to);
        best = to;
      }
  return best;
}

gboolean
rw_setups_match (const RwCheck *check,
                 RwSetup        setup)
{
  return (rw_setups_wanted (check) & (1u << rw_setups_index (setup))) != 0;
}

guint
rw_setups_strictness (const RwCheck *check)
{
  return (check->power != RW_SAID_NOT) + (check->board != RW_SAID_NOT)
         + (check->warm != RW_SAID_NOT);
}
