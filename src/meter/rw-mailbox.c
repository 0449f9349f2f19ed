/* rw-mailbox.c: carries values and states from a reading thread to the owner's main context.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `posted` is filled by the thread under the lock; the owner swaps it with the empty `taken`
 * and walks that with `next`. The source is woken by its ready time, which is thread-safe. A
 * delivery clears the ready time before it looks into the box, and a post fills the box
 * before it sets the time, so no post is slept through.
 */
#include "config.h"

#include "rw-mailbox.h"

/* A slice of delivery, and how long others get their turn after one that did not empty the box. */
static const gint64 slice_us = 4000;
static const gint64 rest_us = 2000;

/* How many are delivered between two looks at the clock. */
static const guint clock_every = 32;

struct _RwMailbox
{
  RwMailFunc deliver;
  gpointer   data;
  GSource   *source;
  gboolean   shut;  /* the owner's */
  GArray    *taken; /* the owner's */
  guint      next;  /* the owner's: the first of taken that is still to be delivered */

  GMutex          lock; /* guards what follows */
  GArray         *posted;
  RwDecoderCounts counts;
};

typedef struct
{
  GSource    source;
  RwMailbox *mailbox; /* borrowed: destroyed before the mailbox goes */
} MailSource;

static void
clear_mail (RwMail *mail)
{
  g_free (mail->message);
  g_free (mail->identity);
  g_free (mail->trouble);
}

static void
free_mails (GArray *mails,
            guint   from)
{
  for (guint i = from; i < mails->len; i++)
    clear_mail (&g_array_index (mails, RwMail, i));
  g_array_unref (mails);
}

/* Takes the next piece of mail out of the box; FALSE when it is empty. */
static gboolean
take_next (RwMailbox       *self,
           RwMail          *mail,
           RwDecoderCounts *counts)
{
  if (self->next == self->taken->len)
    {
      GArray *empty = self->taken;

      g_array_set_size (empty, 0);
      g_mutex_lock (&self->lock);
      self->taken = self->posted;
      self->posted = empty;
      *counts = self->counts;
      g_mutex_unlock (&self->lock);
      self->next = 0;
    }
  if (self->next == self->taken->len)
    return FALSE;
  *mail = g_array_index (self->taken, RwMail, self->next++);
  return TRUE;
}

/* Delivers until the box is empty or, unless @deadline_us is 0, until then. TRUE when it is
 * empty. A handler may flush or shut the box: each round looks again. */
static gboolean
deliver_until (RwMailbox *self,
               gint64     deadline_us)
{
  g_autoptr (RwMailbox) kept = rw_mailbox_ref (self);
  RwDecoderCounts counts;
  RwMail mail;

  g_mutex_lock (&self->lock);
  counts = self->counts;
  g_mutex_unlock (&self->lock);
  for (guint n = 1; !self->shut; n++)
    {
      if (!take_next (self, &mail, &counts))
        return TRUE;
      self->deliver (&mail, &counts, self->data);
      clear_mail (&mail);
      if (deadline_us > 0 && n % clock_every == 0 && g_get_monotonic_time () >= deadline_us)
        return FALSE;
    }
  return TRUE;
}

static gboolean
dispatch (GSource    *source,
          GSourceFunc callback,
          gpointer    data)
{
  RwMailbox *self = ((MailSource *) source)->mailbox;

  g_source_set_ready_time (source, -1);
  if (!deliver_until (self, g_get_monotonic_time () + slice_us))
    g_source_set_ready_time (source, g_get_monotonic_time () + rest_us);
  return G_SOURCE_CONTINUE;
}

RwMailbox *
rw_mailbox_new (GMainContext *context,
                RwMailFunc    deliver,
                gpointer      data)
{
  static GSourceFuncs funcs = { .dispatch = dispatch };
  RwMailbox *self = g_atomic_rc_box_new0 (RwMailbox);

  self->deliver = deliver;
  self->data = data;
  self->taken = g_array_new (FALSE, FALSE, sizeof (RwMail));
  self->posted = g_array_new (FALSE, FALSE, sizeof (RwMail));
  g_mutex_init (&self->lock);
  self->source = g_source_new (&funcs, sizeof (MailSource));
  ((MailSource *) self->source)->mailbox = self;
  g_source_set_static_name (self->source, "meter values");
  g_source_attach (self->source, context);
  return self;
}

RwMailbox *
rw_mailbox_ref (RwMailbox *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_mailbox (gpointer data)
{
  RwMailbox *self = data;

  g_source_destroy (self->source);
  g_source_unref (self->source);
  free_mails (self->taken, self->next);
  free_mails (self->posted, 0);
  g_mutex_clear (&self->lock);
}

void
rw_mailbox_unref (RwMailbox *self)
{
  g_atomic_rc_box_release_full (self, clear_mailbox);
}

void
rw_mailbox_post (RwMailbox             *self,
                 GArray                *mails,
                 const RwDecoderCounts *counts)
{
  if (mails->len == 0)
    return;
  g_mutex_lock (&self->lock);
  g_array_append_vals (self->posted, mails->data, mails->len);
  self->counts = *counts;
  g_mutex_unlock (&self->lock);
  g_array_set_size (mails, 0);
  g_source_set_ready_time (self->source, 0);
}

void
rw_mailbox_flush (RwMailbox *self)
{
  deliver_until (self, 0);
}

void
rw_mailbox_shut (RwMailbox *self)
{
  self->shut = TRUE;
  g_source_destroy (self->source);
}
