/* test-scene.c: what is shown, on which axes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "scene-fixture.h"

static gboolean
shows (const SceneFixture *f,
       const char         *rail,
       RwPlace             place,
       RwKind              kind)
{
  for (guint i = 0; i < f->scene.traces->len; i++)
    {
      const RwChartChannel *channel = rw_scene_trace (&f->scene, i)->channel;

      if (g_str_equal (channel->rail, rail) && channel->place == place && channel->kind == kind)
        return TRUE;
    }
  return FALSE;
}

static void
test_empty_session_has_quiet_axes (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  g_assert_cmpuint (scene->traces->len, ==, 0);
  g_assert_cmpfloat (scene->scale.lo, ==, -RW_SCENE_LEAST);
  g_assert_cmpfloat (scene->scale.hi, ==, RW_SCENE_LEAST);
  g_assert_cmpfloat (scene->time.lo, ==, 0);
  g_assert_cmpfloat (scene->time.hi, ==, 60);
  scene_fixture_close (&f);
}

static void
test_plot_is_inside_the_picture_whatever_its_size (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;

  scene_fixture_open (&f, session);
  for (double scale = 0.5; scale <= 8; scale *= 2)
    for (double width = 1; width < 3000; width = width * 2 + 7)
      for (double height = 1; height < 2000; height = height * 2 + 5)
        {
          rw_view_set_text_scale (f.view, scale);

          const RwScene *scene = scene_fixture_build (&f, width, height);

          g_assert_cmpfloat (scene->plot.width, >=, 1);
          g_assert_cmpfloat (scene->plot.height, >=, 1);
          g_assert_cmpfloat (scene->plot.x, >=, 0);
          g_assert_cmpfloat (scene->plot.y, >=, 0);
          g_assert_cmpfloat (rw_rect_right (&scene->plot), <=, MAX (width, 1) + 1);
          g_assert_cmpfloat (fmod (scene->plot.x, 1), ==, 0);
        }
  scene_fixture_close (&f);
}

static void
test_limits_are_straight_and_symmetrical (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;
  int beyond;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);
  const double strong = rw_axis_to_pixel (&scene->scale, 1),
               middle = rw_axis_to_pixel (&scene->scale, 0);
  const guint p5 = scene_fixture_trace (&f, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  const guint m5 = scene_fixture_trace (&f, "m5", RW_PLACE_BOARD, RW_KIND_DC);

  g_assert_cmpfloat (strong, <, middle);
  g_assert_cmpfloat_with_epsilon (rw_scene_y (scene, rw_scene_trace (scene, p5), 5.2, &beyond),
                                  strong, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_scene_y (scene, rw_scene_trace (scene, m5), -5.5, &beyond),
                                  strong, 1e-9);
  g_assert_cmpfloat_with_epsilon (rw_scene_y (scene, rw_scene_trace (scene, m5), -5, &beyond),
                                  middle, 1e-9);
  scene_fixture_close (&f);
}

/* Position 2.5 widens the range; 3.5 and −40 do not: they would squash the rest. */
static void
test_range_widens_for_the_near_but_not_the_far (void)
{
  static const struct
  {
    double volts, hi, lo;
  } cases[] = { { 5.05, 1.4, -1.4 },
                { 5.05 + 2.5 * 0.15, 2.6, -1.4 },
                { 5.05 + 3.5 * 0.15, 1.4, -1.4 },
                { 5.05 - 40 * 0.15, 1.4, -1.4 },
                { 5.05 - 2.0 * 0.15, 1.4, -2.2 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (RwSession) session = fixture_empty ();
      const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, cases[i].volts,
                                                 0, NULL);
      SceneFixture f;

      fixture_event (session, rw_event_make_reading (10, &reading));
      scene_fixture_open (&f, session);

      const RwScene *scene = scene_fixture_build (&f, 900, 420);

      g_assert_cmpfloat_with_epsilon (scene->scale.hi, cases[i].hi, 1e-6);
      g_assert_cmpfloat_with_epsilon (scene->scale.lo, cases[i].lo, 1e-6);
      scene_fixture_close (&f);
    }
}

static void
test_spikes_in_a_stream_do_not_squash_it (void)
{
  g_autoptr (RwSession) session = fixture_stream (2000);
  SceneFixture f;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  g_assert_cmpfloat (scene->scale.hi, <=, RW_SCENE_LEAST + 0.01);
  g_assert_cmpfloat (scene->scale.lo, >=, -RW_SCENE_LEAST - 0.01);
  scene_fixture_close (&f);
}

