/* test-conservation.c: what must hold in any cabinet whatever, in ten thousand of them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The checks that a careful person applies to any set of readings:
 *
 *  (a) terminals − edge = drop of the rail's path + drop of ground, the latter with the rail's sign;
 *  (b) the edge is never below the far chip;
 *  (c) an unregulated +12 moves 2.3 to 2.4 V per volt of the +5 trim;
 *  (d) raw DC is 1.41·VAC − 2 − half its ripple;
 *  (e) the raw trough is at 7 V or more as long as +5 is clean, and +5 is not clean when it is not;
 *  (f) the drop along a wire over its ohms is the current, 1 to 6 A of a sound board;
 *  (h) a reading is stale once a turn, a plug or a repair followed.
 *
 * (g), that parallel fingers show similar drops, cannot be asked here: a practice cabinet has all fingers of a rail in
 * one. RAILWRIGHT_CABINETS in the environment: how many cabinets, for slow machines; 10000 by default.
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>

#include "practice-bench.h"
#include "rw-practice-build.h"
#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"

static const char *const profiles[] = { "classic-5-12-m5",   "dram-5-12-m5",  "linear-5-audio",
                                        "switcher-5-12-m12", "switcher-5-12", "switcher-5-12-24" };

static RwProfile *loaded[G_N_ELEMENTS (profiles)];

static guint
n_cabinets (void)
{
  const char *asked = g_getenv ("RAILWRIGHT_CABINETS");

  return asked != NULL ? (guint) MAX (100, atoi (asked)) : 10000;
}

/* On, loaded, at a moment of its warming up, with one fault of any strength, or (one in five) none. */
static void
build (RwPracticeModel *model,
       guint            seed,
       gboolean        *healthy)
{
  const char *fault = rw_practice_faults_get_id (seed / 5 % rw_practice_faults_get_n ());
  RwPracticeRandom random;

  rw_practice_random_seed (&random, seed * G_GUINT64_CONSTANT (2654435761));
  rw_practice_build (&model->params, loaded[seed % G_N_ELEMENTS (profiles)], seed);
  *healthy = seed % 5 == 0 || !rw_practice_faults_fit (fault, &model->params);
  if (!*healthy)
    rw_practice_faults_apply (fault, rw_practice_random_uniform (&random), &model->params);
  rw_practice_model_start (model, seed);
  model->state.power = TRUE;
  model->state.level = model->state.tripped ? 0 : 1;
  model->state.board = RW_PRACTICE_BOARD_RUNNING;
  model->state.warm = rw_practice_random_uniform (&random);
  model->state.wander_contact = rw_practice_random_gauss (&random);
  model->state.wander_load = model->params.load_noise * rw_practice_random_gauss (&random);
  rw_practice_circuit_solve (model);
}

static double
dc (const RwPracticeModel *model,
    guint                  i,
    RwPlace                place)
{
  return rw_practice_model_get_volts (model, model->params.rail[i].id, place, RW_KIND_DC);
}

static double
ground_drop (const RwPracticeModel *model)
{
  return rw_practice_model_get_volts (model, RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC);
}

static void
terminals_less_drops_is_the_edge (void)
{
  guint checked = 0;

  for (guint seed = 0; seed < n_cabinets (); seed++)
    {
      RwPracticeModel model;
      gboolean healthy;

      build (&model, seed, &healthy);
      for (guint i = 0; i < model.params.n_rails; i++)
        {
          const double lost = dc (&model, i, RW_PLACE_TERMINALS) - dc (&model, i, RW_PLACE_BOARD);

          g_assert_true (isfinite (lost));
          g_assert_cmpfloat_with_epsilon (lost, dc (&model, i, RW_PLACE_WIRE) + ground_drop (&model), 1e-12);
          /* With magnitudes the ground drop counts against a negative rail. */
          if (healthy)
            g_assert_cmpfloat_with_epsilon (fabs (dc (&model, i, RW_PLACE_TERMINALS))
                                                - fabs (dc (&model, i, RW_PLACE_BOARD)),
                                            fabs (dc (&model, i, RW_PLACE_WIRE))
                                                + model.params.rail[i].sign * ground_drop (&model),
                                            1e-12);
          checked++;
        }
    }
  g_assert_cmpuint (checked, >=, 2 * n_cabinets ());
}

