/* test-together.c: how surely dips and marks go together.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "rw-together.h"

static void
test_tail (void)
{
  g_assert_cmpfloat_with_epsilon (rw_binomial_tail (2, 3, 0.5), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (rw_binomial_tail (3, 3, 0.1), 0.001, 1e-15);
  g_assert_cmpfloat_with_epsilon (rw_binomial_tail (8, 10, 0.3), 0.0015903864, 1e-10);
  g_assert_cmpfloat (rw_binomial_tail (0, 3, 0), ==, 1);
  g_assert_cmpfloat (rw_binomial_tail (4, 3, 0.5), ==, 0);
}

/* By hand: 5 windows of 1 s in 40 s, two of which overlap by half: 4.5/40. */
static void
test_by_hand (void)
{
  const double dips[] = { 5, 10, 10.5, 20, 30 };
  const double marks[] = { 5.4, 11.2, 20, 30.9, 5.9 };
  const RwTogether all = rw_together_test (dips, 5, marks, 5, 0, 40, 1);
  g_autofree char *words = rw_together_describe (&all);

  g_assert_cmpuint (all.n_hits, ==, 5);
  g_assert_cmpfloat_with_epsilon (all.share, 4.5 / 40, 1e-12);
  g_assert_cmpfloat_with_epsilon (all.p / pow (4.5 / 40, 5), 1, 1e-9);
  g_assert_cmpint (all.verdict, ==, RW_TOGETHER_SURE);
  g_assert_nonnull (strstr (words, "once in 50\u202f000"));

  const RwTogether few = rw_together_test (dips, 5, marks, 1, 0, 40, 1);

  g_assert_cmpint (few.verdict, ==, RW_TOGETHER_TOO_FEW);

  const double strangers[] = { 1, 2, 3, 15, 25, 38 };
  const RwTogether none = rw_together_test (dips, 5, strangers, 6, 0, 40, 1);

  g_assert_cmpuint (none.n_hits, ==, 0);
  g_assert_cmpfloat (none.p, ==, 1);
  g_assert_cmpint (none.verdict, ==, RW_TOGETHER_NO);
}

/* Strangers: at every level p is at most as often below it as the level says (within 4 errors). */
static void
test_size (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  static const double levels[] = { 0.01, 0.05, 0.2, 0.5 };
  guint below[4] = { 0 };
  const guint runs = 20000;

  for (guint run = 0; run < runs; run++)
    {
      double dips[12], marks[10], t = 0;
      const guint n = (guint) g_rand_int_range (random, 3, 11);
      guint n_dips = 0;

      while (n_dips < 12 && (t += -log (1 - g_rand_double (random)) * 10) < 120)
        dips[n_dips++] = t;
      for (guint i = 0; i < n; i++)
        marks[i] = g_rand_double_range (random, 0, 120);

      const RwTogether test = rw_together_test (dips, n_dips, marks, n, 0, 120, 2);

      for (int i = 0; i < 4; i++)
        below[i] += test.p <= levels[i];
    }
  for (int i = 0; i < 4; i++)
    g_assert_cmpfloat (below[i], <=, levels[i] * runs + 4 * sqrt (levels[i] * runs));
  g_assert_cmpuint (below[1], >, 200); /* and it is not deaf */
}

static void
test_nothing (void)
{
  const double marks[] = { 1, 2, 3 };
  const RwTogether silent = rw_together_test (NULL, 0, marks, 3, 0, 10, 1);
  const RwTogether unmarked = rw_together_test (marks, 3, NULL, 0, 0, 10, 1);
  const RwTogether unwatched = rw_together_test (marks, 3, marks, 3, 5, 5, 1);
  g_autofree char *a = rw_together_describe (&silent);
  g_autofree char *b = rw_together_describe (&unmarked);

  g_assert_cmpfloat (silent.p, ==, 1);
  g_assert_nonnull (strstr (a, "no dip was seen"));
  g_assert_nonnull (strstr (b, "No reset was marked"));
  g_assert_cmpint (unwatched.verdict, ==, RW_TOGETHER_TOO_FEW);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/together/binomial tails are exact", test_tail);
  g_test_add_func ("/together/overlapping windows count once", test_by_hand);
  g_test_add_func ("/together/strangers are seldom called together", test_size);
  g_test_add_func ("/together/nothing seen says nothing", test_nothing);
  return g_test_run ();
}
