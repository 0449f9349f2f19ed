/* rw-skipped.h: checks that cannot be done here, and are not asked again in this job.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Setting a check aside is an event like any other, so that a replay shows it and undo takes it back: a finding with
 * the outcome RW_SKIPPED_OUTCOME. It tells nothing of any cause, because no check has an outcome of that id. It holds
 * until the check is answered after all.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

#define RW_SKIPPED_OUTCOME "skipped"

gboolean rw_skipped_is (const RwFindingSeen *seen);

/* The checks that the state has as set aside. (transfer full) (element-type utf8 utf8) a set of interned ids */
GHashTable *rw_skipped_gather (const RwBenchState *state);

G_END_DECLS
