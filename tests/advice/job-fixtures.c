/* job-fixtures.c: a small knowledge, and jobs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "job-fixtures.h"

#include <glib/gstdio.h>
#include <math.h>

#include "rw-json.h"

void
fixture_leave_home (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("advice-home-XXXXXX", &error);

  g_assert_no_error (error);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
}

void
fixture_come_home (void)
{
  const char *home = g_getenv ("XDG_DATA_HOME");
  g_autofree char *ours = g_build_filename (home, "railwright", NULL);
  g_autofree char *knowledge = g_build_filename (ours, "knowledge", NULL);

  g_rmdir (knowledge);
  g_rmdir (ours);
  g_rmdir (home);
}

RwKnowledge *
fixture_knowledge (void)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (paths,
                   g_test_build_filename (G_TEST_DIST, "advice", "small-knowledge.json", NULL));

  RwKnowledge *knowledge = rw_knowledge_load_files (paths, &error);

  g_assert_no_error (error);
  return knowledge;
}

RwKnowledge *
fixture_try_knowledge (const char *text,
                       GError    **error)
{
  g_autoptr (GError) problem = NULL;
  g_autofree char *folder = g_dir_make_tmp ("advice-XXXXXX", &problem);
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);

  g_assert_no_error (problem);
  g_ptr_array_add (paths, g_build_filename (folder, "mine.json", NULL));
  g_assert_true (g_file_set_contents (paths->pdata[0], text, -1, NULL));

  RwKnowledge *knowledge = rw_knowledge_load_files (paths, error);

  g_assert_cmpint (g_unlink (paths->pdata[0]), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  return knowledge;
}

RwKnowledge *
fixture_knowledge_from (const char *text)
{
  g_autoptr (GError) error = NULL;
  RwKnowledge *knowledge = fixture_try_knowledge (text, &error);

  g_assert_no_error (error);
  return knowledge;
}

RwProfile *
fixture_profile (gboolean    minus,
                 const char *supply)
{
  g_autofree char *supply_key = supply != NULL ? g_strdup_printf ("\"supply\":\"%s\",",
                                                                  supply) : g_strdup ("");
  g_autofree char *text =
      g_strdup_printf ("{\"id\":\"two\",\"title\":\"Two rails\",%s\"rails\":["
                       "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2]}%s]}",
                       supply_key,
                       minus ? ",{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5]}" : "");
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (text, &error);
  RwProfile *profile = NULL;

  g_assert_no_error (error);
  profile = rw_profile_new_from_node (node, "two", &error);
  g_assert_no_error (error);
  return profile;
}

RwSession *
fixture_job (void)
{
  g_autoptr (RwProfile) profile = fixture_profile (TRUE, "switcher");
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);

  return rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "B-07", NULL, started));
}

static double
next_second (RwSession *job)
{
  return rw_session_get_end (job) + 1;
}

static void
add (RwSession *job,
     RwEvent    event)
{
  rw_session_add (job, &event);
}

void
fixture_setup (RwSession *job,
               RwSaid     power,
               RwSaid     board,
               RwSaid     warm)
{
  add (job, rw_event_make_setup (next_second (job), (RwSetup){ power, board, warm }));
}

void
fixture_symptom (RwSession     *job,
                 const char    *id,
                 RwSymptomState state)
{
  add (job, rw_event_make_symptom (next_second (job), id, state));
}

void
fixture_finding (RwSession  *job,
                 const char *check,
                 const char *outcome)
{
  add (job, rw_event_make_finding (next_second (job), check, outcome));
}

void
fixture_repair (RwSession     *job,
                const char    *cause,
                RwRepairResult result)
{
  add (job, rw_event_make_repair (next_second (job), cause, result));
}

void
fixture_trim (RwSession *job)
{
  add (job, rw_event_make_trim (next_second (job)));
}

void
fixture_reading (RwSession  *job,
                 const char *rail,
                 RwPlace     place,
                 RwKind      kind,
                 double      value,
                 double      u)
{
  RwReading reading = rw_reading_make (g_intern_string (rail), place, kind, value, 0.001, NULL);

  reading.u = u;
  add (job, rw_event_make_reading (next_second (job), &reading));
}

void
fixture_overload (RwSession  *job,
                  const char *rail,
                  RwPlace     place,
                  RwKind      kind)
{
  RwReading reading = rw_reading_make (g_intern_string (rail), place, kind, NAN, 0.001, NULL);

  reading.over = TRUE;
  add (job, rw_event_make_reading (next_second (job), &reading));
}
