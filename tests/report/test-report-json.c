/* test-report-json.c: the summary says what the session says, in exactly the keys of the format.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The knowledge is mini-knowledge.json: priors 3 : 1, so 0.75 and 0.25. Repairing straight away
 * costs 10 + 30 · 0.25 = 17.5 min; "look" tells the two apart: 1 + 10 · 0.75 + 30 · 0.25 = 16
 * min, saves 1.5. With the symptom seen the odds are 3 · 0.4 : 1 · 0.1 = 12 : 1; looking costs 1
 * + 10 · 12/13 + 30/13 = 12.538…, repairing 10 + 30/13 = 12.307…: no check pays.
 */
#include "config.h"

#include <glib.h>
#include <json-glib/json-glib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "report-fixture.h"
#include "rw-report-json.h"

/* The summary of a session with these lines. (transfer full) */
static GString *
summarise (const char  *lines,
           RwKnowledge *knowledge)
{
  g_autoptr (RwJournalRead) read = fixture_read (lines);
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (read, knowledge);

  return rw_report_json_summary (summary);
}

static JsonObject *
parse (const GString *text,
       JsonParser    *parser)
{
  g_autoptr (GError) error = NULL;

  json_parser_load_from_data (parser, text->str, (gssize) text->len, &error);
  g_assert_no_error (error);
  return json_node_get_object (json_parser_get_root (parser));
}

/* Member @key of element @index of an array. */
static double
number_at (JsonArray  *array,
           guint       index,
           const char *key)
{
  return json_object_get_double_member (json_array_get_object_element (array, index), key);
}

static const char *
text_at (JsonArray  *array,
         guint       index,
         const char *key)
{
  return json_object_get_string_member (json_array_get_object_element (array, index), key);
}

static void
test_an_empty_session_has_every_key (void)
{
  g_autoptr (GString) out = summarise ("", NULL);

  g_assert_cmpstr (out->str, ==,
                   "{\"cabinet\":\"Tidepool \\\"Racer\\\"\",\"events\":0,\"readings\":0,"
                   "\"samples\":0,\"seconds\":0,\"skipped_lines\":[],\"torn_tail\":false,"
                   "\"rails\":[],\"trim\":[],\"symptoms\":[],\"causes\":[],\"next\":[],"
                   "\"warnings\":[]}\n");
}

static void
test_everything_read_is_counted (void)
{
  g_autoptr (GString) out = summarise (
      READING (1, 1, "p5", "board", "dc", "\"value\":5")
      EVENT (2, 2, "\"retract\":{\"n\":1}")
      SAMPLE (3, 3, "p5", "board", "dc", "\"value\":5")
      "not an event\n"
      EVENT (5, 4, "\"dream\":{}")
      EVENT (6, 4.5, "\"note\":{}")
      "{\"n\":7,\"t\":5.25,\"note\":{\"te",
      NULL);

  g_assert_nonnull (strstr (out->str, ",\"events\":4,\"readings\":1,\"samples\":1,\"seconds\":4,"
                                      "\"skipped_lines\":[5,7],\"torn_tail\":true,"));
}

/* ±(0.5 % of 5.021 + 2 · 0.001) = 0.027105, over √3; margin 1 − |5.021 − 5.05| / 0.15. */
static void
test_a_reading_carries_its_uncertainty_and_margin (void)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GString) out = summarise (
      READING (1, 1.5, "p5", "board", "dc", "\"value\":5.021,\"step\":0.001,"
      "\"meter\":\"m1\"")
      EVENT (2, 2, "\"trim\":{\"moved\":true}"),
      NULL);
  JsonArray *rails = json_object_get_array_member (parse (out, parser), "rails");
  JsonObject *rail = json_array_get_object_element (rails, 0);

  g_assert_cmpuint (json_array_get_length (rails), ==, 1);
  g_assert_cmpuint (json_object_get_size (rail), ==, 8);
  g_assert_cmpstr (text_at (rails, 0, "rail"), ==, "p5");
  g_assert_cmpstr (text_at (rails, 0, "place"), ==, "board");
  g_assert_cmpfloat (number_at (rails, 0, "value"), ==, 5.021);
  g_assert_cmpfloat_with_epsilon (number_at (rails, 0, "u"), 0.027105 / sqrt (3), 1e-12);
  g_assert_cmpfloat_with_epsilon (number_at (rails, 0, "margin"), 1 - 0.029 / 0.15, 1e-12);
  g_assert_cmpstr (text_at (rails, 0, "verdict"), ==, "inside");
  g_assert_true (json_object_get_boolean_member (rail, "stale"));
  g_assert_cmpfloat (number_at (rails, 0, "t"), ==, 1.5);
}

static void
assert_rail (JsonArray  *rails,
             guint       index,
             const char *rail,
             const char *place,
             const char *verdict,
             double      t)
{
  g_assert_cmpstr (text_at (rails, index, "rail"), ==, rail);
  g_assert_cmpstr (text_at (rails, index, "place"), ==, place);
  g_assert_cmpstr (text_at (rails, index, "verdict"), ==, verdict);
  g_assert_cmpfloat (number_at (rails, index, "t"), ==, t);
}

/* A later reading of a spot replaces the earlier; wire and ground drops are rails too, ripple and
 * ohms are not. */