static void
edge_is_never_below_the_chip (void)
{
  for (guint seed = 0; seed < n_cabinets (); seed++)
    {
      RwPracticeModel model;
      gboolean healthy;

      build (&model, seed, &healthy);
      for (guint i = 0; i < model.params.n_rails; i++)
        {
          const double sign = model.params.rail[i].sign;

          g_assert_cmpfloat (sign * dc (&model, i, RW_PLACE_BOARD), >=, sign * dc (&model, i, RW_PLACE_CHIP) - 1e-9);
          if (healthy)
            g_assert_cmpfloat (sign * (dc (&model, i, RW_PLACE_BOARD) - dc (&model, i, RW_PLACE_CHIP)), <, 0.10);
        }
    }
}

/* 2.3 to 2.4 V per volt on the average, rounded; in each cabinet its own turns, less what its loads do. */
static void
twelve_volts_move_with_the_trim (void)
{
  guint healthies = 0, followers = 0;
  double sum = 0;

  for (guint seed = 0; seed < n_cabinets (); seed++)
    {
      RwPracticeModel model;
      gboolean healthy;
      double v5, v12, slope;

      build (&model, seed, &healthy);

      const int p12 = rw_practice_params_index_of (&model.params, "p12");

      if (p12 < 0 || model.params.rail[p12].feed != RW_PRACTICE_FOLLOWER || model.state.level < 1
          || model.state.fold < 1)
        continue;
      v5 = dc (&model, model.params.reference, RW_PLACE_TERMINALS);
      v12 = dc (&model, (guint) p12, RW_PLACE_TERMINALS);
      model.state.trim += model.state.trim > 0.5 ? -0.1 : 0.1;
      rw_practice_circuit_solve (&model);
      if (model.state.fold < 1 || fabs (dc (&model, model.params.reference, RW_PLACE_TERMINALS) - v5) < 0.01)
        continue;
      slope = (dc (&model, (guint) p12, RW_PLACE_TERMINALS) - v12)
              / (dc (&model, model.params.reference, RW_PLACE_TERMINALS) - v5);
      followers++;
      if (model.params.rail[p12].alive == 1)
        g_assert_cmpfloat_with_epsilon (slope, model.params.rail[p12].turns, 0.04 * model.params.rail[p12].turns);
      if (!healthy)
        continue;
      g_assert_cmpfloat (slope, >, 2.2);
      g_assert_cmpfloat (slope, <, 2.5);
      sum += slope;
      healthies++;
    }
  g_assert_cmpuint (followers, >, n_cabinets () / 4);
  g_assert_cmpuint (healthies, >, n_cabinets () / 20);
  g_assert_cmpfloat (sum / healthies, >=, 2.25);
  g_assert_cmpfloat (sum / healthies, <, 2.45);
}

/* The two volts of the rule are the bridge and the copper: 1.8 V and some tenths in a healthy supply. */
static void
raw_volts_follow_the_winding (void)
{
  guint checked = 0;

  for (guint seed = 0; seed < n_cabinets (); seed++)
    {
      RwPracticeModel model;
      gboolean healthy;

      build (&model, seed, &healthy);

      const RwPracticeRaw *raw = &model.params.rail[model.params.reference].raw;

      if (model.params.supply != RW_PRACTICE_LINEAR || !healthy)
        continue;

      const double winding = raw->winding_volts * model.params.mains_share;
      const double volts = rw_practice_model_get_volts (&model, "raw", RW_PLACE_TERMINALS, RW_KIND_DC);
      const double shown = rw_practice_model_get_volts (&model, "raw", RW_PLACE_TERMINALS, RW_KIND_RIPPLE);

      /* Peak to peak is 3.60 times what an averaging meter shows. */
      g_assert_cmpfloat_with_epsilon (3.60 * shown, model.state.raw_ripple, 0.01 * model.state.raw_ripple);
      g_assert_cmpfloat_with_epsilon (volts, 1.414 * winding - 2 - 1.80 * shown, 0.6);
      g_assert_cmpfloat (volts, >=, 8);
      g_assert_cmpfloat (volts, <=, 11.5);
      checked++;
    }
  g_assert_cmpuint (checked, >, n_cabinets () / 50);
}

