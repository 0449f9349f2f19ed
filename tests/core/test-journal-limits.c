/* test-journal-limits.c: a stranger's session file asks for no more than it is given, and is told so.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>

#include "fixtures.h"
#include "rw-event-json.h"
#include "rw-journal.h"
#include "rw-json.h"

static const char first_line[] = FIXTURE_HEADER "\n";

static RwLimits
small_limits (void)
{
  return (RwLimits){ .file_bytes = 100000, .header_bytes = 4000, .line_bytes = 2000, .memory_bytes = 1000000,
                     .events = 50, .landmarks = 20, .rails = 3, .search = 100,
                     .damaged = 5 };
}

static RwJournalRead *
read_within (const GString  *text,
             const RwLimits *limits)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *alone = g_memdup2 (text->str, text->len);
  RwJournalRead *read = rw_journal_read_bytes_within (alone, text->len, "gift.rwlog", limits, &error);

  g_assert_no_error (error);
  return read;
}

static GString *
file_of (guint       n,
         const char *payload)
{
  GString *text = g_string_new (first_line);

  for (guint i = 1; i <= n; i++)
    g_string_append_printf (text, "{\"n\":%u,\"t\":%u.000,%s}\n", i, i, payload);
  return text;
}

#define SAMPLE "\"sample\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.02,\"step\":0.01,\"meter\":\"m1\"}"
#define NOTE "\"note\":{\"text\":\"fan is noisy\"}"

/* What is kept, and that the place and what to do are said. */
static void
assert_stopped (const RwJournalRead *read,
                guint                n_events,
                guint                line,
                const char          *why)
{
  g_assert_nonnull (read->stopped);
  g_test_message ("%s", read->stopped);
  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_events);

  const RwDamage *last = &g_array_index (read->damaged, RwDamage, read->damaged->len - 1);
  g_autofree char *place = g_strdup_printf ("line %u (byte %" G_GSIZE_FORMAT ")", line, last->offset);

  g_assert_cmpuint (last->line, ==, line);
  g_assert_nonnull (strstr (last->message, why));
  g_assert_nonnull (strstr (read->stopped, why));
  g_assert_nonnull (strstr (read->stopped, place));
  g_assert_nonnull (strstr (read->stopped, "gift.rwlog"));
  g_assert_nonnull (strstr (read->stopped, "ask what it is"));
}

static void
test_events (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) just = file_of (50, SAMPLE), over = file_of (51, SAMPLE);
  g_autoptr (RwJournalRead) whole = read_within (just, &limits);
  g_autoptr (RwJournalRead) read = read_within (over, &limits);

  g_assert_null (whole->stopped);
  g_assert_cmpuint (rw_session_get_n_events (whole->session), ==, 50);
  assert_stopped (read, 50, 52, "more than 50 events");
}

static void
test_landmarks (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) just = file_of (20, NOTE), over = file_of (21, NOTE);
  g_autoptr (RwJournalRead) whole = read_within (just, &limits);
  g_autoptr (RwJournalRead) read = read_within (over, &limits);

  g_assert_null (whole->stopped);
  assert_stopped (read, 20, 22, "more than 20 events that are no samples");
}

static void
test_memory (void)
{
  RwLimits limits = small_limits ();
  g_autoptr (GString) text = file_of (10, NOTE);

  limits.memory_bytes = 3 * (2 * sizeof (RwEvent) + 100);

  g_autoptr (RwJournalRead) read = read_within (text, &limits);
  const guint n = rw_session_get_n_events (read->session);

  g_assert_cmpuint (n, >=, 2);
  g_assert_cmpuint (n, <, 10);
  assert_stopped (read, n, n + 2, "bytes of memory");
}

static void
test_file_bytes (void)
{
  RwLimits limits = small_limits ();
  g_autoptr (GString) text = file_of (10, SAMPLE);

  limits.file_bytes = text->len - 1;

  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  assert_stopped (read, 9, 11, "longer than");
  g_assert_false (read->torn_tail);
}

static void
test_rails_that_the_profile_does_not_have (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) text = g_string_new (first_line);

  for (guint i = 1; i <= 4; i++)
    g_string_append_printf (text,
                            "{\"n\":%u,\"t\":0,\"sample\":{\"rail\":\"x%u\",\"place\":\"board\",\"value\":1}}\n"
                            "{\"n\":%u,\"t\":0,\"sample\":{\"rail\":\"x1\",\"place\":\"board\",\"value\":1}}\n",
                            2 * i - 1, i, 2 * i);

  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  assert_stopped (read, 6, 8, "more than 3 rails");
}

