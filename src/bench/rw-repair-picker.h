/* rw-repair-picker.h: every repair that suits the cabinet, to be searched and chosen, whatever is suggested.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: "repair" (char *cause): the repair of this cause was chosen; "closed": the list was closed.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_REPAIR_PICKER (rw_repair_picker_get_type ())
G_DECLARE_FINAL_TYPE (RwRepairPicker, rw_repair_picker, RW, REPAIR_PICKER, GtkWidget)

void rw_repair_picker_set_job (RwRepairPicker *self, RwJob *job); /* (nullable) */

/* Opens the list, the keyboard in its search. */
void rw_repair_picker_open (RwRepairPicker *self);

G_END_DECLS
