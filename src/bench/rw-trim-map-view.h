/* rw-trim-map-view.h: the trim map on screen.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-job.h"

G_BEGIN_DECLS

#define RW_TYPE_TRIM_MAP_VIEW (rw_trim_map_view_get_type ())
G_DECLARE_FINAL_TYPE (RwTrimMapView, rw_trim_map_view, RW, TRIM_MAP_VIEW, GtkWidget)

/* @job: (nullable). */
void rw_trim_map_view_set_job (RwTrimMapView *self, RwJob *job);

G_END_DECLS
