/* test-guess.c: which format explains a capture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "frame-encoder.h"
#include "rw-meter-guess.h"

static const char *const frame_formats[]
    = { "segments-14", "digits-14", "digits-11a", "digits-11b", "text-14", "text-16" };

static const RwMeterGuess *
get_best (const GArray *ranking)
{
  return &g_array_index (ranking, RwMeterGuess, 0);
}

/* What format is found, with its twin merged. */
static const char *
get_answer (const char *format)
{
  return g_str_has_prefix (format, "digits-11") ? "digits-11a" : format;
}

/* As the bytes of the format's usual line look when they are read as 8N1. */
static void
dress (const char *format,
       GByteArray *bytes)
{
  if (g_str_has_prefix (format, "digits"))
    frame_add_parity (bytes);
  else if (g_str_equal (format, "text-14"))
    frame_add_ones (bytes);
}

/* So many displays, each for three frames, with the first @cut bytes missing. */
static GByteArray *
make_capture (const char *format,
              GRand      *rand,
              guint       displays,
              guint       cut)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();

  for (guint i = 0; i < displays; i++)
    {
      FrameShow show;

      frame_show_random (format, rand, &show);
      for (guint k = 0; k < 3; k++)
        g_assert_true (frame_encode (format, &show, bytes));
    }
  dress (format, bytes);
  g_byte_array_remove_range (bytes, 0, cut);
  return g_steal_pointer (&bytes);
}

static void
test_every_format (gconstpointer data)
{
  const char *format = data;
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (guint i = 0; i < 300; i++)
    {
      const guint cut = (guint) g_rand_int_range (rand, 0, 11);
      g_autoptr (GByteArray) bytes = make_capture (format, rand, 1 + i % 3, cut);
      g_autoptr (GArray) ranking = rw_meter_guess_rank (bytes->data, bytes->len, cut > 0);
      const RwMeterGuess *best = get_best (ranking);

      g_assert_cmpstr (best->format, ==, get_answer (format));
      g_assert_cmpfloat (best->sure, >, 0.999);
      g_assert_cmpfloat (best->bits, >, g_array_index (ranking, RwMeterGuess, 1).bits + 20);
      g_assert_cmpfloat (best->explained, >, 0.6);
      g_assert_cmpuint (best->values, >=, 2);
      g_assert_cmpint (best->sign_unsure, ==, g_str_has_prefix (format, "digits-11"));
      g_assert_cmpuint (best->line.bits, ==, rw_decoder_get_usual_line (format)->bits);
    }
}

/* "DC 3.302    V" is a line of text as well. */
static void
test_lines_never_beat_a_frame (void)
{
  const char *text = "DC 3.302    V\rDC 3.303    V\rDC 3.303    V\r";
  g_autoptr (GArray) ranking = rw_meter_guess_rank ((const guint8 *) text, strlen (text), FALSE);
  gboolean lines = FALSE;

  g_assert_cmpstr (get_best (ranking)->format, ==, "text-14");
  for (guint i = 1; i < ranking->len; i++)
    {
      const RwMeterGuess *guess = &g_array_index (ranking, RwMeterGuess, i);

      if (!g_str_equal (guess->format, "lines"))
        continue;
      lines = TRUE;
      g_assert_cmpuint (guess->values, ==, 3);
      g_assert_cmpfloat (guess->sure, <, 1e-6);
    }
  g_assert_true (lines);
}

static void
test_sign_is_never_chosen (void)
{
  static const char *const formats[] = { "digits-11a", "digits-11b" };

  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    for (guint negative = 0; negative < 2; negative++)
      {
        const FrameShow show
            = { .unit = "V", .mode = "dc", .counts = 1206, .decimals = 2, .negative = negative != 0 };
        g_autoptr (GByteArray) bytes = g_byte_array_new ();
        g_autoptr (GArray) ranking = NULL;

        for (guint k = 0; k < 4; k++)
          g_assert_true (frame_encode (formats[i], &show, bytes));
        dress (formats[i], bytes);
        ranking = rw_meter_guess_rank (bytes->data, bytes->len, FALSE);
        g_assert_cmpstr (get_best (ranking)->format, ==, "digits-11a");
        g_assert_true (get_best (ranking)->sign_unsure);
        g_assert_cmpfloat_with_epsilon (get_best (ranking)->newest.value, 12.06, 1e-9);
        g_assert_false (signbit (get_best (ranking)->newest.value));
        g_assert_false (get_best (ranking)->newest.low_battery);
        for (guint k = 1; k < ranking->len; k++)
          g_assert_cmpstr (g_array_index (ranking, RwMeterGuess, k).format, !=, "digits-11b");
      }
}

