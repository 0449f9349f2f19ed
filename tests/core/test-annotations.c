/* test-annotations.c: what people write on a session stands beside its file, lasts, travels and merges.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "fixtures.h"
#include "rw-annotations.h"
#include "rw-event.h"
#include "rw-journal-reader.h"
#include "rw-plain-text.h"

#define ID "0b6a1f0e-8f6a-4c53-9d5f-3f1f8f0f7a11"
#define OTHER "6f9a3a52-3b9a-4b9e-8a7c-0d7f0e4b2c11"
#define HEADER "{\"railwright_notes\":1,\"session\":\"" ID "\"}\n"
#define LINE(n, t, text) "{\"n\":" #n ",\"t\":" #t ",\"at\":null,\"by\":\"Mo\",\"text\":\"" text "\",\"written\":\"2026-03-14T18:00:00Z\"}\n"

static GDateTime *
written (void)
{
  return g_date_time_new_utc (2026, 3, 14, 18, 2, 11);
}

static guint
add (RwAnnotations *notes,
     double         t,
     guint          at,
     const char    *text)
{
  g_autoptr (GDateTime) when = written ();
  g_autoptr (GError) error = NULL;
  const guint n = rw_annotations_add (notes, t, at, "Ada", text, when, &error);

  g_assert_no_error (error);
  return n;
}

/* What is there, as one text: "t text|t text". */
static char *
told (RwAnnotations *notes)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < rw_annotations_get_n (notes); i++)
    {
      const RwAnnotation *note = rw_annotations_get (notes, i);

      g_string_append_printf (out, "%s%g %s", i > 0 ? "|" : "", note->t, note->text);
    }
  return g_string_free (out, FALSE);
}

static void
assert_told (RwAnnotations *notes,
             const char    *expected)
{
  g_autofree char *text = told (notes);

  g_assert_cmpstr (text, ==, expected);
}

static char *
read_text (const char *path)
{
  char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

static RwAnnotations *
read_good (const char *text)
{
  g_autoptr (GError) error = NULL;
  RwAnnotations *notes = rw_annotations_new_from_bytes (text, strlen (text), "gift.rwnotes", ID, &rw_limits, &error);

  g_assert_no_error (error);
  return notes;
}

static void
test_beside_and_never_in (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);

  g_assert_true (g_file_set_contents (session, FIXTURE_HEADER "\n", -1, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);

  g_assert_cmpuint (rw_annotations_get_n (notes), ==, 0);
  g_assert_false (g_file_test (beside, G_FILE_TEST_EXISTS)); /* nothing is made before there is something */
  g_assert_cmpuint (add (notes, 12.5, 7, "the fan stops here"), ==, 1);
  g_assert_cmpuint (add (notes, 3, 0, "look at the edge"), ==, 2);
  assert_told (notes, "3 look at the edge|12.5 the fan stops here");

  g_autofree char *text = read_text (beside), *log = read_text (session);

  g_assert_cmpstr (log, ==, FIXTURE_HEADER "\n");
  g_assert_cmpstr (text, ==,
                   HEADER "{\"n\":1,\"t\":12.5,\"at\":7,\"by\":\"Ada\",\"text\":\"the fan stops here\",\"written\":\"2026-03-14T18:02:11Z\"}\n"
                   "{\"n\":2,\"t\":3,\"at\":null,\"by\":\"Ada\",\"text\":\"look at the edge\",\"written\":\"2026-03-14T18:02:11Z\"}\n");

  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, session);

  assert_told (again, "3 look at the edge|12.5 the fan stops here");
  g_assert_cmpuint (rw_annotations_get (again, 1)->at, ==, 7);
  g_assert_cmpstr (rw_annotations_get (again, 1)->by, ==, "Ada");
  fixture_remove (folder);
}

