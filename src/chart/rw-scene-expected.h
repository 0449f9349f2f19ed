/* rw-scene-expected.h: what the rails were expected to show while nobody measured them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

/* Fills the scene's list of expected stretches, from its traces and its span of time. Cost grows with
 * the width of the picture and the number of rails, not with the number of samples. */
void rw_scene_set_expected (RwScene *self);

G_END_DECLS
