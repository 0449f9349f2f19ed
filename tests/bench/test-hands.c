/* test-hands.c: hands-free, a job keeps what settles, once a contact, on the rail that was touched.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A meter of our own sends lines of text, three a second, through the link that every meter goes through. Time is
 * that of the bytes, so nothing here waits.
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>

#include "rw-job.h"
#include "rw-link-bytes.h"

typedef struct
{
  char    *folder, *path;
  RwJob   *job;
  RwLink  *link;
  gint64   when_us;
  GRand   *random;
} Bench;

static RwSessionHeader *
make_header (void)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autoptr (GPtrArray) meters = g_ptr_array_new ();
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m1", "bench meter", 0.5, 2);

  g_ptr_array_add (meters, facts);
  for (guint i = 0; i < profiles->len; i++)
    if (g_str_equal (rw_profile_get_id (profiles->pdata[i]), "classic-5-12-m5"))
      return rw_session_header_new (profiles->pdata[i], "Tidepool Racer", "B-07", meters, now);
  g_assert_not_reached ();
}

static void
set_up (Bench        *bench,
        gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m1", "bench meter", 0.5, 2);

  bench->folder = g_dir_make_tmp ("railwright-XXXXXX", &error);
  g_assert_no_error (error);
  bench->path = g_build_filename (bench->folder, "job.rwlog", NULL);
  bench->job = rw_job_new_bench (make_header (), bench->path, &error);
  g_assert_no_error (error);
  bench->link = rw_link_bytes_new (rw_decoder_new ("lines"));
  bench->random = g_rand_new_with_seed (7);
  bench->when_us = g_get_monotonic_time ();
  rw_job_plug (bench->job, facts, bench->link, NULL, RW_PLACE_BOARD);
  rw_job_set_setup (bench->job, (RwSetup){ RW_SAID_YES, RW_SAID_YES, RW_SAID_YES });
  rw_job_set_spot (bench->job, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  rw_job_set_hands_free (bench->job, TRUE);
}

static void
tear_down (Bench        *bench,
           gconstpointer data)
{
  g_clear_object (&bench->job);
  g_remove (bench->path);
  g_rmdir (bench->folder);
  g_rand_free (bench->random);
  g_free (bench->path);
  g_free (bench->folder);
}

/* One value in, a third of a second later. */
static void
send (Bench  *bench,
      double  value)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *line = g_strdup_printf ("%s V DC\r\n", g_ascii_formatd (number, sizeof number, "%.3f", value));

  bench->when_us += G_USEC_PER_SEC / 3;
  rw_link_bytes_push (RW_LINK_BYTES (bench->link), (const guint8 *) line, strlen (line), bench->when_us);
}

/* The leads lie about. */
static void
lift (Bench *bench)
{
  double drift = 0.1;

  for (guint i = 0; i < 8; i++)
    send (bench, drift += g_rand_double_range (bench->random, -0.12, 0.12));
}

/* They touch @value for @n samples, after the meter's own approach. */
static void
touch (Bench *bench,
       double value,
       guint  n)
{
  send (bench, value * 0.93);
  for (guint i = 0; i < n; i++)
    send (bench, value + g_rand_int_range (bench->random, -1, 2) * 0.001);
}

/* Readings kept so far: count, and the last one. */
static guint
kept (Bench     *bench,
      RwReading *last)
{
  RwSession *session = rw_job_get_session (bench->job);
  guint n = 0;

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      if (event->type != RW_EVENT_READING)
        continue;
      n++;
      *last = event->reading;
    }
  return n;
}

static guint
count_type (Bench      *bench,
            RwEventType type)
{
  RwSession *session = rw_job_get_session (bench->job);
  guint n = 0;

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    n += rw_session_get_event (session, i)->type == type;
  return n;
}

