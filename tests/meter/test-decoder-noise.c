/* test-decoder-noise.c: bad bytes on the line, and what of a live value comes through.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every byte of every frame of a stream is made every other byte, dropped and doubled. Only
 * what the meter showed may come out.
 */
#include "config.h"

#include <string.h>

#include "decoder-probe.h"
#include "frame-encoder.h"

typedef struct
{
  const char *format_id;
  void (*add_bits) (GByteArray *bytes); /* nullable */
} Wire;

static const Wire wires[] = {
  { "segments-14" },
  { "digits-14" },
  { "digits-14", frame_add_parity },
  { "digits-11a" },
  { "digits-11a", frame_add_parity },
  { "digits-11b" },
  { "text-14" },
  { "text-14", frame_add_ones },
  { "text-16" },
};

/* Frames of one display after the other, and where each begins. */
static GByteArray *
make_stream (const Wire      *wire,
             const FrameShow *shows,
             guint            n)
{
  GByteArray *stream = g_byte_array_new ();

  for (guint i = 0; i < n; i++)
    g_assert_true (frame_encode (wire->format_id, &shows[i], stream));
  if (wire->add_bits != NULL)
    wire->add_bits (stream);
  return stream;
}

static void
fill (FrameShow       *shows,
      guint            n,
      const FrameShow *show)
{
  for (guint i = 0; i < n; i++)
    shows[i] = *show;
}

/* --- one bad byte -------------------------------------------------------------------- */

/* What may come out. */
typedef struct
{
  const Wire      *wire;
  const FrameShow *shows[2];
  double           values[2]; /* in the base unit */
  guint            at_least;  /* so many */
} Expectation;

typedef struct
{
  const Expectation *wanted;
  guint              n;
  gboolean           wrong;
  RwMeterValue       odd; /* the last wrong one */
} Seen;

static gboolean
is_shown (const RwMeterValue *value,
          const Expectation  *wanted,
          guint               i)
{
  const FrameShow *show = wanted->shows[i];
  const char *mode = rw_meter_mode_to_id (value->mode);

  return value->over == show->over && (show->over || value->value == wanted->values[i])
         && g_str_equal (rw_meter_unit_to_id (value->unit), frame_show_get_unit (show))
         && g_str_equal (mode != NULL ? mode : "none", show->mode)
         && value->low_battery == show->low_battery && value->hold == show->hold;
}

static void
see (const RwMeterValue *value,
     gpointer            data)
{
  Seen *seen = data;

  seen->n++;
  if (is_shown (value, seen->wanted, 0) || is_shown (value, seen->wanted, 1))
    return;
  seen->wrong = TRUE;
  seen->odd = *value;
}

static void
check_stream (const Expectation *wanted,
              const GByteArray  *stream,
              guint              at)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (wanted->wire->format_id);
  Seen seen = { .wanted = wanted };

  rw_decoder_feed (decoder, stream->data, stream->len, see, &seen);
  rw_decoder_end (decoder, see, &seen);
  if (seen.wrong)
    {
      g_test_message ("%s: %.15g came of %.15g and %.15g, a bad byte %u",
                      wanted->wire->format_id, seen.odd.value, wanted->values[0],
                      wanted->values[1], at);
      g_test_fail ();
    }
  g_assert_cmpuint (seen.n, >=, wanted->at_least);
}

static void
check_every_byte (const Expectation *wanted,
                  const GByteArray  *stream)
{
  g_autoptr (GByteArray) rough = g_byte_array_new ();

  for (guint at = 0; at < stream->len; at++)
    {
      g_byte_array_set_size (rough, 0);
      g_byte_array_append (rough, stream->data, stream->len);
      for (guint change = 1; change < 256; change++)
        {
          rough->data[at] = (guint8) (stream->data[at] ^ change);
          check_stream (wanted, rough, at);
        }
      rough->data[at] = stream->data[at];
      g_byte_array_remove_index (rough, at);
      check_stream (wanted, rough, at);

      g_byte_array_set_size (rough, 0);
      g_byte_array_append (rough, stream->data, at + 1);
      g_byte_array_append (rough, stream->data + at, stream->len - at);
      check_stream (wanted, rough, at);
    }
}

