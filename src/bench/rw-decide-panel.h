/* rw-decide-panel.h: "What would you do now?", to be answered by keyboard.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-decide.h"

G_BEGIN_DECLS

#define RW_TYPE_DECIDE_PANEL (rw_decide_panel_get_type ())
G_DECLARE_FINAL_TYPE (RwDecidePanel, rw_decide_panel, RW, DECIDE_PANEL, GtkWidget)

void rw_decide_panel_set_decide (RwDecidePanel *self, RwDecide *decide); /* (nullable) */

/* To the list of answers, or to what goes on. */
void rw_decide_panel_focus (RwDecidePanel *self);

G_END_DECLS
