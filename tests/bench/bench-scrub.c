/* bench-scrub.c: moving about in a replay of a million samples.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A day at one cabinet: a million samples at ten a second and some four hundred landmarks. A step of the scrub bar is
 * timed from the request to the chart's layout: the session, the bench state, the data of the chart and its layout at
 * 1200 × 600, but no pixel. Fails when any step takes longer than 16 ms, or when a step late in the session costs more
 * than a constant of samples more than one in a session of ten thousand with as many landmarks.
 */
#include "config.h"

#include <math.h>

#include "rw-bench-state.h"
#include "rw-chart.h"
#include "rw-replay.h"
#include "scrub-session.h"

#define SAMPLES_FEW 10000

/* The promise of the program, and the cost of a hundred times the samples, both generous for a busy machine. */
static const double most_msec = 16, most_ratio = 3;

typedef struct
{
  RwReplay *replay;
  RwView   *view;
  RwChart  *chart;
} Bench;

/* Milliseconds of one step to @t. */
static double
step_to (Bench *bench,
         double t)
{
  const double start = scrub_now_msec ();
  RwRect plot;

  rw_replay_seek (bench->replay, t);

  g_autoptr (RwBenchState) state = rw_bench_state_new (rw_replay_get_target (bench->replay));

  rw_chart_set_state (bench->chart, state);
  rw_chart_get_plot (bench->chart, &plot);
  return scrub_now_msec () - start;
}

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static double
median_of (GArray *times)
{
  g_array_sort (times, compare);
  return g_array_index (times, double, times->len / 2);
}

static double
most_of (GArray *times)
{
  g_array_sort (times, compare);
  return g_array_index (times, double, times->len - 1);
}

typedef double (*Where) (guint i, guint n, double length, GRand *random);

static double
onward (guint  i,
        guint  n,
        double length,
        GRand *random)
{
  return length * i / n;
}

static double
backward (guint  i,
          guint  n,
          double length,
          GRand *random)
{
  return length * (n - i) / n;
}

static double
anywhere (guint  i,
          guint  n,
          double length,
          GRand *random)
{
  return g_rand_double_range (random, 0, length);
}

/* Milliseconds of each of 300 steps. (transfer full) */
static GArray *
scrub (Bench *bench,
       Where  where)
{
  GArray *times = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GRand) random = g_rand_new_with_seed (3);
  const double length = rw_replay_get_length (bench->replay);

  for (guint i = 0; i < 300; i++)
    {
      const double time = step_to (bench, where (i, 300, length, random));

      g_array_append_val (times, time);
    }
  return times;
}

static void
time_session (guint   n_samples,
              double *median,
              double *most)
{
  static const struct
  {
    const char *name;
    Where       where;
  } ways[] = { { "onward", onward }, { "backward", backward }, { "anywhere", anywhere } };
  g_autoptr (RwSession) source = scrub_session_new (n_samples);
  g_autoptr (RwReplay) replay = rw_replay_new (source);
  g_autoptr (RwView) view = rw_view_new (rw_replay_get_target (replay));
  g_autoptr (RwChart) chart = rw_chart_new (rw_replay_get_target (replay), view);
  Bench bench = { replay, view, chart };

  rw_view_set_horizon (view, rw_replay_get_length (replay));
  rw_chart_set_size (chart, 1200, 600);
  step_to (&bench, rw_replay_get_length (replay));
  *median = *most = 0;
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_autoptr (GArray) times = scrub (&bench, ways[i].where);

      g_print ("%7u samples, %u landmarks, %s: median %.2f ms, most %.2f ms\n", n_samples,
               rw_session_get_n_landmarks (source), ways[i].name, median_of (times), most_of (times));
      *median = fmax (*median, median_of (times));
      *most = fmax (*most, most_of (times));
    }
}

int
main (void)
{
  double few, few_most, many, many_most;

  time_session (SAMPLES_FEW, &few, &few_most);
  time_session (SCRUB_SAMPLES, &many, &many_most);
  g_print ("a hundred times the samples: %.2f times as long; most %.2f ms of %.0f\n", many / few, many_most, most_msec);
  return many_most <= most_msec && many / few <= most_ratio ? 0 : 1;
}
