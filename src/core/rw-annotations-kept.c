/* rw-annotations-kept.c: what annotations hold, as calls and as lines that travel.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-annotations-private.h"

#include <string.h>

#include "rw-event.h"

static int
compare_written (gconstpointer a,
                 gconstpointer b)
{
  const RwAnnotationLine *first = a, *second = b;

  return strcmp (first->shown.written, second->shown.written);
}

/* Lines of both files that are no notes and were not taken back, in the order of their writing; the time of writing
 * counts whole seconds, within one their place in the file does. @others: with those of unknown forms.
 * (transfer container) (element-type RwAnnotationLine) */
static GPtrArray *
list_kept (RwAnnotations *self,
           gboolean       others)
{
  g_autoptr (GList) sorted = NULL;
  GPtrArray *kept = g_ptr_array_new ();

  for (guint f = 0; f < RW_ANNOTATIONS_FILES; f++)
    {
      if (self->files[f] == NULL)
        continue;

      g_autoptr (GHashTable) retracted = rw_annotations_file_list_retracted (self->files[f]);

      for (guint i = 0; i < self->files[f]->lines->len; i++)
        {
          RwAnnotationLine *line = &g_array_index (self->files[f]->lines, RwAnnotationLine, i);

          if (line->retract == 0 && !g_hash_table_contains (retracted, GUINT_TO_POINTER (line->shown.n))
              && (line->kind == RW_ANNOTATION_CALL || (others && line->kind == RW_ANNOTATION_OTHER)))
            sorted = g_list_prepend (sorted, line);
        }
    }
  sorted = g_list_sort (g_list_reverse (sorted), compare_written); /* a stable one */
  for (GList *l = sorted; l != NULL; l = l->next)
    g_ptr_array_add (kept, l->data);
  return kept;
}

GArray *
rw_annotations_dup_calls (RwAnnotations *self)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), NULL);

  GArray *calls = g_array_new (FALSE, FALSE, sizeof (RwEvent));
  g_autoptr (GPtrArray) kept = list_kept (self, FALSE);

  g_array_set_clear_func (calls, (GDestroyNotify) rw_event_clear);
  for (guint i = 0; i < kept->len; i++)
    {
      const RwAnnotationLine *line = kept->pdata[i];
      RwEvent event = rw_event_make_call (line->shown.t, &line->call);

      event.n = line->shown.at;
      g_array_append_val (calls, event);
    }
  return calls;
}

/* --- as lines --------------------------------------------------------------------------------- */

GString *
rw_annotations_to_lines (RwAnnotations *self)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), NULL);

  GString *out = g_string_new (NULL);

  rw_annotation_header_append (&self->head, out);
  for (guint f = 0; f < RW_ANNOTATIONS_FILES; f++)
    for (guint i = 0; self->files[f] != NULL && i < self->files[f]->lines->len; i++)
      {
        const RwAnnotationLine *line = &g_array_index (self->files[f]->lines, RwAnnotationLine, i);

        rw_annotation_line_append (line, line->retract > 0 ? line->retract : line->shown.n, out);
      }
  return out;
}

static const RwAnnotationLine *
find_line (const RwAnnotationsFile *file,
           guint                    n)
{
  for (guint i = 0; i < file->lines->len; i++)
    {
      const RwAnnotationLine *line = &g_array_index (file->lines, RwAnnotationLine, i);

      if (line->retract == 0 && line->shown.n == n)
        return line;
    }
  return NULL;
}

gboolean
rw_annotations_export (RwAnnotations *self,
                       const char    *path,
                       GError       **error)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && path != NULL, FALSE);

  g_autoptr (GString) out = g_string_new (NULL);
  guint n = 0;

  rw_annotation_header_append (&self->head, out);
  for (guint i = 0; i < self->live->len; i++)
    {
      const RwAnnotation *shown = &g_array_index (self->live, RwAnnotation, i);
      const RwAnnotationPlace place = g_array_index (self->places, RwAnnotationPlace, shown->n - 1);

      rw_annotation_line_append (find_line (self->files[place.file], place.n), ++n, out);
    }

  g_autoptr (GPtrArray) rest = list_kept (self, TRUE);

  for (guint i = 0; i < rest->len; i++)
    rw_annotation_line_append (rest->pdata[i], ++n, out);
  return g_file_set_contents (path, out->str, (gssize) out->len, error);
}
