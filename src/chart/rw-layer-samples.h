/* rw-layer-samples.h: streams of samples as lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On screen one bar a pixel column, by the span rasteriser; on paper a path. A stream is a solid
 * line (dashes are for what was not measured), so where two streams are in sight a small marker
 * of the rail rides on each now and then. Single samples become dots where they are far enough
 * apart to be told from the line.
 */
#pragma once

#include "rw-found.h"
#include "rw-raster.h"

G_BEGIN_DECLS

/* A run of values past the edge. */
typedef struct
{
  guint  trace;
  double x, y;   /* tip of the arrow, on the plot's edge */
  int    beyond; /* −1 below, 1 above */
} RwSampleArrow;

/* A marker that rides on a stream, or a single sample's dot. */
typedef struct
{
  guint    trace;
  double   x, y;
  gboolean dot;
} RwSampleSign;

typedef struct
{
  GPtrArray *bars;   /* one a trace: RwBar[n_columns] in device pixels, or NULL without samples */
  GArray    *arrows; /* of RwSampleArrow */
  GArray    *signs;  /* of RwSampleSign */
} RwSamplesLayer;

void rw_samples_layer_layout (RwSamplesLayer *self, const RwScene *scene);
void rw_samples_layer_clear (RwSamplesLayer *self);

/* The lines, straight into @image, whose device scale is the scene's. */
void rw_samples_layer_raster (const RwSamplesLayer *self, const RwScene *scene,
                              cairo_surface_t *image);

/* The lines as paths. */
void rw_samples_layer_ink_lines (const RwSamplesLayer *self, const RwScene *scene, cairo_t *cr);

/* Markers, dots and arrows; on either target. */
void rw_samples_layer_ink_signs (const RwSamplesLayer *self, const RwScene *scene, cairo_t *cr);

/* Offers the sample nearest to (x, y), if it is nearer than what is there. */
void rw_samples_layer_lookup (const RwScene *scene, double x, double y, RwFound *best);

G_END_DECLS
