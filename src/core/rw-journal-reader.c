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
 *  4. without a header nothing can be shown: that alone is an error;
 *  5. a file may come from a stranger: where it asks for more than rw-limits.h allows, the reading ends. What came
 *     before is kept, and where it ended is told.
 */
#include "config.h"

#include "rw-journal-reader.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-event-json.h"
#include "rw-line.h"
#include "rw-plain-text.h"

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
  g_free (self->stopped);
  g_free (self);
}

/* What is counted on the way. */
typedef struct
{
  RwJournalRead  *read;
  const RwLimits *limits;
  const char     *name;
  gsize           memory; /* bytes */
  guint           landmarks;
  guint           retracts;
  guint           last_n;
  gboolean        unordered; /* numbers do not rise all the way */
  GHashTable     *rails;  /* set of interned ids that the profile does not have */
} Count;

static void
note_damage (RwJournalRead *self,
             const RwLine    *line,
             const char    *message)
{
  const RwDamage damage = { line->number, line->offset, g_strdup (message) };

  g_array_append_val (self->damaged, damage);
}

/* Ends the reading at a line. @why: translated, no full stop. */
static void
stop_at (Count      *count,
         const RwLine *line,
         const char *why)
{
  g_autofree char *left = g_strdup_printf (_ ("%s: from here on nothing was read"), why);

  note_damage (count->read, line, left);
  count->read->stopped = g_strdup_printf (
      /* Translators: file, number of a line, number of a byte, the limit that was met. */
      _ ("%s was read only up to line %u (byte %lu): %s. What stands before it is shown. If the file "
         "is your own, cut it into shorter ones, each with the first line at its head; if it came from somebody else, "
         "ask what it is."),
      count->name, line->number, (gulong) line->offset, why);
}

static gboolean
is_stranger (Count         *count,
             const RwEvent *event)
{
  return (event->type == RW_EVENT_READING || event->type == RW_EVENT_SAMPLE)
         && !g_str_equal (event->reading.rail, RW_RAIL_GROUND)
         && rw_profile_find_rail (rw_session_get_profile (count->read->session), event->reading.rail) == NULL
         && !g_hash_table_contains (count->rails, event->reading.rail);
}

/* Bytes that an event takes, about: it stands by value in an array that grows by doubling. */
static gsize
memory_of (const RwEvent *event,
           gsize          line_length)
{
  const gboolean words = event->type != RW_EVENT_SAMPLE && event->type != RW_EVENT_READING;

  return 2 * sizeof *event + (event->line != NULL ? line_length : 0) + (words ? line_length : 0);
}

/* Which limit an event would go past. NULL: none, and it is counted. (transfer full) */
static char *
count_event (Count         *count,
             const RwEvent *event,
             gsize          line_length)
{
  const RwLimits *limits = count->limits;
  const gboolean landmark = event->type != RW_EVENT_SAMPLE;
  const gboolean retract = event->type == RW_EVENT_RETRACT;
  const gboolean unordered = count->unordered || event->n <= count->last_n;
  const guint n = rw_session_get_n_events (count->read->session);
  const gsize memory = memory_of (event, line_length);

  if (n >= limits->events)
    return g_strdup_printf (_ ("it holds more than %u events"), limits->events);
  if (landmark && count->landmarks >= limits->landmarks)
    return g_strdup_printf (_ ("it holds more than %u events that are no samples"), limits->landmarks);
  if (memory > limits->memory_bytes - count->memory)
    return g_strdup_printf (_ ("its events take more than %lu bytes of memory"), (gulong) limits->memory_bytes);
  if (unordered && (gsize) (count->retracts + retract) * n > limits->search)
    return g_strdup (_ ("its numbers do not rise, and too many of its events take others back"));
  if (is_stranger (count, event))
    {
      if (g_hash_table_size (count->rails) >= limits->rails)
        return g_strdup_printf (_ ("its readings name more than %u rails that its profile does not have"),
                                limits->rails);
      g_hash_table_add (count->rails, (gpointer) event->reading.rail);
    }
  count->unordered = unordered;
  count->last_n = MAX (count->last_n, event->n);
  count->retracts += retract;
  count->landmarks += landmark;
  count->memory += memory;
  return NULL;
}

static void
take_event (Count      *count,
            const RwLine *line,
            RwEvent    *event)
{
  RwJournalRead *self = count->read;
  g_autofree char *why = count_event (count, event, line->length);

  if (why != NULL)
    {
      rw_event_clear (event);
      stop_at (count, line, why);
      return;
    }
  self->n_unknown += event->type == RW_EVENT_UNKNOWN;
  rw_session_add (self->session, event);
  self->needs_newline = !line->ended;
  self->good_end = line->next;
}

