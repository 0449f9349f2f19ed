/* rw-compare-list.h: all that two visits say of each other, in rows, what changed first.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-compare-causes.h"

G_BEGIN_DECLS

/* Fills @list anew: values under headings, then symptoms, causes, limits and what was not compared. Each row is a
 * stop for the arrow keys and says itself in one sentence. @knowledge: (nullable): names symptoms. */
void rw_compare_list_fill (GtkListBox *list, const RwCompare *compare, const RwCompareCauses *causes,
                           RwKnowledge *knowledge);

G_END_DECLS
