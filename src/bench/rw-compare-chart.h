/* rw-compare-chart.h: the charts of two visits side by side, on screen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keys: + and − zoom, Left and Right pan, Home fits; both charts alike.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-compare-picture.h"
#include "rw-knowledge.h"

G_BEGIN_DECLS

#define RW_TYPE_COMPARE_CHART (rw_compare_chart_get_type ())
G_DECLARE_FINAL_TYPE (RwCompareChart, rw_compare_chart, RW, COMPARE_CHART, GtkWidget)

/* Refs both. @knowledge: (nullable): names symptoms and causes. */
void rw_compare_chart_set_compare (RwCompareChart *self, RwCompare *compare, RwKnowledge *knowledge);

void        rw_compare_chart_set_chart (RwCompareChart *self, RwViewChart chart);
RwViewChart rw_compare_chart_get_chart (RwCompareChart *self);

/* A file of the page with both charts, as they are set now, on paper (light). @error: RW_CHART_ERROR. */
gboolean rw_compare_chart_save (RwCompareChart *self, const char *path, GError **error);

G_END_DECLS
