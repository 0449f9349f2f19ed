/* test-annotations.c: what people write on a session stands beside its file and lasts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "note-place.h"
#include "fixtures.h"
#include "rw-event.h"
#include "rw-plain-text.h"

static void
test_beside_and_never_in (NotePlace    *at,
                          gconstpointer data)
{
  g_assert_true (g_file_set_contents (at->session, FIXTURE_HEADER "\n", -1, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);

  g_assert_cmpuint (rw_annotations_get_n (notes), ==, 0);
  g_assert_false (g_file_test (at->beside, G_FILE_TEST_EXISTS)); /* nothing is made before there is something */
  g_assert_cmpuint (note_add (notes, 12.5, 7, "the fan stops here"), ==, 1);
  g_assert_cmpuint (note_add (notes, 3, 0, "look at the edge"), ==, 2);
  note_assert_told (notes, "3 look at the edge|12.5 the fan stops here");

  g_autofree char *text = note_read_text (at->beside), *log = note_read_text (at->session);

  g_assert_cmpstr (log, ==, FIXTURE_HEADER "\n");
  g_assert_cmpstr (text, ==,
                   NOTE_HEADER "{\"n\":1,\"t\":12.5,\"at\":7,\"by\":\"Ada\",\"text\":\"the fan stops here\",\"written\":\"2026-03-14T18:02:11Z\"}\n"
                   "{\"n\":2,\"t\":3,\"at\":null,\"by\":\"Ada\",\"text\":\"look at the edge\",\"written\":\"2026-03-14T18:02:11Z\"}\n");

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, at->session);

  note_assert_told (again, "3 look at the edge|12.5 the fan stops here");
  g_assert_cmpuint (rw_annotations_get (again, 1)->at, ==, 7);
  g_assert_cmpstr (rw_annotations_get (again, 1)->by, ==, "Ada");
}

static void
test_taking_back_only_adds (NotePlace    *at,
                            gconstpointer data)
{
  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (GError) error = NULL;

  note_add (notes, 1, 0, "one");

  g_autofree char *before = note_read_text (at->beside);

  note_add (notes, 2, 0, "two");
  g_assert_true (rw_annotations_retract (notes, 1, &error));
  note_assert_told (notes, "2 two");

  g_autofree char *after = note_read_text (at->beside);

  g_assert_true (g_str_has_prefix (after, before));
  g_assert_true (g_str_has_suffix (after, "{\"retract\":1}\n"));
  g_assert_false (rw_annotations_retract (notes, 9, &error));
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_READ);

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, at->session);

  note_assert_told (again, "2 two");
  g_assert_cmpuint (note_add (again, 3, 0, "three"), ==, 3); /* numbers are never used twice */
}

static void
test_two_windows_write_one_file (NotePlace    *at,
                                 gconstpointer data)
{
  g_autoptr (RwAnnotations) first = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (RwAnnotations) second = rw_annotations_new (NOTE_ID, at->session);

  note_add (first, 1, 0, "one");
  note_add (second, 2, 0, "two");
  note_add (first, 3, 0, "three");
  note_assert_told (first, "1 one|2 two|3 three");
  g_assert_cmpuint (note_add (second, 4, 0, "four"), ==, 4);

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, at->session);

  note_assert_told (again, "1 one|2 two|3 three|4 four");
}

static void
test_damage_is_told_and_survived (NotePlace    *at,
                                  gconstpointer data)
{
  g_assert_true (g_file_set_contents (at->beside, NOTE_HEADER NOTE_LINE (1, 1, "one") "rubbish\n" NOTE_LINE (2, -4, "before time")
                                      NOTE_LINE (3, 3, "three") "{\"n\":4,\"t\":4,\"te", -1, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);
  const char *report = rw_annotations_get_report (notes);

  note_assert_told (notes, "1 one|3 three");
  g_test_message ("%s", report);
  g_assert_nonnull (strstr (report, "2 damaged lines"));
  g_assert_nonnull (strstr (report, "line 3"));
  g_assert_nonnull (strstr (report, "cut off"));
  note_add (notes, 5, 0, "five");

  g_autofree char *text = note_read_text (at->beside);
  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, at->session);

  g_assert_nonnull (strstr (text, "rubbish\n")); /* only what was torn is gone */
  g_assert_null (strstr (text, "\"te{"));
  note_assert_told (again, "1 one|3 three|5 five");
}

