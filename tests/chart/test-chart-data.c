/* test-chart-data.c: what there is to draw, however the session came to be.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "chart-fixture.h"
#include "rw-chart-data.h"

static void
write_channel (const RwChartChannel *channel,
               GString              *out)
{
  const guint n = rw_pyramid_get_n (channel->samples);
  double lo = NAN, hi = NAN;

  g_string_append_printf (out, "%s %d %d:", channel->rail, (int) channel->place,
                          (int) channel->kind);
  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, " %u=%.9g@%.9g", rw_pyramid_get_tag (channel->samples, i),
                            rw_pyramid_get_value (channel->samples, i),
                            rw_pyramid_get_time (channel->samples, i));
  rw_pyramid_range (channel->samples, 0, n, &lo, &hi);
  g_string_append_printf (out, " [%.9g %.9g]", lo, hi);
  for (guint i = 0; i < channel->readings->len; i++)
    {
      const RwChartReading *reading = &g_array_index (channel->readings, RwChartReading, i);

      g_string_append_printf (out, " r%u=%.9g±%.9g@%.9g", reading->index, reading->value,
                              reading->u, reading->t);
    }
  g_string_append_c (out, '\n');
}

static gint
compare_lines (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

/* All of it as text; channels with nothing in them left out, in an order of their own. */
static char *
written (RwChartData *data)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < rw_chart_data_get_n_channels (data); i++)
    {
      const RwChartChannel *channel = rw_chart_data_get_channel (data, i);
      GString *line = g_string_new (NULL);

      write_channel (channel, line);
      if (rw_pyramid_get_n (channel->samples) > 0 || channel->readings->len > 0)
        g_ptr_array_add (lines, g_string_free (line, FALSE));
      else
        g_string_free (line, TRUE);
    }
  g_ptr_array_sort (lines, compare_lines);
  for (guint i = 0; i < lines->len; i++)
    g_string_append (out, lines->pdata[i]);
  for (guint i = 0; i < rw_chart_data_get_n_verticals (data); i++)
    {
      const RwChartVertical *v = rw_chart_data_get_vertical (data, i);

      g_string_append_printf (out, "v%u %d #%u %d%d%d %d%d%d\n", v->index, (int) v->type,
                              v->count, v->news.power_on, v->news.board_fitted, v->news.warm,
                              v->after.power_on, v->after.board_fitted, v->after.warm);
    }
  return g_string_free (out, FALSE);
}

static void
assert_as_fresh (RwChartData *data,
                 RwSession   *session)
{
  g_autoptr (RwChartData) fresh = rw_chart_data_new (session);
  g_autofree char *ours = written (data), *theirs = written (fresh);

  g_assert_cmpstr (ours, ==, theirs);
}

static void
test_grown_is_as_fresh (void)
{
  for (guint32 seed = 0; seed < 12; seed++)
    {
      g_autoptr (RwSession) session = fixture_empty ();
      g_autoptr (RwChartData) data = rw_chart_data_new (session);
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      double t = 0;

      for (guint i = 0; i < 150; i++)
        {
          t = fixture_add_random (session, random, t);
          assert_as_fresh (data, session);
        }
    }
}

static void
test_rewound_is_as_fresh_and_grows_on (void)
{
  for (guint32 seed = 20; seed < 60; seed++)
    {
      g_autoptr (RwSession) session = fixture_random (seed, 120);
      g_autoptr (RwChartData) data = rw_chart_data_new (session);
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);
      double t;

      rw_session_rewind (session, (guint) g_rand_int_range (random, 0, 121));
      assert_as_fresh (data, session);
      t = rw_session_get_end (session);
      for (guint i = 0; i < 40; i++)
        t = fixture_add_random (session, random, t);
      assert_as_fresh (data, session);
    }
}

static gboolean
is_of_stream (RwSession     *session,
              const RwEvent *event)
{
  const int target = event->type == RW_EVENT_RETRACT ? rw_session_find (session, event->retract.n) : -1;
  const RwEvent *named = target >= 0 ? rw_session_get_event (session, (guint) target) : NULL;

  return named != NULL && (named->type == RW_EVENT_SAMPLE || named->type == RW_EVENT_GAP);
}

