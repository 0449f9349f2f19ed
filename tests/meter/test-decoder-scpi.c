/* test-decoder-scpi.c: the answers of an instrument, and what is no answer.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#include "decoder-probe.h"
#include "rw-number.h"

static void
test_answers (void)
{
  static const char *const cases[][2] = {
    { "+5.01200000E+00\n", "5.012 V dc step 1e-08\n" },
    { "-1.50E-02\r\n", "-0.015 V dc step 0.0001\n" },
    { " 3.3 \r\n", "3.3 V dc step 0.1\n" },
    { "+1.0E+00,+2.0E+00\n", "1 V dc step 0.1\n2 V dc step 0.1\n" },
    { "+1.0E+00;+2.0E+00\n", "1 V dc step 0.1\n2 V dc step 0.1\n" },
    { "+9.90000000E+37\n", "- V dc step 0 over\n" },
    { "-9.90000000E+37\n", "- V dc step 0 over\n" },
    { "+9.91000000E+37\n", "- V dc step 0 over\n" },
    { "+9.89999995E+37\n", "- V dc step 0 over\n" },
    { "9.9E37\n", "- V dc step 0 over\n" },
    { "+0.0000E+00\n", "0 V dc step 0.0001\n" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = decoder_probe_text ("scpi", cases[i][0]);

      g_test_message ("“%s”", cases[i][0]);
      g_assert_cmpstr (got, ==, cases[i][1]);
    }
}

static void
test_no_answers (void)
{
  static const char *const lines[] = {
    "-113,\"Undefined header\"", "0,\"No error\"", "HARBOUR LANE,M3,0,11-5-2", "+1.0E+00,",
    ",+1.0E+00", "1E400", "1E-400", "+3.300000E+00VDC", "1,5x", "12:30", "0x1F", "#H1F",
    "#15HELLO", "inf", "nan", "1.2.3", "--5", "OL", "\"5\"", "1 2",
  };
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("scpi");

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autofree char *line = g_strconcat (lines[i], "\r\n", NULL);
      g_autofree char *got = decoder_probe_run (decoder, line, strlen (line), 2, FALSE);
      RwDecoderCounts counts;

      g_test_message ("“%s”", lines[i]);
      g_assert_cmpstr (got, ==, "");
      rw_decoder_get_counts (decoder, &counts);
      g_assert_cmpuint (counts.not_understood, ==, i + 1);
    }
}

static void
take_value (const RwMeterValue *value,
            gpointer            data)
{
  *(RwMeterValue *) data = *value;
}

/* A line's end and the blanks around it are the line's, not the number's. */
static gboolean
is_one_datum (const char *text)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));

  return *text != '\0' && g_str_equal (text, stripped) && strchr (text, ',') == NULL;
}

/* Each vector of the grammar as a whole answer: a value exactly when it is a number that fits
 * a double. */
static void
test_vectors (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "meter", "numbers-488.json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *vectors;
  guint checked = 0;

  g_assert_true (json_parser_load_from_file (parser, path, NULL));
  vectors = json_object_get_array_member (json_node_get_object (json_parser_get_root (parser)),
                                          "vectors");
  for (guint i = 0; i < json_array_get_length (vectors); i++)
    {
      JsonObject *vector = json_array_get_object_element (vectors, i);
      const char *text = json_object_get_string_member (vector, "text");
      const gboolean number
          = json_object_get_boolean_member (vector, "NRf")
            && json_node_get_value_type (json_object_get_member (vector, "value"))
                   != G_TYPE_STRING;
      g_autofree char *line = g_strconcat (text, "\n", NULL);
      g_autoptr (RwDecoder) decoder = rw_decoder_new ("scpi");
      RwMeterValue got = { 0 };
      RwDecoderCounts counts;

      if (!is_one_datum (text))
        continue;
      g_test_message ("“%s”", text);
      rw_decoder_feed (decoder, (const guint8 *) line, strlen (line), take_value, &got);
      rw_decoder_get_counts (decoder, &counts);
      g_assert_cmpuint (counts.values, ==, number ? 1 : 0);
      g_assert_cmpuint (counts.not_understood, ==, number ? 0 : 1);
      if (number && fabs (json_object_get_double_member (vector, "value")) < RW_NUMBER_SENTINEL)
        g_assert_true (got.value == json_object_get_double_member (vector, "value"));
      else if (number)
        g_assert_true (got.over);
      checked++;
    }
  g_assert_cmpuint (checked, >, 55);
}