/* Cut anywhere, what was whole is there, and writing goes on behind it. */
static void
test_every_torn_tail (void)
{
  static const char whole[] = NOTE_HEADER NOTE_LINE (1, 1, "one") NOTE_LINE (2, 2, "two");
  const gsize header = strlen (NOTE_HEADER), one = header + strlen (NOTE_LINE (1, 1, "one"));

  for (gsize cut = header; cut <= strlen (whole); cut++)
    {
      g_autofree char *part = g_strndup (whole, cut);
      g_autoptr (RwAnnotations) notes = note_read (part);

      g_assert_cmpuint (rw_annotations_get_n (notes), ==, cut >= strlen (whole) - 1 ? 2 : cut >= one - 1 ? 1 : 0);
    }
}

static void
test_calls_are_kept_beside_and_are_no_notes (NotePlace    *at,
                                             gconstpointer data)
{
  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);

  note_add_call (notes, 0, rw_call_said_ask ("p5", RW_PLACE_BOARD, RW_KIND_DC, 4.98), 1);
  note_add (notes, 1, 0, "mine");

  const guint n = note_add_call (notes, 7, rw_call_said_value ("team \"1\"", 5.01, 0.1), 1);

  note_add_call (notes, 9, rw_call_said_reveal (9), 1);
  note_assert_told (notes, "1 mine");
  note_assert_called (notes, "0 ask|7 value|9 reveal");

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (GArray) calls = rw_annotations_dup_calls (again);
  const RwEvent *value = &g_array_index (calls, RwEvent, 1);

  g_assert_null (rw_annotations_get_report (again));
  note_assert_told (again, "1 mine");
  note_assert_called (again, "0 ask|7 value|9 reveal");
  g_assert_cmpstr (value->call.value.by, ==, "team \"1\"");
  g_assert_cmpfloat (value->call.value.value, ==, 5.01);
  g_assert_cmpfloat (value->t, ==, 12.5);
  g_assert_true (rw_annotations_retract (again, n, NULL));
  note_assert_called (again, "0 ask|9 reveal");
}

static void
test_a_damaged_call_is_told (void)
{
  g_autoptr (RwAnnotations) notes = note_read (NOTE_HEADER "{\"n\":1,\"t\":1,\"call\":{\"value\":\"high\"}}\n"
                                                      "{\"n\":2,\"t\":1,\"call\":5}\n"
                                                      "{\"n\":3,\"t\":1,\"call\":{\"drop\":true}}\n");

  g_assert_nonnull (rw_annotations_get_report (notes));
  g_assert_nonnull (strstr (rw_annotations_get_report (notes), "2 damaged lines"));
  note_assert_called (notes, "0 drop");
}

static void
test_a_folder_that_cannot_be_written_to (NotePlace    *at,
                                         gconstpointer data)
{
  g_autofree char *blocker = g_build_filename (at->folder, "file", NULL);
  g_autofree char *session = g_build_filename (blocker, "job.rwlog", NULL); /* its folder is a file: never writable */
  g_autofree char *user = g_build_filename (g_get_user_data_dir (), "railwright", "notes", NOTE_OTHER ".rwnotes", NULL);

  g_assert_true (g_file_set_contents (blocker, "", 0, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_OTHER, session);

  note_add (notes, 1, 0, "kept all the same");
  g_assert_true (g_file_test (user, G_FILE_TEST_IS_REGULAR));

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_OTHER, session);

  note_assert_told (again, "1 kept all the same");
  g_assert_true (rw_annotations_retract (again, 1, NULL));
  note_assert_told (again, "");
  g_unlink (user);
}

