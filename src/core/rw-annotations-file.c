/* rw-annotations-file.c: one file of annotations: read, and appended to.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Read as a session is: a damaged line is skipped and told, a torn last line dropped and told, and whatever asks for
 * more than the limits ends the reading. Written as a session is: locked, appended, synced. It is opened for each
 * annotation alone, since they are rare and several windows may replay one session.
 */
#include "config.h"

#include "rw-annotations-private.h"

#include <glib/gi18n-lib.h>
#include <sys/stat.h>

#include "rw-journal-file.h"
#include "rw-journal-reader.h"
#include "rw-line.h"
#include "rw-plain-text.h"

static void
clear_line (gpointer data)
{
  rw_annotation_line_clear (data);
}

RwAnnotationsFile *
rw_annotations_file_new (void)
{
  RwAnnotationsFile *self = g_new0 (RwAnnotationsFile, 1);

  self->lines = g_array_new (FALSE, FALSE, sizeof (RwAnnotationLine));
  g_array_set_clear_func (self->lines, clear_line);
  self->usable = TRUE;
  self->size = -1;
  return self;
}

void
rw_annotations_file_free (RwAnnotationsFile *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_array_unref);
  g_free (self->path);
  rw_annotations_head_clear (&self->head);
  g_free (self->report);
  g_free (self);
}

/* Adds a sentence to what is told. */
static void
tell (RwAnnotationsFile *self,
      const char        *sentence)
{
  g_autofree char *before = g_steal_pointer (&self->report);

  self->report = before == NULL ? g_strdup (sentence) : g_strdup_printf ("%s %s", before, sentence);
}

/* --- reading -------------------------------------------------------------------------------------- */

typedef struct
{
  RwAnnotationsFile *file;
  const char        *name;
  const RwLimits    *limits;
  guint              n_damaged;
  guint              first;       /* line */
  char              *first_words; /* what is wrong with it */
  gboolean           stopped;
} Reading;

static void
stop_at (Reading      *reading,
         const RwLine *line,
         const char   *why)
{
  g_autofree char *text = g_strdup_printf (
      /* Translators: file, number of a line, number of a byte, the limit that was met. */
      _ ("%s was read only up to line %u (byte %lu): %s. What stands before it is shown; nothing is "
         "written to this file."),
      reading->name, line->number, (gulong) line->offset, why);

  tell (reading->file, text);
  reading->file->usable = FALSE;
  reading->stopped = TRUE;
}

static void
take_damage (Reading      *reading,
             const RwLine *line,
             const char   *message)
{
  if (reading->n_damaged >= reading->limits->damaged)
    {
      g_autofree char *why = g_strdup_printf (_ ("more than %u of its lines are damaged"), reading->limits->damaged);

      stop_at (reading, line, why);
      return;
    }
  if (reading->n_damaged++ > 0)
    return;
  reading->first = line->number;
  reading->first_words = g_strdup (message);
}

static gboolean
read_entry (const Reading    *reading,
            const RwLine     *line,
            RwAnnotationLine *out,
            GError          **error)
{
  if (line->length <= reading->limits->line_bytes)
    return rw_annotation_line_read (out, line->tainted, line->length, error);
  *out = (RwAnnotationLine){ 0 };
  g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_READ,
               _ ("the line is %lu bytes long; %lu are the most"), (gulong) line->length,
               (gulong) reading->limits->line_bytes);
  return FALSE;
}

static void
take_entry (Reading          *reading,
            const RwLine     *line,
            RwAnnotationLine *entry)
{
  RwAnnotationsFile *self = reading->file;
  const guint most = MIN (RW_LIMIT_NOTES, reading->limits->landmarks);

  if (self->lines->len >= most)
    {
      g_autofree char *why = g_strdup_printf (_ ("it holds more than %u annotations"), most);

      rw_annotation_line_clear (entry);
      stop_at (reading, line, why);
      return;
    }
  self->last_n = MAX (self->last_n, entry->shown.n);
  self->needs_newline = !line->ended;
  self->good_end = line->next;
  g_array_append_val (self->lines, *entry);
}

