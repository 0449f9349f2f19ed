/* bench-folder.h: a test's own folder, and how it goes again.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>
#include <glib/gstdio.h>

/* A folder with all in it. */
static inline void
remove_folder (const char *path)
{
  g_autoptr (GDir) folder = g_dir_open (path, 0, NULL);
  const char *name;

  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *below = g_build_filename (path, name, NULL);

      if (g_file_test (below, G_FILE_TEST_IS_DIR))
        remove_folder (below);
      else
        g_remove (below);
    }
  g_rmdir (path);
}
