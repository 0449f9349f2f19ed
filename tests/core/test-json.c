/* test-json.c: text from strangers is JSON to the letter or refused; numbers read back.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-json.h"

static void
test_json_is_taken (void)
{
  static const char *const texts[] = {
    "{}", "[]", "0", "-0", "1e5", "1E+06", "-1.5e-3", "true", " [1, 2.50 ,null] ", "\"\"", "\"\\u00e9\\n\\\"\"",
    "{\"a\":{\"b\":[{}]},\"c\":[[],[]]}", "\t{\r\n\"a\" : false }\n", "\"− µ 😀 // /* ' [[\"", "123456789012345678",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = rw_json_parse (texts[i], strlen (texts[i]), &error);

      g_test_message ("%s", texts[i]);
      g_assert_no_error (error);
      g_assert_nonnull (node);
    }
}

/* What the parser behind would take, or worse, misread. */
static void
test_nearly_json_is_refused (void)
{
  static const struct
  {
    const char *text, *message;
  } rows[] = {
    { "", "empty" },
    { " \t", "empty" },
    { "{", "too early" },
    { "[1,", "too early" },
    { "{\"a\":\"x", "too early" },
    { "{\"a\":tru", "“t” at byte 6" },
    { "{\"a\":1}}", "“}” at byte 8" },
    { "{\"a\":1]", "“]” at byte 7" },
    { "{\"a\":1}{\"b\":2}", "“{” at byte 8" },
    { "{\"a\":1,}", "“}” at byte 8" },
    { "[1,]", "“]” at byte 4" },
    { "{\"a\" 1}", "“1” at byte 6" },
    { "{\"a\":1 \"b\":2}", "“\"” at byte 8" },
    { "{a:1}", "“a” at byte 2" },
    { "{'a':1}", "“'” at byte 2" },
    { "{/*x*/\"a\":1}", "“/” at byte 2" },
    { "{\"a\":1}//x", "“/” at byte 8" },
    { "{\"a\":\n 1,\n 'b':2}", "“'” in line 3 at byte 2" },
    { "var x = {\"a\":1};", "“v” at byte 1" },
    { "{\"a\":010}", "“0” at byte 6" },
    { "{\"a\":-01.5}", "“0” at byte 7" },
    { "{\"a\":0x10}", "“x” at byte 7" },
    { "{\"a\":$10}", "“$” at byte 6" },
    { "{\"a\":5.}", "“}” at byte 8" },
    { "{\"a\":.5}", "“.” at byte 6" },
    { "{\"a\":+5}", "“+” at byte 6" },
    { "{\"a\":- 5}", "“ ” at byte 7" },
    { "{\"a\":1e}", "“}” at byte 8" },
    { "{\"a\":nan}", "“n” at byte 6" },
    { "{\"a\":Infinity}", "“I” at byte 6" },
    { "{\"a\":\"t\\qx\"}", "“q” at byte 9" },
    { "{\"a\":\"\\u00g0\"}", "“g” at byte 11" },
    { "{\"a\":\"raw\ttab\"}", "“?” at byte 10" },
    { "{\"a\":µ}", "“µ” at byte 6" },
    { "{\"a\":\"x\\u0000y\"}", "NUL" },
    { "{\"a\":\"\\ud800\"}", "" },
    { "{\"a\":1234567890123456789}", "too long" },
    { "{\"a\":-99999999999999999999}", "too long" },
    { "{\"a\":\"\xFF\"}", "UTF-8" },
    { "{\"a\":\"\xED\xA0\x80\"}", "UTF-8" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = rw_json_parse (rows[i].text, strlen (rows[i].text), &error);

      g_assert_null (node);
      g_assert_nonnull (error);
      g_test_message ("%s", error->message);
      g_assert_true (error->domain == JSON_PARSER_ERROR);
      g_assert_nonnull (strstr (error->message, rows[i].message));
    }
}

static void
test_nul_byte_is_refused (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_json_parse ("{}\0", 3, &error));
  g_assert_nonnull (strstr (error->message, "UTF-8"));
}

static void
assert_refused (GString    *text,
                const char *message)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_json_parse (text->str, text->len, &error));
  g_assert_nonnull (strstr (error->message, message));
}

static void
test_depth_has_an_end (void)
{
  for (guint depth = RW_JSON_MAX_DEPTH; depth <= RW_JSON_MAX_DEPTH + 1; depth++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;

      for (guint i = 0; i < depth; i++)
        g_string_append_c (text, '[');
      for (guint i = 0; i < depth; i++)
        g_string_append_c (text, ']');

      g_autoptr (JsonNode) node = rw_json_parse (text->str, text->len, &error);

      g_assert_cmpint (node != NULL, ==, depth == RW_JSON_MAX_DEPTH);
    }
}

