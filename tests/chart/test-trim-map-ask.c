/* test-trim-map-ask.c: the chart of the trim: the needle, asking, words, drawing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "chart-fixture.h"
#include "rw-chart-export.h"
#include "rw-trim-map-private.h"
#include "trim-fixture.h"

#define WIDTH 860
#define HEIGHT 330

static const RwTrimMapLine *
line_of (const RwTrimMapLayout *layout, guint rail)
{
  for (guint i = 0; i < layout->lines->len; i++)
    if (g_array_index (layout->lines, RwTrimMapLine, i).rail == rail)
      return &g_array_index (layout->lines, RwTrimMapLine, i);
  g_assert_not_reached ();
}

/* Pixels of the line of @rail at @volts of the reference. */
static double
line_y (const RwTrimMapLayout *layout, guint rail, double volts)
{
  const RwTrimMapLine *line = line_of (layout, rail);
  const double         x = rw_axis_to_pixel (&layout->volts, volts);

  return line->y0 + (line->y1 - line->y0) * (x - line->x0) / (line->x1 - line->x0);
}

/* --- the needle
 * --------------------------------------------------------------------------------- */

static void
test_the_needle_follows_the_meter (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapNeedle *needle = &rw_trim_map_get_layout (map)->needle;

  g_assert_true (needle->shown && !needle->now.live); /* from the readings of the last position */
  g_assert_cmpfloat_with_epsilon (needle->now.x, 5.17, 0.01);
  g_assert_cmpstr (needle->words, ==, "now 5.17\u202fV");
  g_assert_cmpuint (needle->diamonds->len, ==, 0); /* all that have lines were read there */

  fixture_trim_live (map, 2, -4.90); /* −5 V = 0.22 − x */
  needle = &rw_trim_map_get_layout (map)->needle;
  g_assert_true (needle->now.live);
  g_assert_cmpfloat_with_epsilon (needle->now.x, 5.12, 0.01);
  g_assert_cmpfloat_with_epsilon (needle->x, rw_trim_map_x_at (map, needle->now.x), 1e-6);
  g_assert_cmpstr (needle->words, ==, "now about 5.12\u202fV");
  g_assert_cmpuint (needle->diamonds->len, ==, 3);
  for (guint i = 0; i < needle->diamonds->len; i++)
    {
      const RwTrimMapDiamond *diamond = &g_array_index (needle->diamonds, RwTrimMapDiamond, i);

      g_assert_true (diamond->measured == (diamond->rail == 2));
      g_assert_cmpfloat (diamond->y_lo, >, diamond->y);
      g_assert_cmpfloat (diamond->y_hi, <, diamond->y);
    }

  fixture_trim_live (map, 0, 5.15);
  needle = &rw_trim_map_get_layout (map)->needle;
  g_assert_cmpstr (needle->words, ==, "now 5.15\u202fV");
}

static void
test_the_set_given_live_may_go_away (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());

  fixture_trim_live (map, 2, -4.90);
  rw_trim_map_set_live (map, NULL);
  g_assert_false (rw_trim_map_get_layout (map)->needle.now.live);
  fixture_trim_live (map, 1, 12.0);
  rw_trim_map_set_set (map, NULL);
  g_assert_nonnull (rw_trim_map_get_layout (map)->instead);
}

static void
test_a_needle_far_off_stays_at_the_edge (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());

  fixture_trim_live (map, 0, 7.5);

  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);

  g_assert_cmpint (layout->needle.beyond, ==, 1);
  g_assert_cmpfloat (layout->volts.hi, <, 6);
  g_assert_cmpfloat (rw_rect_right (&layout->needle.plate), <=, WIDTH);
}

/* --- asking
 * ------------------------------------------------------------------------------------- */

static void
test_arrow_keys_visit_every_reading_once (void)
{
  for (guint k = 0; k < FIXTURE_TRIM_DRAWN; k++)
    {
      g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_drawn[k]());
      const guint n_points = rw_trim_map_get_set (map)->points->len;
      g_autoptr (GArray) seen = g_array_new (FALSE, FALSE, sizeof (guint));
      double last = -1;
      guint  n = 0;

      for (;;)
        {
          g_auto (RwTrimMapHit) hit = { 0 };

          if (!rw_trim_map_step (map, n, TRUE, &hit))
            break;
          g_assert_cmpint (hit.kind, ==, RW_TRIM_HIT_READING);
          g_assert_cmpfloat (hit.x, >=, last);
          last = hit.x;
          n = hit.n;
          g_array_append_val (seen, n);
        }
      g_assert_cmpuint (seen->len, ==, n_points);
      for (guint i = seen->len; i-- > 0;) /* and back */
        {
          g_auto (RwTrimMapHit) hit = { 0 };

          g_assert_true (rw_trim_map_step (map, i + 1 == seen->len ? 0 : n, FALSE, &hit));
          n = hit.n;
          g_assert_cmpuint (n, ==, g_array_index (seen, guint, i));
        }
    }
}

