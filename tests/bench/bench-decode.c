/* bench-decode.c: how fast each format is decoded, against memchr over the same bytes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * memchr is about the least that can be done with a byte, so the ratio says how much of the time
 * is the decoder's own, whatever the machine. Three streams: a steady value, one that wavers by
 * a count or two as real ones do, and the latter with every 97th byte wrong.
 *
 * Fails when a format has no stream, when too few values come out, or when decoding costs more
 * than 100 000 times memchr. That bound is wide on purpose: memchr looks at up to 64 bytes at once,
 * 20 to 70 GB/s by processor and cache, so that the bound stands for 0.2 to 0.7 MB/s; eight
 * meters at ten readings a second send 1.3 kB/s, and would still take less than a hundredth of a
 * core. What it catches on every machine is a decoder whose time grows with the stream.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "decode-streams.h"
#include "rw-decoder.h"

static const gsize stream_bytes = 1 << 20;
static const guint rounds = 3;
static const double most_times_memchr = 100000;

typedef enum
{
  STEADY,
  WAVERING,
  TORN,
  N_STREAMS
} Stream;

static const char *const stream_names[N_STREAMS] = { "steady", "wavering", "torn" };

/* The counts of frame @i: a fixed pattern, so that every run is the same. */
static int
counts_of (Stream stream,
           guint  i)
{
  static const int wave[] = { 0, 1, 0, -1, 0, 0, 1, 2, 1, 0, -1 };

  return -4982 + (stream == STEADY ? 0 : wave[i % G_N_ELEMENTS (wave)]);
}

/* (transfer full) (nullable) */
static GString *
make_stream (const char *format,
             Stream      stream,
             guint      *n_frames)
{
  GString *bytes = g_string_sized_new (stream_bytes + 64);

  for (*n_frames = 0; bytes->len < stream_bytes; (*n_frames)++)
    if (!decode_streams_append (format, counts_of (stream, *n_frames), bytes))
      {
        g_string_free (bytes, TRUE);
        return NULL;
      }
  for (gsize at = 96; stream == TORN && at < bytes->len; at += 97)
    bytes->str[at] ^= 0x55;
  return bytes;
}

static void
sum_cb (const RwMeterValue *value,
        gpointer            data)
{
  *(double *) data += value->value;
}

/* As a link feeds it: some tens of bytes at a time. */
static double
time_decoder (const char      *format,
              const GString   *bytes,
              RwDecoderCounts *counts)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format);
  const gsize piece = 48;
  double sum = 0;
  const gint64 start = g_get_monotonic_time ();

  for (gsize at = 0; at < bytes->len; at += piece)
    rw_decoder_feed (decoder, (const guint8 *) bytes->str + at, MIN (piece, bytes->len - at),
                     sum_cb, &sum);
  rw_decoder_end (decoder, sum_cb, &sum);

  const gint64 end = g_get_monotonic_time ();

  rw_decoder_get_counts (decoder, counts);
  g_assert_true (isfinite (sum) && sum <= 0);
  return (double) (end - start) / G_USEC_PER_SEC;
}

/* One pass is too short to be timed. */
static double
time_memchr (const GString *bytes)
{
  const guint passes = 200;
  guint found = 0;
  const gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < passes; i++)
    {
      const char *volatile at = bytes->str; /* so that no pass is left out */

      found += memchr (at, '\0', bytes->len) != NULL;
    }
  g_assert_cmpuint (found, ==, 0);
  return (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC / passes;
}

/* All of a steady value. A lone odd frame may be left out, and one behind a torn frame: more than
 * half of the others. */
static guint64
least_values (Stream stream,
              guint  n_frames)
{
  return stream == STEADY ? n_frames : n_frames / 2;
}

static gboolean
run (const char *format,
     Stream      stream)
{
  guint n_frames;
  g_autoptr (GString) bytes = make_stream (format, stream, &n_frames);
  RwDecoderCounts counts = { 0 };
  double decoder = INFINITY, scan = INFINITY;

  if (bytes == NULL)
    {
      g_print ("%s: no stream in decode-streams.c\n", format);
      return FALSE;
    }
  for (guint i = 0; i < rounds; i++)
    {
      decoder = fmin (decoder, time_decoder (format, bytes, &counts));
      scan = fmin (scan, time_memchr (bytes));
    }

  const double ratio = decoder / scan;
  const gboolean good = ratio <= most_times_memchr && counts.values >= least_values (stream, n_frames);

  g_print ("%-12s %-9s %6.1f MB/s; memchr %7.0f MB/s, %5.0f times as fast; %" G_GUINT64_FORMAT
           " values of %u frames%s\n",
           format, stream_names[stream], (double) bytes->len / decoder / 1e6,
           (double) bytes->len / scan / 1e6, ratio, counts.values, n_frames,
           good ? "" : ": TOO SLOW, OR TOO FEW");
  return good;
}

int
main (void)
{
  gboolean good = TRUE;

  for (const char *const *id = rw_decoder_list_formats (); *id != NULL; id++)
    for (guint stream = 0; stream < N_STREAMS; stream++)
      good = run (*id, stream) && good;
  return good ? 0 : 1;
}
