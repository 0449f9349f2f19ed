/* rw-practice-view-canvas.h: the picture of the practice bench with its spots.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Arrows go from spot to spot; Tab leaves it. Signals:
 *  "touch" (guint index, guint lead)  a lead is to go to a spot
 *  "chosen"                           another spot is selected
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-practice-view-scene.h"

G_BEGIN_DECLS

#define RW_TYPE_PRACTICE_CANVAS (rw_practice_canvas_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeCanvas, rw_practice_canvas, RW, PRACTICE_CANVAS, GtkWidget)

void rw_practice_canvas_set_job (RwPracticeCanvas *self, RwJob *job); /* (nullable) a practice job */

/* Draws anew what changed. */
void rw_practice_canvas_refresh (RwPracticeCanvas *self);

RwPracticeScene *rw_practice_canvas_get_scene (RwPracticeCanvas *self);    /* (nullable) borrowed */
int              rw_practice_canvas_get_selected (RwPracticeCanvas *self); /* −1: none */
void             rw_practice_canvas_step (RwPracticeCanvas *self, RwBenchWay way);

/* The accessible description of the whole picture; at most once a second. */
void rw_practice_canvas_describe (RwPracticeCanvas *self);

G_END_DECLS
