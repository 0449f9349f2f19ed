/* rw-lesson-pager.h: the bar that pages through a lesson: what to say, what to ask, which step of how many.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each step sets what the class sees, so that going back shows what it showed. A step that asks for a round of calls
 * opens it once, when it is first come to; going on past a round that is still open takes two presses, and gives it up.
 * After the last step comes the score.
 *
 * Signals:
 *  "called"  a round of calls was opened: its panel is wanted
 *  "ended"   the lesson is over; it has let go of its job
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-call-desk.h"
#include "rw-lesson.h"

G_BEGIN_DECLS

#define RW_TYPE_LESSON_PAGER (rw_lesson_pager_get_type ())
G_DECLARE_FINAL_TYPE (RwLessonPager, rw_lesson_pager, RW, LESSON_PAGER, GtkWidget)

GtkWidget *rw_lesson_pager_new (RwCallDesk *desk, RwProjection *projection);

/* Begins at the first step. @job: that rw_lesson_begin () opened, and what desk and projection show. */
void rw_lesson_pager_begin (RwLessonPager *self, RwLesson *lesson, RwJob *job);
void rw_lesson_pager_end (RwLessonPager *self); /* nothing when none runs */

RwJob *rw_lesson_pager_get_job (RwLessonPager *self); /* NULL: no lesson runs. Borrowed */

/* To the next or the previous step; FALSE at the ends, where nothing happens. */
gboolean rw_lesson_pager_page (RwLessonPager *self, gboolean forward);

G_END_DECLS