/* In order, a retract costs nothing; out of order each is looked for among all. */
static void
test_retracts_out_of_order (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) rising = g_string_new (first_line), falling = g_string_new (first_line);

  for (guint i = 1; i <= 19; i++)
    {
      g_string_append_printf (rising, "{\"n\":%u,\"t\":0,\"retract\":{\"n\":1}}\n", i);
      g_string_append_printf (falling, "{\"n\":%u,\"t\":0,\"retract\":{\"n\":1}}\n", 100 - i);
    }

  g_autoptr (RwJournalRead) whole = read_within (rising, &limits);
  g_autoptr (RwJournalRead) read = read_within (falling, &limits);

  g_assert_null (whole->stopped);
  assert_stopped (read, 10, 12, "numbers do not rise"); /* 11 retracts × 10 events */
}

static void
test_damaged_lines (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) text = g_string_new (first_line);

  for (guint i = 0; i < 7; i++)
    g_string_append (text, "rubbish\n");

  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  g_assert_cmpuint (read->damaged->len, ==, 6);
  assert_stopped (read, 0, 7, "more than 5 of its lines are damaged");
}

/* A long line is damage of its own: the rest of the file is as good as ever. */
static void
test_a_long_line (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) text = g_string_new (first_line);
  g_autofree char *words = g_strnfill (3000, 'w');

  g_string_append_printf (text, "{\"n\":1,\"t\":0,\"note\":{\"text\":\"%s\"}}\n{\"n\":2,\"t\":1,%s}\n", words, NOTE);

  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  g_assert_null (read->stopped);
  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, 1);
  g_assert_cmpuint (read->damaged->len, ==, 1);
  g_assert_cmpuint (g_array_index (read->damaged, RwDamage, 0).line, ==, 2);
  g_assert_nonnull (strstr (g_array_index (read->damaged, RwDamage, 0).message, "2000 are the most"));
}

static void
refuse_header (const char *header,
               gsize       length,
               const char *why)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes_within (header, length, "gift.rwlog", &limits, &error);

  g_assert_null (read);
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER);
  g_test_message ("%.300s", error->message);
  g_assert_nonnull (strstr (error->message, "gift.rwlog, line 1"));
  g_assert_nonnull (strstr (error->message, why));
}

/* The fixture's header with @n meters. (transfer full) */
static char *
header_with_meters (guint n)
{
  g_auto (GStrv) parts = g_strsplit (FIXTURE_HEADER, "\"meters\":[", 2);
  g_autoptr (GString) meters = g_string_new ("\"meters\":[");

  g_assert_nonnull (parts[1]);
  for (guint i = 0; i < n; i++)
    g_string_append_printf (meters, "%s{\"id\":\"x%u\"}", i > 0 ? "," : "", i);
  return g_strconcat (parts[0], meters->str, "],\"was\":[", parts[1], "\n", NULL);
}

static void
test_many_meters (void)
{
  g_autofree char *just = header_with_meters (RW_LIMIT_METERS);
  g_autofree char *over = header_with_meters (RW_LIMIT_METERS + 1);
  g_autoptr (GString) text = g_string_new (just);
  const RwLimits limits = small_limits ();
  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  g_assert_cmpuint (rw_session_get_header (read->session)->meters->len, ==, RW_LIMIT_METERS);
  refuse_header (over, strlen (over), "at most 64");
}

static void
test_headers_that_ask_too_much (void)
{
  g_autofree char *long_line = g_strnfill (5000, 'x');
  g_autofree char *deep = g_strnfill (RW_JSON_MAX_DEPTH + 1, '[');
  g_autoptr (GString) rails
      = g_string_new ("{\"railwright\":1,\"id\":\"z\",\"started\":\"2026-03-14T09:30:00Z\","
                      "\"profile\":{\"id\":\"x\",\"rails\":[");

  for (guint i = 0; i <= RW_LIMIT_RAILS; i++)
    g_string_append_printf (rails, "%s{\"id\":\"r%u\",\"nominal\":5,\"limits\":[4,6]}", i > 0 ? "," : "", i);
  g_string_append (rails, "]}}");
  refuse_header (long_line, 5000, "at most 4000");
  refuse_header (deep, strlen (deep), "nested deeper than");
  refuse_header (rails->str, rails->len, "at most 64");
}

