/* test-layers.c: the layouts of the layers, by numbers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-layer-axes.h"
#include "rw-layer-ends.h"
#include "rw-layer-limits.h"
#include "rw-layer-readings.h"
#include "rw-layer-samples.h"
#include "rw-layer-verticals.h"
#include "scene-fixture.h"

static void
test_limits_bound_the_space_outside (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;
  RwLimitsLayer limits;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);
  const RwRect *plot = &scene->plot;

  rw_limits_layer_layout (&limits, scene);
  g_assert_cmpfloat_with_epsilon (limits.y[RW_LIMIT_MIDDLE], plot->y + plot->height / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (limits.y[RW_LIMIT_STRONG],
                                  plot->y + plot->height * (1.4 - 1) / 2.8, 1e-6);
  g_assert_cmpfloat (limits.outside[0].y, ==, plot->y);
  g_assert_cmpfloat_with_epsilon (rw_rect_bottom (&limits.outside[0]), limits.y[RW_LIMIT_STRONG],
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (limits.outside[1].y, limits.y[RW_LIMIT_WEAK], 1e-6);
  g_assert_cmpfloat_with_epsilon (rw_rect_bottom (&limits.outside[1]), rw_rect_bottom (plot), 1e-6);
  for (guint i = 0; i < RW_N_LIMITS; i++)
    g_assert_true (limits.shown[i] && limits.words[i][0] != '\0');
  rw_limits_layer_clear (&limits);
  scene_fixture_close (&f);
}

static void
test_negative_rail_in_volts_has_its_strong_limit_below (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;
  RwLimitsLayer limits;

  scene_fixture_open (&f, session);
  rw_view_set_mode (f.view, RW_VIEW_VOLTS);
  rw_view_set_rail (f.view, "m5");
  rw_limits_layer_layout (&limits, scene_fixture_build (&f, 900, 420));
  g_assert_cmpfloat (limits.y[RW_LIMIT_STRONG], >, limits.y[RW_LIMIT_WEAK]);
  g_assert_cmpfloat (limits.outside[0].height, >, 0);
  g_assert_cmpfloat (limits.words_y[RW_LIMIT_STRONG], >, limits.y[RW_LIMIT_STRONG]);
  g_assert_cmpfloat (limits.words_y[RW_LIMIT_WEAK], <, limits.y[RW_LIMIT_WEAK]);
  rw_limits_layer_clear (&limits);
  scene_fixture_close (&f);
}

static void
test_times_are_round_and_never_touch (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;

  scene_fixture_open (&f, session);
  for (double width = 60; width < 2500; width *= 1.3)
    {
      RwAxesLayer axes;
      const RwScene *scene = scene_fixture_build (&f, width, 420);
      double taken = -1e-6;

      rw_axes_layer_layout (&axes, scene);
      for (guint i = 0; i < axes.time->len; i++)
        {
          const RwAxisTick *tick = &g_array_index (axes.time, RwAxisTick, i);
          const double half = rw_chart_text_width (f.text, RW_TEXT_CAPTION, tick->words) / 2;

          g_assert_true (rw_rect_contains (&scene->plot, tick->at, scene->plot.y));
          if (!tick->shown)
            continue;
          g_assert_cmpfloat (tick->words_at - half, >=, taken);
          taken = tick->words_at + half;
          g_assert_cmpfloat (taken, <=, MAX (width, 2 * half) + 1e-6);
        }
      rw_axes_layer_clear (&axes);
    }
  scene_fixture_close (&f);
}

static const RwReadingMark *
mark_of (const RwReadingsLayer *layer,
         guint                  event)
{
  for (guint i = 0; i < layer->marks->len; i++)
    if (g_array_index (layer->marks, RwReadingMark, i).index == event)
      return &g_array_index (layer->marks, RwReadingMark, i);
  g_error ("no mark of event %u", event);
}

/* Readings at 20 s and 80 s, turned in between at 50 s. */
static void
test_step_stands_at_the_turn_of_the_trim (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;
  RwReadingsLayer layer;

  fixture_reading (session, 20, "p5", RW_PLACE_BOARD, 5.0);
  fixture_event (session, rw_event_make_trim (50));
  fixture_reading (session, 80, "p5", RW_PLACE_BOARD, 5.1);
  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  rw_readings_layer_layout (&layer, scene);
  g_assert_cmpuint (layer.marks->len, ==, 2);
  g_assert_cmpuint (layer.joins->len, ==, 3);

  const RwReadingMark *a = mark_of (&layer, 0), *b = mark_of (&layer, 2);
  const RwReadingJoin *rise = &g_array_index (layer.joins, RwReadingJoin, 1);

  g_assert_cmpfloat_with_epsilon (a->x, rw_scene_x (scene, 20), 1e-9);
  g_assert_cmpfloat (a->y, >, b->y);
  g_assert_cmpfloat_with_epsilon (rise->x0, rw_scene_x (scene, 50), 1e-9);
  g_assert_cmpfloat (rise->x0, ==, rise->x1);
  g_assert_cmpfloat (rise->y0, ==, a->y);
  g_assert_cmpfloat (rise->y1, ==, b->y);
  g_assert_false (a->newest);
  g_assert_true (b->newest);
  rw_readings_layer_clear (&layer);
  scene_fixture_close (&f);
}

