/* rw-decoder-text.c: what the formats made of lines of text share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-decoder-text.h"

#include "rw-line-text.h"

static void
line_cb (const char *tainted_line,
         gsize       n,
         gpointer    data)
{
  RwDecoderText *self = data;
  RwDecoder *base = &self->parent;
  const RwDecoderTextClass *class = (const RwDecoderTextClass *) base->class;
  char clean[RW_LINE_TEXT_MAX];
  gsize clean_n;

  if (!rw_line_text_clean (tainted_line, n, clean, &clean_n))
    rw_decoder_refuse (base, tainted_line, n);
  else if (clean_n == 0)
    return; /* blanks only */
  else if (class->read_line (base, clean, clean_n))
    rw_line_buffer_explain (&self->buffer);
  else
    rw_decoder_refuse (base, clean, clean_n);
}

static void
take_counts (RwDecoderText *self)
{
  self->parent.counts.too_long = self->buffer.too_long;
  self->parent.counts.bytes_explained = self->buffer.bytes_explained;
}

void
rw_decoder_text_feed (RwDecoder    *decoder,
                      const guint8 *tainted,
                      gsize         n)
{
  RwDecoderText *self = (RwDecoderText *) decoder;

  rw_line_buffer_feed (&self->buffer, tainted, n, line_cb, self);
  take_counts (self);
}

void
rw_decoder_text_end (RwDecoder *decoder)
{
  RwDecoderText *self = (RwDecoderText *) decoder;

  rw_line_buffer_end (&self->buffer, line_cb, self);
  take_counts (self);
}

void
rw_decoder_text_restart (RwDecoder *decoder,
                         gboolean   torn)
{
  rw_line_buffer_restart (&((RwDecoderText *) decoder)->buffer, torn);
}
