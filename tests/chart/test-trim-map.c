/* test-trim-map.c: the chart of the trim: where everything goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "rw-trim-map-private.h"
#include "trim-fixture.h"

static const double limits[FIXTURE_RAILS][2] = {
  { 4.9, 5.2 }, { 11.4, 12.6 }, { -5.25, -4.75 }, { -13.2, -10.8 }
};
static const RwTrimMapLine *
line_of (const RwTrimMapLayout *layout, guint rail)
{
  for (guint i = 0; i < layout->lines->len; i++)
    if (g_array_index (layout->lines, RwTrimMapLine, i).rail == rail)
      return &g_array_index (layout->lines, RwTrimMapLine, i);
  g_assert_not_reached ();
}

/* The definition, written out once more: −1 on the weak limit, 1 on the strong one. */
static double
position_of (guint rail, double value)
{
  const double lo = limits[rail][0], hi = limits[rail][1];
  const double weak = rail >= 2 ? hi : lo, strong = rail >= 2 ? lo : hi;

  return -1 + 2 * (value - weak) / (strong - weak);
}

static double
y_at (const RwTrimMapLayout *layout, double position)
{
  return rw_axis_to_pixel (&layout->scene.scale, position);
}

/* Pixels of the line of @rail at @volts of the reference. */
static double
line_y (const RwTrimMapLayout *layout, guint rail, double volts)
{
  const RwTrimMapLine *line = line_of (layout, rail);
  const double         x = rw_axis_to_pixel (&layout->volts, volts);

  return line->y0 + (line->y1 - line->y0) * (x - line->x0) / (line->x1 - line->x0);
}

static void
test_reference_runs_from_limit_to_limit (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);

  g_assert_cmpfloat_with_epsilon (line_y (layout, 0, 4.9), y_at (layout, -1), 1e-6);
  g_assert_cmpfloat_with_epsilon (line_y (layout, 0, 5.2), y_at (layout, 1), 1e-6);
  g_assert_false (line_of (layout, 0)->banded);
  g_assert_cmpfloat_with_epsilon (layout->limits.y[RW_LIMIT_STRONG], y_at (layout, 1), 1e-6);
  g_assert_cmpfloat_with_epsilon (layout->limits.y[RW_LIMIT_WEAK], y_at (layout, -1), 1e-6);
}

/* Its readings were made as −5 V = 0.56 − x and +12 V = 0.312 + 2.4 x, to a hundredth. */
static void
test_lines_lie_where_the_volts_say (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_conflict ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const double           pixel = fabs (rw_axis_slope (&layout->scene.scale)); /* a half band */

  for (double x = 4.95; x < 5.2; x += 0.05)
    {
      g_assert_cmpfloat_with_epsilon (
          line_y (layout, 1, x), y_at (layout, position_of (1, 0.312 + 2.4 * x)), 0.03 * pixel);
      g_assert_cmpfloat_with_epsilon (line_y (layout, 2, x),
                                      y_at (layout, position_of (2, 0.56 - x)), 0.03 * pixel);
    }
}

static void
test_bands_are_what_is_expected (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const RwTrimSet       *set = rw_trim_map_get_set (map);

  for (guint rail = 1; rail <= 2; rail++)
    for (guint i = 0; i < RW_TRIM_MAP_STEPS; i++)
      {
        const RwTrimMapLine *line = line_of (layout, rail);
        const double         x = layout->volts.lo +
                         i * (layout->volts.hi - layout->volts.lo) / (RW_TRIM_MAP_STEPS - 1);
        RwTrimExpected expected;

        g_assert_true (line->banded);
        g_assert_true (rw_trim_fit_expect (set->fit, rail, x, 0, &expected));
        g_assert_cmpfloat_with_epsilon (line->lo[i],
                                        y_at (layout, position_of (rail, expected.lo)), 1e-6);
        g_assert_cmpfloat_with_epsilon (line->hi[i],
                                        y_at (layout, position_of (rail, expected.hi)), 1e-6);
        g_assert_cmpfloat (fabs (line->lo[i] - line->hi[i]), >, 0.5);
      }
}

