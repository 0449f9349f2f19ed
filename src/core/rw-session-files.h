/* rw-session-files.h: the sessions that lie in folders, by their first lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing here reads more of a file than its first line.
 */
#pragma once

#include <gio/gio.h>

#include "rw-session.h"

G_BEGIN_DECLS

/* So many files are read for one question, those written last first; sixty cabinets a week for two years. */
#define RW_SESSION_FILES_MOST 6000

/* Files of @folders (NULL-terminated) that are named as sessions are, those written last first, whatever they hold. A
 * folder that is not there has none. (transfer full) (element-type filename) */
GPtrArray *rw_session_files_list (const char *const *folders);

/* NULL: it cannot be read, or is no session. (transfer full) (nullable) */
RwSessionHeader *rw_session_files_read_header (const char *path);

/* The file in @folders whose session has this id; of several the one written last. NULL: there is none, @id is "", or
 * @cancellable (nullable) was cancelled. May be called in a thread. (transfer full) (nullable) */
char *rw_session_files_find (const char *const *folders, const char *id, GCancellable *cancellable);

G_END_DECLS
