/* test-profile.c: the rails of a cabinet, good files and bad ones, limits and positions.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-profile.h"

static void
test_good_profile (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();
  const RwRail *p5 = rw_profile_find_rail (profile, "p5");
  const RwRail *p12 = rw_profile_find_rail (profile, "p12");
  const RwRail *m5 = rw_profile_find_rail (profile, "m5");

  g_assert_cmpstr (rw_profile_get_id (profile), ==, "three");
  g_assert_cmpstr (rw_profile_get_title (profile), ==, "Three rails");
  g_assert_cmpuint (rw_profile_get_n_rails (profile), ==, 3);
  g_assert_true (rw_profile_get_reference (profile) == p5);
  g_assert_true (rw_profile_get_rail (profile, 2) == m5);
  g_assert_cmpint (rw_profile_index_of (profile, "m5"), ==, 2);
  g_assert_cmpint (rw_profile_index_of (profile, "p24"), ==, -1);
  g_assert_null (rw_profile_find_rail (profile, "p24"));
  g_assert_null (rw_profile_find_rail (profile, NULL));
  g_assert_true (p5->id == g_intern_string ("p5"));
  g_assert_cmpstr (p5->label, ==, "+5 V");
  g_assert_cmpstr (p5->feeds, ==, "logic");
  g_assert_cmpfloat (p5->never_above, ==, 5.5);
  g_assert_cmpfloat (p5->ripple_limit, ==, 0.05);
  g_assert_cmpint (p5->priority, ==, 1);
  g_assert_cmpint (p5->follows_trim, ==, RW_FOLLOWS_YES);
  g_assert_cmpint (m5->follows_trim, ==, RW_FOLLOWS_UNKNOWN);
  g_assert_cmpfloat (m5->lo, ==, -5.5);
  g_assert_cmpfloat (m5->hi, ==, -4.5);

  /* What is not said. */
  g_assert_cmpstr (p12->feeds, ==, "");
  g_assert_true (isinf (p12->ripple_limit));
  g_assert_cmpfloat (p12->bare_lo, ==, p12->lo);
  g_assert_cmpfloat (p12->bare_hi, ==, p12->hi);
}

static void
test_least_profile (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (
      "{\"id\":\"x\",\"colour\":\"red\",\"rails\":[{\"id\":\"p3\",\"nominal\":3.3,\"limits\":[3.1,3.5]}]}", &error);
  g_autoptr (RwProfile) profile = rw_profile_new_from_node (node, "x.json", &error);

  g_assert_no_error (error);

  const RwRail *rail = rw_profile_get_reference (profile);

  g_assert_cmpstr (rw_profile_get_title (profile), ==, "x");
  g_assert_cmpstr (rail->label, ==, "p3");
  g_assert_cmpint (rail->follows_trim, ==, RW_FOLLOWS_UNKNOWN);
  g_assert_true (isinf (rail->never_above) && isinf (rail->ripple_limit));
  g_assert_cmpint (rail->priority, ==, 9);

  /* What we do not know stays in it. */
  g_assert_true (json_object_has_member (json_node_get_object (rw_profile_get_node (profile)),
                                         "colour"));
}

#define RAIL "\"id\":\"p5\",\"nominal\":5,\"limits\":[4.9,5.2]"

