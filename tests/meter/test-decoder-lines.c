/* test-decoder-lines.c: readings from lines of text, and what must never become one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "decoder-probe.h"

typedef struct
{
  const char *text;
  const char *wanted;
} Case;

static void
check_cases (const Case *cases,
             guint       n)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *line = g_strconcat (cases[i].text, "\r\n", NULL);
      g_autofree char *got = decoder_probe_text ("lines", line);
      g_autofree char *shown = g_strescape (cases[i].text, NULL);

      g_test_message ("“%s”", shown);
      g_assert_cmpstr (got, ==, cases[i].wanted);
    }
}

static void
test_usual_lines (void)
{
  static const Case cases[] = {
    { "5.012 V", "5.012 V none step 0.001\n" },
    { "5.012V", "5.012 V none step 0.001\n" },
    { "5.012 V DC", "5.012 V dc step 0.001\n" },
    { "5.012 VDC", "5.012 V dc step 0.001\n" },
    { "DC 5.012 V", "5.012 V dc step 0.001\n" },
    { "DC-1.999    V", "-1.999 V dc step 0.001\n" },
    { "V: 12.06", "12.06 V none step 0.01\n" },
    { "DCV,12.06", "12.06 V dc step 0.01\n" },
    { "12.06,V,DC", "12.06 V dc step 0.01\n" },
    { "+12.06 VDC AUTO", "12.06 V dc step 0.01\n" },
    { "230.4 V AC", "230.4 V ac step 0.1\n" },
    { "1.5 V AC+DC", "1.5 V ac+dc step 0.1\n" },
    { "35 mV", "0.035 V none step 0.001\n" },
    { "3.3mV", "0.0033 V none step 0.0001\n" },
    { "3.3 \u00B5V", "3.3e-06 V none step 1e-07\n" },
    { "3.3 \u03BCV", "3.3e-06 V none step 1e-07\n" },
    { "3.3 \xB5V", "3.3e-06 V none step 1e-07\n" },
    { "3.3 k\u03A9", "3300 ohm none step 100\n" },
    { "3.3 k\u2126", "3300 ohm none step 100\n" },
    { "1.234 MOHM", "1234000 ohm none step 1000\n" },
    { "51.20 mA DC", "0.0512 A dc step 1e-05\n" },
    { "100 UA", "0.0001 A none step 1e-06\n" },
    { "1 MHZ", "1000000 Hz none step 1000000\n" },
    { "47.0 nF", "4.7e-08 F none step 1e-10\n" },
    { "23.5 \u00B0C", "23.5 C none step 0.1\n" },
    { "23.5 \xB0" "C", "23.5 C none step 0.1\n" },
    { "212 \u00B0F", "100 C none step 0.555555555555556\n" },
    { "0512 mV DIODE", "0.512 V diode step 0.001\n" },
    { "+1.50E-02 V DC", "0.015 V dc step 0.0001\n" },
    { "- 5.012 V", "-5.012 V none step 0.001\n" },
    { "\u2212" "5.0 V", "-5 V none step 0.1\n" },
    { "\u2212 5.0 V", "-5 V none step 0.1\n" },
    { "-0.00 V", "0 V none step 0.01\n" },
    { "5.012 V HOLD", "5.012 V none step 0.001 hold\n" },
    { "5.012 V DC LOWBAT", "5.012 V dc step 0.001 low\n" },
    { "Ch1: 5.012 V", "5.012 V none step 0.001\n" },
    { "Reading = 5.012 V", "5.012 V none step 0.001\n" },
    { "\xEF\xBB\xBF" "5.012 V", "5.012 V none step 0.001\n" },
    { "\t 5.012\u00A0V  ", "5.012 V none step 0.001\n" },
    { "5. V", "5 V none step 1\n" },
    { ".5 V", "0.5 V none step 0.1\n" },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_overload (void)
{
  static const Case cases[] = {
    { "OL V", "- V none step 0 over\n" },
    { "O.L Mohm", "- ohm none step 0 over\n" },
    { "0L mV", "- V none step 0 over\n" },
    { ".OL V", "- V none step 0 over\n" },
    { "-OL V DC", "- V dc step 0 over\n" },
    { "DC -OL V", "- V dc step 0 over\n" },
    { "OVLD VAC", "- V ac step 0 over\n" },
    { "---- V", "- V none step 0 over\n" },
    { "1---- V", "- V none step 0 over\n" },
    { "--.-- \u00B0C", "- C none step 0 over\n" },
    { "OLk\u03A9", "- ohm none step 0 over\n" },
    { "0.LM\u2126", "- ohm none step 0 over\n" },
    { "9.9E37 V", "- V none step 0 over\n" },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

/* Lines that could be read wrongly, or in two ways: nothing comes out and each is counted. */
static void
test_refusals (void)
{
  static const char *const lines[] = {
    "hello", "5.012", "V", "V DC", "OL", "----", "--5 V", "+-5 V", "5- V", "1.2.3 V",
    "1,5 V", "1,234.5 V", "1.234,5 V", "1 234 V", "1\u202F234,5 V", "3 300 V", "12:30",
    "12:30 V", "12:30:05 V", "0x1F V", "0x1p3 V", "inf V", "nan V", "INFINITY V",
    "nan(123) V", "1E400 V", "1E-400 V", "1E V", "1E+ V", "1e5e2 V", "+2.0 e5 V",
    "1.5D+03 V", "1.5Q3 V", "\uFF13.\uFF13 V", "5.0 V 1.2 A", "5.0 V mV", "5.0 6.0 V",
    "5.0 OL V", "12.3 mega ohm", "12.3 k ohm", "12.3 m V", "1 mohm", "50.0 %", "5.0 dB",
    "OLD V", "x5.0 V", "x-5.0 V", "x.5 V", ",5 V", "- V 5.0", "-- 5.0 V", "5.0 V\x01",
    "5.0 V\x80", "5.012 foo V", "5.012 V 3", "5.012V x2", "5,012 V", "DC,5,012 V",
    "5.0 10^3 V", "5.0 x10 V", "5V6", "5/6 V", "-\u2212" "5 V", "- -5 V",
  };
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  RwDecoderCounts counts;

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autofree char *line = g_strconcat (lines[i], "\n", NULL);
      g_autofree char *got = decoder_probe_run (decoder, line, strlen (line), 1, FALSE);
      g_autofree char *shown = g_strescape (lines[i], NULL);

      g_test_message ("“%s”", shown);
      g_assert_cmpstr (got, ==, "");
      rw_decoder_get_counts (decoder, &counts);
      g_assert_cmpuint (counts.not_understood, ==, i + 1);
      g_assert_cmpuint (counts.values, ==, 0);
      g_assert_nonnull (rw_decoder_get_last_bad (decoder));
    }
}