static void
test_deep_and_huge_text_is_harmless (void)
{
  static const char *const starts[] = { "", "{\"n\":1,\"t\":0,\"x\":",
                                        "{\"n\":1,\"t\":0,\"x\":/*\"*/", "\"\\\"\"", "{\"a" };

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      g_autoptr (GString) text = g_string_new (starts[i]);
      g_autoptr (GError) error = NULL;

      while (text->len < RW_JSON_MAX_BYTES - 8)
        g_string_append (text, i % 2 ? "[" : "{\"a\":");
      g_string_truncate (text, RW_JSON_MAX_BYTES);
      g_assert_null (rw_json_parse (text->str, text->len, &error));
      g_test_message ("%s", error->message);
    }

  g_autoptr (GString) huge = g_string_new ("\"");

  while (huge->len < RW_JSON_MAX_BYTES)
    g_string_append_c (huge, 'x');
  g_string_append_c (huge, '"');
  assert_refused (huge, "longer");
}

static void
test_wrong_types_give_the_fallback (void)
{
  g_autoptr (JsonNode) node = rw_json_parse ("{\"s\":\"x\",\"n\":5,\"d\":1.5,\"b\":true,\"o\":{},\"a\":[],\"z\":null,"
                                             "\"big\":1e999}", 67, NULL);
  JsonObject *object = json_node_get_object (node);
  static const char *const keys[] = { "s", "n", "d", "b", "o", "a", "z", "big", "missing" };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      const char *key = keys[i];
      double number = 77;

      g_assert_cmpint (rw_json_get_number (object, key, &number), ==, g_str_equal (key, "n")
                       || g_str_equal (key, "d"));
      g_assert_cmpfloat (number, ==, g_str_equal (key, "n") ? 5 : g_str_equal (key, "d") ? 1.5
                         : 77);
      g_assert_cmpstr (rw_json_get_string (object, key, "no"), ==, g_str_equal (key, "s") ? "x"
                       : "no");
      g_assert_cmpint (rw_json_get_boolean (object, key, FALSE), ==, g_str_equal (key, "b"));
      g_assert_cmpint (rw_json_get_object (object, key) != NULL, ==, g_str_equal (key, "o"));
      g_assert_cmpint (rw_json_get_array (object, key) != NULL, ==, g_str_equal (key, "a"));
    }
  g_assert_false (rw_json_node_get_number (NULL, NULL));
}

static void
assert_number_reads_back (double value)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  rw_json_append_number (text, value);

  g_autoptr (JsonNode) node = rw_json_parse (text->str, text->len, &error);
  double back = NAN;

  g_assert_no_error (error);
  g_assert_true (rw_json_node_get_number (node, &back));
  g_assert_cmpfloat (back, ==, value);
}

/* In any locale, any finite double; the shortest way for what meters show. */
static void
test_numbers_read_back (void)
{
  static const double awkward[] = { 0,     5,      0.1,     1.0 / 3, 5e-324,
                                    2.2250738585072014e-308, 1.7976931348623157e308,
                                    1e15,  1e16,   1e22,    1e23,    -12.6,    9007199254740991.0,
                                        9007199254740993.0,
                                    1e-5,  0.0001, 123456,  1234567, 99999999,
                                        0.30000000000000004,     -5.02 };
  g_autoptr (GRand) random = g_rand_new_with_seed (2);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (awkward); i++)
    assert_number_reads_back (awkward[i]);
  for (guint i = 0; i < 20000; i++)
    {
      union
      {
        guint32 words[2];
        double  value;
      } bits = { { g_rand_int (random), g_rand_int (random) } };

      if (isfinite (bits.value))
        assert_number_reads_back (bits.value);
    }
  rw_json_append_number (text, 5.02);
  g_string_append_c (text, ' ');
  rw_json_append_number (text, -0.035);
  g_string_append_c (text, ' ');
  rw_json_append_number (text, NAN);
  g_string_append_c (text, ' ');
  rw_json_append_number (text, -INFINITY);
  g_assert_cmpstr (text->str, ==, "5.02 -0.035 null null");
}

static void
test_strings_read_back (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (4);

  for (guint i = 0; i < 3000; i++)
    {
      g_autoptr (GString) words = g_string_new (NULL), text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;

      for (int n = g_rand_int_range (random, 0, 20); n > 0; n--)
        {
          const gunichar c = (gunichar) g_rand_int_range (random, 1, g_rand_boolean (random)
                                                          ? 0x80 : 0x1FFFF);

          if (g_unichar_validate (c))
            g_string_append_unichar (words, c);
        }
      rw_json_append_string (text, words->str);
      g_assert_null (strchr (text->str, '\n'));

      g_autoptr (JsonNode) node = rw_json_parse (text->str, text->len, &error);

      g_assert_no_error (error);
      g_assert_cmpstr (json_node_get_string (node), ==, words->str);
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/json/json-is-taken", test_json_is_taken);
  g_test_add_func ("/json/nearly-json-is-refused", test_nearly_json_is_refused);
  g_test_add_func ("/json/nul-byte-is-refused", test_nul_byte_is_refused);
  g_test_add_func ("/json/depth-has-an-end", test_depth_has_an_end);
  g_test_add_func ("/json/deep-and-huge-text-is-harmless", test_deep_and_huge_text_is_harmless);
  g_test_add_func ("/json/wrong-types-give-the-fallback", test_wrong_types_give_the_fallback);
  g_test_add_func ("/json/numbers-read-back", test_numbers_read_back);
  g_test_add_func ("/json/strings-read-back", test_strings_read_back);
  return g_test_run ();
}
