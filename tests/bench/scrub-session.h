/* scrub-session.h: a long session for the benchmarks of the replay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"

#define SCRUB_SAMPLES 1000000

/* A day at one cabinet, whatever the number of samples: a hundred looks, each a stream of one rail, then three kept
 * readings and a turn of the trim or a mark. */
RwSession *scrub_session_new (guint n_samples);

/* Milliseconds of the processor that this thread used, whatever else runs on the machine. */
double scrub_now_msec (void);
