/* test-low-chart.c: in a chart of any height no two labels lie on each other.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-layer-axes.h"
#include "rw-layer-ends.h"
#include "rw-layer-limits.h"
#include "scene-fixture.h"

static const double width = 860;

/* Sums of rounded text sizes. */
static const double hair = 1e-6;

typedef struct
{
  SceneFixture   f;
  const RwScene *scene;
  RwLimitsLayer  limits;
  RwEndsLayer    ends;
  RwAxesLayer    axes;
} Chart;

static void
chart_lay_out (Chart *self,
               double height)
{
  self->scene = scene_fixture_build (&self->f, width, height);
  rw_axes_layer_layout (&self->axes, self->scene);
  rw_limits_layer_layout (&self->limits, self->scene);
  rw_ends_layer_layout (&self->ends, self->scene);
}

static void
chart_clear (Chart *self)
{
  rw_axes_layer_clear (&self->axes);
  rw_limits_layer_clear (&self->limits);
  rw_ends_layer_clear (&self->ends);
}

static void
add_box (GArray      *boxes,
         RwChartText *text,
         RwTextRank   rank,
         const char  *words,
         double       x,
         double       y,
         double       align)
{
  const double height = rw_chart_text_height (text, rank) - hair;
  const double wide = rw_chart_text_width (text, rank, words);
  const RwRect box = { x - align * wide, y - height / 2, wide, height };

  g_array_append_val (boxes, box);
}

static void
add_limits (GArray      *boxes,
            const Chart *chart)
{
  const RwLimitsLayer *limits = &chart->limits;

  for (guint i = 0; i < RW_N_LIMITS; i++)
    if (limits->named[i])
      add_box (boxes, chart->f.text, RW_TEXT_CAPTION, limits->words[i], limits->words_x[i], limits->words_y[i],
               limits->align);
}

static void
add_ends (GArray      *boxes,
          const Chart *chart)
{
  for (guint i = 0; i < chart->ends.labels->len; i++)
    {
      const RwEndLabel *label = &g_array_index (chart->ends.labels, RwEndLabel, i);

      if (!label->left_out && label->name != NULL)
        add_box (boxes, chart->f.text, label->quiet ? RW_TEXT_CAPTION : RW_TEXT_LABEL, label->name, label->name_x,
                 label->label_y, 0);
    }
}

static void
add_times (GArray      *boxes,
           const Chart *chart)
{
  const RwAxesLayer *axes = &chart->axes;

  for (guint i = 0; i < axes->time->len; i++)
    {
      const RwAxisTick *tick = &g_array_index (axes->time, RwAxisTick, i);

      if (tick->shown)
        add_box (boxes, chart->f.text, RW_TEXT_CAPTION, tick->words, tick->words_at, axes->words_y, 0.5);
    }
  if (axes->unit_words != NULL)
    add_box (boxes, chart->f.text, RW_TEXT_CAPTION, axes->unit_words, axes->unit_x, axes->words_y, 1);
}

static void
assert_apart (const GArray *boxes,
              double        height)
{
  for (guint i = 0; i < boxes->len; i++)
    for (guint k = i + 1; k < boxes->len; k++)
      {
        const RwRect *a = &g_array_index (boxes, RwRect, i), *b = &g_array_index (boxes, RwRect, k);

        if (rw_rect_overlap (a, b))
          g_error ("height %g: %g…%g and %g…%g overlap", height, a->y, rw_rect_bottom (a), b->y, rw_rect_bottom (b));
      }
}

/* Low as a thin strip, and high as a screen; text of four sizes. */
static void
each_height (RwSession  *session,
             RwViewMode  mode,
             const char *rail,
             void      (*check) (const Chart *chart, double height))
{
  static const double scales[] = { 0.8, 1, 1.5, 2.5 };
  Chart chart;

  scene_fixture_open (&chart.f, session);
  rw_view_set_mode (chart.f.view, mode);
  rw_view_set_rail (chart.f.view, rail);
  rw_view_set_place (chart.f.view, RW_PLACE_CHIP);
  for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
    {
      rw_view_set_text_scale (chart.f.view, scales[i]);
      for (double height = 20; height < 900; height += height < 300 ? 1 : 13)
        {
          chart_lay_out (&chart, height);
          check (&chart, height);
          chart_clear (&chart);
        }
    }
  scene_fixture_close (&chart.f);
}

