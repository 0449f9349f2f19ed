/* rw-verdict-style.c: the colour that goes with a verdict.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-verdict-style.h"

void
rw_verdict_style_set (GtkWidget *widget,
                      RwVerdict  verdict,
                      gboolean   stale)
{
  for (guint i = 0; i < RW_N_VERDICTS; i++)
    gtk_widget_remove_css_class (widget, rw_verdict_to_id ((RwVerdict) i));
  if (!stale)
    gtk_widget_add_css_class (widget, rw_verdict_to_id (verdict));
}
