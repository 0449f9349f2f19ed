/* rw-link-worker.c: the thread that reads a byte port, decodes, and brings it back when it is lost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   OPENING ──open──► LISTENING ──value──► READING ──no value for a while──► SILENT
 *     └─ fails: again after 0.5 s  │                 ◄──value──
 *                                  └──no value for a while──► SILENT
 *
 *   LISTENING, READING, SILENT ──gone──► LOST ──opens again, tried every 0.5 s──► LISTENING
 *
 * Gone means: the descriptor is ready but gives no bytes (what a hang-up looks like), reading
 * or writing fails, or the device is no longer there (looked at four times a second, for
 * drivers that do not hang up).
 *
 * A stream is opened at any moment, most likely inside a line, and the tail of "12.06 V" is
 * "06 V". So bytes that come within 50 ms of the opening are taken for the rest of a line
 * that was under way, and everything up to its end is skipped: between two bytes of one line
 * there is less time than that at any usual speed. (Ports in a network ask for more, and for
 * a slower pace of attempts.) LISTENING is told when that time is over, so that no line that
 * begins after it is skipped. A line that is cut off by an unplugging is forgotten for the
 * same reason.
 *
 * Everything below is the thread's own, but for `stop`, `kind` and `pipe`, and `ended` under
 * its lock.
 */
#include "config.h"

#include "rw-link-worker.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gio.h>
#include <glib-unix.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

#include "rw-link-words.h"

static const guint usual_reopen_ms = 500;
static const guint usual_torn_ms = 50;
static const gint64 look_us = 250 * 1000;
static const gint64 stop_wait_us = 250 * 1000;

struct _RwLinkWorker
{
  RwBytePort *port;
  RwDecoder  *decoder;
  RwTalk     *talk;
  RwMailbox  *mailbox;
  gint64      patience_us;

  GArray     *mails; /* of RwMail, not posted yet */
  RwLinkState state;
  char       *message;       /* that was told with it, without the trouble */
  gint64      arrived_us;  /* of the bytes that are being decoded */
  gint64      value_us;    /* of the newest value, else of the name or the opening */
  gboolean    heard;       /* bytes came since the newest value */
  guint64     doubted; /* frames, up to the newest value */
  gboolean    settling;    /* just opened, LISTENING not told yet: bytes may begin inside a line */
  gint64      settled_us;  /* until then */

  int      pipe[2]; /* a byte wakes the thread */
  int      stop;    /* atomic */
  int      kind;    /* atomic: an RwKind, what the owner wants measured */
  GMutex   lock;
  GCond    end;
  gboolean ended;
};

/* --- telling ------------------------------------------------------------------------- */

static void
post (RwLinkWorker *self)
{
  RwDecoderCounts counts;

  rw_decoder_get_counts (self->decoder, &counts);
  rw_mailbox_post (self->mailbox, self->mails, &counts);
}

/* Takes message. */
static void
tell_state (RwLinkWorker *self,
            RwLinkState   state,
            char         *message)
{
  const char *name = self->talk != NULL ? rw_talk_get_name (self->talk) : NULL;
  const char *trouble = self->talk != NULL ? rw_talk_get_trouble (self->talk) : NULL;
  const RwMail mail = { .is_state = TRUE,
                        .state = state,
                        .message = rw_link_words_join (message, trouble),
                        .identity = g_strdup (name),
                        .trouble = g_strdup (trouble) };

  self->state = state;
  g_free (self->message);
  self->message = message;
  g_array_append_val (self->mails, mail);
}

static void
tell_listening (RwLinkWorker *self)
{
  self->settling = FALSE;
  tell_state (self, RW_LINK_LISTENING, rw_link_words_listening (self->port));
}

static void
tell_lost (RwLinkWorker *self)
{
  tell_state (self, RW_LINK_LOST, rw_link_words_lost (self->port));
  rw_decoder_restart (self->decoder, FALSE);
  post (self);
}

/* --- bytes --------------------------------------------------------------------------- */

static RwDecoderCounts
counts_of (const RwDecoder *decoder)
{
  RwDecoderCounts counts;

  rw_decoder_get_counts (decoder, &counts);
  return counts;
}

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  RwLinkWorker *self = data;
  const RwMail mail = { .value = *value, .when_us = self->arrived_us };

  if (self->state != RW_LINK_READING)
    tell_state (self, RW_LINK_READING, rw_link_words_reading (self->port, self->talk));
  g_array_append_val (self->mails, mail);
  self->value_us = self->arrived_us;
  self->heard = FALSE;
  self->doubted = counts_of (self->decoder).doubted;
  if (self->talk != NULL)
    rw_talk_answered (self->talk, self->arrived_us);
}