static void
take_damage (Count      *count,
             const RwLine *line,
             const char *message)
{
  RwJournalRead *self = count->read;

  if (self->damaged->len >= count->limits->damaged)
    {
      g_autofree char *why = g_strdup_printf (_ ("more than %u of its lines are damaged"), count->limits->damaged);

      stop_at (count, line, why);
      return;
    }
  note_damage (self, line, message);
  self->good_end = line->next;
}

static gboolean
read_event (const RwLine *line,
            gsize       most,
            RwEvent    *event,
            GError    **error)
{
  if (line->length <= most)
    return rw_event_from_line (line->tainted, line->length, event, error);
  g_set_error (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT,
               _ ("the line is %lu bytes long; %lu are the most"), (gulong) line->length, (gulong) most);
  return FALSE;
}

static void
take_line (Count      *count,
           const RwLine *line)
{
  g_autoptr (GError) error = NULL;
  RwEvent event;

  if (rw_line_is_empty (line))
    {
      count->read->torn_tail = !line->ended;
      if (line->ended)
        count->read->good_end = line->next;
    }
  else if (read_event (line, count->limits->line_bytes, &event, &error))
    take_event (count, line, &event);
  else if (!line->ended)
    count->read->torn_tail = TRUE;
  else
    take_damage (count, line, error->message);
}

static RwSessionHeader *
read_header (const RwLine *line,
             gsize       most,
             GError    **error)
{
  const gsize mark = rw_line_skip_mark (line);

  if (line->length <= most)
    return rw_session_header_from_line (line->tainted + mark, line->length - mark, error);
  g_set_error (error, RW_EVENT_ERROR, RW_EVENT_ERROR_FORMAT,
               /* Translators: lengths in bytes. */
               _ ("the line is %lu bytes long and the header of a session has at most %lu; "
                  "this is no session, or not one to be trusted"),
               (gulong) line->length, (gulong) most);
  return NULL;
}

static RwJournalRead *
read_new (RwSessionHeader *header,
          const RwLine      *line)
{
  RwJournalRead *self = g_new0 (RwJournalRead, 1);

  self->session = rw_session_new (header);
  self->damaged = g_array_new (FALSE, FALSE, sizeof (RwDamage));
  g_array_set_clear_func (self->damaged, clear_damage);
  self->needs_newline = !line->ended;
  self->good_end = line->next;
  return self;
}

/* @whole: nothing stands behind @length. A line that was cut off there is no torn one. */
static RwJournalRead *
read_lines (const char     *tainted,
            gsize           length,
            gboolean        whole,
            const char     *name,
            const RwLimits *limits,
            GError        **error)
{
  RwLine line = { 0 };
  g_autoptr (GError) problem = NULL;
  RwSessionHeader *header = NULL;

  if (rw_line_next (&line, tainted, length))
    header = read_header (&line, limits->header_bytes, &problem);
  if (header == NULL)
    {
      g_set_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER,
                   /* Translators: file name, what is wrong. */
                   _ ("%s, line 1: %s"), name, problem != NULL ? problem->message : _ ("the file is empty"));
      return NULL;
    }

  g_autoptr (GHashTable) rails = g_hash_table_new (NULL, NULL);
  Count count = { .read = read_new (header, &line), .limits = limits, .name = name, .rails = rails };

  while (count.read->stopped == NULL && rw_line_next (&line, tainted, length))
    if (line.ended || whole)
      take_line (&count, &line);
  if (!whole && count.read->stopped == NULL)
    {
      g_autofree char *why = g_strdup_printf (_ ("it is longer than %lu bytes"), (gulong) limits->file_bytes);

      stop_at (&count, &line, why);
    }
  return count.read;
}

RwJournalRead *
rw_journal_read_bytes_within (const char     *tainted,
                              gsize           length,
                              const char     *name,
                              const RwLimits *limits,
                              GError        **error)
{
  return read_lines (tainted, MIN (length, limits->file_bytes), length <= limits->file_bytes, name, limits, error);
}

RwJournalRead *
rw_journal_read_bytes (const char *tainted,
                       gsize       length,
                       const char *name,
                       GError    **error)
{
  return rw_journal_read_bytes_within (tainted, length, name, &rw_limits, error);
}

RwJournalRead *
rw_journal_read_file (const char *path,
                      GError    **error)
{
  gsize length = 0;
  gboolean whole = TRUE;
  g_autofree char *tainted = rw_journal_load_bytes (path, rw_limits.file_bytes, &length, &whole, error);
  g_autofree char *name = rw_plain_text_dup_path (path);

  if (tainted == NULL)
    return NULL;
  return read_lines (tainted, length, whole, name, &rw_limits, error);
}
