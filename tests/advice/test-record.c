/* test-record.c: the restorer's own record of causes, and what it makes of the chances.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>

#include "job-fixtures.h"
#include "rw-record.h"

static char *
temporary_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("record-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static void
take (RwRecord   *record,
      const char *name,
      RwSession  *job,
      gboolean    changes)
{
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);

  g_assert_cmpint (rw_record_take (record, name, state), ==, changes);
}

static void
test_each_job_counts_once (void)
{
  g_autoptr (RwRecord) record = rw_record_new ();
  g_autoptr (RwSession) job = fixture_job ();

  take (record, "one", job, FALSE);
  g_assert_cmpuint (rw_record_get_n_jobs (record), ==, 0);
  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "worn", RW_REPAIR_NO_CHANGE);
  fixture_repair (job, "low", RW_REPAIR_FIXED);
  take (record, "one", job, TRUE);
  take (record, "one", job, FALSE);
  g_assert_cmpuint (rw_record_get_count (record, "low"), ==, 1);
  g_assert_cmpuint (rw_record_get_count (record, "worn"), ==, 0);

  /* It came back: nothing is confirmed any more; then it was the wire. */
  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  take (record, "one", job, TRUE);
  g_assert_cmpuint (rw_record_get_n_jobs (record), ==, 0);
  fixture_repair (job, "thin", RW_REPAIR_FIXED);
  take (record, "one", job, TRUE);
  g_assert_cmpuint (rw_record_get_count (record, "low"), ==, 0);
  g_assert_cmpuint (rw_record_get_count (record, "thin"), ==, 1);
  take (record, "two", job, TRUE);
  g_assert_cmpuint (rw_record_get_count (record, "thin"), ==, 2);
  g_assert_cmpuint (rw_record_get_n_jobs (record), ==, 2);
}

static double
prior_of (RwKnowledge *knowledge,
          const char  *cause)
{
  return rw_knowledge_find_cause (knowledge, cause)->prior;
}

#define CAUSE(id, keys) \
  "{\"id\":\"" id "\",\"title\":\"" id "\",\"area\":\"board\"," keys ",\"repair\":{\"title\":\"r\",\"minutes\":5,\"hazard\":\"none\",\"who\":\"anyone\",\"steps\":[\"s\"]}}"

/* Shipped 0.6, 0.3, 0.1 of the listed; three of four jobs had b, one a. Weights sum to 10 as before. */
static void
test_dirichlet_by_hand (void)
{
  g_autoptr (RwKnowledge) shipped = fixture_knowledge_from (
      "{\"causes\":[" CAUSE ("a", "\"prior\":6") "," CAUSE ("b", "\"prior\":3") "," CAUSE ("c", "\"prior\":1") ","
      CAUSE ("other", "\"prior\":2,\"broad\":true") "]}");
  g_autoptr (RwRecord) record = rw_record_new ();

  rw_record_set (record, "1", "b");
  rw_record_set (record, "2", "b");
  rw_record_set (record, "3", "a");
  rw_record_set (record, "4", "b");
  rw_record_set (record, "5", "other");
  rw_record_set (record, "6", "of another time");

  g_autoptr (RwKnowledge) with = rw_knowledge_with_record (shipped, record);

  g_assert_cmpfloat_with_epsilon (prior_of (with, "a"), 10 * (30 * 0.6 + 1) / 34, 1e-12);
  g_assert_cmpfloat_with_epsilon (prior_of (with, "b"), 10 * (30 * 0.3 + 3) / 34, 1e-12);
  g_assert_cmpfloat_with_epsilon (prior_of (with, "c"), 10 * (30 * 0.1) / 34, 1e-12);
  g_assert_cmpfloat (prior_of (with, "other"), ==, 2);
  g_assert_cmpfloat (prior_of (shipped, "a"), ==, 6);
  g_assert_cmpstr (rw_knowledge_find_cause (with, "b")->repair.steps[0], ==, "s");
}

static void
test_switched_off_or_empty_it_changes_nothing (void)
{
  g_autoptr (RwKnowledge) shipped = fixture_knowledge ();
  g_autoptr (RwRecord) record = rw_record_new ();
  g_autoptr (RwKnowledge) off = rw_knowledge_with_record (shipped, NULL);
  g_autoptr (RwKnowledge) empty = rw_knowledge_with_record (shipped, record);

  g_assert_true (off == shipped);
  g_assert_true (empty == shipped);
}

