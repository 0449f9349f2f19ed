/* test-json-out.c: what is put together is JSON, commas and all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "rw-json-out.h"

static void
test_commas_stand_between_and_nowhere_else (void)
{
  g_autoptr (GString) out = g_string_new (NULL);

  rw_json_out_open (out, '{');
  rw_json_out_string (out, "a", "ends in {");
  rw_json_out_string (out, "b", NULL);
  rw_json_out_key (out, "c");
  rw_json_out_open (out, '[');
  rw_json_out_open (out, '{');
  rw_json_out_close (out, '}');
  rw_json_out_add_number (out, 0.1);
  rw_json_out_add_string (out, "x:");
  rw_json_out_add_null (out);
  rw_json_out_open (out, '[');
  rw_json_out_close (out, ']');
  rw_json_out_close (out, ']');
  rw_json_out_boolean (out, "d", TRUE);
  rw_json_out_null (out, "e");
  rw_json_out_count (out, "f", 7);
  rw_json_out_close (out, '}');
  g_assert_cmpstr (out->str, ==,
                   "{\"a\":\"ends in {\",\"b\":null,\"c\":[{},0.1,\"x:\",null,[]],"
                   "\"d\":true,\"e\":null,\"f\":7}");
}

static void
test_a_line_after_a_line_needs_no_comma (void)
{
  g_autoptr (GString) out = g_string_new ("{}\n");

  rw_json_out_open (out, '{');
  rw_json_out_close (out, '}');
  g_assert_cmpstr (out->str, ==, "{}\n{}");
}

static void
test_what_is_no_number_is_null (void)
{
  g_autoptr (GString) out = g_string_new (NULL);

  rw_json_out_open (out, '{');
  rw_json_out_number (out, "a", NAN);
  rw_json_out_number (out, "b", -INFINITY);
  rw_json_out_number (out, "c", 1.0 / 3);
  rw_json_out_close (out, '}');
  g_assert_cmpstr (out->str, ==, "{\"a\":null,\"b\":null,\"c\":0.3333333333333333}");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/json-out/commas-stand-between-and-nowhere-else",
                   test_commas_stand_between_and_nowhere_else);
  g_test_add_func ("/report/json-out/a-line-after-a-line-needs-no-comma",
                   test_a_line_after_a_line_needs_no_comma);
  g_test_add_func ("/report/json-out/what-is-no-number-is-null", test_what_is_no_number_is_null);
  return g_test_run ();
}
