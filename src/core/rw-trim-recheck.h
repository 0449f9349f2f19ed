/* rw-trim-recheck.h: which rails have to be read again after a trim, and in what order.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean on;       /* the trim was turned, and rails were read at place */
  gboolean complete; /* every rail of the profile was read again at place, and nothing changed since */
  RwPlace  place;    /* where: the board when any rail was read there, else where the last reading was */
  guint    n_due;
  guint   *due;      /* indices in the profile, the one that tells most first; owned */
} RwTrimRecheck;

/* The order: while the reference is not known at this position it comes first, since all others are then
 * expected from it. Then the rail most likely to be outside its limits, as far as the trim's lines tell;
 * then by the profile's priority. Clear *out when done. */
void rw_trim_recheck_init (RwTrimRecheck *out, const RwBenchState *state);
void rw_trim_recheck_clear (RwTrimRecheck *self);

/* 1 for the first; 0 when the rail is not due. */
guint rw_trim_recheck_rank (const RwTrimRecheck *self, guint rail);

G_END_DECLS
