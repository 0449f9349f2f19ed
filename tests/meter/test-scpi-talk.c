/* test-scpi-talk.c: what is said to an instrument, by a clock that the test turns.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "rw-scpi-answer.h"
#include "rw-scpi-talk.h"

static const gint64 ms = 1000;
static const gint64 start_us = 5000000;

typedef struct
{
  RwTalk  *talk;
  gint64   now_us;
  GString *said;   /* "0:*CLS 100:*IDN? …": milliseconds and text */
  GString *handed; /* "dc:+1.0E+00 …": what was handed on, and what it measures */
} Bench;

static void
bench_init (Bench *self)
{
  self->talk = rw_scpi_talk_new (1000 * ms);
  self->now_us = start_us;
  self->said = g_string_new (NULL);
  self->handed = g_string_new (NULL);
  rw_talk_restart (self->talk, self->now_us);
}

static void
bench_clear (Bench *self)
{
  rw_talk_free (self->talk);
  g_string_free (self->said, TRUE);
  g_string_free (self->handed, TRUE);
}

/* Says all that is due up to then, at the very time it is due. */
static void
run_to (Bench *self,
        gint64 milliseconds)
{
  const gint64 end_us = start_us + milliseconds * ms;

  for (;;)
    {
      gint64 due_us;
      const char *text = rw_talk_next (self->talk, self->now_us, &due_us);

      if (text != NULL)
        {
          g_assert_true (g_str_has_suffix (text, "\n"));
          g_string_append_printf (self->said, "%s%d:%.*s", self->said->len > 0 ? " " : "",
                                  (int) ((self->now_us - start_us) / ms), (int) strlen (text) - 1,
                                  text);
          continue;
        }
      g_assert_cmpint (due_us, >, self->now_us);
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
  RwKind kind;

  if (n == 1 && *tainted == '\n')
    return;
  g_assert_true (rw_talk_get_kind (self->talk, &kind));
  g_string_append_printf (self->handed, "%s%s:%.*s", self->handed->len > 0 ? " " : "",
                          rw_kind_to_id (kind), (int) n, (const char *) tainted);
  /* The decoder makes a value of a number only. */
  if (memchr (tainted, '"', n) == NULL && memchr (tainted, ',', n) == NULL)
    rw_talk_answered (self->talk, self->now_us);
}

static void
hear_at (Bench      *self,
         gint64      milliseconds,
         const char *text)
{
  run_to (self, milliseconds);
  rw_talk_hear (self->talk, (const guint8 *) text, strlen (text), self->now_us, values_cb, self);
}

#define NO_ERROR "+0,\"No error\"\n"

/* Up to the first READ?, at 350. */
static void
begin (Bench *self)
{
  bench_init (self);
  hear_at (self, 150, "A,B,0,0\n");
  hear_at (self, 350, NO_ERROR);
  run_to (self, 350);
  g_assert_cmpstr (self->said->str, ==,
                   "0:*CLS 100:*IDN? 150:*CLS 250:CONF:VOLT:DC 350:SYST:ERR? 350:READ?");
  g_string_truncate (self->said, 0);
}

static void
test_usual_talk (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 150, "QUAYSIDE, M3 ,");
  g_assert_null (rw_talk_get_name (bench.talk));
  hear_at (&bench, 150, "0,1.0\r\n");
  g_assert_cmpstr (rw_talk_get_name (bench.talk), ==, "QUAYSIDE M3");
  g_assert_cmpint (rw_talk_take_news (bench.talk), ==, RW_TALK_NEWS_NAME);
  g_assert_cmpint (rw_talk_take_news (bench.talk), ==, 0);
  hear_at (&bench, 400, NO_ERROR);
  hear_at (&bench, 500, "+1.0E+00\n");
  hear_at (&bench, 700, "+2.0E+00\n");
  run_to (&bench, 701);
  g_assert_cmpstr (bench.said->str, ==,
                   "0:*CLS 100:*IDN? 150:*CLS 250:CONF:VOLT:DC 350:SYST:ERR? 400:READ? 500:READ? "
                   "700:READ?");
  g_assert_cmpstr (bench.handed->str, ==, "dc:+1.0E+00 dc:+2.0E+00");
  g_assert_null (rw_talk_get_trouble (bench.talk));
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
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      hear_at (&bench, 150, lines[i]);
      g_assert_null (rw_talk_get_name (bench.talk));
    }
  hear_at (&bench, 150, "A,B,0,0\n");
  g_assert_cmpstr (rw_talk_get_name (bench.talk), ==, "A B");
  g_assert_cmpstr (bench.handed->str, ==, "");
  bench_clear (&bench);
}