static void
test_bad_profiles_name_the_key (void)
{
  static const struct
  {
    const char *text, *key;
  } rows[] = {
    { "[]", "object" },
    { "5", "object" },
    { "{\"rails\":[{" RAIL "}]}", "“id”" },
    { "{\"id\":\"\",\"rails\":[{" RAIL "}]}", "“id”" },
    { "{\"id\":7,\"rails\":[{" RAIL "}]}", "“id”" },
    { "{\"id\":\"x\"}", "“rails”" },
    { "{\"id\":\"x\",\"rails\":[]}", "“rails”" },
    { "{\"id\":\"x\",\"rails\":{\"p5\":1}}", "“rails”" },
    { "{\"id\":\"x\",\"rails\":[5]}", "rails[0]" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL "},{\"id\":\"p5\",\"nominal\":5,\"limits\":[4,6]}]}", "rails[1]: key “id”" },
    { "{\"id\":\"x\",\"rails\":[{\"nominal\":5,\"limits\":[4,6]}]}", "rails[0]: key “id”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"gnd\",\"nominal\":5,\"limits\":[4,6]}]}", "“id”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"limits\":[4,6]}]}", "“nominal”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":0,\"limits\":[4,6]}]}", "“nominal”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":\"5\",\"limits\":[4,6]}]}", "“nominal”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[6,4]}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[5,5]}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[4,5,6]}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[4,null]}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"m5\",\"nominal\":-5,\"limits\":[4.5,5.5]}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"m5\",\"nominal\":-5,\"limits\":[-5.5,-4.5],\"bare_limits\":[4,6]}]}", "“bare_limits”" },
    { "{\"id\":\"x\",\"rails\":[{\"id\":\"p5\",\"nominal\":5,\"limits\":[-5.5,-4.5]}]}", "“limits”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"bare_limits\":4}]}", "“bare_limits”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"bare_limits\":[5.4,4.7]}]}", "“bare_limits”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"never_above\":\"5.5\"}]}", "“never_above”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"never_above\":-5.5}]}", "“never_above”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"ripple_limit\":[0.05]}]}", "“ripple_limit”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"priority\":\"first\"}]}", "“priority”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"follows_trim\":\"maybe\"}]}", "“follows_trim”" },
    { "{\"id\":\"x\",\"rails\":[{" RAIL ",\"follows_trim\":true}]}", "“follows_trim”" },
    { "{\"id\":\"x\",\"reference\":\"p12\",\"rails\":[{" RAIL "}]}", "“reference”" },
    { "{\"id\":\"x\",\"reference\":12,\"rails\":[{" RAIL "}]}", "“reference”" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL, parse_error = NULL;
      g_autoptr (JsonNode) node = json_from_string (rows[i].text, &parse_error);

      g_assert_no_error (parse_error);
      g_assert_null (rw_profile_new_from_node (node, "harbour.json", &error));
      g_assert_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT);
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, "harbour.json"));
      g_assert_nonnull (strstr (error->message, rows[i].key));
    }
}

static void
test_files_that_cannot_be_read (void)
{
  g_autofree char *folder = fixture_folder ();
  g_autofree char *path = g_build_filename (folder, "torn.json", NULL);
  g_autofree char *missing = g_build_filename (folder, "none.json", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_profile_load (missing, &error));
  g_assert_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_READ);
  g_assert_nonnull (strstr (error->message, "none.json"));
  g_clear_error (&error);

  g_assert_true (g_file_set_contents (path, "{\n \"id\": \"x\",\n \"rails\": [}\n", -1, NULL));
  g_assert_null (rw_profile_load (path, &error));
  g_assert_error (error, RW_PROFILE_ERROR, RW_PROFILE_ERROR_FORMAT);
  g_assert_nonnull (strstr (error->message, "torn.json"));
  g_assert_nonnull (strstr (error->message, "line 3"));
  fixture_remove (folder);
}

