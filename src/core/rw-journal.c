/* rw-journal.c: writes a session to its file while it grows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Main thread                          writer thread
 *   "added" → line into `waiting`  ──►   takes `waiting` into its backlog, appends, syncs
 *   "kept", "trouble" ◄── idle source ──   tells
 *
 * States of the writer: resting (nothing waiting) → gathering (samples only, until 1 s is over)
 * → writing → resting, or → failing (backlog kept, tried again every 2 s or on flush) → writing.
 * `lock` guards everything in the struct below its line; the file is the writer's alone while it runs.
 */
#include "config.h"

#include "rw-journal.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "rw-event-json.h"
#include "rw-journal-file.h"

static const gint64 gather_usec = 900 * 1000;
static const gint64 retry_usec = 2 * G_USEC_PER_SEC;

struct _RwJournal
{
  GObject       parent_instance;
  RwSession    *session;
  gulong        added_id;
  GMainContext *context;
  GThread      *thread;
  RwJournalFile file; /* the writer's while it runs */

  GMutex   lock;
  GCond    wake; /* for the writer */
  GCond    done; /* for flush */
  GString *waiting;
  guint    waiting_n;     /* number of the last event in waiting */
  gint64   waiting_since; /* monotonic, of its first event */
  gboolean urgent;
  gboolean stop;
  gboolean busy;          /* the writer holds a backlog */
  guint    kept;
  guint    attempt;  /* number of the last write begun */
  guint    failed;   /* number of the last write that failed */
  char    *trouble;
  char    *told_trouble; /* what get_trouble lends out; main thread only */
};

enum
{
  SIGNAL_KEPT,
  SIGNAL_TROUBLE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwJournal, rw_journal, G_TYPE_OBJECT)

/* --- telling the main thread -------------------------------------------------------------------- */

typedef struct
{
  GWeakRef journal;
  gboolean kept;
  guint    n;
  char    *trouble;
} News;

static void
news_free (gpointer data)
{
  News *news = data;

  g_weak_ref_clear (&news->journal);
  g_free (news->trouble);
  g_free (news);
}

static gboolean
tell_cb (gpointer data)
{
  News *news = data;
  g_autoptr (RwJournal) self = g_weak_ref_get (&news->journal);

  if (self == NULL)
    return G_SOURCE_REMOVE;
  if (news->kept)
    g_signal_emit (self, signals[SIGNAL_KEPT], 0, news->n);
  else
    g_signal_emit (self, signals[SIGNAL_TROUBLE], 0, news->trouble);
  return G_SOURCE_REMOVE;
}

static void
tell (RwJournal  *self,
      gboolean    kept,
      guint       n,
      const char *trouble)
{
  News *news = g_new0 (News, 1);
  g_autoptr (GSource) source = g_idle_source_new ();

  g_weak_ref_init (&news->journal, self);
  news->kept = kept;
  news->n = n;
  news->trouble = g_strdup (trouble);
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, tell_cb, news, news_free);
  g_source_attach (source, self->context);
}

/* --- the writer --------------------------------------------------------------------------------- */

typedef struct
{
  GString *bytes;
  guint    n;
} Backlog;

/* Waits until there is something to write and it is time; FALSE when it is time to end. */
static gboolean
wait_for_work (RwJournal *self,
               Backlog   *backlog)
{
  const gint64 retry_at = backlog->bytes->len > 0 ? g_get_monotonic_time () + retry_usec : 0;

  for (;;)
    {
      const gint64 now = g_get_monotonic_time ();
      const gboolean due = self->waiting->len > 0
                           && (self->urgent || now >= self->waiting_since + gather_usec);

      if (self->stop)
        return FALSE;
      if (retry_at > 0 ? now >= retry_at || self->urgent : due)
        return TRUE;
      if (retry_at > 0)
        g_cond_wait_until (&self->wake, &self->lock, retry_at);
      else if (self->waiting->len > 0)
        g_cond_wait_until (&self->wake, &self->lock, self->waiting_since + gather_usec);
      else
        g_cond_wait (&self->wake, &self->lock);
    }
}

static void
take_waiting (RwJournal *self,
              Backlog   *backlog)
{
  if (self->waiting->len > 0)
    {
      g_string_append_len (backlog->bytes, self->waiting->str, (gssize) self->waiting->len);
      backlog->n = self->waiting_n;
      g_string_truncate (self->waiting, 0);
    }
  self->urgent = FALSE;
  self->busy = backlog->bytes->len > 0;
}

