/* test-look.c: looking, listening and feeling agree with the knowledge and with the fault.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <json-glib/json-glib.h>

#include "practice-fixtures.h"
#include "rw-practice-build.h"
#include "rw-practice-look.h"
#include "rw-practice-symptoms.h"

#define CLASSIC "classic-5-12-m5"
#define LINEAR "linear-5-audio"

/* Every entry of one kind in data/knowledge: id → its JsonObject. */
static GHashTable *
read_knowledge (const char *key,
                GPtrArray  *keep)
{
  GHashTable *all = g_hash_table_new (g_str_hash, g_str_equal);
  g_autofree char *folder = g_build_filename (g_getenv ("RAILWRIGHT_DATA_DIR"), "knowledge",
                                              NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *path = g_build_filename (folder, name, NULL);
      JsonParser *parser = json_parser_new_immutable ();

      if (!g_str_has_suffix (name, ".json"))
        {
          g_object_unref (parser);
          continue;
        }
      json_parser_load_from_file (parser, path, &error);
      g_assert_no_error (error);
      g_ptr_array_add (keep, parser);

      JsonObject *root = json_node_get_object (json_parser_get_root (parser));

      if (!json_object_has_member (root, key))
        continue;

      JsonArray *array = json_object_get_array_member (root, key);

      for (guint i = 0; i < json_array_get_length (array); i++)
        {
          JsonObject *object = json_array_get_object_element (array, i);

          g_hash_table_insert (all, (gpointer)json_object_get_string_member (object, "id"),
                               object);
        }
    }
  g_assert_cmpuint (g_hash_table_size (all), >, 9);
  return all;
}

static void
every_fault_is_a_cause_of_the_knowledge (void)
{
  g_autoptr (GPtrArray) keep = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GHashTable) causes = read_knowledge ("causes", keep);

  for (guint i = 0; i < rw_practice_faults_get_n (); i++)
    {
      g_test_message ("%s", rw_practice_faults_get_id (i));
      g_assert_true (g_hash_table_contains (causes, rw_practice_faults_get_id (i)));
    }
}

static void
symptoms_are_those_of_the_knowledge (void)
{
  g_autoptr (GPtrArray) keep = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GHashTable) symptoms = read_knowledge ("symptoms", keep);
  guint known = 0;
  GHashTableIter iter;
  gpointer id;

  g_hash_table_iter_init (&iter, symptoms);
  while (g_hash_table_iter_next (&iter, &id, NULL))
    known += rw_practice_symptoms_knows (id);
  g_assert_cmpuint (known, ==, 36);
  g_assert_false (rw_practice_symptoms_knows ("no-such-thing"));
}

static gboolean
has_outcome (JsonObject *check,
             const char *outcome)
{
  JsonArray *outcomes = json_object_get_array_member (check, "outcomes");

  for (guint i = 0; i < json_array_get_length (outcomes); i++)
    if (g_str_equal (
            json_object_get_string_member (json_array_get_object_element (outcomes, i), "id"),
            outcome))
      return TRUE;
  return FALSE;
}

static void
check_answers (RwPracticeCabinet *cabinet,
               GHashTable        *checks,
               const char        *fault)
{
  GHashTableIter iter;
  gpointer id, check;

  g_hash_table_iter_init (&iter, checks);
  while (g_hash_table_iter_next (&iter, &id, &check))
    {
      const char *outcome = rw_practice_look (cabinet, id);

      if (outcome == NULL)
        continue;
      g_test_message ("%s: %s shows %s", fault, (const char *)id, outcome);
      g_assert_false (json_object_has_member (check, "measure"));
      g_assert_true (has_outcome (check, outcome));
    }
}

/* Whatever is wrong, an answer is an outcome that the check has. */
static void
answers_are_outcomes_of_their_checks (void)
{
  static const char *const profiles[] = { CLASSIC, LINEAR };
  g_autoptr (GPtrArray) keep = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GHashTable) checks = read_knowledge ("checks", keep);

  for (guint p = 0; p < G_N_ELEMENTS (profiles); p++)
    for (guint i = 0; i < rw_practice_faults_get_n (); i++)
      {
        const char *fault = rw_practice_faults_get_id (i);
        g_autoptr (RwProfile) profile = practice_profile (profiles[p]);
        RwPracticeParams params;

        rw_practice_build (&params, profile, 4);
        if (!rw_practice_faults_fit (fault, &params))
          continue;

        g_autoptr (RwPracticeCabinet)
            cabinet = practice_running (profiles[p], 4, fault, 0.8, 30);

        check_answers (cabinet, checks, fault);
        practice_pull_board (cabinet, 3);
        check_answers (cabinet, checks, fault);
        rw_practice_cabinet_set_power (cabinet, FALSE);
        check_answers (cabinet, checks, fault);
      }
}

