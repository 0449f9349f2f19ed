/* rw-scene-range.h: how far the vertical scale reaches.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

/* Sets limited, weak, middle, strong and the scale of a scene whose traces and plot are known. */
void rw_scene_set_range (RwScene *self);

G_END_DECLS
