/* fuzz-session-file.c: fuzz target for a whole file from a stranger: a session, or, behind a first “~”, notes on one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever stands there, within limits as they hold at work, only smaller:
 *  1. it is opened, or refused with a reason that names the file and the line;
 *  2. what was opened goes through all that is made of a session: state, chapters, reports, table;
 *  3. nothing that is shown holds a character that does anything, and no cell of the table is a formula;
 *  4. copied on, it reads back as itself, without damage.
 */
#include "config.h"

#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "rw-annotations.h"
#include "rw-chapters.h"
#include "rw-event-json.h"
#include "rw-journal-reader.h"
#include "rw-json-check.h"
#include "rw-plain-text.h"
#include "rw-report-csv.h"
#include "rw-report-json.h"
#include "rw-report-text.h"
#include "rw-summary.h"

static const RwLimits limits = {
  .file_bytes = 65536,
  .header_bytes = 8192,
  .line_bytes = 4096,
  .memory_bytes = 65536,
  .events = 200,
  .landmarks = 60,
  .rails = 4,
  .search = 4000,
  .damaged = 20,
};

/* The knowledge is dear to ask: of every so many inputs, one. */
static const size_t ask_of = 8;

static void
check_error (const GError *error)
{
  fuzz_expect (error != NULL);
  fuzz_expect_text (error->message);
  fuzz_expect (rw_plain_text_is (error->message, RW_PLAIN_TEXT));
  fuzz_expect (strstr (error->message, "line 1") != NULL);
}

/* Nothing but words and line ends. */
static void
check_shown (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      char one[7] = { 0 };

      g_unichar_to_utf8 (g_utf8_get_char (p), one);
      if (*p != '\r' && !rw_plain_text_is (one, RW_PLAIN_TEXT))
        fuzz_fail ("shown: U+%04X in: %s", g_utf8_get_char (p), text);
    }
}

/* --- a session -------------------------------------------------------------------------------- */

static void
check_read (const RwJournalRead *read,
            size_t               size)
{
  fuzz_expect (read->good_end <= size);
  fuzz_expect (rw_session_get_n_events (read->session) <= limits.events);
  fuzz_expect (rw_session_get_n_landmarks (read->session) <= limits.landmarks);
  fuzz_expect (read->damaged->len <= limits.damaged + 1);
  for (guint i = 0; i < read->damaged->len; i++)
    {
      const RwDamage *damage = &g_array_index (read->damaged, RwDamage, i);

      fuzz_expect (damage->line > 1 && damage->offset < size);
      fuzz_expect_text (damage->message);
      check_shown (damage->message);
    }
  if (read->stopped == NULL)
    return;
  fuzz_expect_text (read->stopped);
  fuzz_expect (read->damaged->len > 0);
}

static void
check_events (RwSession *session)
{
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      g_autofree char *told = rw_event_describe (rw_session_get_event (session, i), rw_session_get_profile (session));

      check_shown (told);
    }
}

static void
check_chapters (RwSession *session)
{
  g_autoptr (RwChapters) chapters = rw_chapters_new (session, NULL, NULL);
  guint at = 0;

  fuzz_expect (rw_chapters_get_n (chapters) > 0);
  for (guint i = 0; i < rw_chapters_get_n (chapters); i++)
    {
      const RwChapter *chapter = rw_chapters_get (chapters, i);
      g_autofree char *change = rw_chapter_describe_change (chapter, rw_session_get_profile (session));

      check_shown (chapter->title);
      check_shown (change);
      fuzz_expect (chapter->index == at && chapter->until >= at);
      at = chapter->until;
    }
  fuzz_expect (at == rw_session_get_n_events (session));
}

static RwKnowledge *
get_knowledge (size_t size)
{
  static RwKnowledge *knowledge;

  if (size % ask_of != 0)
    return NULL;
  if (knowledge == NULL)
    knowledge = rw_knowledge_load (NULL, NULL);
  return knowledge;
}

static void
check_reports (const RwJournalRead *read,
               size_t               size)
{
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (read, get_knowledge (size));
  g_autoptr (GString) text = rw_report_text_summary (summary);
  g_autoptr (GString) json = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  check_shown (text->str);
  rw_report_json_append_summary (summary, json);
  if (!g_utf8_validate_len (json->str, json->len, NULL) || !rw_json_check (json->str, json->len, &error))
    fuzz_fail ("the summary is no JSON: %s: %s", error != NULL ? error->message : "not UTF-8", json->str);
}

