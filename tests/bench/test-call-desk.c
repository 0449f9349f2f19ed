/* test-call-desk.c: rounds of calls at a job: hidden until revealed, kept beside a replay, judged by the whole file.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "bench-folder.h"
#include "rw-call-desk.h"
#include "rw-call-words.h"
#include "rw-job-annotations.h"
#include "rw-lesson-begin.h"

static RwLesson *
find_lesson (const char *id)
{
  g_autoptr (GPtrArray) lessons = rw_lesson_list (NULL);

  for (guint i = 0; i < lessons->len; i++)
    if (g_str_equal (((RwLesson *) lessons->pdata[i])->id, id))
      return rw_lesson_ref (lessons->pdata[i]);
  g_error ("no lesson %s", id);
}

static RwJob *
begin (const RwLesson *lesson)
{
  g_autoptr (GError) error = NULL;
  RwJob *job = rw_lesson_begin (lesson, &error);

  g_assert_no_error (error);
  return job;
}

static void
open_round (RwCallDesk         *desk,
            RwProjection       *projection,
            const RwLessonStep *step)
{
  rw_call_desk_ask (desk, step->call_rail, step->call_place);
  g_assert_nonnull (rw_call_desk_get_open (desk));
  g_assert_true (rw_projection_is_hidden (projection, step->call_rail));
  rw_call_desk_call (desk, "a", 4.9, 0.2);
  rw_call_desk_call (desk, "b", -4.9, NAN);
  rw_call_desk_count (desk, 1, 2, 3);
  g_assert_cmpuint (rw_call_desk_get_open (desk)->calls->len, ==, 2);
}

static void
reveal (RwCallDesk         *desk,
        RwProjection       *projection,
        const RwLessonStep *step)
{
  rw_call_desk_reveal (desk);

  const RwCallRound *shown = rw_call_desk_get_shown (desk);

  g_assert_null (rw_call_desk_get_open (desk));
  g_assert_nonnull (shown);
  g_assert_true (shown->rail == step->call_rail && shown->place == step->call_place);
  g_assert_true (isfinite (shown->answer));
  g_assert_false (rw_projection_is_hidden (projection, step->call_rail));
  g_assert_true (rw_projection_has_text (projection));
}

/* From the first step to the score, as a teacher would go; then back to the start, which must not change the score. */
static void
hold (const char *id)
{
  g_autoptr (RwLesson) lesson = find_lesson (id);
  g_autoptr (RwJob) job = begin (lesson);
  g_autoptr (RwProjection) projection = rw_projection_new ();
  g_autoptr (RwCallDesk) desk = rw_call_desk_new (projection);
  RwSession *source = rw_replay_get_source (rw_job_get_replay (job));
  const guint n_events = rw_session_get_n_events (source);
  guint rounds = 0;

  rw_projection_set_job (projection, job);
  rw_projection_set_open (projection, TRUE);
  rw_call_desk_set_job (desk, job);
  for (guint i = 0; i < lesson->steps->len; i++)
    {
      const RwLessonStep *step = lesson->steps->pdata[i];

      g_assert_true (rw_lesson_go (job, step));
      if (step->call_rail == NULL)
        continue;
      open_round (desk, projection, step);
      reveal (desk, projection, step);
      rounds++;
    }

  g_autoptr (GPtrArray) end = rw_call_desk_list_standings (desk);

  g_assert_cmpuint (rounds, >, 0);
  g_assert_cmpuint (end->len, >=, 2);
  rw_replay_seek (rw_job_get_replay (job), 0);

  g_autoptr (GPtrArray) start = rw_call_desk_list_standings (desk);

  g_assert_cmpuint (start->len, ==, end->len);
  for (guint i = 0; i < end->len; i++)
    g_assert_cmpfloat (((RwCallStanding *) end->pdata[i])->points, ==, ((RwCallStanding *) start->pdata[i])->points);
  g_assert_cmpuint (rw_session_get_n_events (source), ==, n_events);
}

static void
test_wiring_or_supply (void)
{
  hold ("wiring-or-supply");
}

