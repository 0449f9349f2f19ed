/* rw-annotations.c: what people wrote on a replayed session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two places: beside the session's file, and the user's data folder for when that folder cannot be written to. What
 * stands in either is shown; a new one goes where it can be written, the session's side first. A number that is
 * taken back is one of the same file. To the outside every annotation has a number of its own over both: how many
 * came before it, from 1.
 */
#include "config.h"

#include "rw-annotations-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-journal-reader.h"
#include "rw-paths.h"
#include "rw-plain-text.h"

static guint changed_signal;

G_DEFINE_FINAL_TYPE (RwAnnotations, rw_annotations, G_TYPE_OBJECT)

static void
rw_annotations_finalize (GObject *object)
{
  RwAnnotations *self = RW_ANNOTATIONS (object);

  for (guint i = 0; i < RW_ANNOTATIONS_FILES; i++)
    g_clear_pointer (&self->files[i], rw_annotations_file_free);
  g_clear_pointer (&self->live, g_array_unref);
  g_clear_pointer (&self->places, g_array_unref);
  rw_annotations_head_clear (&self->head);
  g_clear_pointer (&self->report, g_free);
  G_OBJECT_CLASS (rw_annotations_parent_class)->finalize (object);
}

static void
rw_annotations_class_init (RwAnnotationsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_annotations_finalize;
  changed_signal = g_signal_new ("changed", RW_TYPE_ANNOTATIONS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
rw_annotations_init (RwAnnotations *self)
{
  self->live = g_array_new (FALSE, FALSE, sizeof (RwAnnotation));
  self->places = g_array_new (FALSE, FALSE, sizeof (RwAnnotationPlace));
}

/* --- what is there -------------------------------------------------------------------------------- */

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const RwAnnotation *first = a, *second = b;

  if (first->t != second->t)
    return first->t < second->t ? -1 : 1;
  return first->n < second->n ? -1 : first->n > second->n;
}

static void
gather_file (RwAnnotations *self,
             guint          which)
{
  const RwAnnotationsFile *file = self->files[which];
  g_autoptr (GHashTable) retracted = rw_annotations_file_list_retracted (file);

  for (guint i = 0; i < file->lines->len; i++)
    {
      const RwAnnotationLine *line = &g_array_index (file->lines, RwAnnotationLine, i);
      const RwAnnotationPlace place = { which, line->shown.n };

      if (line->retract > 0)
        continue;
      g_array_append_val (self->places, place);
      if (line->kind != RW_ANNOTATION_NOTE
          || g_hash_table_contains (retracted, GUINT_TO_POINTER (line->shown.n)))
        continue;

      RwAnnotation shown = line->shown;

      shown.n = self->places->len;
      g_array_append_val (self->live, shown);
    }
}

static void
gather (RwAnnotations *self)
{
  g_array_set_size (self->live, 0);
  g_array_set_size (self->places, 0);
  for (guint i = 0; i < RW_ANNOTATIONS_FILES; i++)
    if (self->files[i] != NULL)
      gather_file (self, i);
  g_array_sort (self->live, compare);
}

static void
gather_report (RwAnnotations *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < RW_ANNOTATIONS_FILES; i++)
    if (self->files[i] != NULL && self->files[i]->report != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", self->files[i]->report);
  g_free (self->report);
  self->report = g_string_free (text, text->len == 0);
}

static const char session_suffix[] = ".rwlog", notes_suffix[] = ".rwnotes";

/* NAME.rwlog gives NAME.rwnotes. */
static char *
path_beside (const char *session_path)
{
  const gsize cut = g_str_has_suffix (session_path, session_suffix) ? strlen (session_suffix) : 0;
  g_autofree char *stem = g_strndup (session_path, strlen (session_path) - cut);

  return g_strconcat (stem, notes_suffix, NULL);
}

char *
rw_annotations_dup_session_path (const char *path)
{
  g_return_val_if_fail (path != NULL, NULL);
  if (!g_str_has_suffix (path, notes_suffix))
    return NULL;

  g_autofree char *stem = g_strndup (path, strlen (path) - strlen (notes_suffix));

  return g_strconcat (stem, session_suffix, NULL);
}

/* An id comes from a file: it names one only when it is what an id must be, else its digest does. NULL: it has none,
 * and then nothing would tell two such sessions apart. */
static char *
path_of_user (const char *session)
{
  g_autofree char *digest = g_uuid_string_is_valid (session)
                                ? g_ascii_strdown (session, -1)
                                : g_compute_checksum_for_string (G_CHECKSUM_SHA256, session, -1);
  g_autofree char *below = g_strdup_printf ("notes/%s.rwnotes", digest);

  return *session != '\0' ? rw_paths_dup_user (below) : NULL;
}

RwAnnotations *
rw_annotations_new (const char *session_id,
                    const char *session_path)
{
  g_return_val_if_fail (session_id != NULL, NULL);

  RwAnnotations *self = g_object_new (RW_TYPE_ANNOTATIONS, NULL);
  g_autofree char *beside = session_path != NULL ? path_beside (session_path) : NULL;
  g_autofree char *user = path_of_user (session_id);

  self->head.session = g_strdup (session_id);
  if (beside != NULL)
    self->files[0] = rw_annotations_file_load (beside, session_id);
  if (user != NULL)
    self->files[1] = rw_annotations_file_load (user, session_id);
  gather (self);
  gather_report (self);
  return self;
}

RwAnnotations *
rw_annotations_new_from_bytes (const char     *tainted,
                               gsize           length,
                               const char     *name,
                               const char     *session_id,
                               const RwLimits *limits,
                               GError        **error)
{
  g_autoptr (RwAnnotationsFile) file = rw_annotations_file_new ();

  if (!rw_annotations_file_parse (file, tainted, MIN (length, limits->file_bytes), length <= limits->file_bytes, name,
                                  session_id, limits, error))
    return NULL;

  RwAnnotations *self = g_object_new (RW_TYPE_ANNOTATIONS, NULL);

  rw_annotations_head_set (&self->head, &file->head);
  self->files[0] = g_steal_pointer (&file);
  gather (self);
  gather_report (self);
  return self;
}

void
rw_annotations_set_about (RwAnnotations *self,
                          const char    *cabinet,
                          GDateTime     *started)
{
  g_return_if_fail (RW_IS_ANNOTATIONS (self) && cabinet != NULL && started != NULL);
  g_free (self->head.cabinet);
  g_clear_pointer (&self->head.started, g_date_time_unref);
  self->head.cabinet = *cabinet != '\0' ? g_strdup (cabinet) : NULL;
  self->head.started = g_date_time_to_utc (started);
}

gboolean
rw_annotations_has_file (RwAnnotations *self,
                         const char    *path)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && path != NULL, FALSE);

  g_autofree char *wanted = g_canonicalize_filename (path, NULL);

  for (guint i = 0; i < RW_ANNOTATIONS_FILES; i++)
    {
      g_autofree char *own = self->files[i] != NULL && self->files[i]->exists
                                 ? g_canonicalize_filename (self->files[i]->path, NULL)
                                 : NULL;

      if (g_strcmp0 (own, wanted) == 0)
        return TRUE;
    }
  return FALSE;
}

