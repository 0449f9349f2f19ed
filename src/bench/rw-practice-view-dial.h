/* rw-practice-view-dial.h: the meter of the practice bench: its value, large, and what can be turned on it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_PRACTICE_DIAL (rw_practice_dial_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeDial, rw_practice_dial, RW, PRACTICE_DIAL, GtkWidget)

/* @job: (nullable) a practice job whose leads are put by hand. The dial is set to what was being measured. */
void rw_practice_dial_set_job (RwPracticeDial *self, RwJob *job);

/* Shows what the meter shows now. */
void rw_practice_dial_refresh (RwPracticeDial *self);

/* To the next mode, or the next range; wraps round. */
void rw_practice_dial_turn (RwPracticeDial *self, gboolean range);

G_END_DECLS
