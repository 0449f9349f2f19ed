/* rw-tab-out.h: lets Tab leave a list at once, as it leaves every other control.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Tab and Shift+Tab in @list go to the control after or before it; arrows still move within. */
void rw_tab_out_install (GtkWidget *list);

G_END_DECLS
