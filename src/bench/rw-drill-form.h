/* rw-drill-form.h: asks for the level and the seed of a drill.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: "chosen" (guint level, guint64 seed, gboolean suggestions).
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_DRILL_FORM (rw_drill_form_get_type ())
G_DECLARE_FINAL_TYPE (RwDrillForm, rw_drill_form, RW, DRILL_FORM, GtkWindow)

/* @seed: offered; somebody else's can be typed over it. */
GtkWidget *rw_drill_form_new (GtkWindow *parent, guint64 seed);

G_END_DECLS