/* Every looking check of the knowledge gets an answer from one of the two kinds of supply. */
static void
every_looking_check_is_answered (void)
{
  g_autoptr (GPtrArray) keep = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GHashTable) checks = read_knowledge ("checks", keep);
  g_autoptr (RwPracticeCabinet) switcher = practice_running (CLASSIC, 4, NULL, 0, 5);
  g_autoptr (RwPracticeCabinet) linear = practice_running (LINEAR, 4, NULL, 0, 5);
  GHashTableIter iter;
  gpointer id, check;

  g_hash_table_iter_init (&iter, checks);
  while (g_hash_table_iter_next (&iter, &id, &check))
    {
      if (json_object_has_member (check, "measure"))
        continue;
      g_test_message ("%s", (const char *)id);
      g_assert_true (rw_practice_look (switcher, id) != NULL
                     || rw_practice_look (linear, id) != NULL);
    }
}

typedef struct
{
  const char *fault;
  const char *profile;
  double      strength;
  const char *check;
  const char *outcome;
} Shows;

static const Shows shows[] = {
  { NULL, CLASSIC, 0, "edge-connector-look", "bright" },
  { "edge-oxidised", CLASSIC, 0.2, "edge-connector-look", "dull" },
  { "edge-oxidised", CLASSIC, 0.8, "edge-connector-look", "dull" },
  { "edge-burnt", CLASSIC, 0.8, "edge-connector-look", "dark" },
  { NULL, CLASSIC, 0, "drop-where", "none" },
  { "edge-oxidised", CLASSIC, 0.8, "drop-where", "edge" },
  { "poor-crimp", CLASSIC, 0.8, "drop-where", "joint" },
  { "loose-terminal-screw", CLASSIC, 0.8, "drop-where", "screw" },
  { "plus5-wire-thin", CLASSIC, 0.8, "drop-where", "spread" },
  { "ground-wire-poor", CLASSIC, 0.8, "drop-where", "spread" },
  { NULL, CLASSIC, 0, "crimp-tug", "firm" },
  { "poor-crimp", CLASSIC, 0.8, "crimp-tug", "pin" },
  { "loose-terminal-screw", CLASSIC, 0.8, "crimp-tug", "screw" },
  { "cracked-joint", CLASSIC, 0.8, "crimp-tug", "ring" },
  { "minus5-open-wire", CLASSIC, 0.8, "crimp-tug", "pin" },
  { NULL, CLASSIC, 0, "wiggle-test", "still" },
  { "loose-terminal-screw", CLASSIC, 0.8, "wiggle-test", "screw" },
  { "poor-crimp", CLASSIC, 0.8, "wiggle-test", "harness" },
  { "edge-oxidised", CLASSIC, 0.8, "wiggle-test", "edge" },
  { NULL, CLASSIC, 0, "look-and-smell", "clean" },
  { "poor-crimp", CLASSIC, 0.9, "look-and-smell", "brown" },
  { NULL, CLASSIC, 0, "hum-volume-zero", "quiet" },
  { "audio-filter-tired", CLASSIC, 0.8, "hum-volume-zero", "stays" },
  { "audio-filter-tired", CLASSIC, 0.8, "amp-input-short", "stays" },
  { "audio-ground-loop", CLASSIC, 0.8, "amp-input-short", "stops" },
  { "audio-ground-loop", CLASSIC, 0.8, "audio-ground-drop", "high" },
  { "audio-amp-bad", CLASSIC, 0.8, "speaker-dc", "offset" },
  { NULL, CLASSIC, 0, "audio-rail-loud", "steady" },
  { "audio-filter-tired", CLASSIC, 0.9, "audio-rail-loud", "sags" },
  { NULL, CLASSIC, 0, "sense-drop", "without" },
  { NULL, LINEAR, 0, "sense-drop", "same" },
  { "sense-open", LINEAR, 0.5, "sense-drop", "off" },
  { NULL, CLASSIC, 0, "trim-response", "smooth" },
  { "trim-worn", CLASSIC, 0.5, "trim-response", "jumps" },
  { "sense-open", CLASSIC, 0.5, "trim-response", "none" },
  { "supply-primary-dead", CLASSIC, 1, "trim-response", "none" },
  { "regulator-drifted", LINEAR, 0.9, "trim-response", "none" },
  { "trim-low", CLASSIC, 0.5, "trim-seal-look", "turned" },
  { NULL, CLASSIC, 0, "warm-up-drift", "steady" },
  { "supply-overheats", CLASSIC, 1, "warm-up-drift", "both" },
  { "poor-crimp", CLASSIC, 0.9, "warm-up-drift", "board" },
  { NULL, CLASSIC, 0, "p5-dummy-load", "steady" },
  { "minimum-load-missing", CLASSIC, 1, "p5-dummy-load", "starts" },
  { "supply-primary-dead", CLASSIC, 1, "p5-dummy-load", "dead" },
  { "sense-open", CLASSIC, 0.6, "p5-dummy-load", "over" },
  { "trim-low", CLASSIC, 0.6, "p5-dummy-load", "low" },
  { "output-capacitors-tired", CLASSIC, 0.8, "p5-dummy-load", "falls" },
  { NULL, CLASSIC, 0, "split-load", "same" },
  { NULL, LINEAR, 0, "split-load", "same" },
  { "plus5-wire-thin", CLASSIC, 1, "split-load", "any" },
  { "lamp-circuit-short", CLASSIC, 0.7, "split-load", "lamps" },
  { NULL, CLASSIC, 0, "supply-heat", "cool" },
  { NULL, LINEAR, 0, "supply-heat", "cool" },
  { "supply-overloaded", CLASSIC, 0.8, "supply-heat", "hot" },
  { "supply-overheats", CLASSIC, 0.8, "supply-heat", "still" },
  { "mains-path-open", CLASSIC, 0.8, "reset-pin", "unfed" },
  { "protection-latched", CLASSIC, 0.8, "reset-pin", "unfed" },
  { "protection-latched", LINEAR, 0.8, "reset-pin", "unfed" },
  { "protection-latched", LINEAR, 0.8, "bigcap-ripple", "usual" },
  { "protection-latched", LINEAR, 0.8, "bigcap-dc", "right" },
  { "board-trace-loss", CLASSIC, 0.6, "p5-minmax-reset", "none" },
  { "p12-lost-supply", CLASSIC, 1, "audio-rail-loud", "collapses" },
  { NULL, LINEAR, 0, "audio-rail-loud", "steady" },
  { "regulator-drifted", LINEAR, 0.5, "audio-rail-loud", "steady" },
  { "board-corroded", CLASSIC, 0.5, "look-and-smell", "crust" },
  { "lamp-circuit-short", CLASSIC, 0.9, "fuse-ohms", "open" },
  { "lamp-circuit-short", CLASSIC, 0.9, "split-load", "same" },
  { "fuse-holder-tired", CLASSIC, 0.6, "crimp-tug", "firm" },
  { "fuse-holder-tired", CLASSIC, 0.6, "drop-where", "joint" },
  { NULL, CLASSIC, 0, "fuse-ohms", "good" },
  { "fuse-holder-tired", CLASSIC, 0.6, "fuse-ohms", "raised" },
  { "fuse-holder-tired", CLASSIC, 0.6, "fuse-holder-look", "slack" },
  { "fuse-blown", CLASSIC, 0.3, "fuse-ohms", "open" },
  { "fuse-blown", CLASSIC, 0.8, "board-input-ohms", "short" },
  { NULL, CLASSIC, 0, "earth-continuity", "good" },
  { "earth-missing", CLASSIC, 0.6, "earth-continuity", "bad" },
  { NULL, CLASSIC, 0, "panel-ground-drop", "good" },
  { "panel-ground-open", CLASSIC, 0.6, "panel-ground-drop", "bad" },
  { "panel-ground-open", CLASSIC, 0.6, "ground-ohms", "panel" },
  { "switch-bad", CLASSIC, 0.6, "panel-ground-drop", "one" },
  { NULL, CLASSIC, 0, "video-ground", "good" },
  { "video-ground-open", CLASSIC, 0.6, "video-ground", "bad" },
  { NULL, CLASSIC, 0, "bars-board-out", "without" },
  { "monitor-filter-tired", CLASSIC, 0.6, "bars-board-out", "stays" },
  { "monitor-worn", CLASSIC, 0.6, "bars-board-out", "dim" },
  { "ground-wire-poor", CLASSIC, 1, "bars-board-out", "gone" },
  { "speaker-path-open", CLASSIC, 0.6, "speaker-path", "bad" },
  { NULL, CLASSIC, 0, "meter-self-check", "passes" },
  { "meter-or-leads", CLASSIC, 0.6, "meter-self-check", "fails" },
  { NULL, CLASSIC, 0, "self-test", "passes" },
  { "scores-battery-flat", CLASSIC, 0.8, "self-test", "forgets" },
  { "minus5-lost-supply", "dram-5-12-m5", 0.9, "self-test", "refuses" },
  { NULL, LINEAR, 0, "selector-look", "match" },
  { "bridge-diode-shorted", LINEAR, 0.8, "secondary-volts", "one" },
  { NULL, CLASSIC, 0, "p5-current", "normal" },
  { "supply-overloaded", CLASSIC, 0.8, "p5-current", "near" },
  { "reset-part-bad", CLASSIC, 0.6, "p5-minmax-reset", "none" },
  { "trim-low", CLASSIC, 0.8, "p5-minmax-reset", "dip" },
  { "reset-part-bad", CLASSIC, 0.6, "reset-pin", "bobbing" },
  { NULL, CLASSIC, 0, "reset-pin", "steady" },
  { "memory-bad", CLASSIC, 0.8, "self-test", "names" },
  { "board-short", CLASSIC, 0.8, "board-input-ohms", "short" },
  { "board-short", CLASSIC, 0.8, "split-load", "board" },
  { "protection-latched", CLASSIC, 0.8, "unplug-wait", "back" },
  { "low-mains", LINEAR, 0.5, "mains-outlet-volts", "low" },
  { "low-mains", LINEAR, 0.5, "secondary-volts", "low" },
  { "mains-path-open", LINEAR, 1, "mains-path-ohms", "open" },
  { NULL, LINEAR, 0, "bigcap-ripple", "usual" },
  { "raw-capacitor-tired", LINEAR, 0.8, "bigcap-ripple", "double" },
  { "bridge-diode-open", LINEAR, 1, "bigcap-ripple", "single" },
  { NULL, LINEAR, 0, "bigcap-dc", "right" },
  { "low-mains", LINEAR, 0.6, "bigcap-dc", "low" },
};

