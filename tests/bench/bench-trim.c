/* bench-trim.c: the trim of 6 rails at 50 positions is computed in under 200 µs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fit, window, set point, the chance there, what every rail will show, and the advice in words.
 * 300 readings; the limit is absolute since it is what a screen can spare after each reading. Ten times the positions may
 * take at most 13 times as long.
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>

#include "fixtures.h"
#include "rw-trim-advice.h"
#include "rw-trim-set.h"

#define N_RAILS 6
#define MANY 500
#define ROUNDS 101

static const double most_microseconds = 200;
static const double most_growth = 13;

static const char profile_text[] =
  "{\"id\":\"six\",\"title\":\"Six rails\",\"reference\":\"p5\",\"rails\":["
  "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5,\"limits\":[4.9,5.2],"
  "\"never_above\":6,\"priority\":1,\"follows_trim\":\"yes\"},"
  "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[11,13.2],"
  "\"never_above\":15,\"priority\":2,\"follows_trim\":\"yes\"},"
  "{\"id\":\"m12\",\"label\":\"−12 V\",\"nominal\":-12,\"limits\":[-13.2,-10.8],"
  "\"never_above\":15,\"priority\":3,\"follows_trim\":\"yes\"},"
  "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5],"
  "\"never_above\":7,\"priority\":4,\"follows_trim\":\"unknown\"},"
  "{\"id\":\"p24\",\"label\":\"+24 V\",\"nominal\":24,\"limits\":[22,27],"
  "\"never_above\":29,\"priority\":5,\"follows_trim\":\"yes\"},"
  "{\"id\":\"p3\",\"label\":\"+3.3 V\",\"nominal\":3.3,\"limits\":[3.1,3.5],"
  "\"never_above\":4,\"priority\":6,\"follows_trim\":\"no\"}]}";

static const double slope[N_RAILS] = { 1, 2.38, -2.36, -1.05, 4.7, 0.01 };
static const double offset[N_RAILS] = { 0, 0.1, 0.2, 0.15, 0.3, 3.25 };

static RwProfile *
make_profile (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (profile_text, &error);

  g_assert_no_error (error);

  RwProfile *profile = rw_profile_new_from_node (node, "six", &error);

  g_assert_no_error (error);
  return profile;
}

/* Every rail at every position, with the errors of a meter of ±2 counts. */
static void
make_points (RwTrimPoint *points,
             double      *starts,
             double      *ends,
             guint        n_positions)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (3);

  for (guint k = 0; k < n_positions; k++)
    {
      const double x = g_rand_double_range (random, 4.8, 5.3);

      starts[k] = 60.0 * k;
      ends[k] = k + 1 < n_positions ? 60.0 * (k + 1) : (double) INFINITY;
      for (guint rail = 0; rail < N_RAILS; rail++)
        {
          const double counts = fabs (offset[rail] + slope[rail] * x) < 6 ? 0.002 : 0.02;

          points[k * N_RAILS + rail] = (RwTrimPoint){
            .n = k * N_RAILS + rail + 1,
            .t = starts[k] + rail,
            .rail = rail,
            .position = k,
            .value = offset[rail] + slope[rail] * x + g_rand_double_range (random, -counts,
                                                                           counts),
            .u = counts / sqrt (3),
          };
        }
    }
}

static int
compare_times (gconstpointer a,
               gconstpointer b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* The same readings as a job that is at its last position. (transfer full) */
static RwBenchState *
make_state (RwProfile         *profile,
            const RwTrimPoint *points,
            guint              n_positions)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  g_autoptr (RwSession) session
      = rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "", NULL, started));
  RwEvent setup = rw_event_make_setup (0, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_YES });

  rw_session_add (session, &setup);
  for (guint i = 0; i < n_positions * N_RAILS; i++)
    {
      RwReading reading = rw_reading_make (rw_profile_get_rail (profile, points[i].rail)->id, RW_PLACE_BOARD,
                                           RW_KIND_DC, points[i].value, 0.001, "m1");
      RwEvent event = rw_event_make_reading (points[i].t, &reading), trim = rw_event_make_trim (points[i].t);

      if (i > 0 && points[i].position != points[i - 1].position)
        rw_session_add (session, &trim);
      reading.u = points[i].u;
      event.reading = reading;
      rw_session_add (session, &event);
    }
  return rw_bench_state_new (session);
}

/* As after each reading: the set made anew, what to do worked out, and said. */
static void
compute_once (const RwTrimSetInput *input,
              const RwBenchState   *state)
{
  g_autoptr (RwTrimSet) set = rw_trim_set_new (input);
  RwTrimAdvice advice;

  g_assert_true (set->window.exists && set->chance > 0 && set->n_lined == N_RAILS);
  rw_trim_advice_work_out (state, "p5", NULL, &advice);

  g_autofree char *text = rw_trim_advice_say (&advice);

  g_assert_nonnull (text);
}

/* Median microseconds. */
static double
time_of (RwProfile *profile,
         guint      n_positions)
{
  g_autofree RwTrimPoint *points = g_new (RwTrimPoint, n_positions * N_RAILS);
  g_autofree double *starts = g_new (double, 2 * n_positions);
  double *ends = starts + n_positions, times[ROUNDS];
  const guint repeats = MANY / n_positions;

  make_points (points, starts, ends, n_positions);

  g_autoptr (RwBenchState) state = make_state (profile, points, n_positions);
  const RwTrimSetInput input = { .profile = profile,
                                 .place = RW_PLACE_BOARD,
                                 .board = RW_SAID_YES,
                                 .points = points,
                                 .n_points = n_positions * N_RAILS,
                                 .starts = starts,
                                 .ends = ends,
                                 .n_positions = n_positions,
                                 .is_current = TRUE,
                                 .percent = 0.5 };

  for (guint i = 0; i < ROUNDS; i++)
    {
      const gint64 before = g_get_monotonic_time ();

      for (guint j = 0; j < repeats; j++)
        compute_once (&input, state);
      times[i] = (double) (g_get_monotonic_time () - before) / repeats;
    }
  qsort (times, ROUNDS, sizeof times[0], compare_times);
  return times[ROUNDS / 2];
}

static void
test_fifty_positions_of_six_rails_cost_less_than_200_us (void)
{
  g_autoptr (RwProfile) profile = make_profile ();
  const double few = time_of (profile, MANY / 10), many = time_of (profile, MANY);

  g_print ("# trim: 6 rails, 50 positions: %.1f us; 500: %.1f us, %.1f times\n", few, many,
           many / few);
  g_assert_cmpfloat (few, <=, most_microseconds);
  g_assert_cmpfloat (many / few, <=, most_growth);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/fifty-positions-of-six-rails-cost-less-than-200-us",
                   test_fifty_positions_of_six_rails_cost_less_than_200_us);
  return g_test_run ();
}
