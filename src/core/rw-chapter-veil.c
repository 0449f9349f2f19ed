/* rw-chapter-veil.c: what may be told of chapters to people who are asked what they would do next.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chapter-veil.h"

#include <glib/gi18n-lib.h>

gboolean
rw_chapter_veil_is_ahead (const RwChapterVeil *self,
                          const RwChapter     *chapter)
{
  g_return_val_if_fail (self != NULL && chapter != NULL, FALSE);
  return chapter->n_events > self->n_events;
}

/* It is known that it is over: the next one has begun, or the session has ended. */
static gboolean
is_over (const RwChapterVeil *self,
         const RwChapter     *chapter)
{
  return chapter->until < self->n_events || self->n_events >= rw_session_get_n_events (self->session);
}

/* The title of a chapter that goes on, whatever its full one counts. (transfer full) */
static char *
dup_begun (const RwChapterVeil *self,
           const RwChapter     *chapter)
{
  if (chapter->kind == RW_CHAPTER_TRIM)
    return g_strdup (_ ("Turns of the trim"));
  if (chapter->kind == RW_CHAPTER_MARK)
    return g_strdup (rw_session_get_event (self->session, chapter->index)->words.text);
  return g_strdup (chapter->title);
}

char *
rw_chapter_veil_dup_title (const RwChapterVeil *self,
                           const RwChapter     *chapter)
{
  g_return_val_if_fail (self != NULL && chapter != NULL, NULL);
  if (rw_chapter_veil_is_ahead (self, chapter))
    return g_strdup (chapter->index == 0 ? _ ("The beginning") : _ ("A later chapter")); /* the first one is begun */

  g_autofree char *full = rw_chapter_dup_title_without (chapter, rw_session_get_profile (self->session), self->hidden);

  if (is_over (self, chapter) || g_strcmp0 (full, chapter->title) != 0)
    return g_steal_pointer (&full);
  return dup_begun (self, chapter);
}

char *
rw_chapter_veil_dup_change (const RwChapterVeil *self,
                            const RwChapter     *chapter)
{
  g_return_val_if_fail (self != NULL && chapter != NULL, NULL);
  return is_over (self, chapter)
             ? rw_chapter_describe_change_without (chapter, rw_session_get_profile (self->session), self->hidden)
             : g_strdup ("");
}
