/* test-notes-session.c: notes find the session that they belong to, and say which one is missing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "fixtures.h"
#include "rw-notes-session.h"
#include "rw-paths.h"

typedef struct
{
  GMainLoop *loop;
  char      *found;
  GError    *error;
} Answer;

static void
found_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  Answer *answer = data;

  answer->found = rw_notes_session_find_finish (result, &answer->error);
  g_main_loop_quit (answer->loop);
}

static char *
find (const char   *notes,
      GCancellable *cancellable,
      GError      **error)
{
  g_autoptr (GMainLoop) loop = g_main_loop_new (NULL, FALSE);
  Answer answer = { loop, NULL, NULL };

  rw_notes_session_find_async (notes, "0b7f", cancellable, found_cb, &answer);
  g_main_loop_run (loop);
  *error = answer.error;
  return answer.found;
}

static void
assert_found (const char *notes,
              const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *found = find (notes, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (found, ==, expected);
}

/* (transfer full) */
static char *
lay (const char *folder,
     const char *name)
{
  char *path = g_build_filename (folder, name, NULL);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, FIXTURE_HEADER "\n", -1, NULL));
  return path;
}

static void
test_where_it_looks (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *notes = g_build_filename (folder, "gift.rwnotes", NULL);
  g_autofree char *sessions = rw_paths_dup_sessions ();
  g_autofree char *practice = rw_paths_dup_practice ();

  assert_found (notes, NULL);

  g_autofree char *practised = lay (practice, "2026-03-14-tidepool-racer.rwlog");

  assert_found (notes, practised);
  g_unlink (practised);

  g_autofree char *kept = lay (sessions, "2026-03-14-tidepool-racer.rwlog");

  assert_found (notes, kept);
  g_unlink (kept);

  g_autofree char *renamed = lay (folder, "somehow.rwlog");

  assert_found (notes, renamed);

  g_autofree char *beside = lay (folder, "gift.rwlog");
  g_autofree char *newer = lay (sessions, "newer.rwlog");

  assert_found (notes, beside); /* whatever lies elsewhere */
  g_unlink (newer);
  fixture_remove (folder);
}

/* The file that lies beside may be a session of another id. */
static void
test_a_name_is_not_enough (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *notes = g_build_filename (folder, "gift.rwnotes", NULL);
  g_autofree char *beside = g_build_filename (folder, "gift.rwlog", NULL);
  g_autoptr (GString) text = g_string_new (FIXTURE_HEADER "\n");

  g_string_replace (text, "0b7f", "another", 1);
  g_assert_true (g_file_set_contents (beside, text->str, -1, NULL));
  assert_found (notes, NULL);
  fixture_remove (folder);
}

static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (find ("/nowhere/gift.rwnotes", cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static void
test_what_is_missing (void)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  const RwAnnotationsHead told = { (char *) "0b7f", (char *) "Tidepool Racer", started };
  const RwAnnotationsHead bare = { (char *) "0b7f", NULL, NULL };
  g_autofree char *words = rw_notes_session_describe_missing ("/home/ada/gift.rwnotes", &told);
  g_autofree char *fewer = rw_notes_session_describe_missing ("/home/ada/gift.rwnotes", &bare);

  g_assert_true (g_str_has_prefix (words, "gift.rwnotes holds notes on the session of Tidepool Racer that began on "
                                          "2026-03-14 09:30 UTC. "));
  g_assert_null (strstr (words, "0b7f"));
  g_assert_true (g_str_has_prefix (fewer, "gift.rwnotes holds notes on a session that may be called gift.rwlog (its id "
                                          "is 0b7f). "));
  g_assert_nonnull (strstr (words, "put it beside them"));
  g_assert_nonnull (strstr (fewer, "put it beside them"));
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = g_dir_make_tmp ("rw-notes-XXXXXX", NULL);
  g_autofree char *state = g_build_filename (home, "state", NULL);

  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_setenv ("XDG_STATE_HOME", state, TRUE);
  fixture_init (&argc, &argv);
  g_test_add_func ("/notes-session/where it is looked for", test_where_it_looks);
  g_test_add_func ("/notes-session/a name is not enough", test_a_name_is_not_enough);
  g_test_add_func ("/notes-session/nothing once it was cancelled", test_cancelled);
  g_test_add_func ("/notes-session/what is missing is told", test_what_is_missing);

  const int status = g_test_run ();

  fixture_remove (home);
  return status;
}