static void
test_limits_at_places (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();
  const RwRail *p5 = rw_profile_find_rail (profile, "p5");
  const RwRail *p12 = rw_profile_find_rail (profile, "p12");
  double lo, hi;

  g_assert_true (rw_rail_limits_at (p5, "p5", RW_PLACE_BOARD, RW_KIND_DC, &lo, &hi));
  g_assert_true (lo == 4.9 && hi == 5.2);
  g_assert_true (rw_rail_limits_at (p5, "p5", RW_PLACE_CHIP, RW_KIND_DC, &lo, &hi));
  g_assert_true (lo == 4.9 && hi == 5.2);
  g_assert_true (rw_rail_limits_at (p5, "p5", RW_PLACE_TERMINALS, RW_KIND_DC, &lo, &hi));
  g_assert_true (lo == 4.75 && hi == 5.4);
  g_assert_true (rw_rail_limits_at (p5, "p5", RW_PLACE_WIRE, RW_KIND_DC, &lo, &hi));
  g_assert_true (lo == -0.1 && hi == 0.1);
  g_assert_true (rw_rail_limits_at (NULL, "gnd", RW_PLACE_WIRE, RW_KIND_DC, &lo, &hi));
  g_assert_true (lo == -0.05 && hi == 0.05);
  g_assert_true (rw_rail_limits_at (NULL, "p24", RW_PLACE_WIRE, RW_KIND_DC, &lo, &hi));
  g_assert_true (lo == -0.1 && hi == 0.1);
  g_assert_true (rw_rail_limits_at (p5, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, &lo, &hi));
  g_assert_true (isinf (lo) && lo < 0 && hi == 0.05);

  g_assert_false (rw_rail_limits_at (p12, "p12", RW_PLACE_BOARD, RW_KIND_RIPPLE, &lo, &hi));
  g_assert_false (rw_rail_limits_at (p5, "p5", RW_PLACE_BOARD, RW_KIND_OHMS, &lo, &hi));
  g_assert_false (rw_rail_limits_at (p5, "p5", RW_PLACE_WIRE, RW_KIND_OHMS, &lo, &hi));
  g_assert_false (rw_rail_limits_at (p5, "p5", RW_PLACE_CHIP, RW_KIND_CELSIUS, &lo, &hi));
  g_assert_false (rw_rail_limits_at (NULL, "p24", RW_PLACE_BOARD, RW_KIND_DC, &lo, &hi));
  g_assert_false (rw_rail_limits_at (NULL, "gnd", RW_PLACE_BOARD, RW_KIND_DC, &lo, &hi));
}

static void
test_position_and_margin (void)
{
  const double tiny = 1e-12;

  /* A positive rail: weak limit −1, strong limit +1. */
  g_assert_cmpfloat_with_epsilon (rw_position (4.9, 4.9, 5.2, FALSE), -1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (5.05, 4.9, 5.2, FALSE), 0, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (5.2, 4.9, 5.2, FALSE), 1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (5.5, 4.9, 5.2, FALSE), 3, tiny);

  /* A negative rail: more negative is stronger, so the trim moves all followers one way. */
  g_assert_cmpfloat_with_epsilon (rw_position (-5.5, -5.5, -4.5, TRUE), 1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (-4.5, -5.5, -4.5, TRUE), -1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (0, -5.5, -4.5, TRUE), -10, tiny);
  g_assert_cmpfloat_with_epsilon (rw_margin (-5.25, -5.5, -4.5), 0.5, tiny);
  g_assert_cmpfloat_with_epsilon (rw_margin (-4.75, -5.5, -4.5), 0.5, tiny);

  /* One limit only, as for ripple: 0 at zero, +1 on it. */
  g_assert_cmpfloat_with_epsilon (rw_position (0, -INFINITY, 0.05, FALSE), 0, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (0.05, -INFINITY, 0.05, FALSE), 1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_margin (0.01, -INFINITY, 0.05), 0.8, tiny);
  g_assert_cmpfloat_with_epsilon (rw_margin (0.10, -INFINITY, 0.05), -1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_position (6, 3, INFINITY, FALSE), 2, tiny);

  g_assert_cmpfloat_with_epsilon (rw_margin (5.05, 4.9, 5.2), 1, tiny);
  g_assert_cmpfloat_with_epsilon (rw_margin (5.2, 4.9, 5.2), 0, tiny);
}

static void
test_turning_up_moves_every_follower_up (void)
{
  g_autoptr (RwProfile) profile = fixture_profile ();

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const gboolean negative = rail->nominal < 0;

      g_assert_cmpfloat (rw_position (rail->nominal * 1.02, rail->lo, rail->hi, negative), >,
                         rw_position (rail->nominal, rail->lo, rail->hi, negative));
    }
}

