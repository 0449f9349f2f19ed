/* test-circuit.c: the circuit against arithmetic done by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures: the multi-output line model (5 and 12 turns, diodes 0.40 and 0.75 V: V12 = 2.4·V5 +
 * 0.21), the tables of wire and contact losses, ripple of a raw capacitor.
 */
#include "config.h"

#include <math.h>

#include "practice-fixtures.h"
#include "rw-practice-build.h"
#include "rw-practice-circuit.h"
#include "rw-practice-parts.h"

static double
at (RwPracticeModel *model,
    const char      *rail,
    RwPlace          place)
{
  return rw_practice_model_get_volts (model, rail, place, RW_KIND_DC);
}

static void
followers_obey_turns_and_diodes (void)
{
  static const double volts[] = { 4.75, 5.00, 5.25 };
  RwPracticeModel model;

  for (guint i = 0; i < G_N_ELEMENTS (volts); i++)
    {
      practice_bare_switcher (&model, volts[i]);
      g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_TERMINALS), volts[i], 1e-9);
      g_assert_cmpfloat_with_epsilon (at (&model, "p12", RW_PLACE_TERMINALS),
                                      2.4 * volts[i] + 0.21, 1e-9);
      g_assert_cmpfloat_with_epsilon (at (&model, "m12", RW_PLACE_TERMINALS),
                                      -(2.4 * volts[i] + 0.21), 1e-9);
    }
  /* The published value itself. */
  practice_bare_switcher (&model, 5.0);
  g_assert_cmpfloat_with_epsilon (at (&model, "p12", RW_PLACE_TERMINALS), 12.21, 1e-9);
}

/* Vk = (Nk/N1)(V1 + VF1 + I1·r1) − VFk − Ik·rk with 4 A through 25 mΩ and 0.5 A through 80 mΩ:
 * 2.4·(5 + 0.4 + 0.1) − 0.75 − 0.04 = 12.41. */
static void
loads_move_intercepts_not_slopes (void)
{
  double v12[2];

  for (guint i = 0; i < 2; i++)
    {
      RwPracticeModel model;

      practice_bare_switcher (&model, i == 0 ? 5.0 : 5.2);
      model.state.fitted = TRUE;
      model.params.rail[0].load_amps = 4;
      model.params.rail[0].ohms = 0.025;
      model.params.rail[1].load_amps = 0.5;
      model.params.rail[1].ohms = 0.080;
      rw_practice_circuit_solve (&model);
      v12[i] = at (&model, "p12", RW_PLACE_TERMINALS);
    }
  g_assert_cmpfloat_with_epsilon (v12[0], 12.41, 1e-9);
  g_assert_cmpfloat_with_epsilon ((v12[1] - v12[0]) / 0.2, 2.4, 1e-9);
}

/* One pair of AWG 18, 1 m long, at 5 A eats 0.21 V: 105 mV out, 105 mV back. */
static void
wire_pair_loses_what_the_table_says (void)
{
  RwPracticeModel model;

  practice_bare_switcher (&model, 5.20);
  model.params.rail[0].load_amps = 5;
  model.params.rail[0].path.wire_ohms = 0.0210;
  model.params.ground.wire_ohms = 0.0210;
  rw_practice_circuit_solve (&model);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_WIRE), 0.105, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, RW_RAIL_GROUND, RW_PLACE_WIRE), 0.105, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_BOARD), 4.99, 1e-9);
}

/* 50 mΩ of contact at 2.5 A: 125 mV. */
static void
contact_loses_what_the_table_says (void)
{
  RwPracticeModel model;

  practice_bare_switcher (&model, 5.0);
  model.params.rail[0].load_amps = 2.5;
  model.params.rail[0].path.contact_ohms = 0.050;
  rw_practice_circuit_solve (&model);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_WIRE), 0.125, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_BOARD), 4.875, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, RW_RAIL_GROUND, RW_PLACE_WIRE), 0, 1e-12);
}

/* Ground lifts the board: a positive rail reads less there and a negative one more. */
static void
poor_ground_weakens_plus_and_strengthens_minus (void)
{
  RwPracticeModel model;

  practice_bare_switcher (&model, 5.0);
  model.params.rail[0].load_amps = 4;
  model.params.ground.wire_ohms = 0.025;
  rw_practice_circuit_solve (&model);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_BOARD), 4.90, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, "p12", RW_PLACE_BOARD), 12.11, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, "m12", RW_PLACE_BOARD), -12.31, 1e-9);
}

