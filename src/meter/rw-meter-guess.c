/* rw-meter-guess.c: which format explains a capture, and how sure that is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each format is weighed against "none of them" by how many bits it takes to write the capture down (the
 * negative log2 of its likelihood):
 *
 *   noise       8 bits a byte
 *   other text  log2 (98) bits a printable byte or line end, 14 any other
 *   none        the cheaper of the two; c = its cost a byte
 *
 *   a frame format   each whole frame: log2 of the number of frames that the format allows (`free`);
 *                    each byte outside: c + 2, but c for what may be a cut frame at either end
 *     gain = w (c · explained − free · frames − 2 · outside)
 *
 *   lines            text, in which a meter's lines are readings 19 times in 20, anybody else's once in 20
 *     gain = w (none − text + log2 (.95/.05) · values − log2 (.95/.05) · not understood)
 *
 * So a frame, which has tens of bits that could have been otherwise, beats a line of text that explains the
 * same bytes, and nothing but text can be lines. A value that repeats the one before says little new: a
 * steady stranger repeats itself too. It counts 0.3 of a new one (that is w, the mean over the values).
 *
 * log2 odds against none = gain + prior. The chance ("sure") is 2^bits / (1 + Σ 2^bits) over the formats.
 *
 * Seven-bit lines read as 8N1: with a second stop bit bit 7 is always set; with parity all bytes are odd, or
 * all even, in their number of ones. Frames with odd parity are checked by their decoders. Text is looked at
 * with bit 7 taken off when one of the three rules holds for the capture.
 *
 * digits-11a and -11b explain the same bytes always. They are one answer, with sign_unsure.
 */
#include "config.h"

#include "rw-meter-guess.h"

#include <math.h>
#include <string.h>

static const double noise_bits = 8;
static const double text_bits = 6.6147; /* log2 (98): 95 printable, tab, CR, LF */
static const double odd_text_bits = 14;
static const double outside_bits = 2;
static const double line_bits = 4.2479; /* log2 (.95/.05) */
static const double repeat_weight = 0.3;
static const double frame_prior = -3;
static const double line_prior = -5;
static const double view_share = 0.97; /* of the bytes keep a parity rule; the rest is noise */
static const gsize view_least = 8;

/* free: digits log2 (10) each, flag bits 1 each, codes log2 of how many there are. */
typedef struct
{
  const char *id;
  guint       length; /* bytes */
  double      free;   /* bits */
} Frame;

static const Frame frames[] = {
  { "segments-14", 14, 40 }, /* 4 glyphs of 12, sign, 3 points, 22 flags */
  { "digits-14", 14, 43 },   /* 5 digits, 7 ranges, 12 functions, 20 flags */
  { "digits-11a", 11, 32 },  /* 4 digits, 7 ranges, 12 functions, 12 flags */
  { "digits-11b", 11, 32 },
  { "text-14", 14, 33 },     /* 8 modes, 7 characters of 14, 11 units */
  { "text-16", 16, 36 },     /* 25 units, display, sign, point, 8 digits */
};

/* The capture as text is to be looked at. */
typedef struct
{
  guint8  *bytes; /* owned */
  gsize    n;
  gboolean seven; /* bit 7 was taken off */
  RwParity parity;
  guint    stop_bits;
  double   text_cost; /* bits */
  double   none_cost; /* bits */
} View;

/* --- the view as text ---------------------------------------------------------------- */

static gboolean
keeps_rule (guint8   byte,
            RwParity parity)
{
  const gboolean odd = __builtin_parity (byte) != 0;

  if (parity == RW_PARITY_NONE)
    return (byte & 0x80) != 0;
  return odd == (parity == RW_PARITY_ODD);
}

