/* test-evidence.c: which outcome a reading stands for, and in what share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "job-fixtures.h"
#include "rw-evidence.h"

static RwSpotState
spot (RwPlace place,
      RwKind  kind,
      double  value,
      double  u)
{
  RwSpotState it = { .reading = rw_reading_make ("p5", place, kind, value, 0.001, NULL), .u = u };

  it.reading.over = isnan (value);
  return it;
}

static void
assert_weights (const char        *check,
                const RwSpotState *seen,
                double             a,
                double             b,
                double             c)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  double weights[16] = { 0 };

  g_assert_true (rw_evidence_weigh (rw_knowledge_find_check (knowledge, check), seen, weights));
  g_assert_cmpfloat_with_epsilon (weights[0], a, 1e-12);
  g_assert_cmpfloat_with_epsilon (weights[1], b, 1e-12);
  g_assert_cmpfloat_with_epsilon (weights[2], c, 1e-12);
}

static void
test_clear_value_is_one_outcome (void)
{
  const RwSpotState low = spot (RW_PLACE_BOARD, RW_KIND_DC, 4.5, 0.01);
  const RwSpotState right = spot (RW_PLACE_BOARD, RW_KIND_DC, 5.0, 0);

  assert_weights ("at-board", &low, 1, 0, 0);
  assert_weights ("at-board", &right, 0, 1, 0);
}

/* On the fence of 4.80 V: half and half. One u above it: Φ(1) of the upper outcome. */
static void
test_fence_counts_as_both (void)
{
  const double phi = 0.841344746068543;
  const RwSpotState half = spot (RW_PLACE_BOARD, RW_KIND_DC, 4.8, 0.01);
  const RwSpotState above = spot (RW_PLACE_BOARD, RW_KIND_DC, 4.81, 0.01);

  assert_weights ("at-board", &half, 0.5, 0.5, 0);
  assert_weights ("at-board", &above, 1 - phi, phi, 0);
}

/* Nothing known of the error: "from" is inclusive, "to" is not. */
static void
test_exact_fence_belongs_above (void)
{
  const RwSpotState lower = spot (RW_PLACE_BOARD, RW_KIND_DC, 4.8, 0);
  const RwSpotState upper = spot (RW_PLACE_BOARD, RW_KIND_DC, 5.2, 0);

  assert_weights ("at-board", &lower, 0, 1, 0);
  assert_weights ("at-board", &upper, 0, 0, 1);
}

static void
test_drop_counts_by_size (void)
{
  const RwSpotState forward = spot (RW_PLACE_WIRE, RW_KIND_DC, 0.15, 0.03);
  const RwSpotState backward = spot (RW_PLACE_WIRE, RW_KIND_DC, -0.15, 0.03);
  const RwSpotState exact = spot (RW_PLACE_WIRE, RW_KIND_DC, -0.1, 0);
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  const RwCheck *drop = rw_knowledge_find_check (knowledge, "drop");
  double one[16] = { 0 }, other[16] = { 0 };

  g_assert_true (rw_evidence_weigh (drop, &forward, one));
  g_assert_true (rw_evidence_weigh (drop, &backward, other));
  g_assert_cmpfloat_with_epsilon (one[1], other[1], 1e-12);
  g_assert_cmpfloat_with_epsilon (one[1], 0.952209647727185, 1e-9);
  g_assert_cmpfloat_with_epsilon (one[0] + one[1], 1, 1e-12);
  assert_weights ("drop", &exact, 0, 1, 0);
}

static void
test_overload_of_volts_tells_nothing (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  const RwSpotState over = spot (RW_PLACE_BOARD, RW_KIND_DC, NAN, NAN);
  const RwSpotState open = spot (RW_PLACE_BOARD, RW_KIND_OHMS, NAN, NAN);
  double weights[16] = { 0 };

  g_assert_false (rw_evidence_weigh (rw_knowledge_find_check (knowledge, "at-board"), &over,
                                     weights));

  /* An ohmmeter's is the topmost outcome. */
  g_assert_true (rw_evidence_weigh (rw_knowledge_find_check (knowledge, "at-board"), &open,
                                    weights));
  g_assert_cmpfloat (weights[2], ==, 1);
}

/* --- a supply that comes back --------------------------------------------------------------------- */

