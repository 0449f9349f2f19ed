/* rw-log-file.c: a session file or the knowledge, read for a command, and their damage told.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-log-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-log-io.h"
#include "rw-plain-text.h"

static const guint damage_shown = 20; /* lines named before the rest is only counted */

/* Stands in for a header that cannot be read. */
static const char stand_in[]
    = "{\"railwright\":1,\"started\":\"2000-01-01T00:00:00Z\","
      "\"profile\":{\"id\":\"lost\",\"title\":\"lost\",\"reference\":\"p5\","
      "\"rails\":[{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,"
      "\"limits\":[4.9,5.2],\"bare_limits\":[4.75,5.4]}]}}\n";

/* Number of the line that begins at @offset. */
static guint
line_at (const char *bytes,
         gsize       offset)
{
  const char *end = bytes + offset;
  guint line = 1;

  for (const char *p = bytes; (p = memchr (p, '\n', (gsize) (end - p))) != NULL; p++)
    line++;
  return line;
}

static RwLogFile *
file_new (const char *path)
{
  RwLogFile *self = g_new0 (RwLogFile, 1);

  self->name = rw_plain_text_dup_path (path);
  return self;
}

static gboolean
read_content (RwLogFile  *self,
              const char *tainted,
              gsize       length,
              GError    **error)
{
  self->read = rw_journal_read_bytes (tainted, length, self->name, error);
  if (self->read == NULL)
    return FALSE;
  self->read_size = length;
  if (self->read->torn_tail)
    {
      self->torn_line = line_at (tainted, self->read->good_end);
      self->torn_bytes = length - self->read->good_end;
    }
  return TRUE;
}

/* Reads all lines but the first, behind a header that can be read. */
static gboolean
read_headless (RwLogFile  *self,
               const char *tainted,
               gsize       length,
               GError    **error)
{
  const char *newline = memchr (tainted, '\n', length);
  const char *rest = newline != NULL ? newline + 1 : tainted + length;
  g_autoptr (GString) content = g_string_new (stand_in);

  g_string_append_len (content, rest, tainted + length - rest);
  return read_content (self, content->str, content->len, error);
}

static RwLogFile *
load (const char *path,
      gboolean    headless)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *tainted = NULL;
  g_autoptr (RwLogFile) self = file_new (path);
  gboolean whole = TRUE;

  /* One byte past the limit is enough to tell that there is more. */
  tainted = rw_journal_load_bytes (path, rw_limits.file_bytes + 1, &self->size, &whole, &error);
  if (tainted != NULL && !read_content (self, tainted, self->size, &error) && headless)
    {
      self->header = g_strdup (error->message);
      g_clear_error (&error);
      read_headless (self, tainted, self->size, &error);
    }
  if (self->read != NULL)
    return g_steal_pointer (&self);
  rw_log_complain ("%s", error->message);
  return NULL;
}

RwLogFile *
rw_log_file_load (const char *path)
{
  return load (path, FALSE);
}

RwLogFile *
rw_log_file_load_headless (const char *path)
{
  return load (path, TRUE);
}

void
rw_log_file_free (RwLogFile *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->read, rw_journal_read_free);
  g_free (self->name);
  g_free (self->header);
  g_free (self);
}

gboolean
rw_log_file_is_damaged (const RwLogFile *self)
{
  return self->header != NULL || self->read->damaged->len > 0 || self->read->torn_tail;
}

/* What was read behind another header stands elsewhere in the file. */
static gulong
offset_in_file (const RwLogFile *self,
                gsize            offset)
{
  return (gulong) (self->size - (self->read_size - offset));
}

char *
rw_log_file_describe (const RwLogFile *self,
                      const RwDamage  *damage)
{
  /* Translators: number of a line, byte at which it begins, what is wrong with it. */
  return g_strdup_printf (_ ("line %u (byte %lu): %s"), damage->line,
                          offset_in_file (self, damage->offset), damage->message);
}

char *
rw_log_file_describe_torn (const RwLogFile *self)
{
  /* Translators: number of a line, byte at which it begins, how many bytes there are of it. */
  return g_strdup_printf (_ ("line %u (byte %lu): torn: the file ends %lu bytes into it"),
                          self->torn_line, offset_in_file (self, self->read->good_end),
                          (gulong) self->torn_bytes);
}

void
rw_log_file_complain (const RwLogFile *self)
{
  const GArray *damaged = self->read->damaged;

  for (guint i = 0; i < MIN (damaged->len, damage_shown); i++)
    {
      g_autofree char *line = rw_log_file_describe (self, &g_array_index (damaged, RwDamage, i));

      rw_log_complain ("%s, %s", self->name, line);
    }
  if (damaged->len > damage_shown)
    rw_log_complain (g_dngettext (GETTEXT_PACKAGE,
                                  "%s: %u more damaged line; “railwright-log verify” names it",
                                  "%s: %u more damaged lines; “railwright-log verify” names them",
                                  damaged->len - damage_shown),
                     self->name, damaged->len - damage_shown);
  if (self->read->torn_tail)
    {
      g_autofree char *line = rw_log_file_describe_torn (self);

      rw_log_complain ("%s, %s", self->name, line);
    }
}

RwKnowledge *
rw_log_load_knowledge (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  RwKnowledge *knowledge = rw_knowledge_load (problems, &error);

  for (guint i = 0; i < problems->len; i++)
    rw_log_complain ("%s", (const char *) problems->pdata[i]);
  if (knowledge == NULL)
    rw_log_complain ("%s", error->message);
  return knowledge;
}
