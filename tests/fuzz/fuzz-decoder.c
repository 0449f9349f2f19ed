/* fuzz-decoder.c: fuzz target for one format of meter; FUZZ_FORMAT is its id.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever bytes come, and with every option:
 *  1. fed whole, in pieces or singly they give the same values, counts and last complaint;
 *  2. a value is finite or over, its step is not negative, its unit and mode are known;
 *  3. no count ever goes down, and as many values are counted as are handed out;
 *  4. what was not understood can be shown to people;
 *  5. an end or a restart between any two bytes does no harm.
 * Where to cut, end and restart follows from the bytes themselves, so that an input is nothing but
 * bytes: the file of a crash can be handed to railwright-log decode as it is.
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "rw-decoder.h"

typedef struct
{
  RwDecoder      *decoder;
  GArray         *values; /* of RwMeterValue */
  RwDecoderCounts counts; /* at the last look */
} Run;

/* --- what holds for every run --------------------------------------------------------------- */

static void
check_value (const RwMeterValue *value)
{
  fuzz_expect (value->unit > RW_METER_UNIT_NONE && value->unit < RW_N_METER_UNITS);
  fuzz_expect (value->mode >= RW_METER_MODE_NONE && value->mode < RW_N_METER_MODES);
  fuzz_expect (value->over ? isnan (value->value) : isfinite (value->value));
  fuzz_expect (isfinite (value->step) && value->step >= 0);
}

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  Run *run = data;

  check_value (value);
  g_array_append_val (run->values, *value);
}

/* The counts are nothing but guint64, however many there are. */
G_STATIC_ASSERT (sizeof (RwDecoderCounts) % sizeof (guint64) == 0);
#define N_COUNTS (sizeof (RwDecoderCounts) / sizeof (guint64))

static void
check_counts (Run *run)
{
  RwDecoderCounts now;
  guint64 before[N_COUNTS], after[N_COUNTS];
  const char *bad = rw_decoder_get_last_bad (run->decoder);

  rw_decoder_get_counts (run->decoder, &now);
  memcpy (before, &run->counts, sizeof before);
  memcpy (after, &now, sizeof after);
  for (guint i = 0; i < N_COUNTS; i++)
    fuzz_expect (after[i] >= before[i]);
  fuzz_expect (now.values == run->values->len);
  fuzz_expect (bad != NULL || now.not_understood == 0);
  if (bad != NULL)
    fuzz_expect (g_utf8_validate (bad, -1, NULL));
  run->counts = now;
}

static void
run_begin (Run             *run,
           const RwDecoder *like)
{
  *run = (Run){ .decoder = rw_decoder_new_like (like),
                .values = g_array_new (FALSE, FALSE, sizeof (RwMeterValue)) };
}

static void
run_feed (Run           *run,
          const uint8_t *data,
          size_t         size)
{
  uint8_t *alone = fuzz_alone (data, size);

  rw_decoder_feed (run->decoder, alone, size, value_cb, run);
  free (alone);
  check_counts (run);
}

static void
run_end (Run *run)
{
  rw_decoder_end (run->decoder, value_cb, run);
  check_counts (run);
}

static void
run_clear (Run *run)
{
  rw_decoder_free (run->decoder);
  g_array_unref (run->values);
}

/* --- the same whatever the pieces ----------------------------------------------------------- */

/* The bits of NaN and of −0 may differ where the values do not. */
static void
expect_same_value (const RwMeterValue *a,
                   const RwMeterValue *b)
{
  fuzz_expect (a->value == b->value || (isnan (a->value) && isnan (b->value)));
  fuzz_expect (a->step == b->step && a->unit == b->unit && a->mode == b->mode);
  fuzz_expect (a->over == b->over && a->low_battery == b->low_battery && a->hold == b->hold);
}

static void
expect_same_run (const Run *a,
                 const Run *b)
{
  fuzz_expect (a->values->len == b->values->len);
  for (guint i = 0; i < a->values->len; i++)
    expect_same_value (&g_array_index (a->values, RwMeterValue, i),
                       &g_array_index (b->values, RwMeterValue, i));
  fuzz_expect (memcmp (&a->counts, &b->counts, sizeof a->counts) == 0);
  fuzz_expect (g_strcmp0 (rw_decoder_get_last_bad (a->decoder),
                          rw_decoder_get_last_bad (b->decoder)) == 0);
}

/* Bytes of the piece that begins here: now and then none at all. */
static size_t
piece_at (const uint8_t *data,
          size_t         size,
          size_t         at)
{
  return MIN ((data[at] * 7u + at * 13u) % 23u, size - at);
}

static void
feed_pieces (Run           *run,
             const uint8_t *data,
             size_t         size)
{
  for (size_t at = 0; at < size;)
    {
      const size_t piece = piece_at (data, size, at);

      run_feed (run, data + at, piece);
      if (piece == 0)
        run_feed (run, data + at, 1);
      at += MAX (piece, 1);
    }
}

/* Straight from the input, for speed: feed_pieces looks for reads past the end. */
static void
feed_singly (Run           *run,
             const uint8_t *data,
             size_t         size)
{
  for (size_t at = 0; at < size; at++)
    {
      rw_decoder_feed (run->decoder, data + at, 1, value_cb, run);
      check_counts (run);
    }
}

typedef void (*FeedFunc) (Run *run, const uint8_t *data, size_t size);

static void
check_same (const RwDecoder *like,
            FeedFunc         feed,
            const uint8_t   *data,
            size_t           size)
{
  Run whole, cut;

  run_begin (&whole, like);
  run_begin (&cut, like);
  run_feed (&whole, data, size);
  feed (&cut, data, size);
  expect_same_run (&whole, &cut);
  run_end (&whole);
  run_end (&cut);
  expect_same_run (&whole, &cut);
  run_clear (&whole);
  run_clear (&cut);
}

/* --- cut at any moment ---------------------------------------------------------------------- */

static void
check_interruptions (const RwDecoder *like,
                     const uint8_t   *data,
                     size_t           size)
{
  Run run;

  run_begin (&run, like);
  for (size_t at = 0; at < size;)
    {
      const size_t piece = MAX (piece_at (data, size, at), 1);

      run_feed (&run, data + at, piece);
      at += piece;
      switch ((data[at - 1] + at) % 5)
        {
        case 0:
          run_end (&run);
          break;
        case 1:
          rw_decoder_restart (run.decoder, TRUE);
          break;
        case 2:
          rw_decoder_restart (run.decoder, FALSE);
          break;
        default:
          break;
        }
      check_counts (&run);
    }
  run_end (&run);
  run_end (&run);
  run_clear (&run);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autoptr (RwDecoder) usual = rw_decoder_new (FUZZ_FORMAT);
  g_autoptr (RwDecoder) other = rw_decoder_new (FUZZ_FORMAT);

  fuzz_expect (usual != NULL && other != NULL);
  rw_decoder_set_decimal_mark (other, ',');
  rw_decoder_assume (other, RW_METER_UNIT_OHM, RW_METER_MODE_NONE);
  check_same (usual, feed_pieces, data, size);
  check_same (usual, feed_singly, data, size);
  check_same (other, feed_pieces, data, size);
  check_interruptions (usual, data, size);
  return 0;
}
