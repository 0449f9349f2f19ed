/* test-chart-lookup.c: asking the chart: what lies where, and what it says in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "chart-fixture.h"
#include "rw-chart.h"

static void
test_reading_is_found_where_it_is_drawn (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  guint n_found = 0;

  rw_chart_set_size (chart, 1240, 560);
  for (guint n = 1; n <= rw_session_get_n_events (session); n++)
    {
      g_auto (RwChartHit) there = { 0 }, hit = { 0 };

      if (!rw_chart_locate (chart, n, &there) || there.kind != RW_HIT_READING)
        continue;
      g_assert_true (rw_chart_lookup (chart, there.x, there.y, &hit));
      g_assert_cmpuint (hit.n, ==, n);
      g_assert_cmpint ((int) hit.kind, ==, RW_HIT_READING);
      g_assert_cmpfloat (hit.value, ==, rw_session_get_event (session, n - 1)->reading.value);
      g_assert_cmpfloat_with_epsilon (rw_chart_time_at (chart, hit.x), hit.t, 1e-6);
      g_assert_cmpfloat_with_epsilon (rw_chart_x_at (chart, hit.t), hit.x, 1e-6);
      n_found++;
    }
  g_assert_cmpuint (n_found, ==, 25);
}

static void
test_reading_is_told_in_words (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_auto (RwChartHit) hit = { 0 };

  fixture_reading (session, 83, "p5", RW_PLACE_BOARD, 5.021);
  rw_chart_set_size (chart, 800, 400);
  g_assert_true (rw_chart_locate (chart, 1, &hit));
  g_assert_cmpstr (hit.rail, ==, "p5");
  g_assert_cmpint ((int) hit.place, ==, RW_PLACE_BOARD);
  g_assert_cmpint ((int) hit.verdict, ==, RW_VERDICT_INSIDE);
  /* (0.5 % of 5.021 V + 2 mV)/√3 */
  g_assert_cmpfloat_with_epsilon (hit.u, (0.005 * 5.021 + 0.002) / sqrt (3), 1e-9);
  g_assert_nonnull (strstr (hit.text, "+5 V"));
  g_assert_nonnull (strstr (hit.text, "5.021"));
  g_assert_nonnull (strstr (hit.text, "±"));
  g_assert_nonnull (strstr (hit.text, "inside"));
  g_assert_nonnull (strstr (hit.text, "1:23"));
  g_assert_null (strchr (hit.text, '\n'));
}

static void
test_sample_is_found_on_its_line (void)
{
  g_autoptr (RwSession) session = fixture_stream (2000);
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_auto (RwChartHit) there = { 0 }, hit = { 0 };

  rw_chart_set_size (chart, 1240, 560);
  rw_view_set_span (view, 60, 66);
  g_assert_true (rw_chart_locate (chart, 612, &there));
  g_assert_cmpint ((int) there.kind, ==, RW_HIT_SAMPLE);
  g_assert_true (rw_chart_lookup (chart, there.x + 2, there.y - 2, &hit));
  g_assert_cmpint ((int) hit.kind, ==, RW_HIT_SAMPLE);
  g_assert_cmpuint (hit.n, ==, 612);
  g_assert_cmpfloat (hit.value, ==, rw_session_get_event (session, 611)->reading.value);
}

static void
test_moment_is_found_at_its_sign_and_its_line (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_auto (RwChartHit) there = { 0 }, hit = { 0 };
  RwRect plot;

  fixture_event (session, rw_event_make_mark (30, "reset\nseen"));
  rw_chart_set_size (chart, 800, 400);
  rw_chart_get_plot (chart, &plot);
  g_assert_true (rw_chart_locate (chart, 1, &there));
  g_assert_true (rw_chart_lookup (chart, there.x + 2, plot.y + plot.height / 2, &hit));
  g_assert_cmpint ((int) hit.kind, ==, RW_HIT_VERTICAL);
  g_assert_null (hit.rail);
  g_assert_cmpstr (hit.text, ==, "reset seen · 0:30");
  g_assert_false (rw_chart_lookup (chart, there.x + 60, plot.y + plot.height / 2, &hit));
}

