/* test-compare-others.c: which sessions of a folder are offered to compare with, and how a job is frozen for it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "fixtures.h"
#include "rw-compare-others.h"
#include "rw-compare-window.h"

/* The fixture's header with another id, beginning and cabinet, in a file of @folder. */
static void
lay (const char *folder,
     const char *name,
     const char *id,
     const char *year,
     const char *cabinet)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GString) text = g_string_new (FIXTURE_HEADER "\n");
  g_autofree char *own = g_strdup_printf ("\"id\":\"%s\"", id);
  g_autofree char *started = g_strdup_printf ("\"started\":\"%s", year);
  g_autoptr (GError) error = NULL;

  g_string_replace (text, "\"id\":\"0b7f\"", own, 1);
  g_string_replace (text, "\"started\":\"2026", started, 1);
  g_string_replace (text, "Tidepool Racer", cabinet, 1);
  g_file_set_contents (path, text->str, -1, &error);
  g_assert_no_error (error);
}

static void
test_same_cabinet_newest_first (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autofree char *folder = fixture_folder ();
  g_autofree char *torn = g_build_filename (folder, "torn.rwlog", NULL);

  lay (folder, "a.rwlog", "a1", "2023", "Tidepool Racer");
  lay (folder, "b.rwlog", "b1", "2025", "Tidepool Racer");
  lay (folder, "c.rwlog", "c1", "2024", "Tidepool Racer");
  lay (folder, "kelp.rwlog", "d1", "2025", "Kelp Gardens");
  lay (folder, "itself.rwlog", "0b7f", "2026", "Tidepool Racer");
  lay (folder, "no-session.txt", "e1", "2026", "Tidepool Racer");
  g_assert_true (g_file_set_contents (torn, "{\"railwright\":1,", -1, NULL));

  g_autoptr (GPtrArray) others = rw_compare_others_list (folder, rw_session_get_header (session));
  static const int years[] = { 2025, 2024, 2023 };

  g_assert_cmpuint (others->len, ==, G_N_ELEMENTS (years));
  for (guint i = 0; i < others->len; i++)
    g_assert_cmpint (g_date_time_get_year (((RwCompareOther *) others->pdata[i])->started), ==, years[i]);
  fixture_remove (folder);
}

static void
test_no_folder_no_others (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GPtrArray) others = rw_compare_others_list ("/nowhere/at/all", rw_session_get_header (session));

  g_assert_cmpuint (others->len, ==, 0);
}

/* What is compared stays as it was while the job goes on. */
static void
test_a_copy_stands_still (void)
{
  g_autoptr (RwSession) session = fixture_session ();
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (guint i = 0; i < 200; i++)
    {
      RwEvent event = fixture_random_event (random, i, i);

      rw_session_add (session, &event);
    }

  g_autoptr (RwSession) copy = rw_compare_window_copy_session (session);
  RwEvent more = rw_event_make_mark (300, "later");

  rw_session_add (session, &more);
  g_assert_cmpuint (rw_session_get_n_events (copy), ==, 200);
  g_assert_cmpstr (rw_session_get_header (copy)->id, ==, rw_session_get_header (session)->id);
  for (guint i = 0; i < 200; i++)
    {
      fixture_assert_same_event (rw_session_get_event (copy, i), rw_session_get_event (session, i));
      g_assert_cmpint (rw_session_is_live (copy, i), ==, rw_session_is_live (session, i));
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/compare-others/sessions of the cabinet, the newest first", test_same_cabinet_newest_first);
  g_test_add_func ("/compare-others/no folder, no others", test_no_folder_no_others);
  g_test_add_func ("/compare-others/a copy of a job stands still", test_a_copy_stands_still);
  return g_test_run ();
}