static void
sense_holds_the_board_and_lifts_the_terminals (void)
{
  RwPracticeModel model;

  practice_bare_switcher (&model, 5.0);
  model.params.sense = RW_PRACTICE_SENSE_BOARD;
  model.params.rail[0].load_amps = 4;
  model.params.rail[0].path.wire_ohms = 0.030;
  model.params.ground.wire_ohms = 0.020;
  rw_practice_circuit_solve (&model);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_BOARD), 5.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_TERMINALS), 5.2, 1e-9);
}

/* 2 A + 1 A/V·(V − 5) behind 0.1 Ω from 5 V: V = 5 − 0.1·I, I = 2 − 0.1·I, I = 1.818…; a
 * quarter of the nominal volts: a resistor of the value that the line has at half. */
static void
load_follows_its_line (void)
{
  g_assert_cmpfloat_with_epsilon (rw_practice_load (5, 0.1, 2, 5, 2.5), 2 / 1.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_practice_load (5, 0.1, 2, 5, 0), 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_practice_load (1.25, 0, 2, 5, 0), 1, 1e-12);
  g_assert_cmpfloat (rw_practice_load (-1, 0.1, 2, 5, 0.5), ==, 0);
  /* Continuous where the two laws meet. */
  g_assert_cmpfloat_with_epsilon (rw_practice_load (2.5 - 1e-9, 0, 2, 5, 0.3),
                                  rw_practice_load (2.5, 0, 2, 5, 0.3), 1e-8);
}

/* 27 000 µF at 5 A: 1.85 V at 50 Hz and 1.54 V at 60 Hz, printed to a hundredth; half the
 * capacitance and half the pulses each double it. */
static void
raw_capacitor_swings_as_published (void)
{
  RwPracticeRaw raw = { .winding_volts = 8.5, .bridge_volts = 2, .farads = 0.027 };
  RwPracticeParams params = { .mains_share = 1, .mains_hertz = 50 };
  double peak, pp;

  rw_practice_raw (&raw, &params, 5, &peak, &pp);
  g_assert_cmpfloat_with_epsilon (pp, 1.85, 0.005);
  g_assert_cmpfloat_with_epsilon (peak, sqrt (2) * 8.5 - 2, 1e-12);
  params.mains_hertz = 60;
  rw_practice_raw (&raw, &params, 5, &peak, &pp);
  g_assert_cmpfloat_with_epsilon (pp, 1.54, 0.005);
  params.mains_hertz = 50;
  raw.farads = 0.0135;
  rw_practice_raw (&raw, &params, 5, &peak, &pp);
  g_assert_cmpfloat_with_epsilon (pp, 3.70, 0.005);
  raw.farads = 0.027;
  raw.half_wave = TRUE;
  rw_practice_raw (&raw, &params, 5, &peak, &pp);
  g_assert_cmpfloat_with_epsilon (pp, 3.70, 0.005);
}

/* An averaging meter on a saw-tooth of 1 V: 0.278; and a clipped one against the waveform
 * summed up. */
static void
averaging_meter_reads_a_sawtooth (void)
{
  static const double depths[] = { 0.1, 0.35, 0.8, 1.0 };

  g_assert_cmpfloat_with_epsilon (rw_practice_sawtooth_reading (1, 1), 0.278, 0.0005);
  for (guint d = 0; d < G_N_ELEMENTS (depths); d++)
    {
      const guint n = 200000;
      double mean = 0, deviation = 0;

      for (guint i = 0; i < n; i++)
        mean += MIN (0, (i + 0.5) / n - depths[d]) / n;
      for (guint i = 0; i < n; i++)
        deviation += fabs (MIN (0, (i + 0.5) / n - depths[d]) - mean) / n;
      g_assert_cmpfloat_with_epsilon (rw_practice_sawtooth_reading (1, depths[d]),
                                      deviation * G_PI / (2 * sqrt (2)), 1e-6);
    }
}

/* Peak 9 V, 2 V of ripple, 7.5 V needed: half a volt of saw-tooth is missing at its foot, a
 * quarter of the time, on the average 0.25·0.25 = 0.0625 V. Needed 10 V: all of it, 2 V below
 * the mean of 8 V. */
