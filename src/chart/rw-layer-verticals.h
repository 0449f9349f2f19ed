/* rw-layer-verticals.h: trims, marks, symptoms and other moments as labelled verticals.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signs stand above the plot in rows: screw heads of the trims just above it, all else in the one
 * or two lanes over them. A label stands beside its sign where it touches no other sign or label,
 * no line that comes down from a higher row, and not the picture's edge: whole if it fits, cut if
 * a good part of it fits, else not at all; then the pointer shows it. Of two signs that would
 * overlap in every row the more important one stays.
 */
#pragma once

#include "rw-found.h"

G_BEGIN_DECLS

typedef struct
{
  guint       index; /* of the event in the session */
  RwEventType type;
  guint       count; /* which turn, for a trim */
  double      x;
  guint       row;   /* lane, from the top; the scene's n_lanes for the trims */
  RwRect      sign;  /* width 0: left out, another sign stands there */
  RwRect      label; /* width 0: no room */
  char       *words; /* as shown; NULL without a label */
} RwVerticalMark;

typedef struct
{
  GArray *marks; /* of RwVerticalMark, in order of time */
} RwVerticalsLayer;

/* @words: what to say of an event, in short. (transfer full) */
typedef char *(*RwVerticalWordsFunc) (const RwChartVertical *vertical, gpointer user_data);

void rw_verticals_layer_layout (RwVerticalsLayer *self, const RwScene *scene,
                                RwVerticalWordsFunc words, gpointer user_data);
void rw_verticals_layer_clear (RwVerticalsLayer *self);
void rw_verticals_layer_ink_lines (const RwVerticalsLayer *self, const RwScene *scene, cairo_t *cr);
void rw_verticals_layer_ink_signs (const RwVerticalsLayer *self, const RwScene *scene, cairo_t *cr);
void rw_verticals_layer_lookup (const RwVerticalsLayer *self, const RwScene *scene, double x,
                                double y, RwFound *best);

G_END_DECLS
