/* rw-lesson-begin.h: the job that a lesson is held on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-lesson.h"

G_BEGIN_DECLS

/* Opens its session, at the start, or a practice cabinet with the power on, whose session is written like any other.
 * The error says what is missing. (transfer full) */
RwJob *rw_lesson_begin (const RwLesson *lesson, GError **error);

/* To where a step wants a replay to be. FALSE: it has no such chapter. Does nothing for other jobs and steps. */
gboolean rw_lesson_go (RwJob *job, const RwLessonStep *step);

G_END_DECLS