static void
check_hit (RwTrimMap *map, double x, double y, RwTrimHitKind kind, int rail, const char *words)
{
  g_auto (RwTrimMapHit) hit = { 0 };

  g_assert_true (rw_trim_map_lookup (map, x, y, &hit));
  g_assert_cmpint (hit.kind, ==, kind);
  g_assert_cmpint (hit.rail, ==, rail);
  g_assert_cmpfloat_with_epsilon (hit.x, x, 15);
  if (strstr (hit.text, words) == NULL)
    g_error ("“%s” is not in “%s”", words, hit.text);
}

static void
test_lookup_tells_what_is_there (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const RwRect          *plot = &layout->scene.plot;
  const double           y = plot->y + 4;
  g_auto (RwTrimMapHit) reading = { 0 };

  g_assert_true (rw_trim_map_locate (map, 13, &reading)); /* −5 V at the first position */
  check_hit (map, reading.x + 3, reading.y - 4, RW_TRIM_HIT_READING, 2, "−5 V: −4.72\u202fV ±");
  check_hit (map, layout->set_x + 2, y, RW_TRIM_HIT_SET_POINT, -1, "smallest margin");
  check_hit (map, layout->needle.x - 3, y, RW_TRIM_HIT_NEEDLE, -1, "now 5.17");
  check_hit (map, rw_trim_map_x_at (map, 5.0), line_y (layout, 1, 5.0), RW_TRIM_HIT_LINE, 1,
             "+12 V: expected 11.75\u202fV");
  check_hit (map, rw_trim_map_x_at (map, 5.0), y, RW_TRIM_HIT_WINDOW, -1,
             "from 4.97\u202fV (−5 V)");
  g_assert_false (rw_trim_map_lookup (map, plot->x - 20, y, &reading));
  g_assert_false (rw_trim_map_lookup (map, plot->x + 5, y, &reading));
  g_assert_false (rw_trim_map_lookup (map, NAN, NAN, &reading));
}

static void
test_lookup_tells_bounds (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_conflict ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const double           y = layout->scene.plot.y + 0.6 * layout->scene.plot.height;

  check_hit (map, layout->bounds[0].x, y, RW_TRIM_HIT_BOUND, 2, "needs");
  check_hit (map, layout->bounds[1].x, y, RW_TRIM_HIT_BOUND, 1, "allows");
}

static void
test_no_readings_is_said_in_words (void)
{
  g_autoptr (RwView) view = rw_view_new (NULL);
  g_autoptr (RwTrimMap) none = rw_trim_map_new (view);
  g_autoptr (RwTrimMap) untied = fixture_trim_map (fixture_trim_untied ());
  g_autofree char *words = rw_trim_map_dup_summary (none);
  g_autofree char *other = rw_trim_map_dup_summary (untied);
  g_auto (RwTrimMapHit) hit = { 0 };
  RwRect plot;

  rw_trim_map_set_size (none, WIDTH, HEIGHT);
  g_assert_nonnull (rw_trim_map_get_layout (none)->instead);
  g_assert_nonnull (strstr (words, "turn the trim"));
  g_assert_nonnull (strstr (other, "Read +5 V as well"));
  g_assert_false (rw_trim_map_lookup (none, 400, 200, &hit));
  g_assert_false (rw_trim_map_step (untied, 0, TRUE, &hit));
  g_assert_true (isnan (rw_trim_map_volts_at (none, 100)));
  rw_trim_map_get_plot (none, &plot);
  g_assert_cmpfloat (plot.width, ==, 0);
  for (guint i = 0; i < rw_trim_map_get_layout (none)->instead->len; i++)
    g_assert_cmpfloat (
        rw_chart_text_width (rw_trim_map_get_layout (none)->in.text, RW_TEXT_BODY,
                             g_ptr_array_index (rw_trim_map_get_layout (none)->instead, i)),
        <=, WIDTH);
}

