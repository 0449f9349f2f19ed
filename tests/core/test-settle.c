/* test-settle.c: has a stream come to rest, and at what value?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Streams of known truth: data/stream_*.json, and made ones. What is claimed of a settled value is
 * that the quantity at that moment lies within its error, u being a standard uncertainty: within 2
 * u nineteen times in twenty.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-settle.h"

typedef double (*Truth) (double t);

/* What a stream did to the detector. */
typedef struct
{
  guint    n;          /* samples */
  guint    n_settled;
  int      first;      /* index of the first settled one; −1: none */
  RwSettled at_first;
  guint    n_missed;   /* settled, and the truth further away than 2 u */
  double   worst;      /* the largest error in units of u */
  gboolean settled[4096];
} Run;

static void
run_stream (Run          *run,
            const double *values,
            guint         n,
            double        dt,
            double        step,
            Truth         truth)
{
  g_autoptr (RwSettle) settle = rw_settle_new (step);

  *run = (Run){ .n = n, .first = -1 };
  for (guint i = 0; i < n; i++)
    {
      const RwSettled state = rw_settle_push (settle, i * dt, values[i]);

      run->settled[i] = state.settled;
      if (!state.settled)
        continue;
      g_assert_cmpfloat (state.u, >=, step / sqrt (12) * (1 - 1e-12));
      if (run->first < 0)
        {
          run->first = (int) i;
          run->at_first = state;
        }
      run->n_settled++;

      const double off = fabs (state.value - truth (i * dt)) / state.u;

      run->n_missed += off > 2;
      run->worst = MAX (run->worst, off);
    }
}

static guint
load (const char *name,
      double     *values,
      double     *dt)
{
  g_autoptr (JsonNode) data = fixture_refdata (name);
  JsonObject *inputs = json_object_get_object_member (json_node_get_object (data), "inputs");
  JsonArray *y = json_object_get_array_member (inputs, "y");

  *dt = json_object_get_double_member_with_default (inputs, "dt_s", 0.3);
  for (guint i = 0; i < json_array_get_length (y); i++)
    values[i] = json_array_get_double_element (y, i);
  return json_array_get_length (y);
}

static double values[4096];
static Run run;

static double
exponential (double t)
{
  return 12.1 - 0.7 * exp (-t / 12);
}

static void
test_settling_stream (void)
{
  g_autoptr (JsonNode) data = fixture_refdata ("stream_settling.json");
  double dt;
  const guint n = load ("stream_settling.json", values, &dt);

  run_stream (&run, values, n, dt, 0.001, exponential);
  g_test_message ("settled first at %d s: %.4f, u %.4f; now %.4f, in the end 12.1; %u of %u after that; worst %.2f u", run.first,
                  run.at_first.value, run.at_first.u, exponential (run.first), run.n_settled,
                      n - (guint) run.first, run.worst);

  /* Not while it is still 12 mV away, which it is until the published moment. */
  g_assert_cmpint (run.first, >=,
                   (int) fixture_number (data, "computed", "bands", "0.012",
                                         "first_index_staying_inside", NULL));
  /* Three samples and a window of seven after it stays within 5 mV, at the latest. */
  g_assert_cmpint (run.first, <=,
                   (int) fixture_number (data, "computed", "bands", "0.0050",
                                         "first_index_staying_inside", NULL) + 7 + 3);
  g_assert_cmpuint (run.n_missed, ==, 0);
  g_assert_cmpfloat (fabs (run.at_first.value - 12.1), <=, 0.005);
  g_assert_cmpfloat (run.at_first.since, ==, run.first * dt);
  g_assert_true (run.settled[n - 1]);
}

static double
step_after_120 (double t)
{
  return t / 0.5 < 119.5 ? 5.0 : 5.02;
}

