/* rw-decoder.h: bytes from a meter in, values out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A decoder is pure: no input or output of its own, no clock, no locale. However the bytes
 * are cut into pieces, the same values come out. What it cannot understand it skips, counts,
 * and finds its feet again at the next frame; it never guesses.
 */
#pragma once

#include "rw-meter-value.h"
#include "rw-serial-settings.h"

G_BEGIN_DECLS

typedef enum
{
  RW_DECODER_ERROR_PATTERN, /* the pattern makes no sense; the message says where and what to
                               write */
  RW_DECODER_ERROR_OPTION,  /* the format has no such option */
} RwDecoderError;
#define RW_DECODER_ERROR (rw_decoder_error_quark ())
GQuark rw_decoder_error_quark (void);

typedef struct _RwDecoder RwDecoder;

/* Called once a value, in the order of arrival. @value lives only during the call. */
typedef void (*RwDecoderFunc) (const RwMeterValue *value, gpointer data);

/* What a decoder has seen since it was made. A plain value. */
typedef struct
{
  guint64 values;          /* handed out */
  guint64 not_understood;  /* frames or lines that were whole but made no sense */
  guint64 too_long;        /* lines dropped because they did not end */
  guint64 doubted;         /* frames understood but not believed; see rw-decoder-guard.h */
  guint64 bytes_explained; /* in frames and lines that were understood, believed or not */
} RwDecoderCounts;

/* The format ids, NULL-terminated, in the order to offer them: "lines", "scpi",
 * "segments-14", "digits-14", "digits-11a", "digits-11b", "text-14", "text-16". Static. */
const char *const *rw_decoder_list_formats (void);

/* A translated name for people; NULL for an unknown id. Static. */
const char *rw_decoder_get_title (const char *format_id);

/* The serial settings that meters of this format usually have, as a first offer. NULL for an
 * unknown id. */
const RwSerialSettings *rw_decoder_get_usual_line (const char *format_id);

/* What a meter of this format must be sent for each value that it is to send ("D" for
 * "text-14"); NULL when it sends by itself, for "scpi", which has a conversation of its own
 * (rw-scpi-talk.h), and for an unknown id. Static. */
const char *rw_decoder_get_poll (const char *format_id);

/* (transfer full) (nullable): NULL for an unknown id. */
RwDecoder *rw_decoder_new (const char *format_id);

/* A decoder of the same format and options that has not been fed yet. (transfer full) */
RwDecoder *rw_decoder_new_like (const RwDecoder *self);

void rw_decoder_free (RwDecoder *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwDecoder, rw_decoder_free)

const char *rw_decoder_get_format (const RwDecoder *self);

/* Which character stands before the decimals: '.' (the default) or ','. The other one inside
 * a number makes the line not understood; it is never taken for a thousands mark. Formats
 * without text ignore it. */
void rw_decoder_set_decimal_mark (RwDecoder *self, char mark);

/* Unit and mode of numbers that come without: NONE, NONE by default for lines (a bare number
 * is then not understood), volts and DC for scpi. */
void rw_decoder_assume (RwDecoder *self, RwMeterUnit unit, RwMeterMode mode);

/* Describes the lines of a meter; see rw-line-pattern.h for the words. NULL goes back to
 * reading free text. RW_DECODER_ERROR_OPTION for a format other than "lines". On an error the
 * old pattern stays. */
gboolean rw_decoder_set_pattern (RwDecoder  *self,
                                 const char *pattern,
                                 GError    **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes @n bytes and calls @callback for each value that they complete. */
void rw_decoder_feed (RwDecoder    *self,
                      const guint8 *tainted,
                      gsize         n,
                      RwDecoderFunc callback,
                      gpointer      data);

/* The input has ended (a captured file): a last line without its end counts, and frames that
 * were waiting for one that agrees come out if none ever did (rw-decoder-guard.h). */
void rw_decoder_end (RwDecoder *self, RwDecoderFunc callback, gpointer data);

/* The stream was cut: forgets a half frame; counts and options stay. With @torn the next
 * bytes may begin in the middle of a frame, so everything up to the next frame's beginning is
 * skipped without being counted. */
void rw_decoder_restart (RwDecoder *self, gboolean torn);

void rw_decoder_get_counts (const RwDecoder *self, RwDecoderCounts *counts);

/* The last line or frame that was not understood, printable, NULL when all were. Valid until
 * the next feed. */
const char *rw_decoder_get_last_bad (const RwDecoder *self);

G_END_DECLS
