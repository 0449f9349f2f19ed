/* rw-paths.c: where shipped and personal data lie.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-paths.h"

char *
rw_paths_dup_shipped (const char *below)
{
  const char *override = g_getenv ("RAILWRIGHT_DATA_DIR");

  return g_build_filename (override != NULL ? override : RW_PKGDATADIR, below, NULL);
}

char *
rw_paths_dup_user (const char *below)
{
  return g_build_filename (g_get_user_data_dir (), "railwright", below, NULL);
}

char *
rw_paths_dup_sessions (void)
{
  return rw_paths_dup_user ("sessions");
}

char *
rw_paths_dup_practice (void)
{
  return g_build_filename (g_get_user_state_dir (), "railwright", "practice", NULL);
}

const char *
rw_paths_get_locale_dir (void)
{
  const char *override = g_getenv ("RAILWRIGHT_LOCALE_DIR");

  return override != NULL ? override : RW_LOCALEDIR;
}

static int
compare_paths (gconstpointer a,
               gconstpointer b)
{
  return g_strcmp0 (*(const char *const *) a, *(const char *const *) b);
}

GPtrArray *
rw_paths_list (const char *folder,
               const char *suffix)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, suffix) && name[0] != '.')
      g_ptr_array_add (found, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (found, compare_paths);
  return found;
}