/* With the lock held. */
static void
note_result (RwJournal *self,
             Backlog   *backlog,
             GError    *error)
{
  if (error == NULL)
    {
      g_string_truncate (backlog->bytes, 0);
      self->kept = MAX (self->kept, backlog->n);
      tell (self, TRUE, self->kept, NULL);
    }
  else
    self->failed = self->attempt;
  if (g_strcmp0 (self->trouble, error != NULL ? error->message : NULL) != 0)
    {
      g_free (self->trouble);
      self->trouble = error != NULL ? g_strdup (error->message) : NULL;
      tell (self, FALSE, 0, self->trouble);
    }
  self->busy = backlog->bytes->len > 0;
  g_cond_broadcast (&self->done);
}

static void
write_backlog (RwJournal *self,
               Backlog   *backlog)
{
  g_autoptr (GError) error = NULL;

  take_waiting (self, backlog);
  if (backlog->bytes->len == 0)
    return;
  self->attempt++;
  g_mutex_unlock (&self->lock);
  rw_journal_file_append (&self->file, backlog->bytes->str, backlog->bytes->len, &error);
  g_mutex_lock (&self->lock);
  note_result (self, backlog, error);
}

static gpointer
writer (gpointer data)
{
  RwJournal *self = data;
  Backlog backlog = { g_string_new (NULL), 0 };

  g_mutex_lock (&self->lock);
  while (wait_for_work (self, &backlog))
    write_backlog (self, &backlog);
  write_backlog (self, &backlog);
  g_mutex_unlock (&self->lock);
  g_string_free (backlog.bytes, TRUE);
  return NULL;
}

static void
start_writer (RwJournal *self)
{
  self->stop = FALSE;
  self->busy = FALSE;
  self->thread = g_thread_new ("journal", writer, self);
}

static void
stop_writer (RwJournal *self)
{
  if (self->thread == NULL)
    return;
  g_mutex_lock (&self->lock);
  self->stop = TRUE;
  g_cond_signal (&self->wake);
  g_mutex_unlock (&self->lock);
  g_thread_join (g_steal_pointer (&self->thread));
}

/* --- following the session ---------------------------------------------------------------------- */

static void
added_cb (RwJournal *self,
          guint      index)
{
  const RwEvent *event = rw_session_get_event (self->session, index);

  g_mutex_lock (&self->lock);
  if (self->waiting->len == 0)
    self->waiting_since = g_get_monotonic_time ();
  rw_event_append_line (event, self->waiting);
  self->waiting_n = event->n;
  self->urgent = self->urgent || event->type != RW_EVENT_SAMPLE;
  g_cond_signal (&self->wake);
  g_mutex_unlock (&self->lock);
}

static void
follow (RwJournal *self,
        RwSession *session)
{
  self->session = g_object_ref (session);
  self->added_id = g_signal_connect_swapped (session, "added", G_CALLBACK (added_cb), self);
  start_writer (self);
}

static void
rw_journal_dispose (GObject *object)
{
  RwJournal *self = RW_JOURNAL (object);

  if (self->session != NULL)
    g_clear_signal_handler (&self->added_id, self->session);
  stop_writer (self);
  rw_journal_file_close (&self->file);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (rw_journal_parent_class)->dispose (object);
}

static void
rw_journal_finalize (GObject *object)
{
  RwJournal *self = RW_JOURNAL (object);

  g_string_free (self->waiting, TRUE);
  g_free (self->trouble);
  g_free (self->told_trouble);
  g_main_context_unref (self->context);
  g_mutex_clear (&self->lock);
  g_cond_clear (&self->wake);
  g_cond_clear (&self->done);
  G_OBJECT_CLASS (rw_journal_parent_class)->finalize (object);
}

