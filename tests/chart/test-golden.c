/* test-golden.c: pictures without text, so that no fonts matter, compared with stored ones.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * RAILWRIGHT_WRITE_GOLDEN=1 in the environment stores what is drawn now instead of comparing.
 * Look at the pictures before keeping them.
 */
#include "config.h"

#include <stdlib.h>

#include "chart-fixture.h"
#include "rw-chart.h"
#include "trim-fixture.h"

#define WIDTH 640
#define HEIGHT 320

/* Levels of 255. Small differences in soft edges between versions of cairo pass; anything moved
 * by a pixel does not. */
static const int clearly = 40;
static const double most_clear_share = 0.0005;
static const double most_mean = 0.15;

static char *
golden_path (const char *name)
{
  g_autofree char *file = g_strconcat (name, ".png", NULL);

  return g_test_build_filename (G_TEST_DIST, "chart", "golden", file, NULL);
}

static void
compare (cairo_surface_t *ours,
         cairo_surface_t *theirs,
         const char      *name)
{
  guint n_clear = 0;
  double sum = 0;

  g_assert_cmpint (cairo_image_surface_get_width (theirs), ==, WIDTH);
  g_assert_cmpint (cairo_image_surface_get_height (theirs), ==, HEIGHT);
  for (int y = 0; y < HEIGHT; y++)
    {
      const guint8 *a = cairo_image_surface_get_data (ours)
                        + y * cairo_image_surface_get_stride (ours);
      const guint8 *b = cairo_image_surface_get_data (theirs)
                        + y * cairo_image_surface_get_stride (theirs);

      for (int x = 0; x < WIDTH; x++)
        {
          int worst = 0;

          for (int k = 0; k < 4; k++)
            if (k
                != (G_BYTE_ORDER == G_LITTLE_ENDIAN ? 3
                                                    : 0)) /* the byte that RGB24 leaves unused */
              worst = MAX (worst, abs (a[4 * x + k] - b[4 * x + k]));
          sum += worst;
          n_clear += worst > clearly ? 1 : 0;
        }
    }
  g_test_message ("%s: mean difference %.3f, clearly different pixels %u", name,
                  sum / (WIDTH * HEIGHT), n_clear);
  g_assert_cmpfloat (sum / (WIDTH * HEIGHT), <=, most_mean);
  g_assert_cmpfloat (n_clear, <=, most_clear_share * WIDTH * HEIGHT);
}

static void
check_stored (cairo_surface_t *picture,
              const char      *name)
{
  g_autofree char *path = golden_path (name);

  cairo_surface_flush (picture);
  if (g_getenv ("RAILWRIGHT_WRITE_GOLDEN") != NULL)
    g_assert_cmpint (cairo_surface_write_to_png (picture, path), ==, CAIRO_STATUS_SUCCESS);

  cairo_surface_t *stored = cairo_image_surface_create_from_png (path);

  g_assert_cmpint (cairo_surface_status (stored), ==, CAIRO_STATUS_SUCCESS);
  compare (picture, stored, name);
  cairo_surface_destroy (stored);
}

static void
check_picture (RwSession  *session,
               RwView     *view,
               const char *name)
{
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture);

  rw_chart_set_draw_text (chart, FALSE);
  rw_chart_ink (chart, cr, WIDTH, HEIGHT, RW_INK_SCREEN);
  cairo_destroy (cr);
  check_stored (picture, name);
  cairo_surface_destroy (picture);
}

static void
check_map (RwTrimMap  *map,
           const char *name)
{
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (picture);

  rw_trim_map_ink (map, cr, WIDTH, HEIGHT);
  cairo_destroy (cr);
  check_stored (picture, name);
  cairo_surface_destroy (picture);
}

static void
test_trims (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);

  check_picture (session, view, "trims-light");
  rw_view_set_theme (view, RW_THEME_DARK);
  rw_view_set_rail (view, "p12");
  check_picture (session, view, "trims-dark-chosen");
}

static void
test_volts (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);

  rw_view_set_mode (view, RW_VIEW_VOLTS);
  rw_view_set_rail (view, "m5");
  rw_view_set_span (view, 60, 260);
  check_picture (session, view, "volts-m5");
}

static void
test_stream (void)
{
  g_autoptr (RwSession) session = fixture_stream (2000);
  g_autoptr (RwView) view = rw_view_new (session);

  check_picture (session, view, "stream-light");
  rw_view_set_theme (view, RW_THEME_DARK);
  rw_view_set_span (view, 62, 70);
  check_picture (session, view, "stream-dark-near");
}

static void
test_oddities (void)
{
  g_autoptr (RwSession) session = fixture_oddities ();
  g_autoptr (RwView) view = rw_view_new (session);

  rw_view_set_rail (view, "p5");
  rw_view_set_place (view, RW_PLACE_WIRE);
  rw_view_set_theme (view, RW_THEME_DARK_CONTRAST);
  check_picture (session, view, "oddities-contrast");
}

static void
test_empty (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);

  check_picture (session, view, "empty-light");
}

static void
test_trim_map (void)
{
  g_autoptr (RwTrimMap) usual = fixture_trim_map (fixture_trim_outlier ());
  g_autoptr (RwTrimMap) conflict = fixture_trim_map (fixture_trim_conflict ());

  fixture_trim_live (usual, 2, -4.80);
  rw_view_set_rail (rw_trim_map_get_view (usual), "m5");
  check_map (usual, "trim-map-live-light");
  rw_view_set_theme (rw_trim_map_get_view (conflict), RW_THEME_DARK);
  check_map (conflict, "trim-map-conflict-dark");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/golden/trims", test_trims);
  g_test_add_func ("/golden/volts", test_volts);
  g_test_add_func ("/golden/stream", test_stream);
  g_test_add_func ("/golden/oddities", test_oddities);
  g_test_add_func ("/golden/empty", test_empty);
  g_test_add_func ("/golden/trim-map", test_trim_map);
  return g_test_run ();
}