/* As programs write them: readings and what people did are taken back, samples and gaps are not. */
static RwSession *
steady (guint32 seed)
{
  g_autoptr (RwSession) session = fixture_random (seed, 200);
  RwSession *kept = fixture_empty ();

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      RwEvent copy = rw_event_copy (rw_session_get_event (session, i));

      if (is_of_stream (session, &copy))
        rw_event_clear (&copy);
      else
        rw_session_add (kept, &copy);
    }
  return kept;
}

/* A part of another session, wherever its end jumps to. */
static void
test_part_is_as_fresh (void)
{
  for (guint32 seed = 60; seed < 110; seed++)
    {
      g_autoptr (RwSession) whole = seed % 4 == 0   ? fixture_random (seed, 160)
                                    : seed % 4 == 1 ? fixture_stream (160)
                                                    : steady (seed);
      g_autoptr (RwSession) part = rw_session_new_part (whole);
      g_autoptr (RwChartData) data = rw_chart_data_new (part);
      g_autoptr (GRand) random = g_rand_new_with_seed (seed);

      for (guint i = 0; i < 25; i++)
        {
          const guint n = (guint) g_rand_int_range (random, 0, (int) rw_session_get_n_events (whole) + 1);
          g_autoptr (RwSession) fresh = fixture_empty ();
          g_autoptr (RwChartData) other = rw_chart_data_new (fresh);

          for (guint k = 0; k < n; k++)
            {
              RwEvent copy = rw_event_copy (rw_session_get_event (whole, k));

              rw_session_add (fresh, &copy);
            }
          rw_session_rewind (part, n);
          rw_session_advance (part, n);
          assert_as_fresh (data, part);

          g_autofree char *ours = written (data), *theirs = written (other);

          g_assert_cmpstr (ours, ==, theirs);
        }
    }
}

/* Without retracts nothing is ever collected anew: the cutting itself is what is tested. */
static void
test_rewound_stream_is_as_fresh_at_every_length (void)
{
  g_autoptr (RwSession) session = fixture_stream (90);
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  for (guint n = rw_session_get_n_events (session); n-- > 0;)
    {
      rw_session_rewind (session, n);
      assert_as_fresh (data, session);
    }
  g_assert_cmpuint (rw_chart_data_get_n_verticals (data), ==, 0);
}

static const RwChartChannel *
p5_board (RwChartData *data)
{
  return rw_chart_data_find_channel (data, "p5", RW_PLACE_BOARD, RW_KIND_DC);
}

static guint
n_holes (const RwChartChannel *channel)
{
  guint n = 0;

  for (guint i = 0; i < rw_pyramid_get_n (channel->samples); i++)
    n += isnan (rw_pyramid_get_value (channel->samples, i)) ? 1 : 0;
  return n;
}

