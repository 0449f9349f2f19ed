/* rw-symptom-picker.h: what the cabinet does: chips for what is seen, and a list to choose from.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "closed": the list was closed; the hands are free for the next reading.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_SYMPTOM_PICKER (rw_symptom_picker_get_type ())
G_DECLARE_FINAL_TYPE (RwSymptomPicker, rw_symptom_picker, RW, SYMPTOM_PICKER, GtkWidget)

void rw_symptom_picker_set_job (RwSymptomPicker *self, RwJob *job); /* (nullable) */

/* Opens the list. */
void rw_symptom_picker_open (RwSymptomPicker *self);

G_END_DECLS
