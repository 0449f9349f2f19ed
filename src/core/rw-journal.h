/* rw-journal.h: writes a session to its file while it grows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A thread of its own writes and syncs, so that a slow disk never holds the window up. It follows the
 * session's "added" signal. Invariants:
 *  1. lines stand in the file in the order of their numbers;
 *  2. an event counts as kept only after fdatasync returned; "kept" tells up to which number;
 *  3. samples alone wait at most 1 s, anything else is written at once;
 *  4. one writer a file: an exclusive lock, held as long as the journal lives;
 *  5. nothing is forgotten before it is on disk: on a write error the bytes stay in memory, are
 *     retried every 2 s, and the whole session can be moved to another file.
 *
 * Signals, always in the thread that made the journal:
 *  "kept" (guint n)    all events up to number n are on disk
 *  "trouble" (char *)  writing fails; the message says what and what to do; NULL: it works again
 */
#pragma once

#include "rw-journal-reader.h"

G_BEGIN_DECLS

#define RW_TYPE_JOURNAL (rw_journal_get_type ())
G_DECLARE_FINAL_TYPE (RwJournal, rw_journal, RW, JOURNAL, GObject)

/* Makes a new file for @session (it must not exist), writes what the session holds, follows it. */
RwJournal *rw_journal_create (RwSession *session, const char *path, GError **error);

/* Goes on with a file: reads it, cuts a torn tail off, locks it. *read receives what was found
 * (transfer full); its session is followed. */
RwJournal *rw_journal_open (const char *path, RwJournalRead **read, GError **error);

const char *rw_journal_get_path (RwJournal *self);
guint       rw_journal_get_kept (RwJournal *self);    /* highest number on disk */
const char *rw_journal_get_trouble (RwJournal *self); /* (nullable) */

/* Writes the whole session into a new file elsewhere and goes on there. The old file stays as it is. */
gboolean rw_journal_move (RwJournal *self, const char *path, GError **error);

/* Blocks until all is on disk. FALSE when the disk refuses (nothing is dropped). */
gboolean rw_journal_flush (RwJournal *self, GError **error);

/* Copies a session, unknown keys and events included, to a file, which is replaced as a whole or not at
 * all. Errors: G_FILE_ERROR. */
gboolean rw_journal_copy (RwSession *session, const char *path, GError **error);

G_END_DECLS
