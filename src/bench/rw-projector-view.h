/* rw-projector-view.h: the picture on the projector.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-projection.h"

G_BEGIN_DECLS

#define RW_TYPE_PROJECTOR_VIEW (rw_projector_view_get_type ())
G_DECLARE_FINAL_TYPE (RwProjectorView, rw_projector_view, RW, PROJECTOR_VIEW, GtkWidget)

GtkWidget *rw_projector_view_new (RwProjection *projection);

G_END_DECLS