/* Its *IDN? leaves an error behind: that is not CONF's. */
static void
test_nameless (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 2350, NO_ERROR);
  run_to (&bench, 2400);
  g_assert_cmpstr (bench.said->str, ==,
                   "0:*CLS 100:*IDN? 1100:*IDN? 2100:*CLS 2200:CONF:VOLT:DC 2300:SYST:ERR? "
                   "2350:READ?");
  g_assert_null (rw_talk_get_name (bench.talk));
  bench_clear (&bench);
}

/* Three tries with longer and longer waits, then all over again: the meter may have been
 * switched off. */
static void
test_no_answer (void)
{
  Bench bench;

  begin (&bench);
  run_to (&bench, 10400);
  g_assert_cmpstr (bench.said->str, ==,
                   "1350:SYST:ERR? 2350:READ? 4350:SYST:ERR? 5350:READ? 9350:SYST:ERR? 10350:*CLS");
  g_assert_cmpstr (rw_talk_get_name (bench.talk), ==, "A B");
  bench_clear (&bench);
}

/* A meter that takes 1.5 s for a value is asked for its errors once, and from then on given
 * its time. */
static void
test_slow_meter (void)
{
  Bench bench;

  begin (&bench);
  hear_at (&bench, 1850, "+1.0E+00\n" NO_ERROR);
  hear_at (&bench, 3350, "+2.0E+00\n"); /* in time now */
  hear_at (&bench, 4850, "+3.0E+00\n");
  run_to (&bench, 4900);
  g_assert_cmpstr (bench.said->str, ==, "1350:SYST:ERR? 1850:READ? 3350:READ? 4850:READ?");
  g_assert_cmpstr (bench.handed->str, ==, "dc:+1.0E+00 dc:+2.0E+00 dc:+3.0E+00");
  g_assert_null (rw_talk_get_trouble (bench.talk));
  bench_clear (&bench);
}

/* One that is so slow that the question was repeated: the repetition's value is heard, and no
 * third question is asked meanwhile. */
static void
test_slower_meter (void)
{
  Bench bench;

  begin (&bench);
  hear_at (&bench, 2850, "+1.0E+00\n"); /* to the READ? at 350, after SYST:ERR? and READ? again */
  hear_at (&bench, 2900, NO_ERROR);
  hear_at (&bench, 5350, "+2.0E+00\n");
  run_to (&bench, 5500);
  g_assert_cmpstr (bench.said->str, ==, "1350:SYST:ERR? 2350:READ? 5450:READ?");
  g_assert_cmpstr (bench.handed->str, ==, "dc:+1.0E+00 dc:+2.0E+00");
  hear_at (&bench, 7950, "+3.0E+00\n");
  run_to (&bench, 7950);
  g_assert_true (g_str_has_suffix (bench.said->str, " 5450:READ? 7950:READ?"));
  bench_clear (&bench);
}

