/* test-replay.c: a replay shows what was, and changes nothing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>

#include "rw-bench-state.h"
#include "rw-event-json.h"
#include "rw-replay.h"

static RwSession *
load_demo (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("RAILWRIGHT_SRC_ROOT"), "demo-sessions",
                                            "tidepool-racer-trim.rwlog", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  g_assert_no_error (error);
  return g_object_ref (read->session);
}

/* All lines of a session, and what its state says, as text. */
static char *
to_text (RwSession *session)
{
  GString *text = g_string_new (NULL);
  g_autoptr (RwBenchState) state = rw_bench_state_new (session);

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    rw_event_append_line (rw_session_get_event (session, i), text);
  for (guint i = 0; i < rw_bench_state_get_n_spots (state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (state, i);

      g_string_append_printf (text, "%s %d %d %.17g %.17g %d %d\n", spot->reading.rail, spot->reading.place,
                              spot->reading.kind, spot->reading.value, spot->u, spot->verdict, spot->stale);
    }
  return g_string_free (text, FALSE);
}

/* What an honest replay at @t holds: the events up to then, added one by one. */
static char *
expected_at (RwSession *source,
             double     t)
{
  g_autoptr (RwSession) fresh = rw_session_new (rw_session_header_copy (rw_session_get_header (source)));

  for (guint i = 0; i < rw_session_get_n_events (source); i++)
    if (rw_session_get_event (source, i)->t <= t)
      {
        RwEvent copy = rw_event_copy (rw_session_get_event (source, i));

        rw_session_add (fresh, &copy);
      }
  return to_text (fresh);
}

static void
check_at (RwReplay *replay,
          double    t)
{
  g_autofree char *expected = expected_at (rw_replay_get_source (replay), t);
  g_autofree char *found = to_text (rw_replay_get_target (replay));

  g_assert_cmpstr (found, ==, expected);
}

static void
test_end (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  g_autofree char *live = to_text (source);

  rw_replay_seek (replay, rw_replay_get_length (replay));

  g_autofree char *replayed = to_text (rw_replay_get_target (replay));

  g_assert_cmpstr (replayed, ==, live);
}

static void
test_seek (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261125);

  for (int i = 0; i < 60; i++)
    {
      const double t = g_rand_double_range (rand, 0, rw_replay_get_length (replay));

      rw_replay_seek (replay, t);
      g_assert_cmpfloat (rw_replay_get_position (replay), ==, t);
      check_at (replay, t);
    }
  rw_replay_seek (replay, -5);
  g_assert_cmpfloat (rw_replay_get_position (replay), ==, 0);
  rw_replay_seek (replay, 1e9);
  g_assert_cmpfloat (rw_replay_get_position (replay), ==, rw_replay_get_length (replay));
}

/* The clock: speed times real time, and it stops at the end. */
static void
test_clock (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);

  rw_replay_advance (replay, 10);
  g_assert_cmpfloat (rw_replay_get_position (replay), ==, 0);
  rw_replay_set_playing (replay, TRUE);
  rw_replay_advance (replay, 2);
  g_assert_cmpfloat_with_epsilon (rw_replay_get_position (replay), 2, 1e-9);
  rw_replay_set_speed (replay, 30);
  rw_replay_advance (replay, 1);
  g_assert_cmpfloat_with_epsilon (rw_replay_get_position (replay), 32, 1e-9);
  check_at (replay, 32);
  rw_replay_set_speed (replay, 1000);
  g_assert_cmpfloat (rw_replay_get_speed (replay), ==, RW_REPLAY_MAX_SPEED);
  rw_replay_set_speed (replay, 0.01);
  g_assert_cmpfloat (rw_replay_get_speed (replay), ==, RW_REPLAY_MIN_SPEED);
  rw_replay_advance (replay, 1e6);
  g_assert_false (rw_replay_get_playing (replay));
  g_assert_cmpuint (rw_session_get_n_events (rw_replay_get_target (replay)), ==, rw_session_get_n_events (source));
  rw_replay_set_playing (replay, TRUE);
  g_assert_cmpfloat (rw_replay_get_position (replay), ==, 0);
}