static void
test_readings_stand_at_their_volts (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const RwTrimSet       *set = rw_trim_map_get_set (map);

  g_assert_cmpuint (layout->marks->len, ==, 8);
  for (guint i = 0; i < layout->marks->len; i++)
    {
      const RwTrimMapMark *mark = &g_array_index (layout->marks, RwTrimMapMark, i);
      const RwTrimPoint   *point = &g_array_index (set->points, RwTrimPoint, mark->index);
      const double         up = y_at (layout, 0) - y_at (layout, 1);
      const double         half = (limits[point->rail][1] - limits[point->rail][0]) / 2;

      g_assert_cmpfloat_with_epsilon (mark->x, rw_trim_map_x_at (map, point->x), 1e-6);
      g_assert_cmpfloat_with_epsilon (
          mark->y, y_at (layout, position_of (point->rail, point->value)), 1e-6);
      g_assert_cmpfloat_with_epsilon (mark->y_lo - mark->y_hi, 2 * 1.96 * point->u / half * up,
                                      1e-6);
      g_assert_cmpfloat_with_epsilon (
          mark->x_hi - mark->x_lo, 2 * 1.96 * point->u_x * rw_axis_slope (&layout->volts), 1e-6);
      g_assert_true (mark->newest == (point->position == 2));
    }
}

static void
test_window_and_set_point_are_those_of_the_set (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const RwTrimWindow    *window = &rw_trim_map_get_set (map)->window;

  g_assert_true (layout->window.shown && !layout->gap.shown);
  g_assert_cmpfloat_with_epsilon (rw_trim_map_volts_at (map, layout->window.x0), window->lo,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (rw_trim_map_volts_at (map, layout->window.x1), window->hi,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (rw_trim_map_volts_at (map, layout->set_x), window->best, 1e-9);
  /* −5 V leaves its weak limit where its line crosses it. */
  g_assert_cmpfloat_with_epsilon (line_y (layout, 2, window->lo), y_at (layout, -1), 1e-6);
}

static gboolean
says (const RwTrimMapLayout *layout, const char *words)
{
  for (guint i = 0; i < layout->labels->len; i++)
    if (strstr (g_array_index (layout->labels, RwTrimMapLabel, i).words, words) != NULL)
      return TRUE;
  return FALSE;
}

static void
test_labels_say_volts_and_what_they_are (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_usual ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);

  g_assert_true (says (layout, "5.11\u202fV set point"));
  g_assert_true (says (layout, "4.97\u202fV"));
  g_assert_true (says (layout, "5.20\u202fV"));
  g_assert_true (says (layout, "window"));
  g_assert_cmpstr (layout->axis_words, ==, "Reference +5 V, at the board");
  g_assert_cmpstr (layout->note_words, ==, "Not read yet: −12 V");
  g_assert_cmpstr (line_of (layout, 2)->name, ==, "−5 V");
}

/* From the fixture's straight lines: 0.56 − x = −4.75 and 0.312 + 2.4 x = 12.6. */
static void
test_bounds_that_exclude_each_other_are_named (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_conflict ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);

  g_assert_cmpuint (layout->n_bounds, ==, 2);
  g_assert_cmpuint (layout->bounds[0].rail, ==, 2);
  g_assert_cmpuint (layout->bounds[1].rail, ==, 1);
  g_assert_cmpfloat_with_epsilon (layout->bounds[0].volts, 5.31, 0.02);
  g_assert_cmpfloat_with_epsilon (layout->bounds[1].volts, 12.288 / 2.4, 0.02);
  g_assert_true (layout->gap.shown && !layout->window.shown);
  g_assert_cmpfloat_with_epsilon (layout->gap.x0, layout->bounds[1].x, 1e-9);
  g_assert_cmpfloat_with_epsilon (layout->gap.x1, layout->bounds[0].x, 1e-9);
  g_assert_true (says (layout, "no position suits all"));
  g_assert_true (says (layout, "−5 V needs ≥ 5.31\u202fV"));
  g_assert_true (says (layout, "+12 V allows ≤ 5.12\u202fV"));
  g_assert_true (says (layout, "best without −5 V"));
}

