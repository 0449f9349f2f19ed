/* rw-meter-found-card.h: one meter that was found, and what can be done with it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Its buttons call the actions "found.use" and "found.negative", with its number, of what it is in.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-meter-finder.h"

G_BEGIN_DECLS

/* @number: of @found in the finder; the first one is the likeliest. */
GtkWidget *rw_meter_found_card_new (const RwMeterFound *found, guint number);

G_END_DECLS
