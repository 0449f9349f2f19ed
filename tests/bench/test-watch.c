/* test-watch.c: what the watch window says: dips and resets of a wiggle test, a warm-up's points, ripple.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sessions are played from words or samples with times of their own, so nothing here waits.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "bench-play.h"
#include "fixtures.h"
#include "rw-watch-model.h"
#include "rw-watch-wiggle.h"

/* --- wiggle --------------------------------------------------------------------------------------- */

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static void
add_sample_at (RwSession  *session,
               double      t,
               const char *rail,
               RwPlace     place,
               RwKind      kind,
               double      value)
{
  const RwReading sample = rw_reading_make (g_intern_string (rail), place, kind, value, 0.001,
                                            g_intern_static_string ("m1"));

  add (session, rw_event_make_sample (t, &sample));
}

static void
add_sample (RwSession *session,
            double     t,
            double     value)
{
  add_sample_at (session, t, "p5", RW_PLACE_BOARD, RW_KIND_DC, value);
}

/* Four readings a second from @from to @to, with a dip of @depth volts and two samples every @every seconds; after
 * each a reset, @late seconds after the first sample away (NaN: none). */
static void
wiggle (RwSession *session,
        double     from,
        double     to,
        double     every,
        double     depth,
        double     late)
{
  const int n = (int) ((to - from) * 4);
  const int period = (int) (every * 4);

  for (int i = 0; i < n; i++)
    {
      const int phase = i % period;
      const gboolean away = i >= period && phase < 2;
      const double t = from + i / 4.0;

      add_sample (session, t, 5.02 + (i % 3 - 1) * 0.001 - (away ? depth : 0));
      if (i >= period && !isnan (late) && phase == (int) (late * 4))
        add (session, rw_event_make_mark (t + 0.05, RW_WATCH_RESET));
    }
}

static void
test_dips (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwWatchWiggle) watch = rw_watch_wiggle_new (session);

  wiggle (session, 0, 60, 10, 0.2, (double) NAN);
  g_assert_null (rw_watch_wiggle_get_dips (watch));
  rw_watch_wiggle_start (watch, 60, "p5", RW_PLACE_BOARD);
  wiggle (session, 60, 160, 10, 0.2, 0.5);
  rw_watch_wiggle_stop (watch);
  wiggle (session, 160, 260, 10, 0.2, 0.5);

  const RwDips *dips = rw_watch_wiggle_get_dips (watch);
  const RwTogether together = rw_watch_wiggle_get_together (watch);
  g_autofree char *record = rw_watch_wiggle_dup_record (watch);
  g_autofree char *words = rw_watch_wiggle_describe_dip (watch, rw_dips_get (dips, 0));

  g_assert_cmpuint (rw_dips_get_count (dips, RW_DIP_DIP), ==, 9);
  g_assert_cmpfloat_with_epsilon (rw_dips_get (dips, 0)->size, -0.2, 0.004);
  g_assert_cmpfloat_with_epsilon (rw_dips_get (dips, 0)->start, 70, 0.01);
  g_assert_cmpuint (rw_watch_wiggle_get_n_resets (watch), ==, 9);
  g_assert_cmpuint (together.n_hits, ==, 9);
  g_assert_cmpint (together.verdict, ==, RW_TOGETHER_SURE);
  /* Nine windows of a second out of about a hundred: (9/98)^9 or so. */
  g_assert_cmpfloat_with_epsilon (log10 (together.p), 9 * log10 (9 / 98.0), 0.3);
  g_assert_nonnull (strstr (record, "9 dips"));
  g_assert_nonnull (strstr (words, "1:10"));
}

static void
test_strangers (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwWatchWiggle) watch = rw_watch_wiggle_new (session);

  rw_watch_wiggle_start (watch, 0, "p5", RW_PLACE_BOARD);
  wiggle (session, 0, 100, 10, 0.2, 5);

  const RwTogether together = rw_watch_wiggle_get_together (watch);

  g_assert_cmpuint (together.n_marks, ==, 9);
  g_assert_cmpuint (together.n_hits, ==, 0);
  g_assert_cmpint (together.verdict, ==, RW_TOGETHER_NO);
}

