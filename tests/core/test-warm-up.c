/* test-warm-up.c: drift from power on, its error, and where it is lost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "bench-play.h"
#include "rw-robust.h"
#include "rw-warm-up.h"

static RwWarmUp
read_script (const char *script,
             double      now)
{
  g_autoptr (RwSession) session = bench_play (script, NULL);

  return rw_warm_up_read (session, "p5", RW_PLACE_BOARD, now);
}

static void
test_good_and_bad (void)
{
  const RwWarmUp good = read_script ("m3;fitted;on;p5 board 5.020;wait 297;p5 board 5.018;wait 597;p5 board 5.016;"
                                     "wait 897;p5 board 5.015;wait 1797;p5 board 5.015", 4000);
  const RwWarmUp bad = read_script ("m3;fitted;on;p5 board 5.020;wait 297;p5 board 4.980;wait 597;p5 board 4.940;"
                                    "wait 897;p5 board 4.910;wait 1797;p5 board 4.890", 4000);
  g_autofree char *words = rw_warm_up_describe (&bad, 5);

  g_assert_cmpint (good.verdict, ==, RW_WARM_UP_GOOD);
  g_assert_cmpint (bad.verdict, ==, RW_WARM_UP_BAD);
  g_assert_cmpfloat_with_epsilon (bad.drift, -0.13, 0.02);
  g_assert_cmpfloat (bad.u, >, 0);
  g_assert_nonnull (strstr (words, "too much"));
  for (int i = 0; i < RW_WARM_UP_N_POINTS; i++)
    g_assert_cmpint (good.points[i].state, ==, RW_WARM_UP_IN);
}

/* Two counts of 10 mV cannot show that 20 mV is good or bad. */
static void
test_coarse (void)
{
  const RwWarmUp coarse = read_script ("step 0.01;m1;on;p5 board 5.02;wait 1000;p5 board 5.00", 1200);

  g_assert_cmpint (coarse.verdict, ==, RW_WARM_UP_UNSURE);
  g_assert_cmpfloat_with_epsilon (coarse.drift, -0.02, 1e-9);
  g_assert_cmpfloat (coarse.u, >=, M_SQRT2 * 0.02 / sqrt (3) * (1 - 1e-9));
}

static void
test_runs (void)
{
  g_assert_cmpuint (read_script ("on;p5 board 5.02;wait 60;p5 board 5.03;turn;p5 board 5.05", 900).n, ==, 1);
  g_assert_cmpuint (read_script ("on;p5 board 5.02;off;on;p5 board 5.03;p5 terminals 5.1", 900).n, ==, 1);
  g_assert_cmpuint (read_script ("on;p5 board 5.02;p5 board 5.03;undo", 900).n, ==, 1);
  g_assert_cmpuint (read_script ("on;m1;p5 board 5.02;m2;p5 board 5.03;p5 board 5.03", 900).n, ==, 2);
  g_assert_false (read_script ("on;p5 board 5.02;off", 900).running);
  g_assert_true (isnan (read_script ("fitted", 900).started));
  g_assert_cmpint (read_script ("on;p5 board 5.02;p5 board 4.5", 900).verdict, ==, RW_WARM_UP_TOO_FEW);
}

static void
test_points (void)
{
  const RwWarmUp now = read_script ("on;p5 board 5.02", 16 * 60);

  g_assert_cmpint (now.points[0].state, ==, RW_WARM_UP_IN);
  g_assert_cmpint (now.points[1].state, ==, RW_WARM_UP_OVERDUE);
  g_assert_cmpint (now.points[2].state, ==, RW_WARM_UP_DUE);
  g_assert_cmpint (now.points[3].state, ==, RW_WARM_UP_LATER);
}

