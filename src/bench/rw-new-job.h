/* rw-new-job.h: asks which cabinet and which meter before a job starts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "chosen": Start was pressed; the getter gives the header.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-session.h"

G_BEGIN_DECLS

#define RW_TYPE_NEW_JOB (rw_new_job_get_type ())
G_DECLARE_FINAL_TYPE (RwNewJob, rw_new_job, RW, NEW_JOB, GtkWindow)

/* The bench meter is kept in the book of meters. */
GtkWidget *rw_new_job_new (GtkWindow *parent);

/* What was chosen, started now. (transfer full) (nullable): there is no profile to choose. */
RwSessionHeader *rw_new_job_dup_header (RwNewJob *self);

G_END_DECLS
