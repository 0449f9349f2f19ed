/* rw-journal-reader.h: a session file read back, damage and all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-limits.h"
#include "rw-session.h"

G_BEGIN_DECLS

typedef enum
{
  RW_JOURNAL_ERROR_READ,    /* the file cannot be read */
  RW_JOURNAL_ERROR_HEADER,  /* the first line is no session header: nothing can be shown */
  RW_JOURNAL_ERROR_LOCKED,  /* another program writes this file */
  RW_JOURNAL_ERROR_WRITE,   /* the disk refused */
  RW_JOURNAL_ERROR_LIMIT,   /* it asks for more than a session may: nothing may be written to it */
} RwJournalError;
#define RW_JOURNAL_ERROR (rw_journal_error_quark ())
GQuark rw_journal_error_quark (void);

typedef struct
{
  guint  line;    /* counts from 1; the header is line 1 */
  gsize  offset;  /* bytes from the start */
  char  *message; /* what is wrong with it */
} RwDamage;

typedef struct
{
  RwSession *session;       /* what could be read */
  GArray    *damaged;       /* of RwDamage: skipped lines */
  gboolean   torn_tail;     /* the last line had no newline and was not whole: dropped */
  gsize      good_end;      /* bytes up to and with the last whole line: where an appender goes on */
  gboolean   needs_newline; /* the last line is whole but its newline is missing */
  guint      n_unknown;     /* events not understood, kept */
  char      *stopped;       /* (nullable) a limit ended the reading early: where, which, and what to do. The last of
                             * the damaged lines says so too. good_end is not the file's then: never write to it. */
} RwJournalRead;

void rw_journal_read_free (RwJournalRead *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwJournalRead, rw_journal_read_free)

/* (transfer full) NULL with an error when not even the header can be read. O(bytes). Only a plain file is read: no
 * device, no pipe. */
RwJournalRead *rw_journal_read_file (const char *path, GError **error);
RwJournalRead *rw_journal_read_bytes (const char *tainted, gsize length, const char *name, GError **error);

/* The same with other limits than rw_limits. */
RwJournalRead *rw_journal_read_bytes_within (const char *tainted, gsize length, const char *name,
                                             const RwLimits *limits, GError **error);

/* The first @most bytes of a plain file, *whole FALSE when there are more. The error names the file. (transfer full) */
char *rw_journal_load_bytes (const char *path, gsize most, gsize *length, gboolean *whole, GError **error);

/* The first line of a plain file, with its \n if it has one; of one longer than @most bytes the first @most + 1. Little
 * more than the line is read, however large the file. The error names the file. (transfer full) */
char *rw_journal_load_first_line (const char *path, gsize most, gsize *length, GError **error);

G_END_DECLS
