/* test-journal-trouble.c: a full disk, a lost folder, another place: told, and nothing lost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The full disk is a limit on the size of files (RLIMIT_FSIZE), set in a process of its own: what
 * goes past it is refused by the system half-way through a line, just as by a disk.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>

#include "fixtures.h"
#include "journal-watch.h"

static char *folder;
static char *path;

static void
set_up (void)
{
  folder = fixture_folder ();
  path = g_build_filename (folder, "cabinet", "job.rwlog", NULL);
}

static void
tear_down (void)
{
  fixture_remove (folder);
  g_clear_pointer (&folder, g_free);
  g_clear_pointer (&path, g_free);
}

static void
limit_file_size (rlim_t bytes)
{
  struct rlimit limit;

  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  limit.rlim_cur = MIN (bytes, limit.rlim_max);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

static rlim_t
size_of (const char *name)
{
  GStatBuf info;

  g_assert_cmpint (g_stat (name, &info), ==, 0);
  return (rlim_t) info.st_size;
}

static double
wait_for (const gboolean *flag)
{
  const gint64 start = g_get_monotonic_time ();

  fixture_spin (8, flag);
  g_assert_true (*flag);
  return (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

/* TRUE in the process of its own, which then runs the rest of the test. */
static gboolean
in_own_process (void)
{
  if (g_test_subprocess ())
    {
      signal (SIGXFSZ, SIG_IGN);
      set_up ();
      return TRUE;
    }
  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_passed ();
  return FALSE;
}

static void
assert_trouble (JournalWatch *watch,
                const char   *word)
{
  g_test_message ("%s", watch->trouble);
  g_assert_nonnull (strstr (watch->trouble, path));
  g_assert_nonnull (strstr (watch->trouble, word));
  g_assert_cmpstr (rw_journal_get_trouble (watch->journal), ==, watch->trouble);
}

/* Full at every place of a line: whole lines stay, the torn part goes, and all of it is written in
 * the end. */
static void
test_full_disk (void)
{
  if (!in_own_process ())
    return;

  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwJournal) journal = journal_new (session, path);
  JournalWatch watch;
  guint n_sound = 0;

  journal_watch (&watch, journal, session);
  for (guint room = 0; room < 150; room++)
    {
      g_autoptr (GError) error = NULL;

      limit_file_size (size_of (path) + room);
      for (guint i = 0; i < 3; i++)
        journal_add (&watch, i == 1 ? journal_some_sample (room) : journal_some_reading (room));
      if (!rw_journal_flush (journal, &error))
        {
          g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
          g_assert_nonnull (strstr (error->message, "full"));
          g_assert_nonnull (rw_journal_get_trouble (journal));
          n_sound++;
        }
      g_assert_cmpuint (journal_count_sound (path), ==, rw_journal_get_kept (journal));
      limit_file_size (RLIM_INFINITY);
      g_clear_error (&error);
      g_assert_true (rw_journal_flush (journal, &error));
      g_assert_no_error (error);
      g_assert_null (rw_journal_get_trouble (journal));
      journal_assert_file_is (path, session);
    }
  g_assert_cmpuint (n_sound, >=, 100);
  journal_unwatch (&watch);
  tear_down ();
}

/* As it goes for a person: told at once, work goes on, and when there is room again the program
 * finds out alone. */
static void
test_full_disk_is_told_and_survived (void)
{
  if (!in_own_process ())
    return;

  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwJournal) journal = journal_new (session, path);
  JournalWatch watch;

  journal_watch (&watch, journal, session);
  journal_add (&watch, journal_some_reading (1));
  wait_for (&watch.all_kept);
  limit_file_size (size_of (path) + 40);
  journal_add (&watch, journal_some_reading (2));
  g_assert_cmpfloat (wait_for (&watch.in_trouble), <, 1);
  assert_trouble (&watch, "full");
  g_assert_cmpuint (rw_journal_get_kept (journal), ==, 1);
  for (guint i = 0; i < 200; i++)
    journal_add (&watch, i % 3 ? journal_some_sample (3) : journal_some_reading (3));
  fixture_spin (0.2, NULL);
  g_assert_cmpuint (journal_count_sound (path), ==, 1);
  g_assert_cmpuint (rw_journal_get_kept (journal), ==, 1);
  g_assert_cmpuint (watch.n_troubles, ==, 1); /* the same news is not told twice */

  limit_file_size (RLIM_INFINITY);
  g_assert_cmpfloat (wait_for (&watch.all_kept), <, 3);
  g_assert_true (watch.out_of_trouble || rw_journal_get_trouble (journal) == NULL);
  journal_assert_file_is (path, session);
  journal_unwatch (&watch);
  tear_down ();
}