/* No field of words begins as a formula; numbers may be negative. */
static void
check_table (RwSession *session)
{
  g_autoptr (GString) csv = rw_report_csv (session);
  gboolean quoted = FALSE, start = TRUE;

  for (const char *p = csv->str; *p != '\0'; p++)
    {
      if (start && *p == '"')
        fuzz_expect (strchr ("=+-@\t\r\n", p[1]) == NULL || p[1] == '\0');
      else if (start)
        fuzz_expect (strchr ("=+@\t", *p) == NULL && (*p != '-' || g_ascii_isdigit (p[1])));
      if (*p == '"')
        quoted = !quoted;
      start = !quoted && (*p == ',' || *p == '\n');
    }
}

static GString *
write_all (RwSession *session)
{
  GString *out = g_string_new (NULL);

  rw_session_header_append_line (rw_session_get_header (session), out);
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    rw_event_append_line (rw_session_get_event (session, i), out);
  return out;
}

static void
check_copy (RwSession *session)
{
  g_autoptr (GString) first = write_all (session);
  g_autoptr (GError) error = NULL;
  RwLimits wide = limits;

  /* A form of our own may be longer than the one that was read. */
  wide.file_bytes = wide.memory_bytes = 16 * limits.file_bytes;
  wide.search *= 2;
  wide.line_bytes *= 4;
  wide.header_bytes *= 4;

  g_autoptr (RwJournalRead) again = rw_journal_read_bytes_within (first->str, first->len, "copy", &wide, &error);

  if (again == NULL)
    fuzz_fail ("the copy is not read: %s: %s", error->message, first->str);
  fuzz_expect (again->damaged->len == 0 && !again->torn_tail && again->stopped == NULL);
  fuzz_expect (rw_session_get_n_events (again->session) == rw_session_get_n_events (session));

  g_autoptr (GString) second = write_all (again->session);

  if (!g_string_equal (first, second))
    fuzz_fail ("the copy reads back as something else:\n%s\n%s", first->str, second->str);
}

static void
check_session (const char *bytes,
               size_t      size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes_within (bytes, size, "gift.rwlog", &limits, &error);

  if (read == NULL)
    {
      check_error (error);
      return;
    }

  const RwSessionHeader *header = rw_session_get_header (read->session);

  check_shown (header->cabinet_name);
  check_shown (header->cabinet_tag);
  check_shown (rw_profile_get_title (header->profile));
  check_read (read, size);
  check_events (read->session);
  check_chapters (read->session);
  check_reports (read, size);
  check_table (read->session);
  check_copy (read->session);
}

/* --- notes ------------------------------------------------------------------------------------ */

static void
check_notes (const char *bytes,
             size_t      size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwAnnotations) notes = rw_annotations_new_from_bytes (bytes, size, "gift.rwnotes", NULL, &limits, &error);

  if (notes == NULL)
    {
      check_error (error);
      return;
    }

  g_autoptr (GString) lines = rw_annotations_to_lines (notes);
  RwLimits wide = limits;

  wide.file_bytes *= 16;
  wide.line_bytes *= 16;

  g_autoptr (RwAnnotations) again
      = rw_annotations_new_from_bytes (lines->str, lines->len, "copy", rw_annotations_get_session (notes), &wide, &error);

  if (again == NULL)
    fuzz_fail ("the copy is not read: %s: %s", error->message, lines->str);
  fuzz_expect (rw_annotations_get_report (again) == NULL);
  fuzz_expect (rw_annotations_get_n (again) == rw_annotations_get_n (notes));
  for (guint i = 0; i < rw_annotations_get_n (notes); i++)
    {
      const RwAnnotation *a = rw_annotations_get (notes, i), *b = rw_annotations_get (again, i);

      check_shown (a->text);
      check_shown (a->by);
      check_shown (a->written);
      fuzz_expect (a->t == b->t && a->at == b->at && g_str_equal (a->text, b->text) && g_str_equal (a->by, b->by));
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  const size_t skip = size > 0 && data[0] == '~' ? 1 : 0;
  uint8_t *alone = fuzz_alone (data + skip, size - skip);

  if (skip > 0)
    check_notes ((const char *) alone, size - skip);
  else
    check_session ((const char *) alone, size);
  free (alone);
  return 0;
}
