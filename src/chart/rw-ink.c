/* rw-ink.c: small things that every drawing function needs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-ink.h"

#include <math.h>

void
rw_ink_color (cairo_t *cr,
              RwColor  color)
{
  cairo_set_source_rgba (cr, color.r, color.g, color.b, color.a);
}

RwColor
rw_ink_faded (RwColor color,
              double  share)
{
  color.a *= share;
  return color;
}

RwColor
rw_ink_mixed (RwColor color,
              RwColor paper,
              double  share)
{
  const double left = 1 - share;

  return (RwColor){ color.r * share + paper.r * left, color.g * share + paper.g * left,
                    color.b * share + paper.b * left, 1 };
}

void
rw_ink_dashes (cairo_t             *cr,
               const RwSeriesStyle *style,
               double               unit)
{
  double dashes[RW_MAX_DASHES];

  for (int i = 0; i < style->n_dashes; i++)
    dashes[i] = style->dashes[i] * unit;
  cairo_set_dash (cr, dashes, style->n_dashes, 0);
}

double
rw_ink_crisp (double at)
{
  return floor (at) + 0.5;
}

void
rw_ink_line (cairo_t *cr,
             double   x0,
             double   y0,
             double   x1,
             double   y1)
{
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
}

RwMarkerFill
rw_ink_fill_of (RwPlace place)
{
  switch (place)
    {
    case RW_PLACE_TERMINALS:
      return RW_FILL_HOLLOW;
    case RW_PLACE_CHIP:
      return RW_FILL_HALF;
    case RW_PLACE_WIRE:
      return RW_FILL_DOTTED;
    case RW_PLACE_BOARD:
    case RW_N_PLACES:
    default:
      return RW_FILL_SOLID;
    }
}

/* A closed path about (0, 0) from corners as shares of the size. */
static void
polygon (cairo_t            *cr,
         const double (*corners)[2],
         guint               n,
         double              size)
{
  for (guint i = 0; i < n; i++)
    cairo_line_to (cr, corners[i][0] * size, corners[i][1] * size);
  cairo_close_path (cr);
}

/* Shapes have about the same area, so that none looks more important. */
static void
marker_path (cairo_t *cr,
             RwMarker marker,
             double   size)
{
  static const double square[][2] = { { -.44, -.44 }, { .44, -.44 }, { .44, .44 }, { -.44, .44 } };
  static const double triangle[][2] = { { 0, -.58 }, { .58, .44 }, { -.58, .44 } };
  static const double diamond[][2] = { { 0, -.64 }, { .58, 0 }, { 0, .64 }, { -.58, 0 } };
  static const double cross[][2] = {
    { -.19, -.58 }, { .19, -.58 }, { .19, -.19 }, { .58, -.19 }, { .58, .19 },   { .19, .19 },
    { .19, .58 },   { -.19, .58 }, { -.19, .19 }, { -.58, .19 }, { -.58, -.19 }, { -.19, -.19 }
  };

  switch (marker)
    {
    case RW_MARKER_SQUARE:
      polygon (cr, square, G_N_ELEMENTS (square), size);
      break;
    case RW_MARKER_TRIANGLE:
      polygon (cr, triangle, G_N_ELEMENTS (triangle), size);
      break;
    case RW_MARKER_DIAMOND:
      polygon (cr, diamond, G_N_ELEMENTS (diamond), size);
      break;
    case RW_MARKER_SALTIRE:
      cairo_rotate (cr, G_PI / 4);
      polygon (cr, cross, G_N_ELEMENTS (cross), size);
      break;
    case RW_MARKER_CROSS:
      polygon (cr, cross, G_N_ELEMENTS (cross), size);
      break;
    case RW_MARKER_CIRCLE:
    case RW_N_MARKERS:
    default:
      cairo_arc (cr, 0, 0, size / 2, 0, 2 * G_PI);
      cairo_close_path (cr);
    }
}

/* The current path's left half, in the current colour. */
static void
fill_half (cairo_t *cr,
           double   size)
{
  cairo_path_t *path = cairo_copy_path (cr);

  cairo_save (cr);
  cairo_clip (cr);
  cairo_rectangle (cr, -size, -size, size, 2 * size);
  cairo_fill (cr);
  cairo_restore (cr);
  cairo_append_path (cr, path);
  cairo_path_destroy (path);
}

void
rw_ink_marker (cairo_t     *cr,
               RwMarker     marker,
               RwMarkerFill fill,
               double       x,
               double       y,
               double       size,
               RwColor      color,
               RwColor      paper)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, size * 0.18);
  cairo_new_path (cr);
  marker_path (cr, marker, size);
  rw_ink_color (cr, fill == RW_FILL_SOLID ? color : paper);
  cairo_fill_preserve (cr);
  rw_ink_color (cr, color);
  if (fill == RW_FILL_HALF)
    fill_half (cr, size);
  cairo_stroke (cr);
  if (fill == RW_FILL_DOTTED)
    {
      cairo_arc (cr, 0, 0, size * 0.17, 0, 2 * G_PI);
      cairo_fill (cr);
    }
  cairo_restore (cr);
}
