/* test-setups.c: setups as numbers, and what a change costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "job-fixtures.h"
#include "rw-setups.h"

static guint
setup (RwSaid power,
       RwSaid board,
       RwSaid warm)
{
  return rw_setups_index ((RwSetup){ power, board, warm });
}

static void
test_nothing_said_is_off_fitted_cold (void)
{
  g_assert_cmpuint (setup (RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT), ==,
                    setup (RW_SAID_NO, RW_SAID_YES, RW_SAID_NO));
}

static void
test_minutes_of_a_change (void)
{
  const guint off = setup (RW_SAID_NO, RW_SAID_YES, RW_SAID_NO);
  const guint on = setup (RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  const guint on_bare = setup (RW_SAID_YES, RW_SAID_NO, RW_SAID_NO);
  const guint off_bare = setup (RW_SAID_NO, RW_SAID_NO, RW_SAID_NO);
  const guint on_warm = setup (RW_SAID_YES, RW_SAID_YES, RW_SAID_YES);

  g_assert_cmpfloat (rw_setups_minutes (off, on), ==, 0.5);
  g_assert_cmpfloat (rw_setups_minutes (on, off), ==, 2);
  g_assert_cmpfloat (rw_setups_minutes (off, off_bare), ==, 3);
  g_assert_cmpfloat (rw_setups_minutes (on, off_bare), ==, 3);
  g_assert_cmpfloat (rw_setups_minutes (on, on_bare), ==, 3.5);
  g_assert_cmpfloat (rw_setups_minutes (on, on_warm), ==, 20);
  g_assert_cmpfloat (rw_setups_minutes (off, on_warm), ==, 20.5);
  g_assert_cmpfloat (rw_setups_minutes (off_bare, on_warm), ==, 23.5);
}

static void
test_staying_is_free_and_detours_never_cheaper (void)
{
  for (guint a = 0; a < RW_N_SETUPS; a++)
    for (guint b = 0; b < RW_N_SETUPS; b++)
      {
        g_assert_true ((rw_setups_minutes (a, b) == 0) == (a == b));
        for (guint c = 0; c < RW_N_SETUPS; c++)
          g_assert_cmpfloat (rw_setups_minutes (a, b), <=,
                             rw_setups_minutes (a, c) + rw_setups_minutes (c, b) + 1e-12);
      }
}

/* A number and its setup are the same thing, and the nearest of those wanted is the one that costs least. */
static void
test_the_nearest_wanted_costs_least (void)
{
  const guint on = setup (RW_SAID_YES, RW_SAID_YES, RW_SAID_NO);
  const guint on_bare = setup (RW_SAID_YES, RW_SAID_NO, RW_SAID_NO);
  const guint on_warm = setup (RW_SAID_YES, RW_SAID_YES, RW_SAID_YES);

  for (guint a = 0; a < RW_N_SETUPS; a++)
    g_assert_cmpuint (rw_setups_index (rw_setups_get_setup (a)), ==, a);
  g_assert_cmpuint (rw_setups_find_nearest (on, 0), ==, on);
  g_assert_cmpuint (rw_setups_find_nearest (on, 0xff), ==, on);
  g_assert_cmpuint (rw_setups_find_nearest (on, 1u << on_warm | 1u << on_bare), ==, on_bare);
  for (guint from = 0; from < RW_N_SETUPS; from++)
    for (guint wanted = 1; wanted < 1u << RW_N_SETUPS; wanted++)
      {
        const guint best = rw_setups_find_nearest (from, wanted);

        g_assert_true ((wanted & 1u << best) != 0);
        for (guint to = 0; to < RW_N_SETUPS; to++)
          if ((wanted & 1u << to) != 0)
            g_assert_cmpfloat (rw_setups_minutes (from, best), <=, rw_setups_minutes (from, to));
      }
}

static void
test_checks_want_setups (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  const RwCheck *bare = rw_knowledge_find_check (knowledge, "bare");
  const RwCheck *inside = rw_knowledge_find_check (knowledge, "inside");

  const guint cold = setup (RW_SAID_YES, RW_SAID_NO, RW_SAID_NO);
  const guint warm = setup (RW_SAID_YES, RW_SAID_NO, RW_SAID_YES);

  g_assert_cmpuint (rw_setups_wanted (bare), ==, 1u << cold | 1u << warm);
  g_assert_cmpuint (rw_setups_wanted (inside), ==, 255);
  g_assert_cmpuint (rw_setups_strictness (bare), ==, 2);
  g_assert_true (rw_setups_match (bare, (RwSetup){ RW_SAID_YES, RW_SAID_NO, RW_SAID_NO }));
  g_assert_false (rw_setups_match (bare, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_NO }));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/setups/nothing said is off, fitted, cold",
                   test_nothing_said_is_off_fitted_cold);
  g_test_add_func ("/setups/minutes of a change", test_minutes_of_a_change);
  g_test_add_func ("/setups/staying is free, detours never cheaper",
                   test_staying_is_free_and_detours_never_cheaper);
  g_test_add_func ("/setups/the nearest wanted costs least", test_the_nearest_wanted_costs_least);
  g_test_add_func ("/setups/checks want setups", test_checks_want_setups);
  return g_test_run ();
}
