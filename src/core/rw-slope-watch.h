/* rw-slope-watch.h: whether the lines of a trim set have an odd slope, while readings come in one by one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-book.h"

G_BEGIN_DECLS

typedef struct _RwSlopeWatch RwSlopeWatch;

RwSlopeWatch *rw_slope_watch_new (void);
void          rw_slope_watch_free (RwSlopeWatch *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwSlopeWatch, rw_slope_watch_free)

/* FALSE: the lines of this set, which has a reading at least, warn of nothing. TRUE: they do, unless what they warn of
 * is no rail that was read just now. */
gboolean rw_slope_watch_may_warn (RwSlopeWatch *self, RwTrimBook *book, RwProfile *profile, RwPlace place, RwSaid board);

/* The book has just come back to an earlier place. */
void rw_slope_watch_return (RwSlopeWatch *self, const RwTrimBook *book);

G_END_DECLS
