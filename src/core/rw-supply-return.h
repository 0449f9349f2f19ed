/* rw-supply-return.h: whether a supply that was found dead is alive after a rest without power.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* Events up to now; 0: never. */
typedef struct
{
  guint rested;   /* the power went off */
  guint plugged;  /* the board went in */
  guint repaired; /* something was mended, or it was tried */
} RwSupplyLast;

/* @views: of RwSpotState, the newest reading of each spot with the board out and fitted. TRUE when one of them found
 * the supply dead where @now finds it alive in the same setup, with the power off in between and nothing mended; or
 * when the last reading of @now's spot said so already. */
gboolean rw_supply_has_returned (const GArray *views, const RwSpotState *now, const RwSupplyLast *last);

G_END_DECLS
