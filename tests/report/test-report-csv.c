/* test-report-csv.c: the table holds every event, in RFC 4180's form.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "report-fixture.h"
#include "rw-report-csv.h"

#define HEADING \
  "n,t,type,rail,place,kind,value,over,step,u,verdict,margin,meter,power,board,warm,id,state," \
  "text,retracted\r\n"

/* What the table has to say of one line of a session. */
static void
assert_row (const char *line,
            const char *row)
{
  g_autoptr (RwJournalRead) read = fixture_read (line);
  g_autoptr (GString) out = rw_report_csv (read->session);
  g_autofree char *expected = g_strconcat (HEADING, row, NULL);

  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_cmpstr (out->str, ==, expected);
}

static void
test_every_payload_has_its_columns (void)
{
  assert_row ("", "");
  assert_row (EVENT (1, 0.25, "\"setup\":{\"power\":\"on\",\"board\":\"out\",\"warm\":false}"),
              "1,0.25,setup,,,,,,,,,,,on,out,false,,,,false\r\n");
  assert_row (EVENT (1, 1, "\"setup\":{\"board\":\"fitted\"}"),
              "1,1,setup,,,,,,,,,,,,fitted,,,,,false\r\n");
  assert_row (EVENT (2, 1, "\"trim\":{\"moved\":true}"),
              "2,1,trim,,,,,,,,,,,,,,,moved,,false\r\n");
  assert_row (EVENT (3, 1, "\"symptom\":{\"id\":\"resets\",\"state\":\"cured\"}"),
              "3,1,symptom,,,,,,,,,,,,,,resets,cured,,false\r\n");
  assert_row (EVENT (3, 1, "\"finding\":{\"check\":\"look\",\"outcome\":\"dark\"}"),
              "3,1,finding,,,,,,,,,,,,,,look,dark,,false\r\n");
  assert_row (EVENT (3, 1, "\"repair\":{\"cause\":\"trim-low\",\"result\":\"no-change\"}"),
              "3,1,repair,,,,,,,,,,,,,,trim-low,no-change,,false\r\n");
  assert_row (EVENT (3, 1, "\"mark\":{\"what\":\"reset seen\"}"),
              "3,1,mark,,,,,,,,,,,,,,,,reset seen,false\r\n");
  assert_row (EVENT (3, 1, "\"stage\":{\"id\":\"under-load\"}"),
              "3,1,stage,,,,,,,,,,,,,,under-load,,,false\r\n");
  assert_row (EVENT (3, 1, "\"stage\":{\"id\":\"look\",\"read\":true}"),
              "3,1,stage,,,,,,,,,,,,,,look,read,,false\r\n");
  assert_row (EVENT (3, 1, "\"stage\":{\"id\":\"trim\",\"against\":\"my wire\"}"),
              "3,1,stage,,,,,,,,,,,,,,trim,against,my wire,false\r\n");
  assert_row (EVENT (3, 1, "\"gap\":{\"meter\":\"m1\",\"why\":\"unplugged\"}"),
              "3,1,gap,,,,,,,,,,m1,,,,,,unplugged,false\r\n");
}

static void
test_awkward_text_is_quoted (void)
{
  assert_row (EVENT (3, 1, "\"note\":{\"text\":\"a, \\\"b\\\"\\r\\nc\"}"),
              "3,1,note,,,,,,,,,,,,,,,,\"a, \"\"b\"\"\r\nc\",false\r\n");
  assert_row (EVENT (3, 1, "\"dream\":{\"of\":1}"),
              "3,1,unknown,,,,,,,,,,,,,,,,"
              "\"{\"\"n\"\":3,\"\"t\"\":1,\"\"dream\"\":{\"\"of\"\":1}}\",false\r\n");
}

/* Words are never a formula; a negative number is still a number. */
static void
test_words_are_no_formulas (void)
{
  static const char *const starts[] = { "=HYPERLINK(1)", "+1", "-1", "@SUM(1)", "\\t=1" };

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      g_autofree char *payload = g_strdup_printf ("{\"n\":3,\"t\":1,\"note\":{\"text\":\"%s\"}}\n", starts[i]);
      g_autofree char *row = g_strdup_printf ("3,1,note,,,,,,,,,,,,,,,,'%s,false\r\n",
                                              *starts[i] == '\\' ? "\t=1" : starts[i]);

      assert_row (payload, row);
    }
  assert_row (EVENT (3, 1, "\"symptom\":{\"id\":\"=x\",\"state\":\"present\"}"),
              "3,1,symptom,,,,,,,,,,,,,,'=x,present,,false\r\n");

  g_autoptr (RwJournalRead) read = fixture_read (READING (1, 1, "m5", "board", "dc", "\"value\":-5.125,\"step\":0.001"));
  g_autoptr (GString) out = rw_report_csv (read->session);

  g_assert_nonnull (strstr (out->str, ",dc,-5.125,"));
}

/* No meter is known, so u is the resolution alone: 0.001/√12 = 0.000288675…; 5.05 is the middle. */
static void
test_a_reading_is_judged (void)
{
  g_autoptr (RwJournalRead) read = fixture_read (
      READING (1, 1, "p5", "board", "dc", "\"value\":5.125,\"step\":0.001"));
  g_autoptr (GString) out = rw_report_csv (read->session);
  g_auto (GStrv) lines = g_strsplit (out->str, "\r\n", -1);
  g_auto (GStrv) fields = g_strsplit (lines[1], ",", -1);

  g_assert_cmpuint (g_strv_length (fields), ==, 20);
  g_assert_cmpstr (fields[6], ==, "5.125");
  g_assert_cmpstr (fields[7], ==, "false");
  g_assert_cmpstr (fields[8], ==, "0.001");
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (fields[9], NULL), 0.001 / sqrt (12), 1e-12);
  g_assert_cmpstr (fields[10], ==, "inside");
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (fields[11], NULL), 0.5, 1e-9);
}

static void
test_an_overload_has_no_value (void)
{
  assert_row (SAMPLE (1, 1, "p5", "board", "dc", "\"value\":null,"
              "\"over\":true,\"step\":0.001,\"meter\":\"m1\""),
              "1,1,sample,p5,board,dc,,true,0.001,,none,,m1,,,,,,,false\r\n");
}

static void
test_what_was_taken_back_is_told (void)
{
  assert_row (EVENT (1, 1, "\"note\":{\"text\":\"x\"}") EVENT (2, 2, "\"retract\":{\"n\":1}"),
              "1,1,note,,,,,,,,,,,,,,,,x,true\r\n2,2,retract,,,,,,,,,,,,,,1,,,false\r\n");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/csv/every-payload-has-its-columns", test_every_payload_has_its_columns);
  g_test_add_func ("/report/csv/awkward-text-is-quoted", test_awkward_text_is_quoted);
  g_test_add_func ("/report/csv/words-are-no-formulas", test_words_are_no_formulas);
  g_test_add_func ("/report/csv/a-reading-is-judged", test_a_reading_is_judged);
  g_test_add_func ("/report/csv/an-overload-has-no-value", test_an_overload_has_no_value);
  g_test_add_func ("/report/csv/what-was-taken-back-is-told", test_what_was_taken_back_is_told);
  return g_test_run ();
}