static void
test_when_minus_five_cannot_be_met (void)
{
  hold ("when-minus-five-cannot-be-met");
}

/* A round that is given up hides nothing and counts for nothing. */
static void
test_giving_up_shows_the_rail_again (void)
{
  g_autoptr (RwLesson) lesson = find_lesson ("wiring-or-supply");
  g_autoptr (RwJob) job = begin (lesson);
  g_autoptr (RwProjection) projection = rw_projection_new ();
  g_autoptr (RwCallDesk) desk = rw_call_desk_new (projection);

  rw_projection_set_job (projection, job);
  rw_call_desk_set_job (desk, job);
  rw_call_desk_ask (desk, "p5", RW_PLACE_BOARD);
  rw_call_desk_ask (desk, "p12", RW_PLACE_BOARD); /* gives the first up */
  g_assert_false (rw_projection_is_hidden (projection, "p5"));
  g_assert_true (rw_projection_is_hidden (projection, "p12"));
  rw_call_desk_call (desk, "a", 12, NAN);
  rw_call_desk_drop (desk);
  g_assert_false (rw_projection_is_hidden (projection, "p12"));
  g_assert_false (rw_projection_has_text (projection));

  g_autoptr (GPtrArray) standings = rw_call_desk_list_standings (desk);

  g_assert_cmpuint (standings->len, ==, 0);
}

/* What the class reads while the round is open tells neither a call's value nor a prediction. */
static void
test_the_question_gives_nothing_away (void)
{
  g_autoptr (RwLesson) lesson = find_lesson ("wiring-or-supply");
  g_autoptr (RwJob) job = begin (lesson);
  g_autoptr (RwProjection) projection = rw_projection_new ();
  g_autoptr (RwCallDesk) desk = rw_call_desk_new (projection);
  g_auto (RwCallWords) words = { 0 };

  rw_projection_set_job (projection, job);
  rw_call_desk_set_job (desk, job);
  rw_call_desk_ask (desk, "p5", RW_PLACE_TERMINALS);
  rw_call_desk_call (desk, "row 3", 7.77, 0.55);
  rw_call_words_ask (&words, rw_call_desk_get_open (desk), rw_job_get_profile (job));

  g_autofree char *text = g_strjoinv ("\n", words.lines);

  g_assert_nonnull (strstr (text, "row 3"));
  g_assert_null (strstr (text, "7"));
  g_assert_null (words.cells);
}

static RwJob *
open_replay (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;
  RwJob *job = rw_job_new_replay (path, &report, &error);

  g_assert_no_error (error);
  rw_replay_seek (rw_job_get_replay (job), 0);
  return job;
}

