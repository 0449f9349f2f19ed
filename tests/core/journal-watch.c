/* journal-watch.c: follows what a journal tells.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "journal-watch.h"

#include "fixtures.h"

static void
kept_cb (RwJournal    *journal,
         guint         n,
         JournalWatch *watch)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (rw_journal_get_path (journal), &error);
  const guint last = rw_session_get_n_events (watch->session);

  g_assert_no_error (error);
  g_assert_true (g_thread_self () == watch->thread);
  g_assert_cmpuint (n, >=, watch->last_kept);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  for (guint i = 0; i < last && rw_session_get_event (watch->session, i)->n <= n; i++)
    {
      g_assert_cmpuint (i, <, rw_session_get_n_events (read->session));
      fixture_assert_same_event (rw_session_get_event (read->session, i),
                                 rw_session_get_event (watch->session, i));
    }
  watch->n_kept++;
  watch->last_kept = n;
  watch->all_kept = last > 0 && n == rw_session_get_event (watch->session, last - 1)->n;
}

static void
trouble_cb (RwJournal    *journal,
            const char   *message,
            JournalWatch *watch)
{
  g_assert_true (g_thread_self () == watch->thread);
  watch->n_troubles++;
  g_free (watch->trouble);
  watch->trouble = g_strdup (message);
  watch->in_trouble = message != NULL;
  watch->out_of_trouble = message == NULL;
}

void
journal_watch (JournalWatch *watch,
               RwJournal    *journal,
               RwSession    *session)
{
  *watch = (JournalWatch){ .journal = journal, .session = session, .thread = g_thread_self () };
  g_signal_connect (journal, "kept", G_CALLBACK (kept_cb), watch);
  g_signal_connect (journal, "trouble", G_CALLBACK (trouble_cb), watch);
}

void
journal_unwatch (JournalWatch *watch)
{
  g_signal_handlers_disconnect_by_data (watch->journal, watch);
  g_clear_pointer (&watch->trouble, g_free);
}

RwJournal *
journal_new (RwSession  *session,
             const char *path)
{
  g_autoptr (GError) error = NULL;
  RwJournal *journal = rw_journal_create (session, path, &error);

  g_assert_no_error (error);
  return journal;
}

void
journal_add (JournalWatch *watch,
             RwEvent       event)
{
  watch->all_kept = FALSE;
  rw_session_add (watch->session, &event);
}

RwEvent
journal_some_reading (double t)
{
  const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.02, 0.01, "m1");

  return rw_event_make_reading (t, &reading);
}

RwEvent
journal_some_sample (double t)
{
  const RwReading sample = rw_reading_make ("p12", RW_PLACE_BOARD, RW_KIND_DC, 11.98, 0.01, "m1");

  return rw_event_make_sample (t, &sample);
}

void
journal_assert_file_is (const char *path,
                        RwSession  *session)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_false (read->torn_tail);
  g_assert_false (read->needs_newline);
  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, rw_session_get_n_events (session));
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    fixture_assert_same_event (rw_session_get_event (read->session, i),
                               rw_session_get_event (session, i));
}

guint
journal_count_sound (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_false (read->torn_tail);
  return rw_session_get_n_events (read->session);
}
