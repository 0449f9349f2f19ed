/* rw-log-decode.c: railwright-log decode --format ID [OPTION...] < bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Values are written as they come: the input may be a meter that is still running. Bytes go to
 * the decoder singly, so that what it did not understand can be named by its place: the line in
 * which it was noticed for formats that are text, else the first byte behind what was understood
 * or complained of before.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <unistd.h>

#include "rw-decoder.h"
#include "rw-log-io.h"
#include "rw-log-options.h"
#include "rw-log-value.h"

static const guint complaints_shown = 20;

typedef struct
{
  RwDecoder      *decoder;
  gboolean        json;
  gboolean        by_line; /* places are lines, not bytes */
  GString        *out;     /* values not yet written */
  RwDecoderCounts counts;  /* at the last look */
  gulong          line;    /* of the next byte, from 1 */
  gulong          offset;  /* of the next byte, from 0 */
  gulong          since;   /* offset behind what was understood or complained of last */
  gulong          bad;     /* frames or lines not understood so far */
  gboolean        after_cr;
  int             status;
} Decode;

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  Decode *self = data;

  if (self->json)
    rw_log_value_append_json (value, self->out);
  else
    rw_log_value_append_text (value, self->out);
}

/* --- what was not understood ---------------------------------------------------------------- */

static char *
dup_place (const Decode *self)
{
  /* Translators: number of a line of the input; then: offset of a byte in it, from 0. */
  return self->by_line ? g_strdup_printf (_ ("line %lu"), self->line)
                       : g_strdup_printf (_ ("byte %lu"), self->since);
}

static void
complain (Decode                *self,
          const RwDecoderCounts *counts)
{
  const guint64 bad = counts->not_understood - self->counts.not_understood;
  const guint64 too_long = counts->too_long - self->counts.too_long;
  const char *text = rw_decoder_get_last_bad (self->decoder);
  g_autofree char *place = NULL;

  if (bad + too_long == 0)
    return;
  place = dup_place (self);
  if (self->bad < complaints_shown && bad > 0)
    /* Translators: "line 2" or "byte 14"; what stands there. */
    rw_log_complain (_ ("%s: not understood: %s"), place, text != NULL ? text : "");
  if (self->bad < complaints_shown && too_long > 0)
    rw_log_complain (_ ("%s: not understood: longer than any reading"), place);
  self->bad += (gulong) (bad + too_long);
}

/* Called behind each byte, and at the end. */
static void
look (Decode *self)
{
  RwDecoderCounts counts;

  rw_decoder_get_counts (self->decoder, &counts);
  if (memcmp (&counts, &self->counts, sizeof counts) == 0)
    return;
  complain (self, &counts);
  self->counts = counts;
  self->since = self->offset;
}

/* --- the input ------------------------------------------------------------------------------ */

/* CR, LF or both end a line, as the decoders have it. The LF of CR LF is still of that line. */
static void
count_line (Decode *self,
            guint8  byte)
{
  self->line += byte == '\r' || (byte == '\n' && !self->after_cr);
  self->after_cr = byte == '\r';
}