/* A contact is kept once however long it lasts, and again when the same point is touched again. */
static void
test_a_contact_is_kept_once (Bench        *bench,
                             gconstpointer data)
{
  RwReading last;

  lift (bench);
  touch (bench, 5.021, 40);
  g_assert_cmpuint (kept (bench, &last), ==, 1);
  g_assert_cmpstr (last.rail, ==, "p5");
  g_assert_cmpint (last.place, ==, RW_PLACE_BOARD);
  g_assert_cmpfloat_with_epsilon (last.value, 5.021, 0.0015);
  g_assert_cmpstr (rw_job_get_rail (bench->job), ==, "p12"); /* the next is asked for */
  lift (bench);
  rw_job_set_spot (bench->job, "p5", RW_PLACE_BOARD, RW_KIND_DC);
  touch (bench, 5.021, 12);
  g_assert_cmpuint (kept (bench, &last), ==, 2);
}

/* Every rail is touched in turn, one of them not the one asked for: each is kept where it is. */
static void
test_rails_are_found_by_their_values (Bench        *bench,
                                      gconstpointer data)
{
  RwReading last;

  lift (bench);
  touch (bench, 5.02, 12);
  lift (bench);
  touch (bench, -4.93, 12); /* +12 was asked for */
  g_assert_cmpuint (kept (bench, &last), ==, 2);
  g_assert_cmpstr (last.rail, ==, "m5");
  lift (bench);
  touch (bench, 11.93, 12);
  g_assert_cmpuint (kept (bench, &last), ==, 3);
  g_assert_cmpstr (last.rail, ==, "p12");
}

/* No sample of a rail stands at a value that its contact never had: neither air nor another rail's. */
static void
test_samples_are_of_the_rail_they_say (Bench        *bench,
                                       gconstpointer data)
{
  RwSession *session = rw_job_get_session (bench->job);
  guint n = 0;

  lift (bench);
  touch (bench, 5.02, 12);
  lift (bench);
  touch (bench, 11.93, 12);
  lift (bench);
  touch (bench, -4.93, 12);
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);
      const double nominal = g_strcmp0 (event->type == RW_EVENT_SAMPLE ? event->reading.rail : "", "p5") == 0  ? 5.02
                             : g_strcmp0 (event->type == RW_EVENT_SAMPLE ? event->reading.rail : "", "p12") == 0 ? 11.93
                                                                                                               : -4.93;

      if (event->type != RW_EVENT_SAMPLE)
        continue;
      n++;
      g_assert_cmpfloat_with_epsilon (event->reading.value, nominal, 0.05 * fabs (nominal));
    }
  g_assert_cmpuint (n, >, 25);
}

/* The screw is turned with the leads on +5: a new position, and its value is kept by itself, after the turn. */
static void
test_a_turn_is_written_down_before_its_reading (Bench        *bench,
                                                gconstpointer data)
{
  RwSession *session = rw_job_get_session (bench->job);
  RwReading last;
  int trim = -1, reading = -1;

  lift (bench);
  touch (bench, 4.90, 12);
  for (double v = 4.90; v < 5.05; v += 0.02)
    send (bench, v);
  for (guint i = 0; i < 12; i++)
    send (bench, 5.052);
  g_assert_cmpuint (kept (bench, &last), ==, 2);
  g_assert_cmpstr (last.rail, ==, "p5");
  g_assert_cmpfloat_with_epsilon (last.value, 5.052, 0.0015);
  g_assert_cmpuint (count_type (bench, RW_EVENT_TRIM), ==, 1);
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      if (event->type == RW_EVENT_TRIM)
        trim = (int) i;
      if (event->type == RW_EVENT_READING)
        reading = (int) i;
    }
  g_assert_cmpint (trim, <, reading);
}

/* 8 V is no rail of this cabinet: it is said, and nothing is written. */
static void
test_a_value_of_no_rail_is_not_kept (Bench        *bench,
                                     gconstpointer data)
{
  RwReading last;

  lift (bench);
  touch (bench, 5.02, 12);
  lift (bench);
  touch (bench, 8.31, 12);
  g_assert_cmpuint (kept (bench, &last), ==, 1);
  g_assert_nonnull (rw_job_get_hands_words (bench->job));
}

