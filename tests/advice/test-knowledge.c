/* test-knowledge.c: knowledge files read, put on top of each other, and cut down to a cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "job-fixtures.h"

#define REPAIR "\"repair\":{\"title\":\"r\",\"minutes\":7,\"hazard\":\"none\",\"who\":\"anyone\"}"

static void
test_reads_what_is_there (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  const RwCheck *check = rw_knowledge_find_check (knowledge, "at-board");
  const RwCause *cause = rw_knowledge_find_cause (knowledge, "low");
  const RwSymptom *symptom = rw_knowledge_find_symptom (knowledge, "hum");

  g_assert_cmpuint (rw_knowledge_get_n_causes (knowledge), ==, 5);
  g_assert_cmpstr (check->how[1], ==, "Red on +5 V.");
  g_assert_cmpint (check->power, ==, RW_SAID_YES);
  g_assert_cmpint (check->warm, ==, RW_SAID_NOT);
  g_assert_true (check->measures);
  g_assert_cmpint (check->place, ==, RW_PLACE_BOARD);
  g_assert_true (isinf (check->outcomes[0].from));
  g_assert_cmpfloat (check->outcomes[1].to, ==, 5.2);
  g_assert_cmpint (rw_check_find_outcome (check, "above"), ==, 2);
  g_assert_cmpint (rw_check_find_outcome (check, "beside"), ==, -1);
  g_assert_cmpfloat (rw_chance_table_get (&check->chance, "low")[0], ==, 0.9);
  g_assert_cmpfloat (rw_chance_table_get (&check->chance, "worn")[1], ==, 0.9);
  g_assert_cmpstr (cause->repair.recheck[0], ==, "at-board");
  g_assert_cmpint (cause->repair.hazard, ==, RW_HAZARD_NEAR_MAINS);
  g_assert_cmpfloat (*rw_chance_table_get (&symptom->chance, "worn"), ==, 0.9);
  g_assert_true (symptom->published);
}

static void
test_who_may_do_what (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();

  g_assert_false (rw_check_is_reserved (rw_knowledge_find_check (knowledge, "bare")));
  g_assert_true (rw_check_is_reserved (rw_knowledge_find_check (knowledge, "inside")));
  g_assert_cmpstr (rw_hazard_to_id (RW_HAZARD_NEAR_MAINS), ==, "near-mains");
  g_assert_cmpstr (rw_who_to_id (RW_WHO_LICENSED), ==, "licensed");
  for (guint h = 0; h < RW_N_HAZARDS; h++)
    g_assert_cmpstr (rw_hazard_get_label ((RwHazard) h), !=, "");
  for (guint w = 0; w < RW_N_WHOS; w++)
    g_assert_cmpstr (rw_who_get_label ((RwWho) w), !=, "");
}

static void
test_rows_sum_to_one (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (
      "{\"causes\":[{\"id\":\"a\",\"title\":\"A\",\"area\":\"board\",\"prior\":1," REPAIR "}],"
      "\"checks\":[{\"id\":\"t\",\"title\":\"T\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\","
      "\"outcomes\":[{\"id\":\"x\",\"title\":\"X\"},{\"id\":\"y\",\"title\":\"Y\"},{\"id\":\"z\",\"title\":\"Z\"}],"
      "\"chance\":{\"default\":[0.333,0.333,0.333]}}]}");
  const double *row = rw_chance_table_get (&rw_knowledge_get_check (knowledge, 0)->chance, "a");

  g_assert_cmpfloat_with_epsilon (row[0] + row[1] + row[2], 1, 1e-15);
}

static void
test_cabinet_rules_out (void)
{
  g_autoptr (RwKnowledge) whole = fixture_knowledge ();
  g_autoptr (RwProfile) plain = fixture_profile (FALSE, "switcher");
  g_autoptr (RwProfile) minus = fixture_profile (TRUE, "linear");
  g_autoptr (RwProfile) silent = fixture_profile (FALSE, NULL);
  g_autoptr (RwKnowledge) some = rw_knowledge_for_profile (whole, plain);
  g_autoptr (RwKnowledge) most = rw_knowledge_for_profile (whole, minus);
  g_autoptr (RwKnowledge) unsaid = rw_knowledge_for_profile (whole, silent);

  g_assert_null (rw_knowledge_find_cause (some, "minus"));
  g_assert_null (rw_knowledge_find_cause (some, "linear"));
  g_assert_null (rw_knowledge_find_check (some, "minus-board"));
  g_assert_nonnull (rw_knowledge_find_check (some, "drop"));
  g_assert_cmpuint (rw_knowledge_get_n_causes (some), ==, 3);
  g_assert_cmpint (rw_knowledge_index_of_cause (some, "worn"), ==, 2);
  g_assert_cmpuint (rw_knowledge_get_n_causes (most), ==, 5);
  g_assert_nonnull (rw_knowledge_find_check (most, "minus-board"));
  g_assert_nonnull (rw_knowledge_find_cause (unsaid, "linear"));
}

/* Shipped and personal folders, as the program finds them. */
static void
write_text (const char *folder,
            const char *name,
            const char *text)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
