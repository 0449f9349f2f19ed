/* decoder-probe.c: for tests: feeds a decoder and writes down what comes out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "decoder-probe.h"

#include <math.h>
#include <string.h>

static void
write_down (const RwMeterValue *value,
            gpointer            data)
{
  GString *out = data;
  const char *unit = rw_meter_unit_to_id (value->unit);
  const char *mode = rw_meter_mode_to_id (value->mode);
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  char step[G_ASCII_DTOSTR_BUF_SIZE];

  g_assert_true (value->over == (isnan (value->value) != 0));
  g_string_append_printf (
      out, "%s %s %s step %s%s%s%s\n",
      value->over ? "-" : g_ascii_formatd (number, sizeof number, "%.15g", value->value),
      unit != NULL ? unit : "none", mode != NULL ? mode : "none",
      g_ascii_formatd (step, sizeof step, "%.15g", value->step), value->over ? " over" : "",
      value->low_battery ? " low" : "", value->hold ? " hold" : "");
}

char *
decoder_probe_run (RwDecoder  *decoder,
                   const char *bytes,
                   gsize       n,
                   gsize       chunk,
                   gboolean    end)
{
  GString *out = g_string_new (NULL);

  for (gsize at = 0; at < n; at += chunk)
    {
      /* A copy of exactly the size, so that a read past its end is caught by the sanitizer. */
      const gsize size = MIN (chunk, n - at);
      g_autofree guint8 *piece = g_memdup2 (bytes + at, size);

      rw_decoder_feed (decoder, piece, size, write_down, out);
    }
  if (end)
    rw_decoder_end (decoder, write_down, out);
  return g_string_free (out, FALSE);
}

static void
collect (const RwMeterValue *value,
         gpointer            data)
{
  g_array_append_vals (data, value, 1);
}

GArray *
decoder_probe_values (RwDecoder        *decoder,
                      const GByteArray *bytes,
                      gboolean          end)
{
  GArray *values = g_array_new (FALSE, FALSE, sizeof (RwMeterValue));

  rw_decoder_feed (decoder, bytes->data, bytes->len, collect, values);
  if (end)
    rw_decoder_end (decoder, collect, values);
  return values;
}

char *
decoder_probe_text (const char *format_id,
                    const char *text)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format_id);

  return decoder_probe_run (decoder, text, strlen (text), strlen (text) + 1, FALSE);
}
