/* bench-chapters.c: looking a long session through for its chapters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The warnings and verdicts of a session are those of its state after every landmark. Times are of the machine, so only
 * ratios are judged: eight times the landmarks take eight times as long when each costs the same, and sixty-four times
 * when each is looked at with all that came before. Fails above sixteen.
 *
 * The sessions are of work that goes on, with readings whose errors are what their meter states: hardly a turn of the
 * trim, many of them, and many with readings at all places, the power switched, faults mended and the newest event taken
 * back. Where readings contradict each other by far more than that, an outlier is looked for in all of them at each
 * reading, which no screen can spare: that is told, for 600 and 1 200 events, and not judged. What is taken back long
 * after, and new facts of a meter, send the walk back that far; that is not in here.
 */
#include "config.h"

#include <time.h>

#include "busy-session.h"
#include "rw-chapters.h"

enum
{
  FEW = 2500,
  MANY = 20000
};

static const double most_ratio = 16;

static double
now_msec (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}

/* The least of three times, milliseconds of the processor. */
static double
time_look (BusyStyle style,
           guint     n_events)
{
  double least = 0;

  style.n_events = n_events;
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (3);
      g_autoptr (RwSession) session = busy_session_new (random, &style);
      g_autoptr (RwChapters) quick = rw_chapters_new_quick (session, NULL, NULL);
      const double start = now_msec ();
      g_autoptr (RwChapters) chapters = rw_chapters_new_looked (quick, session);
      const double time = now_msec () - start;

      least = i == 0 ? time : MIN (least, time);
    }
  return least;
}

static gboolean
judge (const char *name,
       BusyStyle   style)
{
  const double few = time_look (style, FEW), many = time_look (style, MANY);

  g_print ("%-26s %d events %.1f ms, %d events %.1f ms: %.1f times as long for %d times as many, at most %.0f\n", name,
           FEW, few, MANY, many, many / few, MANY / FEW, most_ratio);
  return many / few <= most_ratio;
}

int
main (void)
{
  const BusyStyle calm = { .noise = 1, .slope = 1, .turns = 3, .others = 10, .places = 1 };
  const BusyStyle turning = { .noise = 1, .slope = 1, .turns = 20, .others = 10, .places = 1 };
  const BusyStyle busy
      = { .noise = 1, .slope = 1, .turns = 20, .retracts = 2, .changes = 2, .others = 10, .places = 4, .orderly = TRUE };
  const BusyStyle torn = { .noise = 3, .slope = 1, .turns = 20, .others = 10, .places = 1 };
  gboolean good = judge ("hardly a turn", calm);

  good = judge ("many turns", turning) && good;
  good = judge ("all places, things undone", busy) && good;
  g_print ("%-26s 600 events %.1f ms, 1200 events %.1f ms: told, not judged\n", "readings that contradict",
           time_look (torn, 600), time_look (torn, 1200));
  return good ? 0 : 1;
}
