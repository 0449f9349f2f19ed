/* test-chart.c: the chart as a picture: what is inked, when, and how it is kept.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "chart-fixture.h"
#include "rw-chart.h"

static cairo_surface_t *
inked (RwChart    *chart,
       int         width,
       int         height,
       RwInkTarget target)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (image);

  rw_chart_ink (chart, cr, width, height, target);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  return image;
}

static gboolean
same_picture (cairo_surface_t *a,
              cairo_surface_t *b)
{
  const gsize size = (gsize) cairo_image_surface_get_stride (a)
                     * (gsize) cairo_image_surface_get_height (a);

  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), size) == 0;
}

static void
ink_and_forget (RwChart    *chart,
                int         width,
                int         height,
                RwInkTarget target)
{
  cairo_surface_destroy (inked (chart, width, height, target));
}

typedef RwSession *(*MakeFunc) (void);

static RwSession *
one_point (void)
{
  RwSession *session = fixture_empty ();

  fixture_reading (session, 3, "p5", RW_PLACE_BOARD, 5);
  return session;
}

static RwSession *
one_sample (void)
{
  RwSession *session = fixture_empty ();

  fixture_sample (session, 3, "p5", RW_PLACE_BOARD, 5);
  return session;
}

static RwSession *
nothing_but_overload (void)
{
  RwSession *session = fixture_empty ();

  fixture_sample (session, 3, "p5", RW_PLACE_BOARD, NAN);
  fixture_reading (session, 4, "p5", RW_PLACE_BOARD, NAN);
  return session;
}

static RwSession *
all_at_once (void)
{
  RwSession *session = fixture_empty ();

  for (guint i = 0; i < 50; i++)
    {
      fixture_sample (session, 7, "p5", RW_PLACE_BOARD, 5);
      fixture_reading (session, 7, "p5", RW_PLACE_BOARD, 5);
      fixture_event (session, rw_event_make_mark (7, "all\nat once"));
      fixture_event (session, rw_event_make_trim (7));
    }
  return session;
}

static RwSession *
huge_numbers (void)
{
  RwSession *session = fixture_empty ();

  fixture_sample (session, 1e12, "p5", RW_PLACE_BOARD, 1e300);
  fixture_sample (session, 1e12 + 0.1, "p5", RW_PLACE_BOARD, -1e300);
  fixture_reading (session, 1e15, "heater", RW_PLACE_BOARD, 1e308);
  fixture_event (session, rw_event_make_mark (1e300, ""));
  return session;
}

static RwSession *
some_thousand (void)
{
  return fixture_random (3, 3000);
}

static void
ask_everything (RwChart *chart)
{
  g_autofree char *summary = rw_chart_dup_summary (chart);
  RwRect plot;

  g_assert_true (summary[0] != '\0' && g_utf8_validate (summary, -1, NULL));
  rw_chart_get_plot (chart, &plot);
  for (double x = -5; x < 400; x += 31)
    for (double y = -5; y < 300; y += 23)
      {
        g_auto (RwChartHit) hit = { 0 };

        if (rw_chart_lookup (chart, x, y, &hit))
          g_assert_true (hit.n > 0 && g_utf8_validate (hit.text, -1, NULL));
      }
}

static void
try_all_looks (RwSession *session)
{
  static const char *const rails[] = { NULL, "p5", "gnd", "heater", "no such rail" };
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);

  for (guint mode = 0; mode < RW_N_VIEW_MODES; mode++)
    for (guint r = 0; r < G_N_ELEMENTS (rails); r++)
      {
        rw_view_set_mode (view, (RwViewMode) mode);
        rw_view_set_rail (view, rails[r]);
        rw_view_set_theme (view, (RwThemeId) (r % RW_N_THEMES));
        rw_view_set_place (view, (RwPlace) (r % RW_N_PLACES));
        rw_view_fit (view);
        ink_and_forget (chart, 380, 240, RW_INK_SCREEN);
        ask_everything (chart);
        rw_view_zoom (view, 0.2, 3);
        ink_and_forget (chart, 380, 240, RW_INK_VECTOR);
        ink_and_forget (chart, 3, 2, RW_INK_SCREEN);
      }
}

static void
test_any_session_in_any_look_is_drawn (void)
{
  static const MakeFunc makers[] = { fixture_empty, fixture_trims, fixture_oddities,
                                     one_point,     one_sample,    nothing_but_overload,
                                     all_at_once,   huge_numbers,  some_thousand };

  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    {
      g_autoptr (RwSession) session = makers[i]();

      try_all_looks (session);
    }
}

static void
count_cb (RwChart *chart,
          guint   *count)
{
  (*count)++;
}

static void
test_changed_once_until_inked (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  guint count = 0;

  g_signal_connect (chart, "changed", G_CALLBACK (count_cb), &count);
  g_assert_true (rw_chart_needs_ink (chart));
  ink_and_forget (chart, 640, 320, RW_INK_SCREEN);
  g_assert_false (rw_chart_needs_ink (chart));
  g_assert_cmpuint (count, ==, 0);

  fixture_reading (session, 380, "p5", RW_PLACE_BOARD, 5);
  rw_view_set_theme (view, RW_THEME_DARK);
  rw_chart_set_title (chart, "T", NULL);
  g_assert_cmpuint (count, ==, 1);
  g_assert_true (rw_chart_needs_ink (chart));
  ink_and_forget (chart, 640, 320, RW_INK_SCREEN);
  g_assert_false (rw_chart_needs_ink (chart));

  rw_view_set_hovered (view, 3); /* the pointer is another's business */
  rw_view_set_theme (view, RW_THEME_DARK);
  g_assert_cmpuint (count, ==, 1);
  ink_and_forget (chart, 600, 320, RW_INK_SCREEN); /* told to nobody: the caller knows */
  g_assert_cmpuint (count, ==, 1);
  g_assert_false (rw_chart_needs_ink (chart));
}