/* Steps go from landmark to landmark, samples between them included, and back the same way. */
static void
test_steps (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  RwSession *target = rw_replay_get_target (replay);
  const guint n = rw_session_get_n_landmarks (source);

  for (guint i = 0; i < n; i++)
    {
      rw_replay_step (replay, TRUE);
      g_assert_cmpuint (rw_session_get_n_landmarks (target), ==, i + 1);
      g_assert_cmpuint (rw_session_get_n_events (target), ==, rw_session_get_landmark (source, i) + 1);
    }
  for (guint i = n; i > 0; i--)
    {
      rw_replay_step (replay, FALSE);
      g_assert_cmpuint (rw_session_get_n_landmarks (target), ==, i - 1);
    }
  rw_replay_step (replay, FALSE);
  g_assert_cmpuint (rw_session_get_n_events (target), ==, 0);
}

/* Speeds are chosen from a list, and stay in it at either end. */
static void
test_speeds (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);

  for (int i = 0; i < 2 * RW_REPLAY_N_SPEEDS; i++)
    rw_replay_change_speed (replay, -1);
  g_assert_cmpfloat (rw_replay_get_speed (replay), ==, 0.25);
  for (guint i = 1; i < RW_REPLAY_N_SPEEDS; i++)
    {
      rw_replay_change_speed (replay, 1);
      g_assert_cmpfloat (rw_replay_get_speed (replay), ==, rw_replay_speeds[i]);
    }
  rw_replay_change_speed (replay, 1);
  g_assert_cmpfloat (rw_replay_get_speed (replay), ==, 60);
  rw_replay_set_speed (replay, 6); /* of another list */
  g_assert_cmpuint (rw_replay_get_nearest_speed (replay), ==, 4);
}

/* The ten minutes in which nothing happens go by in seconds, and nothing is left out. */
static void
test_waiting (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  const double length = rw_replay_get_length (replay), saved = rw_idle_get_saved (rw_replay_get_idle (replay));
  double seconds = 0;
  guint before = 0;

  g_assert_cmpfloat (saved, >, 400);
  rw_replay_set_skips_waiting (replay, TRUE);
  rw_replay_set_playing (replay, TRUE);
  while (rw_replay_get_playing (replay))
    {
      const guint n = rw_session_get_n_events (rw_replay_get_target (replay));

      g_assert_cmpuint (n, >=, before);
      before = n;
      rw_replay_advance (replay, 0.5);
      seconds += 0.5;
      g_assert_cmpfloat (seconds, <, 2 * length);
    }
  g_assert_cmpfloat_with_epsilon (seconds, length - saved, 0.6);
  g_assert_cmpuint (rw_session_get_n_events (rw_replay_get_target (replay)), ==, rw_session_get_n_events (source));
}

static void
count_cb (guint *n)
{
  (*n)++;
}

/* The bounds are there at once; what takes long comes from a thread, once. */
static void
look_for_chapters (RwReplay *replay)
{
  guint n_told = 0;

  g_signal_connect_swapped (replay, "chapters-changed", G_CALLBACK (count_cb), &n_told);
  rw_replay_look_for_chapters (replay, NULL, NULL);
  g_assert_cmpuint (n_told, ==, 1);
  g_assert_nonnull (rw_replay_get_chapters (replay));
  while (n_told < 2)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handlers_disconnect_by_data (replay, &n_told);
}

/* Forward and back through all chapters, each begun with its heading just done. */
static void
test_chapters (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  RwSession *target = rw_replay_get_target (replay);
  guint index, n;

  g_assert_null (rw_replay_get_chapter (replay, NULL));
  g_assert_false (rw_replay_jump (replay, RW_REPLAY_CHAPTER, TRUE));
  look_for_chapters (replay);
  n = rw_chapters_get_n (rw_replay_get_chapters (replay));
  g_assert_cmpuint (n, >=, 5);
  for (guint i = 1; i < n; i++)
    {
      g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, TRUE));

      const RwChapter *chapter = rw_replay_get_chapter (replay, &index);

      g_assert_cmpuint (index, ==, i);
      g_assert_cmpuint (rw_session_get_n_events (target), ==, chapter->index + 1);
      g_assert_cmpfloat (rw_replay_get_position (replay), ==, chapter->t);
    }
  g_assert_false (rw_replay_jump (replay, RW_REPLAY_CHAPTER, TRUE));
  for (guint i = n - 1; i > 0; i--)
    {
      rw_replay_step (replay, TRUE); /* into it: the first jump back begins it again */
      if (rw_session_get_n_events (target) > rw_chapters_get (rw_replay_get_chapters (replay), i)->n_events)
        {
          rw_replay_get_chapter (replay, &index);
          if (index == i)
            g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
        }
      rw_replay_go_to_chapter (replay, i);
      g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
      rw_replay_get_chapter (replay, &index);
      g_assert_cmpuint (index, ==, i - 1);
    }
  g_assert_false (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
  g_assert_cmpuint (rw_session_get_n_events (target), ==, 0);
}

