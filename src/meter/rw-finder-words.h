/* rw-finder-words.h: the finder's outcome as sentences for people.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-meter-finder.h"
#include "rw-sign-lesson.h"

G_BEGIN_DECLS

typedef struct _RwFinderWords RwFinderWords;

/* (transfer full) */
RwFinderWords *rw_finder_words_new (void);
void           rw_finder_words_free (RwFinderWords *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwFinderWords, rw_finder_words_free)

/* A port that was searched: why it could not be, and text that came and makes no reading; both nullable. */
void rw_finder_words_add (RwFinderWords *self, const char *trouble, const char *stranger);

/* @found (of RwMeterFound), the likeliest first. (transfer full) */
char *rw_finder_words_describe (const RwFinderWords *self, const GPtrArray *found);

/* What came of listening to a reading that should be negative. (transfer full) */
char *rw_finder_words_describe_lesson (RwSignLesson lesson, const char *trouble);

G_END_DECLS
