/* rw-practice-view.h: working on the practice cabinet: its picture, hands and the meter's dial.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals:
 *  "warn" (char *text, gboolean danger)  something was stopped; the text explains (it was noted, too)
 *  "new-drill"                           a drill is wanted
 *  "end-drill"                           the drill is to be ended
 * Actions: "hands.power", "hands.board", "hands.trim" (d), "hands.pass" (d minutes), "hands.red", "hands.black",
 * "hands.off", "hands.wiggle", "hands.look", "hands.listen", "hands.write", "hands.mode", "hands.range".
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-bench-picture.h"

G_BEGIN_DECLS

#define RW_TYPE_PRACTICE_VIEW (rw_practice_view_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeView, rw_practice_view, RW, PRACTICE_VIEW, GtkWidget)

/* @job: (nullable) a practice job. Its leads are put by hand while it is here. */
void rw_practice_view_set_job (RwPracticeView *self, RwJob *job);

void     rw_practice_view_focus (RwPracticeView *self);     /* the picture */
gboolean rw_practice_view_has_picture_focus (RwPracticeView *self);
void     rw_practice_view_step (RwPracticeView *self, RwBenchWay way);

/* In a drill its end is offered. */
void rw_practice_view_set_drill (RwPracticeView *self, gboolean drill);

G_END_DECLS
