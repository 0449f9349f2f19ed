/* test-journal.c: a session's file while it grows: what is kept, when, by whom.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fixtures.h"
#include "journal-watch.h"
#include "rw-event-json.h"

static char *folder;
static char *path;

static void
set_up (void)
{
  folder = fixture_folder ();
  path = g_build_filename (folder, "job.rwlog", NULL);
}

static void
tear_down (void)
{
  fixture_remove (folder);
  g_clear_pointer (&folder, g_free);
  g_clear_pointer (&path, g_free);
}

static void
test_kept_means_on_disk (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwJournal) journal = NULL;
  JournalWatch watch;

  set_up ();
  rw_session_add (session, &(RwEvent){ .type = RW_EVENT_TRIM, .trim.moved = TRUE });
  journal = journal_new (session, path);
  g_assert_cmpstr (rw_journal_get_path (journal), ==, path);
  g_assert_cmpuint (rw_journal_get_kept (journal), ==, 1); /* what there was is written at once */
  journal_assert_file_is (path, session);
  journal_watch (&watch, journal, session);
  for (guint i = 0; i < 20; i++)
    {
      journal_add (&watch, journal_some_reading (i));
      g_assert_cmpuint (rw_journal_get_kept (journal), <=, i + 2);
      fixture_spin (5, &watch.all_kept);
      g_assert_true (watch.all_kept);
      g_assert_cmpuint (rw_journal_get_kept (journal), ==, i + 2);
    }
  g_assert_null (rw_journal_get_trouble (journal));
  g_assert_cmpuint (watch.n_troubles, ==, 0);
  journal_unwatch (&watch);
  tear_down ();
}

/* Seconds until the session's last event is kept. */
static double
wait_for_kept (JournalWatch *watch)
{
  const gint64 start = g_get_monotonic_time ();

  fixture_spin (5, &watch->all_kept);
  g_assert_true (watch->all_kept);
  return (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

/* A busy machine may be late once, but not three times. */
static void
test_samples_wait_a_second_at_most (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwJournal) journal = NULL;
  JournalWatch watch;
  double best = INFINITY;

  set_up ();
  journal = journal_new (session, path);
  journal_watch (&watch, journal, session);
  for (guint try = 0; try < 3 && best > 1.0; try++)
    {
      const guint before = watch.n_kept;

      for (guint i = 0; i < 10; i++)
        journal_add (&watch, journal_some_sample (try));
      best = fmin (best, wait_for_kept (&watch));
      g_assert_cmpuint (watch.n_kept, ==, before + 1); /* in one batch */
    }
  g_test_message ("samples were on disk after %.3f s", best);
  g_assert_cmpfloat (best, <=, 1.0);
  g_assert_cmpfloat (best, >=, 0.5); /* they are gathered: a disk is not woken for each */
  journal_unwatch (&watch);
  tear_down ();
}

static void
test_readings_do_not_wait (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (RwJournal) journal = NULL;
  JournalWatch watch;
  double best = INFINITY;

  set_up ();
  journal = journal_new (session, path);
  journal_watch (&watch, journal, session);
  for (guint try = 0; try < 3 && best > 0.3; try++)
    {
      journal_add (&watch, journal_some_sample (try)); /* what waits goes along, in order */
      journal_add (&watch, journal_some_reading (try));
      best = fmin (best, wait_for_kept (&watch));
    }
  g_test_message ("a reading was on disk after %.4f s", best);
  g_assert_cmpfloat (best, <=, 0.3);
  journal_unwatch (&watch);
  tear_down ();
}

static void
test_flush_and_end_write_all (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GError) error = NULL;

  set_up ();

  RwJournal *journal = journal_new (session, path);

  g_assert_true (rw_journal_flush (journal, &error)); /* nothing to do */
  for (guint i = 0; i < 1000; i++)
    rw_session_add (session, &(RwEvent){ .type = RW_EVENT_TRIM, .t = i });
  g_assert_true (rw_journal_flush (journal, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (rw_journal_get_kept (journal), ==, 1000);
  journal_assert_file_is (path, session);

  /* Samples that still wait are written when the journal ends. */
  for (guint i = 0; i < 5; i++)
    {
      RwEvent sample = journal_some_sample (1000 + i);

      rw_session_add (session, &sample);
    }
  g_assert_finalize_object (journal);
  journal_assert_file_is (path, session);

  /* And the session can go on without it. */
  rw_session_add (session, &(RwEvent){ .type = RW_EVENT_TRIM, .t = 2000 });
  tear_down ();
}

static void
assert_locked_out (const char *what)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = NULL;

  g_assert_null (rw_journal_open (path, &read, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_LOCKED);
  g_assert_null (read);
  g_assert_nonnull (strstr (error->message, what));
  g_assert_nonnull (strstr (error->message, "replay")); /* what one can do */
}

static void
test_one_writer (void)
{
  g_autoptr (RwSession) session = fixture_session (), other = fixture_session ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = NULL;

  set_up ();

  RwJournal *journal = journal_new (session, path);

  assert_locked_out ("job.rwlog");

  /* Another process: a child, asked by its exit status. */
  const pid_t child = fork ();

  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      g_autoptr (GError) refused = NULL;
      RwJournalRead *none = NULL;
      RwJournal *second = rw_journal_open (path, &none, &refused);

      _exit (second == NULL && g_error_matches (refused, RW_JOURNAL_ERROR,
                                                RW_JOURNAL_ERROR_LOCKED) ? 0 : 1);
    }

  int status = -1;

  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 0);

  /* A new file never takes the place of an old one. */
  g_assert_null (rw_journal_create (other, path, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "another name"));
  g_clear_error (&error);
  journal_assert_file_is (path, session);

  /* Reading needs no lock; and the lock goes with the journal. */
  g_assert_cmpuint (journal_count_sound (path), ==, 0);
  g_assert_finalize_object (journal);
  journal = rw_journal_open (path, &read, &error);
  g_assert_no_error (error);
  assert_locked_out ("job.rwlog");
  g_object_unref (journal);
  tear_down ();
}

