/* rw-log-io.h: what the commands write: standard output, standard error, files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything is UTF-8, whatever the locale's character set.
 */
#pragma once

#include "rw-log.h"

G_BEGIN_DECLS

/* Once, before anything is written: help and GLib's own messages go the same way as ours. */
void rw_log_io_begin (void);

/* One line on standard error; the newline is added. */
void rw_log_complain (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* Writes to standard output and flushes it. @length −1: up to the NUL. Returns RW_LOG_DONE, or
 * RW_LOG_DAMAGED when the output could not be written, which has been said. */
int rw_log_print (const char *bytes, gssize length);

/* From now on numbers inside translated sentences have a point too: for JSON. */
void rw_log_plain_numbers (void);

/* TRUE when both names lead to one file, through links too. */
gboolean rw_log_same_file (const char *a, const char *b);

/* Writes a file as a whole or not at all; "-" is standard output; what is no regular file (a
 * pipe) is written straight. Returns as rw_log_print (). */
int rw_log_write (const char *path, const char *bytes, gsize length);

G_END_DECLS
