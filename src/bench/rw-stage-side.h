/* rw-stage-side.h: the side of the window that leads through the bring-up.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Follows the job. Signals:
 *  "aimed"          a spot was taken, the entry should have the focus
 *  "say" (gboolean trouble, char *)  something for the banner; NULL: it no longer holds
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_STAGE_SIDE (rw_stage_side_get_type ())
G_DECLARE_FINAL_TYPE (RwStageSide, rw_stage_side, RW, STAGE_SIDE, GtkWidget)

void rw_stage_side_set_job (RwStageSide *self, RwJob *job); /* (nullable) */

/* What the one big button does: states that the hazards were read, goes to the stage shown, or to the next one. */
void rw_stage_side_go_on (RwStageSide *self);

/* Asks for the reason to go on against advice; a second time, no longer. */
void rw_stage_side_ask_why (RwStageSide *self);

/* Aims at the first spot that still has to be read; of none, says so. */
void rw_stage_side_take_spot (RwStageSide *self);

/* Answers the first question that is open. FALSE: none is. */
gboolean rw_stage_side_answer (RwStageSide *self, gboolean yes);

void rw_stage_side_save_label (RwStageSide *self);
void rw_stage_side_save_record (RwStageSide *self);

G_END_DECLS