static void
test_only_this_spot (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwWatchWiggle) watch = rw_watch_wiggle_new (session);

  rw_watch_wiggle_start (watch, 0, "p5", RW_PLACE_BOARD);
  for (int i = 0; i < 40; i++)
    {
      add_sample (session, i / 4.0, 5.02);
      add_sample_at (session, i / 4.0 + 0.01, "p12", RW_PLACE_BOARD, RW_KIND_DC, 12.1);
      add_sample_at (session, i / 4.0 + 0.02, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.2);
      add_sample_at (session, i / 4.0 + 0.03, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 0.02);
    }
  g_assert_cmpuint (rw_dips_get_n (rw_watch_wiggle_get_dips (watch)), ==, 0);
  g_assert_cmpuint (rw_watch_wiggle_get_elsewhere (watch), ==, 120);
}

/* What was marked before anything was learnt, or long after the last sample, does not count; nor what was taken back. */
static void
test_marks (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwWatchWiggle) watch = rw_watch_wiggle_new (session);

  rw_watch_wiggle_start (watch, 0, "p5", RW_PLACE_BOARD);
  add (session, rw_event_make_mark (0, RW_WATCH_RESET));
  wiggle (session, 0, 30, 10, 0.2, 0.5);
  add (session, rw_event_make_mark (30, "something else"));
  g_assert_cmpuint (rw_watch_wiggle_get_n_resets (watch), ==, 2);
  g_assert_cmpuint (rw_watch_wiggle_get_n_away (watch), ==, 1);
  add (session, rw_event_make_mark (90, RW_WATCH_RESET));
  g_assert_cmpuint (rw_watch_wiggle_get_n_away (watch), ==, 2);

  const guint newest = rw_session_get_event (session, rw_session_get_n_events (session) - 1)->n;

  add (session, rw_event_make_retract (91, newest));
  g_assert_cmpuint (rw_watch_wiggle_get_n_away (watch), ==, 1);
  g_assert_cmpuint (rw_watch_wiggle_get_n_resets (watch), ==, 2);
}

/* An hour without a sample between two minutes of test must not make the windows look rare. */
static void
test_gap (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwWatchWiggle) watch = rw_watch_wiggle_new (session);

  rw_watch_wiggle_start (watch, 0, "p5", RW_PLACE_BOARD);
  wiggle (session, 0, 60, 10, 0.2, 0.5);

  const double before = rw_watch_wiggle_get_together (watch).share;

  wiggle (session, 3660, 3720, 10, 0.2, 0.5);
  g_assert_cmpfloat_with_epsilon (rw_watch_wiggle_get_together (watch).share, before, 0.02);
}

static void
test_rewound (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwWatchWiggle) watch = rw_watch_wiggle_new (session);

  rw_watch_wiggle_start (watch, 0, "p5", RW_PLACE_BOARD);
  wiggle (session, 0, 60, 10, 0.2, 0.5);
  rw_session_rewind (session, 10);
  g_assert_false (rw_watch_wiggle_is_running (watch));
  g_assert_null (rw_watch_wiggle_get_dips (watch));
  g_assert_cmpuint (rw_watch_wiggle_get_n_resets (watch), ==, 0);
}

/* --- warm-up -------------------------------------------------------------------------------------- */

static const RwWatchSpot *
spot_of (const GArray *spots,
         const char   *name)
{
  for (guint i = 0; i < spots->len; i++)
    {
      const RwWatchSpot *spot = &g_array_index (spots, RwWatchSpot, i);
      g_autofree char *is = rw_watch_spot_name (spot);

      if (g_str_equal (is, name))
        return spot;
    }
  return NULL;
}

static void
test_points (void)
{
  g_autoptr (RwSession) session = bench_play ("m3;fitted;on;p5 board 5.020;wait 897;p5 board 5.018", NULL);
  g_autoptr (GArray) spots = rw_watch_list_spots (session, 6 + 28 * 60);
  const RwWatchSpot *board = spot_of (spots, "+5 V, board");
  const char *const says[] = { "0 min: 5.02", "5 min: missed", "15 min: 5.018", "30 min: due now", "60 min: later" };

  g_assert_cmpuint (spots->len, ==, 2); /* the reference's terminals too: they tell supply from wiring */
  g_assert_nonnull (board);
  for (int i = 0; i < RW_WARM_UP_N_POINTS; i++)
    {
      g_autofree char *words = rw_watch_point_words (&board->read.points[i]);

      g_assert_true (g_str_has_prefix (words, says[i]));
    }
}