/* A NUL inside the line, which C strings cannot show. */
static void
test_nul (void)
{
  static const char inside[] = "5.0\0001 V\n";
  static const char around[] = "\0\0005.0 V\0\r\n\0";
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autofree char *none = decoder_probe_run (decoder, inside, sizeof inside - 1, 3, FALSE);
  g_autofree char *one = decoder_probe_run (decoder, around, sizeof around - 1, 3, TRUE);

  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (one, ==, "5 V none step 0.1\n");
}

static void
test_comma (void)
{
  static const char text[]
      = "3,3 V\r\n3.3 V\r\n-0,5 mV\r\n,5 V\r\n1.234,5 V\r\nDC,5 V\r\n12,06,V\r\n";
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autofree char *got = NULL;
  RwDecoderCounts counts;

  rw_decoder_set_decimal_mark (decoder, ',');
  got = decoder_probe_run (decoder, text, strlen (text), 5, FALSE);
  g_assert_cmpstr (got, ==,
                   "3.3 V none step 0.1\n-0.0005 V none step 0.0001\n"
                   "0.5 V none step 0.1\n12.06 V none step 0.01\n");
  rw_decoder_get_counts (decoder, &counts);
  g_assert_cmpuint (counts.not_understood, ==, 3);
}

static void
test_line_ends (void)
{
  static const char text[] = "1 V\r2 V\n3 V\r\n\r\n\n4 V\n\r5 V";
  static const char wanted[]
      = "1 V none step 1\n2 V none step 1\n3 V none step 1\n4 V none step 1\n";
  g_autoptr (RwDecoder) open_end = rw_decoder_new ("lines");
  g_autoptr (RwDecoder) ended = rw_decoder_new ("lines");
  g_autofree char *held = decoder_probe_run (open_end, text, strlen (text), 4, FALSE);
  g_autofree char *whole = decoder_probe_run (ended, text, strlen (text), 4, TRUE);
  g_autofree char *with_last = g_strconcat (wanted, "5 V none step 1\n", NULL);
  RwDecoderCounts counts;

  g_assert_cmpstr (held, ==, wanted);
  g_assert_cmpstr (whole, ==, with_last);
  rw_decoder_get_counts (ended, &counts);
  g_assert_cmpuint (counts.values, ==, 5);
  g_assert_cmpuint (counts.not_understood, ==, 0);
}

