/* test-own-record.c: the restorer's own record in a job: its switch, and what is said when it cannot be read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>

#include "rw-job.h"

static RwSessionHeader *
make_header (void)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  g_autoptr (GDateTime) now = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);

  g_assert_cmpuint (profiles->len, >, 0);
  return rw_session_header_new (profiles->pdata[0], "Tidepool Racer", "B-07", NULL, now);
}

static RwJob *
start (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "job.rwlog", NULL);
  g_autoptr (GError) error = NULL;
  RwJob *job = rw_job_new_bench (make_header (), path, &error);
  RwEvent symptom = rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT);

  g_assert_no_error (error);
  rw_job_add (job, &symptom);
  while (rw_job_get_advice (job) == NULL)
    g_main_context_iteration (NULL, TRUE);
  return job;
}

static void
end (RwJob      *job,
     const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "job.rwlog", NULL);

  g_object_unref (job);
  g_remove (path);
}

static void
count_cb (guint *n)
{
  (*n)++;
}

/* A setting can be bound to it: it tells of each change, and of nothing else. */
static void
test_the_switch_tells_of_its_changes (void)
{
  RwJob *job = start (g_getenv ("XDG_DATA_HOME"));
  gboolean uses = FALSE;
  guint n = 0;

  g_signal_connect_swapped (job, "notify::uses-record", G_CALLBACK (count_cb), &n);
  g_object_get (job, "uses-record", &uses, NULL);
  g_assert_true (uses);
  g_object_set (job, "uses-record", TRUE, NULL);
  g_assert_cmpuint (n, ==, 0);
  g_object_set (job, "uses-record", FALSE, NULL);
  g_assert_cmpuint (n, ==, 1);
  g_assert_false (rw_job_get_uses_record (job));
  rw_job_set_uses_record (job, TRUE);
  g_assert_cmpuint (n, ==, 2);
  end (job, g_getenv ("XDG_DATA_HOME"));
}

static void
test_a_damaged_record_is_told (void)
{
  g_autofree char *path = rw_record_dup_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *aside = g_strconcat (path, ".damaged", NULL);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "{\"jobs\": rubbish", -1, NULL));

  RwJob *damaged = start (g_getenv ("XDG_DATA_HOME"));

  g_assert_nonnull (rw_job_get_record_problem (damaged));
  end (damaged, g_getenv ("XDG_DATA_HOME"));
  g_remove (path);
  g_remove (aside);

  RwJob *good = start (g_getenv ("XDG_DATA_HOME"));

  g_assert_null (rw_job_get_record_problem (good));
  end (good, g_getenv ("XDG_DATA_HOME"));
  g_rmdir (folder);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *home = g_dir_make_tmp ("own-record-XXXXXX", &error);

  g_assert_no_error (error);
  g_setenv ("XDG_DATA_HOME", home, TRUE); /* before anything asks for it */
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/own-record/the switch tells of its changes", test_the_switch_tells_of_its_changes);
  g_test_add_func ("/own-record/a damaged record is told", test_a_damaged_record_is_told);

  const int failed = g_test_run ();

  g_rmdir (home);
  return failed;
}