static void
test_taking_back_only_adds (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);
  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);
  g_autoptr (GError) error = NULL;

  add (notes, 1, 0, "one");

  g_autofree char *before = read_text (beside);

  add (notes, 2, 0, "two");
  g_assert_true (rw_annotations_retract (notes, 1, &error));
  assert_told (notes, "2 two");

  g_autofree char *after = read_text (beside);

  g_assert_true (g_str_has_prefix (after, before));
  g_assert_true (g_str_has_suffix (after, "{\"retract\":1}\n"));
  g_assert_false (rw_annotations_retract (notes, 9, &error));
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_READ);

  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, session);

  assert_told (again, "2 two");
  g_assert_cmpuint (add (again, 3, 0, "three"), ==, 3); /* numbers are never used twice */
  fixture_remove (folder);
}

static void
test_two_windows_write_one_file (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autoptr (RwAnnotations) first = rw_annotations_new (ID, session);
  g_autoptr (RwAnnotations) second = rw_annotations_new (ID, session);

  add (first, 1, 0, "one");
  add (second, 2, 0, "two");
  add (first, 3, 0, "three");
  assert_told (first, "1 one|2 two|3 three");
  g_assert_cmpuint (add (second, 4, 0, "four"), ==, 4);

  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, session);

  assert_told (again, "1 one|2 two|3 three|4 four");
  fixture_remove (folder);
}

static void
test_damage_is_told_and_survived (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);

  g_assert_true (g_file_set_contents (beside, HEADER LINE (1, 1, "one") "rubbish\n" LINE (2, -4, "before time")
                                      LINE (3, 3, "three") "{\"n\":4,\"t\":4,\"te", -1, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);
  const char *report = rw_annotations_get_report (notes);

  assert_told (notes, "1 one|3 three");
  g_test_message ("%s", report);
  g_assert_nonnull (strstr (report, "2 damaged lines"));
  g_assert_nonnull (strstr (report, "line 3"));
  g_assert_nonnull (strstr (report, "cut off"));
  add (notes, 5, 0, "five");

  g_autofree char *text = read_text (beside);
  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, session);

  g_assert_nonnull (strstr (text, "rubbish\n")); /* only what was torn is gone */
  g_assert_null (strstr (text, "\"te{"));
  assert_told (again, "1 one|3 three|5 five");
  fixture_remove (folder);
}

/* Cut anywhere, what was whole is there, and writing goes on behind it. */
static void
test_every_torn_tail (void)
{
  static const char whole[] = HEADER LINE (1, 1, "one") LINE (2, 2, "two");
  const gsize header = strlen (HEADER), one = header + strlen (LINE (1, 1, "one"));

  for (gsize cut = header; cut <= strlen (whole); cut++)
    {
      g_autofree char *part = g_strndup (whole, cut);
      g_autoptr (RwAnnotations) notes = read_good (part);

      g_assert_cmpuint (rw_annotations_get_n (notes), ==, cut >= strlen (whole) - 1 ? 2 : cut >= one - 1 ? 1 : 0);
    }
}

static void
test_another_sessions_are_refused (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);
  g_autofree char *gift = g_build_filename (folder, "gift.rwnotes", NULL);
  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);
  g_autoptr (GError) error = NULL;
  guint added;

  g_assert_true (g_file_set_contents (gift, "{\"railwright_notes\":1,\"session\":\"" OTHER "\"}\n" LINE (1, 1, "one"), -1,
                                      NULL));
  g_assert_false (rw_annotations_import (notes, gift, &added, NULL, &error));
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_SESSION);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, OTHER));
  g_assert_nonnull (strstr (error->message, ID));

  /* One that lies beside by mistake is told of, kept as it is, and not written to. */
  g_assert_cmpint (g_rename (gift, beside), ==, 0);

  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, session);
  g_autofree char *before = read_text (beside);

  g_assert_nonnull (strstr (rw_annotations_get_report (again), "another session"));
  add (again, 1, 0, "mine");

  g_autofree char *after = read_text (beside);

  g_assert_cmpstr (before, ==, after);
  assert_told (again, "1 mine");
  g_unlink (rw_annotations_get_path (again)); /* in the user's folder, which the other tests share */
  fixture_remove (folder);
}

