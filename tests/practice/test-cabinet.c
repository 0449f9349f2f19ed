/* test-cabinet.c: hands on a practice cabinet: power, board, trim, time, resets, repairs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "practice-fixtures.h"
#include "rw-practice-symptoms.h"

#define CLASSIC "classic-5-12-m5"

static void
count_cb (RwPracticeCabinet *cabinet,
          guint              resets,
          gpointer           data)
{
  guint *count = data;

  (*count)++;
  g_assert_cmpuint (resets, ==, *count);
}

static void
notify_cb (GObject    *object,
           GParamSpec *spec,
           gpointer    data)
{
  guint *count = data;

  (*count)++;
}

static void
starts_off_and_fitted (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 1, NULL, 0);

  g_assert_false (rw_practice_cabinet_get_power (cabinet));
  g_assert_true (rw_practice_cabinet_get_board_fitted (cabinet));
  g_assert_false (rw_practice_cabinet_get_warm (cabinet));
  g_assert_cmpint (rw_practice_cabinet_get_board_state (cabinet), ==, RW_PRACTICE_BOARD_DEAD);
  g_assert_cmpfloat (rw_practice_cabinet_get_seconds (cabinet), ==, 0);
  g_assert_null (rw_practice_cabinet_get_leads (cabinet, NULL, NULL));
  g_assert_cmpstr (rw_practice_cabinet_get_name (cabinet), ==, "Tidepool Racer");
  rw_practice_cabinet_advance (cabinet, 5);
  g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_TERMINALS), ==, 0);
}

static void
board_starts_after_power (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 1, NULL, 0);

  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 0.3);
  g_assert_cmpint (rw_practice_cabinet_get_board_state (cabinet), ==, RW_PRACTICE_BOARD_RESET);
  rw_practice_cabinet_advance (cabinet, 2);
  g_assert_cmpint (rw_practice_cabinet_get_board_state (cabinet), ==,
                   RW_PRACTICE_BOARD_RUNNING);
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, 2);
  g_assert_cmpint (rw_practice_cabinet_get_board_state (cabinet), ==, RW_PRACTICE_BOARD_DEAD);
  g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_TERMINALS), <, 0.1);
  /* Switching off is no reset. */
  g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), ==, 0);
}

/* However the same time is cut into pieces. */
static void
time_may_be_cut_anyhow (void)
{
  static const double pieces[] = { 12, 0.1, 0.01, 0.007, 0.0333333333 };
  double volts[G_N_ELEMENTS (pieces)];

  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_cabinet (CLASSIC, 9, "edge-oxidised", 0.8);

      rw_practice_cabinet_set_power (cabinet, TRUE);
      while (rw_practice_cabinet_get_seconds (cabinet) < 11.995)
        rw_practice_cabinet_advance (cabinet, pieces[i]);
      g_assert_cmpfloat_with_epsilon (rw_practice_cabinet_get_seconds (cabinet), 12, 0.04);
      while (rw_practice_cabinet_get_seconds (cabinet) < 12.095)
        rw_practice_cabinet_advance (cabinet, 0.01);
      volts[i] = practice_dc (cabinet, "p5", RW_PLACE_BOARD);
      g_assert_cmpfloat (volts[i], ==, volts[0]);
    }
}

static void
nonsense_times_do_nothing (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 9, NULL, 0);

  rw_practice_cabinet_advance (cabinet, -1);
  rw_practice_cabinet_advance (cabinet, NAN);
  rw_practice_cabinet_advance (cabinet, INFINITY);
  rw_practice_cabinet_advance (cabinet, 0);
  g_assert_cmpfloat (rw_practice_cabinet_get_seconds (cabinet), ==, 0);
}

static void
same_seed_lives_the_same_life (void)
{
  g_autoptr (RwPracticeCabinet) a = practice_running (CLASSIC, 21, "trim-low", 0.7, 300);
  g_autoptr (RwPracticeCabinet) b = practice_running (CLASSIC, 21, "trim-low", 0.7, 300);
  g_autoptr (RwPracticeCabinet) c = practice_running (CLASSIC, 22, "trim-low", 0.7, 300);

  g_assert_cmpuint (rw_practice_cabinet_get_resets (a), ==, rw_practice_cabinet_get_resets (b));
  g_assert_cmpfloat (practice_dc (a, "p5", RW_PLACE_BOARD), ==,
                     practice_dc (b, "p5", RW_PLACE_BOARD));
  g_assert_cmpfloat (practice_dc (a, "p5", RW_PLACE_BOARD), !=,
                     practice_dc (c, "p5", RW_PLACE_BOARD));
}