/* Two turns between two readings: what the rail did at each is not known. */
static void
test_two_turns_leave_a_hole (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;
  RwReadingsLayer layer;

  fixture_reading (session, 20, "p5", RW_PLACE_BOARD, 5.0);
  fixture_event (session, rw_event_make_trim (40));
  fixture_event (session, rw_event_make_trim (60));
  fixture_reading (session, 80, "p5", RW_PLACE_BOARD, 5.1);
  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  rw_readings_layer_layout (&layer, scene);
  g_assert_cmpuint (layer.joins->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (g_array_index (layer.joins, RwReadingJoin, 0).x1,
                                  rw_scene_x (scene, 40), 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (layer.joins, RwReadingJoin, 1).x0,
                                  rw_scene_x (scene, 60), 1e-9);
  rw_readings_layer_clear (&layer);
  scene_fixture_close (&f);
}

static void
test_recorded_samples_stand_instead_of_a_step (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;
  RwReadingsLayer layer;

  fixture_reading (session, 20, "p5", RW_PLACE_BOARD, 5.0);
  fixture_sample (session, 30, "p5", RW_PLACE_BOARD, 5.05);
  fixture_reading (session, 80, "p5", RW_PLACE_BOARD, 5.1);
  scene_fixture_open (&f, session);
  rw_readings_layer_layout (&layer, scene_fixture_build (&f, 900, 420));
  g_assert_cmpuint (layer.joins->len, ==, 0);
  rw_readings_layer_clear (&layer);
  scene_fixture_close (&f);
}

/* Nothing sloping is ever drawn between two readings. */
static void
test_steps_are_upright_or_level (void)
{
  for (guint32 seed = 0; seed < 20; seed++)
    {
      g_autoptr (RwSession) session = fixture_random (seed, 200);
      SceneFixture f;
      RwReadingsLayer layer;

      scene_fixture_open (&f, session);

      const RwScene *scene = scene_fixture_build (&f, 900, 420);

      rw_readings_layer_layout (&layer, scene);
      for (guint i = 0; i < layer.joins->len; i++)
        {
          const RwReadingJoin *join = &g_array_index (layer.joins, RwReadingJoin, i);

          g_assert_true (join->x0 == join->x1 || join->y0 == join->y1);
          g_assert_true (rw_rect_contains (&scene->plot, join->x0, join->y0));
          g_assert_true (rw_rect_contains (&scene->plot, join->x1, join->y1));
        }
      rw_readings_layer_clear (&layer);
      scene_fixture_close (&f);
    }
}

/* ±1.96 u: 0.15 V is one position, so u = 0.0306… spans 0.4 of it either side. */
static void
test_error_bar_is_the_95_percent_span (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.05, 0.001, "m1");
  SceneFixture f;
  RwReadingsLayer layer;

  reading.u = 0.4 * 0.15 / 1.96;
  fixture_event (session, rw_event_make_reading (10, &reading));
  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  rw_readings_layer_layout (&layer, scene);

  const RwReadingMark *mark = mark_of (&layer, 0);

  g_assert_cmpfloat_with_epsilon (mark->y_lo, rw_axis_to_pixel (&scene->scale, -0.4), 1e-6);
  g_assert_cmpfloat_with_epsilon (mark->y_hi, rw_axis_to_pixel (&scene->scale, 0.4), 1e-6);
  rw_readings_layer_clear (&layer);
  scene_fixture_close (&f);
}

