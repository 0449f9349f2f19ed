/* test-warm-up-step.c: a step is no drift, and a drift no step.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fixtures.h"
#include "bench-play.h"
#include "rw-warm-up-private.h"

enum
{
  RUNS = 300,
  MOST = 200
};

typedef double (*Truth) (double minutes);

static GRand *chance;

static double
normal (void)
{
  double sum = -6;

  for (int i = 0; i < 12; i++)
    sum += g_rand_double (chance);
  return sum;
}

typedef struct
{
  Truth  truth;  /* volts at a minute */
  guint  n;      /* readings over an hour */
  double noise;  /* volts */
  double memory; /* of the noise, from one reading to the next */
  double digit;  /* volts */
} Series;

static RwWarmUp
warm_up (const Series *series)
{
  RwWarmUpReading readings[MOST];
  RwWarmUp self = { .n = series->n };
  double e = series->noise * normal ();

  for (guint i = 0; i < series->n; i++)
    {
      const double minute = 60.0 * i / (series->n - 1);
      const double value = series->truth (minute) + e;

      readings[i] = (RwWarmUpReading){ 60 * minute, series->digit * round (value / series->digit), series->digit / sqrt (12),
                                       series->digit, 0, NULL, i + 1 };
      e = series->memory * e + series->noise * sqrt (1 - series->memory * series->memory) * normal ();
    }
  rw_warm_up_fit (&self, readings, series->n, 5);
  return self;
}

static guint
count_steps (const Series *series)
{
  guint n = 0;

  for (int run = 0; run < RUNS; run++)
    n += !isnan (warm_up (series).step);
  return n;
}

static double still (double minutes)       { return 5 + 0 * minutes; }
static double slow (double minutes)        { return 5 - 0.001 * minutes; }
static double steep (double minutes)       { return 5 - 0.005 * minutes; }
static double quick (double minutes)       { return 5 + 0.1 * exp (-minutes / 3); }
static double usual (double minutes)       { return 5 + 0.1 * exp (-minutes / 12); }
static double lazy (double minutes)        { return 5 + 0.1 * exp (-minutes / 40); }
static double two_paces (double minutes)   { return 5 + 0.05 * exp (-minutes / 4) + 0.08 * exp (-minutes / 50); }
static double there_and_back (double minutes) { return 5 - 0.06 * (1 - exp (-minutes / 5)) + 0.05 * (1 - exp (-minutes / 40)); }
static double late (double minutes)        { return 5 - 0.08 / (1 + exp (-(minutes - 30) / 6)); }
static double cycling (double minutes)     { return 5 + 0.01 * sin (minutes / 60 * 2 * M_PI); }

static const struct
{
  const char *name;
  Truth       truth;
} drifts[] = { { FALSE, still }, { "slow line", slow }, { "steep line", steep }, { "tau 3 min", quick }, { "tau 12 min", usual },
               { "tau 40 min", lazy }, { "two paces", two_paces }, { "there and back", there_and_back }, { "S", late },
               { "a wave", cycling } };

/* Not more than one series in a hundred of any kind: a still one, a line, approaches of one and of two paces, an S; with
 * 1 and 10 mV of last digit, 8 to 120 readings, and noise that remembers. */
static void
test_false_alarms (void)
{
  static const Series kinds[] = { { NULL, 8, 0.002, 0, 0.001 }, { NULL, 13, 0.003, 0, 0.001 }, { NULL, 61, 0.003, 0, 0.001 },
                                  { NULL, 61, 0.0002, 0, 0.001 }, { NULL, 120, 0.003, 0.6, 0.001 },
                                  { NULL, 61, 0.005, 0.9, 0.001 }, { NULL, 31, 0.003, 0, 0.01 } };
  guint all = 0, worst = 0;

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    for (guint i = 0; i < G_N_ELEMENTS (drifts); i++)
      {
        Series series = kinds[k];
        guint n;

        series.truth = drifts[i].truth;
        n = count_steps (&series);
        all += n;
        if (n > 0)
          g_test_message ("%s, %u readings, noise %g mV with memory %g, digit %g mV: %u of %d", drifts[i].name, series.n,
                          1000 * series.noise, series.memory, 1000 * series.digit, n, RUNS);
        worst = MAX (worst, n);
      }
  g_test_message ("%u false of %u", all, (guint) (G_N_ELEMENTS (kinds) * G_N_ELEMENTS (drifts) * RUNS));
  g_assert_cmpuint (worst, <=, RUNS / 100);
}

static double lets_go (double minutes)     { return 5.02 - (minutes > 12.3 ? 0.06 : 0); }
static double beside (double minutes)      { return 5.02 - 0.001 * minutes + (minutes > 40.5 ? 0.08 : 0); }
static double small_step (double minutes)  { return 5.02 - (minutes > 30.2 ? 0.02 : 0); }

/* Found; of the right size nine times in ten at least, six in seven where noise remembers (its memory is only known from
 * the readings themselves); and between the right minutes. */
