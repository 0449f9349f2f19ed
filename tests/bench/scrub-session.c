/* scrub-session.c: a long session for the benchmarks of the replay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "scrub-session.h"

#include <time.h>

#include "fixtures.h"

static const guint n_rounds = 100; /* of landmarks: four each */

static void
add (RwSession *session,
     RwEvent    event)
{
  rw_session_add (session, &event);
}

static void
add_value (RwSession  *session,
           double      t,
           const char *rail,
           double      value,
           gboolean    kept)
{
  const RwReading reading = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, value, 0.001, "m1");

  add (session, kept ? rw_event_make_reading (t, &reading) : rw_event_make_sample (t, &reading));
}

/* What one trim position reads, near a line that all rails follow. */
static double
value_of (guint  round,
          guint  rail,
          GRand *random)
{
  static const double nominal[] = { 5.02, 11.9, -4.97 }, slope[] = { 0.004, 0.01, -0.004 };

  return nominal[rail] + slope[rail] * (round % 17) + g_rand_double_range (random, -0.003, 0.003);
}

RwSession *
scrub_session_new (guint n_samples)
{
  static const char *const rails[] = { "p5", "p12", "m5" };
  RwSession *session = fixture_session ();
  g_autoptr (GRand) random = g_rand_new_with_seed (7);
  const guint each = n_samples / n_rounds;

  for (guint round = 0; round < n_rounds; round++)
    {
      for (guint i = 0; i < each; i++)
        add_value (session, (round * each + i) * 0.1 * SCRUB_SAMPLES / n_samples, rails[round % 3],
                   value_of (round, round % 3, random), FALSE);

      const double t = rw_session_get_end (session);

      for (guint rail = 0; rail < 3; rail++)
        add_value (session, t, rails[rail], value_of (round, rail, random), TRUE);
      add (session, round % 5 == 4 ? rw_event_make_mark (t, "another look") : rw_event_make_trim (t));
    }
  return session;
}

double
scrub_now_msec (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}