static void
test_silly_reading_and_overload_stand_at_the_edge (void)
{
  g_autoptr (RwSession) session = fixture_oddities ();
  SceneFixture f;
  RwReadingsLayer layer;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  rw_readings_layer_layout (&layer, scene);
  g_assert_cmpint (mark_of (&layer, 1)->beyond, ==, -1);
  g_assert_cmpfloat (mark_of (&layer, 1)->y, ==, rw_rect_bottom (&scene->plot));
  g_assert_cmpint (mark_of (&layer, 2)->beyond, ==, 1);
  g_assert_cmpfloat (mark_of (&layer, 2)->y, ==, scene->plot.y);
  rw_readings_layer_clear (&layer);
  scene_fixture_close (&f);
}

static void
test_spikes_get_an_arrow_each (void)
{
  g_autoptr (RwSession) session = fixture_stream (2000);
  SceneFixture f;
  RwSamplesLayer layer;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 1240, 560);

  rw_samples_layer_layout (&layer, scene);
  g_assert_cmpuint (layer.arrows->len, ==, 2);
  g_assert_cmpint (g_array_index (layer.arrows, RwSampleArrow, 0).beyond, ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (layer.arrows, RwSampleArrow, 0).x,
                                  rw_scene_x (scene, 2 + 0.1 * 400), 2);
  g_assert_cmpint (g_array_index (layer.arrows, RwSampleArrow, 1).beyond, ==, -1);
  g_assert_cmpuint (layer.signs->len, ==, 0);
  rw_samples_layer_clear (&layer);
  scene_fixture_close (&f);
}

static void
test_bars_stand_where_the_samples_are (void)
{
  g_autoptr (RwSession) session = fixture_stream (2000);
  SceneFixture f;
  RwSamplesLayer layer;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 1240, 560);
  const RwBar *bars;
  guint n_holes = 0;

  rw_samples_layer_layout (&layer, scene);
  bars = layer.bars->pdata[0];
  for (guint i = 0; i < scene->n_columns; i++)
    {
      const double t = rw_axis_to_value (&scene->time, scene->plot.x + i + 0.5);
      const gboolean gap = t > 68.9 && t < 79.4, outside = t < 1.7 || t > 213.2;

      if (gap || outside)
        g_assert_true (isnan (bars[i].top));
      n_holes += isnan (bars[i].top) ? 1 : 0;
    }
  g_assert_cmpuint (n_holes, <, scene->n_columns / 4);
  rw_samples_layer_clear (&layer);
  scene_fixture_close (&f);
}

static void
test_few_samples_are_dots_and_two_streams_carry_signs (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;
  RwSamplesLayer layer;
  guint n_dots = 0, n_riders = 0;

  for (guint i = 0; i < 40; i++)
    {
      fixture_sample (session, i, "p5", RW_PLACE_BOARD, 5.0);
      fixture_sample (session, i + 0.3, "m5", RW_PLACE_BOARD, -5.0);
    }
  scene_fixture_open (&f, session);
  rw_samples_layer_layout (&layer, scene_fixture_build (&f, 900, 420));
  for (guint i = 0; i < layer.signs->len; i++)
    if (g_array_index (layer.signs, RwSampleSign, i).dot)
      n_dots++;
    else
      n_riders++;
  g_assert_cmpuint (n_dots, ==, 80);
  g_assert_cmpuint (n_riders, >=, 8);
  rw_samples_layer_clear (&layer);
  scene_fixture_close (&f);
}

static char *
words_cb (const RwChartVertical *vertical,
          gpointer               user_data)
{
  return g_strnfill (3 + vertical->index * 7 % 40, 'x');
}

static void
assert_apart (const RwRect *a,
              const RwRect *b)
{
  if (a->width > 0 && b->width > 0)
    g_assert_false (rw_rect_overlap (a, b));
}