static void
faults_show_when_looked_for (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shows); i++)
    {
      const Shows *s = &shows[i];
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (s->profile, 4, s->fault, s->strength, 60);

      g_test_message ("%s: %s", s->fault != NULL ? s->fault : "healthy", s->check);
      g_assert_cmpstr (rw_practice_look (cabinet, s->check), ==, s->outcome);
    }
}

/* Looks deceive now and then: a tired capacitor need not bulge, a dull finger may be good, and a sound trim
 * may have been turned. */
static void
looks_are_not_proof (void)
{
  guint bulged = 0, dull = 0, turned = 0;

  for (guint64 seed = 1; seed <= 20; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          tired = practice_running (CLASSIC, seed, "output-capacitors-tired", 0.8, 1);
      g_autoptr (RwPracticeCabinet) good = practice_running (CLASSIC, seed, NULL, 0, 1);

      bulged += g_str_equal (rw_practice_look (tired, "look-and-smell"), "bulged");
      dull += g_str_equal (rw_practice_look (good, "edge-connector-look"), "dull");
      turned += g_str_equal (rw_practice_look (good, "trim-seal-look"), "turned");
      g_assert_cmpstr (rw_practice_look (good, "look-and-smell"), ==, "clean");
    }
  g_assert_cmpuint (bulged, >, 4);
  g_assert_cmpuint (bulged, <, 16);
  g_assert_cmpuint (dull, >, 1);
  g_assert_cmpuint (dull, <, 12);
  g_assert_cmpuint (turned, >, 1);
  g_assert_cmpuint (turned, <, 14);
}

