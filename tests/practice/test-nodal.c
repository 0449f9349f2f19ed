/* test-nodal.c: the circuit against a solver that knows nothing of it, and against arithmetic of the trade.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "nodal-cabinet.h"
#include "nodal-solver.h"
#include "practice-fixtures.h"
#include "rw-practice-circuit.h"

static const char *const profiles[] = { "classic-5-12-m5",   "dram-5-12-m5",  "linear-5-audio",
                                        "switcher-5-12-m12", "switcher-5-12", "switcher-5-12-24" };

/* --- the solver itself --------------------------------------------------------------------------- */

/* Divider: 10 V over 2 Ω and 3 Ω: 6 V, 2 A. A load of 1 A that does not care for its volts behind 1 Ω from 5 V: 4 V.
 * One that follows them fully, 1 A at 5 V, is 5 Ω: 5·5/6 V. The same where only 2 V are left, below half: a resistor. */
static void
solver_of_the_textbook (void)
{
  NodalCircuit c;
  guint source;

  nodal_start (&c, 3);
  source = nodal_source (&c, 1, 0, 10);
  nodal_resistor (&c, 1, 2, 2);
  nodal_resistor (&c, 2, 0, 3);
  g_assert_true (nodal_solve (&c));
  g_assert_cmpfloat_with_epsilon (nodal_volts (&c, 2), 6, 1e-12);
  g_assert_cmpfloat_with_epsilon (nodal_amps (&c, source), 2, 1e-12);

  for (guint follow = 0; follow < 2; follow++)
    {
      nodal_start (&c, 3);
      nodal_source (&c, 1, 0, 5);
      nodal_resistor (&c, 1, 2, 1);
      nodal_load (&c, 2, 0, 1, 5, follow);
      c.x[2] = 5;
      g_assert_true (nodal_solve (&c));
      g_assert_cmpfloat_with_epsilon (nodal_volts (&c, 2), follow ? 25.0 / 6 : 4, 1e-9);
    }

  nodal_start (&c, 3);
  nodal_source (&c, 1, 0, 2);
  nodal_resistor (&c, 1, 2, 1);
  nodal_load (&c, 2, 0, 1, 5, 0); /* 1 A at 2.5 V: 2.5 Ω */
  g_assert_true (nodal_solve (&c));
  g_assert_cmpfloat_with_epsilon (nodal_volts (&c, 2), 2 * 2.5 / 3.5, 1e-9);
}

/* An unbalanced bridge (Wheatstone): 10 V, arms 1, 2 and 3, 4 Ω, 5 Ω across. By hand: node equations
 * (1 + 1/2 + 1/5)·a − b/5 = 10 and −a/5 + (1/3 + 1/4 + 1/5)·b = 10/3, solved by their determinant. A source that
 * follows another's volts and amperes: 2·6 V + 0.5 Ω·2 A = 13 V. */
static void
solver_of_bridges_and_followers (void)
{
  const double det = 1.7 * (47.0 / 60) - 0.04;
  NodalCircuit c;
  guint first, second;

  nodal_start (&c, 4);
  nodal_source (&c, 1, 0, 10);
  nodal_resistor (&c, 1, 2, 1);
  nodal_resistor (&c, 2, 0, 2);
  nodal_resistor (&c, 1, 3, 3);
  nodal_resistor (&c, 3, 0, 4);
  nodal_resistor (&c, 2, 3, 5);
  g_assert_true (nodal_solve (&c));
  g_assert_cmpfloat_with_epsilon (nodal_volts (&c, 2), (10 * 47.0 / 60 + 10.0 / 3 / 5) / det, 1e-12);
  g_assert_cmpfloat_with_epsilon (nodal_volts (&c, 3), (1.7 * 10.0 / 3 + 10 * 0.2) / det, 1e-12);

  nodal_start (&c, 4);
  first = nodal_source (&c, 1, 0, 10);
  second = nodal_source (&c, 3, 0, 0);
  nodal_resistor (&c, 1, 2, 2);
  nodal_resistor (&c, 2, 0, 3);
  nodal_gain_volts (&c, second, 2, 2);
  nodal_gain_amps (&c, second, first, 0.5);
  nodal_resistor (&c, 3, 0, 1);
  g_assert_true (nodal_solve (&c));
  g_assert_cmpfloat_with_epsilon (nodal_volts (&c, 3), 13, 1e-12);
  g_assert_cmpfloat_with_epsilon (nodal_amps (&c, second), 13, 1e-12);
}

/* --- agreement ----------------------------------------------------------------------------------- */

static void
assert_agrees (double      ours,
               double      theirs,
               double      least,
               const char *what,
               guint       seed,
               const char *fault)
{
  if (fabs (ours - theirs) <= 0.005 * fabs (theirs) + least)
    return;
  g_test_message ("seed %u, fault %s: %s is %.6f, nodal analysis says %.6f", seed, fault, what, ours, theirs);
  g_test_fail ();
}