static void
test_rails_are_the_last_dc_readings (void)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GString) out = summarise (
      READING (1, 1, "m5", "board", "dc", "\"value\":-5,\"u\":0.5")
      READING (2, 2, "p5", "board", "dc", "\"value\":4,\"u\":0")
      READING (3, 3, "p5", "board", "dc", "\"value\":5.05,\"u\":0")
      READING (4, 4, "p5", "board", "ripple", "\"value\":0.01")
      READING (5, 5, "gnd", "wire", "dc", "\"value\":0,\"u\":0.001")
      READING (6, 6, "p5", "wire", "dc", "\"value\":0.1,\"u\":0.05")
      READING (7, 7, "p5", "terminals", "dc", "\"value\":null,\"over\":true")
      READING (8, 8, "p5", "chip", "ohms", "\"value\":12"),
      NULL);
  JsonArray *rails = json_object_get_array_member (parse (out, parser), "rails");

  g_assert_cmpuint (json_array_get_length (rails), ==, 5);
  assert_rail (rails, 0, "p5", "terminals", "none", 7);
  assert_rail (rails, 1, "p5", "board", "inside", 3);
  assert_rail (rails, 2, "p5", "wire", "close", 6);
  assert_rail (rails, 3, "m5", "board", "blind", 1);
  assert_rail (rails, 4, "gnd", "wire", "inside", 5);
  g_assert_nonnull (strstr (out->str, "\"rails\":[{\"rail\":\"p5\",\"place\":\"terminals\","
                                      "\"value\":null,\"u\":null,\"verdict\":\"none\","
                                      "\"margin\":null,\"stale\":false,\"t\":7},"));
}

static void
test_causes_and_checks_are_worked_out (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GString) out = summarise ("", knowledge);
  JsonObject *root = parse (out, parser);
  JsonArray *causes = json_object_get_array_member (root, "causes");
  JsonArray *next = json_object_get_array_member (root, "next");

  g_assert_cmpuint (json_array_get_length (causes), ==, 2);
  g_assert_cmpstr (text_at (causes, 0, "cause"), ==, "cause-a");
  g_assert_cmpfloat_with_epsilon (number_at (causes, 0, "p"), 0.75, 1e-12);
  g_assert_cmpfloat_with_epsilon (number_at (causes, 1, "p"), 0.25, 1e-12);
  /* "look-inside" would save 0.5 min, but it is for licensed people: never named as an
   * alternative here. */
  g_assert_cmpuint (json_array_get_length (next), ==, 1);
  g_assert_cmpstr (text_at (next, 0, "check"), ==, "look");
  g_assert_cmpfloat_with_epsilon (number_at (next, 0, "minutes"), 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (number_at (next, 0, "saves"), 1.5, 1e-9);
}

static void
test_no_check_is_named_when_none_pays (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GString) out = summarise (
      EVENT (1, 1, "\"symptom\":{\"id\":\"hums\",\"state\":\"present\"}"), knowledge);
  JsonObject *root = parse (out, parser);
  JsonArray *causes = json_object_get_array_member (root, "causes");

  g_assert_nonnull (strstr (out->str, "\"symptoms\":[{\"id\":\"hums\",\"state\":\"present\"}],"));
  g_assert_cmpfloat_with_epsilon (number_at (causes, 0, "p"), 12.0 / 13, 1e-12);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "next")), ==, 0);
}

static void
test_warnings_name_their_reading (void)
{
  g_autoptr (GString) out = summarise (
      READING (4, 1, "p5", "board", "dc", "\"value\":5.62"), NULL);

  g_assert_nonnull (strstr (out->str, "\"warnings\":[{\"n\":4,\"id\":\"never-above\",\"text\":\""));
}

/* Everything in: header and events come out as they stand in the file, strange keys included. */
static void
test_the_whole_session_loses_nothing (void)
{
  g_autoptr (RwJournalRead) read
      = fixture_read (EVENT (1, 1, "\"note\":{\"text\":\"x\",\"mood\":\"good\"}")
                          EVENT (2, 2, "\"dream\":[1,2]")
                              EVENT (3, 3.000, "\"retract\":{\"n\":1}"));
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (read, NULL);
  g_autoptr (GString) out = rw_report_json_session (summary);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autofree char *header = g_strndup (fixture_header, strlen (fixture_header) - 1);
  g_autofree char *start = g_strdup_printf ("{\"header\":%s,\"summary\":{\"cabinet\":", header);

  g_assert_cmpuint (json_object_get_size (parse (out, parser)), ==, 4);
  g_assert_true (g_str_has_prefix (out->str, start));
  g_assert_true (g_str_has_suffix (out->str,
                                   ",\"retracted\":[1],\"events\":["
                                   "{\"n\":1,\"t\":1,\"note\":{\"text\":\"x\",\"mood\":\"good\"}},"
                                   "{\"n\":2,\"t\":2,\"dream\":[1,2]},"
                                   "{\"n\":3,\"t\":3.000,\"retract\":{\"n\":1}}]}\n"));
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/json/an-empty-session-has-every-key",
                   test_an_empty_session_has_every_key);
  g_test_add_func ("/report/json/everything-read-is-counted", test_everything_read_is_counted);
  g_test_add_func ("/report/json/a-reading-carries-its-uncertainty-and-margin",
                   test_a_reading_carries_its_uncertainty_and_margin);
  g_test_add_func ("/report/json/rails-are-the-last-dc-readings",
                   test_rails_are_the_last_dc_readings);
  g_test_add_func ("/report/json/causes-and-checks-are-worked-out",
                   test_causes_and_checks_are_worked_out);
  g_test_add_func ("/report/json/no-check-is-named-when-none-pays",
                   test_no_check_is_named_when_none_pays);
  g_test_add_func ("/report/json/warnings-name-their-reading", test_warnings_name_their_reading);
  g_test_add_func ("/report/json/the-whole-session-loses-nothing",
                   test_the_whole_session_loses_nothing);
  return g_test_run ();
}
