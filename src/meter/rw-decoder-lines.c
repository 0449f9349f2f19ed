/* rw-decoder-lines.c: the format "lines": a number and a unit in a line of text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CR, LF or both end a line (rw-line-buffer.h). The line is cleaned (rw-line-text.h) and read
 * as free text (rw-line-words.h), or by the user's pattern (rw-line-pattern.h). There is no
 * checksum and no length: a line is believed when it can be read in one way only.
 */
#include "config.h"

#include "rw-decoder-lines.h"

#include <glib/gi18n-lib.h>

#include "rw-line-buffer.h"
#include "rw-line-pattern.h"
#include "rw-line-text.h"
#include "rw-line-words.h"

typedef struct
{
  RwDecoder      parent;
  RwLineBuffer   buffer;
  RwLinePattern *pattern; /* NULL: free text */
} RwDecoderLines;

static gboolean
read_line (RwDecoderLines *self,
           const char     *clean,
           gsize           n,
           RwMeterValue   *value)
{
  const RwDecoder *base = &self->parent;
  RwLineFields fields;
  const gboolean found = self->pattern != NULL
                             ? rw_line_pattern_read (self->pattern, clean, n, base->mark, &fields)
                             : rw_line_words_read (clean, n, base->mark, &fields);

  return found && rw_line_fields_get_value (&fields, base->assumed_unit, base->assumed_mode, value);
}

static void
line_cb (const char *tainted_line,
         gsize       n,
         gpointer    data)
{
  RwDecoderLines *self = data;
  char clean[RW_LINE_TEXT_MAX];
  gsize clean_n;
  RwMeterValue value;

  if (!rw_line_text_clean (tainted_line, n, clean, &clean_n))
    rw_decoder_refuse (&self->parent, tainted_line, n);
  else if (clean_n == 0)
    return; /* blanks only */
  else if (read_line (self, clean, clean_n, &value))
    rw_decoder_emit (&self->parent, &value);
  else
    rw_decoder_refuse (&self->parent, clean, clean_n);
}

static void
lines_feed (RwDecoder    *decoder,
            const guint8 *tainted,
            gsize         n)
{
  RwDecoderLines *self = (RwDecoderLines *) decoder;

  rw_line_buffer_feed (&self->buffer, tainted, n, line_cb, self);
  decoder->counts.too_long = self->buffer.too_long;
}

static void
lines_end (RwDecoder *decoder)
{
  RwDecoderLines *self = (RwDecoderLines *) decoder;

  rw_line_buffer_end (&self->buffer, line_cb, self);
}

static void
lines_restart (RwDecoder *decoder,
               gboolean   torn)
{
  rw_line_buffer_restart (&((RwDecoderLines *) decoder)->buffer, torn);
}

static gboolean
lines_set_pattern (RwDecoder  *decoder,
                   const char *pattern,
                   GError    **error)
{
  RwDecoderLines *self = (RwDecoderLines *) decoder;
  RwLinePattern *made = pattern != NULL ? rw_line_pattern_new (pattern, error) : NULL;

  if (pattern != NULL && made == NULL)
    return FALSE;
  g_clear_pointer (&self->pattern, rw_line_pattern_free);
  self->pattern = made;
  return TRUE;
}

static void
lines_copy_options (RwDecoder       *decoder,
                    const RwDecoder *from)
{
  const RwLinePattern *pattern = ((const RwDecoderLines *) from)->pattern;

  if (pattern != NULL)
    ((RwDecoderLines *) decoder)->pattern
        = rw_line_pattern_new (rw_line_pattern_get_text (pattern), NULL);
}

static void
lines_clear (RwDecoder *decoder)
{
  g_clear_pointer (&((RwDecoderLines *) decoder)->pattern, rw_line_pattern_free);
}

const RwDecoderClass rw_decoder_lines_class = {
  .id = "lines",
  .title = N_ ("Lines of text"),
  .usual = { .baud = 9600,
             .bits = 8,
             .parity = RW_PARITY_NONE,
             .stop_bits = 1,
             .dtr = TRUE,
             .rts = TRUE },
  .size = sizeof (RwDecoderLines),
  .clear = lines_clear,
  .copy_options = lines_copy_options,
  .feed = lines_feed,
  .end = lines_end,
  .restart = lines_restart,
  .set_pattern = lines_set_pattern,
};