/* What cannot be told is asked, waits for an answer after the leads are gone, and is then kept as answered. */
static void
test_a_question_waits_and_is_answered (Bench        *bench,
                                       gconstpointer data)
{
  RwReading last = { 0 };
  const RwJobQuestion *question;

  /* 4.3 V when +12 was asked for: a very low +5, somewhere. */
  rw_job_set_spot (bench->job, "p12", RW_PLACE_BOARD, RW_KIND_DC);
  lift (bench);
  touch (bench, 4.31, 12);
  lift (bench);
  question = rw_job_get_question (bench->job);
  g_assert_nonnull (question);
  g_assert_cmpuint (kept (bench, &last), ==, 0);
  for (guint i = 0; i < question->n; i++)
    g_assert_cmpfloat (question->guess[i].p, <, RW_RAIL_GUESS_SURE);

  const char *rail = question->guess[0].rail;

  rw_job_answer (bench->job, 0);
  g_assert_null (rw_job_get_question (bench->job));
  g_assert_cmpuint (kept (bench, &last), ==, 1);
  g_assert_cmpstr (last.rail, ==, rail);
  g_assert_cmpfloat_with_epsilon (last.value, 4.31, 0.002);
}

/* Answered while the leads are still there: the reading, and from then on the samples, are of the rail named. */
static void
test_an_answer_places_the_contact_that_lasts (Bench        *bench,
                                              gconstpointer data)
{
  RwReading last = { 0 };
  const guint before = count_type (bench, RW_EVENT_SAMPLE);

  rw_job_set_spot (bench->job, "m5", RW_PLACE_BOARD, RW_KIND_DC);
  lift (bench);
  touch (bench, 4.31, 12);
  g_assert_nonnull (rw_job_get_question (bench->job));
  g_assert_cmpuint (count_type (bench, RW_EVENT_SAMPLE), ==, before);
  rw_job_answer (bench->job, 0);
  touch (bench, 4.31, 3);
  g_assert_cmpuint (kept (bench, &last), ==, 1);
  g_assert_cmpstr (last.rail, ==, "p5");
  g_assert_cmpuint (count_type (bench, RW_EVENT_SAMPLE), >, before + 5);
}

/* A second meter that stays on −5 keeps by itself too, and one turn seen by both is one turn. */
static void
test_two_meters_see_one_turn (Bench        *bench,
                              gconstpointer data)
{
  g_autoptr (RwMeterFacts) facts = rw_meter_facts_new ("m2", "second", 0.8, 3);
  RwLink *second = rw_link_bytes_new (rw_decoder_new ("lines")), *first = bench->link;
  RwReading last;

  rw_job_plug (bench->job, facts, second, "m5", RW_PLACE_BOARD);
  g_assert_cmpuint (count_type (bench, RW_EVENT_METER), ==, 1);
  lift (bench);
  for (guint i = 0; i < 60; i++)
    {
      const double x = i < 20 ? 4.90 : MIN (4.90 + 0.02 * (i - 20), 5.06);

      bench->link = first;
      send (bench, x);
      bench->link = second;
      send (bench, -x * 0.97);
    }
  bench->link = first;
  g_assert_cmpuint (kept (bench, &last), ==, 4);
  g_assert_cmpuint (count_type (bench, RW_EVENT_TRIM), ==, 1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add ("/hands/" name, Bench, NULL, set_up, func, tear_down)
  ADD ("a-contact-is-kept-once", test_a_contact_is_kept_once);
  ADD ("rails-are-found-by-their-values", test_rails_are_found_by_their_values);
  ADD ("samples-are-of-the-rail-they-say", test_samples_are_of_the_rail_they_say);
  ADD ("a-turn-is-written-down-before-its-reading", test_a_turn_is_written_down_before_its_reading);
  ADD ("a-value-of-no-rail-is-not-kept", test_a_value_of_no_rail_is_not_kept);
  ADD ("a-question-waits-and-is-answered", test_a_question_waits_and_is_answered);
  ADD ("an-answer-places-the-contact-that-lasts", test_an_answer_places_the_contact_that_lasts);
  ADD ("two-meters-see-one-turn", test_two_meters_see_one_turn);
#undef ADD
  return g_test_run ();
}
