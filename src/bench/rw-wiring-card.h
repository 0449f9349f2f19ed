/* rw-wiring-card.h: what is lost on the way from the supply to the board, and the ripple, in one card.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_WIRING_CARD (rw_wiring_card_get_type ())
G_DECLARE_FINAL_TYPE (RwWiringCard, rw_wiring_card, RW, WIRING_CARD, GtkWidget)

GtkWidget *rw_wiring_card_new (RwJob *job);

G_END_DECLS