static void
take_line (Reading      *reading,
           const RwLine *line)
{
  RwAnnotationsFile *self = reading->file;
  g_autoptr (GError) problem = NULL;
  RwAnnotationLine entry;

  if (rw_line_is_empty (line))
    {
      if (line->ended)
        self->good_end = line->next;
    }
  else if (read_entry (reading, line, &entry, &problem))
    take_entry (reading, line, &entry);
  else if (!line->ended)
    tell (self, _ ("The last annotation was cut off while it was written and was left out."));
  else
    {
      take_damage (reading, line, problem->message);
      self->good_end = reading->stopped ? self->good_end : line->next;
    }
  if (problem != NULL)
    rw_annotation_line_clear (&entry);
}

static void
tell_damage (Reading *reading)
{
  if (reading->n_damaged == 0)
    return;

  g_autofree char *text
      /* Translators: count of lines, file, number of the first, what is wrong with it. */
      = g_strdup_printf (ngettext ("%u damaged line of %s was left out (line %u: %s).",
                                   "%u damaged lines of %s were left out (the first is line %u: %s).",
                                   reading->n_damaged),
                         reading->n_damaged, reading->name, reading->first, reading->first_words);

  tell (reading->file, text);
  g_clear_pointer (&reading->first_words, g_free);
}

static gboolean
read_header (RwAnnotationsFile *self,
             const RwLine      *line,
             const char        *name,
             const char        *session,
             const RwLimits    *limits,
             GError           **error)
{
  const gsize mark = rw_line_skip_mark (line);

  if (line->length > limits->line_bytes)
    g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_HEADER,
                 _ ("the line is %lu bytes long; %lu are the most"), (gulong) line->length,
                 (gulong) limits->line_bytes);
  else
    rw_annotation_header_read (&self->head, line->tainted + mark, line->length - mark, error);
  if (self->head.session == NULL)
    {
      g_prefix_error (error, _ ("%s, line 1: "), name);
      return FALSE;
    }
  if (session == NULL || g_str_equal (self->head.session, session))
    return TRUE;
  g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_SESSION,
               /* Translators: file name, id of the session it names, id of the one that is open. */
               _ ("%s holds annotations of another session (%s; this one is %s). Open that session first, then take "
                  "them in."),
               name, self->head.session, session);
  return FALSE;
}

gboolean
rw_annotations_file_parse (RwAnnotationsFile *self,
                           const char        *tainted,
                           gsize              length,
                           gboolean           whole,
                           const char        *name,
                           const char        *session,
                           const RwLimits    *limits,
                           GError           **error)
{
  Reading reading = { self, name, limits, 0, 0, NULL, FALSE };
  RwLine line = { 0 };

  if (!rw_line_next (&line, tainted, length))
    {
      g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_HEADER,
                   /* Translators: file name, what is wrong. */
                   _ ("%s, line 1: %s"), name, _ ("the file is empty"));
      return FALSE;
    }
  if (!read_header (self, &line, name, session, limits, error))
    return FALSE;
  self->exists = TRUE;
  self->needs_newline = !line.ended;
  self->good_end = line.next;
  while (!reading.stopped && rw_line_next (&line, tainted, length))
    if (line.ended || whole)
      take_line (&reading, &line);
  if (!whole && !reading.stopped)
    {
      g_autofree char *why = g_strdup_printf (_ ("it is longer than %lu bytes"), (gulong) limits->file_bytes);

      stop_at (&reading, &line, why);
    }
  tell_damage (&reading);
  return TRUE;
}

RwAnnotationsFile *
rw_annotations_file_load (const char *path,
                          const char *session)
{
  RwAnnotationsFile *self = rw_annotations_file_new ();
  g_autofree char *name = rw_plain_text_dup_path (path);
  g_autoptr (GError) error = NULL;
  gboolean whole = TRUE;
  gsize length = 0;

  self->path = g_strdup (path);
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return self;

  g_autofree char *tainted = rw_journal_load_bytes (path, rw_limits.memory_bytes / 8, &length, &whole, &error);

  if (tainted != NULL)
    rw_annotations_file_parse (self, tainted, length, whole, name, session, &rw_limits, &error);
  self->size = (goffset) length;
  if (error != NULL)
    {
      tell (self, error->message);
      self->usable = FALSE;
    }
  return self;
}