typedef void (*LookFunc) (RwView *view);

static void
look_darker (RwView *view)
{
  rw_view_set_theme (view, RW_THEME_DARK);
}

static void
look_at_m5 (RwView *view)
{
  rw_view_set_rail (view, "m5");
}

static void
look_at_volts (RwView *view)
{
  rw_view_set_mode (view, RW_VIEW_VOLTS);
}

static void
look_at_terminals (RwView *view)
{
  rw_view_set_place (view, RW_PLACE_TERMINALS);
}

static void
look_larger (RwView *view)
{
  rw_view_set_text_scale (view, 1.5);
}

static void
look_shorter (RwView *view)
{
  rw_view_set_span (view, 0, 100);
}

static void
look_later (RwView *view)
{
  rw_view_set_span (view, 10, 100);
}

static void
test_each_change_of_the_look_asks_for_ink (void)
{
  static const LookFunc looks[] = { look_darker, look_at_m5,   look_at_volts, look_at_terminals,
                                    look_larger, look_shorter, look_later };
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  cairo_surface_t *before = inked (chart, 640, 320, RW_INK_SCREEN);

  for (guint i = 0; i < G_N_ELEMENTS (looks); i++)
    {
      looks[i](view);
      g_assert_true (rw_chart_needs_ink (chart));

      cairo_surface_t *after = inked (chart, 640, 320, RW_INK_SCREEN);

      g_assert_false (same_picture (before, after));
      cairo_surface_destroy (before);
      before = after;
    }
  cairo_surface_destroy (before);
}

/* Whatever was inked before, the picture is that of a chart made this moment. */
static void
test_kept_picture_is_as_a_fresh_one (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_autoptr (GRand) random = g_rand_new_with_seed (9);
  double t = 0;

  for (guint i = 0; i < 60; i++)
    {
      t = fixture_add_random (session, random, t);
      if (i % 10 == 9)
        rw_session_rewind (session, rw_session_get_n_events (session) - 4);
      if (i % 7 == 0)
        rw_view_zoom (view, 0.7, t / 2);

      g_autoptr (RwChart) fresh = rw_chart_new (session, view);
      cairo_surface_t *ours = inked (chart, 500, 260, RW_INK_SCREEN),
                      *again = inked (chart, 500, 260, RW_INK_SCREEN);
      cairo_surface_t *theirs = inked (fresh, 500, 260, RW_INK_SCREEN);

      g_assert_true (same_picture (ours, theirs));
      g_assert_true (same_picture (again, theirs));
      cairo_surface_destroy (ours);
      cairo_surface_destroy (again);
      cairo_surface_destroy (theirs);
    }
}

static void
look_cb (RwChart *chart)
{
  g_autofree char *summary = rw_chart_dup_summary (chart);
  g_auto (RwChartHit) under = { 0 }, last = { 0 };

  rw_chart_lookup (chart, 200, 100, &under);
  rw_chart_step (chart, 0, FALSE, &last);
}

