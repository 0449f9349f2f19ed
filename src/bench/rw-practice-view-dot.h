/* rw-practice-view-dot.h: one spot of the practice bench, for the keyboard and for a screen reader.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It draws nothing: the picture below it does. Its name says what it is, what its hazard is and which tip is on it.
 * Actions: "spot.red", "spot.black".
 * Signals: "touch" (guint index, guint lead): a lead is to go here (RwPracticeLead).
 *          "chosen" (guint index): it has the focus.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_PRACTICE_DOT (rw_practice_dot_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeDot, rw_practice_dot, RW, PRACTICE_DOT, GtkWidget)

GtkWidget *rw_practice_dot_new (guint index);

/* Tells accessibility only when it changed. */
void rw_practice_dot_set_name (RwPracticeDot *self, const char *name);

G_END_DECLS
