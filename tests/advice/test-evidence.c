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
  return g_test_run ();
}
