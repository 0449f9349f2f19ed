/* rw-decoder-text.h: what the formats made of lines of text share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CR, LF or both end a line (rw-line-buffer.h). A line is cleaned (rw-line-text.h) and given
 * to the format; blank ones are none.
 */
#pragma once

#include "rw-decoder-private.h"
#include "rw-line-buffer.h"

G_BEGIN_DECLS

typedef struct
{
  RwDecoderClass parent;

  /* Reads a line that is text without blanks around it, and emits its values; FALSE when it
   * makes no sense. @n > 0. */
  gboolean (*read_line) (RwDecoder *self, const char *clean, gsize n);
} RwDecoderTextClass;

/* The format's own struct begins with it. */
typedef struct
{
  RwDecoder    parent;
  RwLineBuffer buffer;
} RwDecoderText;

/* For the class's functions of the same names. */
void rw_decoder_text_feed (RwDecoder *decoder, const guint8 *tainted, gsize n);
void rw_decoder_text_end (RwDecoder *decoder);
void rw_decoder_text_restart (RwDecoder *decoder, gboolean torn);

G_END_DECLS
