/* rw-branch.h: from any moment of a replay on by hand, or on the practice cabinet, in a new session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The new session begins with copies of what has happened up to that moment, and its header says where it came from.
 * The file that is replayed stays as it is.
 */
#pragma once

#include "rw-job.h"

G_BEGIN_DECLS

/* A session of its own with what has happened in the replay so far, its clock at the replay's moment. @now: when that
 * is. (transfer full) */
RwSession *rw_branch_copy (RwJob *replay, GDateTime *now);

/* Goes on by hand, journalled at @path. (transfer full) */
RwJob *rw_branch_bench (RwJob *replay, const char *path, GError **error);

/* Goes on at a practice cabinet of the replay's profile, set up as the events say: power, board, warm or cold, and the
 * trim so that the reference rail reads as it did last. What the cabinet cannot know of the other one is written to
 * the new session as a note. @fault: (nullable) a cause id; NULL: a healthy one. @seed: which cabinet. (transfer full) */
RwJob *rw_branch_practice (RwJob *replay, const char *fault, guint64 seed, const char *path, GError **error);

/* The faults that a practice cabinet of this profile can have. (transfer full) (element-type utf8) static ids */
GPtrArray *rw_branch_list_faults (RwProfile *profile);

G_END_DECLS
