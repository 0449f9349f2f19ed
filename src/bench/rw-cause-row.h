/* rw-cause-row.h: one cause with its chance, and, opened, why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "repair" (char *cause): its repair is to be shown.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_CAUSE_ROW (rw_cause_row_get_type ())
G_DECLARE_FINAL_TYPE (RwCauseRow, rw_cause_row, RW, CAUSE_ROW, GtkWidget)

GtkWidget *rw_cause_row_new (void);

/* What it shows while it is open, as a name; NULL while it is closed. (transfer full) (nullable) */
char *rw_cause_row_dup_open (RwCauseRow *self);

/* Whether it is open stays with the cause, not with the row: it is when what it shows then is among @open.
 * (element-type utf8 utf8) a set */
void rw_cause_row_open_if (RwCauseRow *self, GHashTable *open);

void rw_cause_row_show_cause (RwCauseRow *self, RwJob *job, guint rank);
void rw_cause_row_show_pair (RwCauseRow *self, RwJob *job, guint i);

G_END_DECLS