static void
test_chunks (void)
{
  g_autoptr (GString) stream = g_string_new (NULL);
  g_autoptr (GString) wanted = g_string_new (NULL);

  for (guint i = 0; i < 200; i++)
    {
      g_string_append_printf (stream, "+%u.%03uE+00%s", i, i, i % 2 == 0 ? "\n" : "\r\n");
      g_string_append_printf (wanted, "%g V dc step 0.001\n", i + i / 1000.0);
      if (i % 7 == 0)
        g_string_append (stream, "-113,\"Undefined header\"\n\x81\x02\n");
    }
  for (gsize chunk = 1; chunk <= 64; chunk++)
    {
      g_autoptr (RwDecoder) decoder = rw_decoder_new ("scpi");
      g_autofree char *got = decoder_probe_run (decoder, stream->str, stream->len, chunk, FALSE);

      g_assert_cmpstr (got, ==, wanted->str);
    }
}

static void
test_other_unit (void)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new ("scpi");
  g_autofree char *got = NULL;

  rw_decoder_assume (decoder, RW_METER_UNIT_OHM, RW_METER_MODE_NONE);
  got = decoder_probe_run (decoder, "+1.5E+03\n", 9, 9, FALSE);
  g_assert_cmpstr (got, ==, "1500 ohm none step 100\n");
}

static void
test_format_list (void)
{
  const char *const *formats = rw_decoder_list_formats ();

  g_assert_true (g_strv_contains (formats, "lines") && g_strv_contains (formats, "scpi"));
  for (guint i = 0; formats[i] != NULL; i++)
    {
      g_autoptr (RwDecoder) decoder = rw_decoder_new (formats[i]);

      g_assert_cmpstr (rw_decoder_get_format (decoder), ==, formats[i]);
      g_assert_nonnull (rw_decoder_get_title (formats[i]));
      g_assert_cmpuint (rw_decoder_get_usual_line (formats[i])->baud, >=, 75);
      for (guint k = 0; k < i; k++)
        g_assert_cmpstr (formats[k], !=, formats[i]);
    }
  g_assert_null (rw_decoder_new ("no-such-format"));
  g_assert_null (rw_decoder_get_title ("no-such-format"));
  g_assert_null (rw_decoder_get_usual_line ("no-such-format"));
}

static void
test_kinds (void)
{
  static const struct
  {
    RwMeterUnit unit;
    RwMeterMode mode;
    int         kind; /* −1: none */
  } cases[] = {
    { RW_METER_UNIT_VOLT, RW_METER_MODE_NONE, RW_KIND_DC },
    { RW_METER_UNIT_VOLT, RW_METER_MODE_DC, RW_KIND_DC },
    { RW_METER_UNIT_VOLT, RW_METER_MODE_AC, RW_KIND_RIPPLE },
    { RW_METER_UNIT_VOLT, RW_METER_MODE_AC_DC, -1 },
    { RW_METER_UNIT_VOLT, RW_METER_MODE_DIODE, -1 },
    { RW_METER_UNIT_AMPERE, RW_METER_MODE_DC, RW_KIND_AMPS },
    { RW_METER_UNIT_AMPERE, RW_METER_MODE_AC, -1 },
    { RW_METER_UNIT_OHM, RW_METER_MODE_CONTINUITY, RW_KIND_OHMS },
    { RW_METER_UNIT_CELSIUS, RW_METER_MODE_NONE, RW_KIND_CELSIUS },
    { RW_METER_UNIT_FARAD, RW_METER_MODE_NONE, -1 },
    { RW_METER_UNIT_HERTZ, RW_METER_MODE_NONE, -1 },
    { RW_METER_UNIT_NONE, RW_METER_MODE_DC, -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const RwMeterValue value = { .value = 1, .unit = cases[i].unit, .mode = cases[i].mode };
      RwKind kind = RW_N_KINDS;

      g_assert_cmpint (rw_meter_value_get_kind (&value, &kind), ==, cases[i].kind >= 0);
      g_assert_cmpint (kind, ==, cases[i].kind >= 0 ? (RwKind) cases[i].kind : RW_N_KINDS);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scpi/reads numbers and the words for no value", test_answers);
  g_test_add_func ("/scpi/takes no number out of anything else", test_no_answers);
  g_test_add_func ("/scpi/agrees with the grammar", test_vectors);
  g_test_add_func ("/scpi/gives the same values however the bytes are cut", test_chunks);
  g_test_add_func ("/scpi/has the unit that was asked for", test_other_unit);
  g_test_add_func ("/decoder/lists its formats", test_format_list);
  g_test_add_func ("/value/fits a kind of reading or none", test_kinds);
  return g_test_run ();
}
