/* rw-journal-reader.c: a session file read back, damage and all.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The file: UTF-8, lines ended by \n (a \r before it is forgiven), the first one the header.
 *
 *   header \n event \n event \n … event \n
 *
 * What a reader may rely on after a crash, a power cut or a bad disk:
 *  1. every line that ends in \n was written whole, or is damaged as a whole: it is skipped and reported;
 *  2. a last line without \n is taken if it is a whole event, else it is torn: dropped, and told;
 *  3. empty lines, and lines of spaces, mean nothing;
 *  4. without a header nothing can be shown: that alone is an error.
 */
#include "config.h"

#include "rw-journal-reader.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-event-json.h"

G_DEFINE_QUARK (rw_journal_error, rw_journal_error)

static void
clear_damage (gpointer data)
{
  RwDamage *damage = data;

  g_clear_pointer (&damage->message, g_free);
}

void
rw_journal_read_free (RwJournalRead *self)
{
  if (self == NULL)
    return;
  g_clear_object (&self->session);
  g_clear_pointer (&self->damaged, g_array_unref);
  g_free (self);
}

/* One line of the file while it is walked. */
typedef struct
{
  const char *tainted;
  gsize       length; /* without its end */
  gsize       offset; /* of its first byte */
  gsize       next;   /* of the byte after its end */
  guint       number; /* from 1 */
  gboolean    ended;  /* had a newline */
} Line;

static gboolean
next_line (const char *tainted,
           gsize       length,
           Line       *line)
{
  if (line->next >= length)
    return FALSE;
  line->offset = line->next;
  line->number++;
  line->tainted = tainted + line->offset;

  const char *newline = memchr (line->tainted, '\n', length - line->offset);

  line->ended = newline != NULL;
  line->length = line->ended ? (gsize) (newline - line->tainted) : length - line->offset;
  line->next = line->offset + line->length + (line->ended ? 1 : 0);
  if (line->ended && line->length > 0 && line->tainted[line->length - 1] == '\r')
    line->length--;
  return TRUE;
}

static void
note_damage (RwJournalRead *self,
             const Line    *line,
             const char    *message)
{
  const RwDamage damage = { line->number, line->offset, g_strdup (message) };

  g_array_append_val (self->damaged, damage);
}

static gboolean
is_empty (const Line *line)
{
  for (gsize i = 0; i < line->length; i++)
    if (strchr (" \t\r", line->tainted[i]) == NULL || line->tainted[i] == '\0')
      return FALSE;
  return TRUE;
}

static void
take_line (RwJournalRead *self,
           const Line    *line)
{
  g_autoptr (GError) error = NULL;
  const gboolean empty = is_empty (line);
  RwEvent event;

  if (!empty && rw_event_from_line (line->tainted, line->length, &event, &error))
    {
      self->n_unknown += event.type == RW_EVENT_UNKNOWN;
      rw_session_add (self->session, &event);
      self->needs_newline = !line->ended;
    }
  else if (!line->ended)
    {
      self->torn_tail = TRUE;
      return;
    }
  else if (!empty)
    note_damage (self, line, error->message);
  self->good_end = line->next;
}

/* A byte order mark that some editor left. */
static gsize
skip_mark (const char *tainted,
           gsize       length)
{
  return length >= 3 && memcmp (tainted, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}

RwJournalRead *
rw_journal_read_bytes (const char *tainted,
                       gsize       length,
                       const char *name,
                       GError    **error)
{
  Line line = { 0 };
  g_autoptr (GError) problem = NULL;
  RwSessionHeader *header = NULL;

  if (next_line (tainted, length, &line))
    {
      const gsize mark = skip_mark (line.tainted, line.length);

      header = rw_session_header_from_line (line.tainted + mark, line.length - mark, &problem);
    }
  if (header == NULL)
    {
      g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER,
                   /* Translators: file name, what is wrong. */
                   _ ("%s, line 1: %s"), name, problem != NULL ? problem->message : _ ("the file is empty"));
      return NULL;
    }

  RwJournalRead *self = g_new0 (RwJournalRead, 1);

  self->session = rw_session_new (header);
  self->damaged = g_array_new (FALSE, FALSE, sizeof (RwDamage));
  g_array_set_clear_func (self->damaged, clear_damage);
  self->needs_newline = !line.ended;
  self->good_end = line.next;
  while (next_line (tainted, length, &line))
    take_line (self, &line);
  return self;
}

RwJournalRead *
rw_journal_read_file (const char *path,
                      GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *tainted = NULL; /* not mapped: a file cut short while it is read would kill us */
  gsize length = 0;

  if (!g_file_get_contents (path, &tainted, &length, &problem))
    {
      g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ, _ ("Cannot read this session: %s"),
                   problem->message);
      return NULL;
    }
  return rw_journal_read_bytes (tainted, length, path, error);
}