/* Two people's notes on one session become one list; doing it again changes nothing. */
static void
test_two_peoples_notes_merge (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *a = g_build_filename (folder, "a.rwlog", NULL);
  g_autofree char *b = g_build_filename (folder, "b.rwlog", NULL);
  g_autofree char *travels = g_build_filename (folder, "travels.rwnotes", NULL);
  g_autoptr (RwAnnotations) ada = rw_annotations_new (ID, a);
  g_autoptr (RwAnnotations) mo = rw_annotations_new (ID, b);
  g_autoptr (GError) error = NULL;
  guint added = 99;

  add (ada, 1, 0, "one");
  add (ada, 2, 0, "slip");
  g_assert_true (rw_annotations_retract (ada, 2, NULL));
  add (ada, 3, 0, "three");
  add (mo, 2, 0, "two");
  g_assert_true (rw_annotations_export (ada, travels, &error));
  g_assert_true (rw_annotations_import (mo, travels, &added, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (added, ==, 2);
  assert_told (mo, "1 one|2 two|3 three");
  g_assert_true (rw_annotations_import (mo, travels, &added, NULL, &error));
  g_assert_cmpuint (added, ==, 0);

  /* What was taken back here stays away. */
  g_assert_true (rw_annotations_retract (mo, rw_annotations_get (mo, 0)->n, &error));
  g_assert_true (rw_annotations_import (mo, travels, &added, NULL, &error));
  g_assert_cmpuint (added, ==, 0);

  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, b);

  assert_told (again, "2 two|3 three");
  fixture_remove (folder);
}

static void
test_unknown_keys_travel (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);
  g_autofree char *gift = g_build_filename (folder, "gift.rwnotes", NULL);
  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);
  guint added;

  add (notes, 0, 0, "mine");
  g_assert_true (g_file_set_contents (gift, HEADER "{\"n\":1,\"t\":1,\"text\":\"a\\u202eb\",\"colour\":\"red\"}\n", -1, NULL));
  g_assert_true (rw_annotations_import (notes, gift, &added, NULL, NULL));
  assert_told (notes, "0 mine|1 a�b"); /* shown as what it is */

  g_autofree char *text = read_text (beside);

  g_assert_nonnull (strstr (text, "\"colour\":\"red\""));
  g_assert_nonnull (strstr (text, "\"n\":2"));
  g_assert_nonnull (strstr (text, "\xE2\x80\xAE")); /* kept as it was written */
  fixture_remove (folder);
}

/* The calls as one text: "n form|n form". */
static void
assert_called (RwAnnotations *notes,
               const char    *expected)
{
  static const char *const forms[] = { [RW_CALL_ASK] = "ask", [RW_CALL_VALUE] = "value", [RW_CALL_HANDS] = "hands",
                                       [RW_CALL_REVEAL] = "reveal", [RW_CALL_DROP] = "drop" };
  g_autoptr (GArray) calls = rw_annotations_dup_calls (notes);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < calls->len; i++)
    {
      const RwEvent *event = &g_array_index (calls, RwEvent, i);

      g_assert_cmpint (event->type, ==, RW_EVENT_CALL);
      g_string_append_printf (text, "%s%u %s", i > 0 ? "|" : "", event->n, forms[event->call.form]);
    }
  g_assert_cmpstr (text->str, ==, expected);
}

static guint
add_call (RwAnnotations *notes,
          guint          at,
          RwCallSaid     said,
          int            second)
{
  g_autoptr (GDateTime) when = g_date_time_new_utc (2026, 3, 14, 18, 2, second);
  g_autoptr (GError) error = NULL;
  const guint n = rw_annotations_add_call (notes, 12.5, at, &said, when, &error);

  g_assert_no_error (error);
  rw_call_said_clear (&said);
  return n;
}