static void
test_reopened (void)
{
  Bench bench;

  begin (&bench);
  run_to (&bench, 400);
  rw_talk_restart (bench.talk, bench.now_us);
  hear_at (&bench, 450, "+1.0E+00\n"); /* the answer to before: nobody's */
  run_to (&bench, 520);
  g_assert_cmpstr (bench.said->str, ==, "400:*CLS 500:*IDN?");
  g_assert_cmpstr (rw_talk_get_name (bench.talk), ==, "A B");
  g_assert_cmpstr (bench.handed->str, ==, "");
  bench_clear (&bench);
}

/* Half an answer, and the question is repeated: neither half makes a value of its own or with
 * another. */
static void
test_half_answer (void)
{
  Bench bench;

  begin (&bench);
  hear_at (&bench, 400, "+1.2");
  run_to (&bench, 1400);
  hear_at (&bench, 1400, "5E+00\n");
  hear_at (&bench, 1400, NO_ERROR);
  hear_at (&bench, 1500, "+3.0E+00\n");
  run_to (&bench, 1500);
  g_assert_cmpstr (bench.said->str, ==, "1350:SYST:ERR? 1400:READ? 1500:READ?");
  g_assert_cmpstr (bench.handed->str, ==, "dc:+3.0E+00");
  bench_clear (&bench);
}

/* --- errors -------------------------------------------------------------------------- */

/* A device's own fault does not keep it from measuring. */
static void
test_errors_after_conf (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 150, "A,B,0,0\n");
  hear_at (&bench, 350, "+502,\"Fan \"\"2\"\" stands still\"\n");
  hear_at (&bench, 360, "-350,\"Queue overflow\"\n");
  hear_at (&bench, 370, NO_ERROR);
  run_to (&bench, 370);
  g_assert_true (g_str_has_suffix (bench.said->str,
                                   " 350:SYST:ERR? 350:SYST:ERR? 360:SYST:ERR? 370:READ?"));
  g_assert_nonnull (strstr (rw_talk_get_trouble (bench.talk), "502 “Fan \"2\" stands still”"));
  g_assert_nonnull (strstr (rw_talk_get_trouble (bench.talk), "2 errors"));
  g_assert_cmpint (rw_talk_take_news (bench.talk) & RW_TALK_NEWS_TROUBLE, !=, 0);
  hear_at (&bench, 400, "+1.0E+00\n");
  g_assert_nonnull (rw_talk_get_trouble (bench.talk)); /* still so */
  bench_clear (&bench);
}

static void
test_endless_errors (void)
{
  Bench bench;
  guint asked = 0;

  bench_init (&bench);
  hear_at (&bench, 150, "A,B,0,0\n");
  run_to (&bench, 350);
  for (guint i = 0; i < 30; i++)
    hear_at (&bench, 400 + i, "+7,\"Again\"\n");
  run_to (&bench, 440);
  for (const char *at = bench.said->str; (at = strstr (at, "SYST:ERR?")) != NULL; at++)
    asked++;
  g_assert_cmpuint (asked, ==, 16);
  g_assert_nonnull (strstr (bench.said->str, "415:READ?"));
  g_assert_nonnull (strstr (rw_talk_get_trouble (bench.talk), "16 errors"));
  bench_clear (&bench);
}

/* It would still measure what it measured before. */
static void
test_refused (void)
{
  Bench bench;

  begin (&bench);
  rw_talk_set_kind (bench.talk, RW_KIND_RIPPLE, bench.now_us);
  hear_at (&bench, 400, "+1.0E+00\n"); /* of before: it is DC */
  hear_at (&bench, 650, "-113,\"Undefined header;CONF:VOLT:AC\"\n");
  hear_at (&bench, 660, NO_ERROR);
  hear_at (&bench, 700, "+5.0E+00\n"); /* it may be talking by itself: not as AC */
  g_assert_cmpstr (bench.handed->str, ==, "dc:+1.0E+00");
  g_assert_nonnull (strstr (rw_talk_get_trouble (bench.talk),
                            "-113 “Undefined header;CONF:VOLT:AC”"));
  run_to (&bench, 6000);
  g_assert_cmpstr (bench.said->str, ==,
                   "400:*CLS 500:CONF:VOLT:AC 600:SYST:ERR? 650:SYST:ERR? 5660:*CLS "
                   "5760:CONF:VOLT:AC 5860:SYST:ERR?");
  bench_clear (&bench);
}

