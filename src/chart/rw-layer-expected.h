/* rw-layer-expected.h: what nobody measured but the trim tells, in its band.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Never to be taken for something measured: the line is thin and its gaps are twice its strokes,
 * as with no rail's own dash; a band goes with it; at its end now stands an empty marker, smaller than a
 * reading's, and "expected" beside the rail's name.
 */
#pragma once

#include "rw-scene.h"

G_BEGIN_DECLS

/* Pixels; may lie off the plot by up to its height. */
typedef struct
{
  double x, y, y_lo, y_hi;
} RwExpectedDot;

typedef struct
{
  guint                    trace;
  const RwExpectedStretch *stretch; /* of the scene */
  RwExpectedDot           *dots;    /* one a knot */
} RwExpectedLine;

typedef struct
{
  GArray *lines; /* of RwExpectedLine, in drawing order */
} RwExpectedLayer;

/* What lies under a point. */
typedef struct
{
  const RwTrace *trace;
  RwExpectedKnot knot; /* there, between two of the stretch */
  double         x, y; /* on the line */
} RwExpectedFound;

void rw_expected_layer_layout (RwExpectedLayer *self, const RwScene *scene);
void rw_expected_layer_clear (RwExpectedLayer *self);

/* Bands and lines, under the readings and streams. */
void rw_expected_layer_ink (const RwExpectedLayer *self, const RwScene *scene, cairo_t *cr);

/* Markers at the ends that last. */
void rw_expected_layer_ink_ends (const RwExpectedLayer *self, const RwScene *scene, cairo_t *cr);

/* The line nearest to (x, y), within a finger's breadth. FALSE: none, and *found is untouched. */
gboolean rw_expected_layer_lookup (const RwExpectedLayer *self, const RwScene *scene, double x,
                                   double y, RwExpectedFound *found);

G_END_DECLS
