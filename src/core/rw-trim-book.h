/* rw-trim-book.h: sorts readings into trim sets and positions as the events of a session go by.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"
#include "rw-trim-set.h"

G_BEGIN_DECLS

typedef struct _RwTrimBook RwTrimBook;

RwTrimBook *rw_trim_book_new (RwProfile *profile);
void        rw_trim_book_free (RwTrimBook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwTrimBook, rw_trim_book_free)

/* The next live landmark, in order. @setup: as it is with this event. */
void rw_trim_book_take (RwTrimBook *self, RwSession *session, const RwEvent *event, const RwSetup *setup);

/* The sets so far, by place, board fitted first. (transfer full) (element-type RwTrimSet) */
GPtrArray *rw_trim_book_make_sets (RwTrimBook *self);

/* Only those sets that are @wanted (nullable: all). (transfer full) (element-type RwTrimSet) */
typedef gboolean (*RwTrimBookWanted) (RwTrimBook *self, RwPlace place, RwSaid board, gpointer data);
GPtrArray *rw_trim_book_make_sets_for (RwTrimBook *self, RwTrimBookWanted wanted, gpointer data);

/* Of one set: positions; readings of a rail, and the event of the newest one (untouched when there is none). O(1). */
guint rw_trim_book_count_positions (const RwTrimBook *self, RwPlace place, RwSaid board);
guint rw_trim_book_count_readings (const RwTrimBook *self, RwPlace place, RwSaid board, guint rail, guint *newest);

/* A place to come back to: what was taken after it is forgotten then. O(rails). (transfer full) */
typedef struct _RwTrimBookMark RwTrimBookMark;
RwTrimBookMark *rw_trim_book_mark (const RwTrimBook *self);
void            rw_trim_book_return (RwTrimBook *self, const RwTrimBookMark *mark);
void            rw_trim_book_mark_free (RwTrimBookMark *mark);

/* The board as a set knows it: at the board's edge or a chip it is fitted unless said otherwise. */
RwSaid rw_trim_book_board_at (RwPlace place, RwSaid board_fitted);

G_END_DECLS