static void
looking_changes_nothing (void)
{
  g_autoptr (RwPracticeCabinet) looked = practice_running (CLASSIC, 4, "poor-crimp", 0.6, 5);
  g_autoptr (RwPracticeCabinet) alone = practice_running (CLASSIC, 4, "poor-crimp", 0.6, 5);

  for (guint i = 0; i < G_N_ELEMENTS (shows); i++)
    rw_practice_look (looked, shows[i].check);
  rw_practice_cabinet_advance (looked, 10);
  rw_practice_cabinet_advance (alone, 10);
  g_assert_cmpfloat (practice_dc (looked, "p5", RW_PLACE_BOARD), ==,
                     practice_dc (alone, "p5", RW_PLACE_BOARD));
}

static void
what_cannot_be_seen_is_not_answered (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 4, NULL, 0);

  g_assert_null (rw_practice_look (cabinet, "no-such-check"));
  g_assert_null (rw_practice_look (cabinet, NULL));
  g_assert_null (rw_practice_look (cabinet, "p5-board-loaded")); /* measured, not looked at */
  g_assert_null (rw_practice_look (cabinet, "hum-volume-zero")); /* it is off */
  g_assert_null (rw_practice_look (cabinet, "bigcap-ripple"));   /* a switcher */
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/look/" name, func)
  ADD ("every-fault-is-a-cause-of-the-knowledge", every_fault_is_a_cause_of_the_knowledge);
  ADD ("symptoms-are-those-of-the-knowledge", symptoms_are_those_of_the_knowledge);
  ADD ("answers-are-outcomes-of-their-checks", answers_are_outcomes_of_their_checks);
  ADD ("every-looking-check-is-answered", every_looking_check_is_answered);
  ADD ("faults-show-when-looked-for", faults_show_when_looked_for);
  ADD ("looks-are-not-proof", looks_are_not_proof);
  ADD ("looking-changes-nothing", looking_changes_nothing);
  ADD ("what-cannot-be-seen-is-not-answered", what_cannot_be_seen_is_not_answered);
#undef ADD
  return g_test_run ();
}