static void
test_question_in_vain (void)
{
  Bench bench;

  begin (&bench);
  hear_at (&bench, 1400, "-230,\"Data corrupt or stale\"\n");
  hear_at (&bench, 1410, NO_ERROR);
  g_assert_nonnull (strstr (rw_talk_get_trouble (bench.talk), "-230 “Data corrupt or stale”"));
  hear_at (&bench, 1500, "+1.0E+00\n");
  g_assert_cmpstr (bench.said->str, ==, "1350:SYST:ERR? 1400:SYST:ERR? 1410:READ?");
  g_assert_null (rw_talk_get_trouble (bench.talk)); /* over */
  bench_clear (&bench);
}

static void
test_mute (void)
{
  Bench bench;

  bench_init (&bench);
  hear_at (&bench, 150, "A,B,0,0\n");
  hear_at (&bench, 2600, "+1.0E+00\n");
  g_assert_true (g_str_has_suffix (bench.said->str, "350:SYST:ERR? 1350:*CLS 1450:CONF:VOLT:DC "
                                                    "1550:SYST:ERR? 2550:READ?"));
  g_string_truncate (bench.said, 0);
  run_to (&bench, 9000); /* until it begins anew: another one may be there by then */
  g_test_message ("%s", bench.said->str);
  g_assert_null (strstr (bench.said->str, "SYST:ERR?"));
  bench_clear (&bench);
}

static void
test_error_grammar (void)
{
  static const struct
  {
    const char *line;
    int         code;
    const char *words; /* NULL: not an error */
  } cases[] = { { "0,\"No error\"", 0, "No error" },
                { "+0,\"No error\"", 0, "No error" },
                { "-113 , \"Undefined header;FOO\"", -113, "Undefined header;FOO" },
                { "201,'It''s off'", 201, "It's off" },
                { "-100,\"a \"\"b\"\"\"", -100, "a \"b\"" },
                { "-221,Settings conflict", -221, "Settings conflict" },
                { "1,2", 0, NULL },
                { "-1.5,\"x\"", 0, NULL },
                { "--5,\"x\"", 0, NULL },
                { "12345678901,\"x\"", 0, NULL },
                { "5,\"open", 0, NULL },
                { "5,\"x\" y", 0, NULL },
                { "5", 0, NULL },
                { "", 0, NULL },
                { ",\"x\"", 0, NULL } };
  g_autofree char *longest = g_strnfill (300, 'x');
  g_autofree char *line = g_strdup_printf ("7,\"%s\"", longest);
  char *words;
  int code;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = NULL;

      g_assert_cmpint (rw_scpi_answer_read_error (cases[i].line, &code, &got), ==,
                       cases[i].words != NULL);
      g_assert_cmpstr (got, ==, cases[i].words);
      if (got != NULL)
        g_assert_cmpint (code, ==, cases[i].code);
    }
  g_assert_true (rw_scpi_answer_read_error (line, &code, &words));
  g_assert_cmpuint (strlen (words), ==, 120);
  g_free (words);
}

/* --- another kind -------------------------------------------------------------------- */