static void
test_long_lines (void)
{
  g_autofree char *noise = g_strnfill (5000, 'x');
  g_autofree char *padded = g_strnfill (250, ' '); /* with "5.0 V" 255 bytes: still fits */
  g_autofree char *text = g_strconcat ("1 V\n", noise, "7 V\n2 V\n", padded, "5.0 V\n", padded,
                                       "   5.0 V\n3 V\n", NULL);
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autofree char *got = decoder_probe_run (decoder, text, strlen (text), 7, FALSE);
  RwDecoderCounts counts;

  g_assert_cmpstr (got, ==,
                   "1 V none step 1\n2 V none step 1\n5 V none step 0.1\n3 V none step 1\n");
  rw_decoder_get_counts (decoder, &counts);
  g_assert_cmpuint (counts.too_long, ==, 2);
  g_assert_cmpuint (counts.not_understood, ==, 0);
}

static void
test_restart (void)
{
  static const char half[] = "1 V\n12.";
  static const char torn[] = "06 V\n2 V\n";
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autofree char *first = decoder_probe_run (decoder, half, strlen (half), 3, FALSE);
  g_autofree char *second = NULL;
  RwDecoderCounts counts;

  rw_decoder_restart (decoder, TRUE);
  second = decoder_probe_run (decoder, torn, strlen (torn), 3, FALSE);
  g_assert_cmpstr (first, ==, "1 V none step 1\n");
  g_assert_cmpstr (second, ==, "2 V none step 1\n");
  rw_decoder_get_counts (decoder, &counts);
  g_assert_cmpuint (counts.not_understood, ==, 0);
}

static void
test_assumed_unit (void)
{
  static const char text[] = "5.012\nOL\n7 mV\n5.012 foo\n";
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autofree char *got = NULL;

  rw_decoder_assume (decoder, RW_METER_UNIT_VOLT, RW_METER_MODE_DC);
  got = decoder_probe_run (decoder, text, strlen (text), 9, FALSE);
  g_assert_cmpstr (got, ==, "5.012 V dc step 0.001\n- V dc step 0 over\n0.007 V dc step 0.001\n");
}

/* --- all cuts ------------------------------------------------------------------------ */

/* Lines of every kind, with garbage lines between them, and the values that must come out. */
static char *
make_stream (GRand    *rand,
             guint     lines,
             GString  *wanted,
             gsize    *length)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < lines; i++)
    {
      const double value = g_rand_double_range (rand, -20, 20);
      char number[G_ASCII_DTOSTR_BUF_SIZE];

      if (g_rand_int_range (rand, 0, 3) == 0)
        {
          /* Any bytes at all but digits, so that no value can arise, in a line of their own. */
          for (int k = g_rand_int_range (rand, 1, 400); k > 0; k--)
            {
              const char byte = (char) g_rand_int_range (rand, 0, 256);

              if (!g_ascii_isdigit (byte) && byte != 'L' && byte != 'l' && byte != '-')
                g_string_append_c (out, byte);
            }
          g_string_append (out, "\n");
        }
      g_ascii_formatd (number, sizeof number, "%.3f", value);
      g_string_append_printf (out, "%s V DC%s", number,
                              i % 3 == 0   ? "\r"
                              : i % 3 == 1 ? "\n"
                                           : "\r\n");
      g_ascii_formatd (number, sizeof number, "%.15g", g_ascii_strtod (number, NULL));
      g_string_append_printf (wanted, "%s V dc step 0.001\n",
                              g_str_equal (number, "-0") ? "0" : number);
    }
  *length = out->len;
  return g_string_free (out, FALSE);
}

