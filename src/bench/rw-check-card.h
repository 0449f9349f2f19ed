/* rw-check-card.h: what to do next: a check with hazard, why, steps and outcomes, or a repair.
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

/* Whether there is room for steps and picture at once; else they are folded until the check is taken. */
void rw_check_card_set_roomy (RwCheckCard *self, gboolean roomy);

/* Whether there is something to do, so that the card wants all the room there is. */
gboolean rw_check_card_has_step (RwCheckCard *self);

/* Takes @least pixels for what to do, and goes on; with nothing to do, as many as the words want, @most at most. */
void rw_check_card_fit (RwCheckCard *self, int least, int most);

/* Shows the words from their top. */
void rw_check_card_scroll_up (RwCheckCard *self);

/* As if its first button were pressed. */
void rw_check_card_take (RwCheckCard *self);

/* The first or second check instead of it, 0 or 1. */
void rw_check_card_take_other (RwCheckCard *self, guint i);

/* "Ask another way", opened. */
void rw_check_card_ask_another (RwCheckCard *self);

/* The repair of a cause, whatever is suggested. */
void rw_check_card_show_repair (RwCheckCard *self, const char *cause);

G_END_DECLS