/* More than 5 mV at 100 Hz means drop-out, and drop-out means less than 7 V in the trough. Raised where a sense wire
 * asks for more than 5 V at the terminals. */
static void
clean_five_volts_need_seven_in_the_trough (void)
{
  guint clean = 0, cut = 0;

  for (guint seed = 2; seed < n_cabinets (); seed += G_N_ELEMENTS (profiles))
    {
      RwPracticeModel model;
      gboolean healthy;

      build (&model, seed, &healthy);
      /* Half of them with a capacitor that has dried out, by whatever share. */
      if (seed % 4 == 0)
        {
          model.params.rail[model.params.reference].raw.farads *= 0.15 + seed % 97 / 120.0;
          rw_practice_circuit_solve (&model);
        }
      if (model.params.rail[model.params.reference].alive < 1 || model.state.fold < 1 || model.state.level < 1
          || model.params.dropout_volts < 2
          || model.state.raw_volts < 1)
        continue;

      const double trough = model.state.raw_volts - model.state.raw_ripple / 2;
      const double terminals = dc (&model, model.params.reference, RW_PLACE_TERMINALS);
      const double ripple = rw_practice_model_get_volts (&model, "p5", RW_PLACE_TERMINALS, RW_KIND_RIPPLE);

      g_assert_cmpint (model.params.supply, ==, RW_PRACTICE_LINEAR);
      if (ripple < 0.005 && terminals >= 5)
        {
          g_assert_cmpfloat (trough, >=, 7.0 - 0.15);
          clean++;
        }
      if (trough < terminals + 2 - 0.30)
        {
          g_assert_cmpfloat (ripple, >, 0.005);
          cut++;
        }
    }
  g_assert_cmpuint (clean, >, n_cabinets () / 50);
  g_assert_cmpuint (cut, >, n_cabinets () / 100);
}

static void
drop_over_ohms_is_the_current (void)
{
  guint checked = 0;

  for (guint seed = 0; seed < n_cabinets (); seed++)
    {
      RwPracticeModel model;
      gboolean healthy;

      build (&model, seed, &healthy);

      const guint i = model.params.reference;
      const double ohms = rw_practice_path_ohms (&model.params.rail[i].path, &model.state);
      const double amps = dc (&model, i, RW_PLACE_WIRE) / ohms;
      double through_ground = 0;

      if (!model.params.rail[i].path.open)
        g_assert_cmpfloat_with_epsilon (amps, model.state.flow[i].amps, 1e-9 * (1 + amps));
      for (guint k = 0; k < model.params.n_rails; k++)
        through_ground += model.params.rail[k].sign * model.state.flow[k].amps;
      g_assert_cmpfloat_with_epsilon (
          ground_drop (&model) / rw_practice_path_ohms (&model.params.ground, &model.state), through_ground,
          1e-6 * (1 + fabs (through_ground)));
      if (!healthy)
        continue;
      g_assert_cmpfloat (amps, >, 1);
      g_assert_cmpfloat (amps, <, 6);
      checked++;
    }
  g_assert_cmpuint (checked, >, n_cabinets () / 6);
}

/* The same by hand: leads, millivolts under power, ohms of the wire without. What 0.1 Ω of last digit can say of 20 mΩ is
 * nothing, so the true values of the pair are taken. */
