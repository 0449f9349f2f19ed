/* rw-lesson-chooser.h: which lesson?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal: "chosen" (gpointer lesson): an RwLesson, borrowed; the window closes itself.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-lesson.h"

G_BEGIN_DECLS

#define RW_TYPE_LESSON_CHOOSER (rw_lesson_chooser_get_type ())
G_DECLARE_FINAL_TYPE (RwLessonChooser, rw_lesson_chooser, RW, LESSON_CHOOSER, GtkWindow)

GtkWidget *rw_lesson_chooser_new (GtkWindow *parent);

G_END_DECLS