/* A journal that ends while the disk is full ends; what was whole stays whole. */
static void
test_ending_on_a_full_disk (void)
{
  if (!in_own_process ())
    return;

  g_autoptr (RwSession) session = fixture_session ();
  RwJournal *journal = journal_new (session, path);
  RwEvent event = journal_some_reading (1);

  rw_session_add (session, &event);
  g_assert_true (rw_journal_flush (journal, NULL));
  limit_file_size (size_of (path) + 40);
  event = journal_some_reading (2);
  rw_session_add (session, &event);
  g_assert_false (rw_journal_flush (journal, NULL));
  g_assert_finalize_object (journal);
  g_assert_cmpuint (journal_count_sound (path), ==, 1);
  tear_down ();
}

/* What could not be made whole is not left in the way of the next try. */
static void
test_making_and_moving_on_a_full_disk (void)
{
  if (!in_own_process ())
    return;

  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GError) error = NULL;
  g_autofree char *other = g_build_filename (folder, "other.rwlog", NULL);

  limit_file_size (100);
  g_assert_null (rw_journal_create (session, path, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "full"));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_clear_error (&error);
  limit_file_size (RLIM_INFINITY);

  g_autoptr (RwJournal) journal = journal_new (session, path);

  limit_file_size (100);
  g_assert_false (rw_journal_move (journal, other, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
  g_assert_false (g_file_test (other, G_FILE_TEST_EXISTS));
  g_assert_cmpstr (rw_journal_get_path (journal), ==, path);
  g_clear_error (&error);
  limit_file_size (RLIM_INFINITY);
  g_assert_true (rw_journal_move (journal, other, &error));
  g_assert_no_error (error);
  journal_assert_file_is (other, session);
  tear_down ();
}

/* The folder goes (a stick is pulled out, a tidy person) and comes back empty. */
static void
test_folder_lost_and_brought_back (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  JournalWatch watch;

  set_up ();

  g_autofree char *cabinet = g_path_get_dirname (path);
  g_autoptr (RwJournal) journal = journal_new (session, path);

  journal_watch (&watch, journal, session);
  for (guint i = 0; i < 10; i++)
    journal_add (&watch, journal_some_reading (i));
  wait_for (&watch.all_kept);
  fixture_remove (cabinet);
  journal_add (&watch, journal_some_reading (20));
  g_assert_cmpfloat (wait_for (&watch.in_trouble), <, 1);
  assert_trouble (&watch, "Nothing is lost");
  g_assert_cmpuint (rw_journal_get_kept (journal), ==, 10);
  journal_add (&watch, journal_some_sample (21));
  g_assert_cmpint (g_mkdir (cabinet, 0755), ==, 0);
  wait_for (&watch.all_kept);
  g_assert_null (rw_journal_get_trouble (journal));
  journal_assert_file_is (path, session);

  /* The new file is locked as the old one was, and goes on. */
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = NULL;

  g_assert_null (rw_journal_open (path, &read, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_LOCKED);
  journal_add (&watch, journal_some_reading (22));
  wait_for (&watch.all_kept);
  journal_assert_file_is (path, session);
  journal_unwatch (&watch);
  tear_down ();
}

/* The folder is moved away and back: it is the old file again. */
static void
test_folder_moved_away_and_back (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  JournalWatch watch;

  set_up ();

  g_autofree char *cabinet = g_path_get_dirname (path);
  g_autofree char *away = g_build_filename (folder, "away", NULL);
  g_autoptr (RwJournal) journal = journal_new (session, path);

  journal_watch (&watch, journal, session);
  journal_add (&watch, journal_some_reading (1));
  wait_for (&watch.all_kept);
  g_assert_cmpint (g_rename (cabinet, away), ==, 0);
  journal_add (&watch, journal_some_reading (2));
  wait_for (&watch.in_trouble);
  g_assert_cmpint (g_rename (away, cabinet), ==, 0);
  wait_for (&watch.all_kept);
  journal_assert_file_is (path, session);
  journal_unwatch (&watch);
  tear_down ();
}

/* Only the file is deleted: it is made again, with all that was in it, before anybody notices. */
static void
test_file_deleted (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  JournalWatch watch;

  set_up ();

  g_autoptr (RwJournal) journal = journal_new (session, path);

  journal_watch (&watch, journal, session);
  for (guint i = 0; i < 5; i++)
    {
      journal_add (&watch, journal_some_reading (i));
      wait_for (&watch.all_kept);
      g_assert_cmpint (g_unlink (path), ==, 0);
    }
  journal_add (&watch, journal_some_reading (9));
  wait_for (&watch.all_kept);
  g_assert_cmpuint (watch.n_troubles, ==, 0);
  journal_assert_file_is (path, session);
  journal_unwatch (&watch);
  tear_down ();
}

/* Somebody else's file stands where ours was: it is not touched, and another place helps. */
static void
test_strange_file_in_the_way (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GError) error = NULL;
  JournalWatch watch;

  set_up ();

  g_autofree char *other = g_build_filename (folder, "other.rwlog", NULL);
  g_autoptr (RwJournal) journal = journal_new (session, path);

  journal_watch (&watch, journal, session);
  journal_add (&watch, journal_some_reading (1));
  wait_for (&watch.all_kept);
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_true (g_file_set_contents (path, "mine", -1, NULL));
  journal_add (&watch, journal_some_reading (2));
  wait_for (&watch.in_trouble);
  assert_trouble (&watch, "another name");
  g_assert_true (rw_journal_move (journal, other, &error));
  wait_for (&watch.out_of_trouble);
  wait_for (&watch.all_kept);
  journal_assert_file_is (other, session);

  g_autofree char *theirs = NULL;

  g_assert_true (g_file_get_contents (path, &theirs, NULL, NULL));
  g_assert_cmpstr (theirs, ==, "mine");
  journal_unwatch (&watch);
  tear_down ();
}

static void
test_moving_elsewhere (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = NULL;
  JournalWatch watch;

  set_up ();

  g_autofree char *other = g_build_filename (folder, "new", "other.rwlog", NULL);
  g_autoptr (RwJournal) journal = journal_new (session, path);

  journal_watch (&watch, journal, session);
  journal_add (&watch, journal_some_reading (1));
  wait_for (&watch.all_kept);
  g_assert_false (rw_journal_move (journal, path, &error)); /* there is a file of that name: ours */
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
  g_clear_error (&error);

  g_assert_true (rw_journal_move (journal, other, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (rw_journal_get_path (journal), ==, other);
  journal_add (&watch, journal_some_reading (2));
  wait_for (&watch.all_kept);
  journal_assert_file_is (other, session);
  g_assert_cmpuint (journal_count_sound (path), ==, 1); /* as it was */

  /* The old file is free, the new one is not. */
  g_autoptr (RwJournal) second = rw_journal_open (path, &read, &error);

  g_assert_no_error (error);
  g_assert_nonnull (second);
  g_clear_pointer (&read, rw_journal_read_free);
  g_assert_null (rw_journal_open (other, &read, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_LOCKED);
  journal_unwatch (&watch);
  tear_down ();
}

/* Trouble of the old place that is told late must not have the last word after a move. */
static void
test_moving_out_of_trouble (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GError) error = NULL;
  JournalWatch watch;

  set_up ();

  g_autofree char *cabinet = g_path_get_dirname (path);
  g_autofree char *other = g_build_filename (folder, "other.rwlog", NULL);
  g_autoptr (RwJournal) journal = journal_new (session, path);

  journal_watch (&watch, journal, session);
  fixture_remove (cabinet);
  journal_add (&watch, journal_some_reading (1));
  g_assert_false (rw_journal_flush (journal,
                                    &error)); /* the trouble is known, but not told: no loop has run */
  g_assert_cmpuint (watch.n_troubles, ==, 0);
  g_clear_error (&error);
  g_assert_true (rw_journal_move (journal, other, &error));
  g_assert_null (rw_journal_get_trouble (journal));
  wait_for (&watch.all_kept);
  fixture_spin (0.05, NULL);
  g_assert_null (watch.trouble);
  g_assert_true (watch.out_of_trouble);
  journal_assert_file_is (other, session);
  journal_unwatch (&watch);
  tear_down ();
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/journal/trouble/full-disk", test_full_disk);
  g_test_add_func ("/journal/trouble/full-disk-is-told-and-survived",
                   test_full_disk_is_told_and_survived);
  g_test_add_func ("/journal/trouble/ending-on-a-full-disk", test_ending_on_a_full_disk);
  g_test_add_func ("/journal/trouble/making-and-moving-on-a-full-disk",
                   test_making_and_moving_on_a_full_disk);
  g_test_add_func ("/journal/trouble/folder-lost-and-brought-back",
                   test_folder_lost_and_brought_back);
  g_test_add_func ("/journal/trouble/folder-moved-away-and-back", test_folder_moved_away_and_back);
  g_test_add_func ("/journal/trouble/file-deleted", test_file_deleted);
  g_test_add_func ("/journal/trouble/strange-file-in-the-way", test_strange_file_in_the_way);
  g_test_add_func ("/journal/trouble/moving-elsewhere", test_moving_elsewhere);
  g_test_add_func ("/journal/trouble/moving-out-of-trouble", test_moving_out_of_trouble);
  return g_test_run ();
}