const char *
rw_annotations_get_report (RwAnnotations *self)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), NULL);
  return self->report;
}

const char *
rw_annotations_get_session (RwAnnotations *self)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), NULL);
  return self->head.session;
}

const char *
rw_annotations_get_path (RwAnnotations *self)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), NULL);
  for (guint i = 0; i < RW_ANNOTATIONS_FILES; i++)
    if (self->files[i] != NULL && self->files[i]->usable)
      return self->files[i]->path;
  return NULL;
}

guint
rw_annotations_get_n (RwAnnotations *self)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), 0);
  return self->live->len;
}

const RwAnnotation *
rw_annotations_get (RwAnnotations *self,
                    guint          i)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && i < self->live->len, NULL);
  return &g_array_index (self->live, RwAnnotation, i);
}

/* --- writing -------------------------------------------------------------------------------------- */

static void
tell_changed (RwAnnotations *self)
{
  gather (self);
  gather_report (self);
  g_signal_emit (self, changed_signal, 0);
}

static gboolean
refuse_full (RwAnnotations *self,
             GError       **error)
{
  g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_FULL,
               _ ("A session has room for %d annotations, each of at most %d characters. Make it shorter, or put it "
                  "into a file of your own."),
               RW_LIMIT_NOTES, RW_LIMIT_TEXT_CHARS);
  return FALSE;
}