static void
test_an_outlier_squashes_nothing (void)
{
  g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_outlier ());
  const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
  const RwRect          *plot = &layout->scene.plot;
  g_auto (RwTrimMapHit) hit = { 0 };

  g_assert_true (rw_trim_map_locate (map, 21, &hit));
  g_assert_true (hit.outlier);
  g_assert_cmpfloat_with_epsilon (hit.value, -5.6, 1e-12);
  g_assert_cmpfloat_with_epsilon (hit.position, position_of (2, -5.6), 1e-9);
  g_assert_nonnull (strstr (hit.text, "outlier"));
  g_assert_cmpfloat (hit.position, >, layout->scene.scale.hi); /* off the scale, on the plot */
  g_assert_true (rw_rect_contains (plot, hit.x, hit.y));
  g_assert_cmpfloat (layout->scene.scale.hi, <=, 2.0);
  for (guint i = 0; i < layout->marks->len; i++)
    {
      const RwTrimMapMark *mark = &g_array_index (layout->marks, RwTrimMapMark, i);

      g_assert_true (mark->outlier == (mark->beyond_y != 0));
    }
}

static void
test_everything_but_outliers_is_on_the_picture (void)
{
  for (guint k = 0; k < FIXTURE_TRIM_DRAWN; k++)
    {
      g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_drawn[k]());
      const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
      const RwRect          *plot = &layout->scene.plot;

      g_assert_null (layout->instead);
      g_assert_cmpfloat (layout->volts.lo, <, rw_trim_map_get_set (map)->lo[0]);
      g_assert_cmpfloat (layout->volts.hi, >, rw_trim_map_get_set (map)->hi[0]);
      g_assert_false (isnan (layout->set_x));
      for (guint i = 0; i < layout->marks->len; i++)
        {
          const RwTrimMapMark *mark = &g_array_index (layout->marks, RwTrimMapMark, i);

          g_assert_true (rw_rect_contains (plot, mark->x, mark->y));
          g_assert_true (mark->outlier || (mark->beyond_x == 0 && mark->beyond_y == 0));
          g_assert_true (mark->outlier ||
                         (mark->x_lo > plot->x && mark->x_hi < rw_rect_right (plot)));
        }
    }
}

/* --- crowding
 * ----------------------------------------------------------------------------------- */

static void
check_lanes (const RwTrimMapLayout *layout)
{
  for (guint i = 0; i < layout->labels->len; i++)
    {
      const RwTrimMapLabel *one = &g_array_index (layout->labels, RwTrimMapLabel, i);

      g_assert_cmpfloat (one->y, <, layout->scene.plot.y);
      for (guint k = 0; k < i; k++)
        {
          const RwTrimMapLabel *other = &g_array_index (layout->labels, RwTrimMapLabel, k);

          g_assert_true (one->y != other->y || one->x >= other->x + other->width ||
                         other->x >= one->x + one->width);
        }
    }
}

static gint
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double x = *(const double *)a, y = *(const double *)b;

  return x < y ? -1 : x > y;
}

static void
check_names (const RwTrimMapLayout *layout)
{
  const double height = rw_chart_text_height (layout->in.text, RW_TEXT_LABEL);
  g_autoptr (GArray) ys = g_array_new (FALSE, FALSE, sizeof (double));

  if (layout->lines->len * height > layout->scene.plot.height)
    return; /* they cannot all fit; then they are spaced evenly */
  for (guint i = 0; i < layout->lines->len; i++)
    g_array_append_val (ys, g_array_index (layout->lines, RwTrimMapLine, i).label_y);
  g_array_sort (ys, compare_doubles);
  for (guint i = 1; i < ys->len; i++)
    g_assert_cmpfloat (g_array_index (ys, double, i) - g_array_index (ys, double, i - 1), >=,
                       height - 1e-6);
}

static void
check_numbers (const RwTrimMapLayout *layout)
{
  const RwRect *plate = &layout->needle.plate;
  double        taken = -1;

  for (guint i = 0; i < layout->ticks->len; i++)
    {
      const RwAxisTick *tick = &g_array_index (layout->ticks, RwAxisTick, i);
      const double half = rw_chart_text_width (layout->in.text, RW_TEXT_CAPTION, tick->words) / 2;

      if (!tick->shown)
        continue;
      g_assert_cmpfloat (tick->words_at - half, >=, taken);
      taken = tick->words_at + half;
      g_assert_true (plate->width == 0 || taken <= plate->x ||
                     tick->words_at - half >= rw_rect_right (plate));
    }
}