static void
test_step_stream (void)
{
  double dt;
  const guint n = load ("stream_step.json", values, &dt);
  guint again = 120;

  run_stream (&run, values, n, dt, 0.001, step_after_120);
  g_assert_cmpint (run.first, ==, 3); /* the fourth sample */
  /* Four samples that hold some of both sides are not settled; soon after there are four of the other, it is. */
  while (!run.settled[again])
    again++;
  g_test_message ("settled %u of %u; after the step at 120 again at %u; within 2 u %.3f, worst %.2f u", run.n_settled, n, again,
                  1 - (double) run.n_missed / run.n_settled, run.worst);
  for (guint i = 121; i < 123; i++)
    g_assert_false (run.settled[i]);
  g_assert_cmpuint (again, >=, 123);
  g_assert_cmpuint (again, <=, 123 + 4);
  g_assert_cmpuint (run.n_settled, >, n * 8 / 10);
  g_assert_cmpuint (run.n_missed, <=, run.n_settled / 20);
}

static double
slow_drift (double t)
{
  return 12 + 5e-5 * t;
}

static void
test_drifting_stream (void)
{
  double dt;
  const guint n = load ("stream_drift.json", values, &dt);

  /* 50 µV a sample under 3 mV of noise: no window can see it, and none needs to. */
  run_stream (&run, values, n, dt, 0.001, slow_drift);
  g_test_message ("settled %u of %u, within 2 u %.3f, worst %.2f u", run.n_settled, n,
                  1 - (double) run.n_missed / run.n_settled, run.worst);
  g_assert_cmpuint (run.n_settled, >, n * 9 / 10);
  g_assert_cmpuint (run.n_missed, <=, run.n_settled / 20);
}

static double
rippling (double t)
{
  return 5.012;
}

static void
test_rippling_stream (void)
{
  double dt;
  const guint n = load ("stream_ripple.json", values, &dt);

  run_stream (&run, values, n, dt, 0.001, rippling);
  g_test_message ("settled %u of %u, first at %d; worst %.2f u of %.1f mV", run.n_settled, n, run.first, run.worst,
                  1e3 * run.at_first.u);
  /* 60 mV up and down rests about its middle, but that takes many samples to see, and says so in u. */
  g_assert_cmpint (run.first, >=, 23);
  g_assert_cmpint (run.first, <=, 50);
  g_assert_cmpfloat (run.at_first.u, >=, 0.004);
  g_assert_cmpuint (run.n_missed, ==, 0);
}

static double decay_tau, decay_from;

static double
decay (double t)
{
  return 12.1 - decay_from * exp (-t / decay_tau);
}

static guint
make_stream (Truth  truth,
             guint  n,
             double dt,
             double step,
             double noise,
             GRand *random)
{
  for (guint i = 0; i < n; i++)
    {
      double sum = -6; /* twelve uniform numbers make a normal one */

      for (guint k = 0; noise > 0 && k < 12; k++)
        sum += g_rand_double (random);
      values[i] = round ((truth (i * dt) + (noise > 0 ? noise * sum : 0)) / step) * step;
    }
  return n;
}

/* However fast it comes to rest and however often the meter reads: settled values are true then,
 * early ones are not given, late ones not late. */
static void
test_decays (void)
{
  static const double taus[] = { 0.3, 1, 3, 12, 30 }, dts[] = { 0.05, 0.3, 1 };

  for (guint i = 0; i < G_N_ELEMENTS (taus); i++)
    for (guint k = 0; k < G_N_ELEMENTS (dts); k++)
      {
        const double dt = dts[k], step = 0.001;
        const double window = MAX (3 * dt, 1.2); /* seconds */

        decay_tau = taus[i];
        decay_from = 0.7;
        run_stream (&run, values, make_stream (decay, 4000, dt, step, 0, NULL), dt, step, decay);

        /* True rest: it stays within half a step for good. A window later, plus three samples, it
         * must be seen. */
        const double rest = decay_tau * log (decay_from / (step / 2));

        if (rest + window + 3 * dt > 4000 * dt)
          continue;
        g_test_message ("tau %g s, a sample in %g s: rest at %.1f s, settled at %.1f s, %.1f mV from the end, u %.2f mV, worst %.2f u",
                        decay_tau, dt, rest, run.first * dt,
                            1e3 * fabs (run.at_first.value - 12.1), 1e3 * run.at_first.u,
                                run.worst);
        g_assert_cmpint (run.first, >=, 0);
        g_assert_cmpfloat (run.first * dt, <=, rest + window + 3 * dt);
        g_assert_cmpuint (run.n_missed, ==, 0);

        /* Never in the fast part: what is left to go is little, and so is what the value lacks. */
        g_assert_cmpfloat (fabs (decay (run.first * dt) - 12.1), <=, 0.0015 * 12.1);
        g_assert_cmpfloat (fabs (run.at_first.value - 12.1), <=, 0.0015 * 12.1);
      }
}

