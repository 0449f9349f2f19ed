/* rw-rail-card.h: one rail: label, last value, verdict, place and age, margin gauge. A button: it aims the leads.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_RAIL_CARD (rw_rail_card_get_type ())
G_DECLARE_FINAL_TYPE (RwRailCard, rw_rail_card, RW, RAIL_CARD, GtkButton)

/* @rail: interned id of the profile's rail. Follows the job. */
GtkWidget *rw_rail_card_new (RwJob *job, const char *rail);

/* Ages and the live value; called as time goes by. */
void rw_rail_card_refresh (RwRailCard *self);

G_END_DECLS