static gboolean
find_rule (const guint8 *tainted,
           gsize         n,
           RwParity     *rule)
{
  static const RwParity rules[] = { RW_PARITY_NONE, RW_PARITY_ODD, RW_PARITY_EVEN };
  gboolean any_high = FALSE;

  for (gsize i = 0; i < n; i++)
    any_high |= (tainted[i] & 0x80) != 0;
  if (!any_high || n < view_least)
    return FALSE;
  for (guint r = 0; r < G_N_ELEMENTS (rules); r++)
    {
      gsize kept = 0;

      for (gsize i = 0; i < n; i++)
        kept += keeps_rule (tainted[i], rules[r]);
      *rule = rules[r];
      if ((double) kept >= view_share * (double) n)
        return TRUE;
    }
  return FALSE;
}

static double
get_text_cost (const guint8 *bytes,
               gsize         n)
{
  double cost = 0;

  for (gsize i = 0; i < n; i++)
    {
      const gboolean plain = g_ascii_isprint ((char) bytes[i]) || strchr ("\t\r\n", bytes[i]) != NULL;

      cost += plain && bytes[i] != '\0' ? text_bits : odd_text_bits;
    }
  return cost;
}

static View
make_view (const guint8 *tainted,
           gsize         n)
{
  View view = { .bytes = g_memdup2 (tainted, n), .n = n, .stop_bits = 1 };

  view.seven = find_rule (tainted, n, &view.parity);
  if (view.seven && view.parity == RW_PARITY_NONE)
    view.stop_bits = 2;
  for (gsize i = 0; i < n && view.seven; i++)
    view.bytes[i] &= 0x7F;
  view.text_cost = get_text_cost (view.bytes, n);
  view.none_cost = MIN (view.text_cost, noise_bits * (double) n);
  return view;
}

/* --- one format ---------------------------------------------------------------------- */

typedef struct
{
  RwMeterValue newest;
  guint        values;
  guint        fresh; /* values that do not repeat the one before */
} Tally;

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  Tally *tally = data;
  const RwMeterValue *old = &tally->newest;
  const gboolean same = tally->values > 0 && old->over == value->over && old->unit == value->unit
                        && (value->over || fabs (old->value - value->value) <= 0);

  tally->fresh += !same;
  tally->values++;
  tally->newest = *value;
}

static const Frame *
find_frame (const char *format)
{
  for (guint i = 0; i < G_N_ELEMENTS (frames); i++)
    if (g_str_equal (frames[i].id, format))
      return &frames[i];
  return NULL;
}

static double
weigh_frames (const Frame *frame,
              const View  *view,
              double       explained,
              gboolean     torn)
{
  const double cut = (torn ? 2 : 1) * (frame->length - 1.0);
  const double outside = MAX ((double) view->n - explained - cut, 0);
  const double each = view->none_cost / (double) view->n;

  return each * explained - frame->free * explained / frame->length - outside_bits * outside;
}

static double
weigh_lines (const View            *view,
             const RwDecoderCounts *counts)
{
  const guint64 bad = counts->not_understood + counts->too_long;

  return view->none_cost - view->text_cost + line_bits * (double) counts->values
         - line_bits * (double) bad;
}

/* Text is fed as the view has it; frames with parity check it themselves. */
static gboolean
wants_view (const RwSerialSettings *usual)
{
  return usual->bits == 8 || usual->parity == RW_PARITY_NONE;
}

static void
set_line (RwMeterGuess *guess,
          const Frame  *frame,
          const View   *view)
{
  guess->line = *rw_decoder_get_usual_line (guess->format);
  if (frame != NULL || !view->seven)
    return;
  guess->line.bits = 7;
  guess->line.parity = view->parity;
  guess->line.stop_bits = view->stop_bits;
}