static void
test_chunks (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260314);
  g_autoptr (GString) wanted = g_string_new (NULL);
  gsize n;
  g_autofree char *stream = make_stream (rand, 300, wanted, &n);
  RwDecoderCounts first = { 0 };

  for (gsize chunk = 1; chunk <= 64; chunk++)
    {
      g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
      g_autofree char *got = decoder_probe_run (decoder, stream, n, chunk, FALSE);
      RwDecoderCounts counts;

      g_assert_cmpstr (got, ==, wanted->str);
      rw_decoder_get_counts (decoder, &counts);
      if (chunk == 1)
        first = counts;
      g_assert_cmpuint (counts.values, ==, 300);
      g_assert_cmpuint (counts.not_understood, ==, first.not_understood);
      g_assert_cmpuint (counts.too_long, ==, first.too_long);
    }
  g_assert_cmpuint (first.not_understood, >, 50);
  g_assert_cmpuint (first.too_long, >, 3);
}

/* Any bytes whatever: no crash, and every line is a value, not understood, too long or blank. */
static void
test_fuzz (void)
{
  static const char dictionary[]
      = "0123456789.,+-eE VvmkMADCOLoh \r\n\r\n:;/\xB5\xC2\xB0\xCE\xA9\xE2\x84\xA6";
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (guint round = 0; round < 200; round++)
    {
      char bytes[2000];
      g_autoptr (RwDecoder) decoder = rw_decoder_new (round % 2 == 0 ? "lines" : "scpi");
      g_autoptr (RwDecoder) again = rw_decoder_new_like (decoder);

      for (gsize i = 0; i < sizeof bytes; i++)
        bytes[i] = round % 4 < 2 ? (char) g_rand_int_range (rand, 0, 256)
                                 : dictionary[g_rand_int_range (rand, 0, sizeof dictionary - 1)];

      g_autofree char *ones = decoder_probe_run (decoder, bytes, sizeof bytes, 1, TRUE);
      g_autofree char *pieces
          = decoder_probe_run (again, bytes, sizeof bytes, 1 + round % 64, TRUE);

      g_assert_cmpstr (ones, ==, pieces);
    }
}

/* --- patterns ------------------------------------------------------------------------ */

static void
check_pattern (const char *pattern,
               char        mark,
               const char *text,
               const char *wanted)
{
  g_autoptr (RwDecoder) template = rw_decoder_new ("lines");
  g_autoptr (GError) error = NULL;

  rw_decoder_set_decimal_mark (template, mark);
  g_assert_true (rw_decoder_set_pattern (template, pattern, &error));
  g_assert_no_error (error);

  /* Also proves that the options are taken along. */
  g_autoptr (RwDecoder) decoder = rw_decoder_new_like (template);
  g_autofree char *got = decoder_probe_run (decoder, text, strlen (text), 3, TRUE);

  g_test_message ("%s", pattern);
  g_assert_cmpstr (got, ==, wanted);
}

static void
test_patterns (void)
{
  check_pattern ("{number} {unit}", '.', "5.012 V\n5.012mV\nx 5 V\n5 V x\n1,5 V\nOL V\n",
                 "5.012 V none step 0.001\n0.005012 V none step 1e-06\n- V none step 0 over\n");
  check_pattern ("{any};{sign};{number};{unit}", '.',
                 "17;-;5.012;V\n18;+;5;V\n19;;5;V\n20;-;-5;V\n",
                 "-5.012 V none step 0.001\n5 V none step 1\n5 V none step 1\n");
  check_pattern ("{any} {number} {unit=mV} {any}", '.', "12:30:05 35 x\n",
                 "0.035 V none step 0.001\n");
  check_pattern ("{any}{number} {unit}", '.', "1,5 V\n12:30 V\n- 5 V\na 7 V\nb -7 V\n--8 V\n",
                 "7 V none step 1\n-7 V none step 1\n");
  check_pattern ("{number} {unit}", ',', "1,5 V\n1.5 V\n2,5\n", "1.5 V none step 0.1\n");
  check_pattern (
      "{number|FLOW|UFLO} {unit} {mode}", '.', "FLOW V DC\nUFLO V AC\n1 V AC+DC\n2 V\nFL V\n",
      "- V dc step 0 over\n- V ac step 0 over\n1 V ac+dc step 1\n2 V none step 1\n");
  check_pattern ("{{{number}}} {unit}", '.', "{5} V\n5 V\n", "5 V none step 1\n");
  check_pattern ("U={number} V,{any}{unit=mV}", '.', "U=5.0V,I=1.0A\n",
                 "0.005 V none step 0.0001\n");
  check_pattern ("U={number}{unit},{any}", '.', "U=5.0V,I=1.0A\n", "5 V none step 0.1\n");
  check_pattern ("{number},{any},{unit}", '.', "5.0,17,V\n5,0,17,V\n",
                 "5 V none step 0.1\n5 V none step 1\n");
  check_pattern ("{number} {any}{unit=V}", '.', "5\u2212x\n5-x\n5 x\n", "5 V none step 1\n");
  check_pattern ("{unit}{number}", '.', "V5\nVDC-5\n", "5 V none step 1\n-5 V dc step 1\n");
  check_pattern ("{number}{any}{unit=V}", '.', "5 V\n5x V\n1e5e2\n6\n",
                 "5 V none step 1\n6 V none step 1\n");
}

