/* rw-log-decode.c: railwright-log decode --format ID [--json] < bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bytes go to the decoder a line at a time, so that what it did not understand can be named by
 * its line. Values are written as they come: the input may be a meter that is still running.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

#include "rw-decoder.h"
#include "rw-json-out.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-quantity.h"

static const guint complaints_shown = 20;

typedef struct
{
  RwDecoder *decoder;
  gboolean   json;
  GString   *out;  /* values not yet written */
  gulong     line; /* of the input, from 1 */
  gulong     bad;  /* frames or lines not understood so far */
  int        status;
} Decode;

/* --- a value as text ------------------------------------------------------------------------ */

typedef struct
{
  double      size;
  const char *symbol;
} Prefix;

static const Prefix prefixes[] = { { 1e6, "M" }, { 1e3, "k" }, { 1, "" }, { 1e-3, "m" },
                                   { 1e-6, "µ" }, { 1e-9, "n" }, { 1e-12, "p" } };

static const char *const symbols[RW_N_METER_UNITS] = { "", "V", "A", "Ω", "F", "Hz", "°C" };

/* The largest prefix that leaves at least 1 before the point; none for °C, and for nothing. */
static const Prefix *
pick_prefix (const RwMeterValue *value)
{
  static const Prefix none = { 1, "" };

  if (value->unit == RW_METER_UNIT_CELSIUS || value->unit == RW_METER_UNIT_NONE
      || value->value == 0)
    return &none;
  for (guint i = 0; i < G_N_ELEMENTS (prefixes); i++)
    if (fabs (value->value) >= prefixes[i].size * (1 - 1e-12))
      return &prefixes[i];
  return &none;
}

static void
append_text (const RwMeterValue *value,
             GString            *out)
{
  const char *mode = rw_meter_mode_to_id (value->mode);

  if (value->over)
    g_string_append_printf (out, "OL %s", symbols[value->unit]);
  else
    {
      const Prefix *prefix = pick_prefix (value);
      const int decimals = rw_quantity_decimals (value->step / prefix->size);
      g_autofree char *number = rw_quantity_format_number (value->value / prefix->size, decimals);

      g_string_append_printf (out, "%s %s%s", number, prefix->symbol, symbols[value->unit]);
    }
  if (mode != NULL)
    g_string_append_printf (out, " %s", mode);
  if (value->hold)
    g_string_append_printf (out, ", %s", _ ("hold"));
  if (value->low_battery)
    g_string_append_printf (out, ", %s", _ ("battery low"));
  g_string_append_c (out, '\n');
}

/* --- a value as JSON ------------------------------------------------------------------------ */

static void
append_json (const RwMeterValue *value,
             GString            *out)
{
  rw_json_out_open (out, '{');
  rw_json_out_number (out, "value", value->over ? (double) NAN : value->value);
  rw_json_out_string (out, "unit", rw_meter_unit_to_id (value->unit));
  rw_json_out_string (out, "mode", rw_meter_mode_to_id (value->mode));
  rw_json_out_number (out, "step", value->step);
  rw_json_out_boolean (out, "over", value->over);
  rw_json_out_boolean (out, "low_battery", value->low_battery);
  rw_json_out_boolean (out, "hold", value->hold);
  rw_json_out_close (out, '}');
  g_string_append_c (out, '\n');
}

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  Decode *self = data;

  if (self->json)
    append_json (value, self->out);
  else
    append_text (value, self->out);
}

/* --- the input ------------------------------------------------------------------------------ */

static void
complain (Decode *self)
{
  RwDecoderCounts counts;

  rw_decoder_get_counts (self->decoder, &counts);

  const gulong bad = (gulong) (counts.not_understood + counts.too_long);

  if (bad > self->bad && self->bad < complaints_shown)
    {
      const char *text = rw_decoder_get_last_bad (self->decoder);

      /* Translators: number of a line, what stands there. */
      rw_log_complain (_ ("line %lu: not understood: %s"), self->line, text != NULL ? text : "");
    }
  self->bad = bad;
}

static void
feed (Decode       *self,
      const guint8 *tainted,
      gsize         n)
{
  while (n > 0)
    {
      const guint8 *newline = memchr (tainted, '\n', n);
      const gsize length = newline != NULL ? (gsize) (newline - tainted) + 1 : n;

      rw_decoder_feed (self->decoder, tainted, length, value_cb, self);
      complain (self);
      self->line += newline != NULL;
      tainted += length;
      n -= length;
    }
}

static void
flush (Decode *self)
{
  if (self->out->len > 0 && rw_log_print (self->out->str, (gssize) self->out->len) != RW_LOG_DONE)
    self->status = RW_LOG_DAMAGED;
  g_string_truncate (self->out, 0);
}

static void
read_all (Decode *self)
{
  guint8 tainted[8192];
  gssize n;

  while ((n = read (STDIN_FILENO, tainted, sizeof tainted)) != 0 && self->status == RW_LOG_DONE)
    {
      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        {
          rw_log_complain (_ ("Cannot read standard input: %s"), g_strerror (errno));
          self->status = RW_LOG_DAMAGED;
          break;
        }
      feed (self, tainted, (gsize) n);
      flush (self);
    }
  rw_decoder_end (self->decoder, value_cb, self);
  complain (self);
  flush (self);
}

static int
decode (RwDecoder *decoder,
        gboolean   json)
{
  Decode self = { .decoder = decoder, .json = json, .out = g_string_new (NULL), .line = 1 };

  read_all (&self);
  g_string_free (self.out, TRUE);
  if (self.bad == 0)
    return self.status;
  rw_log_complain (g_dngettext (GETTEXT_PACKAGE, "%lu line or frame was not understood",
                                "%lu lines or frames were not understood", self.bad),
                   self.bad);
  return RW_LOG_DAMAGED;
}

static int
refuse_format (const char *format)
{
  g_autofree char *known = g_strjoinv (", ", (char **) rw_decoder_list_formats ());
  g_autofree char *message =
      format == NULL ? g_strdup_printf (_ ("--format is missing: one of %s"), known)
                     : g_strdup_printf (_ ("there is no format “%s”: one of %s"), format, known);

  return rw_log_wrong_usage ("decode", message);
}

int
rw_log_decode (int    argc,
               char **argv)
{
  g_autofree char *format = NULL;
  g_auto (GStrv) words = NULL;
  gboolean json = FALSE;
  const GOptionEntry entries[] = {
    { "format", 0, 0, G_OPTION_ARG_STRING, &format, N_ ("How the meter writes"), N_ ("ID") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_ ("One JSON object a reading"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("decode", N_ ("< BYTES"),
                             _ ("Reads the bytes of a meter on standard input and writes a line a "
                                "reading."),
                             entries, &argc, &argv))
    return RW_LOG_USAGE;
  if (words != NULL)
    return rw_log_wrong_usage ("decode",
                               _ ("bytes are read from standard input: no FILE is taken"));

  g_autoptr (RwDecoder) decoder = format != NULL ? rw_decoder_new (format) : NULL;

  if (decoder == NULL)
    return refuse_format (format);
  return decode (decoder, json);
}