/* No digit is shown that the meter did not have. */
static void
test_digits (void)
{
  g_autoptr (RwSession) session = bench_play ("m3;step 0.01;fitted;on;p12 board 11.98", NULL);
  g_autoptr (GArray) spots = rw_watch_list_spots (session, 60);
  const RwWatchSpot *spot = spot_of (spots, "+12 V, board");

  g_assert_nonnull (spot);

  g_autofree char *words = rw_watch_point_words (&spot->read.points[0]);

  g_assert_cmpstr (words, ==, "0 min: 11.98\xE2\x80\xAFV");
}

static void
test_reminder (void)
{
  g_autoptr (RwSession) session = bench_play ("m3;fitted;on;p5 board 5.020", NULL);
  RwWatchReminder reminder;
  guint said = 0;
  int point;

  rw_watch_reminder_init (&reminder);
  for (double now = 10; now < 5400; now += 10)
    {
      g_autoptr (GArray) spots = rw_watch_list_spots (session, now);

      if (!rw_watch_reminder_take (&reminder, spots, &point))
        continue;

      g_autofree char *words = rw_watch_due_words (spots, point);

      said++;
      g_assert_nonnull (strstr (words, "+5 V, board"));
      g_assert_null (strstr (words, "terminals"));
    }
  g_assert_cmpuint (said, ==, 4);
  /* Power off and on is another run, and 5 min into it is due once more. */
  bench_go_on (session, "wait 6000;off;on;p5 board 5.020");

  g_autoptr (GArray) again = rw_watch_list_spots (session, rw_session_get_end (session) + 300);

  g_assert_true (rw_watch_reminder_take (&reminder, again, &point));
  g_assert_cmpint (point, ==, 1);
  g_assert_false (rw_watch_reminder_take (&reminder, again, &point));
}

/* Nobody who only switched on, or switched off again, is reminded. */
static void
test_no_nagging (void)
{
  static const char *const scripts[] = { "fitted;on", "fitted;p5 board 5.02;off", "on;p5 board 5.02;wait 20;off" };

  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autoptr (RwSession) session = bench_play (scripts[i], NULL);

      for (double now = 0; now < 5400; now += 30)
        {
          g_autoptr (GArray) spots = rw_watch_list_spots (session, now);

          g_assert_true (rw_watch_find_due (spots) <= 0 && (now < 60 || rw_watch_find_due (spots) < 0));
        }
    }
}

/* Both fall by 0.2 V, or the board alone does, evenly over half an hour. */
static void
test_where (void)
{
  static const struct
  {
    double      fall; /* volts at the terminals */
    const char *says;
  } cases[] = { { 0.2, "supply" }, { 0, "connector" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) script = g_string_new ("m3;fitted;on");

      for (int k = 0; k <= 6; k++)
        g_string_append_printf (script, ";p5 terminals %.3f;p5 board %.3f;wait 294", 5.2 - cases[i].fall * k / 6,
                                5.1 - 0.2 * k / 6);

      g_autoptr (RwSession) session = bench_play (script->str, NULL);
      g_autoptr (GArray) spots = rw_watch_list_spots (session, 2200);
      g_autofree char *words = rw_watch_where_words (spots);

      g_assert_nonnull (words);
      g_assert_nonnull (strstr (words, cases[i].says));
    }
}

/* --- ripple --------------------------------------------------------------------------------------- */

static void
test_ripple (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  const char *m1 = g_intern_static_string ("m1");
  const RwReading dc = rw_reading_make (g_intern_static_string ("p5"), RW_PLACE_BOARD, RW_KIND_DC, 5.02, 0.001, m1);
  RwReading ac = dc;
  RwMeterFacts *rms = rw_meter_facts_new ("m1", "bench meter", 0.5, 2);
  g_autofree char *asks = rw_watch_ripple_words (session, &dc, 4, "Ripple on +5");

  ac.kind = RW_KIND_RIPPLE;
  ac.value = 0.08;
  g_assert_nonnull (strstr (asks, "turn the dial to AC"));
  g_assert_nonnull (strstr (asks, "4.0 readings a second"));
  g_assert_nonnull (strstr (asks, "Nobody said"));

  g_autofree char *unknown = rw_watch_ripple_words (session, &ac, 4, "Ripple on +5");

  g_assert_null (strstr (unknown, "turn the dial"));
  g_assert_nonnull (strstr (unknown, "above the limit"));
  g_assert_nonnull (strstr (unknown, "oscilloscope"));
  rms->ac = RW_METER_AC_TRUE_RMS;
  add (session, rw_event_make_meter (1, rms));
  rw_meter_facts_free (rms);

  g_autofree char *known = rw_watch_ripple_words (session, &ac, 4, NULL);

  g_assert_nonnull (strstr (known, "true RMS"));
  g_assert_null (strstr (known, "Nobody said"));
}

