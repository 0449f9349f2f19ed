/* rw-live-target.h: where the rail that a job's meter is on should stand, seen and heard.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-target.h"

G_BEGIN_DECLS

/* Seconds after which a live value is old. */
#define RW_LIVE_TARGET_OLD 3.0

/* FALSE, *out untouched: nothing is live. *age (nullable): seconds since the value came. */
gboolean rw_live_target (RwJob *job, RwTarget *out, double *age);

G_END_DECLS
