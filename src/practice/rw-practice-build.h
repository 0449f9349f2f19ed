/* rw-practice-build.h: a healthy cabinet made from a profile, no two alike.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-model.h"
#include "rw-profile.h"

G_BEGIN_DECLS

/* Parameters of a cabinet without faults: rails from @profile (its key "supply": "switcher" or
 * "linear"; at most RW_PRACTICE_MAX_RAILS are used), everything else drawn from @seed within what
 * good cabinets show, the trim set so that the reference rail reads about 5.04 V (in proportion
 * for another nominal) at the board, loaded and warm. The same profile and seed give the same
 * parameters on every machine. */
void rw_practice_build (RwPracticeParams *out, const RwProfile *profile, guint64 seed);

G_END_DECLS
