/* rw-entry-row.h: where readings are typed: rail, place, value, keep.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Enter keeps what is typed and goes on to the next rail. A value that looks like a slip is asked about
 * first: Enter takes the value that was probably meant, Ctrl+Enter keeps it as typed, Escape goes back to it.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_ENTRY_ROW (rw_entry_row_get_type ())
G_DECLARE_FINAL_TYPE (RwEntryRow, rw_entry_row, RW, ENTRY_ROW, GtkWidget)

void rw_entry_row_set_job (RwEntryRow *self, RwJob *job); /* (nullable) */

/* Puts the cursor into the entry. */
void rw_entry_row_focus (RwEntryRow *self);

/* Whether the meter's value and what was kept are left unsaid, for a class that looks at this window. */
void rw_entry_row_set_veiled (RwEntryRow *self, gboolean veiled);

/* Where in this widget the button for a note is. */
void rw_entry_row_get_note_place (RwEntryRow *self, GdkRectangle *place);

/* A key pressed elsewhere that starts a number: replaces what the entry holds. */
void rw_entry_row_start (RwEntryRow *self, const char *text);

/* Whether the keyboard is in the entry, and whether it holds anything. */
gboolean rw_entry_row_has_focus (RwEntryRow *self);
gboolean rw_entry_row_is_empty (RwEntryRow *self);

/* Says something beside the entry; the next reading's state replaces it. */
void rw_entry_row_say (RwEntryRow *self, const char *text);

/* Keeps what is typed, as Enter does; says so and does nothing when it is no number. */
void rw_entry_row_keep (RwEntryRow *self);

G_END_DECLS
