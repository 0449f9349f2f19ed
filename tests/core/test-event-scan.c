/* test-event-scan.c: the fast scanner and the JSON parser read the same event from the same line.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A space after the first brace turns the scanner away and changes nothing for the parser.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-event-json.h"
#include "rw-event-scan.h"

static guint n_scanned;

static void
compare_ways (const char *line)
{
  g_autofree char *spaced = g_strconcat ("{ ", line + 1, NULL);
  RwEvent scanned, read, parsed;
  g_autoptr (GError) error = NULL;

  g_assert_false (rw_event_scan (spaced, strlen (spaced), &scanned));

  const gboolean taken = rw_event_scan (line, strlen (line), &scanned);
  const gboolean good = rw_event_from_line (spaced, strlen (spaced), &parsed, &error);

  if (taken && !good)
    g_error ("the scanner takes %s, the parser says: %s", line, error->message);
  g_assert_cmpint (rw_event_from_line (line, strlen (line), &read, NULL), ==, good);
  if (taken)
    {
      g_assert_null (parsed.line);
      fixture_assert_same_event (&scanned, &parsed);
      g_assert_cmpint (signbit (scanned.reading.value) != 0 && scanned.reading.value != 0, ==,
                       scanned.reading.value < 0);
      n_scanned++;
    }
  if (good)
    {
      g_assert_cmpint (read.type, ==, parsed.type);
      g_assert_cmpuint (read.n, ==, parsed.n);
      rw_event_clear (&read);
      rw_event_clear (&parsed);
    }
}

static char *
random_number (GRand *random)
{
  static const char *const awkward[] = {
    "0",     "-0",    "0.0",   "-0.000", "00",     "007",  "0.5",  "-.5",  ".5",  "5.",  "1e3",  "1E-3", "+5",
    "5.021", "-5.02", "1.000", "9.99999999999999", "999999999999999", "9999999999999999", "0.000000000000001",
    "0.0000000000000001", "123456789012345.6", "12345678901234.5", "4.35", "0.1", "0.3", "2.675", "1.005", "3.465",
    "12.600000000000001", "5,02", "5.0.2", "--5", "0x10", "nan", "null", "true", "\"5\"", "1e400", "4e9", "4000000000",
    "4000000001", "1", "2.5", "1000000000", "1000000000.5", "72057594037927937", "9007199254740993", "", "-", "5 ", " 5",
  };

  if (g_rand_int_range (random, 0, 3) > 0)
    {
      const int decimals = g_rand_int_range (random, 0, 10);

      const int whole = g_rand_int_range (random, 0, 20000);
      const int rest = g_rand_int_range (random, 0, (int) fmin (pow (10, decimals), 2e9));
      const char *sign = g_rand_boolean (random) ? "-" : "";

      return decimals > 0 ? g_strdup_printf ("%s%d.%0*d", sign, whole, decimals, rest)
                          : g_strdup_printf ("%s%d", sign, whole);
    }
  return g_strdup (awkward[g_rand_int_range (random, 0, G_N_ELEMENTS (awkward))]);
}

static const char *
pick (GRand             *random,
      const char *const *words,
      guint              n)
{
  /* The first one most of the time, so that whole lines come out good often enough. */
  return words[g_rand_int_range (random, 0, 4) > 0 ? 0 : g_rand_int_range (random, 0, (int) n)];
}

#define PICK(random, ...)                             \
  pick (random, (const char *const[]){ __VA_ARGS__ }, \
        G_N_ELEMENTS (((const char *const[]){ __VA_ARGS__ })))

static char *
random_line (GRand *random)
{
  g_autofree char *good_n = g_strdup_printf ("%d", g_rand_int_range (random, 1, 99999));
  g_autofree char *good_t = g_strdup_printf ("%d.%03d", g_rand_int_range (random, 0, 9999),
                                             g_rand_int_range (random, 0, 1000));
  g_autofree char *n = random_number (random), *t = random_number (random);
  g_autofree char *value = random_number (random), *step = random_number (random);
  GString *line = g_string_new (NULL);

  g_string_printf (line,
                   "{\"n\":%s,\"t\":%s,\"%s\":{\"rail\":\"%s\",\"place\":\"%s\",\"kind\":\"%s\","
                   "\"value\":%s",
                   PICK (random, good_n, n), PICK (random, good_t, t),
                   PICK (random, "sample", "reading", "reading", "samples", "trim"),
                   PICK (random, "p5", "m5", "a-long-rail-name-of-31-characters",
                         "a-long-rail-name-of-30-letters-", "x_y", "", "é", "p\\u0035"),
                   PICK (random, "board", "terminals", "chip", "wire", "moon", ""),
                   PICK (random, "dc", "ripple", "ohms", "amps", "celsius", "lux"), value);
  if (g_rand_boolean (random))
    g_string_append_printf (line, ",\"step\":%s", PICK (random, "0.001", step));
  if (g_rand_boolean (random))
    g_string_append_printf (line, ",\"meter\":\"%s\"", PICK (random, "m1", "m2", "", "my meter"));
  g_string_append (line, PICK (random, "}}", "}}", "}} ", "},\"x\":1}", ",\"u\":0.1}}",
                               ",\"over\":true}}", "}", "}}}"));
  return g_string_free (line, FALSE);
}

