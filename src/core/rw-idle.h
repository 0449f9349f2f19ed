/* rw-idle.h: where a session waits, and how long it lasts when the waiting is shortened.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Session time is seconds since the session started; play time is what is left of them. The map between the two is
 * continuous, rises everywhere, and is one to one, so that either is found from the other.
 */
#pragma once

#include "rw-session.h"

G_BEGIN_DECLS

/* A stretch that is hurried through: seconds of the session. */
typedef struct
{
  double from;
  double to;
} RwIdleStretch;

typedef struct _RwIdle RwIdle;

/* Of all events of @session. O(events). */
RwIdle *rw_idle_new (RwSession *session);
void    rw_idle_free (RwIdle *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwIdle, rw_idle_free)

/* In order, none overlaps another. */
guint                rw_idle_get_n (const RwIdle *self);
const RwIdleStretch *rw_idle_get (const RwIdle *self, guint i);

/* Seconds into seconds. Outside the session both run alike. O(log stretches). */
double rw_idle_to_play (const RwIdle *self, double t);
double rw_idle_to_session (const RwIdle *self, double play);

/* Seconds that are saved over the whole session. */
double rw_idle_get_saved (const RwIdle *self);

G_END_DECLS