static void
decode_cb (const guint8 *tainted,
           gsize         n,
           gpointer      data)
{
  RwLinkWorker *self = data;
  RwKind kind;

  if (rw_talk_get_kind (self->talk, &kind))
    rw_decoder_assume (self->decoder,
                       kind == RW_KIND_OHMS ? RW_METER_UNIT_OHM : RW_METER_UNIT_VOLT,
                       kind == RW_KIND_OHMS     ? RW_METER_MODE_NONE
                       : kind == RW_KIND_RIPPLE ? RW_METER_MODE_AC
                                                : RW_METER_MODE_DC);

  const guint64 before = counts_of (self->decoder).bytes_explained;
  const guint mails = self->mails->len;

  rw_decoder_feed (self->decoder, tainted, n, value_cb, self);
  /* An answer that is not believed yet is an answer all the same. */
  if (self->mails->len == mails && counts_of (self->decoder).bytes_explained > before)
    rw_talk_answered (self->talk, self->arrived_us);
}

/* What the talk has learnt. */
static void
tell_news (RwLinkWorker *self)
{
  const RwTalkNews news = rw_talk_take_news (self->talk);

  if ((news & RW_TALK_NEWS_NAME) != 0)
    {
      /* It is there, and gets its full time for the first value. */
      self->value_us = self->arrived_us;
      tell_state (self, RW_LINK_LISTENING, rw_link_words_named (self->port, self->talk));
    }
  else if ((news & RW_TALK_NEWS_TROUBLE) != 0)
    tell_state (self, self->state, g_strdup (self->message));
}

static void
take_bytes (RwLinkWorker *self,
            const guint8 *tainted,
            gsize         n)
{
  self->heard = TRUE;
  if (self->settling)
    {
      rw_decoder_restart (self->decoder, TRUE);
      tell_listening (self);
    }
  if (self->talk == NULL)
    rw_decoder_feed (self->decoder, tainted, n, value_cb, self);
  else
    rw_talk_hear (self->talk, tainted, n, self->arrived_us, decode_cb, self);
}

/* FALSE when the port is gone. */
static gboolean
read_port (RwLinkWorker *self)
{
  guint8 bytes[16384];
  const gssize n = self->port->class->read (self->port, bytes, sizeof bytes);

  self->arrived_us = g_get_monotonic_time ();
  if (n <= 0)
    return FALSE;
  take_bytes (self, bytes, (gsize) n);
  return TRUE;
}

/* Says what is due; FALSE when the port does not take it. */
static gboolean
talk (RwLinkWorker *self,
      gint64       *due_us)
{
  const gint64 now_us = g_get_monotonic_time ();
  const char *text;

  rw_talk_set_kind (self->talk, (RwKind) g_atomic_int_get (&self->kind), now_us);
  while ((text = rw_talk_next (self->talk, now_us, due_us)) != NULL)
    if (!self->port->class->write (self->port, text, strlen (text)))
      return FALSE;
  tell_news (self);
  return TRUE;
}

/* --- waiting ------------------------------------------------------------------------- */

static gboolean
is_stopped (RwLinkWorker *self)
{
  return g_atomic_int_get (&self->stop) != 0;
}

static void
wake (RwLinkWorker *self)
{
  while (write (self->pipe[1], "", 1) < 0 && errno == EINTR)
    ;
}

/* Waits for bytes (unless fd is −1), until due_us, or to be woken; TRUE when the descriptor
 * has something to say. */
static gboolean
wait_until (RwLinkWorker *self,
            int           fd,
            gint64        due_us)
{
  struct pollfd fds[2]
      = { { .fd = self->pipe[0], .events = POLLIN }, { .fd = fd, .events = POLLIN } };
  const gint64 left_us = MAX (due_us - g_get_monotonic_time (), 0);
  const int n = poll (fds, 2, (int) ((left_us + 999) / 1000));
  char woken[64];

  if (n > 0 && fds[0].revents != 0)
    (void) !read (self->pipe[0], woken, sizeof woken);
  return n > 0 && fds[1].revents != 0;
}

/* Until it is time to try to open the port again. */
static void
wait_to_reopen (RwLinkWorker *self)
{
  const guint ms = self->port->class->reopen_ms;
  const gint64 due_us
      = g_get_monotonic_time () + (gint64) (ms != 0 ? ms : usual_reopen_ms) * 1000;

  while (!is_stopped (self) && g_get_monotonic_time () < due_us)
    wait_until (self, -1, due_us);
}

/* What the passing of time alone changes. */
static void
check_time (RwLinkWorker *self)
{
  const gint64 now_us = g_get_monotonic_time ();

  if (self->settling && now_us >= self->settled_us)
    tell_listening (self);
  if (self->state != RW_LINK_SILENT && now_us - self->value_us >= self->patience_us)
    {
      tell_state (self, RW_LINK_SILENT,
                  rw_link_words_silent (self->port, self->talk, self->heard,
                                        counts_of (self->decoder).doubted > self->doubted,
                                        rw_decoder_get_last_bad (self->decoder)));
    }
}

