/* rw-never-above.c: is a rail past what a board survives, and how sure is that?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A chance on both sides of 0, since a board dies of a magnitude: rw_chance_inside (volts, u, −most, most).
 */
#include "config.h"

#include "rw-never-above.h"

#include <math.h>

RwVerdict
rw_never_above_judge (const RwRail *rail,
                      double        volts,
                      double        u)
{
  const double most = rail->never_above;

  if (isinf (most) || isnan (volts))
    return RW_VERDICT_NONE;

  const double below = rw_chance_inside (volts, u, -most, most);

  return below >= RW_VERDICT_SURE       ? RW_VERDICT_INSIDE
         : below <= 1 - RW_VERDICT_SURE ? RW_VERDICT_OUTSIDE
                                        : RW_VERDICT_CLOSE;
}