/* While it plays, "previous" goes on back past a chapter that has only just begun. */
static void
test_previous_while_playing (void)
{
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  guint index;

  look_for_chapters (replay);
  rw_replay_go_to_chapter (replay, 3);
  rw_replay_set_playing (replay, TRUE);
  rw_replay_advance (replay, 0.5);
  rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE);
  rw_replay_get_chapter (replay, &index);
  g_assert_cmpuint (index, ==, 2);
  g_assert_true (rw_replay_get_playing (replay));
}

/* Every turn and every reading is found, forwards and backwards, and nothing else. */
static void
test_jumps (void)
{
  static const struct
  {
    RwReplayGoal goal;
    RwEventType  type;
  } goals[] = { { RW_REPLAY_TRIM, RW_EVENT_TRIM }, { RW_REPLAY_KEEP, RW_EVENT_READING } };
  g_autoptr (RwSession) source = load_demo ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  RwSession *target = rw_replay_get_target (replay);

  look_for_chapters (replay);
  for (guint i = 0; i < G_N_ELEMENTS (goals); i++)
    {
      guint n = 0, there = 0;

      for (guint k = 0; k < rw_session_get_n_events (source); k++)
        there += rw_session_get_event (source, k)->type == goals[i].type;
      rw_replay_go_to (replay, 0, 0);
      for (; rw_replay_jump (replay, goals[i].goal, TRUE); n++)
        g_assert_cmpint (rw_session_get_event (target, rw_session_get_n_events (target) - 1)->type, ==, goals[i].type);
      g_assert_cmpuint (n, ==, there);
      rw_replay_seek (replay, rw_replay_get_length (replay));
      for (n = 0; rw_replay_jump (replay, goals[i].goal, FALSE); n++)
        g_assert_cmpint (rw_session_get_event (target, rw_session_get_n_events (target) - 1)->type, ==, goals[i].type);
      g_assert_cmpuint (n, >=, there - 1); /* one may be the very last event, where it already stood */
    }
}

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static void
add_value (RwSession  *session,
           double      t,
           double      value,
           gboolean    kept)
{
  const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, value, 0.01, "m1");

  add (session, kept ? rw_event_make_reading (t, &reading) : rw_event_make_sample (t, &reading));
}

/* Chapters at 0, 100, 200 and 300 s, samples all along. At 350 s the leads are the wrong way round, at 360 s mended, at
 * 370 s reversed again; the trim is turned in between and far from them. */
static RwSession *
make_marked (void)
{
  g_autoptr (RwSession) demo = load_demo ();
  RwSession *session = rw_session_new (rw_session_header_copy (rw_session_get_header (demo)));

  for (guint i = 0; i < 400; i++)
    {
      if (i % 100 == 0 && i > 0)
        add (session, rw_event_make_mark (i, i == 100 ? "one" : i == 200 ? "two" : "three"));
      else if (i == 350 || i == 370)
        add_value (session, i, -5.02, TRUE);
      else if (i == 320 || i == 360)
        add_value (session, i, 5.02, TRUE);
      else if (i == 330 || i == 355 || i == 390)
        add (session, rw_event_make_trim (i));
      add_value (session, i + 0.5, 5.02, FALSE);
    }
  return session;
}

static guint
chapter_of (RwReplay *replay)
{
  guint index = G_MAXUINT;

  rw_replay_get_chapter (replay, &index);
  return index;
}

/* At its very beginning "previous" leaves a chapter, paused or not; further on it begins it again. */
static void
test_previous_at_a_beginning (void)
{
  g_autoptr (RwSession) source = make_marked ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);

  look_for_chapters (replay);
  for (guint playing = 0; playing < 2; playing++)
    {
      rw_replay_go_to_chapter (replay, 3);
      g_assert_cmpfloat (rw_replay_get_position (replay), ==, 300);
      rw_replay_set_playing (replay, playing == 1);
      for (guint i = 3; i-- > 0;)
        {
          g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
          g_assert_cmpuint (chapter_of (replay), ==, i);
          g_assert_cmpfloat (rw_replay_get_position (replay), ==, 100 * i);
        }
      g_assert_false (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
      g_assert_cmpint (rw_replay_get_playing (replay), ==, playing == 1);
    }
  rw_replay_set_playing (replay, FALSE);
  rw_replay_seek (replay, 300.25); /* nothing has happened since the mark, but the clock has gone on */
  g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
  g_assert_cmpuint (chapter_of (replay), ==, 3);
  g_assert_cmpfloat (rw_replay_get_position (replay), ==, 300);
}