static void
leads_find_the_same_current (void)
{
  for (guint seed = 0; seed < 60; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (profiles[seed % G_N_ELEMENTS (profiles)], seed, "edge-oxidised", 0.4, 1);
      const RwPracticeModel *model = rw_practice_cabinet_get_true_model (cabinet);
      RwPracticePair whole, lug, wire, finger;

      rw_practice_cabinet_measure (cabinet, "strip:p5", "edge:p5", &whole);
      rw_practice_cabinet_measure (cabinet, "strip:p5", "harness:p5:supply", &lug);
      rw_practice_cabinet_measure (cabinet, "harness:p5:supply", "harness:p5:board", &wire);
      rw_practice_cabinet_measure (cabinet, "harness:p5:board", "edge:p5", &finger);
      g_assert_cmpfloat_with_epsilon (whole.dc, lug.dc + wire.dc + finger.dc, 1e-12);
      g_assert_cmpfloat_with_epsilon (whole.dc / whole.ohms, model->state.flow[model->params.reference].amps, 0.01);
      g_assert_cmpfloat_with_epsilon (finger.dc / finger.ohms, whole.dc / whole.ohms, 0.01);
      g_assert_cmpfloat (finger.dc, >, lug.dc); /* the fingers are what is oxidised */
    }
}

/* (h): any order of readings, turns, plugs and repairs. */
static void
readings_grow_stale (void)
{
  static const char *const rails[] = { "p5", "p12", "m5" };

  for (guint seed = 0; seed < 120; seed++)
    {
      g_autoptr (PracticeBench) bench = practice_bench_new ("classic-5-12-m5", seed, NULL, 0);
      guint read_at[G_N_ELEMENTS (rails)] = { 0 }, changed_at = 0;
      RwPracticeRandom random;

      rw_practice_random_seed (&random, seed + 77);
      rw_practice_meter_set_mode (bench->meter, RW_PRACTICE_MODE_FOLLOW, RW_PRACTICE_JACK_VOLTS);
      for (guint step = 1; step < 14; step++)
        {
          const guint what = (guint) (rw_practice_random_uniform (&random) * 8);
          const guint rail = (guint) (rw_practice_random_uniform (&random) * G_N_ELEMENTS (rails));

          if (what >= 2)
            {
              rw_practice_cabinet_set_leads (bench->cabinet, rails[rail], RW_PLACE_TERMINALS, RW_KIND_DC);
              practice_bench_claim (bench, rails[rail], RW_PLACE_TERMINALS, RW_KIND_DC);
              read_at[rail] = step;
              continue;
            }
          changed_at = step;
          if (what == 0)
            practice_bench_turn (bench, 0.02);
          else
            practice_bench_fit (bench, !rw_practice_cabinet_get_board_fitted (bench->cabinet));
        }

      g_autoptr (RwBenchState) state = rw_bench_state_new (bench->session);

      for (guint i = 0; i < G_N_ELEMENTS (rails); i++)
        if (read_at[i] > 0)
          g_assert_cmpint (
              rw_bench_state_find_spot (state, rails[i], RW_PLACE_TERMINALS, RW_KIND_DC)->stale, ==,
              changed_at > read_at[i]);
    }
}

int
main (int    argc,
      char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (profiles); i++)
    loaded[i] = practice_profile (profiles[i]);
#define ADD(name, func) g_test_add_func ("/practice/conservation/" name, func)
  ADD ("terminals-less-drops-is-the-edge", terminals_less_drops_is_the_edge);
  ADD ("edge-is-never-below-the-chip", edge_is_never_below_the_chip);
  ADD ("twelve-volts-move-with-the-trim", twelve_volts_move_with_the_trim);
  ADD ("raw-volts-follow-the-winding", raw_volts_follow_the_winding);
  ADD ("clean-five-volts-need-seven-in-the-trough", clean_five_volts_need_seven_in_the_trough);
  ADD ("drop-over-ohms-is-the-current", drop_over_ohms_is_the_current);
  ADD ("leads-find-the-same-current", leads_find_the_same_current);
  ADD ("readings-grow-stale", readings_grow_stale);
#undef ADD
  status = g_test_run ();
  for (guint i = 0; i < G_N_ELEMENTS (profiles); i++)
    rw_profile_unref (loaded[i]);
  return status;
}
