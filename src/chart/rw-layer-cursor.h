/* rw-layer-cursor.h: where the pointer or the arrow keys are, over the inked picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chart.h"
#include "rw-scene.h"

G_BEGIN_DECLS

typedef struct
{
  double line_x; /* hairline from the top to the bottom of the plot */
  double ring_x, ring_y, ring_radius; /* radius 0: none */
  RwRect tag;    /* box of the words, inside the picture */
  char  *words;
} RwCursorLayer;

void rw_cursor_layer_layout (RwCursorLayer *self, const RwScene *scene, const RwChartHit *hit);
void rw_cursor_layer_clear (RwCursorLayer *self);
void rw_cursor_layer_ink (const RwCursorLayer *self, const RwScene *scene, cairo_t *cr);

G_END_DECLS