static void
low_five_resets_and_the_trim_cures (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 5, "trim-low", 0.8);
  guint resets = 0;

  g_signal_connect (cabinet, "reset", G_CALLBACK (count_cb), &resets);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 120);
  g_assert_cmpuint (resets, >, 0);
  g_assert_cmpuint (resets, ==, rw_practice_cabinet_get_resets (cabinet));
  g_assert_true (rw_practice_cabinet_has_symptom (cabinet, "resets"));

  rw_practice_cabinet_turn_trim_volts (cabinet, 0.40);
  rw_practice_cabinet_advance (cabinet, 5);
  resets = rw_practice_cabinet_get_resets (cabinet);
  rw_practice_cabinet_advance (cabinet, 300);
  g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), ==, resets);
  g_assert_false (rw_practice_cabinet_has_symptom (cabinet, "resets"));
  g_assert_cmpfloat_with_epsilon (practice_dc (cabinet, "p5", RW_PLACE_BOARD), 5.04, 0.03);
}

/* Below its limit for less than the hold time the board goes on; a hair longer and it resets.
 */
static void
board_resets_after_the_hold_time (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 5, NULL, 0, 5);

  for (guint steps = 1; steps <= 4; steps++)
    {
      RwPracticeModel model = *rw_practice_cabinet_get_true_model (cabinet);

      model.params.reset_hold_seconds = 0.03;
      model.params.step_rate = 0;
      model.state.trim = 0.05; /* 4.56 V */
      for (guint i = 0; i < steps; i++)
        rw_practice_model_step (&model);
      model.state.trim = 0.6;
      for (guint i = 0; i < 5; i++)
        rw_practice_model_step (&model);
      g_assert_cmpuint (model.state.resets, ==, steps >= 3 ? 1 : 0);
      g_assert_cmpint (model.state.board, ==,
                       steps >= 3 ? RW_PRACTICE_BOARD_RESET : RW_PRACTICE_BOARD_RUNNING);
    }
}

/* A board that resets by itself does so with every rail right and no dip. */
static void
own_resets_come_without_a_dip (void)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running (CLASSIC, 5, "reset-part-bad", 0.5, 200);
  const RwPracticeModel *model = rw_practice_cabinet_get_true_model (cabinet);

  g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), >=, 3);
  g_assert_cmpfloat (model->state.reset_chip_volts, >, 4.85);
}

/* Somebody watches for two minutes; what was longer ago is not "it resets". */
static void
old_resets_are_no_symptom (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 5, "reset-part-bad", 0.5, 200);
  RwPracticeModel model = *rw_practice_cabinet_get_true_model (cabinet);

  model.state.reset_age = RW_PRACTICE_WATCH - 1;
  g_assert_true (rw_practice_symptoms_present (&model, "resets"));
  model.state.reset_age = RW_PRACTICE_WATCH + 1;
  g_assert_false (rw_practice_symptoms_present (&model, "resets"));
}

static void
trim_stops_at_its_ends (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 5, NULL, 0, 5);
  guint notified = 0;

  g_signal_connect (cabinet, "notify::trim", G_CALLBACK (notify_cb), &notified);
  g_assert_false (rw_practice_cabinet_get_trim_turned (cabinet));
  rw_practice_cabinet_turn_trim (cabinet, 5);
  g_assert_cmpfloat (rw_practice_cabinet_get_trim (cabinet), ==, 1);
  rw_practice_cabinet_turn_trim (cabinet, 0.1);
  rw_practice_cabinet_turn_trim (cabinet, NAN);
  g_assert_cmpuint (notified, ==, 1);
  g_assert_true (rw_practice_cabinet_get_trim_turned (cabinet));
  rw_practice_cabinet_turn_trim (cabinet, -7);
  g_assert_cmpfloat (rw_practice_cabinet_get_trim (cabinet), ==, 0);
}