static void
dropout_costs_what_it_cuts (void)
{
  double loss;

  g_assert_cmpfloat_with_epsilon (rw_practice_dropout (9, 2, 7.5, &loss), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (loss, 0.0625, 1e-12);
  g_assert_cmpfloat (rw_practice_dropout (9, 2, 6.9, &loss), ==, 0);
  g_assert_cmpfloat (loss, ==, 0);
  g_assert_cmpfloat_with_epsilon (rw_practice_dropout (9, 2, 10, &loss), 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (loss, 2, 1e-12);
}

/* All rails low in proportion: 4 A at 5 V asked of 16 W gives 4 V, and the followers sink with
 * it. */
static void
overload_sinks_all_rails_together (void)
{
  RwPracticeModel model;

  practice_bare_switcher (&model, 5.0);
  model.params.rail[0].load_amps = 4;
  model.params.limit_watts = 16;
  rw_practice_circuit_solve (&model);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_TERMINALS), 4.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (at (&model, "p12", RW_PLACE_TERMINALS), 2.4 * 4.0 + 0.21,
                                  1e-6);
}

/* Cubic below the minimum: half the minimum load costs an eighth of the full sinking. */
static void
followers_sink_without_reference_load (void)
{
  RwPracticeModel model;

  practice_bare_switcher (&model, 5.0);
  model.params.rail[0].minimum_amps = 0.8;
  model.params.sink_share = 0.4;
  g_assert_cmpfloat_with_epsilon (rw_practice_sink (&model.params, 0.4), 0.05, 1e-12);
  g_assert_cmpfloat (rw_practice_sink (&model.params, 0.8), ==, 0);
  g_assert_cmpfloat_with_epsilon (rw_practice_sink (&model.params, 0), 0.4, 1e-12);

  model.params.rail[0].bleed_amps = 0.4;
  rw_practice_circuit_solve (&model);
  g_assert_cmpfloat_with_epsilon (at (&model, "p12", RW_PLACE_TERMINALS),
                                  2.4 * 5.4 * 0.95 - 0.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (at (&model, "p5", RW_PLACE_TERMINALS), 5.0, 1e-9);
}

static const char *const profiles[] = { "classic-5-12-m5",   "dram-5-12-m5",
                                        "linear-5-audio",    "switcher-5-12-24",
                                        "switcher-5-12-m12", "switcher-5-12" };

/* terminal − board = drop along the wire + drop along ground, whatever is wrong and whatever it
 * is doing. */
static void
drops_add_up_in_a_thousand_cabinets (void)
{
  guint checked = 0;

  for (guint seed = 0; seed < 1000; seed++)
    {
      const char *profile = profiles[seed % G_N_ELEMENTS (profiles)];
      const char *fault = rw_practice_faults_get_id (seed / 7 % rw_practice_faults_get_n ());
      g_autoptr (RwProfile) its = practice_profile (profile);
      RwPracticeParams params;

      rw_practice_build (&params, its, seed);
      if (!rw_practice_faults_fit (fault, &params))
        fault = NULL;

      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running (profile, seed, fault, seed % 11 / 10.0, 1 + seed % 5);

      for (guint i = 0; i < rw_profile_get_n_rails (its); i++)
        {
          const char *rail = rw_profile_get_rail (its, i)->id;
          const double lost = practice_dc (cabinet, rail, RW_PLACE_TERMINALS)
                              - practice_dc (cabinet, rail, RW_PLACE_BOARD);
          const double drops = practice_dc (cabinet, rail, RW_PLACE_WIRE)
                               + practice_dc (cabinet, RW_RAIL_GROUND, RW_PLACE_WIRE);

          g_assert_cmpfloat_with_epsilon (lost, drops, 1e-12);
          checked++;
        }
    }
  g_assert_cmpuint (checked, >, 2500);
}

/* Kirchhoff at the board: ground carries what the rails bring, so its drop over its ohms is
 * their sum. And each wire drop over its current is its ohms: the solution is a solution. */
static void
solution_obeys_ohm_and_kirchhoff (void)
{
  for (guint seed = 0; seed < 60; seed++)
    {
      g_autoptr (RwPracticeCabinet) cabinet = practice_running (
          profiles[seed % G_N_ELEMENTS (profiles)], seed, "edge-oxidised", 0.5, 3);
      const RwPracticeModel *model = rw_practice_cabinet_get_true_model (cabinet);
      double amps = 0;

      for (guint i = 0; i < model->params.n_rails; i++)
        {
          const RwPracticeRail *rail = &model->params.rail[i];
          const RwPracticeFlow *flow = &model->state.flow[i];
          const double wanted = rail->load_amps
                                * (1 + model->state.wander_load
                                   + (i == model->params.reference ? model->state.step_amps
                                                                   : 0));
          const double volts = fabs (flow->chip_volts);

          amps += rail->sign * flow->amps;
          g_assert_cmpfloat_with_epsilon (
              flow->terminal_volts - flow->finger_volts,
              rail->sign * flow->amps * rw_practice_path_ohms (&rail->path, &model->state),
              1e-9);
          g_assert_cmpint (model->state.board, ==, RW_PRACTICE_BOARD_RUNNING);
          g_assert_cmpfloat_with_epsilon (
              flow->amps,
              wanted * (1 - rail->load_follow + rail->load_follow * volts / rail->nominal),
              1e-8);
        }
      g_assert_cmpfloat_with_epsilon (
          model->state.ground_volts,
          amps * rw_practice_path_ohms (&model->params.ground, &model->state), 1e-9);
    }
}

/* +12 moves its turns ratio, 2.2 to 2.5 V per volt, all along the trim; −5 about 1. */
static void
trim_moves_followers_by_their_turns (void)
{
  for (guint64 seed = 1; seed <= 20; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running ("classic-5-12-m5", seed, NULL, 0, 3);
      const RwPracticeModel *model = rw_practice_cabinet_get_true_model (cabinet);
      const double v5 = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS);
      const double v12 = practice_dc (cabinet, "p12", RW_PLACE_TERMINALS);
      const double m5 = practice_dc (cabinet, "m5", RW_PLACE_TERMINALS);

      rw_practice_cabinet_turn_trim_volts (cabinet, 0.10);
      rw_practice_cabinet_advance (cabinet, 1);

      const double by = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS) - v5;
      const double slope = (practice_dc (cabinet, "p12", RW_PLACE_TERMINALS) - v12) / by;

      g_assert_cmpfloat_with_epsilon (by, 0.10, 0.006);
      g_assert_cmpfloat_with_epsilon (slope, model->params.rail[1].turns, 0.06);
      g_assert_cmpfloat (slope, >, 2.1);
      g_assert_cmpfloat (slope, <, 2.5);
      g_assert_cmpfloat_with_epsilon (
          (practice_dc (cabinet, "m5", RW_PLACE_TERMINALS) - m5) / by, -1.0, 0.12);
    }
}

