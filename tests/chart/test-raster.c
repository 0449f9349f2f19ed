/* test-raster.c: the rasteriser against areas counted point by point and blends in doubles.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "rw-raster.h"

#define FINE 400

/* Coverage of the trapezium in row @y, by the height of its profile at many points. */
static double
counted_coverage (const RwBar *bar,
                  int          y)
{
  double sum = 0;

  for (int i = 0; i < FINE; i++)
    {
      const double at = y + (i + 0.5) / FINE;
      const double inside = MIN (at - bar->top, bar->bottom - at);

      if (inside > 0)
        sum += bar->ramp > 0 ? MIN (inside / bar->ramp, 1) : 1;
    }
  return sum / FINE;
}

static void
test_coverage_is_the_area (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint i = 0; i < 500; i++)
    {
      const double top = g_rand_double_range (random, -3, 8),
                   height = g_rand_double_range (random, 0, 7);
      const RwBar bar = { top, top + height,
                          i % 3 == 0 ? 0 : g_rand_double_range (random, 0, height / 2) };

      for (int y = -4; y < 18; y++)
        g_assert_cmpfloat_with_epsilon (rw_raster_coverage (&bar, y), counted_coverage (&bar, y),
                                        0.006);
    }
}

/* A stroke of thickness w along a slope, counted on a fine grid over one column. */
static double
counted_stroke (double y0,
                double y1,
                double thickness,
                int    row)
{
  const double slope = y1 - y0, across = thickness / 2 * sqrt (1 + slope * slope);
  guint in = 0;

  for (int i = 0; i < 100; i++)
    for (int k = 0; k < 100; k++)
      if (fabs (row + (k + 0.5) / 100 - (y0 + slope * (i + 0.5) / 100)) <= across)
        in++;
  return in / 1e4;
}

static void
test_sloping_bar_is_a_stroke (void)
{
  static const double slopes[] = { 0, 0.1, -0.4, 1, -1.7 };

  for (guint i = 0; i < G_N_ELEMENTS (slopes); i++)
    {
      const double y0 = 5.3, y1 = y0 + slopes[i];
      const RwBar bar = rw_raster_bar (y0, y1, TRUE, 1.5);

      for (int row = 0; row < 12; row++)
        g_assert_cmpfloat_with_epsilon (rw_raster_coverage (&bar, row),
                                        counted_stroke (y0, y1, 1.5, row), 0.02);
    }
}

static void
test_busy_column_is_its_range (void)
{
  const RwBar bar = rw_raster_bar (30, 10, FALSE, 2);

  g_assert_cmpfloat (bar.top, ==, 9);
  g_assert_cmpfloat (bar.bottom, ==, 31);
  g_assert_cmpfloat (bar.ramp, ==, 0);
  g_assert_true (isnan (rw_raster_bar (NAN, 1, FALSE, 2).top));
}

static guint32
pixel (cairo_surface_t *image,
       int              x,
       int              y)
{
  const guint32 *row = (const void *) (cairo_image_surface_get_data (image)
                                       + (gsize) y
                                             * (gsize) cairo_image_surface_get_stride (image));

  return row[x];
}

static cairo_surface_t *
painted (cairo_format_t format,
         RwColor        color)
{
  cairo_surface_t *image = cairo_image_surface_create (format, 12, 20);
  cairo_t *cr = cairo_create (image);

  cairo_set_source_rgba (cr, color.r, color.g, color.b, color.a);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  return image;
}

static double
channel (guint32 word,
         guint   shift)
{
  return (word >> shift & 0xff) / 255.0;
}

