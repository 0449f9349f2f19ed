/* test-fuzz-formats.c: no format goes without a fuzz target.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * FUZZ_FORMATS is the list of tests/fuzz/meson.build, with blanks between.
 */
#include "config.h"

#include "rw-decoder.h"

static void
every_format_has_a_target (void)
{
  g_auto (GStrv) targets = g_strsplit (FUZZ_FORMATS, " ", -1);

  for (const char *const *id = rw_decoder_list_formats (); *id != NULL; id++)
    if (!g_strv_contains ((const char *const *) targets, *id))
      {
        g_test_message ("tests/fuzz/meson.build has no target for the format %s", *id);
        g_test_fail ();
      }
}

static void
every_target_has_a_format (void)
{
  g_auto (GStrv) targets = g_strsplit (FUZZ_FORMATS, " ", -1);

  for (char **id = targets; *id != NULL; id++)
    if (!g_strv_contains (rw_decoder_list_formats (), *id))
      {
        g_test_message ("tests/fuzz/meson.build has a target for %s, which is no format", *id);
        g_test_fail ();
      }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fuzz/formats/every-format-has-a-target", every_format_has_a_target);
  g_test_add_func ("/fuzz/formats/every-target-has-a-format", every_target_has_a_format);
  return g_test_run ();
}
