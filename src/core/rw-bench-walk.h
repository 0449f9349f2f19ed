/* rw-bench-walk.h: the bench state after each landmark of a session in turn, as far as its warnings and verdicts go.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What rw_bench_state_new () would say of the session up to that landmark, at a cost that does not grow with what came
 * before. Left out is what no id and no rail of a warning depends on: trim sets that can warn of nothing.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

typedef struct _RwBenchWalk RwBenchWalk;

/* At the beginning of @session, which must stay as it is. (transfer full) */
RwBenchWalk *rw_bench_walk_new (RwSession *session);
void         rw_bench_walk_free (RwBenchWalk *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwBenchWalk, rw_bench_walk_free)

/* Past the next landmark. Returns its event index; FALSE: there is none. The session up to there is
 * rw_bench_walk_get_part (). */
gboolean rw_bench_walk_step (RwBenchWalk *self, guint *index);

RwSession *rw_bench_walk_get_part (RwBenchWalk *self); /* borrowed */

/* As it is here: all but the warnings, which are those of the last look. Borrowed; changes with each step. */
const RwBenchState *rw_bench_walk_get_state (const RwBenchWalk *self);

/* Looks for warnings here. */
void rw_bench_walk_look (RwBenchWalk *self);

G_END_DECLS