static RwMeterGuess
weigh (const char   *format,
       const guint8 *tainted,
       const View   *view,
       gboolean      torn)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format);
  const Frame *frame = find_frame (format);
  const gboolean viewed = wants_view (rw_decoder_get_usual_line (format));
  RwMeterGuess guess = { .format = format };
  RwDecoderCounts counts;
  Tally tally = { 0 };

  if (torn)
    rw_decoder_restart (decoder, TRUE);
  rw_decoder_feed (decoder, viewed ? view->bytes : tainted, view->n, value_cb, &tally);
  rw_decoder_get_counts (decoder, &counts);

  const double n = (double) view->n;
  const double explained = MIN ((double) counts.bytes_explained, n);
  const double weight = tally.values == 0
                            ? 1
                            : (tally.fresh + repeat_weight * (tally.values - tally.fresh))
                                  / tally.values;
  const double gain
      = frame != NULL ? weigh_frames (frame, view, explained, torn) : weigh_lines (view, &counts);

  guess.bits = weight * gain + (frame != NULL ? frame_prior : line_prior);
  guess.explained = explained / n;
  guess.values = tally.values;
  guess.not_understood = (guint) MIN (counts.not_understood, G_MAXUINT);
  guess.newest = tally.newest;
  set_line (&guess, frame, view);
  return guess;
}

/* --- all formats --------------------------------------------------------------------- */

/* The minus is in one bit for -a, in another for -b, where the low battery is for the other: neither is
 * told. */
static void
make_unsure (RwMeterGuess *guess)
{
  guess->format = "digits-11a";
  guess->sign_unsure = TRUE;
  guess->newest.value = fabs (guess->newest.value);
  guess->newest.low_battery = FALSE;
}

static gboolean
is_unsure (const char *format)
{
  return g_str_equal (format, "digits-11a") || g_str_equal (format, "digits-11b");
}

static void
merge (RwMeterGuess       *into,
       const RwMeterGuess *other)
{
  const gboolean modes_differ = into->values > 0 && other->values > 0
                                && into->newest.mode != other->newest.mode;

  if (other->bits > into->bits)
    *into = *other;
  if (modes_differ)
    into->newest.mode = RW_METER_MODE_NONE;
}

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const double first = ((const RwMeterGuess *) a)->bits;
  const double second = ((const RwMeterGuess *) b)->bits;

  return first > second ? -1 : first < second;
}

static void
fill_sure (GArray *ranking)
{
  g_autofree double *bits = g_new (double, ranking->len);

  for (guint i = 0; i < ranking->len; i++)
    bits[i] = g_array_index (ranking, RwMeterGuess, i).bits;
  for (guint i = 0; i < ranking->len; i++)
    g_array_index (ranking, RwMeterGuess, i).sure
        = rw_meter_guess_get_sure (bits, ranking->len, i);
}

GArray *
rw_meter_guess_rank (const guint8 *tainted,
                     gsize         n,
                     gboolean      torn)
{
  GArray *ranking = g_array_new (FALSE, FALSE, sizeof (RwMeterGuess));
  const char *const *formats = rw_decoder_list_formats ();
  gint unsure_at = -1;

  if (n == 0)
    return ranking;

  View view = make_view (tainted, n);

  for (guint i = 0; formats[i] != NULL; i++)
    {
      if (g_str_equal (formats[i], "scpi"))
        continue;

      RwMeterGuess guess = weigh (formats[i], tainted, &view, torn);

      if (is_unsure (formats[i]))
        make_unsure (&guess);
      if (guess.sign_unsure && unsure_at >= 0)
        {
          merge (&g_array_index (ranking, RwMeterGuess, unsure_at), &guess);
          continue;
        }
      if (guess.sign_unsure)
        unsure_at = (gint) ranking->len;
      g_array_append_val (ranking, guess);
    }
  g_free (view.bytes);
  fill_sure (ranking);
  g_array_sort (ranking, compare);
  return ranking;
}

double
rw_meter_guess_get_sure (const double *bits,
                         guint         n,
                         guint         i)
{
  double most = 0; /* none of them */
  double sum;

  for (guint k = 0; k < n; k++)
    most = MAX (most, bits[k]);
  sum = exp2 (-most);
  for (guint k = 0; k < n; k++)
    sum += exp2 (bits[k] - most);
  return exp2 (bits[i] - most) / sum;
}
