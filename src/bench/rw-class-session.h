/* rw-class-session.h: a copy of a session that holds only what a class may see.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is left out cannot be drawn, fitted or spoken of by anything that reads the copy:
 *   readings and samples of hidden rails, and those whose rail nobody knows;
 *   notes, marks in a person's words, symptoms, findings, stages, calls, and every event that is not known to be
 *   harmless.
 * A repair is kept without its cause, since it parts the readings before it from those after; a gap without its
 * reason. Events keep their numbers and times.
 */
#pragma once

#include "rw-session.h"

G_BEGIN_DECLS

typedef struct _RwClassSession RwClassSession;

/* Empty at first. Refs @source. */
RwClassSession *rw_class_session_new (RwSession *source);
void            rw_class_session_free (RwClassSession *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwClassSession, rw_class_session_free)

/* Which rails are hidden: (element-type utf8) a set of ids; copied. Works with the next catch-up. */
void rw_class_session_set_hidden (RwClassSession *self, GHashTable *hidden);

/* Takes in what the source gained and lost since the last call. O(events since then), or of all of them when a rail was
 * hidden or shown. TRUE: anything but samples changed. */
gboolean rw_class_session_catch_up (RwClassSession *self);

RwSession *rw_class_session_get_session (RwClassSession *self); /* borrowed; the same one for life */

G_END_DECLS