/* Reads until the port is lost (FALSE) or the thread is to end (TRUE). */
static gboolean
listen_to_port (RwLinkWorker *self)
{
  const int fd = self->port->class->get_fd (self->port);
  gint64 look_next_us = g_get_monotonic_time () + look_us;

  while (!is_stopped (self))
    {
      gint64 talk_us = G_MAXINT64;
      const gint64 settled_us = self->settling ? self->settled_us : G_MAXINT64;

      if (self->talk != NULL && !talk (self, &talk_us))
        return FALSE;
      post (self);
      if (wait_until (self, fd, MIN (MIN (look_next_us, settled_us), talk_us)) && !read_port (self))
        return FALSE;
      check_time (self);
      if (g_get_monotonic_time () < look_next_us)
        continue;
      if (!self->port->class->is_there (self->port))
        return FALSE;
      look_next_us = g_get_monotonic_time () + look_us;
    }
  return TRUE;
}

/* It could not be opened: says so, unless that is no news. */
static void
tell_failure (RwLinkWorker *self,
              const GError *error)
{
  /* While it is unplugged, "no such port" is none. */
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)
      || (self->state == RW_LINK_LOST
          && g_error_matches (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE)))
    return;
  tell_state (self, self->state, g_strdup (error->message));
  post (self);
}

static gboolean
open_port (RwLinkWorker *self)
{
  const guint torn_ms = self->port->class->torn_ms;
  g_autoptr (GError) error = NULL;

  if (!self->port->class->open (self->port, &error))
    {
      tell_failure (self, error);
      return FALSE;
    }
  self->value_us = g_get_monotonic_time ();
  self->heard = FALSE;
  self->doubted = counts_of (self->decoder).doubted;
  self->settling = self->talk == NULL;
  self->settled_us = self->value_us + (gint64) (torn_ms != 0 ? torn_ms : usual_torn_ms) * 1000;
  if (self->talk == NULL)
    return TRUE;

  /* One who asks need not wait for a line's end, but for the end of old answers. */
  self->port->class->drop_input (self->port);
  rw_talk_restart (self->talk, self->value_us);
  rw_talk_take_news (self->talk);
  tell_listening (self);
  return TRUE;
}

static void
free_worker (gpointer data)
{
  RwLinkWorker *self = data;

  g_array_unref (self->mails);
  rw_decoder_free (self->decoder);
  rw_talk_free (self->talk);
  g_free (self->message);
  rw_mailbox_unref (self->mailbox);
  close (self->pipe[0]);
  close (self->pipe[1]);
  g_mutex_clear (&self->lock);
  g_cond_clear (&self->end);
}

static gpointer
run (gpointer data)
{
  RwLinkWorker *self = data;

  tell_state (self, RW_LINK_OPENING, rw_link_words_opening (self->port));
  post (self);
  while (!is_stopped (self))
    {
      if (open_port (self))
        {
          if (!listen_to_port (self))
            tell_lost (self);
          self->port->class->close (self->port);
        }
      /* After a loss too: a port that opens and is lost at once must not keep the thread busy. */
      wait_to_reopen (self);
    }
  post (self);
  self->port->class->free (self->port);

  g_mutex_lock (&self->lock);
  self->ended = TRUE;
  g_cond_signal (&self->end);
  g_mutex_unlock (&self->lock);
  g_atomic_rc_box_release_full (self, free_worker);
  return NULL;
}

/* --- from the owner ------------------------------------------------------------------ */

RwLinkWorker *
rw_link_worker_start (RwBytePort *port,
                      RwDecoder  *decoder,
                      RwTalk     *talk_,
                      guint       patience_ms,
                      RwMailbox  *mailbox)
{
  RwLinkWorker *self = g_atomic_rc_box_new0 (RwLinkWorker);
  g_autoptr (GError) error = NULL;

  self->port = port;
  self->decoder = decoder;
  self->talk = talk_;
  self->mailbox = rw_mailbox_ref (mailbox);
  self->patience_us = (gint64) patience_ms * 1000;
  self->mails = g_array_new (FALSE, FALSE, sizeof (RwMail));
  self->state = RW_LINK_OPENING;
  self->kind = RW_KIND_DC;
  g_mutex_init (&self->lock);
  g_cond_init (&self->end);
  /* Fails only when the process has no descriptors left: nothing would work then. */
  if (!g_unix_open_pipe (self->pipe, FD_CLOEXEC, &error))
    g_error ("%s", error->message);
  g_unix_set_fd_nonblocking (self->pipe[1], TRUE, NULL);
  g_thread_unref (g_thread_new ("meter link", run, g_atomic_rc_box_acquire (self)));
  return self;
}

void
rw_link_worker_set_kind (RwLinkWorker *self,
                         RwKind        kind)
{
  g_atomic_int_set (&self->kind, (int) kind);
  wake (self);
}

void
rw_link_worker_stop (RwLinkWorker *self)
{
  const gint64 until_us = g_get_monotonic_time () + stop_wait_us;

  /* First: once it is to stop, the thread frees the port. */
  if (self->port->class->cancel != NULL)
    self->port->class->cancel (self->port);
  g_atomic_int_set (&self->stop, 1);
  wake (self);
  g_mutex_lock (&self->lock);
  while (!self->ended && g_cond_wait_until (&self->end, &self->lock, until_us))
    ;
  g_mutex_unlock (&self->lock);
  g_atomic_rc_box_release_full (self, free_worker);
}