gboolean
rw_annotations_read_head (const char        *path,
                          RwAnnotationsHead *out,
                          GError           **error)
{
  g_return_val_if_fail (path != NULL && out != NULL, FALSE);

  g_autoptr (RwAnnotationsFile) file = rw_annotations_file_new ();
  g_autofree char *name = rw_plain_text_dup_path (path);
  gsize length = 0;
  g_autofree char *tainted = rw_journal_load_first_line (path, rw_limits.line_bytes, &length, error);

  *out = (RwAnnotationsHead){ 0 };
  if (tainted == NULL
      || !rw_annotations_file_parse (file, tainted, length, TRUE, name, NULL, &rw_limits, error))
    return FALSE;
  rw_annotations_head_set (out, &file->head);
  return TRUE;
}

GHashTable *
rw_annotations_file_list_retracted (const RwAnnotationsFile *file)
{
  GHashTable *set = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < file->lines->len; i++)
    {
      const RwAnnotationLine *line = &g_array_index (file->lines, RwAnnotationLine, i);

      if (line->retract > 0)
        g_hash_table_add (set, GUINT_TO_POINTER (line->retract));
    }
  return set;
}

/* --- writing -------------------------------------------------------------------------------------- */

static gboolean
refuse (const RwAnnotationsFile *self,
        GError                 **error)
{
  g_set_error (error, RW_ANNOTATIONS_ERROR, RW_ANNOTATIONS_ERROR_WRITE,
               /* Translators: what is wrong with a file. */
               _ ("Nothing was written. %s"), self->report != NULL ? self->report : "");
  return FALSE;
}

/* Takes what somebody else wrote there since it was read. */
static gboolean
catch_up (RwAnnotationsFile *self,
          const char        *session)
{
  struct stat now;

  if (stat (self->path, &now) != 0 || now.st_size == self->size)
    return TRUE;

  RwAnnotationsFile *again = rw_annotations_file_load (self->path, session);
  const RwAnnotationsFile before = *self;

  *self = *again;
  *again = before;
  rw_annotations_file_free (again);
  return self->usable;
}

static gboolean
open_file (RwAnnotationsFile *self,
           RwJournalFile     *file,
           const char        *session,
           GError           **error)
{
  if (!self->exists && !catch_up (self, session)) /* another window made it meanwhile */
    return refuse (self, error);
  if (!self->exists)
    return rw_journal_file_create (file, self->path, error);
  if (!rw_journal_file_open (file, self->path, error))
    return FALSE;
  if (catch_up (self, session))
    {
      rw_journal_file_resume (file, (goffset) self->good_end, self->needs_newline);
      return TRUE;
    }
  rw_journal_file_close (file);
  return refuse (self, error);
}

/* What was written reads back as it will the next time. */
static void
take_written (RwAnnotationsFile *self,
              const GString     *text,
              goffset            end)
{
  RwLine line = { 0 };

  while (rw_line_next (&line, text->str, text->len))
    {
      RwAnnotationLine entry;

      if (rw_annotation_line_read (&entry, line.tainted, line.length, NULL))
        {
          self->last_n = MAX (self->last_n, entry.shown.n);
          g_array_append_val (self->lines, entry);
        }
      else
        rw_annotation_line_clear (&entry);
    }
  self->good_end = (gsize) end;
  self->size = end;
  self->needs_newline = FALSE;
  self->exists = TRUE;
}

gboolean
rw_annotations_file_append (RwAnnotationsFile       *self,
                            const RwAnnotationsHead *head,
                            RwAnnotationsMake        make,
                            gpointer                 data,
                            GError                 **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GString) all = g_string_new (NULL);
  RwJournalFile file;

  if (!self->usable)
    return refuse (self, error);
  if (!open_file (self, &file, head->session, error))
    return FALSE;
  make (self->last_n + 1, text, data);
  if (!self->exists)
    rw_annotation_header_append (head, all);
  g_string_append_len (all, text->str, (gssize) text->len);

  const gboolean done = rw_journal_file_append (&file, all->str, all->len, error);

  if (done)
    {
      if (self->head.session == NULL)
        rw_annotations_head_set (&self->head, head);
      take_written (self, text, file.good_end);
    }
  rw_journal_file_close (&file);
  return done;
}
