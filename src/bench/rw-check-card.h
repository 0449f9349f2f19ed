/* rw-check-card.h: what to do next: a check with why, hazard and outcomes, or a repair.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Taking a measuring check aims the entry at its rail and place; taking a looking check shows its outcomes to
 * choose. Signal "aimed": a measuring check was taken, or a check or repair answered; the entry should have the focus.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_CHECK_CARD (rw_check_card_get_type ())
G_DECLARE_FINAL_TYPE (RwCheckCard, rw_check_card, RW, CHECK_CARD, GtkWidget)

void rw_check_card_set_job (RwCheckCard *self, RwJob *job); /* (nullable) */

/* As if its first button were pressed. */
void rw_check_card_take (RwCheckCard *self);

G_END_DECLS