static void
test_words_never_overlap (void)
{
  static const double sizes[][2] = { { 500, 220 }, { 860, 330 }, { 1240, 560 }, { 1600, 700 } };
  static const double scales[] = { 0.8, 1, 1.5, 2.5 };

  for (guint k = 0; k < FIXTURE_TRIM_DRAWN; k++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes) * G_N_ELEMENTS (scales); i++)
      {
        g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_drawn[k]());
        const double *size = sizes[i / G_N_ELEMENTS (scales)];

        rw_trim_map_set_size (map, size[0], size[1]);
        rw_view_set_text_scale (rw_trim_map_get_view (map), scales[i % G_N_ELEMENTS (scales)]);

        const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);

        check_lanes (layout);
        check_names (layout);
        check_numbers (layout);
        g_assert_cmpfloat (layout->scene.plot.height, >, 0.2 * size[1]);
        g_assert_cmpfloat (layout->scene.plot.width, >, 0.3 * size[0]);
      }
}

static void
test_common_sizes_lose_no_label (void)
{
  static const double sizes[][2] = { { 500, 220 }, { 860, 330 }, { 1240, 560 }, { 1600, 700 } };
  static const guint  n_labels[] = {
     4, 4, 4, 4, 4
  }; /* ends, window, set point; or bounds, conflict, set point */

  for (guint k = 0; k < FIXTURE_TRIM_DRAWN; k++)
    for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_drawn[k]());

        rw_trim_map_set_size (map, sizes[i][0], sizes[i][1]);
        g_assert_cmpuint (rw_trim_map_get_layout (map)->labels->len, ==, n_labels[k]);
        g_assert_nonnull (rw_trim_map_get_layout (map)->axis_words);
      }
}

/* WCAG 2.1, 1.4.3: all of them lie on paper; so do the plate's, the other way round. */
static void
test_words_can_be_read_in_every_theme (void)
{
  for (guint k = 0; k < FIXTURE_TRIM_DRAWN; k++)
    for (guint theme = 0; theme < RW_N_THEMES; theme++)
      {
        g_autoptr (RwTrimMap) map = fixture_trim_map (fixture_trim_drawn[k]());

        rw_view_set_theme (rw_trim_map_get_view (map), (RwThemeId)theme);

        const RwTrimMapLayout *layout = rw_trim_map_get_layout (map);
        const RwColor          paper = layout->scene.theme->paper;

        for (guint i = 0; i < layout->labels->len; i++)
          g_assert_cmpfloat (
              rw_color_contrast (g_array_index (layout->labels, RwTrimMapLabel, i).color, paper),
              >=, 4.5);
        for (guint i = 0; i < layout->lines->len; i++)
          g_assert_cmpfloat (
              rw_color_contrast (g_array_index (layout->lines, RwTrimMapLine, i).style.color,
                                 paper),
              >=, 4.5);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trim-map/reference-runs-from-limit-to-limit",
                   test_reference_runs_from_limit_to_limit);
  g_test_add_func ("/trim-map/lines-lie-where-the-volts-say", test_lines_lie_where_the_volts_say);
  g_test_add_func ("/trim-map/bands-are-what-is-expected", test_bands_are_what_is_expected);
  g_test_add_func ("/trim-map/readings-stand-at-their-volts", test_readings_stand_at_their_volts);
  g_test_add_func ("/trim-map/window-and-set-point-are-those-of-the-set",
                   test_window_and_set_point_are_those_of_the_set);
  g_test_add_func ("/trim-map/labels-say-volts-and-what-they-are",
                   test_labels_say_volts_and_what_they_are);
  g_test_add_func ("/trim-map/bounds-that-exclude-each-other-are-named",
                   test_bounds_that_exclude_each_other_are_named);
  g_test_add_func ("/trim-map/an-outlier-squashes-nothing", test_an_outlier_squashes_nothing);
  g_test_add_func ("/trim-map/everything-but-outliers-is-on-the-picture",
                   test_everything_but_outliers_is_on_the_picture);
  g_test_add_func ("/trim-map/words-never-overlap", test_words_never_overlap);
  g_test_add_func ("/trim-map/common-sizes-lose-no-label", test_common_sizes_lose_no_label);
  g_test_add_func ("/trim-map/words-can-be-read-in-every-theme",
                   test_words_can_be_read_in_every_theme);
  return g_test_run ();
}