/* "tripped" is as likely as "low" until something is seen. */
static const char returning[] =
    "{\"causes\":["
    "{\"id\":\"low\",\"title\":\"L\",\"area\":\"supply\",\"prior\":1,\"part\":\"one\",\"repair\":"
    "{\"title\":\"R\",\"minutes\":5,\"cost\":0,\"hazard\":\"none\",\"who\":\"anyone\"}},"
    "{\"id\":\"tripped\",\"title\":\"T\",\"area\":\"supply\",\"prior\":1,\"part\":\"one\",\"repair\":"
    "{\"title\":\"R\",\"minutes\":5,\"cost\":0,\"hazard\":\"none\",\"who\":\"anyone\"}}],"
    "\"checks\":[{\"id\":\"rest\",\"title\":\"Rest\",\"why\":\"W\",\"minutes\":6,\"hazard\":\"none\",\"who\":\"anyone\","
    "\"how\":[\"H\"],\"setup\":{\"power\":\"off\"},\"returns\":\"back\","
    "\"outcomes\":[{\"id\":\"back\",\"title\":\"Back\"},{\"id\":\"dead\",\"title\":\"Dead\"}],"
    "\"chance\":{\"default\":[0.1,0.9],\"tripped\":[0.9,0.1]}}]}";

static double
chance_of_tripped (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge_from (returning);
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);

  return rw_belief_find_cause (belief, "tripped")->p;
}

static void
read_5_volts (RwSession *job,
              RwPlace    place,
              double     volts)
{
  fixture_reading (job, "p5", place, RW_KIND_DC, volts, 0.01);
}

static void
rest (RwSession *job)
{
  fixture_setup (job, RW_SAID_NO, RW_SAID_NOT, RW_SAID_NOT);
  fixture_setup (job, RW_SAID_YES, RW_SAID_NOT, RW_SAID_NOT);
}

/* 0.9 / (0.9 + 0.1), by the check that would have asked for the rest; and so it stays when it is read once more. */
static void
test_a_supply_that_comes_back_after_a_rest_has_tripped (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT);
  read_5_volts (job, RW_PLACE_TERMINALS, 0.02);
  g_assert_cmpfloat_with_epsilon (chance_of_tripped (job), 0.5, 1e-12);
  rest (job);
  g_assert_cmpfloat_with_epsilon (chance_of_tripped (job), 0.5, 1e-12);
  read_5_volts (job, RW_PLACE_TERMINALS, 5.02);
  g_assert_cmpfloat_with_epsilon (chance_of_tripped (job), 0.9, 1e-12);
  read_5_volts (job, RW_PLACE_TERMINALS, 5.01);
  g_assert_cmpfloat_with_epsilon (chance_of_tripped (job), 0.9, 1e-12);
}

/* What is alive at the board is so at the terminals. */
static void
test_the_board_tells_that_the_terminals_are_alive (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT);
  read_5_volts (job, RW_PLACE_TERMINALS, 0.02);
  rest (job);
  read_5_volts (job, RW_PLACE_BOARD, 4.95);
  g_assert_cmpfloat_with_epsilon (chance_of_tripped (job), 0.9, 1e-12);
}

/* No rest; no life; another load; a contact moved; something mended: nothing follows. */
static void
test_nothing_else_is_a_return (void)
{
  for (guint way = 0; way < 5; way++)
    {
      g_autoptr (RwSession) job = fixture_job ();

      fixture_setup (job, RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT);
      read_5_volts (job, way == 3 ? RW_PLACE_BOARD : RW_PLACE_TERMINALS, 0.02);
      if (way != 0)
        rest (job);
      if (way == 2 || way == 3)
        fixture_setup (job, RW_SAID_NOT, RW_SAID_NO, RW_SAID_NOT);
      if (way == 3)
        fixture_setup (job, RW_SAID_NOT, RW_SAID_YES, RW_SAID_NOT);
      if (way == 4)
        fixture_repair (job, "other", RW_REPAIR_NO_CHANGE);
      read_5_volts (job, way == 3 ? RW_PLACE_BOARD : RW_PLACE_TERMINALS, way == 1 ? 0.9 : 5.0);
      g_assert_cmpfloat_with_epsilon (chance_of_tripped (job), 0.5, 1e-12);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/evidence/a clear value is one outcome", test_clear_value_is_one_outcome);
  g_test_add_func ("/evidence/on the fence counts as both", test_fence_counts_as_both);
  g_test_add_func ("/evidence/an exact fence belongs above", test_exact_fence_belongs_above);
  g_test_add_func ("/evidence/a drop counts by its size", test_drop_counts_by_size);
  g_test_add_func ("/evidence/an overload of volts tells nothing",
                   test_overload_of_volts_tells_nothing);
  g_test_add_func ("/evidence/a-supply-that-comes-back-after-a-rest-has-tripped",
                   test_a_supply_that_comes_back_after_a_rest_has_tripped);
  g_test_add_func ("/evidence/the-board-tells-that-the-terminals-are-alive",
                   test_the_board_tells_that_the_terminals_are_alive);
  g_test_add_func ("/evidence/nothing-else-is-a-return", test_nothing_else_is_a_return);
  return g_test_run ();
}
