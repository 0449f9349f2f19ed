/* rw-line.h: text that may be anything, line by line.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A line of it; { 0 } stands before the first one. */
typedef struct
{
  const char *tainted;
  gsize       length; /* without its end: \n, or \r\n */
  gsize       offset; /* bytes: of its first one */
  gsize       next;   /* of the one after its end */
  guint       number; /* from 1 */
  gboolean    ended;  /* had a \n */
} RwLine;

/* To the next line of the same text. FALSE: there is none, and *self stays. */
gboolean rw_line_next (RwLine *self, const char *tainted, gsize length);

/* Nothing, or spaces and tabs. */
gboolean rw_line_is_empty (const RwLine *self);

/* Bytes of the mark that some editors leave at the head of a text: 0 or 3. */
gsize rw_line_skip_mark (const RwLine *self);

G_END_DECLS
