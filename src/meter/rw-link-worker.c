/* rw-link-worker.c: the thread that reads a byte port, decodes, and brings it back when it is lost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   OPENING ──open──► LISTENING ──value──► READING ──no value for a while──► SILENT
 *     └─ fails: again every 0.5 s  │                 ◄──value──
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
 * there is less time than that at any usual speed. LISTENING is told when that time is over,
 * so that no line that begins after it is skipped. A line that is cut off by an unplugging is
 * forgotten for the same reason.
 *
 * Everything below is the thread's own, but for `stop` and `pipe`, and `ended` under its lock.
 */
#include "config.h"

#include "rw-link-worker.h"

#include <errno.h>
#include <fcntl.h>
#include <glib-unix.h>
#include <glib/gi18n-lib.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

static const gint64 reopen_us = 500 * 1000;
static const gint64 look_us = 250 * 1000;
static const gint64 torn_us = 50 * 1000;
static const gint64 stop_wait_us = 300 * 1000;

struct _RwLinkWorker
{
  RwBytePort *port;
  RwDecoder  *decoder;
  RwScpiTalk *talk;
  RwMailbox  *mailbox;
  gint64      patience_us;

  GArray     *mails; /* of RwMail, not posted yet */
  RwLinkState state;
  gint64      opened_us;
  gint64      arrived_us;  /* of the bytes that are being decoded */
  gint64      value_us;    /* of the newest value, else of the name or the opening */
  gboolean    heard;       /* bytes came since the newest value */
  gboolean    settling;    /* just opened, LISTENING not told yet: bytes may begin inside a line */

  int      pipe[2]; /* a byte wakes the thread */
  int      stop;    /* atomic */
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
  const char *name = self->talk != NULL ? rw_scpi_talk_get_name (self->talk) : NULL;
  const RwMail mail
      = { .is_state = TRUE, .state = state, .message = message, .identity = g_strdup (name) };

  self->state = state;
  g_array_append_val (self->mails, mail);
}

static void
tell_listening (RwLinkWorker *self)
{
  self->settling = FALSE;
  tell_state (self, RW_LINK_LISTENING,
              g_strdup_printf (_ ("“%s” is open. Waiting for the meter's first value."),
                               self->port->name));
}

static void
tell_reading (RwLinkWorker *self)
{
  const char *name = self->talk != NULL ? rw_scpi_talk_get_name (self->talk) : NULL;

  if (name != NULL)
    /* Translators: a meter's own name for itself, and a port. */
    tell_state (self, RW_LINK_READING,
                g_strdup_printf (_ ("%s is read on “%s”."), name, self->port->name));
  else
    tell_state (self, RW_LINK_READING,
                g_strdup_printf (_ ("The meter on “%s” is read."), self->port->name));
}

/* Why no value comes, as far as the bytes tell. */
static char *
explain_silence (RwLinkWorker *self)
{
  const char *name = self->port->name;
  const char *bad = rw_decoder_get_last_bad (self->decoder);

  if (!self->heard && self->talk != NULL)
    return g_strdup_printf (_ ("The meter on “%s” does not answer. Is it on, set to remote "
                               "control, and is the speed right?"),
                            name);
  if (!self->heard)
    return g_strdup_printf (_ ("Nothing comes from “%s”. Is the meter on and set to send?"), name);
  if (bad != NULL)
    /* Translators: a port, and the odd line that came from it. */
    return g_strdup_printf (_ ("What comes from “%s” makes no reading, such as “%s”. Check format "
                               "and line settings."),
                            name, bad);
  return g_strdup_printf (_ ("What comes from “%s” makes no reading. Check format and line "
                             "settings."),
                          name);
}

static void
tell_lost (RwLinkWorker *self)
{
  tell_state (self, RW_LINK_LOST,
              g_strdup_printf (_ ("“%s” went away. Plug the cable in again: reading then goes on "
                                  "by itself."),
                               self->port->name));
  rw_decoder_restart (self->decoder, FALSE);
  post (self);
}

/* --- bytes --------------------------------------------------------------------------- */

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  RwLinkWorker *self = data;
  const RwMail mail = { .value = *value, .when_us = self->arrived_us };

  if (self->state != RW_LINK_READING)
    tell_reading (self);
  g_array_append_val (self->mails, mail);
  self->value_us = self->arrived_us;
  self->heard = FALSE;
  if (self->talk != NULL)
    rw_scpi_talk_answered (self->talk, self->arrived_us);
}