static void
test_blend_is_source_over (void)
{
  const RwColor ground = { 0.9, 0.8, 0.7, 1 }, ink = { 0.1, 0.3, 0.9, 0.8 };
  cairo_surface_t *image = painted (CAIRO_FORMAT_RGB24, ground);
  const RwBar bar = { 4.25, 11.6, 0 };

  rw_raster_bars (image, 3, &bar, 1, ink, 0, 20);
  for (int y = 0; y < 20; y++)
    {
      const double alpha = ink.a * rw_raster_coverage (&bar, y);
      const guint32 word = pixel (image, 3, y);

      g_assert_cmpfloat_with_epsilon (channel (word, 16), ink.r * alpha + ground.r * (1 - alpha),
                                      0.006);
      g_assert_cmpfloat_with_epsilon (channel (word, 8), ink.g * alpha + ground.g * (1 - alpha),
                                      0.006);
      g_assert_cmpfloat_with_epsilon (channel (word, 0), ink.b * alpha + ground.b * (1 - alpha),
                                      0.006);
      g_assert_cmpuint (pixel (image, 2, y), ==, pixel (image, 4, y));
    }
  cairo_surface_destroy (image);
}

/* cairo fills a rectangle at pixel edges exactly: ours must be the same, in both formats and with
 * alpha. */
static void
test_whole_pixels_match_a_filled_rectangle (void)
{
  static const cairo_format_t formats[] = { CAIRO_FORMAT_RGB24, CAIRO_FORMAT_ARGB32 };
  const RwColor ground = { 0.2, 0.4, 0.6, 0.5 }, ink = { 0.9, 0.1, 0.2, 0.6 };
  const RwBar bars[3] = { { 3, 9, 0 }, { 4, 5, 0 }, { NAN, NAN, 0 } };

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    {
      cairo_surface_t *ours = painted (formats[f], ground), *theirs = painted (formats[f], ground);
      cairo_t *cr = cairo_create (theirs);

      cairo_set_source_rgba (cr, ink.r, ink.g, ink.b, ink.a);
      cairo_rectangle (cr, 2, 3, 1, 6);
      cairo_rectangle (cr, 3, 4, 1, 1);
      cairo_fill (cr);
      cairo_destroy (cr);
      cairo_surface_flush (theirs);
      rw_raster_bars (ours, 2, bars, 3, ink, 0, 20);
      for (int y = 0; y < 20; y++)
        for (int x = 0; x < 12; x++)
          for (guint shift = 0; shift < (formats[f] == CAIRO_FORMAT_RGB24 ? 24u : 32u); shift += 8)
            g_assert_cmpfloat_with_epsilon (channel (pixel (ours, x, y), shift),
                                            channel (pixel (theirs, x, y), shift), 1.5 / 255);
      cairo_surface_destroy (ours);
      cairo_surface_destroy (theirs);
    }
}

static void
test_nothing_is_drawn_outside_the_clip (void)
{
  cairo_surface_t *image = painted (CAIRO_FORMAT_RGB24, (RwColor){ 1, 1, 1, 1 });
  const guint32 white = pixel (image, 0, 0);
  RwBar bars[40];

  for (guint i = 0; i < G_N_ELEMENTS (bars); i++)
    bars[i] = (RwBar){ i % 2 == 0 ? -1e300 : 6.5, i % 3 == 0 ? 1e300 : 9.5, 0 };
  rw_raster_bars (image, -10, bars, G_N_ELEMENTS (bars), (RwColor){ 0, 0, 0, 1 }, 5, 15);
  for (int x = 0; x < 12; x++)
    for (int y = 0; y < 20; y++)
      g_assert_cmpint (pixel (image, x, y) == white, ==,
                       y < 5 || y >= 15 || rw_raster_coverage (&bars[x + 10], y) == 0);
  rw_raster_bars (image, 0, bars, G_N_ELEMENTS (bars), (RwColor){ 0, 0, 0, 1 }, -50, 500);
  cairo_surface_destroy (image);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/raster/coverage-is-the-area", test_coverage_is_the_area);
  g_test_add_func ("/raster/sloping-bar-is-a-stroke", test_sloping_bar_is_a_stroke);
  g_test_add_func ("/raster/busy-column-is-its-range", test_busy_column_is_its_range);
  g_test_add_func ("/raster/blend-is-source-over", test_blend_is_source_over);
  g_test_add_func ("/raster/whole-pixels-match-a-filled-rectangle",
                   test_whole_pixels_match_a_filled_rectangle);
  g_test_add_func ("/raster/nothing-is-drawn-outside-the-clip",
                   test_nothing_is_drawn_outside_the_clip);
  return g_test_run ();
}
