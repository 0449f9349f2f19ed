/* fuzz-session-line.c: fuzz target for a session file: one line as an event and as the header, and
 * all the bytes as what follows a good header.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever stands there:
 *  1. it is read, or refused with a reason that can be shown;
 *  2. what was read has finite numbers, can be told to people, and written out reads back as itself;
 *  3. damage in a file is told line by line, and every line is either an event or told.
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "fuzz.h"
#include "rw-event-json.h"
#include "rw-journal-reader.h"
#include "rw-session.h"

static const char good_header[]
    = "{\"railwright\":1,\"id\":\"0b6a1f0e-8f6a-4c53-9d5f-3f1f8f0f7a11\","
      "\"started\":\"2026-03-14T09:30:00Z\",\"cabinet\":{\"name\":\"Tidepool Racer\",\"tag\":\"B-07\"},"
      "\"profile\":{\"id\":\"one\",\"title\":\"one rail\",\"reference\":\"p5\",\"rails\":[{\"id\":\"p5\","
      "\"label\":\"+5 V\",\"nominal\":5.0,\"limits\":[4.9,5.2],\"bare_limits\":[4.75,5.4],"
      "\"never_above\":5.5,\"priority\":1,\"follows_trim\":\"yes\"}]},\"meters\":[]}\n";

static void
check_error (const GError *error)
{
  fuzz_expect (error != NULL);
  fuzz_expect_text (error->message);
}

/* --- an event ------------------------------------------------------------------------------- */

static void
check_reading (const RwReading *reading)
{
  fuzz_expect (reading->rail != NULL);
  fuzz_expect (reading->over ? isnan (reading->value) : isfinite (reading->value));
  fuzz_expect (isfinite (reading->step) && reading->step >= 0);
  fuzz_expect (isnan (reading->u) || (isfinite (reading->u) && reading->u >= 0));
}

static void
check_event (const RwEvent *event)
{
  g_autofree char *told = rw_event_describe (event, NULL);

  fuzz_expect (event->type >= RW_EVENT_UNKNOWN && event->type < RW_N_EVENT_TYPES);
  fuzz_expect (isfinite (event->t));
  fuzz_expect (g_utf8_validate (told, -1, NULL)); /* an empty note tells nothing */
  if (event->type == RW_EVENT_READING || event->type == RW_EVENT_SAMPLE)
    check_reading (&event->reading);
}

/* Written, read and written again, it is the same text. */
static void
check_event_returns (const RwEvent *event)
{
  g_autoptr (GString) first = g_string_new (NULL), second = g_string_new (NULL);
  g_autoptr (GError) error = NULL;
  RwEvent again;

  rw_event_append_line (event, first);
  fuzz_expect (memchr (first->str, '\n', first->len) == first->str + first->len - 1);
  if (!rw_event_from_line (first->str, first->len - 1, &again, &error))
    fuzz_fail ("what was written is not read: %s: %s", first->str, error->message);
  rw_event_append_line (&again, second);
  if (!g_string_equal (first, second))
    fuzz_fail ("what was written reads back as something else: %s%s", first->str, second->str);
  rw_event_clear (&again);
}

static void
check_line (const char *line,
            size_t      size)
{
  g_autoptr (GError) error = NULL;
  RwEvent event;

  if (!rw_event_from_line (line, size, &event, &error))
    {
      check_error (error);
      return;
    }
  fuzz_expect (error == NULL);
  check_event (&event);
  check_event_returns (&event);
  rw_event_clear (&event);
}

/* --- the header ----------------------------------------------------------------------------- */

static void
check_header (const char *line,
              size_t      size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwSessionHeader) header = rw_session_header_from_line (line, size, &error);

  if (header == NULL)
    {
      check_error (error);
      return;
    }
  fuzz_expect (error == NULL && header->profile != NULL && header->started != NULL);

  /* Without the line that it was read from, it is written anew. */
  g_autoptr (RwSessionHeader) copy = rw_session_header_copy (header);
  g_autoptr (GString) written = g_string_new (NULL);

  g_clear_pointer (&copy->line, g_free);
  rw_session_header_append_line (copy, written);

  g_autoptr (RwSessionHeader) again
      = rw_session_header_from_line (written->str, written->len - 1, &error);

  if (again == NULL)
    fuzz_fail ("the header that was written is not read: %s: %s", error->message, written->str);
  fuzz_expect (again->meters->len == header->meters->len);
}

/* --- a whole file --------------------------------------------------------------------------- */

static void
check_file (const uint8_t *data,
            size_t         size)
{
  g_autoptr (GString) text = g_string_new (good_header);
  g_autoptr (GError) error = NULL;

  g_string_append_len (text, (const char *) data, (gssize) size);

  uint8_t *alone = fuzz_alone ((const uint8_t *) text->str, text->len);
  g_autoptr (RwJournalRead) read
      = rw_journal_read_bytes ((const char *) alone, text->len, "fuzz", &error);

  fuzz_expect (read != NULL && error == NULL);
  fuzz_expect (read->good_end <= text->len);
  for (guint i = 0; i < read->damaged->len; i++)
    {
      const RwDamage *damage = &g_array_index (read->damaged, RwDamage, i);

      fuzz_expect (damage->line > 1 && damage->offset < text->len);
      fuzz_expect_text (damage->message);
    }
  for (guint i = 0; i < rw_session_get_n_events (read->session); i++)
    check_event (rw_session_get_event (read->session, i));
  free (alone);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  const uint8_t *newline = size > 0 ? memchr (data, '\n', size) : NULL;
  const size_t length = newline != NULL ? (size_t) (newline - data) : size;
  uint8_t *line = fuzz_alone (data, length);

  check_line ((const char *) line, length);
  check_header ((const char *) line, length);
  free (line);
  check_file (data, size);
  return 0;
}