/* Two real seconds are what counts: 30 s of the session at 15 times its speed, half a second at a quarter. */
static void
test_previous_counts_real_seconds (void)
{
  static const double speeds[] = { 0.25, 1, 5, 15 };
  g_autoptr (RwSession) source = make_marked ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);

  look_for_chapters (replay);
  rw_replay_set_playing (replay, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (speeds); i++)
    {
      rw_replay_set_speed (replay, speeds[i]);
      rw_replay_go_to_chapter (replay, 2);
      rw_replay_advance (replay, 1.75);
      g_assert_cmpfloat_with_epsilon (rw_replay_get_position (replay), 200 + 1.75 * speeds[i], 1e-9);
      g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
      g_assert_cmpuint (chapter_of (replay), ==, 1);
      rw_replay_go_to_chapter (replay, 2);
      rw_replay_advance (replay, 2.25);
      g_assert_true (rw_replay_jump (replay, RW_REPLAY_CHAPTER, FALSE));
      g_assert_cmpuint (chapter_of (replay), ==, 2);
      g_assert_cmpfloat (rw_replay_get_position (replay), ==, 200);
    }
}

/* Both warnings and nothing else, each just after the reading that brought it. */
static void
test_jumps_to_warnings (void)
{
  static const double at[] = { 350, 370 };
  g_autoptr (RwSession) source = make_marked ();
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  RwSession *target = rw_replay_get_target (replay);
  guint n = 0;

  look_for_chapters (replay);
  for (; rw_replay_jump (replay, RW_REPLAY_WARNING, TRUE); n++)
    {
      const RwEvent *last = rw_session_get_event (target, rw_session_get_n_events (target) - 1);

      g_assert_cmpuint (n, <, G_N_ELEMENTS (at));
      g_assert_cmpfloat (rw_replay_get_position (replay), ==, at[n]);
      g_assert_cmpint (last->type, ==, RW_EVENT_READING);
      g_assert_cmpfloat (last->reading.value, ==, -5.02);
    }
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (at));
  rw_replay_seek (replay, 1e9);
  for (; rw_replay_jump (replay, RW_REPLAY_WARNING, FALSE); n--)
    g_assert_cmpfloat (rw_replay_get_position (replay), ==, at[n - 1]);
  g_assert_cmpuint (n, ==, 0);
}

static void
test_empty (void)
{
  g_autoptr (RwSession) demo = load_demo ();
  g_autoptr (RwSession) empty = rw_session_new (rw_session_header_copy (rw_session_get_header (demo)));
  g_autoptr (RwReplay) replay = rw_replay_new (empty);

  look_for_chapters (replay);
  g_assert_false (rw_replay_jump (replay, RW_REPLAY_CHAPTER, TRUE));
  g_assert_false (rw_replay_jump (replay, RW_REPLAY_WARNING, FALSE));
  rw_replay_set_skips_waiting (replay, TRUE);
  rw_replay_step (replay, TRUE);
  rw_replay_step (replay, FALSE);
  rw_replay_set_playing (replay, TRUE);
  rw_replay_advance (replay, 1);
  g_assert_cmpfloat (rw_replay_get_length (replay), ==, 0);
  g_assert_cmpuint (rw_session_get_n_events (rw_replay_get_target (replay)), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/replay/at its end it says what the live session said, byte for byte", test_end);
  g_test_add_func ("/replay/anywhere, by any way, it holds what had happened and nothing else", test_seek);
  g_test_add_func ("/replay/its clock runs at its speed and stops at the end", test_clock);
  g_test_add_func ("/replay/steps go from event to event and back", test_steps);
  g_test_add_func ("/replay/speeds are those of a list", test_speeds);
  g_test_add_func ("/replay/the waiting is hurried through, and nothing is left out", test_waiting);
  g_test_add_func ("/replay/jumps go from chapter to chapter", test_chapters);
  g_test_add_func ("/replay/a chapter just begun is left by previous while it plays", test_previous_while_playing);
  g_test_add_func ("/replay/previous at the beginning of a chapter goes to the one before", test_previous_at_a_beginning);
  g_test_add_func ("/replay/previous counts real seconds, at any speed", test_previous_counts_real_seconds);
  g_test_add_func ("/replay/jumps to warnings find them and no turn", test_jumps_to_warnings);
  g_test_add_func ("/replay/jumps find every turn and every reading", test_jumps);
  g_test_add_func ("/replay/an empty session replays to nothing", test_empty);
  return g_test_run ();
}
