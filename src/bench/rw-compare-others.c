/* rw-compare-others.c: the sessions of the same cabinet that lie in a folder.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-others.h"

#include "rw-session-files.h"

void
rw_compare_other_free (RwCompareOther *self)
{
  g_free (self->path);
  g_date_time_unref (self->started);
  g_free (self);
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
  const char *const folders[] = { folder, NULL };
  g_autoptr (GPtrArray) paths = rw_session_files_list (folders);

  for (guint i = 0; i < MIN (paths->len, RW_COMPARE_OTHERS_MOST); i++)
    {
      const char *path = paths->pdata[i];
      g_autoptr (RwSessionHeader) found = rw_session_files_read_header (path);

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