static void
feed (Decode       *self,
      const guint8 *tainted,
      gsize         n)
{
  for (gsize i = 0; i < n; i++)
    {
      rw_decoder_feed (self->decoder, tainted + i, 1, value_cb, self);
      self->offset++;
      look (self);
      count_line (self, tainted[i]);
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

  while (self->status == RW_LOG_DONE && (n = read (STDIN_FILENO, tainted, sizeof tainted)) != 0)
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
  if (self->status != RW_LOG_DONE)
    return;
  rw_decoder_end (self->decoder, value_cb, self);
  look (self);
  flush (self);
}

/* What the whole run comes to, on standard error. */
static int
sum_up (const Decode *self)
{
  const gulong doubted = (gulong) self->counts.doubted;

  if (doubted > 0)
    rw_log_complain (g_dngettext (GETTEXT_PACKAGE,
                                  "%lu frame was left out: no other one agreed with it",
                                  "%lu frames were left out: no other ones agreed with them",
                                  doubted),
                     doubted);
  if (self->bad == 0)
    return self->status;
  rw_log_complain (g_dngettext (GETTEXT_PACKAGE, "%lu line or frame was not understood",
                                "%lu lines or frames were not understood", self->bad),
                   self->bad);
  return RW_LOG_DAMAGED;
}

static gboolean
is_text (const char *format)
{
  static const char *const text_formats[] = { "lines", "scpi", "text-14", "text-16", NULL };

  return g_strv_contains (text_formats, format);
}

static int
decode (RwDecoder *decoder,
        gboolean   json)
{
  Decode self = { .decoder = decoder,
                  .json = json,
                  .by_line = is_text (rw_decoder_get_format (decoder)),
                  .out = g_string_new (NULL),
                  .line = 1 };

  read_all (&self);
  g_string_free (self.out, TRUE);
  return sum_up (&self);
}

/* --- the options ---------------------------------------------------------------------------- */

static int
refuse_format (const char *format)
{
  g_autofree char *known = g_strjoinv (", ", (char **) rw_decoder_list_formats ());
  g_autofree char *message =
      format == NULL ? g_strdup_printf (_ ("--format is missing: one of %s"), known)
                     : g_strdup_printf (_ ("there is no format “%s”: one of %s"), format, known);

  return rw_log_wrong_usage ("decode", message);
}

static char *
list_formats (void)
{
  GString *list = g_string_new (_ ("Reads the bytes of a meter on standard input and writes a line "
                                   "a reading."));

  g_string_append_printf (list, "\n\n%s", _ ("Formats:"));
  for (const char *const *id = rw_decoder_list_formats (); *id != NULL; id++)
    g_string_append_printf (list, "\n  %-12s %s", *id, rw_decoder_get_title (*id));
  return g_string_free (list, FALSE);
}

/* RW_LOG_DONE, or RW_LOG_USAGE when that has been said. Either word may be NULL. */
static int
set_options (RwDecoder  *decoder,
             const char *pattern,
             const char *mark)
{
  g_autoptr (GError) error = NULL;

  if (mark != NULL && !g_str_equal (mark, ".") && !g_str_equal (mark, ","))
    return rw_log_wrong_usage ("decode", _ ("--decimal-mark is either . or ,"));
  if (mark != NULL)
    rw_decoder_set_decimal_mark (decoder, mark[0]);
  if (pattern == NULL || rw_decoder_set_pattern (decoder, pattern, &error))
    return RW_LOG_DONE;
  rw_log_complain ("railwright-log decode: --pattern: %s", error->message);
  return RW_LOG_USAGE;
}

int
rw_log_decode (int    argc,
               char **argv)
{
  g_autofree char *format = NULL;
  g_autofree char *pattern = NULL;
  g_autofree char *mark = NULL;
  g_autofree char *summary = list_formats ();
  g_auto (GStrv) words = NULL;
  gboolean json = FALSE;
  const GOptionEntry entries[] = {
    { "format", 0, 0, G_OPTION_ARG_STRING, &format, N_ ("How the meter writes"), N_ ("ID") },
    { "pattern", 0, 0, G_OPTION_ARG_STRING, &pattern,
      N_ ("What a line looks like, such as “{number} {unit}” (lines)"), N_ ("TEXT") },
    { "decimal-mark", 0, 0, G_OPTION_ARG_STRING, &mark,
      N_ ("What stands before the decimals: . or , (lines)"), N_ ("MARK") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &json, N_ ("One JSON object a reading"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("decode", N_ ("< BYTES"), summary, entries, &argc, &argv))
    return RW_LOG_USAGE;
  if (words != NULL)
    return rw_log_wrong_usage ("decode",
                               _ ("bytes are read from standard input: no FILE is taken"));

  g_autoptr (RwDecoder) decoder = format != NULL ? rw_decoder_new (format) : NULL;

  if (decoder == NULL)
    return refuse_format (format);

  const int status = set_options (decoder, pattern, mark);

  return status == RW_LOG_DONE ? decode (decoder, json) : status;
}
