/* rw-layer-axes.h: time along the bottom; in volts, numbers up the side.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

/* A tick and, where there is room, its number. */
typedef struct
{
  double at;      /* pixels along its axis */
  char  *words;
  double words_at; /* middle of the number along the axis, moved in from the picture's edge */
  gboolean shown; /* the number; the tick always is */
} RwAxisTick;

typedef struct
{
  GArray *time;  /* of RwAxisTick */
  GArray *scale; /* of RwAxisTick; empty in position */
  char   *unit_words; /* "since start"; NULL when there is no room */
  double  unit_x;     /* its right end */
  const char *scale_unit; /* "V" or "mV"; NULL in position */
  double  words_y;    /* middle of the times */
} RwAxesLayer;

void rw_axes_layer_layout (RwAxesLayer *self, const RwScene *scene);
void rw_axes_layer_clear (RwAxesLayer *self);
void rw_axes_layer_ink (const RwAxesLayer *self, const RwScene *scene, cairo_t *cr);

G_END_DECLS
