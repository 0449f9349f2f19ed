/* rw-log-file.h: a session file or the knowledge, read for a command, and their damage told.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-journal-reader.h"
#include "rw-knowledge.h"

G_BEGIN_DECLS

typedef struct
{
  RwJournalRead *read;
  char          *name;       /* for messages: UTF-8, whatever the path is */
  char          *header;     /* (nullable): what is wrong with it; then another stands in */
  guint          torn_line;  /* number of the torn last line; 0: none */
  gsize          torn_bytes; /* how long what is left of it is */
  gsize          size;       /* bytes of the file */
  gsize          read_size;  /* bytes read as its content: not the same with another header */
} RwLogFile;

/* (transfer full) NULL, and said on standard error, when it cannot be read at all. */
RwLogFile *rw_log_file_load (const char *path);

/* The same, but a file whose header cannot be read is gone through all the same: only to say what
 * is damaged, since the rails and meters of the session are lost with the header. */
RwLogFile *rw_log_file_load_headless (const char *path);

void       rw_log_file_free (RwLogFile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwLogFile, rw_log_file_free)

gboolean rw_log_file_is_damaged (const RwLogFile *self);

/* Translated, (transfer full): "line 14 (byte 1820): …", and the same for the torn line. */
char *rw_log_file_describe (const RwLogFile *self, const RwDamage *damage);
char *rw_log_file_describe_torn (const RwLogFile *self);

/* Says what is damaged on standard error, with line numbers: the first few, and how many more. */
void rw_log_file_complain (const RwLogFile *self);

/* The shipped knowledge and the user's. What is wrong is said on standard error; NULL when there
 * is none. (transfer full) */
RwKnowledge *rw_log_load_knowledge (void);

G_END_DECLS