static void
check_found (const Series *series,
             double        step,
             double        minute,
             guint         least)
{
  guint found = 0, sized = 0, placed = 0;

  for (int run = 0; run < RUNS; run++)
    {
      const RwWarmUp self = warm_up (series);

      if (isnan (self.step))
        continue;
      found++;
      sized += fabs (self.step - step) <= 1.96 * self.u_step;
      placed += self.step_from <= 60 * minute && self.step_to >= 60 * minute;
      g_assert_true (self.step_from <= self.step_at && self.step_at <= self.step_to);
    }
  g_test_message ("found %u, sized %u, placed %u of %d", found, sized, placed, RUNS);
  g_assert_cmpuint (found, >=, least);
  g_assert_cmpuint (sized, >=, series->memory > 0 ? found * 6 / 7 : found * 9 / 10);
  g_assert_cmpuint (placed, >=, found * 93 / 100);
}

static void
test_found (void)
{
  check_found (&(Series){ lets_go, 61, 0.003, 0, 0.001 }, -0.06, 12.3, RUNS * 99 / 100);
  check_found (&(Series){ lets_go, 13, 0.003, 0, 0.001 }, -0.06, 12.3, RUNS * 9 / 10);
  check_found (&(Series){ lets_go, 120, 0.006, 0.5, 0.001 }, -0.06, 12.3, RUNS * 9 / 10);
  check_found (&(Series){ lets_go, 31, 0.003, 0, 0.01 }, -0.06, 12.3, RUNS * 9 / 10);
  check_found (&(Series){ beside, 61, 0.004, 0, 0.001 }, 0.08, 40.5, RUNS * 9 / 10);
  check_found (&(Series){ small_step, 61, 0.005, 0, 0.001 }, -0.02, 30.2, RUNS / 2);
}

/* A session in which the board steps at reading @at, with or without the terminals. */
static RwWarmUp
play_step (RwPlace  place,
           gboolean together,
           int      at)
{
  g_autoptr (GString) script = g_string_new ("m3;on");

  for (int i = 0; i < 30; i++)
    {
      g_string_append_printf (script, ";p5 board %.3f", (i >= at ? 4.96 : 5.02) + 0.001 * (i % 2));
      g_string_append_printf (script, ";p5 terminals %.3f;wait 54", (i >= at && together ? 5.00 : 5.06) + 0.001 * (i % 2));
    }

  g_autoptr (RwSession) session = bench_play (script->str, NULL);

  return rw_warm_up_read (session, "p5", place, rw_session_get_end (session));
}

static void
test_said (void)
{
  const RwWarmUp self = play_step (RW_PLACE_BOARD, FALSE, 12);
  g_autofree char *words = rw_warm_up_describe (&self, 5);

  g_test_message ("%s", words);
  g_assert_cmpint (self.verdict, ==, RW_WARM_UP_STEPPED);
  g_assert_true (isnan (self.drift) && !self.settled && !self.approach);
  g_assert_cmpfloat_with_epsilon (self.step, -0.06, 0.001);
  g_assert_nonnull (strstr (words, "stepped down 60"));
  g_assert_nonnull (strstr (words, "at 12.1 min, between 11.6 and 12.7 min"));
  g_assert_nonnull (strstr (words, "no warming"));
  g_assert_null (strstr (words, "rift"));
}

static void
test_where (void)
{
  const RwWarmUp board = play_step (RW_PLACE_BOARD, FALSE, 12);
  const RwWarmUp calm = play_step (RW_PLACE_TERMINALS, FALSE, 12);
  const RwWarmUp same = play_step (RW_PLACE_TERMINALS, TRUE, 12);
  const RwWarmUp later = play_step (RW_PLACE_TERMINALS, TRUE, 20);
  RwWarmUp short_look = calm;

  short_look.span = 300;
  g_assert_cmpint (rw_warm_up_where (&board, &calm, 5), ==, RW_WARM_UP_WHERE_STEP_BEHIND);
  g_assert_cmpint (rw_warm_up_where (&board, &same, 5), ==, RW_WARM_UP_WHERE_STEP_BEFORE);
  g_assert_cmpint (rw_warm_up_where (&board, &later, 5), ==, RW_WARM_UP_WHERE_UNKNOWN);
  g_assert_cmpint (rw_warm_up_where (&board, &short_look, 5), ==, RW_WARM_UP_WHERE_UNKNOWN);
  g_assert_cmpint (rw_warm_up_where (&calm, &same, 5), !=, RW_WARM_UP_WHERE_STEP_BEFORE);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  chance = g_rand_new_with_seed (21);
  g_test_add_func ("/warm-up-step/no drift is taken for a step, one in a hundred at most", test_false_alarms);
  g_test_add_func ("/warm-up-step/a step is found, sized and placed", test_found);
  g_test_add_func ("/warm-up-step/it is said with time and size and not as a drift", test_said);
  g_test_add_func ("/warm-up-step/together with the terminals, or behind them", test_where);

  const int result = g_test_run ();

  g_rand_free (chance);
  return result;
}