/* An id out of a file is never a path. */
static void
test_an_id_names_no_path (void)
{
  static const char *const ids[] = { "../../../tmp/evil", "/etc/passwd", "a/b", "..", "$(id)" };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_autoptr (RwAnnotations) notes = rw_annotations_new (ids[i], NULL);
      g_autofree char *folder = g_path_get_dirname (rw_annotations_get_path (notes));
      g_autofree char *name = g_path_get_basename (rw_annotations_get_path (notes));
      g_autofree char *expected = g_build_filename (g_get_user_data_dir (), "railwright", "notes", NULL);

      g_assert_cmpstr (folder, ==, expected);
      g_assert_cmpuint (strlen (name), ==, 64 + strlen (".rwnotes"));
    }

  g_autoptr (RwAnnotations) nameless = rw_annotations_new ("", NULL);
  g_autoptr (GDateTime) when = note_written ();
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_annotations_get_path (nameless));
  g_assert_cmpuint (rw_annotations_add (nameless, 1, 0, "", "x", when, &error), ==, 0);
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_WRITE);
}

static void
test_limits (NotePlace    *at,
             gconstpointer data)
{
  g_autoptr (GString) text = g_string_new (NOTE_HEADER);
  const RwLimits limits = { .file_bytes = 4000, .line_bytes = 300, .landmarks = 3, .damaged = 2 };
  g_autofree char *long_text = g_strnfill (RW_LIMIT_TEXT_CHARS + 1, 'x');
  g_autoptr (RwAnnotations) mine = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (GDateTime) when = note_written ();
  g_autoptr (GError) error = NULL;

  for (guint i = 1; i <= 4; i++)
    g_string_append_printf (text, "{\"n\":%u,\"t\":%u,\"text\":\"x\"}\n", i, i);

  g_autoptr (RwAnnotations) notes = rw_annotations_new_from_bytes (text->str, text->len, "gift.rwnotes", NULL, &limits, NULL);

  g_assert_cmpuint (rw_annotations_get_n (notes), ==, 3);
  g_assert_nonnull (strstr (rw_annotations_get_report (notes), "gift.rwnotes was read only up to line 5"));
  g_assert_nonnull (strstr (rw_annotations_get_report (notes), "more than 3 annotations"));
  g_assert_cmpuint (rw_annotations_add (mine, 1, 0, "", long_text, when, &error), ==, 0);
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_FULL);
}

static void
refuse (const char *text,
        const char *why)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_annotations_new_from_bytes (text, strlen (text), "gift.rwnotes", NULL, &rw_limits, &error));
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_HEADER);
  g_assert_nonnull (strstr (error->message, "gift.rwnotes, line 1"));
  g_assert_nonnull (strstr (error->message, why));
}

static void
test_headers (void)
{
  refuse ("", "empty");
  refuse (FIXTURE_HEADER "\n", "railwright_notes");
  refuse ("{\"railwright_notes\":2,\"session\":\"x\"}\n", "newer");
  refuse ("{\"railwright_notes\":1}\n", "session");
}

static void
test_session_path (void)
{
  g_autofree char *beside = rw_annotations_dup_session_path ("/a/b.c/job.rwnotes");
  g_autofree char *none = rw_annotations_dup_session_path ("/a/b.rwnotes/job.rwlog");

  g_assert_cmpstr (beside, ==, "/a/b.c/job.rwlog");
  g_assert_null (none);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = note_init (&argc, &argv);

  note_test ("/annotations/calls are kept beside and are no notes", test_calls_are_kept_beside_and_are_no_notes);
  g_test_add_func ("/annotations/a damaged call is told", test_a_damaged_call_is_told);
  note_test ("/annotations/they stand beside the file and never in it", test_beside_and_never_in);
  note_test ("/annotations/taking one back only adds a line", test_taking_back_only_adds);
  note_test ("/annotations/two windows write one file", test_two_windows_write_one_file);
  note_test ("/annotations/damage is told and survived", test_damage_is_told_and_survived);
  g_test_add_func ("/annotations/a tail torn anywhere costs the last one alone", test_every_torn_tail);
  note_test ("/annotations/without a folder to write to they go to the user's", test_a_folder_that_cannot_be_written_to);
  g_test_add_func ("/annotations/an id names no path", test_an_id_names_no_path);
  note_test ("/annotations/limits are told", test_limits);
  g_test_add_func ("/annotations/a bad header is refused", test_headers);
  g_test_add_func ("/annotations/a file of notes is named after its session", test_session_path);

  const int status = g_test_run ();

  fixture_remove (home);
  return status;
}