static double
constant (double t)
{
  return 5.0004;
}

static void
test_noise (void)
{
  static const struct
  {
    double noise, at_least;
  } rows[] = { { 0, 1 }, { 0.0003, 0.99 }, { 0.001, 0.9 }, { 0.002, 0.9 }, { 0.003, 0.7 } };
  g_autoptr (GRand) random = g_rand_new_with_seed (71);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      run_stream (&run, values, make_stream (constant, 4000, 0.3, 0.001, rows[i].noise, random),
                  0.3, 0.001, constant);

      const double settled = (double) run.n_settled / (run.n - 4);
      const double held = 1 - (double) run.n_missed / run.n_settled;

      g_test_message ("noise %.1f mV: settled %.3f of the time, within 2 u %.3f",
                      1e3 * rows[i].noise, settled, held);
      g_assert_cmpfloat (settled, >=, rows[i].at_least);
      g_assert_cmpfloat (held, >=, 0.94);
    }

  /* Ten times the meter's steps, half a percent of the value: not at rest. */
  run_stream (&run, values, make_stream (constant, 4000, 0.3, 0.001, 0.025, random), 0.3, 0.001,
              constant);
  g_assert_cmpuint (run.n_settled, <, run.n / 50);
}

/* A value that sits between two digits makes the last one flicker; that is rest. */
static void
test_flicker_of_the_last_digit (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (73);
  g_autoptr (RwSettle) settle = rw_settle_new (0.01);
  guint n_settled = 0;

  for (guint i = 0; i < 2000; i++)
    {
      const RwSettled state = rw_settle_push (settle, i * 0.3, g_rand_boolean (random) ? 5.02
                                              : 5.03);

      n_settled += state.settled;
      if (state.settled)
        g_assert_cmpfloat (fabs (state.value - 5.025), <=, 0.005 + 1e-9);
    }
  g_assert_cmpuint (n_settled, ==, 2000 - 3);
}

static void
test_slow_creep_is_not_rest (void)
{
  g_autoptr (RwSettle) settle = rw_settle_new (0.001);

  for (guint i = 0; i < 300; i++) /* one step up each sample */
    g_assert_false (rw_settle_push (settle, i * 0.3, 5 + i * 0.001).settled);
}

static void
test_four_samples_and_a_quarter_second (void)
{
  g_autoptr (RwSettle) slow = rw_settle_new (0.001), fast = rw_settle_new (0.001);

  for (guint i = 0; i < 3; i++)
    g_assert_false (rw_settle_push (slow, i * 1.0, 5.02).settled);
  g_assert_true (rw_settle_push (slow, 3, 5.02).settled);

  /* A hundred samples a second: settled by time, not by count, and it does settle. A quarter of a second, since
   * ten samples a second must not be late by more than three. */
  guint first = 0;

  for (guint i = 0; i < 500 && first == 0; i++)
    if (rw_settle_push (fast, i * 0.01, 5.02).settled)
      first = i;
  g_test_message ("100 samples a second: settled after %.2f s", first * 0.01);
  g_assert_cmpuint (first, >=, 27);
  g_assert_cmpuint (first, <=, 37);
}

static void
fill (RwSettle *settle,
      double    from,
      gboolean  wanted)
{
  RwSettled state = { 0 };

  for (guint i = 0; i < 7; i++)
    state = rw_settle_push (settle, from + i * 0.3, 5.02);
  g_assert_cmpint (state.settled, ==, wanted);
}

