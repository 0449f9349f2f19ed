/* rw-foresight.h: the lines of the trim as the readings told them at any moment of a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was expected of a rail is to be seen beside what was then measured, so it must not know of it:
 * each position has the lines of the readings up to the one that told where the reference stands.
 * Lines are fitted when first asked for and kept, also for the next state as far as its readings are
 * the same, so that a session that grows costs one fit a position.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

typedef struct _RwForesight RwForesight;

/* The sets of @state, which is that of @session now, and those of every stretch before a repair that
 * helped, which a state no longer knows: what was expected then stays on the picture. @before:
 * (nullable): of an earlier state; its lines are taken over where they are the same, and it stays
 * valid. O(landmarks), and a set for each place and repair. */
RwForesight *rw_foresight_new (RwSession *session, const RwBenchState *state,
                               const RwForesight *before);
void         rw_foresight_free (RwForesight *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwForesight, rw_foresight_free)

guint            rw_foresight_get_n_sets (const RwForesight *self);
const RwTrimSet *rw_foresight_get_set (const RwForesight *self, guint set);

/* Seconds at which a repair ended all that the set says; INFINITY: it still holds. */
double rw_foresight_get_until (const RwForesight *self, guint set);

/* Points of @set at @position or an earlier one. */
guint rw_foresight_count_until (const RwForesight *self, guint set, guint position);

/* Points by which the reference at @position was first known; all until @position when it never was.
 * O(rails · points), once. */
guint rw_foresight_count_known (RwForesight *self, guint set, guint position);

/* The lines of the first @n_points points, at least one. Borrowed. O(points), once. */
const RwTrimFit *rw_foresight_get_fit (RwForesight *self, guint set, guint n_points);

G_END_DECLS