static void
test_lines (void)
{
  const char *text = "12.06 V DC\r\n12.07 V DC\r\n12.06 V DC\r\n";
  g_autoptr (GArray) ranking = rw_meter_guess_rank ((const guint8 *) text, strlen (text), FALSE);
  g_autoptr (GArray) one = rw_meter_guess_rank ((const guint8 *) text, 12, FALSE);

  g_assert_cmpstr (get_best (ranking)->format, ==, "lines");
  g_assert_cmpfloat (get_best (ranking)->sure, >, 0.99);
  g_assert_cmpuint (get_best (ranking)->values, ==, 3);
  /* One line alone may be anybody's. */
  g_assert_cmpstr (get_best (one)->format, ==, "lines");
  g_assert_cmpfloat (get_best (one)->sure, <, 0.5);
}

/* The tail of "12.06 V" is a value too, and a wrong one. */
static void
test_torn_line_is_no_value (void)
{
  const char *text = "06 V DC\r\n12.06 V DC\r\n";
  g_autoptr (GArray) torn = rw_meter_guess_rank ((const guint8 *) text, strlen (text), TRUE);
  g_autoptr (GArray) whole = rw_meter_guess_rank ((const guint8 *) text, strlen (text), FALSE);

  g_assert_cmpuint (get_best (torn)->values, ==, 1);
  g_assert_cmpuint (get_best (whole)->values, ==, 2);
}

static void
check_seven (RwParity parity,
             guint    stop_bits)
{
  const char *text = "12.06 V DC\r\n12.07 V DC\r\n12.08 V DC\r\n";
  g_autofree char *bytes = g_strdup (text);
  g_autoptr (GArray) ranking = NULL;

  for (char *p = bytes; *p != '\0'; p++)
    {
      const gboolean odd = __builtin_parity ((guint) *p) != 0;

      if (parity == RW_PARITY_NONE || odd != (parity == RW_PARITY_ODD))
        *p = (char) (*p | 0x80);
    }
  ranking = rw_meter_guess_rank ((const guint8 *) bytes, strlen (text), FALSE);
  g_assert_cmpstr (get_best (ranking)->format, ==, "lines");
  g_assert_cmpuint (get_best (ranking)->values, ==, 3);
  g_assert_cmpfloat (get_best (ranking)->sure, >, 0.99);
  g_assert_cmpuint (get_best (ranking)->line.bits, ==, 7);
  g_assert_cmpint (get_best (ranking)->line.parity, ==, parity);
  g_assert_cmpuint (get_best (ranking)->line.stop_bits, ==, stop_bits);
}

static void
test_seven_bit_lines (void)
{
  check_seven (RW_PARITY_ODD, 1);
  check_seven (RW_PARITY_EVEN, 1);
  check_seven (RW_PARITY_NONE, 2);
}

static void
check_nothing (const guint8 *bytes,
               gsize         n)
{
  for (guint torn = 0; torn < 2; torn++)
    {
      g_autoptr (GArray) ranking = rw_meter_guess_rank (bytes, n, torn != 0);

      g_assert_cmpfloat (get_best (ranking)->sure, <, 0.5);
    }
}

static void
test_random_bytes_are_nothing (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  guint8 bytes[4096];

  for (guint i = 0; i < 400; i++)
    {
      const gsize n = i % 4 == 0 ? (gsize) g_rand_int_range (rand, 1, 20)
                                 : (gsize) g_rand_int_range (rand, 20, 4097);
      /* All bytes, seven bits, the digits' sixteen, text. */
      const guint kind = i / 4 % 4;

      for (gsize k = 0; k < n; k++)
        {
          const gint any = g_rand_int_range (rand, 0, 256);

          bytes[k] = (guint8) (kind == 0 ? any : kind == 1 ? any & 0x7F : kind == 2 ? 0x30 | (any & 0x0F)
                                                                          : 32 + any % 95);
          if (kind >= 2 && any % 17 == 0)
            bytes[k] = any % 2 == 0 ? '\r' : '\n';
        }
      check_nothing (bytes, n);
    }
}