/* The view is told of a rewind before the data is; who looks at once must not see what is gone. */
static void
test_looked_at_in_the_middle_of_a_rewind (void)
{
  g_autoptr (RwSession) session = fixture_random (11, 400);
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_autoptr (GRand) random = g_rand_new_with_seed (2);

  g_signal_connect_swapped (view, "changed", G_CALLBACK (look_cb), chart);
  ink_and_forget (chart, 500, 260, RW_INK_SCREEN);
  while (rw_session_get_n_events (session) > 0)
    {
      look_cb (chart);
      rw_session_rewind (session, rw_session_get_n_events (session) * 9 / 10);
      if (g_rand_boolean (random))
        fixture_add_random (session, random, rw_session_get_end (session));
      if (rw_session_get_n_events (session) < 12)
        rw_session_rewind (session, 0);
    }
}

static void
test_device_scale_doubles_the_pixels_not_the_layout (void)
{
  g_autoptr (RwSession) session = fixture_stream (500);
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  RwRect one, two;

  rw_chart_set_size (chart, 600, 300);
  rw_chart_get_plot (chart, &one);
  rw_chart_set_device_scale (chart, 2);
  rw_chart_get_plot (chart, &two);
  g_assert_true (memcmp (&one, &two, sizeof one) == 0);
  ink_and_forget (chart, 600, 300, RW_INK_SCREEN);
}

static void
test_ink_leaves_the_context_as_it_was (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 400, 300);
  cairo_t *cr = cairo_create (image);

  cairo_translate (cr, 7, 9);
  cairo_set_line_width (cr, 5);
  for (guint target = RW_INK_SCREEN; target <= RW_INK_VECTOR; target++)
    {
      double x = 0, y = 0;

      rw_chart_ink (chart, cr, 400, 300, (RwInkTarget) target);
      cairo_user_to_device (cr, &x, &y);
      g_assert_true (x == 7 && y == 9);
      g_assert_cmpfloat (cairo_get_line_width (cr), ==, 5);
      g_assert_cmpint (cairo_get_dash_count (cr), ==, 0);
      g_assert_false (cairo_has_current_point (cr));
    }
  cairo_destroy (cr);
  cairo_surface_destroy (image);
}

static void
test_cursor_stays_on_the_picture (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  cairo_surface_t *before = inked (chart, 500, 300, RW_INK_SCREEN),
                  *after = inked (chart, 500, 300, RW_INK_SCREEN);
  cairo_t *cr = cairo_create (after);
  g_auto (RwChartHit) hit = { 0 };

  g_assert_true (rw_chart_step (chart, 0, FALSE, &hit));
  rw_chart_ink_cursor (chart, cr, &hit);
  cairo_destroy (cr);
  cairo_surface_flush (after);
  g_assert_false (same_picture (before, after));
  g_assert_false (rw_chart_needs_ink (chart));
  cairo_surface_destroy (before);
  cairo_surface_destroy (after);
}

static void
test_chart_lets_go_of_all (void)
{
  RwSession *session = fixture_trims ();
  RwView *view = rw_view_new (session);
  RwChart *chart = rw_chart_new (session, view);

  ink_and_forget (chart, 500, 300, RW_INK_SCREEN);
  g_assert_finalize_object (chart);
  rw_view_set_theme (view, RW_THEME_DARK);
  g_assert_finalize_object (view);
  g_assert_finalize_object (session);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart/any-session-in-any-look-is-drawn",
                   test_any_session_in_any_look_is_drawn);
  g_test_add_func ("/chart/changed-once-until-inked", test_changed_once_until_inked);
  g_test_add_func ("/chart/each-change-of-the-look-asks-for-ink",
                   test_each_change_of_the_look_asks_for_ink);
  g_test_add_func ("/chart/kept-picture-is-as-a-fresh-one", test_kept_picture_is_as_a_fresh_one);
  g_test_add_func ("/chart/looked-at-in-the-middle-of-a-rewind",
                   test_looked_at_in_the_middle_of_a_rewind);
  g_test_add_func ("/chart/device-scale-doubles-the-pixels",
                   test_device_scale_doubles_the_pixels_not_the_layout);
  g_test_add_func ("/chart/ink-leaves-the-context-as-it-was",
                   test_ink_leaves_the_context_as_it_was);
  g_test_add_func ("/chart/cursor-stays-on-the-picture", test_cursor_stays_on_the_picture);
  g_test_add_func ("/chart/lets-go-of-all", test_chart_lets_go_of_all);
  return g_test_run ();
}
