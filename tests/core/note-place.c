/* note-place.c: what the tests of notes on a session share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "note-place.h"

#include <string.h>

#include "fixtures.h"
#include "rw-event.h"

char *
note_init (int    *argc,
           char ***argv)
{
  char *home = g_dir_make_tmp ("rw-notes-XXXXXX", NULL);

  g_setenv ("XDG_DATA_HOME", home, TRUE);
  fixture_init (argc, argv);
  return home;
}

void
note_place_set_up (NotePlace    *at,
                   gconstpointer data)
{
  at->folder = fixture_folder ();
  at->session = g_build_filename (at->folder, "job.rwlog", NULL);
  at->beside = g_build_filename (at->folder, "job.rwnotes", NULL);
  at->gift = g_build_filename (at->folder, "gift.rwnotes", NULL);
}

void
note_place_tear_down (NotePlace    *at,
                      gconstpointer data)
{
  fixture_remove (at->folder);
  g_free (at->folder);
  g_free (at->session);
  g_free (at->beside);
  g_free (at->gift);
}

GDateTime *
note_written (void)
{
  return g_date_time_new_utc (2026, 3, 14, 18, 2, 11);
}

guint
note_add (RwAnnotations *notes,
          double         t,
          guint          at,
          const char    *text)
{
  g_autoptr (GDateTime) when = note_written ();
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

void
note_assert_told (RwAnnotations *notes,
                  const char    *expected)
{
  g_autofree char *text = told (notes);

  g_assert_cmpstr (text, ==, expected);
}

char *
note_read_text (const char *path)
{
  char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

RwAnnotations *
note_read (const char *text)
{
  g_autoptr (GError) error = NULL;
  RwAnnotations *notes = rw_annotations_new_from_bytes (text, strlen (text), "gift.rwnotes", NOTE_ID, &rw_limits, &error);

  g_assert_no_error (error);
  return notes;
}

/* The calls as one text: "n form|n form". */
void
note_assert_called (RwAnnotations *notes,
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

guint
note_add_call (RwAnnotations *notes,
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
