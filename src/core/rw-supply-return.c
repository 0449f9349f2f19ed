/* rw-supply-return.c: whether a supply that was found dead is alive after a rest without power.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A protection that had tripped forgets while the power is off, and checks that pull the board switch it off. The dead
 * reading is then replaced by a good one, and nothing would tell any more that the supply had stopped.
 *
 * Dead and alive are shares of a rail's nominal volts: what a supply in fold-back still gives lies below the one, what a
 * low trim gives above the other. What is alive at the board is so at the terminals; a connector that was moved in
 * between can have mended what lies behind it, so that a spot behind it says nothing then.
 */
#include "config.h"

#include "rw-supply-return.h"

#include <math.h>

static const double dead_share = 0.3, alive_share = 0.8;

/* Size over nominal of a rail's volts under power; NaN for what tells neither life nor death. */
static double
life_of (const RwSpotState *spot)
{
  if (spot->rail == NULL || spot->reading.kind != RW_KIND_DC || spot->reading.place == RW_PLACE_WIRE
      || spot->reading.over || spot->setup.power_on == RW_SAID_NO)
    return NAN;
  return fabs (spot->reading.value / spot->rail->nominal);
}

static gboolean
same_load (const RwSpotState *a,
           const RwSpotState *b)
{
  return (a->setup.board_fitted == RW_SAID_NO) == (b->setup.board_fitted == RW_SAID_NO);
}

static gboolean
same_path (const RwSpotState  *before,
           const RwSpotState  *now,
           const RwSupplyLast *last)
{
  return before->reading.place == RW_PLACE_TERMINALS
         || (before->reading.place == now->reading.place && last->plugged < before->n);
}

static gboolean
shows_return (const RwSpotState  *before,
              const RwSpotState  *now,
              const RwSupplyLast *last)
{
  return before->rail == now->rail && same_load (before, now) && same_path (before, now, last)
         && last->rested > before->n && last->repaired < before->n && !before->changed_since
         && life_of (before) < dead_share && life_of (now) > alive_share;
}

gboolean
rw_supply_has_returned (const GArray       *views,
                        const RwSpotState  *now,
                        const RwSupplyLast *last)
{
  for (guint i = 0; i < views->len; i++)
    {
      const RwSpotState *before = &g_array_index (views, RwSpotState, i);
      const gboolean known = before->came_back && !before->changed_since && same_load (before, now)
                             && rw_reading_same_spot (&before->reading, &now->reading);

      if (known || shows_return (before, now, last))
        return TRUE;
    }
  return FALSE;
}
