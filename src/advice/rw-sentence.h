/* rw-sentence.h: the one most useful sentence about how things stand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* What is seen beside the state. */
typedef struct
{
  const char       *rail; /* that the meter is on; NULL: the reference */
  const RwTrimSet  *set;  /* that live was worked out from; NULL with it */
  const RwTrimLive *live; /* what the meter shows now and what follows for the other rails; NULL: no meter */
} RwSentenceLive;

/* A translated sentence with its number. *danger: it must stay until the danger is over. @now: (nullable).
 * Order: dangers, a rail about to pass a limit while the screw is turned, warnings, drops outside, what to do
 * with the trim when a rail is outside, values outside (the most important rail first), the turn that is being
 * made, stale readings to take again, values too close to call, a better place for the trim, all well, nothing
 * measured yet. (transfer full) */
char *rw_sentence_new (const RwBenchState *state, const RwSentenceLive *now, gboolean *danger);

G_END_DECLS
