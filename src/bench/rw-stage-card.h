/* rw-stage-card.h: one stage of the bring-up: its hazards first, then its gate, what it needs, its steps, what it asks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Steps are hidden while the hazard statement is unread and while the gate stops; what is asked stays, unless the power
 * must go off, since an answer or a reading is how a gate opens.
 *
 * Signals:
 *  "spot" (guint i)              the spot @i of the stage was chosen
 *  "answer" (guint i, gboolean)  the question @i of the stage was answered
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-stages.h"

G_BEGIN_DECLS

#define RW_TYPE_STAGE_CARD (rw_stage_card_get_type ())
G_DECLARE_FINAL_TYPE (RwStageCard, rw_stage_card, RW, STAGE_CARD, GtkWidget)

/* @editable: something can be written. Built anew only when something else is to be said; TRUE when it was. */
gboolean rw_stage_card_show (RwStageCard *self, const RwStages *stages, RwStage stage, gboolean editable);

G_END_DECLS
