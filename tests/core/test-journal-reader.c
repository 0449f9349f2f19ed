/* test-journal-reader.c: a session file read back, cut and damaged in every way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "fixtures.h"
#include "rw-event-json.h"
#include "rw-journal-reader.h"
#include "rw-json.h"

/* A small header keeps the walks over every byte short. */
#define HEADER                                                                    \
  "{\"railwright\":1,\"id\":\"z\",\"started\":\"2026-03-14T09:30:00Z\",\"profile\":" \
  "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[4.9,5.2]}]}}"

static const char *const lines[] = {
  HEADER,
  "{\"n\":1,\"t\":0.000,\"setup\":{\"power\":\"on\",\"board\":\"out\",\"warm\":false}}",
  "{\"n\":2,\"t\":4.210,\"reading\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.021,\"step\":0.001,\"meter\":\"m1\"}}",
  "{\"n\":3,\"t\":4.400,\"sample\":{\"rail\":\"p5\",\"place\":\"board\",\"kind\":\"dc\",\"value\":5.022,\"meter\":\"m1\"}}",
  "{\"n\":4,\"t\":9.000,\"trim\":{\"moved\":true}}",
  "{\"n\":5,\"t\":12.000,\"symptom\":{\"id\":\"resets\",\"state\":\"present\"}}",
  "{\"n\":6,\"t\":14.000,\"weather\":{\"hot\":[1,2.50,null]}}",
  "{\"n\":7,\"t\":20.000,\"repair\":{\"cause\":\"trim-low\",\"result\":\"fixed\"},\"by\":\"Mo\"}",
  "{\"n\":8,\"t\":23.000,\"note\":{\"text\":\"fan “noisy” \\n\\\\\"}}",
  "{\"n\":9,\"t\":24.000,\"retract\":{\"n\":8}}",
  "{\"n\":10,\"t\":25.000,\"gap\":{\"meter\":\"m1\",\"why\":\"unplugged\"}}",
};

static const guint n_lines = G_N_ELEMENTS (lines);

static GString *
whole_file (const char *end_of_line)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n_lines; i++)
    {
      g_string_append (text, lines[i]);
      g_string_append (text, end_of_line);
    }
  return text;
}

static RwJournalRead *
read_good (const char *text,
           gsize       length)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *exact = g_memdup2 (text, length);
  RwJournalRead *read = rw_journal_read_bytes (exact, length, "test.rwlog", &error);

  g_assert_no_error (error);
  return read;
}

static void
assert_event_is (RwSession  *session,
                 guint       index,
                 const char *line)
{
  RwEvent wanted = fixture_event (line);

  g_assert_cmpuint (index, <, rw_session_get_n_events (session));
  fixture_assert_same_event (rw_session_get_event (session, index), &wanted);
  rw_event_clear (&wanted);
}

static void
test_whole_file (void)
{
  g_autoptr (GString) text = whole_file ("\n");
  g_autoptr (RwJournalRead) read = read_good (text->str, text->len);

  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_lines - 1);
  for (guint i = 1; i < n_lines; i++)
    assert_event_is (read->session, i - 1, lines[i]);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_false (read->torn_tail);
  g_assert_false (read->needs_newline);
  g_assert_cmpuint (read->good_end, ==, text->len);
  g_assert_cmpuint (read->n_unknown, ==, 1);
}

/* Everything before the place of the cut is there, nothing else is, and a part of a line is told. */
static void
test_cut_at_every_byte (void)
{
  g_autoptr (GString) text = whole_file ("\n");
  const gsize header_length = strlen (lines[0]);

  for (gsize cut = 0; cut <= text->len; cut++)
    {
      g_autofree char *part = g_memdup2 (text->str, cut);
      g_autoptr (GError) error = NULL;
      g_autoptr (RwJournalRead) read = rw_journal_read_bytes (part, cut, "test.rwlog", &error);

      if (cut < header_length)
        {
          g_assert_null (read);
          g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER);
          g_assert_nonnull (strstr (error->message, "test.rwlog, line 1"));
          continue;
        }
      g_assert_no_error (error);

      gsize end = 0, good_end = header_length;
      guint n_whole = 0;

      for (guint i = 0; i < n_lines; i++)
        {
          const gsize line_end = end + strlen (lines[i]);

          if (line_end <= cut)
            {
              n_whole++;
              good_end = MIN (line_end + 1, cut);
            }
          end = line_end + 1;
        }
      g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_whole - 1);
      for (guint i = 1; i < n_whole; i++)
        assert_event_is (read->session, i - 1, lines[i]);
      g_assert_cmpuint (read->damaged->len, ==, 0);
      g_assert_cmpuint (read->good_end, ==, good_end);
      g_assert_cmpint (read->torn_tail, ==, good_end < cut);
      g_assert_cmpint (read->needs_newline, ==, part[good_end - 1] != '\n');
    }
}

