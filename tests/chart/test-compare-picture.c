/* test-compare-picture.c: the charts of two sessions stand on one scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "chart-fixture.h"
#include "rw-compare-picture.h"

static const double sizes[][2] = { { 1234, 300 }, { 900, 420 }, { 640, 200 }, { 500, 700 } };

/* Two visits of unlike length, unlike range and with unlike names beside the plot. */
static RwComparePicture *
unlike (RwViewChart chart)
{
  g_autoptr (RwSession) a = fixture_trims ();
  g_autoptr (RwSession) b = fixture_empty ();
  static const double turns[] = { 4.4, 4.95, 5.15 };

  for (guint i = 0; i < G_N_ELEMENTS (turns); i++)
    {
      const double t = 100.0 * i;

      fixture_reading (b, t + 1, "p5", RW_PLACE_BOARD, turns[i]);
      fixture_reading (b, t + 2, "p12", RW_PLACE_BOARD, 2.3 * turns[i] + 0.4);
      fixture_reading (b, t + 3, "m5", RW_PLACE_BOARD, -turns[i]);
      fixture_event (b, rw_event_make_trim (t + 50));
    }
  fixture_reading (b, 1000, "p5", RW_PLACE_BOARD, 5.1);

  g_autoptr (RwCompare) compare = rw_compare_new (a, b, RW_COMPARE_METERS_BY_NAME);
  RwComparePicture *picture = rw_compare_picture_new (compare, NULL, NULL);

  rw_compare_picture_set_draw_text (picture, FALSE);
  rw_compare_picture_set_chart (picture, chart);
  return picture;
}

static void
assert_one_scale (RwComparePicture *picture,
                  double            width,
                  double            height)
{
  RwRect then, now;

  g_assert_true (rw_compare_picture_get_plot (picture, width, height, FALSE, &then));
  g_assert_true (rw_compare_picture_get_plot (picture, width, height, TRUE, &now));
  g_assert_cmpfloat_with_epsilon (then.width, now.width, 0.01);
  g_assert_cmpfloat_with_epsilon (then.height, now.height, 0.01);
  g_assert_false (rw_rect_overlap (&then, &now));
  if (now.x > rw_rect_right (&then)) /* beside each other: the limits run through */
    g_assert_cmpfloat_with_epsilon (then.y, now.y, 0.01);
  else
    g_assert_cmpfloat_with_epsilon (then.x, now.x, 0.01);
  g_assert_cmpfloat (rw_rect_right (&now), <=, width);
  g_assert_cmpfloat (rw_rect_bottom (&now), <=, height);
}

static void
test_plots_are_alike (void)
{
  for (guint chart = 0; chart < RW_N_VIEW_CHARTS; chart++)
    {
      g_autoptr (RwComparePicture) picture = unlike (chart);

      for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
        assert_one_scale (picture, sizes[i][0], sizes[i][1]);
    }
}

static void
test_seconds_a_pixel_are_alike (void)
{
  g_autoptr (RwComparePicture) picture = unlike (RW_VIEW_TIME);

  for (guint step = 0; step < 3; step++)
    {
      const double then = rw_compare_picture_get_pace (picture, 1234, 300, FALSE);
      const double now = rw_compare_picture_get_pace (picture, 1234, 300, TRUE);

      g_assert_cmpfloat (then, >, 0);
      g_assert_cmpfloat_with_epsilon (then, now, 1e-3 * then);
      rw_compare_picture_zoom (picture, 0.5);
      rw_compare_picture_pan (picture, 0.2);
    }
}

static void
test_charts_share_a_range (void)
{
  g_autoptr (RwSession) a = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (a);
  g_autoptr (RwChart) chart = rw_chart_new (a, view);
  double lo, hi, again_lo, again_hi;

  rw_chart_set_draw_text (chart, FALSE);
  rw_chart_set_size (chart, 800, 300);
  rw_chart_get_range (chart, &lo, &hi);
  rw_chart_set_range (chart, lo - 1, hi + 2);
  rw_chart_get_range (chart, &again_lo, &again_hi);
  g_assert_cmpfloat (again_lo, ==, lo - 1);
  g_assert_cmpfloat (again_hi, ==, hi + 2);
  rw_chart_set_range (chart, NAN, 3);
  rw_chart_get_range (chart, &again_lo, &again_hi);
  g_assert_cmpfloat (again_lo, ==, lo);
  g_assert_cmpfloat (again_hi, ==, hi);
}

