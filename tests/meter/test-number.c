/* test-number.c: numbers and units as instruments write them, against published vectors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * numbers-488.json: the grammar of IEEE Std 488.2-1992 and SCPI-1999 as vectors.
 * numbers-traps.json: what strtod and locales get wrong, with exact values.
 */
#include "config.h"

#include <json-glib/json-glib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "rw-number.h"
#include "rw-unit-text.h"

static JsonObject *
load (const char  *name,
      JsonParser **parser)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "meter", name, NULL);
  g_autoptr (GError) error = NULL;

  *parser = json_parser_new ();
  json_parser_load_from_file (*parser, path, &error);
  g_assert_no_error (error);
  return json_node_get_object (json_parser_get_root (*parser));
}

static RwNumberForms
wanted_forms (JsonObject *vector)
{
  static const char *const names[] = { "NR1", "NR2", "NR3", "NRf" };
  RwNumberForms forms = 0;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (json_object_get_boolean_member (vector, names[i]))
      forms |= 1 << i;
  return forms;
}

static void
check_value (JsonObject     *vector,
             RwNumberStatus  status,
             const RwNumber *number)
{
  JsonNode *wanted = json_object_get_member (vector, "value");
  double value = NAN;

  g_assert_cmpint (status, ==, RW_NUMBER_GOOD);
  status = rw_number_get (number, 0, &value, NULL);
  if (json_node_get_value_type (wanted) == G_TYPE_STRING)
    {
      const gboolean over = g_str_has_prefix (json_node_get_string (wanted), "overflow");

      g_assert_cmpint (status, ==, over ? RW_NUMBER_TOO_LARGE : RW_NUMBER_TOO_SMALL);
      return;
    }
  g_assert_cmpint (status, ==, RW_NUMBER_GOOD);
  g_assert_true (value == json_node_get_double (wanted));
  g_assert_false (signbit (value) && value == 0);
}

static void
test_grammar (void)
{
  g_autoptr (JsonParser) parser = NULL;
  JsonArray *vectors = json_object_get_array_member (load ("numbers-488.json", &parser), "vectors");

  g_assert_cmpuint (json_array_get_length (vectors), ==, 68);
  for (guint i = 0; i < json_array_get_length (vectors); i++)
    {
      JsonObject *vector = json_array_get_object_element (vectors, i);
      const char *text = json_object_get_string_member (vector, "text");
      const RwNumberForms wanted = wanted_forms (vector);
      RwNumber number;
      const RwNumberStatus status = rw_number_parse (text, strlen (text), &number);

      g_test_message ("“%s”", text);
      g_assert_cmpint (status == RW_NUMBER_GOOD ? number.forms : 0, ==, wanted);
      if (wanted != 0)
        check_value (vector, status, &number);
    }
}

static void
test_sentinels (void)
{
  g_autoptr (JsonParser) parser = NULL;
  JsonArray *words = json_object_get_array_member (load ("numbers-488.json", &parser), "sentinels");

  for (guint i = 0; i < json_array_get_length (words); i++)
    {
      const char *text
          = json_object_get_string_member (json_array_get_object_element (words, i), "text");
      RwNumber number;
      double value;

      g_assert_cmpint (rw_number_parse (text, strlen (text), &number), ==, RW_NUMBER_GOOD);
      g_assert_cmpint (rw_number_get (&number, 0, &value, NULL), ==, RW_NUMBER_GOOD);
      g_assert_true (rw_number_is_sentinel (value));
      g_assert_true (rw_number_is_sentinel ((double) (float) value));
    }
  /* 9.9E37 from a meter that keeps single precision and prints nine digits. */
  g_assert_true (rw_number_is_sentinel (9.89999995e37));
  g_assert_false (rw_number_is_sentinel (9.9e36));
  g_assert_false (rw_number_is_sentinel (-1234.5));
}

