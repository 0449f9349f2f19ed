/* test-decoder-streams.c: frames of an independent encoder, alone and in rough streams.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "decoder-probe.h"
#include "frame-encoder.h"

static const char *const formats[]
    = { "segments-14", "digits-14", "digits-11a", "digits-11b", "text-14", "text-16" };

static char *
run (const char       *format_id,
     const GByteArray *bytes,
     gsize             chunk,
     gboolean          end)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format_id);

  return decoder_probe_run (decoder, (const char *) bytes->data, bytes->len, chunk, end);
}

/* --- single frames -------------------------------------------------------------------- */

static gboolean
has_parity (const char *format_id)
{
  return g_str_has_prefix (format_id, "digits");
}

static gboolean
has_ones (const char *format_id)
{
  return g_str_equal (format_id, "text-14");
}

static void
check_round_trip (const char       *format_id,
                  const FrameShow  *show,
                  const GByteArray *bytes)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format_id);
  g_autofree char *wanted = frame_show_to_probe (show);
  g_autofree char *got = run (format_id, bytes, 64, TRUE);
  g_autoptr (GArray) values = decoder_probe_values (decoder, bytes, TRUE);

  g_assert_cmpstr (got, ==, wanted);
  g_assert_true (show->over
                 || g_array_index (values, RwMeterValue, 0).value
                        == frame_show_get_value (show));
}

static void
test_round_trip (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (41);

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    for (guint i = 0; i < 2000; i++)
      {
        g_autoptr (GByteArray) bytes = g_byte_array_new ();
        FrameShow show;

        frame_show_random (formats[f], rand, &show);
        g_assert_true (frame_encode (formats[f], &show, bytes));
        check_round_trip (formats[f], &show, bytes);
        if (has_parity (formats[f]))
          frame_add_parity (bytes);
        if (has_ones (formats[f]))
          frame_add_ones (bytes);
        check_round_trip (formats[f], &show, bytes);
      }
}

/* Every single bit of the eighths turned, one at a time: none is a frame any more. */
static void
test_eighth_bits (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (42);

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    for (guint i = 0; i < 50 && (has_parity (formats[f]) || has_ones (formats[f])); i++)
      {
        g_autoptr (GByteArray) bytes = g_byte_array_new ();
        FrameShow show;

        frame_show_random (formats[f], rand, &show);
        frame_encode (formats[f], &show, bytes);
        if (has_parity (formats[f]))
          frame_add_parity (bytes);
        else
          frame_add_ones (bytes);
        for (guint at = 0; at < bytes->len; at++)
          {
            bytes->data[at] ^= 0x80;

            g_autofree char *got = run (formats[f], bytes, 64, TRUE);

            g_assert_cmpstr (got, ==, "");
            bytes->data[at] ^= 0x80;
          }
      }
}

/* --- streams ------------------------------------------------------------------------- */

/* Frames, twice each so that they are believed, with garbage, torn and doubled bytes. */
static GByteArray *
make_rough_stream (const char *format_id,
                   GRand      *rand)
{
  GByteArray *stream = g_byte_array_new ();

  for (guint i = 0; i < 60; i++)
    {
      g_autoptr (GByteArray) frame = g_byte_array_new ();
      FrameShow show;

      frame_show_random (format_id, rand, &show);
      frame_encode (format_id, &show, frame);
      g_byte_array_append (stream, frame->data, frame->len);
      g_byte_array_append (stream, frame->data, frame->len);
      if (i % 5 == 1)
        g_byte_array_append (stream, frame->data,
                             (guint) g_rand_int_range (rand, 1, (gint32) frame->len));
      for (gint32 k = i % 5 == 3 ? g_rand_int_range (rand, 1, 40) : 0; k > 0; k--)
        {
          const guint8 garbage = (guint8) g_rand_int_range (rand, 0, 256);

          g_byte_array_append (stream, &garbage, 1);
        }
      if (i % 5 == 4)
        g_byte_array_append (stream, frame->data + frame->len - 1, 1);
    }
  return stream;
}