static void
test_nothing_is_redrawn_without_a_change (void)
{
  g_autoptr (RwComparePicture) picture = unlike (RW_VIEW_TIME);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 900, 300);
  cairo_t *cr = cairo_create (surface);
  RwRect once, twice;

  rw_compare_picture_ink (picture, cr, 900, 300, RW_INK_SCREEN);
  g_assert_true (rw_compare_picture_get_plot (picture, 900, 300, FALSE, &once));
  rw_compare_picture_ink (picture, cr, 900, 300, RW_INK_SCREEN);
  g_assert_true (rw_compare_picture_get_plot (picture, 900, 300, FALSE, &twice));
  g_assert_cmpmem (&once, sizeof once, &twice, sizeof twice);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
count (gpointer user_data)
{
  ++*(guint *) user_data;
}

static void
test_a_change_is_told (void)
{
  g_autoptr (RwSession) a = fixture_trims ();
  g_autoptr (RwSession) b = fixture_trims ();
  g_autoptr (RwCompare) compare = rw_compare_new (a, b, RW_COMPARE_METERS_BY_NAME);
  guint told = 0;
  g_autoptr (RwComparePicture) picture = rw_compare_picture_new (compare, count, &told);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 900, 300);
  cairo_t *cr = cairo_create (surface);

  rw_compare_picture_set_draw_text (picture, FALSE);
  rw_compare_picture_ink (picture, cr, 900, 300, RW_INK_SCREEN);
  told = 0;
  rw_compare_picture_ink (picture, cr, 500, 700, RW_INK_SCREEN);
  g_assert_cmpuint (told, ==, 0); /* of its own doing */
  rw_compare_picture_zoom (picture, 0.5);
  g_assert_cmpuint (told, >, 0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_a_trim_map_without_readings (void)
{
  g_autoptr (RwSession) a = fixture_trims ();
  g_autoptr (RwSession) b = fixture_empty ();
  g_autoptr (RwCompare) compare = rw_compare_new (a, b, RW_COMPARE_METERS_BY_NAME);
  g_autoptr (RwComparePicture) picture = rw_compare_picture_new (compare, NULL, NULL);
  g_autofree char *summary = NULL;

  rw_compare_picture_set_chart (picture, RW_VIEW_TRIM);
  for (guint i = 0; i < RW_N_CHART_FORMATS; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GBytes) bytes = rw_compare_picture_export_bytes (picture, (RwChartFormat) i, 900, 500, &error);

      g_assert_no_error (error);
      g_assert_cmpuint (g_bytes_get_size (bytes), >, 500);
    }
  summary = rw_compare_picture_dup_summary (picture);
  g_assert_true (strlen (summary) > 20);
}

static void
test_the_earlier_map_is_past (void)
{
  g_autoptr (RwComparePicture) picture = unlike (RW_VIEW_TRIM);
  g_autofree char *summary = rw_compare_picture_dup_summary (picture);
  const char *end = strstr (summary, "at the end "), *now = strstr (summary, "now ");

  g_test_message ("%s", summary);
  g_assert_nonnull (end);
  g_assert_nonnull (now);
  g_assert_true (end < now);
  g_assert_null (strstr (end + 1, "at the end "));
  g_assert_null (strstr (now + 1, "now "));
}

static void
test_a_page_says_what_changed (void)
{
  g_autoptr (RwComparePicture) picture = unlike (RW_VIEW_TIME);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) one = rw_compare_picture_export_bytes (picture, RW_CHART_SVG, 900, 600, &error);
  g_autoptr (GBytes) two = rw_compare_picture_export_bytes (picture, RW_CHART_SVG, 900, 600, &error);
  g_autoptr (GBytes) none = rw_compare_picture_export_bytes (picture, RW_CHART_SVG, 0, 600, NULL);

  g_assert_no_error (error);
  g_assert_true (g_bytes_equal (one, two));
  g_assert_null (none);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/compare-picture/both plots are alike", test_plots_are_alike);
  g_test_add_func ("/compare-picture/both have the same seconds a pixel", test_seconds_a_pixel_are_alike);
  g_test_add_func ("/compare-picture/the earlier map says where that visit ended", test_the_earlier_map_is_past);
  g_test_add_func ("/compare-picture/a chart takes a given range and gives it back", test_charts_share_a_range);
  g_test_add_func ("/compare-picture/the layout stays without a change", test_nothing_is_redrawn_without_a_change);
  g_test_add_func ("/compare-picture/a change is told, its own doing is not", test_a_change_is_told);
  g_test_add_func ("/compare-picture/a trim map without readings", test_a_trim_map_without_readings);
  g_test_add_func ("/compare-picture/the same page gives the same bytes", test_a_page_says_what_changed);
  return g_test_run ();
}
