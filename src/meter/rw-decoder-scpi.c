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

#include "rw-number.h"

/* The shortest datum and its comma are two bytes. */
#define MAX_DATA (RW_LINE_BUFFER_MAX / 2 + 1)

static gboolean
read_datum (const RwDecoder *self,
            const char      *text,
            gsize            n,
            RwMeterValue    *value)
{
  RwNumber number;
  gsize begin = 0;

  while (begin < n && text[begin] == ' ')
    begin++;
  while (n > begin && text[n - 1] == ' ')
    n--;
  *value = (RwMeterValue){ .unit = self->assumed_unit, .mode = self->assumed_mode };
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
read_message (const RwDecoder *self,
              const char      *clean,
              gsize            n,
              RwMeterValue     values[MAX_DATA])
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

static gboolean
scpi_read_line (RwDecoder  *decoder,
                const char *clean,
                gsize       n)
{
  RwMeterValue values[MAX_DATA];
  const guint found = read_message (decoder, clean, n, values);

  for (guint i = 0; i < found; i++)
    rw_decoder_emit (decoder, &values[i]);
  return found > 0;
}

static void
scpi_init (RwDecoder *decoder)
{
  rw_decoder_assume (decoder, RW_METER_UNIT_VOLT, RW_METER_MODE_DC);
}

const RwDecoderTextClass rw_decoder_scpi_class = {
  .parent = {
    .id = "scpi",
    .title = N_ ("SCPI instrument"),
    .usual = { .baud = 9600,
               .bits = 8,
               .parity = RW_PARITY_NONE,
               .stop_bits = 1,
               .dtr = TRUE,
               .rts = TRUE },
    .size = sizeof (RwDecoderText),
    .init = scpi_init,
    .feed = rw_decoder_text_feed,
    .end = rw_decoder_text_end,
    .restart = rw_decoder_text_restart,
  },
  .read_line = scpi_read_line,
};