static void
properties_tell_once_when_they_change (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 5, NULL, 0);
  guint power = 0, fitted = 0, warm = 0, state = 0;
  gboolean on = FALSE;
  int board = -1;

  g_signal_connect (cabinet, "notify::power", G_CALLBACK (notify_cb), &power);
  g_signal_connect (cabinet, "notify::board-fitted", G_CALLBACK (notify_cb), &fitted);
  g_signal_connect (cabinet, "notify::warm", G_CALLBACK (notify_cb), &warm);
  g_signal_connect (cabinet, "notify::board-state", G_CALLBACK (notify_cb), &state);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_set_board_fitted (cabinet, TRUE);
  g_assert_cmpuint (power, ==, 1);
  g_assert_cmpuint (fitted, ==, 0);
  rw_practice_cabinet_advance (cabinet, 5);
  g_assert_cmpuint (state, ==, 2); /* reset, running */
  rw_practice_cabinet_advance (cabinet, 1000);
  g_assert_cmpuint (warm, ==, 1);
  g_assert_true (rw_practice_cabinet_get_warm (cabinet));
  g_assert_cmpfloat_with_epsilon (rw_practice_cabinet_get_on_minutes (cabinet), 1005 / 60.0,
                                  0.001);
  g_object_get (cabinet, "power", &on, "board-state", &board, NULL);
  g_assert_true (on);
  g_assert_cmpint (board, ==, RW_PRACTICE_BOARD_RUNNING);

  /* It cools again. */
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, 2000);
  g_assert_false (rw_practice_cabinet_get_warm (cabinet));
  g_assert_cmpuint (warm, ==, 2);
}

static void
repair_mends_what_was_broken (void)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running (CLASSIC, 5, "plus5-wire-thin", 0.8, 5);
  g_autoptr (RwPracticeCabinet) healthy = practice_running (CLASSIC, 5, NULL, 0, 5);
  const double before = practice_dc (cabinet, "p5", RW_PLACE_WIRE);

  g_assert_false (rw_practice_cabinet_repair (cabinet, "edge-oxidised"));
  g_assert_cmpuint (rw_practice_cabinet_get_true_n_faults (cabinet), ==, 1);
  g_assert_cmpstr (rw_practice_cabinet_get_true_fault (cabinet, 0)->id, ==, "plus5-wire-thin");
  g_assert_true (rw_practice_cabinet_repair (cabinet, "plus5-wire-thin"));
  g_assert_cmpuint (rw_practice_cabinet_get_true_n_faults (cabinet), ==, 0);
  rw_practice_cabinet_advance (cabinet, 1);
  rw_practice_cabinet_advance (healthy, 1);
  g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_WIRE), <, before - 0.1);
  g_assert_cmpfloat_with_epsilon (practice_dc (cabinet, "p5", RW_PLACE_WIRE),
                                  practice_dc (healthy, "p5", RW_PLACE_WIRE), 0.005);
}

/* The repair of a trim is to turn it: once somebody has, mending the cause turns nothing. */
static void
mended_trim_is_turned_once (void)
{
  g_autoptr (RwPracticeCabinet) untouched = practice_running (CLASSIC, 5, "trim-low", 0.6, 5);
  g_autoptr (RwPracticeCabinet) turned = practice_running (CLASSIC, 5, "trim-low", 0.6, 5);

  g_assert_true (rw_practice_cabinet_repair (untouched, "trim-low"));
  rw_practice_cabinet_advance (untouched, 1);
  g_assert_cmpfloat_with_epsilon (practice_dc (untouched, "p5", RW_PLACE_BOARD), 5.04, 0.04);

  rw_practice_cabinet_turn_trim_volts (turned, 0.20);

  const double position = rw_practice_cabinet_get_trim (turned);

  g_assert_true (rw_practice_cabinet_repair (turned, "trim-low"));
  g_assert_cmpfloat (rw_practice_cabinet_get_trim (turned), ==, position);
}

/* Two faults: mending one leaves the other. */
static void
two_faults_are_mended_one_by_one (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwProfile) profile = practice_profile (CLASSIC);
  const RwPracticeFault faults[] = { { "plus5-wire-thin", 0.7 },
                                     { "audio-filter-tired", 0.7 } };
  g_autoptr (RwPracticeCabinet)
      cabinet = rw_practice_cabinet_new (profile, 5, faults, 2, "x", &error);

  g_assert_no_error (error);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 5);
  g_assert_true (rw_practice_cabinet_has_symptom (cabinet, "audio-hum"));
  g_assert_true (rw_practice_cabinet_repair (cabinet, "plus5-wire-thin"));
  rw_practice_cabinet_advance (cabinet, 1);
  g_assert_true (rw_practice_cabinet_has_symptom (cabinet, "audio-hum"));
  g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_WIRE), <, 0.1);
  g_assert_true (rw_practice_cabinet_repair (cabinet, "audio-filter-tired"));
  rw_practice_cabinet_advance (cabinet, 1);
  g_assert_false (rw_practice_cabinet_has_symptom (cabinet, "audio-hum"));
}

