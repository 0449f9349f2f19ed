/* rw-session-files.c: the sessions that lie in folders, by their first lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-session-files.h"

#include <glib/gstdio.h>

#include "rw-journal-reader.h"
#include "rw-line.h"
#include "rw-paths.h"

typedef struct
{
  char  *path;
  gint64 written;
} Dated;

static int
compare_dated (const void *a,
               const void *b)
{
  const Dated *x = a, *y = b;

  return x->written > y->written ? -1 : x->written < y->written;
}

static void
add_folder (const char *folder,
            GArray     *dated)
{
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".rwlog");

  g_ptr_array_set_free_func (paths, NULL); /* they go into the other list */
  for (guint i = 0; i < paths->len; i++)
    {
      GStatBuf info;
      Dated one = { paths->pdata[i], 0 };

      if (g_stat (one.path, &info) == 0)
        one.written = (gint64) info.st_mtime;
      g_array_append_val (dated, one);
    }
}

GPtrArray *
rw_session_files_list (const char *const *folders)
{
  g_autoptr (GArray) dated = g_array_new (FALSE, FALSE, sizeof (Dated));
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; folders[i] != NULL; i++)
    add_folder (folders[i], dated);
  g_array_sort (dated, compare_dated);
  for (guint i = 0; i < dated->len; i++)
    g_ptr_array_add (paths, g_array_index (dated, Dated, i).path);
  return paths;
}

RwSessionHeader *
rw_session_files_read_header (const char *path)
{
  gsize length = 0;
  g_autofree char *tainted = rw_journal_load_first_line (path, rw_limits.header_bytes, &length, NULL);
  RwLine line = { 0 };

  if (tainted == NULL || !rw_line_next (&line, tainted, length) || line.length > rw_limits.header_bytes)
    return NULL;

  const gsize mark = rw_line_skip_mark (&line);

  return rw_session_header_from_line (line.tainted + mark, line.length - mark, NULL);
}

char *
rw_session_files_find (const char *const *folders,
                       const char        *id,
                       GCancellable      *cancellable)
{
  g_return_val_if_fail (folders != NULL && id != NULL, NULL);

  g_autoptr (GPtrArray) paths = rw_session_files_list (folders);

  if (*id == '\0')
    return NULL;
  for (guint i = 0; i < MIN (paths->len, RW_SESSION_FILES_MOST) && !g_cancellable_is_cancelled (cancellable); i++)
    {
      g_autoptr (RwSessionHeader) header = rw_session_files_read_header (paths->pdata[i]);

      if (header != NULL && g_str_equal (header->id, id))
        return g_strdup (paths->pdata[i]);
    }
  return NULL;
}