static void
test_chunks (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (43);

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    {
      g_autoptr (GByteArray) stream = make_rough_stream (formats[f], rand);
      g_autofree char *wanted = run (formats[f], stream, stream->len, TRUE);
      g_auto (GStrv) lines = g_strsplit (wanted, "\n", -1);

      g_assert_cmpuint (g_strv_length (lines), >, 60);
      for (gsize chunk = 1; chunk <= 64; chunk++)
        {
          g_autofree char *got = run (formats[f], stream, chunk, TRUE);

          g_assert_cmpstr (got, ==, wanted);
        }
    }
}

/* After any rubbish, frames that follow each other are read again, two at most being lost. */
static void
test_finds_its_feet (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (44);

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    for (guint i = 0; i < 300; i++)
      {
        g_autoptr (GByteArray) bytes = g_byte_array_new ();
        g_autoptr (RwDecoder) decoder = rw_decoder_new (formats[f]);
        FrameShow show;

        for (gint32 n = g_rand_int_range (rand, 0, 100); n > 0; n--)
          {
            const guint8 garbage = (guint8) g_rand_int_range (rand, 0, 256);

            g_byte_array_append (bytes, &garbage, 1);
          }
        frame_show_random (formats[f], rand, &show);
        for (guint k = 0; k < 6; k++)
          frame_encode (formats[f], &show, bytes);

        g_autoptr (GArray) values = decoder_probe_values (decoder, bytes, FALSE);

        g_assert_cmpuint (values->len, >=, 5);
        g_assert_cmpuint (values->len, <=, 6);
      }
}

static void
test_torn (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (45);

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    {
      g_autoptr (GByteArray) frame = g_byte_array_new ();
      FrameShow show;

      frame_show_random (formats[f], rand, &show);
      frame_encode (formats[f], &show, frame);
      for (guint from = 1; from < frame->len; from++)
        {
          g_autoptr (RwDecoder) decoder = rw_decoder_new (formats[f]);
          g_autoptr (GByteArray) bytes = g_byte_array_new ();
          RwDecoderCounts counts;

          g_byte_array_append (bytes, frame->data + from, frame->len - from);
          for (guint k = 0; k < 2; k++)
            g_byte_array_append (bytes, frame->data, frame->len);
          rw_decoder_restart (decoder, TRUE);

          g_autoptr (GArray) values = decoder_probe_values (decoder, bytes, FALSE);

          rw_decoder_get_counts (decoder, &counts);
          g_assert_cmpuint (values->len, ==, 2);
          g_assert_cmpuint (counts.not_understood, ==, 0);
          g_assert_cmpuint (counts.bytes_explained, ==, 2 * frame->len);
        }
    }
}

static void
test_any_bytes (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (46);

  for (guint f = 0; f < G_N_ELEMENTS (formats); f++)
    {
      g_autoptr (GByteArray) bytes = g_byte_array_new ();
      g_autoptr (RwDecoder) decoder = rw_decoder_new (formats[f]);
      RwDecoderCounts counts;

      for (guint i = 0; i < 20000; i++)
        {
          const guint8 byte = (guint8) g_rand_int_range (rand, 0, 256);

          g_byte_array_append (bytes, &byte, 1);
        }

      g_autoptr (GArray) values = decoder_probe_values (decoder, bytes, TRUE);

      rw_decoder_get_counts (decoder, &counts);
      g_assert_cmpuint (values->len, ==, 0);
      g_assert_cmpuint (counts.bytes_explained, <, 20);
      g_assert_cmpuint (counts.not_understood, >, 0);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/streams/reads back every display exactly", test_round_trip);
  g_test_add_func ("/streams/refuses one wrong eighth bit", test_eighth_bits);
  g_test_add_func ("/streams/gives the same values however the bytes are cut", test_chunks);
  g_test_add_func ("/streams/finds its feet after rubbish", test_finds_its_feet);
  g_test_add_func ("/streams/skips a torn beginning without counting it", test_torn);
  g_test_add_func ("/streams/takes no value out of random bytes", test_any_bytes);
  return g_test_run ();
}