static void
test_suffixes (void)
{
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *root = load ("numbers-488.json", &parser);
  JsonArray *vectors = json_object_get_array_member (root, "suffix_vectors");

  for (guint i = 0; i < json_array_get_length (vectors); i++)
    {
      JsonObject *vector = json_array_get_object_element (vectors, i);
      const char *text = json_object_get_string_member (vector, "text");
      RwNumber number;
      const char *suffix = text + rw_number_scan (text, strlen (text), '.', &number);
      const char *unit;
      int power;
      double value;

      suffix += strspn (suffix, " ");
      g_test_message ("“%s”", text);
      g_assert_true (rw_unit_text_split_suffix (suffix, strlen (suffix), &power, &unit));
      g_assert_cmpint (rw_number_get (&number, power, &value, NULL), ==, RW_NUMBER_GOOD);
      g_assert_true (value == json_object_get_double_member (vector, "value"));
    }
}

static void
check_multiplier (JsonObject *object,
                  const char *name,
                  JsonNode   *node,
                  gpointer    data)
{
  g_autofree char *word = g_strconcat (name, "V", NULL);
  g_autofree char *text = NULL;
  const char *unit;
  int power;

  g_assert_true (rw_unit_text_split_suffix (word, strlen (word), &power, &unit));
  g_assert_cmpstr (unit, ==, "V");
  text = g_strdup_printf ("1e%d", power);
  g_assert_true (g_ascii_strtod (text, NULL) == json_node_get_double (node));
}

static void
test_multipliers (void)
{
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *root = load ("numbers-488.json", &parser);

  json_object_foreach_member (json_object_get_object_member (root, "suffix_multipliers"),
                              check_multiplier, NULL);
}

/* Every bit of the double, and the last digit's value. */
static void
test_exact (void)
{
  g_autoptr (JsonParser) parser = NULL;
  JsonObject *computed
      = json_object_get_object_member (load ("numbers-traps.json", &parser), "computed");
  JsonArray *singles = json_object_get_array_member (computed, "singles");

  for (guint i = 0; i < json_array_get_length (singles); i++)
    {
      JsonObject *single = json_array_get_object_element (singles, i);
      const char *text = json_object_get_string_member (single, "text");
      RwNumber number;
      double value;

      rw_number_parse (text, strlen (text), &number);
      rw_number_get (&number, 0, &value, NULL);

      /* The hexadecimal form: another path to the same bits. */
      g_assert_true (
          value
          == g_ascii_strtod (json_object_get_string_member (single, "double_hex"), NULL));
    }
}