/* 5.10 → 5.00 with tau 10 min, a reading a minute. */
static void
test_approach (void)
{
  g_autoptr (GString) script = g_string_new ("m3;on");

  for (int i = 0; i < 60; i++)
    g_string_append_printf (script, ";p5 board %.3f;wait 57", 5 + 0.1 * exp (-i / 10.0));

  const RwWarmUp fit = read_script (script->str, 4000);

  g_assert_true (fit.approach && fit.settled);
  g_assert_cmpfloat_with_epsilon (fit.tau, 600, 40);
  g_assert_cmpfloat_with_epsilon (fit.final, 5, 0.002);
  g_assert_cmpfloat_with_epsilon (fit.drift, -0.0997, 0.003);
  g_assert_cmpfloat_with_epsilon (fit.settle_at, 600 * log (0.1 / 0.005), 150);

  const RwWarmUp early = read_script ("m3;on;p5 board 5.1;wait 60;p5 board 5.095;wait 60;p5 board 5.09", 400);

  g_assert_false (early.approach || early.settled);
}

/* Correlated noise: the truth lies within 1.96 u about nineteen times in twenty, and n_eff is far below n. */
static void
test_cover (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (8);
  guint within = 0;
  double worth = 0;

  for (int run = 0; run < 200; run++)
    {
      g_autoptr (GString) script = g_string_new ("step 0.0001;m3;on");
      double e = 0;

      for (int i = 0; i < 120; i++)
        {
          e = 0.6 * e + 0.003 * g_rand_double_range (random, -1, 1);
          g_string_append_printf (script, ";p5 board %.4f;wait 12", 5 + 0.05 * i / 119 + e);
        }

      const RwWarmUp fit = read_script (script->str, 4000);

      within += fabs (fit.drift - 0.05) <= 1.96 * fit.u;
      worth += fit.n_eff / 200;
    }
  g_test_message ("%u of 200 within, n_eff %.1f", within, worth);
  g_assert_cmpuint (within, >=, 176);
  g_assert_cmpfloat (worth, <, 60);
}

static void
test_where (void)
{
  const RwWarmUp still = { .drift = -0.002, .u = 0.003, .verdict = RW_WARM_UP_GOOD };
  const RwWarmUp falls = { .drift = -0.12, .u = 0.004, .verdict = RW_WARM_UP_BAD };
  const RwWarmUp vague = { .drift = -0.12, .u = 0.09, .verdict = RW_WARM_UP_UNSURE };
  const RwWarmUp rises = { .drift = 0.12, .u = 0.004, .verdict = RW_WARM_UP_BAD };
  const RwWarmUp none = { .drift = (double) NAN, .u = (double) NAN, .verdict = RW_WARM_UP_TOO_FEW };

  g_assert_cmpint (rw_warm_up_where (&falls, &falls, 5), ==, RW_WARM_UP_WHERE_SUPPLY);
  g_assert_cmpint (rw_warm_up_where (&falls, &still, 5), ==, RW_WARM_UP_WHERE_WIRING);
  g_assert_cmpint (rw_warm_up_where (&falls, &none, 5), ==, RW_WARM_UP_WHERE_UNKNOWN);
  g_assert_cmpint (rw_warm_up_where (&falls, &vague, 5), ==, RW_WARM_UP_WHERE_UNKNOWN);
  g_assert_cmpint (rw_warm_up_where (&still, &still, 5), ==, RW_WARM_UP_WHERE_STILL);
  g_assert_cmpint (rw_warm_up_where (&rises, &rises, -5), ==, RW_WARM_UP_WHERE_SUPPLY);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/warm-up/good and bad drifts are told apart", test_good_and_bad);
  g_test_add_func ("/warm-up/a coarse meter shows neither", test_coarse);
  g_test_add_func ("/warm-up/trim, power and meters begin anew", test_runs);
  g_test_add_func ("/warm-up/readings are in, due or overdue", test_points);
  g_test_add_func ("/warm-up/an approach tells when it settles", test_approach);
  g_test_add_func ("/warm-up/errors of correlated readings hold", test_cover);
  g_test_add_func ("/warm-up/supply or wiring", test_where);
  return g_test_run ();
}
