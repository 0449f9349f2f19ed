/* rw-other-ways.h: two checks that could be taken instead, and what each would cost more.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signal "chosen" (char *check).
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-advice.h"

G_BEGIN_DECLS

#define RW_N_OTHER_WAYS 2

#define RW_TYPE_OTHER_WAYS (rw_other_ways_get_type ())
G_DECLARE_FINAL_TYPE (RwOtherWays, rw_other_ways, RW, OTHER_WAYS, GtkWidget)

/* @advice: (nullable) shows nothing. What is left for trained people stands only behind what anybody may do. */
void rw_other_ways_show (RwOtherWays *self, const RwAdvice *advice);

/* The check of way @i, as if its button were pressed. NULL: there is none. (nullable) interned */
const char *rw_other_ways_get (RwOtherWays *self, guint i);

G_END_DECLS
