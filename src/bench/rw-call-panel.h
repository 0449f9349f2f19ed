/* rw-call-panel.h: the teacher's side of "call it first": ask, take calls, reveal, score.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything can be done from the keyboard: Enter adds a call and starts the next one, Escape closes the panel and
 * leaves an open round open.
 *
 * Signals:
 *  "close"     it wants to go away
 *  "hide-here" whether the rail is to be hidden in this window changed
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-call-desk.h"
#include "rw-call-words.h"

G_BEGIN_DECLS

#define RW_TYPE_CALL_PANEL (rw_call_panel_get_type ())
G_DECLARE_FINAL_TYPE (RwCallPanel, rw_call_panel, RW, CALL_PANEL, GtkWidget)

GtkWidget *rw_call_panel_new (RwCallDesk *desk, RwProjection *projection);

/* Makes it ready: the chosen rail is to be asked, or the next call to be typed. */
void rw_call_panel_begin (RwCallPanel *self);

/* Shows what is; takes no focus. */
void rw_call_panel_refresh (RwCallPanel *self);

/* The rail that is to be hidden in this window: while a round is open, no projector is, and the person wants it.
 * (nullable) borrowed */
const char *rw_call_panel_get_hidden_here (RwCallPanel *self);

/* Fills a grid with the table of @words. */
void rw_call_panel_fill_grid (GtkGrid *grid, const RwCallWords *words);

G_END_DECLS
