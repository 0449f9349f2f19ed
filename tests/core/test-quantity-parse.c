/* test-quantity-parse.c: numbers as people type them, in a locale with a point and one with a comma.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-quantity.h"

typedef struct
{
  const char *text;
  RwKind      kind;
  double      value, step;
  gboolean    has_sign, has_unit;
} Good;

static const Good good[] = {
  { "5.02", RW_KIND_DC, 5.02, 0.01, FALSE, FALSE },
  { "5,02", RW_KIND_DC, 5.02, 0.01, FALSE, FALSE },
  { "5", RW_KIND_DC, 5, 1, FALSE, FALSE },
  { "5.", RW_KIND_DC, 5, 1, FALSE, FALSE },
  { ".5", RW_KIND_DC, 0.5, 0.1, FALSE, FALSE },
  { ",035", RW_KIND_DC, 0.035, 0.001, FALSE, FALSE },
  { "5.000", RW_KIND_DC, 5, 0.001, FALSE, FALSE },
  { "  12.04  ", RW_KIND_DC, 12.04, 0.01, FALSE, FALSE },
  { "3.3", RW_KIND_DC, 3.3, 0.1, FALSE, FALSE },
  { "3,3", RW_KIND_DC, 3.3, 0.1, FALSE, FALSE },
  { "1,234", RW_KIND_DC, 1.234, 0.001, FALSE, FALSE },
  { "+5.02", RW_KIND_DC, 5.02, 0.01, TRUE, FALSE },
  { "-5.02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },
  { "−5.02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },            /* U+2212 */
  { "–5,02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },            /* U+2013 */
  { "\u20105.02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },       /* hyphen */
  { "\u20115.02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },       /* no-break hyphen */
  { "\uFF0D5.02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },       /* full-width */
  { "− 5.02", RW_KIND_DC, -5.02, 0.01, TRUE, FALSE },
  { "-0.00", RW_KIND_DC, 0, 0.01, TRUE, FALSE },
  { "5.02V", RW_KIND_DC, 5.02, 0.01, FALSE, TRUE },
  { "5.02 V", RW_KIND_DC, 5.02, 0.01, FALSE, TRUE },
  { "5,02\u00A0V", RW_KIND_DC, 5.02, 0.01, FALSE, TRUE },
  { "5,02\u202FV", RW_KIND_DC, 5.02, 0.01, FALSE, TRUE },
  { "5,02\u2009v", RW_KIND_DC, 5.02, 0.01, FALSE, TRUE },
  { "\uFEFF5.02\r\n", RW_KIND_DC, 5.02, 0.01, FALSE, FALSE },
  { "35 mV", RW_KIND_DC, 0.035, 0.001, FALSE, TRUE },
  { "35m", RW_KIND_DC, 0.035, 0.001, FALSE, TRUE },
  { "−35,5 mv", RW_KIND_DC, -0.0355, 0.0001, TRUE, TRUE },
  { "3.3 \u00B5V", RW_KIND_DC, 3.3e-6, 1e-7, FALSE, TRUE },
  { "3.3 \u03BCV", RW_KIND_DC, 3.3e-6, 1e-7, FALSE, TRUE },
  { "3.3 uV", RW_KIND_DC, 3.3e-6, 1e-7, FALSE, TRUE },
  { "0.12 kV", RW_KIND_DC, 120, 10, FALSE, TRUE },
  { "12 mV", RW_KIND_RIPPLE, 0.012, 0.001, FALSE, TRUE },
  { "47 \u03A9", RW_KIND_OHMS, 47, 1, FALSE, TRUE },
  { "47 \u2126", RW_KIND_OHMS, 47, 1, FALSE, TRUE },
  { "4.7 k\u03A9", RW_KIND_OHMS, 4700, 100, FALSE, TRUE },
  { "4.7 k\u2126", RW_KIND_OHMS, 4700, 100, FALSE, TRUE },
  { "1.2 M\u03A9", RW_KIND_OHMS, 1.2e6, 1e5, FALSE, TRUE },
  { "1.2 M\u2126", RW_KIND_OHMS, 1.2e6, 1e5, FALSE, TRUE },
  { "20 m\u2126", RW_KIND_OHMS, 0.02, 0.001, FALSE, TRUE },
  { "4,7k", RW_KIND_OHMS, 4700, 100, FALSE, TRUE },
  { "250 mA", RW_KIND_AMPS, 0.25, 0.001, FALSE, TRUE },
  { "1.5 A", RW_KIND_AMPS, 1.5, 0.1, FALSE, TRUE },
  { "62 °C", RW_KIND_CELSIUS, 62, 1, FALSE, TRUE },
};

static void
test_good_numbers (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      const Good *row = &good[i];
      g_autoptr (GError) error = NULL;
      RwQuantityTyped typed;

      g_test_message ("“%s”", row->text);
      g_assert_true (rw_quantity_parse (row->text, row->kind, &typed, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat (typed.value, ==, row->value);
      g_assert_cmpfloat (typed.step, ==, row->step);
      g_assert_cmpint (typed.has_sign, ==, row->has_sign);
      g_assert_cmpint (typed.has_unit, ==, row->has_unit);
      g_assert_false (typed.over);
    }
}

static const struct
{
  const char     *text;
  RwKind          kind;
  RwQuantityError code;
} bad[] = {
  { "", RW_KIND_DC, RW_QUANTITY_ERROR_EMPTY },
  { " \t\u00A0\u202F", RW_KIND_DC, RW_QUANTITY_ERROR_EMPTY },
  { "-", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "+", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { ".", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { ",", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "V", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "mV", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "--5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "+-5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5-", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5.0.2", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1,234.5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1.234,5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1 234,5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1\u202F234,5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1\u00A0234", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5 02", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5 .02", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5. 02", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5.02 5.03", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5e3", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1e400", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "12:30", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "nan", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "nan(123)", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "inf", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "INFINITY", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "OLD", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "OL!", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "OL5", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "1234567890123", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "\xFF", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "5.02\xC3", RW_KIND_DC, RW_QUANTITY_ERROR_NUMBER },
  { "0x1p3", RW_KIND_DC, RW_QUANTITY_ERROR_UNIT },
  { "5 A", RW_KIND_DC, RW_QUANTITY_ERROR_UNIT },
  { "5 MV", RW_KIND_DC, RW_QUANTITY_ERROR_UNIT },
  { "5 apples", RW_KIND_DC, RW_QUANTITY_ERROR_UNIT },
  { "5 V!", RW_KIND_DC, RW_QUANTITY_ERROR_UNIT },
  { "5 V", RW_KIND_OHMS, RW_QUANTITY_ERROR_UNIT },
  { "5 Ω", RW_KIND_RIPPLE, RW_QUANTITY_ERROR_UNIT },
};

static void
test_bad_numbers (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      RwQuantityTyped typed;

      g_assert_false (rw_quantity_parse (bad[i].text, bad[i].kind, &typed, &error));
      g_test_message ("“%s”", error->message);
      g_assert_error (error, RW_QUANTITY_ERROR, bad[i].code);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      if (bad[i].code != RW_QUANTITY_ERROR_EMPTY && g_utf8_validate (bad[i].text, -1, NULL))
        g_assert_nonnull (strstr (error->message, bad[i].text)); /* shows what was typed */
    }
}

static void
test_overload_words (void)
{
  static const char *const words[] = { "OL",   "ol",   "O.L", "0L", "0.L",  ".OL",  "-OL",
                                       "−OL",  "OVLD", "OL V", "OL mV", "----", "1----", "−−−−", " OL " };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      g_autoptr (GError) error = NULL;
      RwQuantityTyped typed;

      g_test_message ("“%s”", words[i]);
      g_assert_true (rw_quantity_parse (words[i], RW_KIND_DC, &typed, &error));
      g_assert_no_error (error);
      g_assert_true (typed.over);
      g_assert_true (isnan (typed.value));
    }
}

/* The published table of traps: what is a single number there must be that number here. */
static void
test_published_traps (void)
{
  static const char *const refused[] = { "1,234.5", "1.234,5", "0x1p3", "nan(123)", "inf",
                                         "INFINITY", "1e400", "12:30" };
  g_autoptr (JsonNode) data = fixture_refdata ("ieee754_locale_traps.json");
  JsonObject *computed = json_object_get_object_member (json_node_get_object (data), "computed");
  JsonArray *singles = json_object_get_array_member (computed, "singles");
  RwQuantityTyped typed;
  guint tried = 0;

  for (guint i = 0; i < json_array_get_length (singles); i++)
    {
      JsonObject *row = json_array_get_object_element (singles, i);
      const char *text = json_object_get_string_member (row, "text");

      if (strchr (text, 'e') != NULL)
        continue; /* no meter shows an exponent, and nobody types one */
      g_assert_true (rw_quantity_parse (text, RW_KIND_DC, &typed, NULL));
      /* Hexadecimal: exact, and strtod reads it alike in every locale that has a point there. */
      g_assert_cmpfloat (typed.value, ==, g_ascii_strtod (json_object_get_string_member (row,
                                                                                         "double_hex"), NULL));
      tried++;
    }
  g_assert_cmpuint (tried, ==, 3);
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    g_assert_false (rw_quantity_parse (refused[i], RW_KIND_DC, &typed, NULL));
}

/* Typed digits give the double nearest to them, in volts and in millivolts, with either mark. */
static void
test_every_count_is_exact (void)
{
  for (int counts = -19999; counts <= 19999; counts += 7)
    {
      g_autofree char *volts = g_strdup_printf ("%s%d.%03d", counts < 0 ? "-" : "",
                                                ABS (counts) / 1000, ABS (counts) % 1000);
      g_autofree char *milli = g_strdup_printf ("%d mV", counts);
      g_autofree char *comma = g_strdelimit (g_strdup (volts), ".", ',');
      const double wanted = g_ascii_strtod (volts, NULL);
      RwQuantityTyped typed;

      g_assert_true (rw_quantity_parse (volts, RW_KIND_DC, &typed, NULL));
      g_assert_cmpfloat (typed.value, ==, wanted);
      g_assert_true (rw_quantity_parse (comma, RW_KIND_DC, &typed, NULL));
      g_assert_cmpfloat (typed.value, ==, wanted);
      g_assert_true (rw_quantity_parse (milli, RW_KIND_DC, &typed, NULL));
      g_assert_cmpfloat (typed.value, ==, wanted);
      g_assert_cmpfloat (typed.step, ==, 0.001);
    }
}

static void
test_rubbish_never_harms (void)
{
  static const char *const pieces[] = { "5",  "0",  ".",  ",",   "-",  "−", "+", " ", "\u202F", "V",
                                        "mV", "OL", "µ",  "\xFF", "e3", "x", "Ω", "k", "1----", "\xF0\x9F" };
  g_autoptr (GRand) random = g_rand_new_with_seed (17);

  for (guint i = 0; i < 40000; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      RwQuantityTyped typed;

      for (int n = g_rand_int_range (random, 0, 8); n > 0; n--)
        g_string_append (text, pieces[g_rand_int_range (random, 0, G_N_ELEMENTS (pieces))]);
      if (rw_quantity_parse (text->str, (RwKind) (i % RW_N_KINDS), &typed, &error))
        g_assert_true (typed.over ? isnan (typed.value) : isfinite (typed.value) && typed.step > 0);
      else
        g_assert_nonnull (error);
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/quantity/parse/good-numbers", test_good_numbers);
  g_test_add_func ("/quantity/parse/bad-numbers", test_bad_numbers);
  g_test_add_func ("/quantity/parse/overload-words", test_overload_words);
  g_test_add_func ("/quantity/parse/published-traps", test_published_traps);
  g_test_add_func ("/quantity/parse/every-count-is-exact", test_every_count_is_exact);
  g_test_add_func ("/quantity/parse/rubbish-never-harms", test_rubbish_never_harms);
  return g_test_run ();
}