static void
test_step (void)
{
  static const struct
  {
    const char *text;
    int         shift;
    double      value;
    double      step;
  } cases[] = {
    { "5.012", 0, 5.012, 0.001 },
    { "35", -3, 0.035, 0.001 },
    { "0.4", -3, 0.0004, 0.0001 },
    { "10.03", 3, 10030, 10 },
    { "+1.50E-02", 0, 0.015, 0.0001 },
    { "0", 0, 0, 1 },
    { "5e-324", 0, 4.9406564584124654e-324, 4.9406564584124654e-324 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      RwNumber number;
      double value, step;

      g_assert_cmpint (rw_number_parse (cases[i].text, strlen (cases[i].text), &number), ==,
                       RW_NUMBER_GOOD);
      g_assert_cmpint (rw_number_get (&number, cases[i].shift, &value, &step), ==, RW_NUMBER_GOOD);
      g_assert_true (value == cases[i].value);
      g_assert_true (step == cases[i].step);
    }
}

static void
test_limits (void)
{
  g_autofree char *digits = g_strnfill (RW_NUMBER_MAX_DIGITS, '7');
  g_autofree char *more = g_strconcat (digits, "7", NULL);
  RwNumber number;

  g_assert_cmpint (rw_number_parse (digits, strlen (digits), &number), ==, RW_NUMBER_GOOD);
  g_assert_cmpint (rw_number_parse (more, strlen (more), &number), ==, RW_NUMBER_NOT_ONE);
  g_assert_cmpint (rw_number_parse ("1E32000", 7, &number), ==, RW_NUMBER_GOOD);
  g_assert_cmpint (rw_number_parse ("1E32001", 7, &number), ==, RW_NUMBER_NOT_ONE);
  g_assert_cmpint (rw_number_parse ("1E99999999999999999999", 22, &number), ==, RW_NUMBER_NOT_ONE);
}

/* Each is scanned whole as an overload word, whatever its case. */
static void
test_overload_words (void)
{
  static const char *const words[] = {
    "OL", "O.L", "0L", ".OL", "-OL", "OVLD", "----", "1----", "0.L", "OL.", "--.--", "ol",
    "+OL", "\u2212OL", "OVERLOAD", "OVER", "OVL",
  };
  static const char *const others[] = {
    "", "O", "L", "0.0", "-", "-5", "--5", "---5", "5-", "5", "LO", "OVERT", "-.5", "O..L",
    "0.5",
  };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    g_assert_cmpuint (rw_number_scan_overload (words[i], strlen (words[i])), ==, strlen (words[i]));
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    g_assert_cmpuint (rw_number_scan_overload (others[i], strlen (others[i])), ==, 0);
}

static void
test_marks (void)
{
  RwNumber number;
  double value;

  g_assert_cmpuint (rw_number_scan ("3,3", 3, ',', &number), ==, 3);
  g_assert_cmpint (rw_number_get (&number, 0, &value, NULL), ==, RW_NUMBER_GOOD);
  g_assert_true (value == 3.3);
  g_assert_cmpuint (rw_number_scan ("3,3", 3, '.', &number), ==, 1);
  g_assert_cmpuint (rw_number_scan ("3.3", 3, ',', &number), ==, 1);
  g_assert_cmpuint (rw_number_scan ("\u22123.3V", 7, '.', &number), ==, 6);
  rw_number_get (&number, 0, &value, NULL);
  g_assert_true (value == -3.3);
}

typedef struct
{
  const char *word;
  RwMeterUnit unit;
  int         power;
  RwMeterMode mode;
} UnitCase;

static void
test_units (void)
{
  static const UnitCase cases[] = {
    { "V", RW_METER_UNIT_VOLT, 0, 0 },
    { "mV", RW_METER_UNIT_VOLT, -3, 0 },
    { "MV", RW_METER_UNIT_VOLT, -3, 0 },
    { "\u00B5V", RW_METER_UNIT_VOLT, -6, 0 },
    { "\u03BCV", RW_METER_UNIT_VOLT, -6, 0 },
    { "uV", RW_METER_UNIT_VOLT, -6, 0 },
    { "VDC", RW_METER_UNIT_VOLT, 0, RW_METER_MODE_DC },
    { "mVAC", RW_METER_UNIT_VOLT, -3, RW_METER_MODE_AC },
    { "DCV", RW_METER_UNIT_VOLT, 0, RW_METER_MODE_DC },
    { "Vdc", RW_METER_UNIT_VOLT, 0, RW_METER_MODE_DC },
    { "\u03A9", RW_METER_UNIT_OHM, 0, 0 },
    { "\u2126", RW_METER_UNIT_OHM, 0, 0 },
    { "k\u03A9", RW_METER_UNIT_OHM, 3, 0 },
    { "k\u2126", RW_METER_UNIT_OHM, 3, 0 },
    { "M\u03A9", RW_METER_UNIT_OHM, 6, 0 },
    { "m\u03A9", RW_METER_UNIT_OHM, -3, 0 },
    { "MOHM", RW_METER_UNIT_OHM, 6, 0 },
    { "Mohm", RW_METER_UNIT_OHM, 6, 0 },
    { "kOhm", RW_METER_UNIT_OHM, 3, 0 },
    { "KOHM", RW_METER_UNIT_OHM, 3, 0 },
    { "MHZ", RW_METER_UNIT_HERTZ, 6, 0 },
    { "kHz", RW_METER_UNIT_HERTZ, 3, 0 },
    { "mA", RW_METER_UNIT_AMPERE, -3, 0 },
    { "MA", RW_METER_UNIT_AMPERE, -3, 0 },
    { "UA", RW_METER_UNIT_AMPERE, -6, 0 },
    { "ADC", RW_METER_UNIT_AMPERE, 0, RW_METER_MODE_DC },
    { "nF", RW_METER_UNIT_FARAD, -9, 0 },
    { "\u00B0C", RW_METER_UNIT_CELSIUS, 0, 0 },
    { "\u2103", RW_METER_UNIT_CELSIUS, 0, 0 },
  };
  static const char *const others[] = {
    "", "k", "K", "m", "M", "DC", "AC", "mohm", "mhz", "Vx", "AV", "S", "MS", "%", "dB",
    "kVolts", "mC", "VDCx",
  };
  RwUnitText unit;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("“%s”", cases[i].word);
      g_assert_true (rw_unit_text_read (cases[i].word, strlen (cases[i].word), &unit));
      g_assert_cmpint (unit.unit, ==, cases[i].unit);
      g_assert_cmpint (unit.power, ==, cases[i].power);
      g_assert_cmpint (unit.mode, ==, cases[i].mode);
    }
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      g_test_message ("“%s”", others[i]);
      g_assert_false (rw_unit_text_read (others[i], strlen (others[i]), &unit));
    }
}

