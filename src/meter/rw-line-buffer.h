/* rw-line-buffer.h: cuts a stream of bytes into lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CR, LF and both together end a line; empty lines are none. A line longer than
 * RW_LINE_BUFFER_MAX bytes is dropped up to its end and counted: a meter's line is short, and
 * a stream at the wrong speed may never end one.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define RW_LINE_BUFFER_MAX 256

typedef struct
{
  char     bytes[RW_LINE_BUFFER_MAX];
  gsize    n;
  gboolean skipping;  /* to the end of a torn or over-long line */
  gboolean explained; /* the newest line made sense */
  guint8   end;       /* the byte that ended it */
  guint64  too_long;  /* lines dropped */
  guint64  bytes_explained;
} RwLineBuffer;

/* @line has @n > 0 bytes, no terminator, no NUL after it. */
typedef void (*RwLineFunc) (const char *tainted_line, gsize n, gpointer data);

void rw_line_buffer_feed (RwLineBuffer *self,
                          const guint8 *tainted,
                          gsize         n,
                          RwLineFunc    callback,
                          gpointer      data);

/* To be called for a line, within the callback, when it made sense: its bytes and those of
 * its end (one, or CR and LF) are added to bytes_explained. */
void rw_line_buffer_explain (RwLineBuffer *self);

/* The input has ended: what is held counts as a line. */
void rw_line_buffer_end (RwLineBuffer *self, RwLineFunc callback, gpointer data);

/* Forgets what is held. With @torn, skips up to the next line end. */
void rw_line_buffer_restart (RwLineBuffer *self, gboolean torn);

G_END_DECLS
