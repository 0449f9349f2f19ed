/* test-drill.c: the same level and seed give the same cabinet, and each level keeps its word.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-drill.h"

#include <json-glib/json-glib.h>
#include <string.h>

static GPtrArray *
load_profiles (void)
{
  GPtrArray *profiles = rw_profile_list (NULL);

  g_assert_cmpuint (profiles->len, >=, 6);
  return profiles;
}

static void
draw (RwPracticeDrill *out,
      guint            level,
      guint64          seed)
{
  g_autoptr (GPtrArray) profiles = load_profiles ();
  g_autoptr (GError) error = NULL;

  g_assert_true (rw_practice_drill_draw (out, level, seed, profiles, &error));
  g_assert_no_error (error);
}

static gboolean
same (const RwPracticeDrill *a,
      const RwPracticeDrill *b)
{
  if (a->n_faults != b->n_faults || a->cabinet_seed != b->cabinet_seed
      || strcmp (rw_profile_get_id (a->profile), rw_profile_get_id (b->profile)) != 0)
    return FALSE;
  for (guint i = 0; i < a->n_faults; i++)
    if (strcmp (a->faults[i].id, b->faults[i].id) != 0 || a->faults[i].strength != b->faults[i].strength)
      return FALSE;
  return TRUE;
}

/* The volts at the board after some seconds under power. */
static double
play (const RwPracticeDrill *drill)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwPracticeCabinet) cabinet = rw_practice_drill_open (drill, "Tidepool Racer", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (rw_practice_cabinet_get_true_n_faults (cabinet), ==, drill->n_faults);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 12);
  return rw_practice_cabinet_get_true_volts (cabinet, rw_profile_get_reference (drill->profile)->id, RW_PLACE_BOARD,
                                             RW_KIND_DC);
}

static void
test_same (void)
{
  for (guint level = 1; level <= RW_PRACTICE_DRILL_LEVELS; level++)
    for (guint64 seed = 1; seed <= 4; seed++)
      {
        RwPracticeDrill one, two;

        draw (&one, level, seed);
        draw (&two, level, seed);
        g_assert_true (same (&one, &two));
        g_assert_cmpfloat (play (&one), ==, play (&two));
        rw_practice_drill_clear (&one);
        rw_practice_drill_clear (&two);
      }
}

/* Plain drills draw from a list of their own, so what they are stands whatever faults are added to the cabinet. */
static void
test_pinned (void)
{
  static const struct
  {
    guint64     seed, cabinet_seed;
    const char *profile, *fault;
    double      strength;
  } pinned[] = {
    { 1, G_GUINT64_CONSTANT (0x5787146c8f32e470), "switcher-5-12", "trim-high", 0.85119251984147293 },
    { 2, G_GUINT64_CONSTANT (0x3aec89de5a931cb2), "dram-5-12-m5", "edge-oxidised", 0.98077568420274996 },
    { 3, G_GUINT64_CONSTANT (0x5b2d4ff3eefef923), "switcher-5-12-24", "ground-wire-poor", 0.84038651743233639 },
    { 6, G_GUINT64_CONSTANT (0xac89e07ca2762b8d), "switcher-5-12-24", "plus5-wire-thin", 0.97175280793065777 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pinned); i++)
    {
      RwPracticeDrill drill;

      draw (&drill, 1, pinned[i].seed);
      g_assert_cmpstr (rw_profile_get_id (drill.profile), ==, pinned[i].profile);
      g_assert_cmpstr (drill.faults[0].id, ==, pinned[i].fault);
      g_assert_cmpfloat (drill.faults[0].strength, ==, pinned[i].strength);
      g_assert_true (drill.cabinet_seed == pinned[i].cabinet_seed);
      rw_practice_drill_clear (&drill);
    }
}

/* Profiles of a person's own, and their order, change nothing. */
static void
test_own_profiles (void)
{
  g_autoptr (GPtrArray) profiles = load_profiles ();
  g_autoptr (GPtrArray) turned = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (
      "{\"id\":\"mine\",\"title\":\"Mine\",\"supply\":\"switcher\",\"reference\":\"p5\",\"rails\":[{\"id\":\"p5\","
      "\"label\":\"+5 V\",\"nominal\":5.0,\"limits\":[4.9,5.2]}]}",
      NULL);
  g_autoptr (RwProfile) own = rw_profile_new_from_node (node, "test", &error);

  g_assert_no_error (error);
  g_ptr_array_add (turned, own);
  for (guint i = profiles->len; i-- > 0;)
    g_ptr_array_add (turned, profiles->pdata[i]);
  for (guint64 seed = 1; seed <= 6; seed++)
    {
      RwPracticeDrill one, two;

      g_assert_true (rw_practice_drill_draw (&one, 2, seed, profiles, NULL));
      g_assert_true (rw_practice_drill_draw (&two, 2, seed, turned, NULL));
      g_assert_true (same (&one, &two));
      rw_practice_drill_clear (&one);
      rw_practice_drill_clear (&two);
    }
}

static void
test_unlike (void)
{
  guint differ = 0;

  for (guint64 seed = 1; seed <= 10; seed++)
    {
      RwPracticeDrill one, two, level;

      draw (&one, 1, seed);
      draw (&two, 1, seed + 1);
      draw (&level, 2, seed);
      differ += !same (&one, &two);
      g_assert_false (same (&one, &level));
      rw_practice_drill_clear (&one);
      rw_practice_drill_clear (&two);
      rw_practice_drill_clear (&level);
    }
  g_assert_cmpuint (differ, ==, 10);
}

