/* rw-chart-view.h: the chart on screen: pointer, keys, accessibility; the picture is src/chart's.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pointer: hover shows what lies there; drag pans; the wheel zooms about the pointer; double click fits.
 * Keys: Left and Right step from reading to reading, + and − zoom, Home fits, End follows the newest.
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_CHART_VIEW (rw_chart_view_get_type ())
G_DECLARE_FINAL_TYPE (RwChartView, rw_chart_view, RW, CHART_VIEW, GtkWidget)

void rw_chart_view_set_job (RwChartView *self, RwJob *job); /* (nullable) */

G_END_DECLS