static void
check_shows (const Wire      *wire,
             const FrameShow *shows,
             guint            n,
             guint            at_least)
{
  const FrameShow *last = &shows[n - 1];
  const Expectation wanted = { wire,
                               { shows, last },
                               { frame_show_get_value (shows), frame_show_get_value (last) },
                               at_least };
  g_autoptr (GByteArray) stream = make_stream (wire, shows, n);

  check_every_byte (&wanted, stream);
}

static void
check_steady (const Wire      *wire,
              const FrameShow *show,
              guint            n)
{
  FrameShow shows[8];

  fill (shows, n, show);
  check_shows (wire, shows, n, n - 2);
}

/* A bad end of a frame costs two of them; nothing costs more. */
static void
test_steady (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (51);

  for (guint w = 0; w < G_N_ELEMENTS (wires); w++)
    for (guint i = 0; i < 2; i++)
      {
        FrameShow show;

        frame_show_random (wires[w].format_id, rand, &show);
        check_steady (&wires[w], &show, i == 0 ? 4 : 5);
      }
}

/* The displays that differ from others by one segment or one bit. */
static void
test_steady_neighbours (void)
{
  static const FrameShow shows[] = {
    { .unit = "V", .mode = "dc", .counts = 8888, .decimals = 2 },
    { .unit = "V", .mode = "dc", .counts = 565, .decimals = 2 },
    { .unit = "V", .mode = "dc", .counts = 1717, .decimals = 2, .negative = TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (shows); i++)
    {
      check_steady (&wires[0], &shows[i], 5);
      check_steady (&wires[5], &shows[i], 5);
    }
}

static void
check_jump (const Wire      *wire,
            const FrameShow *from,
            const FrameShow *to)
{
  FrameShow shows[6];

  fill (shows, 3, from);
  fill (shows + 3, 3, to);
  check_shows (wire, shows, 6, 2);
}

/* Three frames of one display and three of another: nothing in between, however near or far
 * they are. */
static void
test_jump (void)
{
  static const gint steps[] = { 1, 2, 3, 5, 40, 700, -2, -300 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (52);

  for (guint w = 0; w < G_N_ELEMENTS (wires); w++)
    for (guint i = w % 4; i < G_N_ELEMENTS (steps); i += 4)
      {
        FrameShow from;
        FrameShow to;

        do
          frame_show_random (wires[w].format_id, rand, &from);
        while (from.over || from.counts < 900 || from.counts > 9000);
        to = from;
        to.counts = (guint) ((gint) to.counts + steps[i]);
        check_jump (&wires[w], &from, &to);
        if (i < 4)
          {
            frame_show_random (wires[w].format_id, rand, &to);
            check_jump (&wires[w], &from, &to);
          }
      }
}

/* --- changes ------------------------------------------------------------------------- */

static char *
run_shows (const Wire      *wire,
           const FrameShow *shows,
           guint            n,
           RwDecoderCounts *counts)
{
  g_autoptr (GByteArray) stream = make_stream (wire, shows, n);
  g_autoptr (RwDecoder) decoder = rw_decoder_new (wire->format_id);
  char *got = decoder_probe_run (decoder, (const char *) stream->data, stream->len, 7, TRUE);

  rw_decoder_get_counts (decoder, counts);
  return got;
}

/* Four of A, one or two of B, four of A: one is noise, two are a change. */
static void
check_change (const Wire      *wire,
              const FrameShow *a,
              const FrameShow *b)
{
  g_autofree char *text_b = frame_show_to_probe (b);
  FrameShow shows[10];
  RwDecoderCounts counts;

  fill (shows, 10, a);
  shows[4] = *b;

  g_autofree char *one = run_shows (wire, shows, 9, &counts);

  g_assert_null (strstr (one, text_b));
  g_assert_cmpuint (counts.values, ==, 8);
  g_assert_cmpuint (counts.doubted, ==, 1);
  shows[5] = *b;

  g_autofree char *two = run_shows (wire, shows, 10, &counts);

  g_assert_nonnull (strstr (two, text_b));
  g_assert_cmpuint (counts.values, ==, 10);
  g_assert_cmpuint (counts.doubted, ==, 0);
}

static void
test_changes (void)
{
  static const FrameShow a
      = { .unit = "V", .mode = "dc", .counts = 1206, .decimals = 2 };

  for (guint w = 0; w < 6; w++)
    {
      FrameShow base = a;

      if (g_str_equal (wires[w].format_id, "digits-14"))
        base.decimals = 3;

      FrameShow sign = base;
      FrameShow range = base;
      FrameShow over = base;
      FrameShow low = base;
      FrameShow near = base;

      sign.negative = TRUE;
      range.decimals++;
      over.over = TRUE;
      over.counts = 0;
      low.low_battery = TRUE;
      near.counts++;
      check_change (&wires[w], &base, &sign);
      check_change (&wires[w], &base, &range);
      check_change (&wires[w], &base, &over);
      check_change (&wires[w], &base, &low);
      check_change (&wires[w], &base, &near);
    }
}

/* --- live values --------------------------------------------------------------------- */

/* The share of frames that come out, in per cent. */
static double
get_share (const Wire  *wire,
           const guint *counts,
           guint        n)
{
  g_autofree FrameShow *shows = g_new0 (FrameShow, n);
  RwDecoderCounts seen;

  for (guint i = 0; i < n; i++)
    shows[i] = (FrameShow){ .unit = "V", .mode = "dc", .counts = counts[i], .decimals = 3 };

  g_autofree char *got = run_shows (wire, shows, n, &seen);

  g_assert_cmpuint (seen.values + seen.doubted, <=, n);
  g_assert_cmpuint (seen.not_understood, ==, 0);
  return 100.0 * (double) seen.values / n;
}

typedef guint (*SignalFunc) (guint i, GRand *rand);

static guint
wavers_by_1 (guint  i,
             GRand *rand)
{
  return (guint) g_rand_int_range (rand, 5011, 5014);
}

static guint
wavers_by_2 (guint  i,
             GRand *rand)
{
  return (guint) g_rand_int_range (rand, 5010, 5015);
}

static guint
wavers_by_2_low (guint  i,
                 GRand *rand)
{
  return (guint) g_rand_int_range (rand, 1198, 1203);
}

static guint
wavers_by_5 (guint  i,
             GRand *rand)
{
  return (guint) g_rand_int_range (rand, 5007, 5018);
}

static guint
ramps_by_1 (guint  i,
            GRand *rand)
{
  return 1000 + i;
}

static guint
ramps_by_7 (guint  i,
            GRand *rand)
{
  return 1000 + 7 * i;
}

static guint
falls_roughly (guint  i,
               GRand *rand)
{
  return 9000 - 15 * i + (guint) g_rand_int_range (rand, 0, 5);
}

static guint
jumps_about (guint  i,
             GRand *rand)
{
  return (guint) g_rand_int_range (rand, 1000, 9000);
}

static void
test_shares (void)
{
  static const struct
  {
    const char *name;
    SignalFunc  signal;
    double      at_least;
    double      at_most;
  } cases[] = {
    { "±1 count", wavers_by_1, 95, 100 },
    { "±2 counts of 5012", wavers_by_2, 85, 100 },
    { "±2 counts of 1200", wavers_by_2_low, 70, 100 },
    { "±5 counts", wavers_by_5, 50, 100 },
    { "a ramp of 1 count", ramps_by_1, 98, 100 },
    { "a ramp of 7 counts", ramps_by_7, 98, 100 },
    { "a rough fall", falls_roughly, 95, 100 },
    { "jumps without end", jumps_about, 0, 30 },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (53);
  guint counts[500];

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      for (guint k = 0; k < G_N_ELEMENTS (counts); k++)
        counts[k] = cases[i].signal (k, rand);

      const double segments = get_share (&wires[0], counts, G_N_ELEMENTS (counts));
      const double text = get_share (&wires[6], counts, G_N_ELEMENTS (counts));

      g_test_message ("%s: %.1f %% handed out", cases[i].name, segments);
      g_assert_cmpfloat (segments, >=, cases[i].at_least);
      g_assert_cmpfloat (segments, <=, cases[i].at_most);
      g_assert_cmpfloat (segments, ==, text);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/noise/lets no bad byte out of a steady stream", test_steady);
  g_test_add_func ("/noise/takes no segment or bit for another", test_steady_neighbours);
  g_test_add_func ("/noise/lets no bad byte out where the value jumps", test_jump);
  g_test_add_func ("/noise/believes a changed sign, range, digit or flag the second time",
                   test_changes);
  g_test_add_func ("/noise/lets live values through", test_shares);
  return g_test_run ();
}
