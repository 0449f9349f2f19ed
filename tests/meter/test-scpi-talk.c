/* test-scpi-talk.c: what is said to an instrument, by a clock that the test turns.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "rw-scpi-talk.h"

static const gint64 ms = 1000;

typedef struct
{
  RwScpiTalk *talk;
  gint64      now_us;
  GString    *said; /* "0:*CLS 100:*IDN? …": milliseconds and text */
} Bench;

static void
bench_init (Bench *self)
{
  self->talk = rw_scpi_talk_new (1000 * ms);
  self->now_us = 5000000;
  self->said = g_string_new (NULL);
  rw_scpi_talk_restart (self->talk, self->now_us);
}

static void
bench_clear (Bench *self)
{
  rw_scpi_talk_free (self->talk);
  g_string_free (self->said, TRUE);
}

/* Says all that is due up to then, at the very time it is due. */
static void
run_to (Bench *self,
        gint64 milliseconds)
{
  const gint64 end_us = 5000000 + milliseconds * ms;

  for (;;)
    {
      gint64 due_us;
      const char *text = rw_scpi_talk_next (self->talk, self->now_us, &due_us);

      if (text != NULL)
        {
          g_assert_true (g_str_has_suffix (text, "\n"));
          g_string_append_printf (self->said, "%s%d:%.*s", self->said->len > 0 ? " " : "",
                                  (int) ((self->now_us - 5000000) / ms),
                                  (int) strlen (text) - 1, text);
          continue;
        }
      g_assert_cmpint (due_us, >, self->now_us);
      if (due_us > end_us)
        break;
      self->now_us = due_us;
    }
  self->now_us = end_us;
}

static RwScpiHeard
hear (Bench      *self,
      const char *text)
{
  return rw_scpi_talk_hear (self->talk, (const guint8 *) text, strlen (text));
}

static void
answer (Bench *self)
{
  g_assert_cmpint (hear (self, "+1.0E+00\n"), ==, RW_SCPI_HEARD_OTHERS);
  rw_scpi_talk_answered (self->talk, self->now_us);
}

static void
test_usual_talk (void)
{
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 150);
  g_assert_cmpint (hear (&bench, "QUAYSIDE, M3 ,"), ==, RW_SCPI_HEARD_OWN);
  g_assert_null (rw_scpi_talk_get_name (bench.talk));
  g_assert_cmpint (hear (&bench, "0,1.0\r\n"), ==, RW_SCPI_HEARD_NAME);
  g_assert_cmpstr (rw_scpi_talk_get_name (bench.talk), ==, "QUAYSIDE M3");
  run_to (&bench, 300);
  answer (&bench);
  run_to (&bench, 700);
  answer (&bench);
  run_to (&bench, 701);
  g_assert_cmpstr (bench.said->str, ==,
                   "0:*CLS 100:*IDN? 150:CONF:VOLT:DC 250:READ? 300:READ? 700:READ?");
  bench_clear (&bench);
}

/* Not a name, whatever was still on the line. */
static void
test_bad_names (void)
{
  static const char *const lines[] = { "A,B,C\n",
                                       "A,B,C,D,E\n",
                                       "A,\"B,C\",D,E\n",
                                       "+5.0E+00\n",
                                       "-113,\"Undefined header\"\n",
                                       "\x01,\x02,\x03,\x04\n",
                                       "\n\r\n" };
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 150);
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_assert_cmpint (hear (&bench, lines[i]), ==, RW_SCPI_HEARD_OWN);
      g_assert_null (rw_scpi_talk_get_name (bench.talk));
    }
  g_assert_cmpint (hear (&bench, "A,B,0,0\n"), ==, RW_SCPI_HEARD_NAME);
  g_assert_cmpstr (rw_scpi_talk_get_name (bench.talk), ==, "A B");
  bench_clear (&bench);
}

static void
test_nameless (void)
{
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 2500);
  g_assert_cmpstr (bench.said->str, ==, "0:*CLS 100:*IDN? 1100:*IDN? 2100:CONF:VOLT:DC 2200:READ?");
  g_assert_null (rw_scpi_talk_get_name (bench.talk));
  bench_clear (&bench);
}

/* Three tries with longer and longer waits, then all over again: the meter may have been
 * switched off. */
static void
test_no_answer (void)
{
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 150);
  hear (&bench, "A,B,0,0\n");
  run_to (&bench, 7300);
  g_assert_cmpstr (bench.said->str, ==,
                   "0:*CLS 100:*IDN? 150:CONF:VOLT:DC 250:READ? 1250:READ? 3250:READ? 7250:*CLS");
  g_assert_cmpstr (rw_scpi_talk_get_name (bench.talk), ==, "A B");
  bench_clear (&bench);
}

/* A meter that takes 1.5 s for a value is asked again once, and from then on given its time. */
static void
test_slow_meter (void)
{
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 150);
  hear (&bench, "A,B,0,0\n");
  run_to (&bench, 1750);
  answer (&bench); /* to the question at 250 */
  run_to (&bench, 3250);
  answer (&bench); /* to the one at 1250; a third has not been asked */
  run_to (&bench, 4850);
  answer (&bench); /* to the one at 3350: in time now */
  run_to (&bench, 7000);
  g_assert_cmpstr (bench.said->str, ==,
                   "0:*CLS 100:*IDN? 150:CONF:VOLT:DC 250:READ? 1250:READ? 3350:READ? 4850:READ?");
  bench_clear (&bench);
}

static void
test_reopened (void)
{
  Bench bench;

  bench_init (&bench);
  run_to (&bench, 150);
  hear (&bench, "A,B,0,0\n");
  run_to (&bench, 400);
  rw_scpi_talk_restart (bench.talk, bench.now_us);
  run_to (&bench, 450);
  g_assert_cmpint (hear (&bench, "+1.0E+00\n"), ==, RW_SCPI_HEARD_OWN); /* the answer to before: nobody's */
  run_to (&bench, 520);
  g_assert_true (g_str_has_suffix (bench.said->str, "250:READ? 400:*CLS 500:*IDN?"));
  g_assert_cmpstr (rw_scpi_talk_get_name (bench.talk), ==, "A B");
  bench_clear (&bench);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/talk/clears, asks the name, configures, and asks again at each value",
                   test_usual_talk);
  g_test_add_func ("/talk/takes four fields for a name and nothing else", test_bad_names);
  g_test_add_func ("/talk/goes on without a name", test_nameless);
  g_test_add_func ("/talk/tries three times, then begins anew", test_no_answer);
  g_test_add_func ("/talk/gives a slow meter its time", test_slow_meter);
  g_test_add_func ("/talk/begins anew after the port was opened again", test_reopened);
  return g_test_run ();
}