static void
test_comes_back_from_the_file (void)
{
  g_autofree char *folder = temporary_folder ();
  g_autofree char *below = g_build_filename (folder, "new", NULL);
  g_autofree char *path = g_build_filename (below, "record.json", NULL);
  g_autoptr (RwRecord) record = rw_record_new ();
  g_autoptr (GError) error = NULL;

  rw_record_set (record, "a \"quoted\" name", "low");
  rw_record_set (record, "b", "thin");
  g_assert_true (rw_record_save (record, path, &error));
  g_assert_no_error (error);

  g_autoptr (RwRecord) again = rw_record_load (path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (rw_record_get_n_jobs (again), ==, 2);
  g_assert_cmpuint (rw_record_get_count (again, "low"), ==, 1);
  g_assert_false (rw_record_set (again, "a \"quoted\" name", "low"));
  g_assert_cmpint (g_unlink (path), ==, 0);

  g_autoptr (RwRecord) none = rw_record_load (path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (rw_record_get_n_jobs (none), ==, 0);
  g_rmdir (below);
  g_rmdir (folder);
}

static void
test_damage_is_set_aside (void)
{
  static const char *const damaged[] = { "", "{\"record\":1,\"jobs\":{\"a\":\"low\"", "{\"record\":2,\"jobs\":{}}",
                                         "{\"record\":1,\"jobs\":{\"a\":7}}", "[]", "{\"record\":1}" };
  g_autofree char *folder = temporary_folder ();
  g_autofree char *path = g_build_filename (folder, "record.json", NULL);

  for (guint k = 0; k < G_N_ELEMENTS (damaged); k++)
    {
      g_autofree char *aside = k == 0 ? g_strdup_printf ("%s.damaged", path)
                                      : g_strdup_printf ("%s.damaged.%u", path, k + 1);
      g_autofree char *kept = NULL;
      g_autoptr (GError) error = NULL;

      g_assert_true (g_file_set_contents (path, damaged[k], -1, NULL));

      g_autoptr (RwRecord) record = rw_record_load (path, &error);

      g_assert_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_FORMAT);
      g_assert_cmpuint (rw_record_get_n_jobs (record), ==, 0);
      g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
      g_assert_true (g_file_get_contents (aside, &kept, NULL, NULL));
      g_assert_cmpstr (kept, ==, damaged[k]);
      g_assert_true (rw_record_save (record, path, NULL));
    }
  for (guint k = 0; k < G_N_ELEMENTS (damaged); k++)
    {
      g_autofree char *aside = k == 0 ? g_strdup_printf ("%s.damaged", path)
                                      : g_strdup_printf ("%s.damaged.%u", path, k + 1);

      g_unlink (aside);
    }
  g_unlink (path);
  g_rmdir (folder);
}

/* A folder stands where the file should be: nothing is written over it. */
static void
test_what_cannot_be_read_is_not_written_over (void)
{
  g_autofree char *folder = temporary_folder ();
  g_autofree char *path = g_build_filename (folder, "record.json", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir (path, 0700), ==, 0);

  g_autoptr (RwRecord) record = rw_record_load (path, &error);

  g_assert_nonnull (error);
  g_assert_nonnull (record);
  g_assert_cmpuint (rw_record_get_n_jobs (record), ==, 0);
  if (g_file_test (path, G_FILE_TEST_IS_DIR))
    g_assert_false (rw_record_save (record, path, NULL));
  g_rmdir (path);
  g_rmdir (folder);
}

/* No name is left to set it aside under. */
static void
test_damage_that_stays_is_not_written_over (void)
{
  static const char damaged[] = "{\"record\":";
  g_autofree char *folder = temporary_folder ();
  g_autofree char *path = g_build_filename (folder, "record.json", NULL);
  g_autoptr (GPtrArray) taken = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *kept = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (path, damaged, -1, NULL));
  for (guint i = 1; i <= 100; i++)
    {
      g_ptr_array_add (taken, i == 1 ? g_strdup_printf ("%s.damaged", path)
                                     : g_strdup_printf ("%s.damaged.%u", path, i));
      g_assert_true (g_file_set_contents (taken->pdata[i - 1], "", -1, NULL));
    }

  g_autoptr (RwRecord) record = rw_record_load (path, &error);

  g_assert_error (error, RW_RECORD_ERROR, RW_RECORD_ERROR_FORMAT);
  rw_record_set (record, "a", "low");
  g_assert_false (rw_record_save (record, path, NULL));
  g_assert_true (g_file_get_contents (path, &kept, NULL, NULL));
  g_assert_cmpstr (kept, ==, damaged);
  for (guint i = 0; i < taken->len; i++)
    g_unlink (taken->pdata[i]);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/record/each job counts once", test_each_job_counts_once);
  g_test_add_func ("/record/the chances, by hand", test_dirichlet_by_hand);
  g_test_add_func ("/record/switched off or empty it changes nothing", test_switched_off_or_empty_it_changes_nothing);
  g_test_add_func ("/record/comes back from the file", test_comes_back_from_the_file);
  g_test_add_func ("/record/damage is set aside", test_damage_is_set_aside);
  g_test_add_func ("/record/what cannot be read is not written over", test_what_cannot_be_read_is_not_written_over);
  g_test_add_func ("/record/damage that stays is not written over", test_damage_that_stays_is_not_written_over);
  return g_test_run ();
}
