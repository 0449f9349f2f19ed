/* fuzz-line-pattern.c: fuzz target for a user's description of a line, and lines it is tried on.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The input is the pattern, a newline, and lines. Whatever they are:
 *  1. the pattern is taken, or refused with a reason that can be shown;
 *  2. one made from the text that a pattern kept has the same text and reads the same;
 *  3. a value that was read is finite or over, with a step that is not negative and a known unit;
 *  4. lines fed whole and singly give as many values; time is bounded (libFuzzer's own clock).
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "rw-decoder.h"
#include "rw-line-pattern.h"
#include "rw-line-text.h"

typedef struct
{
  double sum; /* of the values that are not over */
  guint  n;
} Tally;

static void
tally_cb (const RwMeterValue *value,
          gpointer            data)
{
  Tally *tally = data;

  fuzz_expect (value->unit > RW_METER_UNIT_NONE && value->unit < RW_N_METER_UNITS);
  fuzz_expect (value->over ? isnan (value->value) : isfinite (value->value));
  fuzz_expect (isfinite (value->step) && value->step >= 0);
  tally->n++;
  if (!value->over)
    tally->sum += value->value / 1e30;
}

static void
feed (const char    *pattern,
      char           mark,
      const uint8_t *lines,
      size_t         size,
      size_t         piece,
      Tally         *tally)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autoptr (GError) error = NULL;

  fuzz_expect (rw_decoder_set_pattern (decoder, pattern, &error) && error == NULL);
  rw_decoder_set_decimal_mark (decoder, mark);
  for (size_t at = 0; at < size; at += piece)
    rw_decoder_feed (decoder, lines + at, MIN (piece, size - at), tally_cb, tally);
  rw_decoder_end (decoder, tally_cb, tally);
}

static void
check_lines (const char    *pattern,
             char           mark,
             const uint8_t *lines,
             size_t         size)
{
  Tally whole = { 0 }, singly = { 0 };

  feed (pattern, mark, lines, size, MAX (size, 1), &whole);
  feed (pattern, mark, lines, size, 1, &singly);
  fuzz_expect (whole.n == singly.n && whole.sum == singly.sum);
}

/* One line, straight through the pattern and a second one made of its text. */
static void
check_line (const RwLinePattern *pattern,
            const uint8_t       *line,
            size_t               size)
{
  g_autoptr (RwLinePattern) again = rw_line_pattern_new (rw_line_pattern_get_text (pattern), NULL);
  char clean[RW_LINE_TEXT_MAX];
  gsize n;

  fuzz_expect (again != NULL);
  fuzz_expect (g_str_equal (rw_line_pattern_get_text (again), rw_line_pattern_get_text (pattern)));
  if (size > RW_LINE_BUFFER_MAX || !rw_line_text_clean ((const char *) line, size, clean, &n))
    return;
  fuzz_expect (g_utf8_validate (clean, (gssize) n, NULL));

  uint8_t *alone = fuzz_alone ((const uint8_t *) clean, n + 1); /* with its NUL */
  RwLineFields first = { 0 }, second = { 0 };
  const gboolean found = rw_line_pattern_read (pattern, (const char *) alone, n, '.', &first);

  fuzz_expect (rw_line_pattern_read (again, (const char *) alone, n, '.', &second) == found);
  free (alone);
  if (!found)
    return;
  fuzz_expect (first.has_number || first.over);
  fuzz_expect (first.has_number == second.has_number && first.over == second.over
               && first.has_unit == second.has_unit && first.negative == second.negative);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  const uint8_t *newline = size > 0 ? memchr (data, '\n', size) : NULL;
  const size_t length = newline != NULL ? (size_t) (newline - data) : size;
  g_autofree char *text = g_strndup ((const char *) data, length);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwLinePattern) pattern = rw_line_pattern_new (text, &error);

  if (pattern == NULL)
    {
      fuzz_expect (error != NULL && error->domain == RW_DECODER_ERROR);
      fuzz_expect (*error->message != '\0');
      if (g_utf8_validate (text, -1, NULL))
        fuzz_expect_text (error->message);
      return 0;
    }
  fuzz_expect (error == NULL);
  fuzz_expect_text (rw_line_pattern_get_text (pattern));
  if (newline == NULL)
    return 0;
  check_line (pattern, newline + 1, size - length - 1);
  check_lines (text, '.', newline + 1, size - length - 1);
  check_lines (text, ',', newline + 1, size - length - 1);
  return 0;
}