static char *
read_text (const char *path)
{
  char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

/* One round revealed, one left open. */
static void
call_twice (const char *path)
{
  g_autoptr (RwJob) job = open_replay (path);
  g_autoptr (RwProjection) projection = rw_projection_new ();
  g_autoptr (RwCallDesk) desk = rw_call_desk_new (projection);

  rw_projection_set_job (projection, job);
  rw_call_desk_set_job (desk, job);
  g_assert_cmpuint (rw_call_book_get_n_rounds (rw_call_desk_get_book (desk)), ==, 0);
  rw_call_desk_ask (desk, "p5", RW_PLACE_TERMINALS);
  rw_call_desk_call (desk, "row 3", 5.1, NAN);
  rw_call_desk_reveal (desk);
  g_assert_nonnull (rw_call_desk_get_shown (desk));
  rw_call_desk_ask (desk, "p5", RW_PLACE_BOARD);
}

static void
assert_there_again (const char *path)
{
  g_autoptr (RwJob) job = open_replay (path);
  g_autoptr (RwProjection) projection = rw_projection_new ();
  g_autoptr (RwCallDesk) desk = rw_call_desk_new (projection);

  rw_projection_set_job (projection, job);
  rw_call_desk_set_job (desk, job);

  RwCallBook *book = rw_call_desk_get_book (desk);
  g_autoptr (GPtrArray) standings = rw_call_desk_list_standings (desk);

  g_assert_cmpuint (rw_call_book_get_n_rounds (book), ==, 2);
  g_assert_cmpstr (rw_call_book_get_round (book, 0)->rail, ==, "p5");
  g_assert_cmpfloat (rw_call_book_get_round (book, 0)->answer, ==, 5.154);
  g_assert_cmpuint (standings->len, >, 0);
  g_assert_null (rw_call_desk_get_open (desk)); /* it hides nothing from who opens the file next */
  g_assert_null (rw_call_desk_get_shown (desk));
  g_assert_false (rw_projection_is_hidden (projection, "p5"));
  g_assert_false (rw_projection_has_text (projection));
  g_assert_cmpuint (rw_annotations_get_n (rw_job_get_annotations (job)), ==, 0); /* calls are no notes */
}

/* Of everybody's data, calls over earlier lessons among it. */
static char *home;

static void
empty_home (void)
{
  remove_folder (home);
  g_assert_cmpint (g_mkdir (home, 0700), ==, 0);
}

static void
test_calls_over_a_replay_are_there_again (void)
{
  empty_home ();

  g_autofree char *shipped = g_build_filename (g_getenv ("RAILWRIGHT_SRC_ROOT"), "demo-sessions",
                                               "lantern-drift-wiring.rwlog", NULL);
  g_autofree char *folder = g_dir_make_tmp ("railwright-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);
  g_autofree char *before = read_text (shipped);

  g_assert_true (g_file_set_contents (path, before, -1, NULL));
  call_twice (path);
  assert_there_again (path);

  g_autofree char *after = read_text (path);

  g_assert_cmpstr (after, ==, before);
  g_assert_true (g_file_test (beside, G_FILE_TEST_EXISTS));
  g_remove (beside);
  g_remove (path);
  g_rmdir (folder);
}

/* Its session is everybody's: nothing is put beside it. */
static void
test_each_class_begins_a_lesson_without_calls (void)
{
  empty_home ();

  g_autoptr (RwLesson) lesson = find_lesson ("wiring-or-supply");
  g_autofree char *beside = g_build_filename (g_getenv ("RAILWRIGHT_SRC_ROOT"), "demo-sessions",
                                              "lantern-drift-wiring.rwnotes", NULL);

  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (RwJob) job = begin (lesson);
      g_autoptr (RwProjection) projection = rw_projection_new ();
      g_autoptr (RwCallDesk) desk = rw_call_desk_new (projection);

      rw_projection_set_job (projection, job);
      rw_call_desk_set_job (desk, job);
      g_assert_cmpuint (rw_call_book_get_n_rounds (rw_call_desk_get_book (desk)), ==, 0);
      rw_call_desk_ask (desk, "p5", RW_PLACE_TERMINALS);
      g_assert_cmpuint (rw_call_book_get_n_rounds (rw_call_desk_get_book (desk)), ==, 1);
    }
  g_assert_false (g_file_test (beside, G_FILE_TEST_EXISTS));
}

int
main (int   argc,
      char *argv[])
{
  home = g_dir_make_tmp ("call-home-XXXXXX", NULL);

  /* GLib's own isolation of folders leaks, which a run with sanitizers would count. */
  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_setenv ("XDG_CONFIG_HOME", home, TRUE);
  g_setenv ("XDG_STATE_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/call-desk/wiring-or-supply-can-be-held", test_wiring_or_supply);
  g_test_add_func ("/call-desk/when-minus-five-cannot-be-met-can-be-held", test_when_minus_five_cannot_be_met);
  g_test_add_func ("/call-desk/giving-up-shows-the-rail-again", test_giving_up_shows_the_rail_again);
  g_test_add_func ("/call-desk/the-question-gives-nothing-away", test_the_question_gives_nothing_away);
  g_test_add_func ("/call-desk/calls-over-a-replay-are-there-again", test_calls_over_a_replay_are_there_again);
  g_test_add_func ("/call-desk/each-class-begins-a-lesson-without-calls", test_each_class_begins_a_lesson_without_calls);

  const int status = g_test_run ();

  remove_folder (home);
  g_free (home);
  return status;
}