static void
test_deep_events_are_damage (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) text = g_string_new (first_line);
  g_autofree char *deep = g_strnfill (RW_JSON_MAX_DEPTH, '[');

  g_string_append_printf (text, "{\"n\":1,\"t\":0,\"x\":%s\n{\"n\":2,\"t\":1,%s}\n", deep, NOTE);

  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  g_assert_cmpuint (read->damaged->len, ==, 1);
  g_assert_nonnull (strstr (g_array_index (read->damaged, RwDamage, 0).message, "nested deeper than"));
  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, 1);
}

static void
test_long_ids_are_damage (void)
{
  const RwLimits limits = small_limits ();
  g_autoptr (GString) text = g_string_new (first_line);
  g_autofree char *id = g_strnfill (RW_LIMIT_ID_CHARS + 1, 'i');

  g_string_append_printf (text,
                          "{\"n\":1,\"t\":0,\"symptom\":{\"id\":\"%s\",\"state\":\"present\"}}\n"
                          "{\"n\":2,\"t\":0,\"reading\":{\"rail\":\"%s\",\"place\":\"board\",\"value\":1}}\n"
                          "{\"n\":3,\"t\":0,\"reading\":{\"rail\":\"p5\",\"place\":\"board\",\"value\":1,\"meter\":\"%s\"}}\n",
                          id, id, id);

  g_autoptr (RwJournalRead) read = read_within (text, &limits);

  g_assert_cmpuint (read->damaged->len, ==, 3);
  g_assert_nonnull (strstr (g_array_index (read->damaged, RwDamage, 1).message, "longer than 100 characters"));
}

/* A limit is no damage: what stands behind it must not be cut off by writing on. */
static void
test_nothing_is_written_to_such_a_file (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "long.rwlog", NULL);
  g_autoptr (GString) text = file_of (rw_limits.landmarks + 1, NOTE);
  g_autoptr (GError) error = NULL;
  RwJournalRead *read = NULL;
  GStatBuf after;

  g_assert_true (g_file_set_contents (path, text->str, (gssize) text->len, NULL));
  g_assert_null (rw_journal_open (path, &read, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_LIMIT);
  g_assert_null (read);
  g_assert_cmpint (g_stat (path, &after), ==, 0);
  g_assert_cmpint (after.st_size, ==, (goffset) text->len);

  g_autoptr (RwJournalRead) looked = rw_journal_read_file (path, NULL);

  g_assert_nonnull (looked);
  g_assert_cmpuint (rw_session_get_n_events (looked->session), ==, rw_limits.landmarks);
  fixture_remove (folder);
}

static void
test_pipes_and_devices_are_not_waited_for (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *pipe = g_build_filename (folder, "pipe.rwlog", NULL);
  const char *const paths[] = { pipe, "/dev/zero", folder };

  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (rw_journal_read_file (paths[i], &error));
      g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ);
      g_assert_nonnull (strstr (error->message, "Choose a file"));
    }
  fixture_remove (folder);
}

static void
test_a_million_samples_open (void)
{
  g_autoptr (GString) text = file_of (1000000, SAMPLE);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes (text->str, text->len, "long.rwlog", &error);

  g_assert_no_error (error);
  g_assert_null (read->stopped);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, 1000000);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/journal-limits/so many events are read and the next is told of", test_events);
  g_test_add_func ("/journal-limits/so many events that are no samples", test_landmarks);
  g_test_add_func ("/journal-limits/so much memory", test_memory);
  g_test_add_func ("/journal-limits/so many bytes of a file", test_file_bytes);
  g_test_add_func ("/journal-limits/so many unknown rails", test_rails_that_the_profile_does_not_have);
  g_test_add_func ("/journal-limits/so many retracts out of order", test_retracts_out_of_order);
  g_test_add_func ("/journal-limits/so many damaged lines", test_damaged_lines);
  g_test_add_func ("/journal-limits/a long line is skipped alone", test_a_long_line);
  g_test_add_func ("/journal-limits/a header of too many bytes, levels or rails is refused",
                   test_headers_that_ask_too_much);
  g_test_add_func ("/journal-limits/a header of too many meters is refused", test_many_meters);
  g_test_add_func ("/journal-limits/an event too deep is skipped alone", test_deep_events_are_damage);
  g_test_add_func ("/journal-limits/an id too long is damage", test_long_ids_are_damage);
  g_test_add_func ("/journal-limits/a file past a limit is never written to", test_nothing_is_written_to_such_a_file);
  g_test_add_func ("/journal-limits/pipes, devices and folders are refused", test_pipes_and_devices_are_not_waited_for);
  g_test_add_func ("/journal-limits/a million samples open", test_a_million_samples_open);
  return g_test_run ();
}