/* Appends to the first file that takes it. *which: that file. */
static gboolean
append (RwAnnotations    *self,
        RwAnnotationsMake make,
        gpointer          data,
        guint            *which,
        GError          **error)
{
  g_autoptr (GError) first = NULL;

  for (*which = 0; *which < RW_ANNOTATIONS_FILES; (*which)++)
    {
      g_autoptr (GError) problem = NULL;

      if (self->files[*which] == NULL || self->files[*which]->path == NULL)
        continue;
      if (self->files[*which]->lines->len >= RW_LIMIT_NOTES)
        return refuse_full (self, error);
      if (rw_annotations_file_append (self->files[*which], &self->head, make, data, &problem))
        return TRUE;
      if (first == NULL)
        first = g_steal_pointer (&problem);
    }
  g_set_error_literal (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_WRITE,
                       first != NULL ? first->message
                                     : _ ("There is no place for annotations: this session has no id and no file. Save "
                                          "a copy of it first."));
  return FALSE;
}

static void
make_one (guint    next_n,
          GString *out,
          gpointer data)
{
  const RwAnnotationLine *line = data;

  rw_annotation_line_append (line, next_n, out);
}

/* The number to the outside of the newest annotation of a file. */
static guint
newest_of (RwAnnotations *self,
           guint          which)
{
  for (guint i = self->places->len; i-- > 0;)
    if (g_array_index (self->places, RwAnnotationPlace, i).file == which)
      return i + 1;
  return 0;
}

/* Returns its number, 0 with an error. */
static guint
add_raw (RwAnnotations *self,
         const char    *raw,
         GError       **error)
{
  RwAnnotationLine line;
  guint which;
  const gboolean done = rw_annotation_line_read (&line, raw, strlen (raw), error)
                        && append (self, make_one, &line, &which, error);

  rw_annotation_line_clear (&line);
  if (!done)
    return 0;
  gather (self);

  const guint n = newest_of (self, which);

  tell_changed (self);
  return n;
}

guint
rw_annotations_add (RwAnnotations *self,
                    double         t,
                    guint          at,
                    const char    *by,
                    const char    *text,
                    GDateTime     *written,
                    GError       **error)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && by != NULL && text != NULL && written != NULL, 0);

  if (g_utf8_strlen (text, -1) > RW_LIMIT_TEXT_CHARS || g_utf8_strlen (by, -1) > RW_LIMIT_NAME_CHARS)
    {
      refuse_full (self, error);
      return 0;
    }

  g_autofree char *raw = rw_annotation_line_make (MAX (t, 0), at, by, text, written);

  return add_raw (self, raw, error);
}

guint
rw_annotations_add_call (RwAnnotations    *self,
                         double            t,
                         guint             at,
                         const RwCallSaid *said,
                         GDateTime        *written,
                         GError          **error)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && said != NULL && written != NULL, 0);

  g_autofree char *raw = rw_annotation_line_make_call (MAX (t, 0), at, said, written);

  return add_raw (self, raw, error);
}

static void
make_retract (guint    next_n,
              GString *out,
              gpointer data)
{
  const RwAnnotationLine line = { .retract = GPOINTER_TO_UINT (data) };

  rw_annotation_line_append (&line, line.retract, out);
}