static void
test_gap_of_the_meter_leaves_a_hole (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  fixture_sample (session, 1, "p5", RW_PLACE_BOARD, 5);
  fixture_event (session, rw_event_make_gap (1.2, "other", "unplugged"));
  g_assert_cmpuint (n_holes (p5_board (data)), ==, 0);
  fixture_event (session, rw_event_make_gap (1.3, "m1", "unplugged"));
  fixture_sample (session, 1.5, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpuint (n_holes (p5_board (data)), ==, 1);
}

static void
test_overload_is_a_hole (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  fixture_sample (session, 1, "p5", RW_PLACE_BOARD, NAN);
  g_assert_cmpuint (n_holes (p5_board (data)), ==, 1);
}

/* Leads that were elsewhere for a while: the line does not run across. A slow meter's pace is no
 * pause. */
static void
test_pause_leaves_a_hole_but_a_slow_meter_does_not (void)
{
  g_autoptr (RwSession) quick = fixture_empty (), slow = fixture_empty ();
  g_autoptr (RwChartData) quick_data = rw_chart_data_new (quick),
                          slow_data = rw_chart_data_new (slow);

  for (guint i = 0; i < 10; i++)
    fixture_sample (quick, 0.3 * i, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpuint (n_holes (p5_board (quick_data)), ==, 0);
  fixture_sample (quick, 10, "p5", RW_PLACE_BOARD, 5);
  fixture_sample (quick, 10.3, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpuint (n_holes (p5_board (quick_data)), ==, 1);
  fixture_sample (quick, 30, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpuint (n_holes (p5_board (quick_data)), ==, 2);
  for (guint i = 0; i < 10; i++)
    fixture_sample (slow, 4.0 * i, "p5", RW_PLACE_BOARD, 5);
  g_assert_cmpuint (n_holes (p5_board (slow_data)), ==,
                    1); /* before the second: nobody knows the pace yet */
}

static void
test_position_is_that_of_the_core (void)
{
  static const struct
  {
    const char *rail;
    RwPlace     place;
    double      value, position;
  } cases[] = {
    { "p5", RW_PLACE_BOARD, 5.2, 1 },  { "p5", RW_PLACE_BOARD, 4.9, -1 },
    { "p5", RW_PLACE_BOARD, 5.05, 0 }, { "p5", RW_PLACE_TERMINALS, 5.4, 1 },
    { "m5", RW_PLACE_BOARD, -5.5, 1 }, { "m5", RW_PLACE_BOARD, -4.5, -1 },
    { "p5", RW_PLACE_WIRE, 0.1, 1 },   { "m5", RW_PLACE_WIRE, 0.1, 1 },
    { "gnd", RW_PLACE_WIRE, 0.05, 1 },
  };
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      fixture_reading (session, i, cases[i].rail, cases[i].place, cases[i].value);

      const RwChartChannel *channel = rw_chart_data_find_channel (data, cases[i].rail,
                                                                  cases[i].place, RW_KIND_DC);

      g_assert_true (channel->limited);
      g_assert_cmpfloat_with_epsilon (channel->gain * cases[i].value + channel->offset,
                                      cases[i].position, 1e-9);
    }
}

static void
test_ohms_and_the_like_are_not_drawn (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  for (guint kind = RW_KIND_OHMS; kind < RW_N_KINDS; kind++)
    {
      const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, (RwKind) kind, 3, 0.1, NULL);

      fixture_event (session, rw_event_make_reading (kind, &reading));
      fixture_event (session, rw_event_make_sample (kind, &reading));
    }
  g_assert_cmpuint (rw_chart_data_get_n_channels (data), ==, 0);
}

static void
test_setup_that_says_nothing_new_is_no_moment (void)
{
  const RwSetup on = { RW_SAID_YES, RW_SAID_NOT, RW_SAID_NOT },
                both = { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT };
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  fixture_event (session, rw_event_make_setup (0, on));
  fixture_event (session, rw_event_make_setup (1, on));
  fixture_event (session, rw_event_make_setup (2, both));
  g_assert_cmpuint (rw_chart_data_get_n_verticals (data), ==, 2);
  g_assert_cmpint (rw_chart_data_get_vertical (data, 1)->news.power_on, ==, RW_SAID_NOT);
  g_assert_cmpint (rw_chart_data_get_vertical (data, 1)->news.board_fitted, ==, RW_SAID_YES);
}

/* Rewound to before the board went in, its going in is news again. */
static void
test_rewound_setup_is_forgotten (void)
{
  const RwSetup fitted = { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT },
                out = { RW_SAID_YES, RW_SAID_NO, RW_SAID_NOT };
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  fixture_event (session, rw_event_make_setup (0, out));
  fixture_event (session, rw_event_make_setup (1, fitted));
  rw_session_rewind (session, 1);
  fixture_event (session, rw_event_make_setup (2, fitted));
  g_assert_cmpuint (rw_chart_data_get_n_verticals (data), ==, 2);
  g_assert_cmpint (rw_chart_data_get_vertical (data, 1)->news.board_fitted, ==, RW_SAID_YES);
  assert_as_fresh (data, session);
}

static void
test_retracted_trim_is_not_counted (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  g_autoptr (RwChartData) data = rw_chart_data_new (session);

  fixture_event (session, rw_event_make_trim (1));
  fixture_event (session, rw_event_make_trim (2));
  fixture_event (session, rw_event_make_retract (3, 1));
  g_assert_cmpuint (rw_chart_data_get_n_verticals (data), ==, 1);
  g_assert_cmpuint (rw_chart_data_get_vertical (data, 0)->count, ==, 1);
  fixture_event (session, rw_event_make_retract (4, 3));
  g_assert_cmpuint (rw_chart_data_get_n_verticals (data), ==, 2);
}

static void
test_charts_of_one_session_share (void)
{
  g_autoptr (RwSession) session = fixture_trims ();
  RwChartData *one = rw_chart_data_for (session), *other = rw_chart_data_for (session);

  g_assert_true (one == other);
  g_object_unref (other);
  g_assert_finalize_object (one);

  g_autoptr (RwChartData) again = rw_chart_data_for (session);

  g_assert_cmpuint (rw_chart_data_get_n_channels (again), >, 0);
}

static void
look_first_cb (RwSession *session,
               guint      n,
               gpointer   user_data)
{
  RwChartData **data = user_data;

  rw_chart_data_catch_up (*data);
  assert_as_fresh (*data, session);
}

/* Somebody else, told before the data is, may look at it all the same. */
static void
test_told_late_it_still_catches_up (void)
{
  g_autoptr (RwSession) session = fixture_empty ();
  RwChartData *data = NULL;
  const gulong added = g_signal_connect (session, "added", G_CALLBACK (look_first_cb), &data);
  const gulong rewound = g_signal_connect (session, "rewound", G_CALLBACK (look_first_cb), &data);

  data = rw_chart_data_new (session); /* its handlers come after ours */
  fixture_reading (session, 1, "p5", RW_PLACE_BOARD, 5);
  fixture_event (session, rw_event_make_trim (2));
  rw_session_rewind (session, 1);
  g_signal_handler_disconnect (session, added);
  g_signal_handler_disconnect (session, rewound);
  g_assert_finalize_object (data);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart-data/grown-is-as-fresh", test_grown_is_as_fresh);
  g_test_add_func ("/chart-data/rewound-is-as-fresh-and-grows-on",
                   test_rewound_is_as_fresh_and_grows_on);
  g_test_add_func ("/chart-data/part-is-as-fresh", test_part_is_as_fresh);
  g_test_add_func ("/chart-data/rewound-stream-is-as-fresh",
                   test_rewound_stream_is_as_fresh_at_every_length);
  g_test_add_func ("/chart-data/gap-of-the-meter-leaves-a-hole",
                   test_gap_of_the_meter_leaves_a_hole);
  g_test_add_func ("/chart-data/overload-is-a-hole", test_overload_is_a_hole);
  g_test_add_func ("/chart-data/pause-leaves-a-hole",
                   test_pause_leaves_a_hole_but_a_slow_meter_does_not);
  g_test_add_func ("/chart-data/position-is-that-of-the-core", test_position_is_that_of_the_core);
  g_test_add_func ("/chart-data/ohms-and-the-like-are-not-drawn",
                   test_ohms_and_the_like_are_not_drawn);
  g_test_add_func ("/chart-data/setup-without-news-is-no-moment",
                   test_setup_that_says_nothing_new_is_no_moment);
  g_test_add_func ("/chart-data/rewound-setup-is-forgotten", test_rewound_setup_is_forgotten);
  g_test_add_func ("/chart-data/retracted-trim-is-not-counted", test_retracted_trim_is_not_counted);
  g_test_add_func ("/chart-data/charts-of-one-session-share", test_charts_of_one_session_share);
  g_test_add_func ("/chart-data/told-late-it-still-catches-up", test_told_late_it_still_catches_up);
  return g_test_run ();
}