/* At terminals, fingers, chips and ground, to half a per cent; a hundredth of a millivolt where next to nothing is. */
static void
compare (RwPracticeCabinet *cabinet,
         guint              seed,
         const char        *fault)
{
  const RwPracticeModel *model = rw_practice_cabinet_get_true_model (cabinet);
  NodalAnswer answer;

  if (!nodal_cabinet_solve (&model->params, &model->state, &answer))
    {
      g_test_message ("seed %u, fault %s: no nodal solution", seed, fault);
      g_test_fail ();
      return;
    }
  assert_agrees (model->state.ground_volts, answer.ground, 1e-5, "ground", seed, fault);
  for (guint i = 0; i < model->params.n_rails; i++)
    {
      const RwPracticeFlow *flow = &model->state.flow[i];

      assert_agrees (flow->terminal_volts, answer.terminal[i], 1e-5, model->params.rail[i].id, seed, fault);
      if (!model->state.fitted || model->params.rail[i].path.open)
        continue;
      assert_agrees (flow->finger_volts, answer.finger[i], 1e-5, "finger", seed, fault);
      assert_agrees (flow->chip_volts, answer.chip[i], 1e-5, "chip", seed, fault);
    }
}

static RwPracticeCabinet *
random_cabinet (guint        seed,
                const char **fault)
{
  const char *profile = profiles[seed % G_N_ELEMENTS (profiles)];
  g_autoptr (RwProfile) its = practice_profile (profile);
  const RwPracticeFault one = { rw_practice_faults_get_id (seed * 7 % rw_practice_faults_get_n ()),
                                seed * 13 % 21 / 20.0 };
  RwPracticeCabinet *cabinet = seed % 8 != 0 ? rw_practice_cabinet_new (its, seed, &one, 1, NULL, NULL) : NULL;

  *fault = cabinet != NULL ? one.id : "none";
  return cabinet != NULL ? cabinet : practice_cabinet (profile, seed, NULL, 0);
}

static void
agrees_on_random_cabinets (void)
{
  guint faulty = 0;

  for (guint seed = 0; seed < 240; seed++)
    {
      const char *fault;
      g_autoptr (RwPracticeCabinet) cabinet = random_cabinet (seed, &fault);

      rw_practice_cabinet_set_power (cabinet, TRUE);
      rw_practice_cabinet_advance (cabinet, 1 + seed % 5);
      compare (cabinet, seed, fault);
      faulty += !g_str_equal (fault, "none");
    }
  g_assert_cmpuint (faulty, >, 150);
}

static void
agrees_with_the_board_out_turned_and_warm (void)
{
  for (guint seed = 0; seed < 60; seed++)
    {
      const char *fault;
      g_autoptr (RwPracticeCabinet) cabinet = random_cabinet (seed * 11 + 5, &fault);

      if (seed % 3 == 0)
        rw_practice_cabinet_set_board_fitted (cabinet, FALSE);
      rw_practice_cabinet_turn_trim (cabinet, seed % 7 * 0.1 - 0.3);
      rw_practice_cabinet_set_power (cabinet, TRUE);
      rw_practice_cabinet_advance (cabinet, seed % 4 == 0 ? 400 : 2);
      compare (cabinet, seed * 11 + 5, fault);
    }
}

/* --- arithmetic of the trade --------------------------------------------------------------------- */

static const struct
{
  guint  gauge;
  double milliohms;  /* of a metre at 20 °C */
  double lost[4];    /* mV a metre, out and back, at 1, 3, 5, 8 A */
} wires[] = {
  { 14, 8.3, { 17, 50, 83, 133 } },   { 16, 13.2, { 26, 79, 132, 211 } }, { 18, 21.0, { 42, 126, 210, 336 } },
  { 20, 33.3, { 67, 200, 333, 533 } }, { 22, 53.0, { 106, 318, 530, 848 } }, { 24, 84.2, { 168, 505, 842, 1347 } },
};

static double
lost (RwPracticeModel *model)
{
  return rw_practice_model_get_volts (model, "p5", RW_PLACE_TERMINALS, RW_KIND_DC)
         - rw_practice_model_get_volts (model, "p5", RW_PLACE_BOARD, RW_KIND_DC);
}

/* The table of loop losses, to its last printed digit. */
static void
wires_lose_what_the_table_says (void)
{
  static const double amps[] = { 1, 3, 5, 8 };

  for (guint w = 0; w < G_N_ELEMENTS (wires); w++)
    for (guint a = 0; a < G_N_ELEMENTS (amps); a++)
      {
        RwPracticeModel model;

        practice_bare_switcher (&model, 5.9);
        model.params.rail[0].load_amps = amps[a];
        model.params.rail[0].path.wire_ohms = model.params.ground.wire_ohms = wires[w].milliohms / 1000;
        rw_practice_circuit_solve (&model);
        g_assert_cmpfloat_with_epsilon (lost (&model) * 1000, wires[w].lost[a], 0.5 + 0.003 * wires[w].lost[a]);
      }
}

