/* rw-rail-density.h: how likely is a value at a spot, from all that is known of the cabinet?
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* Densities a volt, never 0. @rail NULL: the ground return (only along a wire). @u: own standard uncertainty of
 * the value; the meter's common part is in the readings that it is compared with too, and where there are none it
 * is small against the widths. */
double rw_rail_density_dc (const RwBenchState *state, const RwRail *rail, RwPlace place, double value, double u);
double rw_rail_density_ripple (const RwRail *rail, double value);

/* Of a value that none of the spots shows: leads in the air, or anything a mistake finds. */
double rw_rail_density_none (double value);

G_END_DECLS
