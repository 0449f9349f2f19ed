/* test-session-files.c: a session is found by its id among many files, by first lines alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

#include "fixtures.h"
#include "rw-journal-reader.h"
#include "rw-session-files.h"

typedef struct
{
  char *here;
  char *there;
} Folders;

static void
set_up (Folders      *at,
        gconstpointer data)
{
  at->here = fixture_folder ();
  at->there = fixture_folder ();
}

static void
tear_down (Folders      *at,
           gconstpointer data)
{
  fixture_remove (at->here);
  fixture_remove (at->there);
  g_free (at->here);
  g_free (at->there);
}

/* A session of this id, written so many seconds after 1970. */
static void
lay (const char *folder,
     const char *name,
     const char *id,
     guint       written,
     const char *rest)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GString) text = g_string_new (FIXTURE_HEADER);
  g_autofree char *own = g_strdup_printf ("\"id\":\"%s\"", id);
  const struct timespec times[2] = { { written, 0 }, { written, 0 } };

  g_assert_cmpuint (g_string_replace (text, "\"id\":\"0b7f\"", own, 1), ==, 1);
  g_string_append (text, rest);
  g_assert_true (g_file_set_contents (path, text->str, (gssize) text->len, NULL));
  g_assert_cmpint (utimensat (AT_FDCWD, path, times, 0), ==, 0);
}

static void
assert_found (Folders    *at,
              const char *id,
              const char *folder,
              const char *name)
{
  const char *const folders[] = { at->here, "/nowhere/at/all", at->there, NULL };
  g_autofree char *found = rw_session_files_find (folders, id, NULL);
  g_autofree char *expected = name != NULL ? g_build_filename (folder, name, NULL) : NULL;

  g_assert_cmpstr (found, ==, expected);
}

static void
test_found_in_any_folder (Folders      *at,
                          gconstpointer data)
{
  g_autofree char *damaged = g_build_filename (at->here, "damaged.rwlog", NULL);
  g_autofree char *empty = g_build_filename (at->there, "empty.rwlog", NULL);
  g_autofree char *folder = g_build_filename (at->there, "folder.rwlog", NULL);

  lay (at->here, "a.rwlog", "a1", 1000, "\n");
  lay (at->there, "b.rwlog", "b1", 2000, "\n{\"n\":1,\"t\":0,\"mark\":\"x\"}\n");
  lay (at->there, "c.rwlog", "", 2000, "\n");
  lay (at->there, "d.txt", "d1", 2000, "\n");
  lay (at->there, "e.rwlog", "e1", 2000, ""); /* cut off behind its first line, which is whole */
  g_assert_true (g_file_set_contents (damaged, "{\"railwright\":1,\"id\":\"f1\"", -1, NULL));
  g_assert_true (g_file_set_contents (empty, "", 0, NULL));
  g_assert_cmpint (g_mkdir (folder, 0700), ==, 0);
  assert_found (at, "a1", at->here, "a.rwlog");
  assert_found (at, "b1", at->there, "b.rwlog");
  assert_found (at, "e1", at->there, "e.rwlog");
  assert_found (at, "d1", NULL, NULL);
  assert_found (at, "f1", NULL, NULL);
  assert_found (at, "a", NULL, NULL);
  assert_found (at, "", NULL, NULL); /* nothing would tell two of them apart */
  g_rmdir (folder);
}

/* A copy of a session has its id: the one that was written last is the one that was gone on with. */
static void
test_of_copies_the_newest (Folders      *at,
                           gconstpointer data)
{
  lay (at->here, "old.rwlog", "a1", 1000, "\n");
  lay (at->there, "new.rwlog", "a1", 3000, "\n");
  lay (at->here, "older.rwlog", "a1", 500, "\n");
  assert_found (at, "a1", at->there, "new.rwlog");
  lay (at->here, "old.rwlog", "a1", 4000, "\n");
  assert_found (at, "a1", at->here, "old.rwlog");
}

static void
test_cancelled (Folders      *at,
                gconstpointer data)
{
  const char *const folders[] = { at->here, NULL };
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  lay (at->here, "a.rwlog", "a1", 1000, "\n");
  g_cancellable_cancel (cancellable);
  g_assert_null (rw_session_files_find (folders, "a1", cancellable));
}

/* Bytes that this process has read so far, by any call. */
static guint64
bytes_read (void)
{
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents ("/proc/self/io", &text, NULL, NULL));
  return g_ascii_strtoull (strchr (text, ' '), NULL, 10);
}

/* Of long sessions little more than the first line is read: 40 files of 300 kB, of which none is the one. */
static void
test_only_first_lines_are_read (Folders      *at,
                                gconstpointer data)
{
  g_autofree char *rest = g_strnfill (300 * 1024, '\n');
  const char *const folders[] = { at->here, NULL };

  if (!g_file_test ("/proc/self/io", G_FILE_TEST_EXISTS))
    {
      g_test_skip ("no /proc/self/io here");
      return;
    }
  for (guint i = 0; i < 40; i++)
    {
      g_autofree char *name = g_strdup_printf ("%u.rwlog", i);
      g_autofree char *id = g_strdup_printf ("id%u", i);

      lay (at->here, name, id, 1000 + i, rest);
    }

  const guint64 before = bytes_read ();

  g_assert_null (rw_session_files_find (folders, "none", NULL));
  g_assert_cmpuint (bytes_read () - before, <, 40 * 10000);
}

static void
test_first_line (Folders      *at,
                 gconstpointer data)
{
  g_autofree char *path = g_build_filename (at->here, "text", NULL);
  g_autofree char *long_line = g_strnfill (20000, 'x');
  g_autofree char *text = g_strconcat (long_line, "\nmore\n", NULL);
  gsize length;

  g_assert_true (g_file_set_contents (path, text, -1, NULL));

  g_autofree char *whole = rw_journal_load_first_line (path, 30000, &length, NULL);

  g_assert_cmpmem (whole, length, text, 20001);

  g_autofree char *part = rw_journal_load_first_line (path, 300, &length, NULL);

  g_assert_cmpmem (part, length, text, 301);
  g_assert_true (g_file_set_contents (path, "no end", -1, NULL));

  g_autofree char *bare = rw_journal_load_first_line (path, 300, &length, NULL);

  g_assert_cmpmem (bare, length, "no end", 6);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add ("/session-files/found in any folder", Folders, NULL, set_up, test_found_in_any_folder, tear_down);
  g_test_add ("/session-files/of copies the one written last", Folders, NULL, set_up, test_of_copies_the_newest, tear_down);
  g_test_add ("/session-files/nothing once it was cancelled", Folders, NULL, set_up, test_cancelled, tear_down);
  g_test_add ("/session-files/only first lines are read", Folders, NULL, set_up, test_only_first_lines_are_read, tear_down);
  g_test_add ("/session-files/a first line of any length", Folders, NULL, set_up, test_first_line, tear_down);
  return g_test_run ();
}