static void
test_calls_are_kept_beside_and_are_no_notes (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);

  add_call (notes, 0, rw_call_said_ask ("p5", RW_PLACE_BOARD, RW_KIND_DC, 4.98), 1);
  add (notes, 1, 0, "mine");

  const guint n = add_call (notes, 7, rw_call_said_value ("team \"1\"", 5.01, 0.1), 1);

  add_call (notes, 9, rw_call_said_reveal (9), 1);
  assert_told (notes, "1 mine");
  assert_called (notes, "0 ask|7 value|9 reveal");

  g_autoptr (RwAnnotations) again = rw_annotations_new (ID, session);
  g_autoptr (GArray) calls = rw_annotations_dup_calls (again);
  const RwEvent *value = &g_array_index (calls, RwEvent, 1);

  g_assert_null (rw_annotations_get_report (again));
  assert_told (again, "1 mine");
  assert_called (again, "0 ask|7 value|9 reveal");
  g_assert_cmpstr (value->call.value.by, ==, "team \"1\"");
  g_assert_cmpfloat (value->call.value.value, ==, 5.01);
  g_assert_cmpfloat (value->t, ==, 12.5);
  g_assert_true (rw_annotations_retract (again, n, NULL));
  assert_called (again, "0 ask|9 reveal");
  fixture_remove (folder);
}

/* Two teachers hold rounds at two desks; each round stays together by the time of its writing. */
static void
test_calls_merge (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *other = g_build_filename (folder, "other.rwlog", NULL);
  g_autofree char *gift = g_build_filename (folder, "gift.rwnotes", NULL);
  g_autoptr (RwAnnotations) here = rw_annotations_new (ID, session);
  g_autoptr (RwAnnotations) there = rw_annotations_new (ID, other);
  guint added;

  add_call (here, 3, rw_call_said_ask ("p5", RW_PLACE_BOARD, RW_KIND_DC, 4.98), 30);
  add_call (here, 4, rw_call_said_drop (), 31);
  add_call (there, 1, rw_call_said_ask ("p12", RW_PLACE_BOARD, RW_KIND_DC, 12.1), 10);
  add_call (there, 2, rw_call_said_hands (1, 2, 3), 11);
  g_assert_true (rw_annotations_export (there, gift, NULL));
  g_assert_true (rw_annotations_import (here, gift, &added, NULL, NULL));
  g_assert_cmpuint (added, ==, 2);
  assert_called (here, "1 ask|2 hands|3 ask|4 drop");
  g_assert_true (rw_annotations_import (here, gift, &added, NULL, NULL));
  g_assert_cmpuint (added, ==, 0);
  fixture_remove (folder);
}

