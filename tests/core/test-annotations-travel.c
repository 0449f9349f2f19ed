/* test-annotations-travel.c: notes that come in from somebody else, or travel alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "note-place.h"
#include "fixtures.h"

static void
assert_head (const char *path,
             const char *cabinet,
             const char *started)
{
  g_auto (RwAnnotationsHead) head = { 0 };
  g_autoptr (GError) error = NULL;

  g_assert_true (rw_annotations_read_head (path, &head, &error));
  g_assert_no_error (error);

  g_autofree char *stamp = head.started != NULL ? g_date_time_format_iso8601 (head.started) : NULL;

  g_assert_cmpstr (head.session, ==, NOTE_ID);
  g_assert_cmpstr (head.cabinet, ==, cabinet);
  g_assert_cmpstr (stamp, ==, started);
}

/* Those that travel alone name the session by more than its id; files of older programs, and odd ones, do not. */
static void
test_notes_say_which_session_they_are_on (NotePlace    *at,
                                          gconstpointer data)
{
  g_autofree char *travels = g_build_filename (at->folder, "travels.rwnotes", NULL);
  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (GDateTime) started = g_date_time_new_from_iso8601 ("2026-03-14T10:30:00+01:00", NULL);

  rw_annotations_set_about (notes, "Tidepool \"Racer\"", started);
  note_add (notes, 1, 0, "one");
  assert_head (at->beside, "Tidepool \"Racer\"", "2026-03-14T09:30:00Z");
  g_assert_true (rw_annotations_export (notes, travels, NULL));
  assert_head (travels, "Tidepool \"Racer\"", "2026-03-14T09:30:00Z");

  g_assert_true (g_file_set_contents (travels, NOTE_HEADER NOTE_LINE (1, 1, "one"), -1, NULL));
  assert_head (travels, NULL, NULL);
  g_assert_true (g_file_set_contents (travels, "{\"railwright_notes\":1,\"session\":\"" NOTE_ID "\",\"cabinet\":\"a\\u202eb\","
                                               "\"started\":\"last week\"}", -1, NULL));
  assert_head (travels, "a\xEF\xBF\xBD" "b", NULL);
}

static void
test_a_head_that_says_nothing (NotePlace    *at,
                               gconstpointer data)
{
  g_autofree char *odd = g_build_filename (at->folder, "odd.rwnotes", NULL);
  g_autofree char *long_line = g_strnfill (rw_limits.line_bytes + 9, ' ');
  const char *const texts[] = { "", "rubbish", "{\"railwright_notes\":9,\"session\":\"x\"}", long_line };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_auto (RwAnnotationsHead) head = { 0 };
      g_autoptr (GError) error = NULL;

      g_assert_true (g_file_set_contents (odd, texts[i], -1, NULL));
      g_assert_false (rw_annotations_read_head (odd, &head, &error));
      g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_HEADER);
      g_assert_nonnull (strstr (error->message, "odd.rwnotes, line 1"));
      g_assert_null (head.session);
    }
}

static void
test_another_sessions_are_refused (NotePlace    *at,
                                   gconstpointer data)
{
  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (GError) error = NULL;
  guint added;

  g_assert_true (g_file_set_contents (at->gift, "{\"railwright_notes\":1,\"session\":\"" NOTE_OTHER "\"}\n" NOTE_LINE (1, 1, "one"), -1,
                                      NULL));
  g_assert_false (rw_annotations_import (notes, at->gift, &added, NULL, &error));
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_SESSION);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, NOTE_OTHER));
  g_assert_nonnull (strstr (error->message, NOTE_ID));

  /* One that lies beside by mistake is told of, kept as it is, and not written to. */
  g_assert_cmpint (g_rename (at->gift, at->beside), ==, 0);

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, at->session);
  g_autofree char *before = note_read_text (at->beside);

  g_assert_nonnull (strstr (rw_annotations_get_report (again), "another session"));
  note_add (again, 1, 0, "mine");

  g_autofree char *after = note_read_text (at->beside);

  g_assert_cmpstr (before, ==, after);
  note_assert_told (again, "1 mine");
  g_unlink (rw_annotations_get_path (again)); /* in the user's folder, which the other tests share */
}

