/* rw-chart-names.h: the words of the knowledge for what a chart shows by an id.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chart.h"

G_BEGIN_DECLS

/* An RwChartNameFunc. @knowledge: an RwKnowledge, or NULL. */
char *rw_chart_name_known (RwEventType type, const char *id, gpointer knowledge);

G_END_DECLS