/* No sign or label on another, no line through a label, nothing off the picture. */
static void
assert_tidy (const RwVerticalsLayer *layer,
             double                  width)
{
  for (guint i = 0; i < layer->marks->len; i++)
    {
      const RwVerticalMark *a = &g_array_index (layer->marks, RwVerticalMark, i);

      if (a->label.width > 0)
        {
          g_assert_cmpfloat (a->label.x, >=, 0);
          g_assert_cmpfloat (rw_rect_right (&a->label), <=, width);
          g_assert_cmpint ((int) g_utf8_strlen (a->words, -1), >, 1);
          assert_apart (&a->label, &a->sign);
        }
      for (guint k = 0; k < i; k++)
        {
          const RwVerticalMark *b = &g_array_index (layer->marks, RwVerticalMark, k);

          assert_apart (&a->sign, &b->sign);
          assert_apart (&a->label, &b->sign);
          assert_apart (&a->sign, &b->label);
          assert_apart (&a->label, &b->label);
          if (a->label.width > 0 && b->sign.width > 0 && b->row < a->row)
            g_assert_false (b->x > a->label.x && b->x < rw_rect_right (&a->label));
          if (b->label.width > 0 && a->sign.width > 0 && a->row < b->row)
            g_assert_false (a->x > b->label.x && a->x < rw_rect_right (&b->label));
        }
    }
}

static void
test_labels_of_moments_never_overlap (void)
{
  for (guint32 seed = 0; seed < 40; seed++)
    {
      g_autoptr (RwSession) session = fixture_random (seed, 30 + 12 * seed);
      SceneFixture f;

      scene_fixture_open (&f, session);
      for (double width = 300; width < 2000; width *= 1.6)
        {
          RwVerticalsLayer layer;

          rw_verticals_layer_layout (&layer, scene_fixture_build (&f, width, 420), words_cb, NULL);
          assert_tidy (&layer, width);
          rw_verticals_layer_clear (&layer);
        }
      scene_fixture_close (&f);
    }
}

static char *
plain_words_cb (const RwChartVertical *vertical,
                gpointer               user_data)
{
  return g_strdup (user_data);
}

static void
test_label_is_whole_then_cut_then_left_out (void)
{
  static const double nexts[] = {
    290, 80, 11
  }; /* seconds to the next mark of 300, over about 800 pixels */
  guint lengths[G_N_ELEMENTS (nexts)];

  for (guint i = 0; i < G_N_ELEMENTS (nexts); i++)
    {
      g_autoptr (RwSession) session = fixture_empty ();
      SceneFixture f;
      RwVerticalsLayer layer;

      fixture_event (session, rw_event_make_mark (0, "a"));
      fixture_event (session, rw_event_make_mark (nexts[i], "b"));
      fixture_reading (session, 300, "p5", RW_PLACE_BOARD, 5);
      scene_fixture_open (&f, session);
      rw_verticals_layer_layout (&layer, scene_fixture_build (&f, 900, 420), plain_words_cb,
                                 (gpointer) "a label of about fifty letters, which is not short");

      const RwVerticalMark *first = &g_array_index (layer.marks, RwVerticalMark, 0);

      g_assert_cmpfloat (first->sign.width, >, 0);
      lengths[i] = first->words != NULL ? (guint) g_utf8_strlen (first->words, -1) : 0;
      if (i == 1)
        g_assert_true (g_str_has_suffix (first->words, "…"));
      rw_verticals_layer_clear (&layer);
      scene_fixture_close (&f);
    }
  g_assert_cmpuint (lengths[0], ==, 50);
  g_assert_cmpuint (lengths[1], <, 50);
  g_assert_cmpuint (lengths[1], >, 5);
  g_assert_cmpuint (lengths[2], <, lengths[1]);
}

static double
moved (const double *a,
       const double *b,
       guint         n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += (a[i] - b[i]) * (a[i] - b[i]);
  return sum;
}

/* Names keep their distance, stay inside, and no small change of a good answer is better. */
static void
test_names_spread_as_little_as_they_must (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (4);

  for (guint round = 0; round < 300; round++)
    {
      const guint n = (guint) g_rand_int_range (random, 1, 9);
      double wanted[9], y[9], tried[9];

      wanted[0] = g_rand_double_range (random, 0, 60);
      for (guint i = 1; i < n; i++)
        wanted[i] = wanted[i - 1]
                    + (g_rand_boolean (random) ? 0 : g_rand_double_range (random, 0, 40));
      for (guint i = 0; i < n; i++)
        y[i] = wanted[i];
      rw_ends_spread (y, n, 16, 8, 300);
      for (guint i = 0; i < n; i++)
        {
          g_assert_cmpfloat (y[i], >=, 8 - 1e-9);
          g_assert_cmpfloat (y[i], <=, 300 + 1e-9);
          if (i > 0)
            g_assert_cmpfloat (y[i] - y[i - 1], >=, 16 - 1e-9);
        }
      for (guint trial = 0; trial < 30; trial++)
        {
          gboolean allowed = TRUE;

          for (guint i = 0; i < n; i++)
            {
              tried[i] = y[i] + g_rand_double_range (random, -2, 2);
              allowed = allowed && tried[i] >= 8 && tried[i] <= 300
                        && (i == 0 || tried[i] - tried[i - 1] >= 16);
            }
          if (allowed)
            g_assert_cmpfloat (moved (tried, wanted, n), >=, moved (y, wanted, n) - 1e-9);
        }
    }
}

