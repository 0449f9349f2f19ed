/* test-expected-chart.c: how the chart shows what is expected: drawn, named, found, told.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "expected-fixture.h"
#include "rw-chart.h"
#include "rw-layer-ends.h"
#include "rw-layer-expected.h"

static const RwEndLabel *
find_label (const RwEndsLayer *layer,
            guint              trace)
{
  for (guint i = 0; i < layer->labels->len; i++)
    if (g_array_index (layer->labels, RwEndLabel, i).trace == trace)
      return &g_array_index (layer->labels, RwEndLabel, i);
  g_assert_not_reached ();
}

static void
test_named_at_its_end_with_that_word (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  SceneFixture fixture;
  RwEndsLayer  layer;

  scene_fixture_open (&fixture, session);
  expected_read (session, 110, "p5", 5.08);

  const RwScene *scene = expected_look (&fixture, session);
  const guint p12 = scene_fixture_trace (&fixture, "p12", RW_PLACE_BOARD, RW_KIND_DC);
  const guint p5 = scene_fixture_trace (&fixture, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  int            beyond;

  rw_ends_layer_layout (&layer, scene);

  const RwEndLabel *label = find_label (&layer, p12);

  g_assert_true (label->expected && label->holds && !label->quiet);
  g_assert_cmpstr (label->name, ==, "+12 V");
  g_assert_cmpstr (label->place, ==, "expected");
  g_assert_cmpfloat_with_epsilon (
      label->y,
      rw_scene_y (scene, rw_scene_trace (scene, p12), rw_scene_expected_now (scene, p12)->value,
                  &beyond),
      1e-9);
  g_assert_false (find_label (&layer, p5)->expected);
  g_assert_null (find_label (&layer, p5)->place);
  rw_ends_layer_clear (&layer);
  scene_fixture_close (&fixture);
}

static RwChart *
open_chart (RwSession *session,
            RwView    *view)
{
  RwChart *chart = rw_chart_new (session, view);
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  rw_chart_set_state (chart, state);
  rw_chart_set_size (chart, EXPECTED_WIDTH, EXPECTED_HEIGHT);
  return chart;
}

static void
test_found_and_told_in_words (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autofree char *summary = NULL;
  g_auto (RwChartHit) hit = { 0 };
  gboolean found = FALSE;

  expected_read (session, 110, "p5", 5.08);
  fixture_event (session, rw_event_make_mark (150, "later"));

  g_autoptr (RwChart) chart = open_chart (session, view);
  const double x = rw_chart_x_at (chart, 130);

  for (double y = 0; y < EXPECTED_HEIGHT && !found; y++)
    {
      rw_chart_hit_clear (&hit);
      found = rw_chart_lookup (chart, x, y, &hit) && hit.kind == RW_HIT_EXPECTED
              && g_str_equal (hit.rail, "p12");
    }
  g_assert_true (found);
  g_assert_cmpuint (hit.n, ==, 0);
  g_assert_cmpfloat_with_epsilon (hit.t, 130, 1e-6);
  g_assert_cmpfloat_with_epsilon (hit.value, expected_truth ("p12", 5.08), 0.02);
  g_assert_cmpfloat (hit.u, >, 0);
  g_assert_cmpint ((int) hit.verdict, ==, RW_VERDICT_NONE);
  g_assert_nonnull (strstr (hit.text, "+12 V"));
  g_assert_nonnull (strstr (hit.text, "expected"));
  g_assert_nonnull (strstr (hit.text, "not measured"));
  g_assert_nonnull (strstr (hit.text, "±"));
  g_assert_nonnull (strstr (hit.text, "2:10"));
  summary = rw_chart_dup_summary (chart);
  g_assert_nonnull (strstr (summary, "+12 V, board: expected"));
  g_assert_nonnull (strstr (summary, "−5 V, board: expected"));
  g_assert_null (strstr (summary, "+5 V, board: expected"));
}

/* A reading lies on top of what was expected of it. */
static void
test_a_reading_is_found_first (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_auto (RwChartHit) there = { 0 }, hit = { 0 };

  expected_read (session, 110, "p5", 5.08);
  expected_read (session, 120, "p12", 5.08);

  g_autoptr (RwChart) chart = open_chart (session, view);

  g_assert_true (rw_chart_locate (chart, rw_session_get_n_events (session), &there));
  g_assert_true (rw_chart_lookup (chart, there.x, there.y, &hit));
  g_assert_cmpint ((int) hit.kind, ==, RW_HIT_READING);
}

static cairo_surface_t *
ink (RwChart    *chart,
     RwInkTarget target)
{
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) EXPECTED_WIDTH,
                                                         (int) EXPECTED_HEIGHT);
  cairo_t *cr = cairo_create (picture);

  rw_chart_ink (chart, cr, EXPECTED_WIDTH, EXPECTED_HEIGHT, target);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
  return picture;
}