static void
test_bad_patterns (void)
{
  static const char *const patterns[] = {
    "", "{unit}", "{number} {number}", "{numbr} V", "{number", "number}",
    "{number} {unit=furlong}", "{number} {unit} {unit}", "{}", "{number} V", "{number} }",
  };
  static const char good[] = "{number} {unit}";
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autoptr (RwDecoder) scpi = rw_decoder_new ("scpi");
  g_autoptr (GError) wrong_format = NULL;

  g_assert_true (rw_decoder_set_pattern (decoder, good, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (patterns); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (rw_decoder_set_pattern (decoder, patterns[i], &error));
      g_assert_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_PATTERN);
    }

  /* The old one stays. */
  g_autofree char *got = decoder_probe_run (decoder, "x 1 V\n2 V\n", 10, 10, FALSE);

  g_assert_cmpstr (got, ==, "2 V none step 1\n");
  g_assert_false (rw_decoder_set_pattern (scpi, good, &wrong_format));
  g_assert_error (wrong_format, RW_DECODER_ERROR, RW_DECODER_ERROR_OPTION);
}

/* A line made to keep a pattern busy takes no more than its length times the pattern's. */
static void
test_pattern_time (void)
{
  g_autofree char *ones = g_strnfill (250, '1');
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("lines");
  g_autoptr (GString) text = g_string_new (NULL);
  gint64 began;

  g_assert_true (rw_decoder_set_pattern (
      decoder, "{any}1{any}1{any}1{any}1{any}1{any}x{number} {unit}", NULL));
  for (guint i = 0; i < 100; i++)
    g_string_append_printf (text, "%s\n", ones);
  began = g_get_monotonic_time ();
  g_free (decoder_probe_run (decoder, text->str, text->len, 1000, FALSE));
  g_assert_cmpint (g_get_monotonic_time () - began, <, 2 * G_USEC_PER_SEC);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lines/reads a number and its unit on either side", test_usual_lines);
  g_test_add_func ("/lines/tells overload from numbers", test_overload);
  g_test_add_func ("/lines/refuses what could be read wrongly", test_refusals);
  g_test_add_func ("/lines/takes NULs off the ends only", test_nul);
  g_test_add_func ("/lines/takes a decimal comma only when declared", test_comma);
  g_test_add_func ("/lines/ends lines at CR, LF and both", test_line_ends);
  g_test_add_func ("/lines/drops lines without an end and counts them", test_long_lines);
  g_test_add_func ("/lines/skips a torn beginning", test_restart);
  g_test_add_func ("/lines/assumes a unit when told", test_assumed_unit);
  g_test_add_func ("/lines/gives the same values however the bytes are cut", test_chunks);
  g_test_add_func ("/lines/survives any bytes", test_fuzz);
  g_test_add_func ("/lines/reads by a pattern", test_patterns);
  g_test_add_func ("/lines/explains a bad pattern and keeps the old one", test_bad_patterns);
  g_test_add_func ("/lines/takes bounded time for a pattern", test_pattern_time);
  return g_test_run ();
}
