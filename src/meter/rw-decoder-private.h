/* rw-decoder-private.h: what each format gives to rw-decoder.c.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A format is one RwDecoderClass in one rw-decoder-<format>.c, listed in the table of
 * rw-decoder.c. Its own struct begins with an RwDecoder. Formats of text lines build on
 * rw-decoder-text.h, those of frames on rw-decoder-frame.h.
 */
#pragma once

#include "rw-decoder.h"

G_BEGIN_DECLS

typedef struct
{
  const char      *id;
  const char      *title; /* N_() */
  RwSerialSettings usual;
  const char      *poll;  /* nullable: what asks for one value */
  gsize            size;  /* of the format's own struct */

  void (*init) (RwDecoder *self);                         /* nullable */
  void (*clear) (RwDecoder *self);                        /* nullable: frees what the struct owns */
  void (*copy_options) (RwDecoder *self, /* nullable: those the format itself keeps */
                        const RwDecoder *from);
  void (*feed) (RwDecoder *self, const guint8 *tainted, gsize n);
  void (*end) (RwDecoder *self);                          /* nullable */
  void (*restart) (RwDecoder *self, gboolean torn);
  gboolean (*set_pattern) (RwDecoder *self, const char *pattern, GError **error); /* nullable */
} RwDecoderClass;

struct _RwDecoder
{
  const RwDecoderClass *class;
  char                  mark; /* decimal mark */
  RwMeterUnit           assumed_unit;
  RwMeterMode           assumed_mode;
  RwDecoderCounts       counts;
  char                 *last_bad;
  RwDecoderFunc         callback; /* set during a feed */
  gpointer              data;
};

/* Hands a value to the feeder and counts it. */
void rw_decoder_emit (RwDecoder *self, const RwMeterValue *value);

/* Counts a frame that was whole but made no sense, and keeps it for people to see. */
void rw_decoder_refuse (RwDecoder *self, const char *tainted, gsize n);

/* The same, shown as hexadecimal: "17 22 3A". */
void rw_decoder_refuse_binary (RwDecoder *self, const guint8 *tainted, gsize n);

G_END_DECLS