gboolean
rw_annotations_retract (RwAnnotations *self,
                        guint          n,
                        GError       **error)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self), FALSE);

  if (n == 0 || n > self->places->len)
    {
      g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_READ, _ ("There is no annotation %u."), n);
      return FALSE;
    }

  const RwAnnotationPlace place = g_array_index (self->places, RwAnnotationPlace, n - 1);

  if (!rw_annotations_file_append (self->files[place.file], &self->head, make_retract, GUINT_TO_POINTER (place.n),
                                   error))
    return FALSE;
  tell_changed (self);
  return TRUE;
}

/* --- travelling ----------------------------------------------------------------------------------- */

/* Everything ever written here: what was taken back here does not come in again. (transfer full) */
static GHashTable *
list_keys (RwAnnotations *self)
{
  GHashTable *keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint f = 0; f < RW_ANNOTATIONS_FILES; f++)
    for (guint i = 0; self->files[f] != NULL && i < self->files[f]->lines->len; i++)
      {
        const RwAnnotationLine *line = &g_array_index (self->files[f]->lines, RwAnnotationLine, i);

        if (line->retract == 0)
          g_hash_table_add (keys, rw_annotation_line_dup_key (line));
      }
  return keys;
}

static void
make_many (guint    next_n,
           GString *out,
           gpointer data)
{
  const GPtrArray *lines = data;

  for (guint i = 0; i < lines->len; i++)
    rw_annotation_line_append (lines->pdata[i], next_n + i, out);
}

/* Those of @other that are not taken back there and not here yet. (transfer full) (element-type RwAnnotationLine) */
static GPtrArray *
list_new (RwAnnotations           *self,
          const RwAnnotationsFile *other)
{
  GPtrArray *list = g_ptr_array_new ();
  g_autoptr (GHashTable) keys = list_keys (self);
  g_autoptr (GHashTable) retracted = rw_annotations_file_list_retracted (other);

  for (guint i = 0; i < other->lines->len; i++)
    {
      RwAnnotationLine *line = &g_array_index (other->lines, RwAnnotationLine, i);

      if (line->retract == 0 && !g_hash_table_contains (retracted, GUINT_TO_POINTER (line->shown.n))
          && g_hash_table_add (keys, rw_annotation_line_dup_key (line)))
        g_ptr_array_add (list, line);
    }
  return list;
}

static RwAnnotationsFile *
load_other (RwAnnotations *self,
            const char    *path,
            GError       **error)
{
  g_autoptr (RwAnnotationsFile) other = rw_annotations_file_new ();
  g_autofree char *name = rw_plain_text_dup_path (path);
  gboolean whole = TRUE;
  gsize length = 0;
  g_autofree char *tainted = rw_journal_load_bytes (path, rw_limits.memory_bytes / 8, &length, &whole, error);

  if (tainted == NULL
      || !rw_annotations_file_parse (other, tainted, length, whole, name, self->head.session, &rw_limits, error))
    return NULL;
  return g_steal_pointer (&other);
}

gboolean
rw_annotations_count_new (RwAnnotations *self,
                          const char    *path,
                          guint         *n,
                          GError       **error)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && path != NULL && n != NULL, FALSE);

  g_autoptr (RwAnnotationsFile) other = load_other (self, path, error);

  *n = 0;
  if (other == NULL)
    return FALSE;

  g_autoptr (GPtrArray) list = list_new (self, other);

  *n = list->len;
  return TRUE;
}

gboolean
rw_annotations_import (RwAnnotations *self,
                       const char    *path,
                       guint         *added,
                       char         **report,
                       GError       **error)
{
  g_return_val_if_fail (RW_IS_ANNOTATIONS (self) && path != NULL && added != NULL, FALSE);

  g_autoptr (RwAnnotationsFile) other = load_other (self, path, error);
  guint which;

  *added = 0;
  if (other == NULL)
    return FALSE;

  g_autoptr (GPtrArray) list = list_new (self, other);

  if (self->places->len + list->len > RW_LIMIT_NOTES)
    return refuse_full (self, error);
  if (list->len > 0 && !append (self, make_many, list, &which, error))
    return FALSE;
  *added = list->len;
  if (report != NULL)
    *report = g_steal_pointer (&other->report);
  if (list->len > 0)
    tell_changed (self);
  return TRUE;
}