/* A rail with a regulator of its own and an unregulated one do not care. */
static void
trim_leaves_other_rails_alone (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running ("linear-5-audio", 5, NULL, 0, 3);
  const double raw = practice_dc (cabinet, "raw12", RW_PLACE_TERMINALS);
  const double board = practice_dc (cabinet, "p5", RW_PLACE_BOARD);

  rw_practice_cabinet_turn_trim_volts (cabinet, 0.10);
  rw_practice_cabinet_advance (cabinet, 1);
  g_assert_cmpfloat_with_epsilon (practice_dc (cabinet, "p5", RW_PLACE_BOARD), board + 0.10,
                                  0.006);
  g_assert_cmpfloat_with_epsilon (practice_dc (cabinet, "raw12", RW_PLACE_TERMINALS), raw,
                                  0.01);
}

/* Cross-regulation: more load on +5 lifts +12. */
static void
reference_load_lifts_the_followers (void)
{
  g_autoptr (RwPracticeCabinet) cabinet = practice_running ("switcher-5-12", 4, NULL, 0, 3);
  RwPracticeModel heavy = *rw_practice_cabinet_get_true_model (cabinet);
  const double before = practice_dc (cabinet, "p12", RW_PLACE_TERMINALS);

  heavy.params.rail[0].load_amps += 1;
  rw_practice_circuit_solve (&heavy);
  g_assert_cmpfloat (
      rw_practice_model_get_volts (&heavy, "p12", RW_PLACE_TERMINALS, RW_KIND_DC), >,
      before + 0.02);
}