static void
test_too_many_names_share_the_room_evenly (void)
{
  double y[5] = { 0, 0, 50, 50, 50 };

  rw_ends_spread (y, 5, 30, 10, 50);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpfloat_with_epsilon (y[i], 10 + 10.0 * i, 1e-9);
}

static void
test_line_is_named_where_it_ends_and_holds_till_a_change (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;
  RwEndsLayer layer;

  fixture_reading (session, 10, "p5", RW_PLACE_TERMINALS, 5.0);
  fixture_event (session, rw_event_make_trim (30));
  fixture_reading (session, 40, "p5", RW_PLACE_BOARD, 5.1);
  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  rw_ends_layer_layout (&layer, scene);
  g_assert_cmpuint (layer.labels->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const RwEndLabel *label = &g_array_index (layer.labels, RwEndLabel, i);
      const gboolean board = rw_scene_trace (scene, label->trace)->channel->place == RW_PLACE_BOARD;

      g_assert_cmpstr (label->name, ==, "+5 V");
      g_assert_nonnull (label->place);
      g_assert_cmpint (label->holds, ==, board);
      g_assert_cmpint (label->quiet, ==, !board);
      g_assert_cmpfloat_with_epsilon (label->x, rw_scene_x (scene, board ? 40 : 10), 1e-9);
      g_assert_cmpfloat_with_epsilon (
          label->until, board ? rw_rect_right (&scene->plot) : rw_scene_x (scene, 30), 1e-9);
    }
  rw_ends_layer_clear (&layer);
  scene_fixture_close (&f);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/layers/limits/bound-the-space-outside", test_limits_bound_the_space_outside);
  g_test_add_func ("/layers/limits/negative-rail-in-volts",
                   test_negative_rail_in_volts_has_its_strong_limit_below);
  g_test_add_func ("/layers/axes/times-are-round-and-never-touch",
                   test_times_are_round_and_never_touch);
  g_test_add_func ("/layers/readings/step-stands-at-the-turn",
                   test_step_stands_at_the_turn_of_the_trim);
  g_test_add_func ("/layers/readings/two-turns-leave-a-hole", test_two_turns_leave_a_hole);
  g_test_add_func ("/layers/readings/samples-instead-of-a-step",
                   test_recorded_samples_stand_instead_of_a_step);
  g_test_add_func ("/layers/readings/steps-are-upright-or-level", test_steps_are_upright_or_level);
  g_test_add_func ("/layers/readings/error-bar-is-the-95-percent-span",
                   test_error_bar_is_the_95_percent_span);
  g_test_add_func ("/layers/readings/silly-ones-stand-at-the-edge",
                   test_silly_reading_and_overload_stand_at_the_edge);
  g_test_add_func ("/layers/samples/spikes-get-an-arrow-each", test_spikes_get_an_arrow_each);
  g_test_add_func ("/layers/samples/bars-stand-where-the-samples-are",
                   test_bars_stand_where_the_samples_are);
  g_test_add_func ("/layers/samples/dots-and-signs",
                   test_few_samples_are_dots_and_two_streams_carry_signs);
  g_test_add_func ("/layers/verticals/labels-never-overlap", test_labels_of_moments_never_overlap);
  g_test_add_func ("/layers/verticals/whole-then-cut-then-left-out",
                   test_label_is_whole_then_cut_then_left_out);
  g_test_add_func ("/layers/ends/spread-as-little-as-they-must",
                   test_names_spread_as_little_as_they_must);
  g_test_add_func ("/layers/ends/too-many-share-the-room-evenly",
                   test_too_many_names_share_the_room_evenly);
  g_test_add_func ("/layers/ends/named-where-it-ends",
                   test_line_is_named_where_it_ends_and_holds_till_a_change);
  return g_test_run ();
}
