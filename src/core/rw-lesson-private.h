/* rw-lesson-private.h: making a lesson. For rw-lesson*.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-lesson.h"

G_BEGIN_DECLS

RwLesson     *rw_lesson_new (const char *path); /* empty; (transfer full) */
RwLessonStep *rw_lesson_step_new (void);        /* empty; (transfer full) */

G_END_DECLS