/* Two people's notes on one session become one list; doing it again changes nothing. */
static void
test_two_peoples_notes_merge (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *a = g_build_filename (folder, "a.rwlog", NULL);
  g_autofree char *b = g_build_filename (folder, "b.rwlog", NULL);
  g_autofree char *travels = g_build_filename (folder, "travels.rwnotes", NULL);
  g_autoptr (RwAnnotations) ada = rw_annotations_new (NOTE_ID, a);
  g_autoptr (RwAnnotations) mo = rw_annotations_new (NOTE_ID, b);
  g_autoptr (GError) error = NULL;
  guint added = 99;

  note_add (ada, 1, 0, "one");
  note_add (ada, 2, 0, "slip");
  g_assert_true (rw_annotations_retract (ada, 2, NULL));
  note_add (ada, 3, 0, "three");
  note_add (mo, 2, 0, "two");
  g_assert_true (rw_annotations_export (ada, travels, &error));
  g_assert_true (rw_annotations_import (mo, travels, &added, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (added, ==, 2);
  note_assert_told (mo, "1 one|2 two|3 three");
  g_assert_true (rw_annotations_import (mo, travels, &added, NULL, &error));
  g_assert_cmpuint (added, ==, 0);

  /* What was taken back here stays away. */
  g_assert_true (rw_annotations_retract (mo, rw_annotations_get (mo, 0)->n, &error));
  g_assert_true (rw_annotations_import (mo, travels, &added, NULL, &error));
  g_assert_cmpuint (added, ==, 0);

  g_autoptr (RwAnnotations) again = rw_annotations_new (NOTE_ID, b);

  note_assert_told (again, "2 two|3 three");
  fixture_remove (folder);
}

/* What is asked before notes are taken in: is this file read already, and how much of it is new? */
static void
test_new_ones_are_counted (NotePlace    *at,
                           gconstpointer data)
{
  g_autofree char *beside = g_build_filename (at->folder, ".", "job.rwnotes", NULL);
  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (GError) error = NULL;
  guint n = 9, added;

  g_assert_false (rw_annotations_has_file (notes, beside));
  note_add (notes, 1, 0, "one");
  g_assert_true (rw_annotations_has_file (notes, beside));
  g_assert_false (rw_annotations_has_file (notes, at->gift));
  g_assert_true (g_file_set_contents (at->gift, NOTE_HEADER NOTE_LINE (1, 1, "one") NOTE_LINE (2, 2, "two") "{\"retract\":1}\n" NOTE_LINE (3, 3, "x"),
                                      -1, NULL));
  g_assert_true (rw_annotations_count_new (notes, at->gift, &n, &error));
  g_assert_cmpuint (n, ==, 2);
  note_assert_told (notes, "1 one");
  g_assert_true (rw_annotations_import (notes, at->gift, &added, NULL, NULL));
  g_assert_cmpuint (added, ==, n);
  g_assert_true (rw_annotations_count_new (notes, at->gift, &n, &error));
  g_assert_cmpuint (n, ==, 0);
  g_assert_true (g_file_set_contents (at->gift, "{\"railwright_notes\":1,\"session\":\"" NOTE_OTHER "\"}\n", -1, NULL));
  g_assert_false (rw_annotations_count_new (notes, at->gift, &n, &error));
  g_assert_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_SESSION);
}

static void
test_unknown_keys_travel (NotePlace    *at,
                          gconstpointer data)
{
  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);
  guint added;

  note_add (notes, 0, 0, "mine");
  g_assert_true (g_file_set_contents (at->gift, NOTE_HEADER "{\"n\":1,\"t\":1,\"text\":\"a\\u202eb\",\"colour\":\"red\"}\n", -1, NULL));
  g_assert_true (rw_annotations_import (notes, at->gift, &added, NULL, NULL));
  note_assert_told (notes, "0 mine|1 a�b"); /* shown as what it is */

  g_autofree char *text = note_read_text (at->beside);

  g_assert_nonnull (strstr (text, "\"colour\":\"red\""));
  g_assert_nonnull (strstr (text, "\"n\":2"));
  g_assert_nonnull (strstr (text, "\xE2\x80\xAE")); /* kept as it was written */
}

/* Two teachers hold rounds at two desks; each round stays together by the time of its writing. */
static void
test_calls_merge (NotePlace    *at,
                  gconstpointer data)
{
  g_autofree char *other = g_build_filename (at->folder, "other.rwlog", NULL);
  g_autoptr (RwAnnotations) here = rw_annotations_new (NOTE_ID, at->session);
  g_autoptr (RwAnnotations) there = rw_annotations_new (NOTE_ID, other);
  guint added;

  note_add_call (here, 3, rw_call_said_ask ("p5", RW_PLACE_BOARD, RW_KIND_DC, 4.98), 30);
  note_add_call (here, 4, rw_call_said_drop (), 31);
  note_add_call (there, 1, rw_call_said_ask ("p12", RW_PLACE_BOARD, RW_KIND_DC, 12.1), 10);
  note_add_call (there, 2, rw_call_said_hands (1, 2, 3), 11);
  g_assert_true (rw_annotations_export (there, at->gift, NULL));
  g_assert_true (rw_annotations_import (here, at->gift, &added, NULL, NULL));
  g_assert_cmpuint (added, ==, 2);
  note_assert_called (here, "1 ask|2 hands|3 ask|4 drop");
  g_assert_true (rw_annotations_import (here, at->gift, &added, NULL, NULL));
  g_assert_cmpuint (added, ==, 0);
}

static void
test_an_unknown_form_is_kept_and_ignored (NotePlace    *at,
                                          gconstpointer data)
{
  static const char lines[] = NOTE_HEADER NOTE_LINE (1, 2.0, "here") "{\"n\":2,\"t\":3,\"sketch\":[1,2]}\n";

  g_assert_true (g_file_set_contents (at->beside, lines, -1, NULL));

  g_autoptr (RwAnnotations) notes = rw_annotations_new (NOTE_ID, at->session);

  g_assert_null (rw_annotations_get_report (notes));
  note_assert_told (notes, "2 here");
  note_assert_called (notes, "");
  g_assert_true (rw_annotations_export (notes, at->gift, NULL));

  g_autofree char *text = note_read_text (at->gift);

  g_assert_nonnull (strstr (text, "\"sketch\":[1,2]"));
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = note_init (&argc, &argv);

  note_test ("/annotations/they say which session they are on", test_notes_say_which_session_they_are_on);
  note_test ("/annotations/a first line that says nothing is told", test_a_head_that_says_nothing);
  note_test ("/annotations/new ones are counted before they come in", test_new_ones_are_counted);
  note_test ("/annotations/those of another session are refused", test_another_sessions_are_refused);
  g_test_add_func ("/annotations/two people's become one list", test_two_peoples_notes_merge);
  note_test ("/annotations/unknown keys travel", test_unknown_keys_travel);
  note_test ("/annotations/calls merge", test_calls_merge);
  note_test ("/annotations/an unknown form is kept and ignored", test_an_unknown_form_is_kept_and_ignored);

  const int status = g_test_run ();

  fixture_remove (home);
  return status;
}
