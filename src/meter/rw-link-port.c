/* rw-link-port.c: a link over a serial port or a TCP connection.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The reading is done by an RwLinkWorker in a thread of its own; this object lives in the
 * owner's context and turns its mail into signals. Each open makes a worker with a decoder of
 * its own.
 */
#include "config.h"

#include "rw-link-port.h"

#include "rw-link-worker.h"
#include "rw-poll-talk.h"
#include "rw-scpi-talk.h"

static const guint usual_patience_ms = 3000;
static const guint least_patience_ms = 50;

struct _RwLinkPort
{
  RwLink          parent_instance;
  RwMeterAddress *address;
  RwDecoder      *decoder; /* the pattern of those that the workers get; never fed */
  guint           patience_ms;
  RwKind          kind;    /* to be measured */
  RwMailbox      *mailbox; /* with worker, or NULL */
  RwLinkWorker   *worker;
};

G_DEFINE_FINAL_TYPE (RwLinkPort, rw_link_port, RW_TYPE_LINK)

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
  rw_link_set_trouble (link, mail->trouble);
  rw_link_tell_state (link, mail->state, mail->message);
}

/* Ends the worker; with @deliver_rest what it had read is delivered first. */
static void
end_worker (RwLinkPort *self,
            gboolean    deliver_rest)
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

/* What the format needs to be asked; NULL when the meter sends by itself. (transfer full) */
static RwTalk *
make_talk (RwLinkPort *self)
{
  const char *format = rw_decoder_get_format (self->decoder);
  const char *question = rw_decoder_get_poll (format);
  const gint64 patience_us = (gint64) self->patience_ms * 1000;

  if (g_str_equal (format, "scpi"))
    return rw_scpi_talk_new (patience_us);
  /* A lost question is repeated before the state would become SILENT. */
  return question != NULL ? rw_poll_talk_new (question, patience_us / 3) : NULL;
}

static void
rw_link_port_open (RwLink *link)
{
  RwLinkPort *self = RW_LINK_PORT (link);
  g_autoptr (GMainContext) context = g_main_context_ref_thread_default ();

  self->mailbox = rw_mailbox_new (context, deliver, self);
  self->worker = rw_link_worker_start (rw_meter_address_make_port (self->address),
                                       rw_decoder_new_like (self->decoder), make_talk (self),
                                       self->patience_ms, self->mailbox);
  rw_link_worker_set_kind (self->worker, self->kind);
}

static void
rw_link_port_close (RwLink *link)
{
  end_worker (RW_LINK_PORT (link), TRUE);
}

static void
rw_link_port_set_kind (RwLink *link,
                       RwKind  kind)
{
  RwLinkPort *self = RW_LINK_PORT (link);

  self->kind = kind;
  if (self->worker != NULL)
    rw_link_worker_set_kind (self->worker, kind);
}

static void
rw_link_port_dispose (GObject *object)
{
  end_worker (RW_LINK_PORT (object), FALSE);
  G_OBJECT_CLASS (rw_link_port_parent_class)->dispose (object);
}

static void
rw_link_port_finalize (GObject *object)
{
  RwLinkPort *self = RW_LINK_PORT (object);

  rw_decoder_free (self->decoder);
  rw_meter_address_free (self->address);
  G_OBJECT_CLASS (rw_link_port_parent_class)->finalize (object);
}

static void
rw_link_port_class_init (RwLinkPortClass *class)
{
  G_OBJECT_CLASS (class)->dispose = rw_link_port_dispose;
  G_OBJECT_CLASS (class)->finalize = rw_link_port_finalize;
  RW_LINK_CLASS (class)->open = rw_link_port_open;
  RW_LINK_CLASS (class)->close = rw_link_port_close;
  RW_LINK_CLASS (class)->set_kind = rw_link_port_set_kind;
}

static void
rw_link_port_init (RwLinkPort *self)
{
  self->patience_ms = usual_patience_ms;
  self->kind = RW_KIND_DC;
}

RwLink *
rw_link_port_new (const RwMeterAddress *address,
                  RwDecoder            *decoder)
{
  RwLinkPort *self = g_object_new (RW_TYPE_LINK_PORT, NULL);

  self->address = rw_meter_address_copy (address);
  self->decoder = decoder;
  return RW_LINK (self);
}

const RwMeterAddress *
rw_link_port_get_address (RwLinkPort *self)
{
  return self->address;
}

void
rw_link_port_set_patience (RwLinkPort *self,
                           guint       milliseconds)
{
  self->patience_ms = MAX (milliseconds, least_patience_ms);
}
