/* rw-notes-session.h: the session that a file of notes belongs to, wherever it lies.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "rw-annotations.h"

G_BEGIN_DECLS

/* Looks in a thread for the session of @id: first in NAME.rwlog beside @notes, which is NAME.rwnotes, then in the folder
 * of @notes, and in those where jobs and practice are kept. Reads first lines alone. */
void rw_notes_session_find_async (const char *notes, const char *id, GCancellable *cancellable,
                                  GAsyncReadyCallback callback, gpointer user_data);

/* NULL without an error: there is none. (transfer full) (nullable) */
char *rw_notes_session_find_finish (GAsyncResult *result, GError **error);

/* Which session is wanted, and what to do, when it was not found. (transfer full) */
char *rw_notes_session_describe_missing (const char *notes, const RwAnnotationsHead *head);

G_END_DECLS
