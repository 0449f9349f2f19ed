/* rw-low-bin.h: a child that scrolls where there is too little height for it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It asks for the height that its child takes at its width, and does with a few lines of text of it. What counts as a
 * line follows the size of the text. The one child is given in the .ui file.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define RW_TYPE_LOW_BIN (rw_low_bin_get_type ())
G_DECLARE_FINAL_TYPE (RwLowBin, rw_low_bin, RW, LOW_BIN, GtkWidget)

/* Properties, both in lines: "least", which it does with; "most", which it never asks for more than (0: no bound). */

void rw_low_bin_scroll_to_top (RwLowBin *self);

/* What is asked for of a child that takes @child_least to @child_wanted pixels: at least @least of them and at most
 * @most, (0: no bound). */
void rw_low_bin_bound (int child_least, int child_wanted, int least, int most, int *minimum, int *natural);

G_END_DECLS
