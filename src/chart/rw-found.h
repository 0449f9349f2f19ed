/* rw-found.h: what lies under a point, as the layers answer it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chart.h"
#include "rw-scene.h"

G_BEGIN_DECLS

typedef struct
{
  RwHitKind      kind;
  guint          index;    /* of the event in the session */
  const RwTrace *trace;    /* NULL for a vertical */
  double         x, y;     /* where it is drawn */
  double         distance; /* pixels from the point asked about; INFINITY: nothing found yet */
} RwFound;

/* Keeps the nearer one; on a tie the one that lies on top, that is the later offer. */
static inline void
rw_found_offer (RwFound       *best,
                const RwFound *offer)
{
  if (offer->distance <= best->distance)
    *best = *offer;
}

G_END_DECLS
