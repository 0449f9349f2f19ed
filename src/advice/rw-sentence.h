/* rw-sentence.h: the one most useful sentence about how things stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* A translated sentence with its number. *danger: it must stay until the danger is over. Order: dangers,
 * warnings, values outside (the most important rail first), drops outside, stale readings to take again,
 * values too close to call, all well, nothing measured yet. (transfer full) */
char *rw_sentence_new (const RwBenchState *state, gboolean *danger);

G_END_DECLS
