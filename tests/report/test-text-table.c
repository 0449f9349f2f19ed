/* test-text-table.c: columns line up, whatever the letters are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>

#include "rw-text-table.h"

static void
test_columns_line_up (void)
{
  static const gboolean right[] = { FALSE, TRUE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (3, right);
  g_autoptr (GString) out = g_string_new (NULL);
  static const char *const texts[] = { "+5 V", "5.021 V", "inside", "−12 V", "−12.04 V", NULL };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    rw_text_table_take (table, g_strdup (texts[i]));
  rw_text_table_append (table, 2, out);
  g_assert_cmpstr (out->str, ==,
                   "  +5 V    5.021 V  inside\n"
                   "  −12 V  −12.04 V\n");
}

static void
test_cells_are_counted_not_bytes (void)
{
  g_assert_cmpuint (rw_text_width ("−5 V"), ==, 4);
  g_assert_cmpuint (rw_text_width ("基板"), ==, 4);       /* wide */
  g_assert_cmpuint (rw_text_width ("e\xCC\x81"), ==, 1); /* e and a combining accent */
  g_assert_cmpuint (rw_text_width (""), ==, 0);
}

static void
test_short_last_row_ends_its_line (void)
{
  static const gboolean right[] = { FALSE, FALSE };
  g_autoptr (RwTextTable) table = rw_text_table_new (2, right);
  g_autoptr (GString) out = g_string_new (NULL);

  rw_text_table_append (table, 0, out);
  g_assert_cmpstr (out->str, ==, "");
  rw_text_table_take (table, g_strdup ("alone"));
  rw_text_table_append (table, 0, out);
  g_assert_cmpstr (out->str, ==, "alone\n");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/text-table/columns-line-up", test_columns_line_up);
  g_test_add_func ("/report/text-table/cells-are-counted-not-bytes",
                   test_cells_are_counted_not_bytes);
  g_test_add_func ("/report/text-table/short-last-row-ends-its-line",
                   test_short_last_row_ends_its_line);
  return g_test_run ();
}