/* It said its name: it is there, and gets its full time for the first value. */
static void
tell_named (RwLinkWorker *self)
{
  self->value_us = self->arrived_us;
  tell_state (self, RW_LINK_LISTENING,
              /* Translators: a meter's own name for itself, and a port. */
              g_strdup_printf (_ ("%s answers on “%s”."), rw_scpi_talk_get_name (self->talk),
                               self->port->name));
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

  const RwScpiHeard heard = self->talk != NULL ? rw_scpi_talk_hear (self->talk, tainted, n)
                                               : RW_SCPI_HEARD_OTHERS;

  if (heard == RW_SCPI_HEARD_OTHERS)
    rw_decoder_feed (self->decoder, tainted, n, value_cb, self);
  else if (heard == RW_SCPI_HEARD_NAME)
    tell_named (self);
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
  const char *text;

  while ((text = rw_scpi_talk_next (self->talk, g_get_monotonic_time (), due_us)) != NULL)
    if (!self->port->class->write (self->port, text, strlen (text)))
      return FALSE;
  return TRUE;
}

/* --- waiting ------------------------------------------------------------------------- */

static gboolean
is_stopped (RwLinkWorker *self)
{
  return g_atomic_int_get (&self->stop) != 0;
}

/* Waits for bytes (unless fd is −1), until due_us, or to be stopped; TRUE when the descriptor
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

  return n > 0 && fds[1].revents != 0;
}

/* What the passing of time alone changes. */
static void
check_time (RwLinkWorker *self)
{
  const gint64 now_us = g_get_monotonic_time ();

  if (self->settling && now_us - self->opened_us >= torn_us)
    tell_listening (self);
  if (self->state != RW_LINK_SILENT && now_us - self->value_us >= self->patience_us)
    tell_state (self, RW_LINK_SILENT, explain_silence (self));
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
      const gint64 settled_us = self->settling ? self->opened_us + torn_us : G_MAXINT64;

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

static gboolean
open_port (RwLinkWorker *self)
{
  g_autoptr (GError) error = NULL;

  if (!self->port->class->open (self->port, &error))
    {
      /* While it is unplugged, "no such port" is no news. */
      if (self->state != RW_LINK_LOST
          || !g_error_matches (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE))
        tell_state (self, self->state, g_strdup (error->message));
      post (self);
      return FALSE;
    }
  self->opened_us = self->value_us = g_get_monotonic_time ();
  self->heard = FALSE;
  self->settling = self->talk == NULL;
  if (self->talk == NULL)
    return TRUE;

  /* One who asks need not wait for a line's end, but for the end of old answers. */
  self->port->class->drop_input (self->port);
  rw_scpi_talk_restart (self->talk, self->opened_us);
  tell_listening (self);
  return TRUE;
}

static void
free_worker (gpointer data)
{
  RwLinkWorker *self = data;

  g_array_unref (self->mails);
  rw_decoder_free (self->decoder);
  rw_scpi_talk_free (self->talk);
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

  tell_state (self, RW_LINK_OPENING, g_strdup_printf (_ ("Opening “%s”."), self->port->name));
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
      wait_until (self, -1, g_get_monotonic_time () + reopen_us);
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
                      RwScpiTalk *talk_,
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
  g_mutex_init (&self->lock);
  g_cond_init (&self->end);
  /* Fails only when the process has no descriptors left: nothing would work then. */
  if (!g_unix_open_pipe (self->pipe, FD_CLOEXEC, &error))
    g_error ("%s", error->message);
  g_thread_unref (g_thread_new ("meter link", run, g_atomic_rc_box_acquire (self)));
  return self;
}

void
rw_link_worker_stop (RwLinkWorker *self)
{
  const gint64 until_us = g_get_monotonic_time () + stop_wait_us;

  g_atomic_int_set (&self->stop, 1);
  while (write (self->pipe[1], "", 1) < 0 && errno == EINTR)
    ;
  g_mutex_lock (&self->lock);
  while (!self->ended && g_cond_wait_until (&self->end, &self->lock, until_us))
    ;
  g_mutex_unlock (&self->lock);
  g_atomic_rc_box_release_full (self, free_worker);
}