static void
check_summary (RwTrimSet *set, const char *first, ...)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (set);
  g_autofree char *words = rw_trim_map_dup_summary (map);
  va_list          wanted;

  va_start (wanted, first);
  for (const char *one = first; one != NULL; one = va_arg (wanted, const char *))
    if (strstr (words, one) == NULL)
      g_error ("“%s” is not in “%s”", one, words);
  va_end (wanted);
}

static void
test_summary_tells_the_whole_picture (void)
{
  check_summary (fixture_trim_usual (), "Reference +5 V, at the board. ",
                 "from 4.97\u202fV (−5 V) to 5.20\u202fV (+5 V)",
                 "5.11\u202fV set point: smallest margin 58", "+12 V changes by 2.3",
                 "−5 V changes by −1.0", "(3 readings)", "now 5.17", "Not read yet: −12 V.",
                 NULL);
  check_summary (fixture_trim_conflict (), "No position suits all. ",
                 "−5 V needs ≥ 5.31\u202fV. ", "+12 V allows ≤ 5.12\u202fV. ",
                 "best without −5 V", NULL);
  check_summary (fixture_trim_outlier (), "−5 V: −5.60\u202fV", "outlier", NULL);
  check_summary (fixture_trim_once (), "One trim position so far", "(1 reading)", NULL);
  check_summary (fixture_trim_full (), "at the terminals · board out", NULL);
}

/* --- drawing
 * ------------------------------------------------------------------------------------ */

static cairo_surface_t *
picture_of (RwTrimMap *map, int width, int height)
{
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t         *cr = cairo_create (picture);

  rw_trim_map_ink (map, cr, width, height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
  return picture;
}

static void
count_cb (gpointer object, gpointer user_data)
{
  (*(guint *)user_data)++;
}

static void
test_changed_comes_once_until_the_next_ink (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  g_autoptr (RwTrimSet) other = fixture_trim_full ();
  guint n = 0;

  cairo_surface_destroy (picture_of (map, WIDTH, HEIGHT));
  g_assert_false (rw_trim_map_needs_ink (map));
  g_signal_connect (map, "changed", G_CALLBACK (count_cb), &n);
  rw_view_set_mode (rw_trim_map_get_view (map), RW_VIEW_VOLTS); /* of no matter here */
  rw_trim_map_set_set (map, rw_trim_map_get_set (map));
  rw_trim_map_set_size (map, WIDTH, HEIGHT);
  g_assert_cmpuint (n, ==, 0);
  rw_trim_map_set_set (map, other);
  rw_view_set_theme (rw_trim_map_get_view (map), RW_THEME_DARK);
  rw_view_set_rail (rw_trim_map_get_view (map), "m5");
  g_assert_cmpuint (n, ==, 1);
  g_assert_true (rw_trim_map_needs_ink (map));
  cairo_surface_destroy (picture_of (map, WIDTH, HEIGHT));
  fixture_trim_live (map, 0, 5.1);
  fixture_trim_live (map, 0, 5.1); /* the same again */
  g_assert_cmpuint (n, ==, 2);
  cairo_surface_destroy (picture_of (map, WIDTH, HEIGHT));
  fixture_trim_live (map, 0, 5.1);
  g_assert_cmpuint (n, ==, 2);
}

static void
test_cairo_is_left_as_it_was (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_conflict ());
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t         *cr = cairo_create (picture);
  g_auto (RwTrimMapHit) hit = { 0 };

  cairo_set_line_width (cr, 7);
  rw_trim_map_set_draw_text (map, TRUE);
  rw_trim_map_ink (map, cr, WIDTH, HEIGHT);
  g_assert_true (rw_trim_map_step (map, 0, TRUE, &hit));
  rw_trim_map_ink_cursor (map, cr, &hit);
  g_assert_cmpfloat (cairo_get_line_width (cr), ==, 7);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 0);
  g_assert_false (cairo_has_current_point (cr));
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (picture);
}

