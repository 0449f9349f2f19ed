/* rw-compare-card.h: one rail at two visits: then and now beside each other, on one scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-compare.h"

G_BEGIN_DECLS

/* The item of @rail that says most: DC, at the board before the terminals, warm before cold. (nullable) */
const RwCompareItem *rw_compare_card_find (const RwCompare *compare, const char *rail);

GtkWidget *rw_compare_card_new (const RwCompare *compare, const RwCompareItem *item);

G_END_DECLS
