/* run-seeds.c: runs every seed of a folder through a fuzz target, without libFuzzer, as TAP.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * usage: fuzz-seeds-… FOLDER
 */
#include "config.h"

#include <stdlib.h>

#include "fuzz.h"

static GPtrArray *
list_seeds (const char *folder)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  GPtrArray *seeds = g_ptr_array_new_with_free_func (g_free);

  if (dir == NULL)
    fuzz_fail ("%s", error->message);
  for (const char *name; (name = g_dir_read_name (dir)) != NULL;)
    g_ptr_array_add (seeds, g_build_filename (folder, name, NULL));
  if (seeds->len == 0)
    fuzz_fail ("%s: no seeds", folder);
  return seeds;
}

static void
run_seed (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *bytes = NULL;
  gsize size;

  if (!g_file_get_contents (path, &bytes, &size, &error))
    fuzz_fail ("%s", error->message);

  uint8_t *alone = fuzz_alone ((const uint8_t *) bytes, size);

  LLVMFuzzerTestOneInput (alone, size);
  free (alone);
}

static int
compare_paths (gconstpointer a,
               gconstpointer b)
{
  return g_strcmp0 (*(const char *const *) a, *(const char *const *) b);
}

int
main (int    argc,
      char **argv)
{
  if (argc != 2)
    fuzz_fail ("usage: %s FOLDER", argv[0]);
  LLVMFuzzerInitialize (&argc, &argv);

  g_autoptr (GPtrArray) seeds = list_seeds (argv[1]);

  g_ptr_array_sort (seeds, compare_paths);
  g_print ("1..%u\n", seeds->len);
  for (guint i = 0; i < seeds->len; i++)
    {
      g_autofree char *name = g_path_get_basename (seeds->pdata[i]);

      run_seed (seeds->pdata[i]);
      g_print ("ok %u %s\n", i + 1, name);
    }
  return 0;
}
