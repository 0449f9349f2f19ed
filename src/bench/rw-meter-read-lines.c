/* rw-meter-read-lines.c: what each line of a captured text is read as.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each line goes to a decoder of its own, so that what one line says does not change how the next is read.
 */
#include "config.h"

#include "rw-meter-read-lines.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-decoder.h"
#include "rw-meter-words.h"

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  GString *out = data;
  g_autofree char *words = rw_meter_words_value (value, FALSE);

  g_string_append_printf (out, "%s%s", out->len > 0 ? "; " : "", words);
}

static char *
read_line (const RwDecoder *like,
           const char      *line)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new_like (like);
  GString *out = g_string_new (NULL);

  rw_decoder_feed (decoder, (const guint8 *) line, strlen (line), value_cb, out);
  rw_decoder_end (decoder, value_cb, out);
  if (out->len == 0)
    {
      const char *bad = rw_decoder_get_last_bad (decoder);

      /* Translators: a line that a meter sent. */
      g_string_append_printf (out, _ ("not understood: “%s”"), bad != NULL ? bad : line);
    }
  return g_string_free (out, FALSE);
}

char *
rw_meter_read_lines (const char *text,
                     const char *pattern,
                     char        mark,
                     guint       most,
                     GError    **error)
{
  g_autoptr (RwDecoder) like = rw_decoder_new ("lines");
  g_auto (GStrv) lines = g_strsplit_set (text, "\r\n", -1);
  GString *out = g_string_new (NULL);

  rw_decoder_set_decimal_mark (like, mark);
  if (!rw_decoder_set_pattern (like, pattern, error))
    {
      g_string_free (out, TRUE);
      return NULL;
    }
  for (guint i = 0, n = 0; lines[i] != NULL && n < most; i++)
    {
      if (*lines[i] == '\0')
        continue;

      g_autofree char *words = read_line (like, lines[i]);

      g_string_append_printf (out, "%s%s", n > 0 ? "\n" : "", words);
      n++;
    }
  return g_string_free (out, FALSE);
}
