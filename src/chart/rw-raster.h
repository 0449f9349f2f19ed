/* rw-raster.h: draws a trace as one vertical span a pixel column, straight into an image.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A path stroker works for every corner of a line; a dense trace is nothing but corners. Here the
 * work is one span a column whatever the number of samples.
 */
#pragma once

#include <cairo.h>

#include "rw-theme.h"

G_BEGIN_DECLS

/* One column, in device pixels, y downwards. Coverage is a trapezium: it rises over `ramp` from
 * top on, is full, and falls over `ramp` to bottom. That is the exact coverage of a sloping
 * stroke that crosses the column; ramp 0 is a plain bar with soft ends. top is NaN for nothing. */
typedef struct
{
  double top, bottom;
  double ramp; /* 0 ≤ ramp ≤ (bottom − top) / 2 */
} RwBar;

/* The bar of a line @thickness pixels strong whose middle covers [@y0, @y1] in this column
 * (either order). @through: it only passes from one to the other. Gentle slopes keep the stroke's
 * even weight; a steep or busy column gets its range and half the thickness at either end. */
RwBar rw_raster_bar (double y0, double y1, gboolean through, double thickness);

/* Share of pixel row [y, y + 1] that @bar covers, 0…1. */
double rw_raster_coverage (const RwBar *bar, int y);

/* Blends @n bars in @color over columns x, x + 1, … of @image, rows [clip_top, clip_bottom) only.
 * The image must be RGB24 or ARGB32; its device scale is left out of account. */
void rw_raster_bars (cairo_surface_t *image, int x, const RwBar *bars, guint n, RwColor color,
                     int clip_top, int clip_bottom);

G_END_DECLS