static void
test_both_ways_agree (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (31);
  const guint n_lines = 60000;

  n_scanned = 0;
  for (guint i = 0; i < n_lines; i++)
    {
      g_autofree char *line = random_line (random);

      compare_ways (line);
    }
  g_test_message ("%u of %u lines were taken by the scanner", n_scanned, n_lines);
  g_assert_cmpuint (n_scanned, >, n_lines / 10);
}

/* One byte of a good line changed, every place, many values. */
static void
test_both_ways_agree_on_damage (void)
{
  const char *good = "{\"n\":31,\"t\":4.40,\"sample\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.02,"
                     "\"step\":0.01,\"meter\":\"m1\"}}";

  for (gsize i = 1; i < strlen (good); i++)
    for (int c = 1; c < 256; c++)
      {
        g_autofree char *line = g_strdup (good);

        line[i] = (char) c;
        compare_ways (line);
      }
}

static void
test_our_own_lines_are_scanned (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (33);

  for (int counts = -19999; counts < 20000; counts += 3)
    {
      const RwReading reading = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, counts * 0.001,
                                                 0.001, "m1");
      RwEvent event = rw_event_make_sample (g_rand_double_range (random, 0, 7200), &reading),
          scanned;

      event.n = (guint) (counts + 20000);
      event.t = round (event.t * 1e6) / 1e6;

      g_autofree char *line = fixture_line (&event);

      /* 0.001·5021 is not 5.021: seventeen digits are needed then, and the parser's turn it is. */
      if (!rw_event_scan (line, strlen (line), &scanned))
        {
          g_assert_cmpuint (strlen (strstr (line, "\"value\":")), >,
                            strlen ("\"value\":,\"step\":0.001,\"meter\":\"m1\"}}") + 15);
          continue;
        }
      fixture_assert_same_event (&event, &scanned);
    }
}

/* Digits as a meter shows them always go the fast way. */
static void
test_shown_digits_are_scanned (void)
{
  for (int counts = -19999; counts < 20000; counts++)
    {
      g_autofree char *line = g_strdup_printf ("{\"n\":7,\"t\":4.400,\"sample\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\","
                                               "\"value\":%s%d.%03d}}", counts < 0 ? "-" : "", ABS (counts) / 1000, ABS (counts) % 1000);
      g_autofree char *number = g_strdup_printf ("%s%d.%03d", counts < 0 ? "-" : "",
                                                 ABS (counts) / 1000, ABS (counts) % 1000);
      RwEvent scanned;

      g_assert_true (rw_event_scan (line, strlen (line), &scanned));
      g_assert_cmpfloat (scanned.reading.value, ==, g_ascii_strtod (number, NULL));
    }
}

/* The cache of names never hands out the wrong one. */
static void
test_many_names (void)
{
  for (guint round = 0; round < 3; round++)
    for (guint i = 0; i < 40; i++)
      {
        g_autofree char *line =
            g_strdup_printf ("{\"n\":7,\"t\":4.400,\"sample\":{\"rail\":\"r%u\",\"place\":\"board\",\"kind\":\"dc\","
                                                 "\"value\":5.02,\"meter\":\"m%u\"}}", i, 39 - i);
        g_autofree char *rail = g_strdup_printf ("r%u", i);
        g_autofree char *meter = g_strdup_printf ("m%u", 39 - i);
        RwEvent scanned;

        g_assert_true (rw_event_scan (line, strlen (line), &scanned));
        g_assert_true (scanned.reading.rail == g_intern_string (rail));
        g_assert_true (scanned.reading.meter == g_intern_string (meter));
      }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/event-scan/both-ways-agree", test_both_ways_agree);
  g_test_add_func ("/event-scan/both-ways-agree-on-damage", test_both_ways_agree_on_damage);
  g_test_add_func ("/event-scan/our-own-lines-are-scanned", test_our_own_lines_are_scanned);
  g_test_add_func ("/event-scan/shown-digits-are-scanned", test_shown_digits_are_scanned);
  g_test_add_func ("/event-scan/many-names", test_many_names);
  return g_test_run ();
}