static void
test_strangers_are_nothing (void)
{
  static const char *const texts[] = {
    "$GPGGA,101530.00,5321.00,N,00615.00,W,1,08,1.0,20.0,M,47.0,M,,*5A\r\n$GPVTG,0.0,T,,M,0.0,N,0.0,K,A*23\r\n",
    "login: \r\nPassword: \r\nLogin incorrect\r\nlogin: ",
    "Booting 3 of 4\r\nSupply 5.0 V ok\r\nMemory 512 of 512 kB\r\nFan 1200 rpm\r\nReady.\r\n",
    "{\"t\":21,\"h\":40}\n{\"t\":21,\"h\":41}\n{\"t\":22,\"h\":41}\n",
    "\r\n\r\n\r\n\r\n",
    "5\r\n5\r\n5\r\n",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    check_nothing ((const guint8 *) texts[i], strlen (texts[i]));
}

/* The more of the bytes are foreign, the less a format has for it. */
static void
test_foreign_bytes_weaken (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);
  g_autoptr (GByteArray) bytes = make_capture ("digits-14", rand, 1, 0);
  double before = G_MAXDOUBLE;

  for (guint step = 0; step < 5; step++)
    {
      for (guint k = 0; k < 40; k++)
        {
          const guint8 byte = (guint8) g_rand_int_range (rand, 0, 256);

          g_byte_array_append (bytes, &byte, 1);
        }

      g_autoptr (GArray) ranking = rw_meter_guess_rank (bytes->data, bytes->len, FALSE);

      g_assert_cmpstr (get_best (ranking)->format, ==, "digits-14");
      g_assert_cmpfloat (get_best (ranking)->bits, <, before);
      before = get_best (ranking)->bits;
    }
}

static void
test_sure (void)
{
  const double none[] = { -3, -5 }, tie[] = { 100, 100 }, one[] = { 1, -G_MAXDOUBLE }, far[] = { 5000, -5000 };

  g_assert_cmpfloat_with_epsilon (rw_meter_guess_get_sure (none, 2, 0), 0.125 / (1 + 0.125 + 0.03125), 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_meter_guess_get_sure (tie, 2, 1), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_meter_guess_get_sure (one, 2, 0), 2.0 / 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_meter_guess_get_sure (far, 2, 0), 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_meter_guess_get_sure (far, 2, 1), 0, 1e-12);
}

static void
test_no_bytes (void)
{
  g_autoptr (GArray) ranking = rw_meter_guess_rank (NULL, 0, TRUE);

  g_assert_cmpuint (ranking->len, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (frame_formats); i++)
    {
      g_autofree char *test = g_strdup_printf ("/guess/knows/%s", frame_formats[i]);

      g_test_add_data_func (test, frame_formats[i], test_every_format);
    }
  g_test_add_func ("/guess/knows/lines", test_lines);
  g_test_add_func ("/guess/lines-never-beat-a-frame", test_lines_never_beat_a_frame);
  g_test_add_func ("/guess/the-sign-is-never-chosen", test_sign_is_never_chosen);
  g_test_add_func ("/guess/a-torn-line-is-no-value", test_torn_line_is_no_value);
  g_test_add_func ("/guess/seven-bit-lines-show-in-bit-7", test_seven_bit_lines);
  g_test_add_func ("/guess/random-bytes-are-nothing", test_random_bytes_are_nothing);
  g_test_add_func ("/guess/strangers-are-nothing", test_strangers_are_nothing);
  g_test_add_func ("/guess/foreign-bytes-weaken", test_foreign_bytes_weaken);
  g_test_add_func ("/guess/sure-is-a-chance-among-all", test_sure);
  g_test_add_func ("/guess/no-bytes", test_no_bytes);
  return g_test_run ();
}