static void
test_kinds (void)
{
  Bench bench;

  begin (&bench);
  hear_at (&bench, 400, "+1.0E+00\n");
  run_to (&bench, 450);
  rw_talk_set_kind (bench.talk, RW_KIND_RIPPLE, bench.now_us);
  hear_at (&bench, 500, "+2.0E+00\n"); /* asked for as DC */
  hear_at (&bench, 750, NO_ERROR);
  hear_at (&bench, 900, "+3.0E-03\n");
  rw_talk_set_kind (bench.talk, RW_KIND_OHMS, bench.now_us);
  hear_at (&bench, 1250, NO_ERROR);
  hear_at (&bench, 1300, "+4.0E+03\n");
  rw_talk_set_kind (bench.talk, RW_KIND_AMPS, bench.now_us); /* the leads must be moved for that */
  hear_at (&bench, 1350, "+4.1E+03\n");
  g_assert_cmpstr (bench.handed->str, ==,
                   "dc:+1.0E+00 dc:+2.0E+00 ripple:+3.0E-03 ohms:+4.0E+03 ohms:+4.1E+03");
  g_test_message ("%s", bench.said->str);
  g_assert_nonnull (strstr (bench.said->str, "*CLS 600:CONF:VOLT:AC 700:SYST:ERR? 750:READ?"));
  g_assert_nonnull (strstr (bench.said->str, "*CLS 1000:CONF:RES 1100:SYST:ERR? 1250:READ?"));
  bench_clear (&bench);
}

/* The answer to a question from before the change comes after it. */
static void
test_late_old_value (void)
{
  Bench bench;

  begin (&bench);
  rw_talk_set_kind (bench.talk, RW_KIND_RIPPLE, bench.now_us);
  run_to (&bench, 1600); /* 350: READ? in vain; 1350 *CLS, 1450 CONF, 1550 SYST:ERR? */
  g_test_message ("%s", bench.said->str);
  hear_at (&bench, 1700, "+5.0E+00\n");
  hear_at (&bench, 1710, NO_ERROR);
  hear_at (&bench, 1800, "+1.0E-03\n");
  g_assert_cmpstr (bench.handed->str, ==, "ripple:+1.0E-03");
  bench_clear (&bench);
}

/* And the instrument gives no sign of what is old. */
static void
test_late_old_value_unmarked (void)
{
  Bench bench;

  begin (&bench);
  rw_talk_set_kind (bench.talk, RW_KIND_RIPPLE, bench.now_us);
  run_to (&bench, 3800); /* SYST:ERR? twice in vain as well, READ? said */
  g_test_message ("%s", bench.said->str);
  g_assert_true (g_str_has_suffix (bench.said->str, "READ?"));
  hear_at (&bench, 3850, "+5.0E+00\n");
  hear_at (&bench, 3950, "+1.0E-03\n");
  g_assert_cmpstr (bench.handed->str, ==, "ripple:+1.0E-03");
  bench_clear (&bench);
}

/* An instrument at the far end of a slow line: it answers in order, everything @delay later.
 * Its DC values are 5, its AC values 1. */
typedef struct
{
  Bench     bench;
  GPtrArray *answers; /* "milliseconds text" */
  gsize     obeyed;   /* how much of bench.said */
  gboolean  ac;
  gint64    delay;
  gboolean  mute;     /* knows READ? and nothing else that answers */
  gboolean  lossy;    /* one in four answers is lost */
  gboolean  dc_only;  /* refuses AC */
  guint     errors;   /* in its queue */
} Far;

static const char *
far_obey (Far        *self,
          const char *command)
{
  if (g_str_has_prefix (command, "*CLS"))
    self->errors = 0;
  if (g_str_has_prefix (command, "CONF:VOLT:AC") && self->dc_only)
    self->errors++;
  else if (g_str_has_prefix (command, "CONF:"))
    self->ac = g_str_has_prefix (command, "CONF:VOLT:AC");
  if (g_str_has_prefix (command, "READ?"))
    return self->ac ? "1\n" : "5\n";
  if (!self->mute && g_str_has_prefix (command, "*IDN?"))
    return "A,B,0,0\n";
  if (!self->mute && g_str_has_prefix (command, "SYST:ERR?"))
    return self->errors > 0 ? self->errors--, "-113,\"Undefined header\"\n" : NO_ERROR;
  return NULL;
}

