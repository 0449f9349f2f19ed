/* rw-call-predict.h: what the program itself would have called.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From the events before the answering reading alone: the trim's lines at the round's place, and where the screw stands
 * as far as readings since the last turn tell (rw-trim-set.h). Nothing to say when no line of the rail is known yet, or
 * no rail was read since the turn.
 */
#pragma once

#include "rw-call.h"

G_BEGIN_DECLS

/* Volts as the meter would show them. */
typedef struct
{
  double value;
  double u;      /* standard, for that one reading: the line's and the reading's own part */
  double lo, hi; /* holds the reading 95 % of the time */
} RwCallPrediction;

/* Of a round that has an answer, or of an open one: then as of now. FALSE: nothing can be said. O(landmarks) and a fit. */
gboolean rw_call_predict (const RwCallRound *round, RwSession *session, RwCallPrediction *out);

G_END_DECLS