/* Trimmed past its protection the supply latches; only a rest without power clears it. */
static void
over_voltage_latches_until_it_has_rested (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running (CLASSIC, 5, "sense-open", 1, 5);

  rw_practice_cabinet_turn_trim (cabinet, 1);
  rw_practice_cabinet_advance (cabinet, 5);
  g_assert_true (rw_practice_cabinet_get_tripped (cabinet));
  g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_TERMINALS), <, 0.1);
  g_assert_cmpuint (rw_practice_cabinet_get_resets (cabinet), ==, 0);

  rw_practice_cabinet_turn_trim (cabinet, -0.8);
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, 10);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 5);
  g_assert_true (rw_practice_cabinet_get_tripped (cabinet));

  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_advance (cabinet, 90);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 5);
  g_assert_false (rw_practice_cabinet_get_tripped (cabinet));
  g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_TERMINALS), >, 4.5);
}

static void
leads_go_only_where_there_is_something (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (CLASSIC, 5, NULL, 0);
  RwPlace place;
  RwKind kind;

  g_assert_true (rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_RIPPLE));
  g_assert_false (rw_practice_cabinet_set_leads (cabinet, "p99", RW_PLACE_BOARD, RW_KIND_DC));
  g_assert_false (
      rw_practice_cabinet_set_leads (cabinet, RW_RAIL_GROUND, RW_PLACE_BOARD, RW_KIND_DC));
  g_assert_false (rw_practice_cabinet_set_leads (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_OHMS));
  g_assert_false (
      rw_practice_cabinet_set_leads (cabinet, "raw", RW_PLACE_TERMINALS, RW_KIND_DC));
  g_assert_cmpstr (rw_practice_cabinet_get_leads (cabinet, &place, &kind), ==, "p5");
  g_assert_cmpint (place, ==, RW_PLACE_BOARD);
  g_assert_cmpint (kind, ==, RW_KIND_RIPPLE);
  g_assert_true (rw_practice_cabinet_set_leads (cabinet, NULL, 0, 0));
  g_assert_null (rw_practice_cabinet_get_leads (cabinet, NULL, NULL));
  g_assert_true (
      isnan (rw_practice_cabinet_get_true_volts (cabinet, "p99", RW_PLACE_BOARD, RW_KIND_DC)));
}

static void
profiles_that_cannot_be_built_are_refused (void)
{
  static const char
      json[] = "{\"id\":\"hv\",\"title\":\"t\",\"reference\":\"p5\",\"rails\":["
               "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2]},"
               "{\"id\":\"eht\",\"label\":\"+150 V\",\"nominal\":150,\"limits\":[140,160]}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (json, NULL);
  g_autoptr (RwProfile) profile = rw_profile_new_from_node (node, "hv", &error);

  g_assert_no_error (error);
  g_assert_null (rw_practice_cabinet_new (profile, 1, NULL, 0, "x", &error));
  g_assert_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_PROFILE);
  g_assert_nonnull (strstr (error->message, "eht"));
}

static void
cabinet_leaves_nothing_behind (void)
{
  RwPracticeCabinet *cabinet = practice_running (CLASSIC, 5, "trim-low", 0.5, 1);

  g_assert_finalize_object (cabinet);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/cabinet/" name, func)
  ADD ("starts-off-and-fitted", starts_off_and_fitted);
  ADD ("board-starts-after-power", board_starts_after_power);
  ADD ("time-may-be-cut-anyhow", time_may_be_cut_anyhow);
  ADD ("nonsense-times-do-nothing", nonsense_times_do_nothing);
  ADD ("same-seed-lives-the-same-life", same_seed_lives_the_same_life);
  ADD ("low-five-resets-and-the-trim-cures", low_five_resets_and_the_trim_cures);
  ADD ("board-resets-after-the-hold-time", board_resets_after_the_hold_time);
  ADD ("own-resets-come-without-a-dip", own_resets_come_without_a_dip);
  ADD ("old-resets-are-no-symptom", old_resets_are_no_symptom);
  ADD ("trim-stops-at-its-ends", trim_stops_at_its_ends);
  ADD ("properties-tell-once-when-they-change", properties_tell_once_when_they_change);
  ADD ("repair-mends-what-was-broken", repair_mends_what_was_broken);
  ADD ("mended-trim-is-turned-once", mended_trim_is_turned_once);
  ADD ("two-faults-are-mended-one-by-one", two_faults_are_mended_one_by_one);
  ADD ("over-voltage-latches-until-it-has-rested", over_voltage_latches_until_it_has_rested);
  ADD ("leads-go-only-where-there-is-something", leads_go_only_where_there_is_something);
  ADD ("profiles-that-cannot-be-built-are-refused", profiles_that_cannot_be_built_are_refused);
  ADD ("cabinet-leaves-nothing-behind", cabinet_leaves_nothing_behind);
#undef ADD
  return g_test_run ();
}