static void
board_out_sinks_twelve_and_frees_five (void)
{
  for (guint64 seed = 1; seed <= 20; seed++)
    {
      g_autoptr (RwPracticeCabinet)
          cabinet = practice_running ("classic-5-12-m5", seed, NULL, 0, 5);
      const double v5 = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS);
      const double v12 = practice_dc (cabinet, "p12", RW_PLACE_TERMINALS);

      practice_pull_board (cabinet, 5);
      g_assert_cmpfloat (practice_dc (cabinet, "p12", RW_PLACE_TERMINALS), <, v12 - 0.05);
      g_assert_cmpfloat (practice_dc (cabinet, "p12", RW_PLACE_TERMINALS), >, 10.0);
      g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_TERMINALS), >, v5);
      g_assert_cmpfloat (practice_dc (cabinet, "p5", RW_PLACE_TERMINALS), <, v5 + 0.10);
      g_assert_true (isnan (practice_dc (cabinet, "p5", RW_PLACE_BOARD)));
      g_assert_true (isnan (practice_dc (cabinet, RW_RAIL_GROUND, RW_PLACE_WIRE)));
    }
}

/* Without its bleed resistor it ticks: +5 jumps to about 2 V once or twice a second. */
static void
no_load_at_all_makes_it_tick (void)
{
  g_autoptr (RwPracticeCabinet)
      cabinet = practice_running ("classic-5-12-m5", 3, "minimum-load-missing", 1, 5);
  double highest = 0;
  guint rises = 0;
  gboolean above = FALSE;

  g_assert_false (rw_practice_cabinet_get_ticking (cabinet));
  practice_pull_board (cabinet, 5);
  g_assert_true (rw_practice_cabinet_get_ticking (cabinet));
  g_assert_true (rw_practice_cabinet_has_symptom (cabinet, "supply-ticks"));
  for (guint i = 0; i < 1000; i++)
    {
      rw_practice_cabinet_advance (cabinet, 0.01);

      const double v5 = practice_dc (cabinet, "p5", RW_PLACE_TERMINALS);

      highest = MAX (highest, v5);
      rises += !above && v5 > 1;
      above = v5 > 1;
    }
  g_assert_cmpfloat (highest, >, 1.5);
  g_assert_cmpfloat (highest, <, 2.5);
  g_assert_cmpuint (rises, >=, 10);
  g_assert_cmpuint (rises, <=, 20);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/circuit/" name, func)
  ADD ("followers-obey-turns-and-diodes", followers_obey_turns_and_diodes);
  ADD ("loads-move-intercepts-not-slopes", loads_move_intercepts_not_slopes);
  ADD ("wire-pair-loses-what-the-table-says", wire_pair_loses_what_the_table_says);
  ADD ("contact-loses-what-the-table-says", contact_loses_what_the_table_says);
  ADD ("poor-ground-weakens-plus-and-strengthens-minus",
       poor_ground_weakens_plus_and_strengthens_minus);
  ADD ("sense-holds-the-board-and-lifts-the-terminals",
       sense_holds_the_board_and_lifts_the_terminals);
  ADD ("load-follows-its-line", load_follows_its_line);
  ADD ("raw-capacitor-swings-as-published", raw_capacitor_swings_as_published);
  ADD ("averaging-meter-reads-a-sawtooth", averaging_meter_reads_a_sawtooth);
  ADD ("dropout-costs-what-it-cuts", dropout_costs_what_it_cuts);
  ADD ("overload-sinks-all-rails-together", overload_sinks_all_rails_together);
  ADD ("followers-sink-without-reference-load", followers_sink_without_reference_load);
  ADD ("drops-add-up-in-a-thousand-cabinets", drops_add_up_in_a_thousand_cabinets);
  ADD ("solution-obeys-ohm-and-kirchhoff", solution_obeys_ohm_and_kirchhoff);
  ADD ("trim-moves-followers-by-their-turns", trim_moves_followers_by_their_turns);
  ADD ("trim-leaves-other-rails-alone", trim_leaves_other_rails_alone);
  ADD ("reference-load-lifts-the-followers", reference_load_lifts_the_followers);
  ADD ("board-out-sinks-twelve-and-frees-five", board_out_sinks_twelve_and_frees_five);
  ADD ("no-load-at-all-makes-it-tick", no_load_at_all_makes_it_tick);
#undef ADD
  return g_test_run ();
}
