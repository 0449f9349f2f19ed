/* rw-decoder-frame.h: what the formats with frames of a fixed length share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A format says what each byte may be (judge) and what a whole frame means (parse); here the
 * stream is cut into frames, the eighth bits are dealt with, and the guard decides what is
 * believed (rw-decoder-guard.h).
 *
 * Cutting. A frame is whole only if it has exactly its length from its own beginning to its
 * own end. Its beginning is a byte that can be nothing else (has_start), or the byte after
 * the end of the one before: never simply "so many bytes before the end", since a frame with
 * one byte too many or too few would then be read shifted by one, and could make sense. What
 * breaks off or runs over is refused, and everything is skipped to the next beginning.
 *
 *   skipping --start, or after an end--> in a frame --end at the right place--> parse
 *      ^                                    |
 *      +------------ any other byte --------+  refused
 *
 * Eighth bits. 7O1 read as 8N1 has its parity in bit 7 (0x30 comes as 0xB0, LF as 0x8A), 7N2
 * read as 8N1 its first stop bit. So in a frame of 7 bits either no bit 7 is set, or parity
 * must be odd in every byte (SEVEN_ODD), or all bits 7 are set (SEVEN_ONES); else it is
 * refused. They are taken off before the frame is read.
 */
#pragma once

#include "rw-decoder-guard.h"
#include "rw-decoder-private.h"

G_BEGIN_DECLS

#define RW_DECODER_FRAME_MAX 16

typedef enum
{
  RW_DECODER_FRAME_GOES_ON, /* may stand there */
  RW_DECODER_FRAME_STARTS,  /* begins a frame wherever it stands */
  RW_DECODER_FRAME_ENDS,    /* ends a frame wherever it stands */
  RW_DECODER_FRAME_BREAKS   /* cannot stand there */
} RwDecoderFrameByte;

typedef enum
{
  RW_DECODER_FRAME_EIGHT,
  RW_DECODER_FRAME_SEVEN_ODD,
  RW_DECODER_FRAME_SEVEN_ONES
} RwDecoderFrameBits;

typedef struct
{
  RwDecoderClass     parent;
  gsize              length;    /* of a frame, at most RW_DECODER_FRAME_MAX */
  gboolean           has_start; /* judge knows a frame's first byte */
  gboolean           is_text;   /* bad frames are shown as text, else as hex */
  RwDecoderFrameBits bits;

  /* What @byte is at index @at of a frame. Bit 7 is off when the format has 7 bits. */
  RwDecoderFrameByte (*judge) (gsize at, guint8 byte);

  /* What a whole frame means; @display is all zero. FALSE when it means nothing. */
  gboolean (*parse) (const guint8 *frame, RwDecoderDisplay *display);
} RwDecoderFrameClass;

typedef struct
{
  RwDecoder      parent;
  RwDecoderGuard guard;
  guint8         bytes[RW_DECODER_FRAME_MAX]; /* of the frame, or what was skipped last */
  gsize          n;
  gboolean       skipping;
  gboolean       loud; /* what is skipped is not the rest of what was refused already */
} RwDecoderFrame;

/* For the class's functions of the same names; size is that of RwDecoderFrame. */
void rw_decoder_frame_init (RwDecoder *decoder);
void rw_decoder_frame_feed (RwDecoder *decoder, const guint8 *tainted, gsize n);
void rw_decoder_frame_end (RwDecoder *decoder);
void rw_decoder_frame_restart (RwDecoder *decoder, gboolean torn);

G_END_DECLS
