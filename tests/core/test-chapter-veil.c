/* test-chapter-veil.c: nothing that happens later changes what is told of chapters behind the veil.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"
#include "rw-chapter-veil.h"

static const char *const marks[] = { "reset seen", "low at the board", "the step is at +12 V" };

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static void
add_reading (RwSession  *session,
             double      t,
             const char *rail,
             double      value)
{
  const RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");

  add (session, rw_event_make_reading (t, &reading));
}

/* Marks of one text that follow each other, runs of turns, readings that change verdicts. */
static void
add_event (RwSession *session,
           guint      i)
{
  switch (i % 8)
    {
    case 0:
    case 1:
      add (session, rw_event_make_mark (i, marks[i / 8 % G_N_ELEMENTS (marks)]));
      break;
    case 2:
      add_reading (session, i, "p5", i % 3 == 0 ? 4.7 : 5.02);
      break;
    case 5:
      add_reading (session, i, "p12", i % 5 == 0 ? 14 : 12);
      break;
    case 7:
      add (session, rw_event_make_note (i, "so it goes"));
      break;
    default:
      add (session, rw_event_make_trim (i));
    }
}

static RwSession *
make_session (guint n)
{
  RwSession *session = fixture_session ();

  for (guint i = 0; i < n; i++)
    add_event (session, i);
  return session;
}

static RwSession *
make_other_future (guint n)
{
  RwSession *session = make_session (n);

  add (session, rw_event_make_note (n, "quite another end"));
  return session;
}

/* What is told of chapter @i: "title: change". */
static char *
tell (RwSession        *session,
      const RwChapters *chapters,
      guint             i,
      guint             n_events)
{
  const RwChapterVeil veil = { session, NULL, n_events };
  g_autofree char *title = rw_chapter_veil_dup_title (&veil, rw_chapters_get (chapters, i));
  g_autofree char *change = rw_chapter_veil_dup_change (&veil, rw_chapters_get (chapters, i));

  return g_strdup_printf ("%s: %s", title, change);
}

static void
test_future (void)
{
  const guint n_all = 60;
  g_autoptr (RwSession) session = make_session (n_all);
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

  g_assert_cmpuint (rw_chapters_get_n (chapters), >, 10);
  for (guint n = 0; n < n_all; n++)
    {
      g_autoptr (RwSession) other = make_other_future (n);
      g_autoptr (RwChapters) others = rw_chapters_new (other, NULL, NULL);
      const guint now = rw_chapters_find (chapters, n);

      g_assert_cmpuint (now, ==, rw_chapters_find (others, n));
      for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
        {
          g_autofree char *told = tell (session, chapters, i, n);
          g_autofree char *told_there = i <= now && n > 0 ? tell (other, others, i, n) : NULL;

          if (i > now)
            g_assert_cmpstr (told, ==, "A later chapter: ");
          else
            g_assert_cmpstr (told, ==, n > 0 ? told_there : "The beginning: ");
        }
    }
}

static void
test_all (void)
{
  g_autoptr (RwSession) session = make_session (60);
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

  for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
    {
      const RwChapter *chapter = rw_chapters_get (chapters, i);
      g_autofree char *change = rw_chapter_describe_change (chapter, rw_session_get_profile (session));
      g_autofree char *expected = g_strdup_printf ("%s: %s", chapter->title, change);
      g_autofree char *told = tell (session, chapters, i, G_MAXUINT);

      g_assert_cmpstr (told, ==, expected);
    }
}

static void
test_begun (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  static const char *const told[] = { "The beginning: ", "low: ", "low: ", "low: ",
                                      "low (2 times): 1 reading, +5 V: inside" };

  add (session, rw_event_make_mark (1, "low"));
  add (session, rw_event_make_mark (2, "low"));
  add_reading (session, 3, "p5", 5.02);
  add (session, rw_event_make_trim (4));
  add (session, rw_event_make_trim (5));

  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

  for (guint n = 0; n < G_N_ELEMENTS (told); n++)
    {
      g_autofree char *words = tell (session, chapters, 0, n);

      g_assert_cmpstr (words, ==, told[n]);
    }

  g_autofree char *begun = tell (session, chapters, 1, 4), *over = tell (session, chapters, 1, 5);

  g_assert_cmpstr (begun, ==, "Turns of the trim: ");
  g_assert_cmpstr (over, ==, "2 turns of the trim: ");
}

static void
test_hidden (void)
{
  g_autoptr (RwSession) session = make_session (60);
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);

  for (guint n = 0; n <= 60; n++)
    for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
      {
        const RwChapterVeil veil = { session, "p12", n };
        g_autofree char *title = rw_chapter_veil_dup_title (&veil, rw_chapters_get (chapters, i));
        g_autofree char *change = rw_chapter_veil_dup_change (&veil, rw_chapters_get (chapters, i));

        g_assert_null (strstr (title, "+12"));
        g_assert_null (strstr (change, "+12"));
      }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chapter-veil/nothing that happens later changes what is told", test_future);
  g_test_add_func ("/chapter-veil/without it everything is told", test_all);
  g_test_add_func ("/chapter-veil/a chapter that goes on has a title that counts nothing", test_begun);
  g_test_add_func ("/chapter-veil/a hidden rail is not named either", test_hidden);
  return g_test_run ();
}
