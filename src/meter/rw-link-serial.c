/* rw-link-serial.c: a link over a serial port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The reading is done by an RwLinkWorker in a thread of its own; this object lives in the
 * owner's context and turns its mail into signals. Each open makes a worker with a decoder of
 * its own.
 */
#include "config.h"

#include "rw-link-serial.h"

#include "rw-link-worker.h"
#include "rw-serial-byte-port.h"

static const guint usual_patience_ms = 3000;
static const guint least_patience_ms = 50;

struct _RwLinkSerial
{
  RwLink           parent_instance;
  char            *port;
  RwSerialSettings settings;
  RwDecoder       *decoder; /* the pattern of those that the workers get; never fed */
  guint            patience_ms;
  RwMailbox       *mailbox; /* with worker, or NULL */
  RwLinkWorker    *worker;
};

G_DEFINE_FINAL_TYPE (RwLinkSerial, rw_link_serial, RW_TYPE_LINK)

static void
deliver (const RwMail          *mail,
         const RwDecoderCounts *counts,
         gpointer               data)
{
  /* A handler may drop the last reference. */
  g_autoptr (RwLink) link = g_object_ref (data);

  rw_link_set_counts (link, counts);
  if (!mail->is_state)
    {
      rw_link_tell_value (link, &mail->value, mail->when_us);
      return;
    }
  if (mail->identity != NULL)
    rw_link_set_identity (link, mail->identity);
  rw_link_tell_state (link, mail->state, mail->message);
}

/* Ends the worker; with @deliver_rest what it had read is delivered first. */
static void
end_worker (RwLinkSerial *self,
            gboolean      deliver_rest)
{
  RwLinkWorker *worker = g_steal_pointer (&self->worker);
  g_autoptr (RwMailbox) mailbox = g_steal_pointer (&self->mailbox);

  if (worker == NULL)
    return;
  rw_link_worker_stop (worker);
  if (deliver_rest)
    rw_mailbox_flush (mailbox);
  rw_mailbox_shut (mailbox);
}

static void
rw_link_serial_open (RwLink *link)
{
  RwLinkSerial *self = RW_LINK_SERIAL (link);
  g_autoptr (GMainContext) context = g_main_context_ref_thread_default ();
  const gboolean asks = g_str_equal (rw_decoder_get_format (self->decoder), "scpi");

  const gint64 patience_us = (gint64) self->patience_ms * 1000;

  self->mailbox = rw_mailbox_new (context, deliver, self);
  self->worker = rw_link_worker_start (rw_serial_byte_port_new (self->port, &self->settings),
                                       rw_decoder_new_like (self->decoder),
                                       asks ? rw_scpi_talk_new (patience_us) : NULL,
                                       self->patience_ms,
                                       self->mailbox);
}

static void
rw_link_serial_close (RwLink *link)
{
  end_worker (RW_LINK_SERIAL (link), TRUE);
}

static void
rw_link_serial_dispose (GObject *object)
{
  end_worker (RW_LINK_SERIAL (object), FALSE);
  G_OBJECT_CLASS (rw_link_serial_parent_class)->dispose (object);
}

static void
rw_link_serial_finalize (GObject *object)
{
  RwLinkSerial *self = RW_LINK_SERIAL (object);

  rw_decoder_free (self->decoder);
  g_free (self->port);
  G_OBJECT_CLASS (rw_link_serial_parent_class)->finalize (object);
}

static void
rw_link_serial_class_init (RwLinkSerialClass *class)
{
  G_OBJECT_CLASS (class)->dispose = rw_link_serial_dispose;
  G_OBJECT_CLASS (class)->finalize = rw_link_serial_finalize;
  RW_LINK_CLASS (class)->open = rw_link_serial_open;
  RW_LINK_CLASS (class)->close = rw_link_serial_close;
}

static void
rw_link_serial_init (RwLinkSerial *self)
{
  self->patience_ms = usual_patience_ms;
}

RwLink *
rw_link_serial_new (const char             *port,
                    const RwSerialSettings *settings,
                    RwDecoder              *decoder)
{
  RwLinkSerial *self = g_object_new (RW_TYPE_LINK_SERIAL, NULL);

  self->port = g_strdup (port);
  self->settings = *settings;
  self->decoder = decoder;
  return RW_LINK (self);
}

const char *
rw_link_serial_get_port (RwLinkSerial *self)
{
  return self->port;
}

const RwSerialSettings *
rw_link_serial_get_settings (RwLinkSerial *self)
{
  return &self->settings;
}

void
rw_link_serial_set_patience (RwLinkSerial *self,
                             guint         milliseconds)
{
  self->patience_ms = MAX (milliseconds, least_patience_ms);
}