static void
put_back (const char *name,
          const char *value)
{
  if (value != NULL)
    g_setenv (name, value, TRUE);
  else
    g_unsetenv (name);
}

/* Runs in a process of its own, since the user's folder is looked up once. */
static void
test_users_profiles_come_first (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);

  if (!g_test_subprocess ())
    {
      g_autofree char *folder = fixture_folder ();
      g_autofree char *user = g_build_filename (folder, "railwright", "profiles", NULL);
      g_autofree char *shipped = g_build_filename (folder, "shipped", "profiles", NULL);
      g_autofree char *shipped_root = g_build_filename (folder, "shipped", NULL);
      const struct
      {
        const char *dir, *name, *text;
      } files[] = {
        { user, "b-mine.json", "{\"id\":\"same\",\"title\":\"mine\",\"rails\":[{" RAIL "}]}" },
        { user, "a-bad.json", "{\"id\":\"bad\",\"rails\":[]}" },
        { user, ".hidden.json", "rubbish" },
        { user, "notes.txt", "rubbish" },
        { shipped, "same.json", "{\"id\":\"same\",\"title\":\"theirs\",\"rails\":[{" RAIL "}]}" },
        { shipped, "other.json", "{\"id\":\"other\",\"rails\":[{" RAIL "}]}" },
      };

      g_mkdir_with_parents (user, 0755);
      g_mkdir_with_parents (shipped, 0755);
      for (guint i = 0; i < G_N_ELEMENTS (files); i++)
        {
          g_autofree char *path = g_build_filename (files[i].dir, files[i].name, NULL);

          g_assert_true (g_file_set_contents (path, files[i].text, -1, NULL));
        }

      g_autofree char *home_before = g_strdup (g_getenv ("XDG_DATA_HOME"));
      g_autofree char *data_before = g_strdup (g_getenv ("RAILWRIGHT_DATA_DIR"));

      g_setenv ("XDG_DATA_HOME", folder, TRUE);
      g_setenv ("RAILWRIGHT_DATA_DIR", shipped_root, TRUE);
      g_test_trap_subprocess (NULL, 0, 0);
      put_back ("XDG_DATA_HOME", home_before);
      put_back ("RAILWRIGHT_DATA_DIR", data_before);
      fixture_remove (folder);
      g_test_trap_assert_passed ();
      return;
    }

  g_autoptr (GPtrArray) list = rw_profile_list (problems);

  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpstr (rw_profile_get_title (list->pdata[0]), ==, "mine");
  g_assert_cmpstr (rw_profile_get_id (list->pdata[1]), ==, "other");
  g_assert_cmpuint (problems->len, ==, 1);
  g_assert_nonnull (strstr (problems->pdata[0], "a-bad.json"));
  g_assert_nonnull (strstr (problems->pdata[0], "“rails”"));
}

static void
test_outlives_its_maker (void)
{
  RwProfile *profile = fixture_profile ();
  g_autoptr (RwProfile) again = rw_profile_ref (profile);

  rw_profile_unref (profile);
  g_assert_cmpstr (rw_profile_get_title (again), ==, "Three rails");
  rw_profile_unref (NULL);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/profile/good-profile", test_good_profile);
  g_test_add_func ("/profile/least-profile", test_least_profile);
  g_test_add_func ("/profile/bad-profiles-name-the-key", test_bad_profiles_name_the_key);
  g_test_add_func ("/profile/files-that-cannot-be-read", test_files_that_cannot_be_read);
  g_test_add_func ("/profile/limits-at-places", test_limits_at_places);
  g_test_add_func ("/profile/position-and-margin", test_position_and_margin);
  g_test_add_func ("/profile/turning-up-moves-every-follower-up",
                   test_turning_up_moves_every_follower_up);
  g_test_add_func ("/profile/users-profiles-come-first", test_users_profiles_come_first);
  g_test_add_func ("/profile/outlives-its-maker", test_outlives_its_maker);
  return g_test_run ();
}