/* Makes a German locale of its own below folder, from the descriptions that the system has. */
static void
make_locale (const char *folder)
{
  g_autofree char *out = g_build_filename (folder, "de_DE.UTF-8", NULL);
  const char *argv[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", out, NULL };

  g_spawn_sync (NULL, (char **) argv, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL,
                NULL, NULL, NULL, NULL, NULL, NULL);
  g_setenv ("LOCPATH", folder, TRUE);
}

static void
remove_locale (const char *folder)
{
  const char *argv[] = { "rm", "-rf", folder, NULL };

  g_unsetenv ("LOCPATH");
  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, NULL,
                NULL);
}

/* A program in a locale with a decimal comma reads the same. Skipped only where none can be had. */
static void
test_comma_locale (void)
{
  g_autofree char *folder = g_dir_make_tmp ("railwright-locale-XXXXXX", NULL);
  gboolean set = setlocale (LC_ALL, "de_DE.UTF-8") != NULL;

  if (!set)
    {
      make_locale (folder);
      set = setlocale (LC_ALL, "de_DE.UTF-8") != NULL;
    }
  if (set)
    {
      g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
      g_assert_true (strtod ("3.5", NULL) == 3); /* the trap is set */
      test_grammar ();
      test_exact ();
      test_step ();
      test_suffixes ();
      test_marks ();
      setlocale (LC_ALL, "C.UTF-8");
    }
  else
    g_test_skip ("no locale with a decimal comma can be made here");
  remove_locale (folder);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/number/follows the grammar of IEEE 488.2", test_grammar);
  g_test_add_func ("/number/knows the words for no value in double and single precision",
                   test_sentinels);
  g_test_add_func ("/number/is the nearest double", test_exact);
  g_test_add_func ("/number/knows the value of its last digit", test_step);
  g_test_add_func ("/number/has limits", test_limits);
  g_test_add_func ("/number/tells overload words from numbers", test_overload_words);
  g_test_add_func ("/number/takes the declared mark only", test_marks);
  g_test_add_func ("/number/does not obey the locale", test_comma_locale);
  g_test_add_func ("/unit/reads SCPI suffixes", test_suffixes);
  g_test_add_func ("/unit/reads every SCPI multiplier", test_multipliers);
  g_test_add_func ("/unit/reads meter text", test_units);
  return g_test_run ();
}
