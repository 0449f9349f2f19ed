/* rw-decoder-scpi.c: the format "scpi": the answers to READ? and MEAS?.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A response message (IEEE Std 488.2-1992, 8.4 and 8.5; SCPI-1999 vol. 1) is
 *
 *   data {"," data} {";" data {"," data}} NL
 *
 * and serial instruments often end it with CR LF. Each datum must be a number; NR3 by the
 * book, any NRf in life. A message with anything else in it, such as `-113,"Undefined
 * header"`, is no reading at all, not even its −113. ±9.9E37 and 9.91E37, also in single
 * precision, are values without a value.
 */
#include "config.h"

#include "rw-decoder-scpi.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-line-buffer.h"
#include "rw-line-text.h"
#include "rw-number.h"

typedef struct
{
  RwDecoder    parent;
  RwLineBuffer buffer;
} RwDecoderScpi;

/* The shortest datum and its comma are two bytes. */
#define MAX_DATA (RW_LINE_BUFFER_MAX / 2 + 1)

static gboolean
read_datum (const RwDecoderScpi *self,
            const char          *text,
            gsize                n,
            RwMeterValue        *value)
{
  RwNumber number;
  gsize begin = 0;

  while (begin < n && text[begin] == ' ')
    begin++;
  while (n > begin && text[n - 1] == ' ')
    n--;
  *value = (RwMeterValue){ .unit = self->parent.assumed_unit, .mode = self->parent.assumed_mode };
  if (rw_number_parse (text + begin, n - begin, &number) != RW_NUMBER_GOOD
      || rw_number_get (&number, 0, &value->value, &value->step) != RW_NUMBER_GOOD)
    return FALSE;
  if (rw_number_is_sentinel (value->value))
    {
      value->over = TRUE;
      value->value = NAN;
      value->step = 0;
    }
  return TRUE;
}

/* All data of a message, or none: how many. */
static guint
read_message (const RwDecoderScpi *self,
              const char          *clean,
              gsize                n,
              RwMeterValue         values[MAX_DATA])
{
  guint found = 0;
  gsize begin = 0;

  for (gsize i = 0; i <= n; i++)
    {
      if (i < n && clean[i] != ',' && clean[i] != ';')
        continue;
      if (!read_datum (self, clean + begin, i - begin, &values[found]))
        return 0;
      found++;
      begin = i + 1;
    }
  return found;
}

static void
line_cb (const char *tainted_line,
         gsize       n,
         gpointer    data)
{
  RwDecoderScpi *self = data;
  char clean[RW_LINE_TEXT_MAX];
  gsize clean_n;
  RwMeterValue values[MAX_DATA];

  if (!rw_line_text_clean (tainted_line, n, clean, &clean_n))
    {
      rw_decoder_refuse (&self->parent, tainted_line, n);
      return;
    }
  if (clean_n == 0)
    return; /* blanks only */

  const guint found = read_message (self, clean, clean_n, values);

  for (guint i = 0; i < found; i++)
    rw_decoder_emit (&self->parent, &values[i]);
  if (found == 0)
    rw_decoder_refuse (&self->parent, clean, clean_n);
}

static void
scpi_init (RwDecoder *decoder)
{
  rw_decoder_assume (decoder, RW_METER_UNIT_VOLT, RW_METER_MODE_DC);
}

static void
scpi_feed (RwDecoder    *decoder,
           const guint8 *tainted,
           gsize         n)
{
  RwDecoderScpi *self = (RwDecoderScpi *) decoder;

  rw_line_buffer_feed (&self->buffer, tainted, n, line_cb, self);
  decoder->counts.too_long = self->buffer.too_long;
}

static void
scpi_end (RwDecoder *decoder)
{
  RwDecoderScpi *self = (RwDecoderScpi *) decoder;

  rw_line_buffer_end (&self->buffer, line_cb, self);
}

static void
scpi_restart (RwDecoder *decoder,
              gboolean   torn)
{
  rw_line_buffer_restart (&((RwDecoderScpi *) decoder)->buffer, torn);
}

const RwDecoderClass rw_decoder_scpi_class = {
  .id = "scpi",
  .title = N_ ("SCPI instrument"),
  .usual = { .baud = 9600,
             .bits = 8,
             .parity = RW_PARITY_NONE,
             .stop_bits = 1,
             .dtr = TRUE,
             .rts = TRUE },
  .size = sizeof (RwDecoderScpi),
  .init = scpi_init,
  .feed = scpi_feed,
  .end = scpi_end,
  .restart = scpi_restart,
};
