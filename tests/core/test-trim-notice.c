/* test-trim-notice.c: a turn of the trim noticed in a stream, and what is none.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Streams at four samples a second with noise of one step, through the settling that the bench uses.
 */
#include "config.h"

#include <math.h>

#include "fixtures.h"
#include "rw-trim-notice.h"

static const double step = 0.001, per_second = 4;

typedef struct
{
  RwTrimNotice notice;
  RwSettle    *settle;
  GRand       *random;
  double       t;
  guint        n_noticed;
  double       from, to; /* of the last */
} Stream;

static void
stream_begin (Stream *self,
              guint   seed)
{
  *self = (Stream){ .settle = rw_settle_new (step), .random = g_rand_new_with_seed (seed) };
}

static void
stream_end (Stream *self)
{
  rw_settle_free (self->settle);
  g_rand_free (self->random);
}

static void
push (Stream     *self,
      const char *rail,
      double      value)
{
  const double shown = round ((value + g_rand_double_range (self->random, -step, step)) / step) * step;
  const RwReading sample = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, shown, step, "m1");
  const RwSettled settled = rw_settle_push (self->settle, self->t, shown);

  self->t += 1 / per_second;
  self->n_noticed += rw_trim_notice_push (&self->notice, &sample, &settled, &self->from, &self->to);
}

/* From one value to another in so many seconds. */
static void
run (Stream *self,
     double  from,
     double  to,
     double  seconds)
{
  const guint n = (guint) (seconds * per_second);

  for (guint i = 0; i < n; i++)
    push (self, "p5", from + (to - from) * i / n);
}

static void
test_a_turn_is_noticed_once (void)
{
  for (guint seed = 1; seed <= 50; seed++)
    {
      Stream stream;

      stream_begin (&stream, seed);
      run (&stream, 5.02, 5.02, 8);
      run (&stream, 5.02, 5.11, 3);
      run (&stream, 5.11, 5.11, 8);
      g_assert_cmpuint (stream.n_noticed, ==, 1);
      g_assert_cmpfloat_with_epsilon (stream.from, 5.02, 0.004);
      g_assert_cmpfloat_with_epsilon (stream.to, 5.11, 0.004);
      stream_end (&stream);
    }
}

static void
test_standing_still_is_none (void)
{
  for (guint seed = 1; seed <= 50; seed++)
    {
      Stream stream;

      stream_begin (&stream, seed);
      run (&stream, 5.02, 5.02, 300);
      g_assert_cmpuint (stream.n_noticed, ==, 0);
      stream_end (&stream);
    }
}

/* 60 mV over ten minutes, as a supply that warms up. */
static void
test_a_slow_drift_is_none (void)
{
  Stream stream;

  stream_begin (&stream, 7);
  run (&stream, 5.02, 5.08, 600);
  run (&stream, 5.08, 5.08, 20);
  g_assert_cmpuint (stream.n_noticed, ==, 0);
  stream_end (&stream);
}

static void
test_a_lifted_lead_is_none (void)
{
  Stream stream;

  stream_begin (&stream, 9);
  run (&stream, 5.02, 5.02, 8);
  run (&stream, 0.01, 0.01, 2);
  run (&stream, 5.11, 5.11, 8); /* another contact: nobody knows what happened between */
  g_assert_cmpuint (stream.n_noticed, ==, 0);
  stream_end (&stream);
}

static void
test_another_rail_is_none (void)
{
  Stream stream;

  stream_begin (&stream, 11);
  run (&stream, 5.02, 5.02, 8);
  for (guint i = 0; i < 32; i++)
    push (&stream, "p5s", 5.11);
  g_assert_cmpuint (stream.n_noticed, ==, 0);
  stream_end (&stream);
}

static void
test_reset_forgets (void)
{
  Stream stream;

  stream_begin (&stream, 13);
  run (&stream, 5.02, 5.02, 8);
  rw_trim_notice_reset (&stream.notice); /* the board was plugged: the load moved the rail, not the screw */
  run (&stream, 4.96, 4.96, 8);
  g_assert_cmpuint (stream.n_noticed, ==, 0);
  stream_end (&stream);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/trim-notice/a turn is noticed once, with both ends", test_a_turn_is_noticed_once);
  g_test_add_func ("/trim-notice/standing still is none", test_standing_still_is_none);
  g_test_add_func ("/trim-notice/a slow drift is none", test_a_slow_drift_is_none);
  g_test_add_func ("/trim-notice/a lifted lead is none", test_a_lifted_lead_is_none);
  g_test_add_func ("/trim-notice/another rail is none", test_another_rail_is_none);
  g_test_add_func ("/trim-notice/a change of setup forgets", test_reset_forgets);
  return g_test_run ();
}