/* Which of the lines of the undamaged file this is; 0: none. */
static guint
find_line (const char *text,
           gsize       length)
{
  for (guint i = 1; i < n_lines; i++)
    if (strlen (lines[i]) == length && memcmp (lines[i], text, length) == 0)
      return i;
  return 0;
}

/* Walks the damaged text by itself: a line as it was must be read as it was; any other one is
 * either told with its number and place, or was still good JSON of an event. */
static void
check_damaged (const GString *text)
{
  g_autofree char *exact = g_memdup2 (text->str, text->len);
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes (exact, text->len, "test.rwlog", &error);

  if (read == NULL)
    {
      g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER);
      g_assert_false (strncmp (text->str, HEADER "\n", strlen (HEADER) + 1) == 0);
      return;
    }

  guint number = 0, event = 0, told = 0;

  for (gsize at = 0, next; at < text->len; at = next)
    {
      const char *newline = memchr (text->str + at, '\n', text->len - at);
      const gsize length = newline != NULL ? (gsize) (newline - text->str) - at : text->len - at;
      const guint known = find_line (text->str + at, length);

      next = at + length + 1;
      if (++number == 1)
        continue;
      if (known > 0)
        {
          assert_event_is (read->session, event++, lines[known]);
          continue;
        }
      if (told < read->damaged->len && g_array_index (read->damaged, RwDamage, told).line == number)
        {
          const RwDamage *damage = &g_array_index (read->damaged, RwDamage, told++);

          g_assert_cmpuint (damage->offset, ==, at);
          g_assert_true (g_utf8_validate (damage->message, -1, NULL) && *damage->message != '\0');
          continue;
        }
      if (newline == NULL && read->torn_tail)
        continue;
      if (length > 0)
        g_assert_cmpuint (event++, <, rw_session_get_n_events (read->session));
    }
  g_assert_cmpuint (event, ==, rw_session_get_n_events (read->session));
  g_assert_cmpuint (told, ==, read->damaged->len);
}

static void
test_flip_at_every_byte (void)
{
  g_autoptr (GString) text = whole_file ("\n");
  g_autoptr (GRand) random = g_rand_new_with_seed (51);

  for (gsize i = 0; i < text->len; i++)
    {
      const char good = text->str[i];
      const char flips[] = { (char) (good ^ 1), (char) (good ^ 0x20), (char) (good ^ 0x80), '\n',
                             '"', '\0', '}',
                             (char) g_rand_int_range (random, 0, 256) };

      for (guint k = 0; k < G_N_ELEMENTS (flips); k++)
        {
          text->str[i] = flips[k];
          check_damaged (text);
        }
      text->str[i] = good;
    }
}

/* Several wounds at once: bytes lost, doubled, zeroed, lines swapped about. */
static void
test_random_wounds (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (53);

  for (guint round = 0; round < 2000; round++)
    {
      g_autoptr (GString) text = whole_file ("\n");

      for (int wounds = g_rand_int_range (random, 1, 5); wounds > 0; wounds--)
        {
          const gssize at = g_rand_int_range (random, (int) strlen (HEADER) + 1,
                                              (int) text->len - 1);
          const gssize longest = g_rand_int_range (random, 1, 80);
          const gssize length = MIN (longest, (gssize) text->len - at);
          g_autofree char *piece = g_strndup (text->str + at, (gsize) length);

          switch (g_rand_int_range (random, 0, 3))
            {
            case 0:
              g_string_erase (text, at, length);
              break;
            case 1:
              g_string_insert (text, at, piece);
              break;
            default:
              memset (text->str + at, g_rand_boolean (random) ? 0 : 0xFF, (gsize) length);
            }
        }
      check_damaged (text);
    }
}

static void
test_carriage_returns (void)
{
  g_autoptr (GString) text = whole_file ("\r\n");

  g_string_append (text, "\r\n  \t\r\n");

  g_autoptr (RwJournalRead) read = read_good (text->str, text->len);

  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_lines - 1);
  for (guint i = 1; i < n_lines; i++)
    assert_event_is (read->session, i - 1, lines[i]);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_cmpuint (read->good_end, ==, text->len);

  /* Cut between the two characters that end a line: the line is whole. */
  const gsize cut = text->len - strlen ("\n\r\n  \t\r\n");
  g_autoptr (RwJournalRead) torn = read_good (text->str, cut);

  g_assert_cmpint (text->str[cut - 1], ==, '\r');
  g_assert_cmpuint (rw_session_get_n_events (torn->session), ==, n_lines - 1);
  g_assert_true (torn->needs_newline);
  g_assert_false (torn->torn_tail);
  g_assert_cmpuint (torn->good_end, ==, cut);
}

static void
test_byte_order_mark (void)
{
  g_autoptr (GString) text = whole_file ("\n"), header = g_string_new (NULL);

  g_string_prepend (text, "\xEF\xBB\xBF");

  g_autoptr (RwJournalRead) read = read_good (text->str, text->len);

  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_lines - 1);
  g_assert_cmpuint (read->good_end, ==, text->len);
  rw_session_header_append_line (rw_session_get_header (read->session), header);
  g_assert_cmpstr (header->str, ==, HEADER "\n"); /* not copied on */
}

