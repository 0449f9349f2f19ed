/* rw-symptom-side.h: the side of the window that thinks: symptoms, next check, causes, plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "aimed": a measuring check was taken, or symptoms were chosen; the entry should have the focus.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_SYMPTOM_SIDE (rw_symptom_side_get_type ())
G_DECLARE_FINAL_TYPE (RwSymptomSide, rw_symptom_side, RW, SYMPTOM_SIDE, GtkWidget)

void rw_symptom_side_set_job (RwSymptomSide *self, RwJob *job); /* (nullable) */

/* Whether the plan stands here; FALSE when it has a column of its own, and there is room. */
void rw_symptom_side_set_shows_plan (RwSymptomSide *self, gboolean shows_plan);

void rw_symptom_side_open_symptoms (RwSymptomSide *self);
void rw_symptom_side_open_repairs (RwSymptomSide *self);
void rw_symptom_side_take_check (RwSymptomSide *self);
void rw_symptom_side_take_other (RwSymptomSide *self, guint i); /* 0 or 1 */
void rw_symptom_side_ask_another (RwSymptomSide *self);

G_END_DECLS
