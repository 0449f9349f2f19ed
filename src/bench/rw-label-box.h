/* rw-label-box.h: the label of a job as it will be printed, with what makes it: who, save, copy.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "trouble" (char *): it could not be saved. Signal "done" (char *): it was; where.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_LABEL_BOX (rw_label_box_get_type ())
G_DECLARE_FINAL_TYPE (RwLabelBox, rw_label_box, RW, LABEL_BOX, GtkWidget)

void rw_label_box_set_job (RwLabelBox *self, RwJob *job); /* (nullable) */
void rw_label_box_refresh (RwLabelBox *self);

/* Asks for a name and saves the label there, as PDF. */
void rw_label_box_save (RwLabelBox *self);

G_END_DECLS
