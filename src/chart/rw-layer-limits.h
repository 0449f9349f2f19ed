/* rw-layer-limits.h: the two limits, the middle, and the space outside.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

typedef enum
{
  RW_LIMIT_STRONG,
  RW_LIMIT_MIDDLE,
  RW_LIMIT_WEAK,
  RW_N_LIMITS
} RwLimit;

/* Pixels. A line off the plot is not shown. */
typedef struct
{
  gboolean shown[RW_N_LIMITS];
  gboolean named[RW_N_LIMITS]; /* its words are there too: there is room for them */
  double   y[RW_N_LIMITS];
  char    *words[RW_N_LIMITS];
  double   words_x[RW_N_LIMITS], words_y[RW_N_LIMITS], align; /* as in rw_chart_text_ink () */
  gboolean plates;     /* the words lie on the plot and need a ground of their own */
  RwRect   outside[2]; /* above and below the limits; may have no height */
} RwLimitsLayer;

void rw_limits_layer_layout (RwLimitsLayer *self, const RwScene *scene);
void rw_limits_layer_clear (RwLimitsLayer *self);
void rw_limits_layer_ink (const RwLimitsLayer *self, const RwScene *scene,
                          cairo_t *cr); /* under the traces */
void rw_limits_layer_ink_words (const RwLimitsLayer *self, const RwScene *scene,
                                cairo_t *cr); /* over them */

G_END_DECLS
