/* rw-record-box.h: the record of a job's bring-up, folded up until somebody wants it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was passed, skipped and gone on with against advice, and what that leaves unproven (rw-stage-record.h).
 *
 * Signals: "trouble" (text) when the file could not be written; "done" (text) when it was.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"
#include "rw-stages.h"

G_BEGIN_DECLS

#define RW_TYPE_RECORD_BOX (rw_record_box_get_type ())
G_DECLARE_FINAL_TYPE (RwRecordBox, rw_record_box, RW, RECORD_BOX, GtkWidget)

/* Hides itself while there is nothing to tell. */
void rw_record_box_show (RwRecordBox *self, RwJob *job, RwStages *stages);

/* Asks for a file and writes the record as PDF pages. Nothing without a record. */
void rw_record_box_save (RwRecordBox *self);

G_END_DECLS