static void
test_what_starts_over (void)
{
  g_autoptr (RwSettle) settle = rw_settle_new (0.001);

  fill (settle, 0, TRUE);
  g_assert_false (rw_settle_push (settle, 3, NAN).settled); /* overload */
  g_assert_false (rw_settle_push (settle, 3.3, 5.02).settled);
  fill (settle, 4, TRUE);
  g_assert_false (rw_settle_push (settle, 7, INFINITY).settled);
  fill (settle, 8, TRUE);
  g_assert_false (rw_settle_push (settle, 2, 5.02).settled); /* a replay went back */
  fill (settle, 20, TRUE);
  rw_settle_reset (settle);
  g_assert_false (rw_settle_push (settle, 30, 5.02).settled);
  rw_settle_free (NULL);
}

static void
test_since_is_the_beginning_of_rest (void)
{
  g_autoptr (RwSettle) settle = rw_settle_new (0.001);
  RwSettled state = { 0 };

  for (guint i = 0; i < 50; i++)
    state = rw_settle_push (settle, i * 0.5, i < 10 ? 5.5 - i * 0.05 : 5.02);
  g_assert_true (state.settled);
  g_assert_cmpfloat (state.since, >=, 13 * 0.5); /* the fourth sample there */
  g_assert_cmpfloat (state.since, <=, 14 * 0.5);
  state = rw_settle_push (settle, 25, 5.2);
  g_assert_false (state.settled);
  g_assert_true (isnan (state.since));
}

static void
test_step_unknown (void)
{
  g_autoptr (RwSettle) settle = rw_settle_new (0), odd = rw_settle_new (-1);
  RwSettled state = { 0 };

  for (guint i = 0; i < 7; i++)
    state = rw_settle_push (settle, i * 0.3, 5.02);
  g_assert_true (state.settled);
  g_assert_cmpfloat (state.value, ==, 5.02);
  for (guint i = 0; i < 7; i++)
    state = rw_settle_push (odd, i * 0.3, 0); /* a dead rail */
  g_assert_true (state.settled);
  for (guint i = 0; i < 7; i++)
    state = rw_settle_push (settle, 3 + i * 0.3, 5.02 + i * 0.01);
  g_assert_false (state.settled);
}

/* A negative rail settles as a positive one does. */
static void
test_mirror (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (79);
  g_autoptr (RwSettle) up = rw_settle_new (0.001), down = rw_settle_new (0.001);

  for (guint i = 0; i < 5000; i++)
    {
      const double value = round (5000 + g_rand_double_range (random, -4,
                                                              4) + 20 * sin (i / 400.0)) / 1000;
      const RwSettled a = rw_settle_push (up, i * 0.25, value);
      const RwSettled b = rw_settle_push (down, i * 0.25, -value);

      g_assert_cmpint (a.settled, ==, b.settled);
      if (!isnan (a.value))
        {
          g_assert_cmpfloat (a.value, ==, -b.value);
          g_assert_cmpfloat (a.u, ==, b.u);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/settle/settling-stream", test_settling_stream);
  g_test_add_func ("/settle/step-stream", test_step_stream);
  g_test_add_func ("/settle/drifting-stream", test_drifting_stream);
  g_test_add_func ("/settle/rippling-stream", test_rippling_stream);
  g_test_add_func ("/settle/decays", test_decays);
  g_test_add_func ("/settle/noise", test_noise);
  g_test_add_func ("/settle/flicker-of-the-last-digit", test_flicker_of_the_last_digit);
  g_test_add_func ("/settle/slow-creep-is-not-rest", test_slow_creep_is_not_rest);
  g_test_add_func ("/settle/four-samples-and-a-quarter-second", test_four_samples_and_a_quarter_second);
  g_test_add_func ("/settle/what-starts-over", test_what_starts_over);
  g_test_add_func ("/settle/since-is-the-beginning-of-rest", test_since_is_the_beginning_of_rest);
  g_test_add_func ("/settle/step-unknown", test_step_unknown);
  g_test_add_func ("/settle/mirror", test_mirror);
  return g_test_run ();
}