static void
test_an_unknown_form_is_kept_and_ignored (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autofree char *beside = g_build_filename (folder, "job.rwnotes", NULL);
  g_autofree char *gift = g_build_filename (folder, "gift.rwnotes", NULL);
  static const char lines[] = HEADER LINE (1, 2.0, "here") "{\"n\":2,\"t\":3,\"sketch\":[1,2]}\n";

  g_assert_true (g_file_set_contents (beside, lines, -1, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (ID, session);

  g_assert_null (rw_annotations_get_report (notes));
  assert_told (notes, "2 here");
  assert_called (notes, "");
  g_assert_true (rw_annotations_export (notes, gift, NULL));

  g_autofree char *text = read_text (gift);

  g_assert_nonnull (strstr (text, "\"sketch\":[1,2]"));
  fixture_remove (folder);
}

static void
test_a_damaged_call_is_told (void)
{
  g_autoptr (RwAnnotations) notes = read_good (HEADER "{\"n\":1,\"t\":1,\"call\":{\"value\":\"high\"}}\n"
                                                      "{\"n\":2,\"t\":1,\"call\":5}\n"
                                                      "{\"n\":3,\"t\":1,\"call\":{\"drop\":true}}\n");

  g_assert_nonnull (rw_annotations_get_report (notes));
  g_assert_nonnull (strstr (rw_annotations_get_report (notes), "2 damaged lines"));
  assert_called (notes, "0 drop");
}

static void
test_a_folder_that_cannot_be_written_to (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *blocker = g_build_filename (folder, "file", NULL);
  g_autofree char *session = g_build_filename (blocker, "job.rwlog", NULL); /* its folder is a file: never writable */
  g_autofree char *user = g_build_filename (g_get_user_data_dir (), "railwright", "notes", OTHER ".rwnotes", NULL);

  g_assert_true (g_file_set_contents (blocker, "", 0, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (OTHER, session);

  add (notes, 1, 0, "kept all the same");
  g_assert_true (g_file_test (user, G_FILE_TEST_IS_REGULAR));

  g_autoptr (RwAnnotations) again = rw_annotations_new (OTHER, session);

  assert_told (again, "1 kept all the same");
  g_assert_true (rw_annotations_retract (again, 1, NULL));
  assert_told (again, "");
  g_unlink (user);
  fixture_remove (folder);
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
  g_autoptr (GDateTime) when = written ();
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_annotations_get_path (nameless));
  g_assert_cmpuint (rw_annotations_add (nameless, 1, 0, "", "x", when, &error), ==, 0);
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_WRITE);
}

static void
test_limits (void)
{
  g_autoptr (GString) text = g_string_new (HEADER);
  const RwLimits limits = { .file_bytes = 4000, .line_bytes = 300, .landmarks = 3, .damaged = 2 };
  g_autofree char *long_text = g_strnfill (RW_LIMIT_TEXT_CHARS + 1, 'x');
  g_autofree char *folder = fixture_folder ();
  g_autofree char *session = g_build_filename (folder, "job.rwlog", NULL);
  g_autoptr (RwAnnotations) mine = rw_annotations_new (ID, session);
  g_autoptr (GDateTime) when = written ();
  g_autoptr (GError) error = NULL;

  for (guint i = 1; i <= 4; i++)
    g_string_append_printf (text, "{\"n\":%u,\"t\":%u,\"text\":\"x\"}\n", i, i);

  g_autoptr (RwAnnotations) notes = rw_annotations_new_from_bytes (text->str, text->len, "gift.rwnotes", NULL, &limits, NULL);

  g_assert_cmpuint (rw_annotations_get_n (notes), ==, 3);
  g_assert_nonnull (strstr (rw_annotations_get_report (notes), "gift.rwnotes was read only up to line 5"));
  g_assert_nonnull (strstr (rw_annotations_get_report (notes), "more than 3 annotations"));
  g_assert_cmpuint (rw_annotations_add (mine, 1, 0, "", long_text, when, &error), ==, 0);
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_FULL);
  fixture_remove (folder);
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
  g_autofree char *home = g_dir_make_tmp ("rw-notes-XXXXXX", NULL);

  g_setenv ("XDG_DATA_HOME", home, TRUE);
  fixture_init (&argc, &argv);
  g_test_add_func ("/annotations/calls are kept beside and are no notes", test_calls_are_kept_beside_and_are_no_notes);
  g_test_add_func ("/annotations/calls merge", test_calls_merge);
  g_test_add_func ("/annotations/an unknown form is kept and ignored", test_an_unknown_form_is_kept_and_ignored);
  g_test_add_func ("/annotations/a damaged call is told", test_a_damaged_call_is_told);
  g_test_add_func ("/annotations/they stand beside the file and never in it", test_beside_and_never_in);
  g_test_add_func ("/annotations/taking one back only adds a line", test_taking_back_only_adds);
  g_test_add_func ("/annotations/two windows write one file", test_two_windows_write_one_file);
  g_test_add_func ("/annotations/damage is told and survived", test_damage_is_told_and_survived);
  g_test_add_func ("/annotations/a tail torn anywhere costs the last one alone", test_every_torn_tail);
  g_test_add_func ("/annotations/those of another session are refused", test_another_sessions_are_refused);
  g_test_add_func ("/annotations/two people's become one list", test_two_peoples_notes_merge);
  g_test_add_func ("/annotations/unknown keys travel", test_unknown_keys_travel);
  g_test_add_func ("/annotations/without a folder to write to they go to the user's", test_a_folder_that_cannot_be_written_to);
  g_test_add_func ("/annotations/an id names no path", test_an_id_names_no_path);
  g_test_add_func ("/annotations/limits are told", test_limits);
  g_test_add_func ("/annotations/a bad header is refused", test_headers);
  g_test_add_func ("/annotations/a file of notes is named after its session", test_session_path);

  const int status = g_test_run ();

  fixture_remove (home);
  return status;
}
