/* rw-decoder-lines.c: the format "lines": a number and a unit in a line of text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line is read as free text (rw-line-words.h), or by the user's pattern (rw-line-pattern.h).
 * There is no checksum and no length: a line is believed when it can be read in one way only.
 */
#include "config.h"

#include "rw-decoder-lines.h"

#include <glib/gi18n-lib.h>

#include "rw-line-pattern.h"
#include "rw-line-words.h"

typedef struct
{
  RwDecoderText  parent;
  RwLinePattern *pattern; /* NULL: free text */
} RwDecoderLines;

static gboolean
lines_read_line (RwDecoder  *decoder,
                 const char *clean,
                 gsize       n)
{
  const RwLinePattern *pattern = ((RwDecoderLines *) decoder)->pattern;
  RwLineFields fields;
  RwMeterValue value;
  const gboolean found = pattern != NULL
                             ? rw_line_pattern_read (pattern, clean, n, decoder->mark, &fields)
                             : rw_line_words_read (clean, n, decoder->mark, &fields);

  if (!found
      || !rw_line_fields_get_value (&fields, decoder->assumed_unit, decoder->assumed_mode, &value))
    return FALSE;
  rw_decoder_emit (decoder, &value);
  return TRUE;
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

const RwDecoderTextClass rw_decoder_lines_class = {
  .parent = {
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
    .feed = rw_decoder_text_feed,
    .end = rw_decoder_text_end,
    .restart = rw_decoder_text_restart,
    .set_pattern = lines_set_pattern,
  },
  .read_line = lines_read_line,
};