static void
test_far_values_are_clamped_to_their_edge (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;
  int beyond;

  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);
  const RwTrace *p5 = rw_scene_trace (scene,
                                      scene_fixture_trace (&f, "p5", RW_PLACE_BOARD, RW_KIND_DC));

  g_assert_cmpfloat (rw_scene_y (scene, p5, 50, &beyond), ==, scene->plot.y);
  g_assert_cmpint (beyond, ==, 1);
  g_assert_cmpfloat (rw_scene_y (scene, p5, -50, &beyond), ==, rw_rect_bottom (&scene->plot));
  g_assert_cmpint (beyond, ==, -1);
  g_assert_true (isnan (rw_scene_y (scene, p5, NAN, &beyond)));
  scene_fixture_close (&f);
}

static void
test_drops_and_ripple_only_of_the_chosen_rail (void)
{
  g_autoptr (RwSession) session = fixture_oddities ();
  SceneFixture f;

  scene_fixture_open (&f, session);
  scene_fixture_build (&f, 900, 420);
  g_assert_true (shows (&f, "p5", RW_PLACE_BOARD, RW_KIND_DC));
  g_assert_true (shows (&f, "p5", RW_PLACE_CHIP, RW_KIND_DC));
  g_assert_false (shows (&f, "p5", RW_PLACE_WIRE, RW_KIND_DC));
  g_assert_false (shows (&f, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE));
  g_assert_false (shows (&f, "gnd", RW_PLACE_WIRE, RW_KIND_DC));
  g_assert_false (shows (&f, "heater", RW_PLACE_TERMINALS, RW_KIND_DC));
  rw_view_set_rail (f.view, "p5");
  scene_fixture_build (&f, 900, 420);
  g_assert_false (shows (&f, "p5", RW_PLACE_WIRE, RW_KIND_DC));
  g_assert_true (shows (&f, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE));
  rw_view_set_place (f.view, RW_PLACE_WIRE);
  scene_fixture_build (&f, 900, 420);
  g_assert_true (shows (&f, "p5", RW_PLACE_WIRE, RW_KIND_DC));
  rw_view_set_place (f.view, RW_PLACE_BOARD);
  rw_view_set_rail (f.view, "gnd");
  scene_fixture_build (&f, 900, 420);
  g_assert_true (shows (&f, "gnd", RW_PLACE_WIRE, RW_KIND_DC));
  scene_fixture_close (&f);
}

/* How many lines of +5 V's ripple there are that say their place. */
static guint
count_placed_ripple (RwSession *session)
{
  SceneFixture f;
  guint placed = 0, ripples = 0;

  scene_fixture_open (&f, session);
  rw_view_set_rail (f.view, "p5");

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  for (guint i = 0; i < scene->traces->len; i++)
    {
      const RwTrace *trace = rw_scene_trace (scene, i);

      if (trace->channel->kind != RW_KIND_RIPPLE)
        continue;
      ripples++;
      placed += g_strcmp0 (trace->place_label, rw_place_get_label (trace->channel->place)) == 0 ? 1 : 0;
    }
  g_assert_cmpuint (ripples, >, 0);
  scene_fixture_close (&f);
  return placed;
}

static void
test_ripple_says_its_place_where_there_are_two (void)
{
  g_autoptr (RwSession) session = fixture_oddities ();
  const RwReading ripple = rw_reading_make ("p5", RW_PLACE_TERMINALS, RW_KIND_RIPPLE, 0.012, 0.0001, NULL);

  g_assert_cmpuint (count_placed_ripple (session), ==, 0);
  fixture_event (session, rw_event_make_reading (115, &ripple));
  g_assert_cmpuint (count_placed_ripple (session), ==, 2);
}

static void
test_volts_show_one_rail_between_its_limits (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;

  scene_fixture_open (&f, session);
  rw_view_set_mode (f.view, RW_VIEW_VOLTS);
  rw_view_set_rail (f.view, "m5");

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  g_assert_cmpuint (scene->traces->len, ==, 2);
  g_assert_cmpfloat (scene->strong, ==, -5.5);
  g_assert_cmpfloat (scene->weak, ==, -4.5);
  g_assert_cmpfloat (scene->scale.lo, <, -5.5);
  g_assert_cmpfloat (scene->scale.hi, >, -4.5);
  rw_view_set_place (f.view, RW_PLACE_TERMINALS);
  scene = scene_fixture_build (&f, 900, 420);
  g_assert_cmpfloat (scene->strong, ==, -6);
  scene_fixture_close (&f);
}

static void
test_volts_without_a_choice_show_the_reference (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;

  scene_fixture_open (&f, session);
  rw_view_set_mode (f.view, RW_VIEW_VOLTS);
  g_assert_cmpstr (scene_fixture_build (&f, 900, 420)->rail, ==, "p5");
  scene_fixture_close (&f);
}

