/* rw-raster.c: draws a trace as one vertical span a pixel column.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pixels are cairo's: one native 32-bit word each, alpha in the top byte (unused in RGB24), colour
 * premultiplied. Blending is Porter and Duff's OVER in 8 bits.
 *
 * A stroke of thickness w along a line of slope m (pixels down a column) is T = w·√(1 + m²) thick
 * measured vertically. The line crosses the column from y to y + m, so a row is covered fully
 * between y + m − T/2 and y + T/2, and the coverage falls to nothing over m on either side.
 */
#include "config.h"

#include "rw-raster.h"

#include <math.h>

/* Past this slope the ends of the strip would stick out of the corners of the line. */
static const double steepest_strip = 2.0;

RwBar
rw_raster_bar (double   y0,
               double   y1,
               gboolean through,
               double   thickness)
{
  const double top = MIN (y0, y1), bottom = MAX (y0, y1), rise = bottom - top;

  if (isnan (y0) || isnan (y1))
    return (RwBar){ NAN, NAN, 0 };
  if (!through || rise > steepest_strip || thickness < 1)
    return (RwBar){ top - thickness / 2, bottom + thickness / 2, 0 };

  const double half = thickness * sqrt (1 + rise * rise) / 2;

  return (RwBar){ top - half, bottom + half, rise };
}

/* Area of the trapezium above @y, in full pixels. */
static double
area_above (const RwBar *bar,
            double       y)
{
  const double height = bar->bottom - bar->top, ramp = bar->ramp;
  const double into = CLAMP (y - bar->top, 0, height), left = height - into;

  if (into < ramp)
    return into * into / (2 * ramp);
  if (left < ramp)
    return height - ramp - left * left / (2 * ramp);
  return into - ramp / 2;
}

double
rw_raster_coverage (const RwBar *bar,
                    int          y)
{
  if (bar->ramp <= 0) /* far ends would drown a difference of areas */
    return CLAMP (MIN (bar->bottom, y + 1) - MAX (bar->top, y), 0, 1);
  return area_above (bar, y + 1) - area_above (bar, y);
}

/* x·a/255, rounded, for bytes. */
static inline guint32
scale_byte (guint32 x,
            guint32 a)
{
  const guint32 product = x * a + 128;

  return (product + (product >> 8)) >> 8;
}

/* @paint is premultiplied, @left = 255 − its alpha. */
static inline guint32
over (guint32 below,
      guint32 paint,
      guint32 left)
{
  guint32 result = 0;

  for (guint shift = 0; shift < 32; shift += 8)
    {
      const guint32 kept = scale_byte ((below >> shift) & 0xff, left);

      result |= MIN (255, ((paint >> shift) & 0xff) + kept) << shift;
    }
  return result;
}

static guint32
premultiplied (RwColor color,
               double  coverage)
{
  const double a = CLAMP (color.a * coverage, 0, 1) * 255;
  const guint32 alpha = (guint32) lround (a);
  const guint32 r = (guint32) lround (CLAMP (color.r, 0, 1) * a);
  const guint32 g = (guint32) lround (CLAMP (color.g, 0, 1) * a);
  const guint32 b = (guint32) lround (CLAMP (color.b, 0, 1) * a);

  return alpha << 24 | r << 16 | g << 8 | b;
}

/* Pixels of one column: where they start, and how far it is to the next row. */
typedef struct
{
  guint32 *pixels;
  gsize    stride; /* in pixels */
} Column;

static inline void
blend (const Column *column,
       int           y,
       guint32       paint)
{
  guint32 *pixel = column->pixels + (gsize) y * column->stride;
  const guint32 left = 255 - (paint >> 24);

  *pixel = left > 0 ? over (*pixel, paint, left) : paint; /* most of a dense trace covers fully */
}

static void
draw_bar (const Column *column,
          const RwBar  *bar,
          RwColor       color,
          int           clip_top,
          int           clip_bottom)
{
  /* Compared as doubles: a value far off would not fit into an int. */
  const int first = (int) floor (CLAMP (bar->top, clip_top, clip_bottom));
  const int end = (int) ceil (CLAMP (bar->bottom, clip_top, clip_bottom));
  const double full_from = bar->top + bar->ramp, full_to = bar->bottom - bar->ramp;
  const guint32 full = premultiplied (color, 1);

  for (int y = first; y < end; y++)
    if (y >= full_from && y + 1 <= full_to)
      blend (column, y, full);
    else
      blend (column, y, premultiplied (color, rw_raster_coverage (bar, y)));
}

void
rw_raster_bars (cairo_surface_t *image,
                int              x,
                const RwBar     *bars,
                guint            n,
                RwColor          color,
                int              clip_top,
                int              clip_bottom)
{
  const cairo_format_t format = cairo_image_surface_get_format (image);

  g_return_if_fail (format == CAIRO_FORMAT_RGB24 || format == CAIRO_FORMAT_ARGB32);
  cairo_surface_flush (image);

  const int width = cairo_image_surface_get_width (image);
  const int top = MAX (clip_top, 0),
            bottom = MIN (clip_bottom, cairo_image_surface_get_height (image));
  guint32 *pixels = (void *) cairo_image_surface_get_data (image);
  const gsize stride = (gsize) cairo_image_surface_get_stride (image) / sizeof (guint32);

  for (guint i = 0; pixels != NULL && top < bottom && i < n; i++)
    {
      const gint64 at = (gint64) x + i;

      if (at < 0 || at >= width || isnan (bars[i].top))
        continue;
      draw_bar (&(Column){ pixels + at, stride }, &bars[i], color, top, bottom);
    }
  cairo_surface_mark_dirty (image);
}