static void
check_apart (const Chart *chart,
             double       height)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (RwRect));

  add_limits (boxes, chart);
  add_ends (boxes, chart);
  /* Lower than a line of text, the plot itself is no more than a line. */
  if (chart->scene->plot.height >= rw_chart_text_height (chart->f.text, RW_TEXT_LABEL))
    add_times (boxes, chart);
  assert_apart (boxes, height);
}

static RwSession *
every_place (void)
{
  RwSession *session = fixture_empty ();
  static const char *const rails[] = { "p5", "p12", "m5" };
  static const double volts[] = { 5.05, 12.1, -5 };

  for (guint i = 0; i < G_N_ELEMENTS (rails); i++)
    for (RwPlace place = RW_PLACE_TERMINALS; place <= RW_PLACE_CHIP; place++)
      if (place != RW_PLACE_WIRE)
        fixture_reading (session, 10 * (i + 1) + (double) place, rails[i], place, volts[i]);
  return session;
}

static void
test_apart (void)
{
  RwSession *const sessions[] = { fixture_empty (), fixture_trims (), fixture_oddities (), every_place (),
                                  fixture_random (7, 60) };
  static const char *const rails[] = { NULL, "p5", "m5" };

  for (guint i = 0; i < G_N_ELEMENTS (sessions); i++)
    for (guint k = 0; k < G_N_ELEMENTS (rails); k++)
      for (RwViewMode mode = RW_VIEW_POSITION; mode <= RW_VIEW_VOLTS; mode++)
        each_height (sessions[i], mode, rails[k], check_apart);
  for (guint i = 0; i < G_N_ELEMENTS (sessions); i++)
    g_object_unref (sessions[i]);
}

static RwPlace
place_of (const Chart      *chart,
          const RwEndLabel *label)
{
  return rw_scene_trace (chart->scene, label->trace)->channel->place;
}

/* A name of the chosen rail is there as long as any name is, first that of the chosen place; the strong limit is named
 * wherever it is shown; and what there is room for is not left out. */
static void
check_kept (const Chart *chart,
            double       height)
{
  const RwLimitsLayer *limits = &chart->limits;
  const double line = rw_chart_text_height (chart->f.text, RW_TEXT_LABEL);
  gboolean chosen = FALSE, other = FALSE, aimed = FALSE;
  guint n_left = 0;

  for (guint i = 0; i < chart->ends.labels->len; i++)
    {
      const RwEndLabel *label = &g_array_index (chart->ends.labels, RwEndLabel, i);
      const gboolean is_chosen = rw_scene_trace (chart->scene, label->trace)->chosen;

      n_left += label->left_out ? 1 : 0;
      chosen = chosen || (is_chosen && !label->left_out);
      aimed = aimed || (is_chosen && !label->left_out && place_of (chart, label) == RW_PLACE_CHIP);
      other = other || (!is_chosen && !label->left_out);
      g_assert_false (is_chosen && label->left_out && other);
    }
  g_assert_true (chosen && aimed);
  if (chart->ends.labels->len * line <= chart->scene->plot.height)
    g_assert_cmpuint (n_left, ==, 0);
  g_assert_true (limits->named[RW_LIMIT_STRONG] == limits->shown[RW_LIMIT_STRONG]);
  if (chart->scene->plot.height > 8 * line)
    for (guint i = 0; i < RW_N_LIMITS; i++)
      g_assert_true (limits->named[i] || !limits->shown[i]);
}

static void
test_kept (void)
{
  g_autoptr (RwSession) session = every_place ();

  each_height (session, RW_VIEW_POSITION, "m5", check_kept);
  each_height (session, RW_VIEW_POSITION, "p5", check_kept);
}

/* Where there is no room for all three, the middle goes first, then the weak limit. */
static void
check_order (const Chart *chart,
             double       height)
{
  const gboolean *named = chart->limits.named;

  g_assert_true (named[RW_LIMIT_STRONG] || !named[RW_LIMIT_WEAK]);
  g_assert_true (named[RW_LIMIT_WEAK] || !named[RW_LIMIT_MIDDLE]);
}

static void
test_order (void)
{
  g_autoptr (RwSession) session = fixture_empty ();

  each_height (session, RW_VIEW_POSITION, NULL, check_order);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/low-chart/no two labels overlap at any height", test_apart);
  g_test_add_func ("/low-chart/names of the chosen rail and the strong limit stay", test_kept);
  g_test_add_func ("/low-chart/the middle goes first then the weak limit", test_order);
  return g_test_run ();
}