static void
test_arrow_keys_visit_every_stop_both_ways (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_autoptr (GArray) there = g_array_new (FALSE, FALSE, sizeof (guint));
  guint n = 0, n_back = 0;
  double t = -1;

  rw_chart_set_size (chart, 900, 420);
  for (;;)
    {
      g_auto (RwChartHit) hit = { 0 };

      if (!rw_chart_step (chart, n, TRUE, &hit))
        break;
      g_assert_cmpfloat (hit.t, >=, t);
      t = hit.t;
      n = hit.n;
      g_array_append_val (there, n);
    }
  g_assert_cmpuint (there->len, ==, rw_session_get_n_events (session));
  for (n = 0;; n_back++)
    {
      g_auto (RwChartHit) hit = { 0 };

      if (!rw_chart_step (chart, n, FALSE, &hit))
        break;
      n = hit.n;
      g_assert_cmpuint (n, ==, g_array_index (there, guint, there->len - 1 - n_back));
    }
  g_assert_cmpuint (n_back, ==, there->len);
}

static char *
name_cb (RwEventType type,
         const char *id,
         gpointer    user_data)
{
  return type == RW_EVENT_SYMPTOM && g_str_equal (id, "resets")
             ? g_strdup ("starts again by itself")
             : NULL;
}

static void
test_symptom_goes_by_the_name_it_is_given (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);
  g_auto (RwChartHit) named = { 0 }, plain = { 0 };

  fixture_event (session, rw_event_make_symptom (10, "resets", RW_SYMPTOM_PRESENT));
  fixture_event (session, rw_event_make_repair (20, "trim-low", RW_REPAIR_FIXED));
  rw_chart_set_size (chart, 900, 420);
  rw_chart_set_name_func (chart, name_cb, NULL, NULL);
  g_assert_true (rw_chart_locate (chart, 1, &named));
  g_assert_nonnull (strstr (named.text, "starts again by itself"));
  g_assert_true (rw_chart_locate (chart, 2, &plain));
  g_assert_nonnull (strstr (plain.text, "trim-low"));
}

static void
test_summary_tells_the_rails_and_moments (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  g_autoptr (RwView) view = rw_view_new (session);
  g_autoptr (RwChart) chart = rw_chart_new (session, view);

  rw_chart_set_size (chart, 900, 420);

  g_autofree char *summary = rw_chart_dup_summary (chart);

  g_assert_nonnull (strstr (summary, "3 rails"));
  g_assert_nonnull (strstr (summary, "+12 V, board"));
  g_assert_nonnull (strstr (summary, "5 turns of the trim"));
  g_assert_nonnull (strstr (summary, "2 marks"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart-lookup/reading-is-found-where-it-is-drawn",
                   test_reading_is_found_where_it_is_drawn);
  g_test_add_func ("/chart-lookup/reading-is-told-in-words", test_reading_is_told_in_words);
  g_test_add_func ("/chart-lookup/sample-is-found-on-its-line", test_sample_is_found_on_its_line);
  g_test_add_func ("/chart-lookup/moment-is-found-at-its-sign-and-its-line",
                   test_moment_is_found_at_its_sign_and_its_line);
  g_test_add_func ("/chart-lookup/arrow-keys-visit-every-stop",
                   test_arrow_keys_visit_every_stop_both_ways);
  g_test_add_func ("/chart-lookup/symptom-goes-by-its-name",
                   test_symptom_goes_by_the_name_it_is_given);
  g_test_add_func ("/chart-lookup/summary-tells-the-rails-and-moments",
                   test_summary_tells_the_rails_and_moments);
  return g_test_run ();
}