/* A rail that nobody laid limits down for: the range is where its values are, wild ones left out.
 */
static void
test_volts_of_a_stranger_go_by_what_is_seen (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;

  for (guint i = 0; i < 9; i++)
    fixture_reading (session, 5 * i, "heater", RW_PLACE_TERMINALS, 6.3 + 0.01 * (i % 3));
  fixture_reading (session, 50, "heater", RW_PLACE_TERMINALS, 600);
  scene_fixture_open (&f, session);
  rw_view_set_mode (f.view, RW_VIEW_VOLTS);
  rw_view_set_rail (f.view, "heater");

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  g_assert_false (scene->limited);
  g_assert_cmpfloat (scene->scale.lo, >, 5.5);
  g_assert_cmpfloat (scene->scale.hi, <, 7);
  scene_fixture_close (&f);
}

static void
test_place_is_said_only_where_there_are_two (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  SceneFixture f;

  fixture_reading (session, 1, "p5", RW_PLACE_BOARD, 5);
  fixture_reading (session, 2, "p5", RW_PLACE_TERMINALS, 5.1);
  fixture_reading (session, 3, "p12", RW_PLACE_BOARD, 12);
  scene_fixture_open (&f, session);

  const RwScene *scene = scene_fixture_build (&f, 900, 420);

  g_assert_nonnull (
      rw_scene_trace (scene, scene_fixture_trace (&f, "p5", RW_PLACE_BOARD, RW_KIND_DC))
          ->place_label);
  g_assert_null (
      rw_scene_trace (scene, scene_fixture_trace (&f, "p12", RW_PLACE_BOARD, RW_KIND_DC))
          ->place_label);
  scene_fixture_close (&f);
}

static void
test_chosen_rail_lies_on_top (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  SceneFixture f;

  scene_fixture_open (&f, session);
  rw_view_set_rail (f.view, "p5");

  const RwScene *scene = scene_fixture_build (&f, 900, 420);
  const RwTrace *top = rw_scene_trace (scene, scene->traces->len - 1);

  g_assert_cmpstr (top->channel->rail, ==, "p5");
  g_assert_true (top->chosen);
  scene_fixture_close (&f);
}

static void
test_many_moments_get_a_second_lane (void)
{
  g_autoptr (RwSession) few = fixture_stream (100), many = fixture_trims ();
  SceneFixture f;

  scene_fixture_open (&f, few);
  g_assert_cmpuint (scene_fixture_build (&f, 900, 420)->n_lanes, ==, 1);
  scene_fixture_close (&f);
  scene_fixture_open (&f, many);
  g_assert_cmpuint (scene_fixture_build (&f, 900, 420)->n_lanes, ==, 2);
  g_assert_cmpuint (scene_fixture_build (&f, 900, 200)->n_lanes, ==, 1);
  scene_fixture_close (&f);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/empty-session-has-quiet-axes", test_empty_session_has_quiet_axes);
  g_test_add_func ("/scene/plot-is-inside-the-picture",
                   test_plot_is_inside_the_picture_whatever_its_size);
  g_test_add_func ("/scene/limits-are-straight-and-symmetrical",
                   test_limits_are_straight_and_symmetrical);
  g_test_add_func ("/scene/range-widens-for-the-near-but-not-the-far",
                   test_range_widens_for_the_near_but_not_the_far);
  g_test_add_func ("/scene/spikes-in-a-stream-do-not-squash-it",
                   test_spikes_in_a_stream_do_not_squash_it);
  g_test_add_func ("/scene/far-values-are-clamped", test_far_values_are_clamped_to_their_edge);
  g_test_add_func ("/scene/drops-and-ripple-only-of-the-chosen-rail",
                   test_drops_and_ripple_only_of_the_chosen_rail);
  g_test_add_func ("/scene/ripple-says-its-place-where-there-are-two", test_ripple_says_its_place_where_there_are_two);
  g_test_add_func ("/scene/volts-show-one-rail-between-its-limits",
                   test_volts_show_one_rail_between_its_limits);
  g_test_add_func ("/scene/volts-without-a-choice-show-the-reference",
                   test_volts_without_a_choice_show_the_reference);
  g_test_add_func ("/scene/volts-of-a-stranger-go-by-what-is-seen",
                   test_volts_of_a_stranger_go_by_what_is_seen);
  g_test_add_func ("/scene/place-is-said-only-where-there-are-two",
                   test_place_is_said_only_where_there_are_two);
  g_test_add_func ("/scene/chosen-rail-lies-on-top", test_chosen_rail_lies_on_top);
  g_test_add_func ("/scene/many-moments-get-a-second-lane", test_many_moments_get_a_second_lane);
  return g_test_run ();
}
