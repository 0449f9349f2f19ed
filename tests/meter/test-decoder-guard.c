/* test-decoder-guard.c: when a frame is believed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A script of frames, a letter or number each, and what comes out of it.
 */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "rw-decoder-guard.h"

static void
write_down (const RwDecoderDisplay *display,
            gpointer                data)
{
  GString *out = data;

  g_string_append_printf (out, "%s%s%u%s", out->len > 0 ? " " : "",
                          display->negative ? "-" : "", display->counts,
                          display->power != 0 ? "k" : "");
  if (display->place > 0)
    g_string_append_printf (out, "/%u", display->place);
}

/* "-12k/1": minus, 12 counts, another range, the second place. */
static RwDecoderDisplay
read_word (const char *word)
{
  RwDecoderDisplay display = { .unit = RW_METER_UNIT_VOLT, .mode = RW_METER_MODE_DC };
  char *end;

  display.negative = *word == '-';
  display.counts = (guint32) strtoul (word + (display.negative ? 1 : 0), &end, 10);
  display.power = *end == 'k' ? 3 : 0;
  if (*end == 'k')
    end++;
  display.place = *end == '/' ? (guint) (end[1] - '0') : 0;
  return display;
}

/* "|" is a restart, "." the end. (transfer full) */
static char *
run (const char     *script,
     RwDecoderGuard *guard)
{
  g_auto (GStrv) words = g_strsplit (script, " ", -1);
  GString *out = g_string_new (NULL);

  memset (guard, 0, sizeof *guard);
  for (guint i = 0; words[i] != NULL; i++)
    {
      const RwDecoderDisplay display = read_word (words[i]);

      if (g_str_equal (words[i], "|"))
        rw_decoder_guard_restart (guard);
      else if (g_str_equal (words[i], "."))
        rw_decoder_guard_end (guard, write_down, out);
      else
        rw_decoder_guard_take (guard, &display, write_down, out);
    }
  return g_string_free (out, FALSE);
}

typedef struct
{
  const char *script;
  const char *wanted;
  guint64     doubted;
} Case;

static void
check_cases (const Case *cases,
             guint       n)
{
  for (guint i = 0; i < n; i++)
    {
      RwDecoderGuard guard;
      g_autofree char *got = run (cases[i].script, &guard);

      g_test_message ("%s", cases[i].script);
      g_assert_cmpstr (got, ==, cases[i].wanted);
      g_assert_cmpuint (guard.doubted, ==, cases[i].doubted);
    }
}

static void
test_agreement (void)
{
  static const Case cases[] = {
    { "100", "", 0 },
    { "100 100", "100 100", 0 },
    { "100 100 100", "100 100 100", 0 },
    { "100 100 200 100", "100 100 100", 1 },
    { "100 100 200 200", "100 100 200 200", 0 },
    { "101 100 100", "100 100", 1 },     /* the first is bad, by one count */
    { "100 101 100", "100 100", 1 },     /* the second */
    { "100 100 101 .", "100 100", 1 },   /* the last */
    { "100 100 150 200 200", "100 100 200 200", 1 }, /* a bad one between two levels */
    { "100 100 200 150 200", "100 100 200 200", 1 },
    { "100 100 101 102 102", "100 100 102 102", 1 }, /* close to both levels */
    { "100 100 -100 100", "100 100 100", 1 },
    { "100 100 -100 -100", "100 100 -100 -100", 0 },
    { "100 100 100k 100", "100 100 100", 1 },
    { "100 100 100k 100k", "100 100 100k 100k", 0 },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_vouching (void)
{
  static const Case cases[] = {
    /* wavering: three different ones close together, one of them odd */
    { "100 101 103", "100", 0 },
    { "100 101 104", "", 0 },
    { "100 102 101 103", "100 102", 0 },
    { "100 500 101 102 103", "101", 2 },
    { "5000 5005 5001", "5000", 0 },
    { "100 101 -102", "", 0 },
    { "100 101 102k", "", 0 },
    /* moving: four one way */
    { "100 110 120", "", 0 },
    { "100 110 120 130", "100 110", 0 },
    { "100 100 110 120 130", "100 100 110", 0 },
    { "100 100 110 120 115", "100 100", 0 },
    { "200 200 180 160 140 120", "200 200 180 160", 0 },
    /* what was believed shortly before is believed again, for a while */
    { "100 100 101 101 100 101 100", "100 100 101 101 100 101 100", 0 },
    { "7 7 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8 7 8",
      "7 7 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8 7 8", 0 },
    { "7 7 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8 7 8",
      "7 7 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8 8", 1 },
    /* nothing agrees for long: what is dropped counts once it cannot come out any more */
    { "100 900 300 700 200 800", "", 0 },
    { "100 900 300 700 200 800 800", "800 800", 5 },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_end (void)
{
  static const Case cases[] = {
    { "100 .", "100", 0 },
    { "100 900 300 700 200 800 .", "100 900 300 700 200 800", 0 },
    { "100 900 300 900 .", "900 900", 2 },
    { "100 100 900 .", "100 100", 1 },
    { "100 900 | 300 .", "300", 2 },
    { "100 100 | 100", "100 100", 0 },
    { "100 100 | 300 .", "100 100", 1 },
    { "100 100 200 | 200 200", "100 100 200 200", 1 },
    { "100 . . 100 100", "100 100 100", 0 },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

static void
test_early (void)
{
  g_autoptr (GString) script = g_string_new (NULL);
  g_autoptr (GString) wanted = g_string_new (NULL);
  RwDecoderGuard guard;

  for (guint i = 0; i < 70; i++)
    {
      const guint counts = i % 2 == 0 ? 1000 + 10 * i : 9000 - 10 * i;

      g_string_append_printf (script, "%u ", counts);
      if (i < RW_DECODER_GUARD_EARLY)
        g_string_append_printf (wanted, "%s%u", i > 0 ? " " : "", counts);
    }
  g_string_append (script, ".");

  g_autofree char *got = run (script->str, &guard);

  g_assert_cmpstr (got, ==, wanted->str);
  g_assert_cmpuint (guard.doubted, ==, 70 - RW_DECODER_GUARD_EARLY);
}

static void
test_places (void)
{
  static const Case cases[] = {
    { "100/1 100/1", "100/1 100/1", 0 },
    /* two displays in turn: the main one, as soon as it is believed */
    { "100 50/1 100 50/1 100 50/1 101 50/1 101", "100 100 100 101 101", 0 },
    { "50/1 100 50/1 100 50/1 100", "50/1 50/1 100 100 100", 0 },
    /* a single frame that says it was of the main one stops nothing, nor do two far apart */
    { "50/1 50/1 50 50/1 50/1", "50/1 50/1 50/1 50/1", 0 },
    { "5/1 5/1 5 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5 5/1",
      "5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1", 1 },
    /* the main one is switched off */
    { "7 7 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1 5/1", "7 7 5/1 5/1", 0 },
    /* each alone, in a capture of single readings */
    { "100 50/1 200/2 .", "100 50/1 200/2", 0 },
  };

  check_cases (cases, G_N_ELEMENTS (cases));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/guard/believes what was said twice", test_agreement);
  g_test_add_func ("/guard/believes what wavers or moves", test_vouching);
  g_test_add_func ("/guard/hands out single readings at the end, and only those", test_end);
  g_test_add_func ("/guard/remembers a bounded number of single readings", test_early);
  g_test_add_func ("/guard/keeps the displays of a meter apart", test_places);
  return g_test_run ();
}