static void
test_levels (void)
{
  guint subtle = 0, pairs = 0;
  g_autoptr (GHashTable) kinds = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint64 seed = 100; seed < 130; seed++)
    {
      RwPracticeDrill plain, fair, hard;

      draw (&plain, 1, seed);
      draw (&fair, 2, seed);
      draw (&hard, 3, seed);
      g_assert_cmpuint (plain.n_faults, ==, 1);
      g_assert_cmpfloat (plain.faults[0].strength, >=, 0.8);
      g_assert_cmpuint (fair.n_faults, ==, 1);
      g_assert_cmpfloat (fair.faults[0].strength, >=, 0.4);
      g_assert_cmpfloat (fair.faults[0].strength, <=, 0.9);
      pairs += hard.n_faults == 2;
      if (hard.n_faults == 2)
        g_assert_true (strcmp (hard.faults[0].id, "supply-fine") != 0 && strcmp (hard.faults[1].id, "supply-fine") != 0);
      subtle += hard.n_faults == 1 && hard.faults[0].strength <= 0.4;
      g_hash_table_add (kinds, (gpointer) fair.faults[0].id);
      rw_practice_drill_clear (&plain);
      rw_practice_drill_clear (&fair);
      rw_practice_drill_clear (&hard);
    }
  g_assert_cmpuint (pairs + subtle, ==, 30);
  g_assert_cmpuint (pairs, >, 4);
  g_assert_cmpuint (subtle, >, 4);
  g_assert_cmpuint (g_hash_table_size (kinds), >, 10);
}

static gboolean
is_outside (const RwPracticeDrill *drill,
            RwPracticeCabinet     *cabinet)
{
  for (guint i = 0; i < rw_profile_get_n_rails (drill->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (drill->profile, i);
      const double volts = rw_practice_cabinet_get_true_volts (cabinet, rail->id, RW_PLACE_BOARD, RW_KIND_DC);

      if (volts < rail->lo || volts > rail->hi)
        return TRUE;
    }
  return FALSE;
}

/* Played for twenty minutes by somebody else, it has something to complain of. */
static void
test_shows (void)
{
  for (guint level = 1; level <= RW_PRACTICE_DRILL_LEVELS; level++)
    for (guint64 seed = 11; seed <= 14; seed++)
      {
        RwPracticeDrill drill;
        gboolean seen = FALSE;

        draw (&drill, level, seed);

        g_autoptr (RwPracticeCabinet) cabinet = rw_practice_drill_open (&drill, NULL, NULL);

        rw_practice_cabinet_set_power (cabinet, TRUE);
        for (double t = 0; t < 1200 && !seen; t += 5)
          {
            rw_practice_cabinet_advance (cabinet, 5);
            seen = is_outside (&drill, cabinet);
            for (guint i = 0; i < drill.n_symptoms; i++)
              seen = seen || rw_practice_cabinet_has_symptom (cabinet, drill.symptoms[i]);
          }
        if (!seen)
          g_error ("drill %u-%" G_GUINT64_FORMAT " (%s) shows nothing", level, seed, drill.faults[0].id);
        rw_practice_drill_clear (&drill);
      }
}

static void
test_codes (void)
{
  guint level = 2;
  guint64 seed = 0;
  g_autofree char *code = rw_practice_drill_dup_code (3, 4711);

  g_assert_cmpstr (code, ==, "3-4711");
  g_assert_true (rw_practice_drill_parse_code (" 3-4711 ", &level, &seed));
  g_assert_cmpuint (level, ==, 3);
  g_assert_cmpuint (seed, ==, 4711);
  g_assert_true (rw_practice_drill_parse_code ("18446744073709551615", &level, &seed));
  g_assert_cmpuint (level, ==, 3);
  g_assert_true (seed == G_MAXUINT64);

  static const char *const wrong[] = { "", "-", "4-1", "0-1", "1-", "x", "1-2-3", "1.5", "-5", "18446744073709551616",
                                       "1-0x10" };

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_false (rw_practice_drill_parse_code (wrong[i], &level, &seed));
  g_assert_cmpuint (level, ==, 3);
}

static void
test_no_profiles (void)
{
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  RwPracticeDrill drill;

  g_assert_false (rw_practice_drill_draw (&drill, 1, 1, none, &error));
  g_assert_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_PROFILE);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drill/the-same-seed-is-the-same-cabinet", test_same);
  g_test_add_func ("/drill/plain-drills-are-pinned", test_pinned);
  g_test_add_func ("/drill/profiles-of-a-person-change-nothing", test_own_profiles);
  g_test_add_func ("/drill/other-seeds-and-levels-are-other-cabinets", test_unlike);
  g_test_add_func ("/drill/each-level-keeps-its-word", test_levels);
  g_test_add_func ("/drill/whatever-is-drawn-shows", test_shows);
  g_test_add_func ("/drill/codes-are-typed-and-read", test_codes);
  g_test_add_func ("/drill/without-profiles-it-says-so", test_no_profiles);
  return g_test_run ();
}