static void
rw_journal_class_init (RwJournalClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = rw_journal_dispose;
  object_class->finalize = rw_journal_finalize;
  signals[SIGNAL_KEPT] = g_signal_new ("kept", RW_TYPE_JOURNAL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_TROUBLE] = g_signal_new ("trouble", RW_TYPE_JOURNAL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
rw_journal_init (RwJournal *self)
{
  self->file.fd = -1;
  self->context = g_main_context_ref_thread_default ();
  self->waiting = g_string_new (NULL);
  g_mutex_init (&self->lock);
  g_cond_init (&self->wake);
  g_cond_init (&self->done);
}

/* --- public ------------------------------------------------------------------------------------- */

static guint
last_number (RwSession *session)
{
  const guint n = rw_session_get_n_events (session);

  return n > 0 ? rw_session_get_event (session, n - 1)->n : 0;
}

static GString *
whole_text (RwSession *session)
{
  GString *bytes = g_string_new (NULL);

  rw_session_header_append_line (rw_session_get_header (session), bytes);
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    rw_event_append_line (rw_session_get_event (session, i), bytes);
  return bytes;
}

/* A new locked file that holds the whole session, on disk. */
static gboolean
write_whole (RwSession     *session,
             const char    *path,
             RwJournalFile *file,
             GError       **error)
{
  g_autoptr (GString) bytes = whole_text (session);

  if (!rw_journal_file_create (file, path, error))
    return FALSE;
  if (rw_journal_file_append (file, bytes->str, bytes->len, error))
    return TRUE;
  /* A half-written file would stand in the way of the next try. */
  g_unlink (path);
  rw_journal_file_close (file);
  return FALSE;
}

RwJournal *
rw_journal_create (RwSession  *session,
                   const char *path,
                   GError    **error)
{
  RwJournalFile file;

  if (!write_whole (session, path, &file, error))
    return NULL;

  RwJournal *self = g_object_new (RW_TYPE_JOURNAL, NULL);

  self->file = file;
  self->kept = last_number (session);
  follow (self, session);
  return self;
}

RwJournal *
rw_journal_open (const char     *path,
                 RwJournalRead **read,
                 GError        **error)
{
  RwJournalFile file;

  if (!rw_journal_file_open (&file, path, error))
    return NULL;

  g_autoptr (RwJournalRead) found = rw_journal_read_file (path, error);

  if (found != NULL && found->stopped != NULL) /* going on would cut the rest off */
    g_set_error_literal (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_LIMIT, found->stopped);
  if (found == NULL || found->stopped != NULL)
    {
      rw_journal_file_close (&file);
      return NULL;
    }

  RwJournal *self = g_object_new (RW_TYPE_JOURNAL, NULL);

  self->file = file;
  rw_journal_file_resume (&self->file, (goffset) found->good_end, found->needs_newline);
  self->kept = last_number (found->session);
  follow (self, found->session);
  *read = g_steal_pointer (&found);
  return self;
}

const char *
rw_journal_get_path (RwJournal *self)
{
  g_return_val_if_fail (RW_IS_JOURNAL (self), NULL);
  return self->file.path;
}

guint
rw_journal_get_kept (RwJournal *self)
{
  g_return_val_if_fail (RW_IS_JOURNAL (self), 0);
  g_mutex_lock (&self->lock);
  const guint kept = self->kept;
  g_mutex_unlock (&self->lock);
  return kept;
}

const char *
rw_journal_get_trouble (RwJournal *self)
{
  g_return_val_if_fail (RW_IS_JOURNAL (self), NULL);
  g_free (self->told_trouble);
  g_mutex_lock (&self->lock);
  self->told_trouble = g_strdup (self->trouble);
  g_mutex_unlock (&self->lock);
  return self->told_trouble;
}

gboolean
rw_journal_move (RwJournal  *self,
                 const char *path,
                 GError    **error)
{
  RwJournalFile file;

  g_return_val_if_fail (RW_IS_JOURNAL (self), FALSE);
  if (!write_whole (self->session, path, &file, error))
    return FALSE;
  stop_writer (self);
  rw_journal_file_close (&self->file);
  self->file = file;
  g_string_truncate (self->waiting, 0); /* all of it stands in the new file */
  self->urgent = FALSE;
  self->kept = last_number (self->session);
  g_clear_pointer (&self->trouble, g_free);
  start_writer (self);

  /* Behind what the writer told before it ended, so that no old trouble has the last word. */
  tell (self, FALSE, 0, NULL);
  tell (self, TRUE, self->kept, NULL);
  return TRUE;
}

gboolean
rw_journal_flush (RwJournal *self,
                  GError   **error)
{
  g_return_val_if_fail (RW_IS_JOURNAL (self), FALSE);
  g_mutex_lock (&self->lock);

  /* One try at once, whatever the writer is waiting for; then what came of it. */
  const guint before = self->attempt; /* a write under way may fail for a reason that is over by now */

  self->urgent = TRUE;
  g_cond_signal (&self->wake);
  while ((self->waiting->len > 0 || self->busy) && self->failed <= before)
    g_cond_wait (&self->done, &self->lock);

  const gboolean ok = self->waiting->len == 0 && !self->busy;

  if (!ok)
    g_set_error_literal (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE, self->trouble);
  g_mutex_unlock (&self->lock);
  return ok;
}

gboolean
rw_journal_copy (RwSession  *session,
                 const char *path,
                 GError    **error)
{
  g_autoptr (GString) bytes = whole_text (session);

  return g_file_set_contents_full (path, bytes->str, (gssize) bytes->len,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0644,
                                   error);
}