static void
test_any_size_and_any_readings_can_be_drawn (void)
{
  static const double sizes[][2] = {
    { 1, 1 }, { 30, 700 }, { 1600, 20 }, { NAN, INFINITY }, { 120, 90 }
  };
  g_autoptr (GRand) random = g_rand_new_with_seed (20260314);

  for (guint k = 0; k < 200; k++)
    {
      double      values[5 * FIXTURE_RAILS];
      const guint n = (guint)g_rand_int_range (random, 1, 6);

      for (guint i = 0; i < n * FIXTURE_RAILS; i++)
        {
          static const double nominal[] = { 5, 12, -5, -12 };
          const double        wild = g_rand_int_range (random, 0, 12) == 0 ? 30 : 0.15;

          values[i] =
              g_rand_int_range (random, 0, 4) == 0
                  ? (double)NAN
                  : nominal[i % FIXTURE_RAILS] * (1 + g_rand_double_range (random, -wild, wild));
        }

      g_autoptr (RwTrimMap) map =
          fixture_trim_map (fixture_trim_of (RW_PLACE_BOARD, RW_SAID_NOT, values, n));
      const double    *size = sizes[k % G_N_ELEMENTS (sizes)];
      g_autofree char *words = rw_trim_map_dup_summary (map);

      rw_trim_map_set_size (map, size[0], size[1]);
      g_assert_true (g_utf8_validate (words, -1, NULL) && words[0] != '\0');
      g_assert_null (strstr (words, "nan"));
      cairo_surface_destroy (picture_of (map, 300, 200));
    }
}

static void
test_a_map_goes_away_whole (void)
{
  RwTrimMap *map = fixture_trim_map (fixture_trim_usual ());

  fixture_trim_live (map, 2, -4.9);
  cairo_surface_destroy (picture_of (map, WIDTH, HEIGHT));
  g_assert_finalize_object (map);
}

static void
test_files_are_the_same_each_time (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwTrimSet) set = fixture_trim_usual ();

  for (guint format = 0; format < RW_N_CHART_FORMATS; format++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GBytes) one =
          rw_trim_map_export_bytes (session, NULL, set, (RwChartFormat)format, 900, 420, &error);
      g_autoptr (GBytes) time = rw_chart_export_bytes (session, NULL, (RwChartFormat)format, 900,
                                                       420, NULL, NULL, &error);
      g_autoptr (GBytes) none =
          rw_trim_map_export_bytes (session, NULL, NULL, (RwChartFormat)format, 900, 420, &error);
      g_autoptr (GBytes) again =
          rw_trim_map_export_bytes (session, NULL, set, (RwChartFormat)format, 900, 420, &error);

      g_assert_no_error (error);
      g_assert_true (g_bytes_equal (one, again));
      g_assert_false (g_bytes_equal (one, time));
      g_assert_false (g_bytes_equal (one, none));
    }
}

static void
test_a_file_of_no_size_is_refused (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (GError) error = NULL;

  g_assert_false (rw_trim_map_export (session, NULL, NULL, "/no/such/folder/trim.svg",
                                      RW_CHART_SVG, 0, 420, &error));
  g_assert_error (error, RW_CHART_ERROR, RW_CHART_ERROR_SIZE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trim-map-ask/the-needle-follows-the-meter",
                   test_the_needle_follows_the_meter);
  g_test_add_func ("/trim-map-ask/the-set-given-live-may-go-away",
                   test_the_set_given_live_may_go_away);
  g_test_add_func ("/trim-map-ask/a-needle-far-off-stays-at-the-edge",
                   test_a_needle_far_off_stays_at_the_edge);
  g_test_add_func ("/trim-map-ask/arrow-keys-visit-every-reading-once",
                   test_arrow_keys_visit_every_reading_once);
  g_test_add_func ("/trim-map-ask/lookup-tells-what-is-there", test_lookup_tells_what_is_there);
  g_test_add_func ("/trim-map-ask/lookup-tells-bounds", test_lookup_tells_bounds);
  g_test_add_func ("/trim-map-ask/no-readings-is-said-in-words",
                   test_no_readings_is_said_in_words);
  g_test_add_func ("/trim-map-ask/summary-tells-the-whole-picture",
                   test_summary_tells_the_whole_picture);
  g_test_add_func ("/trim-map-ask/changed-comes-once-until-the-next-ink",
                   test_changed_comes_once_until_the_next_ink);
  g_test_add_func ("/trim-map-ask/cairo-is-left-as-it-was", test_cairo_is_left_as_it_was);
  g_test_add_func ("/trim-map-ask/any-size-and-any-readings-can-be-drawn",
                   test_any_size_and_any_readings_can_be_drawn);
  g_test_add_func ("/trim-map-ask/a-map-goes-away-whole", test_a_map_goes_away_whole);
  g_test_add_func ("/trim-map-ask/files-are-the-same-each-time",
                   test_files_are_the_same_each_time);
  g_test_add_func ("/trim-map-ask/a-file-of-no-size-is-refused",
                   test_a_file_of_no_size_is_refused);
  return g_test_run ();
}
