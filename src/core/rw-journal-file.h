/* rw-journal-file.h: the file under a journal: locked, appended to, cut back, found again. Not for others.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* Used by one thread at a time. Invariant: bytes 0 … good_end − 1 of the file are whole lines. */
typedef struct
{
  int      fd;
  char    *path;
  goffset  good_end;
  gboolean needs_newline; /* what stands at the end must be ended before the next line */
} RwJournalFile;

/* Makes @path (it must not exist, its folder may be missing too), locks it. Errors: RW_JOURNAL_ERROR. */
gboolean rw_journal_file_create (RwJournalFile *self, const char *path, GError **error);

/* Opens an existing file for appending and locks it; rw_journal_file_resume says where to go on. */
gboolean rw_journal_file_open (RwJournalFile *self, const char *path, GError **error);

/* Cuts off what stands behind @good_end (a torn line). */
void rw_journal_file_resume (RwJournalFile *self, goffset good_end, gboolean needs_newline);

/* Appends whole lines and returns once they are on the disk at self->path. On failure the file is cut back
 * to good_end, so that the same bytes can be tried again. A file that has vanished from its path is made
 * again from the open descriptor when its folder is back. */
gboolean rw_journal_file_append (RwJournalFile *self, const char *bytes, gsize length, GError **error);

void rw_journal_file_close (RwJournalFile *self);

G_END_DECLS