static guint32
pixel (cairo_surface_t *picture,
       double           x,
       double           y)
{
  const guint8 *row = cairo_image_surface_get_data (picture)
                      + (int) y * cairo_image_surface_get_stride (picture);

  return ((const guint32 *) (gconstpointer) row)[(int) x] & 0xffffff;
}

static guint
count_different (cairo_surface_t *a,
                 cairo_surface_t *b)
{
  guint n = 0;

  for (int y = 0; y < EXPECTED_HEIGHT; y++)
    for (int x = 0; x < EXPECTED_WIDTH; x++)
      n += pixel (a, x, y) != pixel (b, x, y) ? 1 : 0;
  return n;
}

static void
test_is_inked_in_every_look (void)
{
  for (guint i = 0; i < RW_N_THEMES * 2; i++)
    {
      const RwInkTarget target = i % 2 == 0 ? RW_INK_SCREEN : RW_INK_VECTOR;
      g_autoptr (RwSession) session = expected_turned ();
      g_autoptr (RwView) view = rw_view_new (session);

      expected_read (session, 110, "p5", 5.08);
      fixture_event (session, rw_event_make_mark (180, "later"));
      rw_view_set_theme (view, (RwThemeId) (i / 2));

      g_autoptr (RwChart) chart = open_chart (session, view);
      cairo_surface_t *with = ink (chart, target);

      g_assert_false (target == RW_INK_SCREEN && rw_chart_needs_ink (chart));
      rw_chart_set_state (chart, NULL);
      g_assert_true (rw_chart_needs_ink (chart));

      cairo_surface_t *without = ink (chart, target);

      g_assert_cmpuint (count_different (with, without), >, 400);
      cairo_surface_destroy (with);
      cairo_surface_destroy (without);
    }
}

/* Strokes half as long as the gaps between them: no rail's dash is so open. */
static void
test_line_is_more_gap_than_stroke (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  g_autoptr (RwView) view = rw_view_new (session);
  SceneFixture    fixture;
  RwExpectedLayer layer;
  guint n_ink = 0, n_gap = 0;

  expected_read (session, 110, "p5", 5.08);
  fixture_event (session, rw_event_make_mark (180, "later"));
  scene_fixture_open (&fixture, session);
  rw_view_set_mode (fixture.view, RW_VIEW_VOLTS);
  rw_view_set_rail (fixture.view, "p12");

  const RwScene *scene = expected_look (&fixture, session);
  cairo_surface_t *picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) EXPECTED_WIDTH,
                                                         (int) EXPECTED_HEIGHT);
  cairo_t *cr = cairo_create (picture);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  rw_expected_layer_layout (&layer, scene);
  rw_expected_layer_ink (&layer, scene, cr);
  cairo_destroy (cr);
  cairo_surface_flush (picture);

  const RwExpectedLine *line = &g_array_index (layer.lines, RwExpectedLine, layer.lines->len - 1);

  for (double x = line->dots[0].x + 2; x < line->dots[1].x - 2; x++)
    {
      guint darkest = 255;

      for (int dy = -1; dy <= 1; dy++)
        darkest = MIN (darkest, pixel (picture, x, line->dots[0].y + dy) >> 8 & 0xff);
      n_ink += darkest < 200 ? 1 : 0;
      n_gap += darkest >= 200 ? 1 : 0;
    }
  g_assert_cmpuint (n_ink, >, 20);
  g_assert_cmpuint (n_gap, >, n_ink);
  cairo_surface_destroy (picture);
  rw_expected_layer_clear (&layer);
  scene_fixture_close (&fixture);
}

static void
test_state_of_before_does_no_harm (void)
{
  g_autoptr (RwSession) session = expected_turned ();
  g_autoptr (RwView) view = rw_view_new (session);

  expected_read (session, 110, "p5", 5.08);

  g_autoptr (RwChart) chart = open_chart (session, view);

  rw_session_rewind (session, 3);
  cairo_surface_destroy (ink (chart, RW_INK_SCREEN));
  rw_session_rewind (session, 0);
  cairo_surface_destroy (ink (chart, RW_INK_VECTOR));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/expected/named-at-its-end-with-that-word",
                   test_named_at_its_end_with_that_word);
  g_test_add_func ("/expected/found-and-told-in-words", test_found_and_told_in_words);
  g_test_add_func ("/expected/a-reading-is-found-first", test_a_reading_is_found_first);
  g_test_add_func ("/expected/is-inked-in-every-look", test_is_inked_in_every_look);
  g_test_add_func ("/expected/line-is-more-gap-than-stroke", test_line_is_more_gap_than_stroke);
  g_test_add_func ("/expected/state-of-before-does-no-harm", test_state_of_before_does_no_harm);
  return g_test_run ();
}
