/* rw-ink.h: small things that every drawing function needs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <cairo.h>

#include "rw-rect.h"
#include "rw-theme.h"

G_BEGIN_DECLS

void    rw_ink_color (cairo_t *cr, RwColor color);
RwColor rw_ink_faded (RwColor color, double share); /* its alpha times @share */

/* @color laid on @paper at @share, opaque: for where nothing may shine through. */
RwColor rw_ink_mixed (RwColor color, RwColor paper, double share);

/* Sets the dash of a series, grown by @unit. */
void rw_ink_dashes (cairo_t *cr, const RwSeriesStyle *style, double unit);

/* Middle of the device pixel that @at falls into: where a line one pixel wide is sharp. */
double rw_ink_crisp (double at);

/* Straight line, stroked at once with the current colour, width and dash. */
void rw_ink_line (cairo_t *cr, double x0, double y0, double x1, double y1);

/* How a marker is filled says where the leads were. */
typedef enum
{
  RW_FILL_SOLID,  /* board */
  RW_FILL_HOLLOW, /* terminals */
  RW_FILL_HALF,   /* far chip */
  RW_FILL_DOTTED, /* along a wire: hollow with a dot */
} RwMarkerFill;

RwMarkerFill rw_ink_fill_of (RwPlace place);

/* @size: about the width; @paper fills what is hollow. Works with cairo's state left as it was. */
void rw_ink_marker (cairo_t *cr, RwMarker marker, RwMarkerFill fill, double x, double y,
                    double size, RwColor color, RwColor paper);

G_END_DECLS