remove_text (const char *folder,
             const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_assert_cmpint (g_unlink (path), ==, 0);
}

/* In the data folder of this run. */
static char *
user_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "railwright", "knowledge", NULL);
}

static void
test_own_files_replace_by_id (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = user_folder ();
  g_autoptr (RwKnowledge) before = rw_knowledge_load (NULL, &error);

  g_assert_no_error (error);
  write_text (folder, "mine.json",
              "{\"causes\":[{\"id\":\"trim-low\",\"title\":\"My own words\",\"area\":\"supply\",\"prior\":9," REPAIR "},"
              "{\"id\":\"mouse\",\"title\":\"A mouse\",\"area\":\"wiring\",\"prior\":2," REPAIR "}]}");

  g_autoptr (RwKnowledge) after = rw_knowledge_load (problems, &error);

  remove_text (folder, "mine.json");
  g_assert_no_error (error);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_cmpstr (rw_knowledge_find_cause (before, "trim-low")->title, !=, "My own words");
  g_assert_cmpstr (rw_knowledge_find_cause (after, "trim-low")->title, ==, "My own words");
  g_assert_cmpint (rw_knowledge_index_of_cause (after, "trim-low"), ==,
                   rw_knowledge_index_of_cause (before, "trim-low"));
  g_assert_nonnull (rw_knowledge_find_cause (after, "mouse"));
  g_assert_cmpuint (rw_knowledge_get_n_causes (after), ==, rw_knowledge_get_n_causes (before) + 1);
}

static void
test_bad_own_file_is_left_out_and_told (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = user_folder ();

  write_text (folder, "a-good.json",
              "{\"causes\":[{\"id\":\"mouse\",\"title\":\"A mouse\",\"area\":\"wiring\",\"prior\":2,"
              "\"repair\":{\"title\":\"r\",\"minutes\":7,\"hazard\":\"none\",\"who\":\"anyone\",\"recheck\":[\"trap\"]}}]}");
  write_text (folder, "b-good.json",
              "{\"checks\":[{\"id\":\"trap\",\"title\":\"T\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\","
              "\"outcomes\":[{\"id\":\"x\",\"title\":\"X\"},{\"id\":\"y\",\"title\":\"Y\"}],"
              "\"chance\":{\"default\":[0.5,0.5],\"mouse\":[1,0]}}]}");
  write_text (folder, "c-torn.json", "{\"causes\":[");
  write_text (folder, "d-dangling.json",
              "{\"symptoms\":[{\"id\":\"squeaks\",\"title\":\"S\",\"group\":\"sound\",\"chance\":{\"default\":0.1,\"cat\":1}}]}");

  g_autoptr (RwKnowledge) knowledge = rw_knowledge_load (problems, &error);

  remove_text (folder, "a-good.json");
  remove_text (folder, "b-good.json");
  remove_text (folder, "c-torn.json");
  remove_text (folder, "d-dangling.json");
  g_assert_no_error (error);
  g_assert_cmpuint (problems->len, ==, 2);
  g_assert_nonnull (strstr (problems->pdata[0], "c-torn.json"));
  g_assert_nonnull (strstr (problems->pdata[1], "d-dangling.json"));
  g_assert_nonnull (strstr (problems->pdata[1], "cat"));
  g_assert_nonnull (rw_knowledge_find_cause (knowledge, "mouse"));
  g_assert_nonnull (rw_knowledge_find_check (knowledge, "trap"));
  g_assert_null (rw_knowledge_find_symptom (knowledge, "squeaks"));
}

static void
test_missing_shipped_folder_is_told (void)
{
  g_autofree char *before = g_strdup (g_getenv ("RAILWRIGHT_DATA_DIR"));
  g_autoptr (GError) error = NULL;

  g_setenv ("RAILWRIGHT_DATA_DIR", "/nowhere", TRUE);

  g_autoptr (RwKnowledge) knowledge = rw_knowledge_load (NULL, &error);

  g_setenv ("RAILWRIGHT_DATA_DIR", before, TRUE);
  g_assert_null (knowledge);
  g_assert_error (error, RW_KNOWLEDGE_ERROR, RW_KNOWLEDGE_ERROR_READ);
  g_assert_nonnull (strstr (error->message, "/nowhere/knowledge"));
}

int
main (int    argc,
      char **argv)
{
  fixture_leave_home ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/knowledge/reads what is there", test_reads_what_is_there);
  g_test_add_func ("/knowledge/says who may do what", test_who_may_do_what);
  g_test_add_func ("/knowledge/rows sum to one", test_rows_sum_to_one);
  g_test_add_func ("/knowledge/a cabinet rules out", test_cabinet_rules_out);
  g_test_add_func ("/knowledge/own files replace by id", test_own_files_replace_by_id);
  g_test_add_func ("/knowledge/a bad own file is left out and told",
                   test_bad_own_file_is_left_out_and_told);
  g_test_add_func ("/knowledge/a missing shipped folder is told",
                   test_missing_shipped_folder_is_told);

  const int status = g_test_run ();

  fixture_come_home ();
  return status;
}
