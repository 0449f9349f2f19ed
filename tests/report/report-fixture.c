/* report-fixture.c: a small session with numbers that can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "report-fixture.h"

#include <string.h>

const char fixture_header[]
    = "{\"railwright\":1,\"id\":\"11111111-2222-4333-8444-555555555555\","
      "\"started\":\"2026-03-14T09:30:00Z\","
      "\"cabinet\":{\"name\":\"Tidepool \\\"Racer\\\"\",\"tag\":\"B-07\"},"
      "\"profile\":{\"id\":\"two\",\"title\":\"Two rails\",\"reference\":\"p5\",\"rails\":["
      "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5.0,\"limits\":[4.90,5.20],"
      "\"bare_limits\":[4.75,5.40],\"never_above\":5.5,\"priority\":1,"
      "\"follows_trim\":\"yes\",\"feeds\":\"logic\",\"ripple_limit\":0.05},"
      "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5.0,\"limits\":[-5.5,-4.5],"
      "\"bare_limits\":[-5.75,-4.25],\"never_above\":6,\"priority\":2,"
      "\"follows_trim\":\"yes\",\"feeds\":\"sound\"}]},"
      "\"meters\":[{\"id\":\"m1\",\"name\":\"bench meter\",\"percent\":0.5,\"counts\":2},"
      "{\"id\":\"m2\"}]}\n";

RwJournalRead *
fixture_read (const char *lines)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *bytes = g_strconcat (fixture_header, lines, NULL);
  RwJournalRead *read = rw_journal_read_bytes (bytes, strlen (bytes), "fixture", &error);

  g_assert_no_error (error);
  return read;
}

RwKnowledge *
fixture_load_knowledge (void)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (paths, g_test_build_filename (G_TEST_DIST, "report", "mini-knowledge.json",
                                                 NULL));

  RwKnowledge *knowledge = rw_knowledge_load_files (paths, &error);

  g_assert_no_error (error);
  return knowledge;
}
