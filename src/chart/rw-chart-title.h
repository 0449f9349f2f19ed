/* rw-chart-title.h: the line above every picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

/* The scene's title in bold and its aside, quietly, at the right end; the title is cut to what the
 * aside leaves. */
void rw_chart_title_ink (const RwScene *scene, cairo_t *cr);

G_END_DECLS