static void
far_live (Far   *self,
          gint64 t)
{
  run_to (&self->bench, t);
  while (self->obeyed < self->bench.said->len)
    {
      const char *word = self->bench.said->str + self->obeyed;
      const char *text = far_obey (self, strchr (word, ':') + 1);

      if (text != NULL && !(self->lossy && g_test_rand_int_range (0, 4) == 0))
        g_ptr_array_add (self->answers, g_strdup_printf ("%d %s", (int) (t + self->delay), text));
      self->obeyed += strcspn (word, " ") + 1;
    }
  while (self->answers->len > 0 && g_ascii_strtoll (self->answers->pdata[0], NULL, 10) <= t)
    {
      hear_at (&self->bench, t, strchr (self->answers->pdata[0], ' ') + 1);
      g_ptr_array_remove_index (self->answers, 0);
    }
}

/* Whether AC values came in the end; never is one handed on as what it is not. */
static gboolean
far_run (Far    far,
         gint64 change)
{
  gboolean came;

  bench_init (&far.bench);
  far.answers = g_ptr_array_new_with_free_func (g_free);
  for (gint64 t = 0; t < 25000; t += 25)
    {
      if (t == change)
        rw_talk_set_kind (far.bench.talk, RW_KIND_RIPPLE, start_us + t * ms);
      far_live (&far, t);
    }
  g_assert_null (strstr (far.bench.handed->str, "ripple:5"));
  g_assert_null (strstr (far.bench.handed->str, "dc:1"));
  came = strstr (far.bench.handed->str, "ripple:1") != NULL;
  g_ptr_array_unref (far.answers);
  bench_clear (&far.bench);
  return came;
}

/* At every moment of the talk, with every delay of the answers. */
static void
test_never_mislabelled (void)
{
  for (guint kind = 0; kind < 4; kind++)
    for (gint64 delay = 0; delay <= 2400; delay += 300)
      {
        guint came = 0, runs = 0;

        for (gint64 change = 0; change < 4000; change += 75, runs++)
          came += far_run ((Far){ .delay = delay, .mute = kind % 2, .lossy = kind / 2 }, change);
        g_test_message ("mute %u, lossy %u, delay %d ms: AC values came in %u of %u runs", kind % 2,
                        kind / 2, (int) delay, came, runs);
        g_assert_cmpuint (came, >=, kind / 2 ? runs * 9 / 10 : runs);
      }
}

/* Nor is a refusal overlooked, however late it comes. */
static void
test_refusal_never_overlooked (void)
{
  for (gint64 delay = 0; delay <= 2400; delay += 300)
    for (gint64 change = 0; change < 4000; change += 75)
      g_assert_false (far_run ((Far){ .delay = delay, .dc_only = TRUE }, change));
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
  g_test_add_func ("/talk/does not flood a slower one", test_slower_meter);
  g_test_add_func ("/talk/begins anew after the port was opened again", test_reopened);
  g_test_add_func ("/talk/never joins half an answer with another", test_half_answer);
  g_test_add_func ("/errors/are read to the end after configuring", test_errors_after_conf);
  g_test_add_func ("/errors/are read 16 times at most", test_endless_errors);
  g_test_add_func ("/errors/of configuring keep it from reading", test_refused);
  g_test_add_func ("/errors/are read after a question in vain", test_question_in_vain);
  g_test_add_func ("/errors/are not asked for when it never answers that", test_mute);
  g_test_add_func ("/errors/are told from values", test_error_grammar);
  g_test_add_func ("/kinds/are configured between two questions", test_kinds);
  g_test_add_func ("/kinds/a late value of the old kind is dropped", test_late_old_value);
  g_test_add_func ("/kinds/so it is without a mark", test_late_old_value_unmarked);
  g_test_add_func ("/kinds/are never mislabelled, whenever they change", test_never_mislabelled);
  g_test_add_func ("/kinds/a late refusal is not overlooked", test_refusal_never_overlooked);
  return g_test_run ();
}
