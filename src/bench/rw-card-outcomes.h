/* rw-card-outcomes.h: what a check may show: foretold, or to be chosen from.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-advice.h"

G_BEGIN_DECLS

/* Fills the empty @box with a row for each outcome of at least 1 %: its chance, what follows, and, @detailed, what it
 * would mean. */
void rw_card_outcomes_foretell (GtkWidget *box, const RwAdvice *advice, const RwCheck *check, gboolean detailed);

typedef void (*RwOutcomeFunc) (const char *outcome, gpointer user_data);

/* Fills the empty @box with a button for each outcome; @func gets its interned id. @seen: what the practice cabinet
 * shows, which is said first; (nullable) */
void rw_card_outcomes_choose (GtkWidget *box, const RwCheck *check, const char *seen, RwOutcomeFunc func,
                              gpointer user_data);

/* The keyboard to the outcome that the practice cabinet shows, else to the first one. */
void rw_card_outcomes_focus (GtkWidget *box);

void rw_card_outcomes_clear (GtkWidget *box);

G_END_DECLS