static void
test_empty_lines_mean_nothing (void)
{
  g_autoptr (GString) text = whole_file ("\n\n \n\t \r\n");

  g_string_append (text, "oops\n");

  g_autoptr (RwJournalRead) read = read_good (text->str, text->len);

  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_lines - 1);
  g_assert_cmpuint (read->damaged->len, ==, 1);
  g_assert_cmpuint (g_array_index (read->damaged, RwDamage, 0).line, ==, 4 * n_lines + 1);
  g_assert_cmpuint (g_array_index (read->damaged, RwDamage, 0).offset, ==, text->len - 5);
}

static void
test_header_alone (void)
{
  g_autoptr (RwJournalRead) ended = read_good (HEADER "\n", strlen (HEADER "\n"));
  g_autoptr (RwJournalRead) bare = read_good (HEADER, strlen (HEADER));

  g_assert_false (ended->needs_newline);
  g_assert_true (bare->needs_newline);
  g_assert_cmpuint (bare->good_end, ==, strlen (HEADER));
  g_assert_cmpuint (rw_session_get_n_events (bare->session), ==, 0);
}

/* Some file systems fill what was never written with zeros. */
static void
test_tail_of_zeros (void)
{
  g_autoptr (GString) text = whole_file ("\n");
  const gsize good = text->len;
  char zeros[4096] = { 0 };

  g_string_append_len (text, zeros, sizeof zeros);

  g_autoptr (RwJournalRead) read = read_good (text->str, text->len);

  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_lines - 1);
  g_assert_true (read->torn_tail);
  g_assert_cmpuint (read->good_end, ==, good);
}

static void
test_bad_lines_in_the_middle (void)
{
  g_autoptr (GString) text = g_string_new (HEADER "\n");
  g_autoptr (GString) deep = g_string_new ("{\"n\":1,\"t\":0,\"x\":/*\"*/");

  while (deep->len < 1000000)
    g_string_append_c (deep, '[');
  g_string_append_printf (text, "%s\n%s\n%s%s\n%s\n", lines[1], deep->str, lines[2], lines[3],
                          lines[4]);
  while (text->len < RW_JSON_MAX_BYTES + 2000000)
    g_string_append (text, "huge huge huge huge ");
  g_string_append_printf (text, "\n%s\n", lines[5]);

  g_autoptr (RwJournalRead) read = read_good (text->str, text->len);
  static const guint numbers[] = { 3, 4, 6 };

  g_assert_cmpuint (read->damaged->len, ==, G_N_ELEMENTS (numbers));
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      const RwDamage *damage = &g_array_index (read->damaged, RwDamage, i);

      g_test_message ("%u: %s", damage->line, damage->message);
      g_assert_cmpuint (damage->line, ==, numbers[i]);
    }
  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, 3);
  assert_event_is (read->session, 0, lines[1]);
  assert_event_is (read->session, 1, lines[4]);
  assert_event_is (read->session, 2, lines[5]);
}

static void
test_files_that_cannot_be_read (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *missing = g_build_filename (folder, "none.rwlog", NULL);
  g_autofree char *empty = g_build_filename (folder, "empty.rwlog", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_journal_read_file (missing, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ);
  g_assert_nonnull (strstr (error->message, "none.rwlog"));
  g_clear_error (&error);
  g_assert_null (rw_journal_read_file (folder, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_READ);
  g_clear_error (&error);
  g_assert_true (g_file_set_contents (empty, "", 0, NULL));
  g_assert_null (rw_journal_read_file (empty, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_HEADER);
  g_assert_nonnull (strstr (error->message, "empty.rwlog"));
  fixture_remove (folder);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/journal-reader/whole-file", test_whole_file);
  g_test_add_func ("/journal-reader/cut-at-every-byte", test_cut_at_every_byte);
  g_test_add_func ("/journal-reader/flip-at-every-byte", test_flip_at_every_byte);
  g_test_add_func ("/journal-reader/random-wounds", test_random_wounds);
  g_test_add_func ("/journal-reader/carriage-returns", test_carriage_returns);
  g_test_add_func ("/journal-reader/byte-order-mark", test_byte_order_mark);
  g_test_add_func ("/journal-reader/empty-lines-mean-nothing", test_empty_lines_mean_nothing);
  g_test_add_func ("/journal-reader/header-alone", test_header_alone);
  g_test_add_func ("/journal-reader/tail-of-zeros", test_tail_of_zeros);
  g_test_add_func ("/journal-reader/bad-lines-in-the-middle", test_bad_lines_in_the_middle);
  g_test_add_func ("/journal-reader/files-that-cannot-be-read", test_files_that_cannot_be_read);
  return g_test_run ();
}
