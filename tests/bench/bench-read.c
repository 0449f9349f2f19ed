/* bench-read.c: how fast a long session is read, against json-glib parsing the same lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * 200 000 samples. A ratio of two times on one machine says more than either. Fails when the
 * reader is not at least ten times as fast as a parser that builds a tree of each line.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-event-json.h"
#include "rw-journal-reader.h"

static const guint n_samples = 200000;
static const double least_ratio = 10;

static GString *
make_file (void)
{
  GString *text = g_string_new (FIXTURE_HEADER "\n");

  for (guint i = 0; i < n_samples; i++)
    {
      g_autofree char *number = g_strdup_printf ("5.%03u", i * 7 % 1000);
      const RwReading sample = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC,
                                                g_ascii_strtod (number, NULL), 0.001, "m1");
      RwEvent event = rw_event_make_sample (i / 4.0, &sample);

      event.n = i + 1;
      rw_event_append_line (&event, text);
    }
  return text;
}

static double
time_reader (const GString *text)
{
  const gint64 start = g_get_monotonic_time ();
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes (text->str, text->len, "bench", NULL);

  g_assert_cmpuint (rw_session_get_n_events (read->session), ==, n_samples);
  return (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

/* The least that a reader of trees must do: parse, and take the value out. */
static double
time_trees (const GString *text)
{
  const gint64 start = g_get_monotonic_time ();
  g_autoptr (JsonParser) parser = json_parser_new ();
  double sum = 0;

  for (const char *line = strchr (text->str, '\n') + 1, *end; *line != '\0'; line = end + 1)
    {
      end = strchr (line, '\n');
      g_assert_true (json_parser_load_from_data (parser, line, end - line, NULL));

      JsonObject *object = json_node_get_object (json_parser_get_root (parser));

      sum += json_object_get_double_member (json_object_get_object_member (object, "sample"),
                                            "value");
    }
  g_assert_cmpfloat (sum, >, n_samples * 5.0);
  return (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

int
main (void)
{
  g_autoptr (GString) text = make_file ();
  double reader = INFINITY, trees = INFINITY;

  for (guint i = 0; i < 3; i++)
    {
      reader = fmin (reader, time_reader (text));
      trees = fmin (trees, time_trees (text));
    }
  g_print ("%u samples: read in %.3f s (%.0f ns each, %.0f MB/s); trees of them in %.3f s; %.1f times as fast\n", n_samples,
           reader, reader / n_samples * 1e9, (double) text->len / reader / 1e6, trees,
           trees / reader);
  return trees / reader >= least_ratio ? 0 : 1;
}
