/* rw-trim-book-private.h: the lines of a trim set, followed as readings come in. For rw-slope-watch.c.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-book.h"
#include "rw-trim-fit-private.h"

G_BEGIN_DECLS

/* How far the lines of a set were followed. */
typedef struct
{
  GArray     *readings; /* of RwTrimReading: what was fitted; the caller's */
  const char *meter;    /* (nullable) whose own parts are told apart from its common one */
  guint       lead;     /* readings by which it leads the next one */
  guint       at, first, position; /* of the book */
} RwTrimBookLine;

/* The fit that the lines of the set come from, which has a reading at least, and how it came about; clear *search when
 * done. O(readings). (transfer full) */
RwTrimFit *rw_trim_book_fit (RwTrimBook *self, RwPlace place, RwSaid board, RwTrimSearch *search, RwTrimBookLine *out);

/* The next reading of the set since @line; @opens: at another position than the one before. FALSE: there is none. */
gboolean rw_trim_book_next (RwTrimBook *self, RwPlace place, RwSaid board, RwTrimBookLine *line, RwTrimReading *out,
                            gboolean *opens);

/* FALSE: the book has come back to before @line, or begun anew. */
gboolean rw_trim_book_holds (const RwTrimBook *self, const RwTrimBookLine *line);

G_END_DECLS
