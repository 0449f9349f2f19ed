/* rw-compare-others.c: the sessions of the same cabinet that lie in a folder.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-others.h"

#include <glib/gstdio.h>
#include <string.h>

#include "rw-journal-reader.h"
#include "rw-paths.h"

static const gsize longest_header = 512 * 1024; /* bytes; a profile is some thousand */

void
rw_compare_other_free (RwCompareOther *self)
{
  g_free (self->path);
  g_date_time_unref (self->started);
  g_free (self);
}

typedef struct
{
  const char *path;
  gint64      written;
} Dated;

static int
compare_dated (const void *a,
               const void *b)
{
  const Dated *x = a, *y = b;

  return x->written > y->written ? -1 : x->written < y->written;
}

/* Those written last first. */
static GArray *
date_all (GPtrArray *paths)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Dated));

  for (guint i = 0; i < paths->len; i++)
    {
      GStatBuf info;
      Dated one = { paths->pdata[i], 0 };

      if (g_stat (one.path, &info) == 0)
        one.written = (gint64) info.st_mtime;
      g_array_append_val (all, one);
    }
  g_array_sort (all, compare_dated);
  return all;
}

static RwSessionHeader *
read_header (const char *path)
{
  gsize length = 0;
  gboolean whole;
  g_autofree char *tainted = rw_journal_load_bytes (path, longest_header, &length, &whole, NULL);
  const char *end = tainted != NULL ? memchr (tainted, '\n', length) : NULL;

  return end != NULL ? rw_session_header_from_line (tainted, (gsize) (end - tainted), NULL) : NULL;
}

static gboolean
is_other (const RwSessionHeader *found,
          const RwSessionHeader *header)
{
  return g_strcmp0 (found->id, header->id) != 0 && g_strcmp0 (found->cabinet_name, header->cabinet_name) == 0
         && g_strcmp0 (found->cabinet_tag, header->cabinet_tag) == 0;
}

static int
compare_others (const void *a,
                const void *b)
{
  const RwCompareOther *x = *(RwCompareOther *const *) a, *y = *(RwCompareOther *const *) b;

  return g_date_time_compare (y->started, x->started);
}

GPtrArray *
rw_compare_others_list (const char            *folder,
                        const RwSessionHeader *header)
{
  GPtrArray *others = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_compare_other_free);
  g_autoptr (GPtrArray) paths = rw_paths_list (folder, ".rwlog");
  g_autoptr (GArray) dated = date_all (paths);

  for (guint i = 0; i < MIN (dated->len, RW_COMPARE_OTHERS_MOST); i++)
    {
      const char *path = g_array_index (dated, Dated, i).path;
      g_autoptr (RwSessionHeader) found = read_header (path);

      if (found == NULL || !is_other (found, header))
        continue;

      RwCompareOther *other = g_new0 (RwCompareOther, 1);

      other->path = g_strdup (path);
      other->started = g_date_time_ref (found->started);
      g_ptr_array_add (others, other);
    }
  g_ptr_array_sort (others, compare_others);
  return others;
}
