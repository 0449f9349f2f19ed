/* rw-decoder-frame.c: what the formats with frames of a fixed length share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-decoder-frame.h"

#include <string.h>

static const RwDecoderFrameClass *
get_class (const RwDecoderFrame *self)
{
  return (const RwDecoderFrameClass *) self->parent.class;
}

/* --- whole frames -------------------------------------------------------------------- */

static gboolean
has_odd_parity (guint8 byte)
{
  gboolean odd = FALSE;

  for (; byte != 0; byte = (guint8) (byte & (byte - 1)))
    odd = !odd;
  return odd;
}

/* Takes the eighth bits off; FALSE when they are not as they should be. */
static gboolean
take_bits_off (RwDecoderFrameBits bits,
               guint8            *frame,
               gsize              n)
{
  gsize set = 0;
  gsize odd = 0;

  if (bits == RW_DECODER_FRAME_EIGHT)
    return TRUE;
  for (gsize i = 0; i < n; i++)
    {
      set += frame[i] >> 7;
      odd += has_odd_parity (frame[i]) ? 1 : 0;
      frame[i] &= 0x7F;
    }
  return set == 0 || (bits == RW_DECODER_FRAME_SEVEN_ODD ? odd == n : set == n);
}

/* Refuses the bytes held. */
static void
refuse (RwDecoderFrame *self)
{
  if (get_class (self)->is_text)
    {
      take_bits_off (get_class (self)->bits, self->bytes, self->n);
      rw_decoder_refuse (&self->parent, (const char *) self->bytes, self->n);
    }
  else
    rw_decoder_refuse_binary (&self->parent, self->bytes, self->n);
  self->n = 0;
  self->loud = FALSE;
}

static void
believed_cb (const RwDecoderDisplay *display,
             gpointer                data)
{
  RwMeterValue value;

  rw_decoder_display_get_value (display, &value);
  rw_decoder_emit (data, &value);
}

static void
take_frame (RwDecoderFrame *self)
{
  const RwDecoderFrameClass *class = get_class (self);
  RwDecoderDisplay display = { 0 };
  guint8 frame[RW_DECODER_FRAME_MAX];

  memcpy (frame, self->bytes, class->length);
  if (!take_bits_off (class->bits, frame, class->length) || !class->parse (frame, &display))
    {
      refuse (self);
      return;
    }
  if (display.over) /* the digits under an overload mean nothing */
    display.counts = 0, display.power = 0;
  self->parent.counts.bytes_explained += class->length;
  self->loud = TRUE;
  rw_decoder_guard_take (&self->guard, &display, believed_cb, self);
  self->parent.counts.doubted = self->guard.doubted;
}

/* --- bytes --------------------------------------------------------------------------- */

static void
hold (RwDecoderFrame *self,
      guint8          byte)
{
  self->bytes[self->n++] = byte;
}

static void
begin (RwDecoderFrame *self,
       guint8          byte)
{
  if (self->n > 0 && (!self->skipping || self->loud))
    refuse (self);
  self->n = 0;
  self->skipping = FALSE;
  hold (self, byte);
}

/* A byte that fits nowhere: all of a frame's worth of them is refused, as is what it broke. */
static void
skip (RwDecoderFrame *self,
      guint8          byte)
{
  hold (self, byte);
  if (!self->skipping || self->n == get_class (self)->length)
    refuse (self);
  self->skipping = TRUE;
}

static void
finish (RwDecoderFrame *self,
        guint8          byte)
{
  const RwDecoderFrameClass *class = get_class (self);

  if (!self->skipping)
    {
      hold (self, byte);
      if (self->n == class->length)
        take_frame (self);
      else if (self->n > 1) /* a lone end, as of CR LF CR LF, is nothing */
        refuse (self);
    }
  self->n = 0;
  self->skipping = class->has_start;
}

static void
take_byte (RwDecoderFrame *self,
           guint8          byte)
{
  const RwDecoderFrameClass *class = get_class (self);
  const guint8 bare = class->bits == RW_DECODER_FRAME_EIGHT ? byte : byte & 0x7F;
  RwDecoderFrameByte kind = class->judge (self->skipping ? 0 : self->n, bare);

  if (kind == RW_DECODER_FRAME_GOES_ON && (self->skipping || self->n + 1 == class->length))
    kind = RW_DECODER_FRAME_BREAKS; /* no beginning, no end */
  if (kind == RW_DECODER_FRAME_ENDS && self->skipping && class->has_start)
    kind = RW_DECODER_FRAME_BREAKS; /* the end of nothing */
  switch (kind)
    {
    case RW_DECODER_FRAME_STARTS:
      begin (self, byte);
      break;
    case RW_DECODER_FRAME_ENDS:
      finish (self, byte);
      break;
    case RW_DECODER_FRAME_BREAKS:
      skip (self, byte);
      break;
    case RW_DECODER_FRAME_GOES_ON:
    default:
      hold (self, byte);
      break;
    }
}

/* --- the class's functions ----------------------------------------------------------- */

void
rw_decoder_frame_init (RwDecoder *decoder)
{
  RwDecoderFrame *self = (RwDecoderFrame *) decoder;

  self->skipping = get_class (self)->has_start;
  self->loud = TRUE;
}

void
rw_decoder_frame_feed (RwDecoder    *decoder,
                       const guint8 *tainted,
                       gsize         n)
{
  for (gsize i = 0; i < n; i++)
    take_byte ((RwDecoderFrame *) decoder, tainted[i]);
}

void
rw_decoder_frame_end (RwDecoder *decoder)
{
  RwDecoderFrame *self = (RwDecoderFrame *) decoder;

  if (self->n > 0 && (!self->skipping || self->loud))
    refuse (self);
  self->n = 0;
  self->skipping = get_class (self)->has_start;
  rw_decoder_guard_end (&self->guard, believed_cb, self);
  decoder->counts.doubted = self->guard.doubted;
}

void
rw_decoder_frame_restart (RwDecoder *decoder,
                          gboolean   torn)
{
  RwDecoderFrame *self = (RwDecoderFrame *) decoder;

  self->n = 0;
  self->skipping = torn || get_class (self)->has_start;
  self->loud = !torn;
  rw_decoder_guard_restart (&self->guard);
  decoder->counts.doubted = self->guard.doubted;
}
