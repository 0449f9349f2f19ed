/* rw-layer-readings.h: kept readings as markers with error bars.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Between two readings nothing was measured, so there is only a thin step in the rail's dash: a
 * value holds until something changed it (a trim, the power, the board, a repair), and the next
 * reading tells what it changed to. With two changes in between nobody can know, and the step has
 * a hole; so it has where a value is off the picture. Where samples were recorded in between,
 * their line stands instead.
 */
#pragma once

#include "rw-found.h"

G_BEGIN_DECLS

typedef struct
{
  guint    trace;
  guint    index;      /* of the event */
  double   x, y;       /* the marker; on the plot's edge when beyond */
  double   y_lo, y_hi; /* ends of the error bar, clamped to the plot; equal when there is none */
  int      beyond;     /* −1 below, 1 above, 0 */
  gboolean newest;     /* of its rail, over all places */
} RwReadingMark;

/* Straight piece of a step. */
typedef struct
{
  guint  trace;
  double x0, y0, x1, y1;
} RwReadingJoin;

typedef struct
{
  GArray *marks; /* of RwReadingMark, in drawing order */
  GArray *joins; /* of RwReadingJoin */
} RwReadingsLayer;

void rw_readings_layer_layout (RwReadingsLayer *self, const RwScene *scene);
void rw_readings_layer_clear (RwReadingsLayer *self);
void rw_readings_layer_ink_joins (const RwReadingsLayer *self, const RwScene *scene, cairo_t *cr);
void rw_readings_layer_ink_marks (const RwReadingsLayer *self, const RwScene *scene, cairo_t *cr);
void rw_readings_layer_lookup (const RwReadingsLayer *self, const RwScene *scene, double x,
                               double y, RwFound *best);

G_END_DECLS