static const struct
{
  double milliohms;
  double lost[3]; /* mV at 1.25, 2.5, 5 A */
  double watts[3]; /* 0: not printed */
} contacts[] = {
  { 5, { 6, 12, 25 }, { 0, 0, 0.12 } },          { 10, { 12, 25, 50 }, { 0, 0.06, 0.25 } },
  { 20, { 25, 50, 100 }, { 0, 0.12, 0.5 } },     { 50, { 62, 125, 250 }, { 0.08, 0.31, 1.25 } },
  { 100, { 125, 250, 500 }, { 0.16, 0.62, 2.5 } },
};

/* One contact, alone or with three others; the table's digits are cut, not rounded. */
static void
contacts_lose_and_heat_as_the_table_says (void)
{
  static const double amps[] = { 1.25, 2.5, 5 };

  for (guint c = 0; c < G_N_ELEMENTS (contacts); c++)
    for (guint a = 0; a < G_N_ELEMENTS (amps); a++)
      {
        RwPracticeModel model;
        double volts;

        practice_bare_switcher (&model, 5.5);
        model.params.rail[0].load_amps = amps[a];
        model.params.rail[0].path.contact_ohms = contacts[c].milliohms / 1000;
        rw_practice_circuit_solve (&model);
        volts = lost (&model);
        g_assert_cmpfloat_with_epsilon (volts * 1000, contacts[c].lost[a], 0.6);
        if (contacts[c].watts[a] > 0)
          g_assert_cmpfloat_with_epsilon (volts * model.state.flow[0].amps, contacts[c].watts[a], 0.008);
      }
}

/* +5 from 5.00 to 5.20 lifts +12 by 0.47 V and an unregulated −5 by 0.2 V; 2.3 to 2.4 V per volt. */
static void
turns_lift_what_the_trade_says (void)
{
  double v12[2], m5[2];

  for (guint i = 0; i < 2; i++)
    {
      RwPracticeModel model;
      RwPracticeRail *minus = &model.params.rail[2];

      practice_bare_switcher (&model, 5.0 + 0.2 * i);
      model.params.rail[1].turns = (12 + 0.75) / (5 + 0.40);
      minus->turns = (5 + 0.75) / (5 + 0.40);
      minus->nominal = 5;
      rw_practice_circuit_solve (&model);
      v12[i] = fabs (model.state.flow[1].terminal_volts);
      m5[i] = fabs (model.state.flow[2].terminal_volts);
    }
  g_assert_cmpfloat_with_epsilon (v12[0], 12, 1e-9);
  g_assert_cmpfloat_with_epsilon (v12[1] - v12[0], 0.47, 0.005);
  g_assert_cmpfloat_with_epsilon (m5[1] - m5[0], 0.2, 0.015);
  g_assert_cmpfloat ((v12[1] - v12[0]) / 0.2, >, 2.3);
  g_assert_cmpfloat ((v12[1] - v12[0]) / 0.2, <, 2.4);
}

/* 1 m of AWG 18 at 5 A: 105 mV along the one wire. 5 A through an ammeter of 0.03–0.08 Ω: 0.15–0.4 V. */
static void
one_wire_and_one_ammeter (void)
{
  static const double ohms[] = { 0.021, 0.03, 0.08 }, volts[] = { 0.105, 0.15, 0.40 };

  for (guint i = 0; i < G_N_ELEMENTS (ohms); i++)
    {
      RwPracticeModel model;

      practice_bare_switcher (&model, 5.5);
      model.params.rail[0].load_amps = 5;
      model.params.rail[0].path.wire_ohms = ohms[i];
      rw_practice_circuit_solve (&model);
      g_assert_cmpfloat_with_epsilon (rw_practice_model_get_volts (&model, "p5", RW_PLACE_WIRE, RW_KIND_DC), volts[i],
                                      1e-9);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/nodal/" name, func)
  ADD ("solver-of-the-textbook", solver_of_the_textbook);
  ADD ("solver-of-bridges-and-followers", solver_of_bridges_and_followers);
  ADD ("agrees-on-random-cabinets", agrees_on_random_cabinets);
  ADD ("agrees-with-the-board-out-turned-and-warm", agrees_with_the_board_out_turned_and_warm);
  ADD ("wires-lose-what-the-table-says", wires_lose_what_the_table_says);
  ADD ("contacts-lose-and-heat-as-the-table-says", contacts_lose_and_heat_as_the_table_says);
  ADD ("turns-lift-what-the-trade-says", turns_lift_what_the_trade_says);
  ADD ("one-wire-and-one-ammeter", one_wire_and_one_ammeter);
#undef ADD
  return g_test_run ();
}
