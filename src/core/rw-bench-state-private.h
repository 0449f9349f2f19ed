/* rw-bench-state-private.h: a bench state while it is being made. For rw-bench-state.c and rw-bench-walk.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"
#include "rw-mistakes-book.h"

G_BEGIN_DECLS

struct _RwBenchState
{
  RwProfile  *profile;
  RwSetup     setup;
  GArray     *spots;    /* of RwSpotState */
  GArray     *views;    /* of RwSpotState: apart with the board out and fitted */
  GArray     *symptoms; /* of RwSymptomSeen */
  GArray     *findings; /* of RwFindingSeen */
  GArray     *repairs;  /* of RwRepairSeen */
  GArray     *warnings; /* of RwWarning */
  GPtrArray  *trim_sets; /* of RwTrimSet */
  RwMistakesBook *mistakes; /* only while the state is being made */
  guint       n_trims;
  guint       turned;   /* event of the last turn */
  guint       plugged;  /* event of the last time the board went in */
  guint       rested;   /* event of the last time the power went off */
  const char *stage;
};

/* Nothing has happened yet; no trim sets. (transfer full) */
RwBenchState *rw_bench_state_begin (RwProfile *profile);

/* The next live landmark, in order. */
void rw_bench_state_take (RwBenchState *self, RwSession *session, const RwEvent *event);

G_END_DECLS
