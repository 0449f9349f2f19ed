/* test-poll-talk.c: when a meter is asked again, by a clock that the test turns.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "rw-poll-talk.h"

static const gint64 ms = 1000;
static const gint64 start_us = 7000000;

typedef struct
{
  RwTalk  *talk;
  gint64   now_us;
  GString *asked;   /* "50 300 …": when, in milliseconds */
  GString *handed;
  gboolean is_value; /* what is handed on makes one */
} Bench;

static void
bench_init (Bench *self)
{
  *self = (Bench){ .talk = rw_poll_talk_new ("D", 1000 * ms), .now_us = start_us };
  self->asked = g_string_new (NULL);
  self->handed = g_string_new (NULL);
  rw_talk_restart (self->talk, self->now_us);
}

static void
bench_clear (Bench *self)
{
  rw_talk_free (self->talk);
  g_string_free (self->asked, TRUE);
  g_string_free (self->handed, TRUE);
}

static void
run_to (Bench *self,
        gint64 milliseconds)
{
  const gint64 end_us = start_us + milliseconds * ms;
  gint64 due_us;

  for (;;)
    {
      const char *text = rw_talk_next (self->talk, self->now_us, &due_us);

      g_assert_cmpint (due_us, >, self->now_us);
      if (text != NULL)
        {
          g_assert_cmpstr (text, ==, "D");
          g_string_append_printf (self->asked, "%s%d", self->asked->len > 0 ? " " : "",
                                  (int) ((self->now_us - start_us) / ms));
        }
      if (due_us > end_us)
        break;
      self->now_us = due_us;
    }
  self->now_us = end_us;
}

static void
values_cb (const guint8 *tainted,
           gsize         n,
           gpointer      data)
{
  Bench *self = data;

  g_string_append_len (self->handed, (const char *) tainted, (gssize) n);
  if (self->is_value)
    rw_talk_answered (self->talk, self->now_us);
}

static void
hear_at (Bench      *self,
         gint64      milliseconds,
         const char *text,
         gboolean    is_value)
{
  run_to (self, milliseconds);
  self->is_value = is_value;
  rw_talk_hear (self->talk, (const guint8 *) text, strlen (text), self->now_us, values_cb, self);
}

static void
test_pace (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 80, "a", TRUE);   /* at once: not before 300 */
  hear_at (&bench, 700, "b", TRUE);  /* after 400 ms: at once */
  hear_at (&bench, 720, "c", TRUE);
  run_to (&bench, 960);
  g_assert_cmpstr (bench.asked->str, ==, "50 300 700 950");
  g_assert_cmpstr (bench.handed->str, ==, "abc");
  bench_clear (&bench);
}

/* The end of an answer to somebody before us. */
static void
test_quiet_first (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 10, "06 V", FALSE);
  hear_at (&bench, 50, "\r", FALSE);
  run_to (&bench, 200);
  g_assert_cmpstr (bench.asked->str, ==, "100");
  g_assert_cmpstr (bench.handed->str, ==, "");
  bench_clear (&bench);
}

static void
test_silence (void)
{
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 20000);
  g_assert_cmpstr (bench.asked->str, ==, "50 1050 3050 7050 11050 15050 19050");
  /* Switched on at last: it was off, not slow. */
  hear_at (&bench, 20000, "a", TRUE);
  run_to (&bench, 20010);
  g_assert_true (g_str_has_suffix (bench.asked->str, " 19050 20000"));
  bench_clear (&bench);
}

/* An answer that makes no value yet is no silence; and it may come in pieces. */
static void
test_no_value_yet (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 200, "a", FALSE);
  hear_at (&bench, 260, "a", FALSE);
  run_to (&bench, 420);
  g_assert_cmpstr (bench.asked->str, ==, "50 410");
  hear_at (&bench, 420, "b", FALSE);
  run_to (&bench, 700);
  g_assert_cmpstr (bench.asked->str, ==, "50 410 660");
  run_to (&bench, 1700); /* and then it is silent: the usual first wait */
  g_assert_cmpstr (bench.asked->str, ==, "50 410 660 1660");
  bench_clear (&bench);
}

/* It takes 1.4 s: asked again once, and from then on given its time. */
static void
test_slow_meter (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 1450, "a", TRUE);
  hear_at (&bench, 2450, "b", TRUE); /* the repetition's */
  hear_at (&bench, 4250, "c", TRUE);
  run_to (&bench, 4300);
  g_assert_cmpstr (bench.asked->str, ==, "50 1050 2850 4250");
  bench_clear (&bench);
}

static void
test_no_kind (void)
{
  Bench bench;
  RwKind kind;

  bench_init (&bench);
  rw_talk_set_kind (bench.talk, RW_KIND_OHMS, bench.now_us);
  g_assert_false (rw_talk_get_kind (bench.talk, &kind));
  g_assert_null (rw_talk_get_name (bench.talk));
  g_assert_null (rw_talk_get_trouble (bench.talk));
  bench_clear (&bench);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/poll/asks soon after each answer, four times a second at most", test_pace);
  g_test_add_func ("/poll/lets an old answer end first", test_quiet_first);
  g_test_add_func ("/poll/asks a silent meter less and less often", test_silence);
  g_test_add_func ("/poll/takes an answer without a value for an answer", test_no_value_yet);
  g_test_add_func ("/poll/gives a slow meter its time", test_slow_meter);
  g_test_add_func ("/poll/leaves what is measured to the meter", test_no_kind);
  return g_test_run ();
}