static void
test_rate (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  const RwReading like = rw_reading_make (g_intern_static_string ("p5"), RW_PLACE_BOARD, RW_KIND_DC, 5.02, 0.001,
                                          g_intern_static_string ("m1"));

  g_assert_cmpfloat (rw_watch_rate (session, &like), ==, 0);
  wiggle (session, 0, 20, 10, 0, (double) NAN);
  g_assert_cmpfloat_with_epsilon (rw_watch_rate (session, &like), 4, 1e-6);
  wiggle (session, 2000, 2003, 10, 0, (double) NAN); /* after a gap: of the newest stream alone */
  g_assert_cmpfloat_with_epsilon (rw_watch_rate (session, &like), 4, 1e-6);
}

/* The raw rail of the shipped linear profile: 9.00 V DC and 0.45 V of ripple reach down to 9 − 1.766 × 0.45 = 8.21 V; at
 * 7.60 V and 0.90 V they reach 6.01 V. A turn of the trim makes the DC reading history. */
static void
test_trough (void)
{
  static const struct
  {
    double      dc, ac;
    gboolean    turn;
    const char *says;
  } cases[] = { { 9.0, 0.45, FALSE, "falls to 8.2" },
                { 7.6, 0.90, FALSE, "dips with the ripple" },
                { 9.0, 0.45, TRUE, "can be told once" } };
  g_autofree char *path = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "profiles", "linear-5-audio.json", NULL);
  const char *raw = g_intern_static_string ("raw12");

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwProfile) profile = rw_profile_load (path, &error);
      g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);

      g_assert_no_error (error);

      g_autoptr (RwSession) session
          = rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "B-07", NULL, started));
      const RwReading dc = rw_reading_make (raw, RW_PLACE_TERMINALS, RW_KIND_DC, cases[i].dc, 0.01, NULL);
      const RwReading ac = rw_reading_make (raw, RW_PLACE_TERMINALS, RW_KIND_RIPPLE, cases[i].ac, 0.001, NULL);

      add (session, rw_event_make_reading (1, &dc));
      if (cases[i].turn)
        add (session, rw_event_make_trim (2));

      g_autofree char *words = rw_watch_ripple_words (session, &ac, 0, NULL);

      g_test_message ("%s", words);
      g_assert_nonnull (strstr (words, cases[i].says));
      g_assert_null (strstr (words, "kilohertz"));
    }
}

/* No "drifts too much" for a contact that let go. */
static void
test_stepped (void)
{
  g_autofree char *words = rw_watch_verdict_words (RW_WARM_UP_STEPPED);

  g_assert_cmpstr (words, ==, "▲ stepped");
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/watch/a step is called so", test_stepped);
  g_test_add_func ("/watch/dips are timed, sized and tied to the resets, from start to stop only", test_dips);
  g_test_add_func ("/watch/resets far from dips are shown to be strangers", test_strangers);
  g_test_add_func ("/watch/samples of another spot, kind or rail are left out and counted", test_only_this_spot);
  g_test_add_func ("/watch/a reset counts while something is under watch and until it is taken back", test_marks);
  g_test_add_func ("/watch/a gap in the stream lends no weight", test_gap);
  g_test_add_func ("/watch/a replay that goes back ends the test", test_rewound);
  g_test_add_func ("/watch/each minute of a warm-up is in, due, missed or later", test_points);
  g_test_add_func ("/watch/a warm-up shows no digit that the meter did not have", test_digits);
  g_test_add_func ("/watch/each due point is told once a run", test_reminder);
  g_test_add_func ("/watch/nobody is reminded of a warm-up that is not followed", test_no_nagging);
  g_test_add_func ("/watch/supply and wiring are told apart", test_where);
  g_test_add_func ("/watch/the trough of a raw rail is told with its DC volts", test_trough);
  g_test_add_func ("/watch/ripple asks for the AC range and says what the meter cannot see", test_ripple);
  g_test_add_func ("/watch/readings a second", test_rate);
  return g_test_run ();
}
