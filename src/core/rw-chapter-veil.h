/* rw-chapter-veil.h: what may be told of chapters to people who are asked what they would do next.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Of a chapter that lies ahead, neither its title nor what changes in it. Of the present one, its title without what
 * counts to its end ("3 turns of the trim"). Of one that is over, everything.
 */
#pragma once

#include "rw-chapters.h"

G_BEGIN_DECLS

typedef struct
{
  RwSession  *session;  /* that the chapters are of; borrowed */
  const char *hidden;   /* (nullable) id of a rail that is not named either */
  guint       n_events; /* that have happened; G_MAXUINT: everything may be told */
} RwChapterVeil;

gboolean rw_chapter_veil_is_ahead (const RwChapterVeil *self, const RwChapter *chapter);

/* Translated. (transfer full) */
char *rw_chapter_veil_dup_title (const RwChapterVeil *self, const RwChapter *chapter);

/* What changed in it, in one line; "" when nothing did, or nothing may be told yet. (transfer full) */
char *rw_chapter_veil_dup_change (const RwChapterVeil *self, const RwChapter *chapter);

G_END_DECLS
