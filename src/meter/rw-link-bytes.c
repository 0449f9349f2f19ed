/* rw-link-bytes.c: a link whose bytes the owner pushes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-link-bytes.h"

#include <glib/gi18n-lib.h>

struct _RwLinkBytes
{
  RwLink     parent_instance;
  RwDecoder *decoder;
  gint64     when_us; /* of the bytes being decoded */
};

G_DEFINE_FINAL_TYPE (RwLinkBytes, rw_link_bytes, RW_TYPE_LINK)

static gboolean
is_open (RwLinkBytes *self)
{
  return rw_link_get_state (RW_LINK (self)) != RW_LINK_CLOSED;
}

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  RwLinkBytes *self = data;
  RwDecoderCounts counts;

  /* A handler may have closed the link half-way through the bytes. */
  if (!is_open (self))
    return;
  rw_decoder_get_counts (self->decoder, &counts);
  rw_link_set_counts (RW_LINK (self), &counts);
  rw_link_tell_state (RW_LINK (self), RW_LINK_READING, _ ("The meter is read."));
  rw_link_tell_value (RW_LINK (self), value, self->when_us);
}

static void
rw_link_bytes_open (RwLink *link)
{
  RwLinkBytes *self = RW_LINK_BYTES (link);
  g_autoptr (RwDecoder) used = g_steal_pointer (&self->decoder);

  self->decoder = rw_decoder_new_like (used);
  rw_link_tell_state (link, RW_LINK_LISTENING, _ ("Waiting for the meter's first value."));
}

static void
rw_link_bytes_close (RwLink *link)
{
}

static void
rw_link_bytes_finalize (GObject *object)
{
  rw_decoder_free (RW_LINK_BYTES (object)->decoder);
  G_OBJECT_CLASS (rw_link_bytes_parent_class)->finalize (object);
}

static void
rw_link_bytes_class_init (RwLinkBytesClass *class)
{
  G_OBJECT_CLASS (class)->finalize = rw_link_bytes_finalize;
  RW_LINK_CLASS (class)->open = rw_link_bytes_open;
  RW_LINK_CLASS (class)->close = rw_link_bytes_close;
}

static void
rw_link_bytes_init (RwLinkBytes *self)
{
}

RwLink *
rw_link_bytes_new (RwDecoder *decoder)
{
  RwLinkBytes *self = g_object_new (RW_TYPE_LINK_BYTES, NULL);

  self->decoder = decoder;
  return RW_LINK (self);
}

void
rw_link_bytes_push (RwLinkBytes  *self,
                    const guint8 *bytes,
                    gsize         n,
                    gint64        when_us)
{
  g_return_if_fail (RW_IS_LINK_BYTES (self));
  if (!is_open (self))
    return;

  g_autoptr (RwLinkBytes) kept = g_object_ref (self);
  RwDecoderCounts counts;

  self->when_us = when_us;
  rw_decoder_feed (self->decoder, bytes, n, value_cb, self);
  rw_decoder_get_counts (self->decoder, &counts);
  rw_link_set_counts (RW_LINK (self), &counts);
}