static void
write_file (const char *text)
{
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static char *
read_text (const char *name)
{
  char *text = NULL;

  g_assert_true (g_file_get_contents (name, &text, NULL, NULL));
  return text;
}

/* Whatever a file ends in: what was good in it stays byte for byte, and new events stand behind
 * it. */
static void
test_going_on_with_a_file (void)
{
  static const struct
  {
    const char *tail, *good;
    guint       n_before;
    gboolean    torn;
  } rows[] = {
    { "", "", 0, FALSE },
    { "\n", "\n", 0, FALSE },
    { "\n{\"n\":1,\"t\":0.5,\"trim\":{\"moved\":true}}\n", "\n{\"n\":1,\"t\":0.5,\"trim\":{\"moved\":true}}\n", 1, FALSE },
    { "\n{\"n\":1,\"t\":0.5,\"trim\":{\"moved\":true}}", "\n{\"n\":1,\"t\":0.5,\"trim\":{\"moved\":true}}\n", 1, FALSE },
    { "\n{\"n\":1,\"t\":0.5,\"trim\":{}}\n{\"n\":2,\"t\":1,\"tri", "\n{\"n\":1,\"t\":0.5,\"trim\":{}}\n", 1, TRUE },
    { "\n{\"n\":1,\"t\":0.5,\"x\":[1.0]}\noops\n{\"n\":7,\"t\":1", "\n{\"n\":1,\"t\":0.5,\"x\":[1.0]}\noops\n", 1, TRUE },
    { "\r\n{\"n\":1,\"t\":0.5,\"trim\":{}}\r\n{", "\r\n{\"n\":1,\"t\":0.5,\"trim\":{}}\r\n", 1, TRUE },
    { "\r\n{\"n\":1,\"t\":0.5,\"trim\":{}}\r", "\r\n{\"n\":1,\"t\":0.5,\"trim\":{}}\r\n", 1, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwJournalRead) read = NULL;
      g_autofree char *before = g_strconcat (FIXTURE_HEADER, rows[i].tail, NULL);

      set_up ();
      write_file (before);

      g_autoptr (RwJournal) journal = rw_journal_open (path, &read, &error);

      g_assert_no_error (error);
      g_assert_cmpint (read->torn_tail, ==, rows[i].torn);
      g_assert_cmpuint (rw_session_get_n_events (read->session), ==, rows[i].n_before);
      g_assert_cmpuint (rw_journal_get_kept (journal), ==,
                        rows[i].n_before); /* what was read is on disk */
      for (guint k = 0; k < 2; k++)
        {
          RwEvent mark = rw_event_make_mark (9, "on");

          rw_session_add (read->session, &mark);
          g_assert_true (rw_journal_flush (journal, &error));
        }

      g_autofree char *after = read_text (path);
      g_autofree char *wanted =
          g_strdup_printf ("%s%s%s{\"n\":%u,\"t\":9.000,\"mark\":{\"what\":\"on\"}}\n"
                                                 "{\"n\":%u,\"t\":9.000,\"mark\":{\"what\":\"on\"}}\n",
                                                 FIXTURE_HEADER, rows[i].good,
                                                     *rows[i].good == '\0' ? "\n" : "",
                                                 rows[i].n_before + 1, rows[i].n_before + 2);

      g_assert_cmpstr (after, ==, wanted);
      tear_down ();
    }
}

static void
test_files_one_cannot_go_on_with (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = NULL;

  set_up ();
  g_assert_null (rw_journal_open (path, &read, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
  g_clear_error (&error);
  write_file ("not a session\n");
  g_assert_null (rw_journal_open (path, &read, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER);
  g_assert_null (read);

  g_autofree char *text = read_text (path);

  g_assert_cmpstr (text, ==, "not a session\n"); /* nobody's file is touched */
  tear_down ();
}

/* Unknown keys and events go along, byte for byte, in the header too. */
static void
test_copy_is_faithful (void)
{
  const char *text = "{\"club\":[1.0],\"railwright\":1,\"id\":\"z\",\"started\":\"2026-03-14T09:30:00Z\",\"profile\":" FIXTURE_PROFILE "}\n"
                     "{\"n\":1,\"t\":0.500,\"trim\":{\"moved\":true}}\n"
                     "{\"n\":2,\"t\":1.0,\"weather\":{\"hot\":[1,2.50,null]}}\n"
                     "{\"n\":3,\"t\":2,\"note\":{\"text\":\"x\", \"by\":\"Mo\"}}\n"
                     "{\"n\":9,\"t\":3.000,\"mark\":{\"what\":\"reset seen\"}}\n";
  g_autoptr (GError) error = NULL;

  set_up ();
  write_file (text);

  g_autofree char *target = g_build_filename (folder, "copy.rwlog", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "none", "copy.rwlog", NULL);
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < 2; i++) /* new, then in the place of the old one */
    {
      g_assert_true (rw_journal_copy (read->session, target, &error));
      g_assert_no_error (error);

      g_autofree char *copied = read_text (target);

      g_assert_cmpstr (copied, ==, text);
      g_assert_true (g_file_set_contents (target, "old", -1, NULL));
    }
  g_assert_false (rw_journal_copy (read->session, nowhere, &error));
  g_assert_true (error->domain == G_FILE_ERROR);

  g_autofree char *old = read_text (target);

  g_assert_cmpstr (old, ==, "old");
  tear_down ();
}

/* What was added is what is read back, whatever was waited for in between. */
static void
test_random_lives (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (61);

  for (guint round = 0; round < 12; round++)
    {
      g_autoptr (RwSession) session = fixture_session ();
      g_autoptr (GError) error = NULL;
      JournalWatch watch;

      set_up ();

      RwJournal *journal = journal_new (session, path);

      journal_watch (&watch, journal, session);
      for (guint i = 0; i < 150; i++)
        {
          RwEvent event = fixture_random_event (random, i / 8.0, i);

          if (event.type != RW_EVENT_UNKNOWN)
            journal_add (&watch, event);
          else
            rw_event_clear (&event); /* those come only out of files */
          switch (g_rand_int_range (random, 0, 60))
            {
            case 0:
              g_assert_true (rw_journal_flush (journal, &error));
              journal_assert_file_is (path, session);
              break;
            case 1:
              g_usleep ((gulong) g_rand_int_range (random, 0, 20000));
              break;
            case 2:
              fixture_spin (0.01, NULL);
              break;
            case 3: /* closed and opened again */
              {
                g_autoptr (RwJournalRead) read = NULL;

                journal_unwatch (&watch);
                g_assert_finalize_object (journal);
                journal_assert_file_is (path, session);
                journal = rw_journal_open (path, &read, &error);
                g_assert_no_error (error);
                g_set_object (&session, read->session);
                journal_watch (&watch, journal, session);
                break;
              }
            default:
              while (g_main_context_iteration (NULL, FALSE))
                ;
            }
        }
      journal_unwatch (&watch);
      g_assert_finalize_object (journal);
      journal_assert_file_is (path, session);
      tear_down ();
    }
}

static void
test_many_samples (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GError) error = NULL;

  set_up ();

  g_autoptr (RwJournal) journal = journal_new (session, path);

  for (guint i = 0; i < 50000; i++)
    {
      RwEvent sample = journal_some_sample (i / 4.0);

      sample.reading.value = i / 1000.0;
      rw_session_add (session, &sample);
    }
  g_assert_true (rw_journal_flush (journal, &error));
  g_assert_no_error (error);
  journal_assert_file_is (path, session);
  tear_down ();
}

static void
report_kept_cb (RwJournal *journal,
                guint      n,
                int       *pipe_end)
{
  if (write (*pipe_end, &n, sizeof n) != sizeof n)
    _exit (2);
}

/* Writes as fast as it can and says through the pipe what it was told is kept, until somebody
 * kills it. */
static void
write_until_killed (int pipe_end)
{
  RwSession *session = fixture_session ();
  RwJournal *journal = journal_new (session, path);

  g_signal_connect (journal, "kept", G_CALLBACK (report_kept_cb), &pipe_end);
  for (guint i = 0;; i++)
    {
      RwEvent event = i % 7 ? journal_some_sample (i) : journal_some_reading (i);

      rw_session_add (session, &event);
      while (g_main_context_iteration (NULL, FALSE))
        ;
    }
}

/* However suddenly it ends: what was called kept is there, in order, and at most the last line is
 * torn. */
static void
test_killed_at_any_moment (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (67);
  guint total = 0;

  for (guint round = 0; round < 12; round++)
    {
      g_autoptr (GError) error = NULL;
      int ends[2];
      guint kept = 0, told = 0;

      set_up ();
      g_assert_cmpint (pipe (ends), ==, 0);

      const pid_t child = fork ();

      if (child == 0)
        write_until_killed (ends[1]);
      close (ends[1]);
      while (told < 3 && read (ends[0], &kept, sizeof kept) == sizeof kept)
        told++;
      g_usleep ((gulong) g_rand_int_range (random, 0, 30000));
      kill (child, SIGKILL);
      while (read (ends[0], &told, sizeof told) == sizeof told)
        kept = told;
      close (ends[0]);
      waitpid (child, NULL, 0);

      g_autoptr (RwJournalRead) found = rw_journal_read_file (path, &error);

      g_assert_no_error (error);
      g_assert_cmpuint (found->damaged->len, ==, 0);
      g_assert_cmpuint (kept, >, 0);
      g_assert_cmpuint (rw_session_get_n_events (found->session), >=, kept);
      for (guint i = 0; i < rw_session_get_n_events (found->session); i++)
        g_assert_cmpuint (rw_session_get_event (found->session, i)->n, ==, i + 1);
      total += kept;
      tear_down ();
    }
  g_test_message ("%u events kept by processes that were killed", total);
}

/* Made where there is no folder yet. */
static void
test_folder_is_made (void)
{
  g_autoptr (RwSession) session = fixture_session ();

  set_up ();

  g_autofree char *deep = g_build_filename (folder, "a", "b", "job.rwlog", NULL);
  g_autoptr (RwJournal) journal = journal_new (session, deep);

  journal_assert_file_is (deep, session);
  tear_down ();
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/journal/kept-means-on-disk", test_kept_means_on_disk);
  g_test_add_func ("/journal/samples-wait-a-second-at-most", test_samples_wait_a_second_at_most);
  g_test_add_func ("/journal/readings-do-not-wait", test_readings_do_not_wait);
  g_test_add_func ("/journal/flush-and-end-write-all", test_flush_and_end_write_all);
  g_test_add_func ("/journal/one-writer", test_one_writer);
  g_test_add_func ("/journal/going-on-with-a-file", test_going_on_with_a_file);
  g_test_add_func ("/journal/files-one-cannot-go-on-with", test_files_one_cannot_go_on_with);
  g_test_add_func ("/journal/copy-is-faithful", test_copy_is_faithful);
  g_test_add_func ("/journal/random-lives", test_random_lives);
  g_test_add_func ("/journal/many-samples", test_many_samples);
  g_test_add_func ("/journal/killed-at-any-moment", test_killed_at_any_moment);
  g_test_add_func ("/journal/folder-is-made", test_folder_is_made);
  return g_test_run ();
}
