/* test-script.c: scripts make sessions, and say where they are wrong.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "practice-fixtures.h"
#include "rw-journal.h"
#include "rw-practice-script.h"

#define HEAD "cabinet Tidepool Racer\ntag B-07\nprofile classic-5-12-m5\nseed 7\n"

static RwSession *
run (const char *text)
{
  g_autoptr (GError) error = NULL;
  RwSession *session = rw_practice_script_run (text, "a.script", NULL, &error);

  g_assert_no_error (error);
  return session;
}

static const RwEvent *
nth_of (RwSession  *session,
        RwEventType type,
        guint       nth)
{
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    if (rw_session_get_event (session, i)->type == type && nth-- == 0)
      return rw_session_get_event (session, i);
  g_assert_not_reached ();
}

static guint
count_of (RwSession  *session,
          RwEventType type)
{
  guint n = 0;

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    n += rw_session_get_event (session, i)->type == type;
  return n;
}

static void
head_becomes_the_header (void)
{
  g_autoptr (RwSession) session = run (
      HEAD "started 2026-05-01T08:00:00Z\nmeter 0.8 3 4000 the other meter\npower on\n");
  const RwSessionHeader *header = rw_session_get_header (session);
  const RwMeterFacts *facts = rw_session_find_meter (session, "m1");
  g_autofree char *started = g_date_time_format_iso8601 (header->started);

  g_assert_cmpstr (header->cabinet_name, ==, "Tidepool Racer");
  g_assert_cmpstr (header->cabinet_tag, ==, "B-07");
  g_assert_cmpstr (rw_profile_get_id (header->profile), ==, "classic-5-12-m5");
  g_assert_cmpstr (started, ==, "2026-05-01T08:00:00Z");
  g_assert_cmpstr (facts->name, ==, "the other meter");
  g_assert_cmpfloat (facts->percent, ==, 0.8);
  g_assert_cmpfloat (facts->counts, ==, 3);
  g_assert_true (g_uuid_string_is_valid (header->id));
}

static void
first_event_tells_the_setup (void)
{
  g_autoptr (RwSession) session = run (HEAD);
  const RwEvent *event = rw_session_get_event (session, 0);

  g_assert_cmpint (event->type, ==, RW_EVENT_SETUP);
  g_assert_cmpint (event->setup.power_on, ==, RW_SAID_NO);
  g_assert_cmpint (event->setup.board_fitted, ==, RW_SAID_YES);
  g_assert_cmpint (event->setup.warm, ==, RW_SAID_NO);
}

/* A settled reading of a healthy cabinet: near 5.04 V, in whole counts, at the time that it
 * took. */
static void
read_keeps_a_settled_value (void)
{
  g_autoptr (RwSession) session = run (
      HEAD
      "power on\nwait 5\nread p5 board\nread p12 board\nread gnd wire\nread p5 board ripple\n");
  const RwReading *p5 = &nth_of (session, RW_EVENT_READING, 0)->reading;
  const RwReading *p12 = &nth_of (session, RW_EVENT_READING, 1)->reading;
  const RwReading *gnd = &nth_of (session, RW_EVENT_READING, 2)->reading;
  const RwReading *ripple = &nth_of (session, RW_EVENT_READING, 3)->reading;

  g_assert_cmpuint (count_of (session, RW_EVENT_SAMPLE), ==, 0);
  g_assert_cmpstr (p5->rail, ==, "p5");
  g_assert_cmpint (p5->place, ==, RW_PLACE_BOARD);
  g_assert_cmpint (p5->kind, ==, RW_KIND_DC);
  g_assert_cmpstr (p5->meter, ==, "m1");
  g_assert_cmpfloat_with_epsilon (p5->value, 5.04, 0.06);
  g_assert_cmpfloat_with_epsilon (p5->value * 1000, round (p5->value * 1000), 1e-6);
  g_assert_cmpfloat_with_epsilon (p5->step, 0.001, 1e-12);
  g_assert_true (isnan (p5->u));
  g_assert_cmpfloat_with_epsilon (p12->step, 0.01, 1e-12);
  g_assert_cmpfloat (gnd->value, >, 0.01);
  g_assert_cmpfloat (gnd->value, <, 0.06);
  g_assert_cmpint (ripple->kind, ==, RW_KIND_RIPPLE);
  g_assert_cmpfloat (ripple->value, <, 0.03);
  g_assert_cmpfloat (rw_session_get_end (session), <, 40);
}

static void
stream_records_samples_and_keep_keeps (void)
{
  g_autoptr (RwSession) session = run (HEAD "power on\nstream p5 board 20\nkeep\n");
  const guint n = count_of (session, RW_EVENT_SAMPLE);
  double last = 0;

  g_assert_cmpuint (n, >=, 59);
  g_assert_cmpuint (n, <=, 80);
  g_assert_cmpuint (count_of (session, RW_EVENT_READING), ==, 1);
  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      g_assert_cmpfloat (event->t, >=, last);
      g_assert_cmpuint (event->n, ==, i + 1);
      last = event->t;
    }
}

static void
job_is_told_in_events (void)
{
  g_autoptr (RwSession) session = run (
      HEAD
      "fault trim-low 0.75\non-reset reset seen\n"
      "symptom resets present\nnote it resets in play\npower on\nawait reset 300\n"
      "symptom resets\nstage under-load\nstream p5 board 60\nread p5 board\ntrim +350mV\n"
      "read p5 board\nmark trimmed\nwait 130\nsymptom resets\nrepair edge-oxidised no-change\n"
      "repair trim-low fixed\nundo\nfinding crimp-tug firm\nfinding trim-seal-look\n");

  g_assert_cmpuint (count_of (session, RW_EVENT_TRIM), ==, 1);
  g_assert_cmpfloat (nth_of (session, RW_EVENT_READING, 0)->reading.value, <, 4.8);
  g_assert_cmpfloat_with_epsilon (nth_of (session, RW_EVENT_READING, 1)->reading.value, 5.02,
                                  0.06);
  g_assert_cmpint (nth_of (session, RW_EVENT_SYMPTOM, 1)->symptom.state, ==,
                   RW_SYMPTOM_PRESENT);
  g_assert_cmpint (nth_of (session, RW_EVENT_SYMPTOM, 2)->symptom.state, ==, RW_SYMPTOM_CURED);
  g_assert_cmpint (nth_of (session, RW_EVENT_REPAIR, 0)->repair.result, ==,
                   RW_REPAIR_NO_CHANGE);
  g_assert_cmpint (nth_of (session, RW_EVENT_REPAIR, 1)->repair.result, ==, RW_REPAIR_FIXED);
  g_assert_cmpuint (nth_of (session, RW_EVENT_RETRACT, 0)->retract.n, ==,
                    nth_of (session, RW_EVENT_REPAIR, 1)->n);
  g_assert_cmpstr (nth_of (session, RW_EVENT_FINDING, 1)->finding.outcome, ==, "turned");
  g_assert_cmpstr (nth_of (session, RW_EVENT_STAGE, 0)->stage.id, ==, "under-load");
  g_assert_cmpstr (nth_of (session, RW_EVENT_NOTE, 0)->words.text, ==, "it resets in play");
  /* During the stream the board reset: marked by itself. */
  g_assert_cmpstr (nth_of (session, RW_EVENT_MARK, 0)->words.text, ==, "reset seen");
}

/* A cabinet that has become warm says so, wherever the script is. */
static void
warming_up_is_told (void)
{
  g_autoptr (RwSession) session = run (HEAD "power on\nwait 1200\n");
  const RwEvent *last = rw_session_get_event (session, rw_session_get_n_events (session) - 1);

  g_assert_cmpint (last->type, ==, RW_EVENT_SETUP);
  g_assert_cmpint (last->setup.warm, ==, RW_SAID_YES);
  g_assert_cmpfloat (last->t, >, 300);
}

static char *
bytes_of (const char *text)
{
  g_autoptr (RwSession) session = run (text);
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("rw-script-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "a.rwlog", NULL);
  char *bytes = NULL;

  g_assert_true (rw_journal_copy (session, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &bytes, NULL, &error));
  g_unlink (path);
  g_rmdir (folder);
  return bytes;
}

static void
same_text_gives_the_same_file (void)
{
  g_autofree char *a = bytes_of (HEAD "power on\nstream p5 board 10\n");
  g_autofree char *b = bytes_of (HEAD "power on\nstream p5 board 10\n");
  g_autofree char *c = bytes_of (HEAD "seed 8\npower on\nstream p5 board 10\n");

  g_assert_cmpstr (a, ==, b);
  g_assert_cmpstr (a, !=, c);
}

static void
file_reads_back_whole (void)
{
  g_autofree char *bytes = bytes_of (
      HEAD "power on\nstream p5 board 10\nkeep\nnote Grüße, „Zitat“ and a \\ \n");
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes (bytes, strlen (bytes), "a", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (read->damaged->len, ==, 0);
  g_assert_false (read->torn_tail);
  g_assert_cmpuint (read->n_unknown, ==, 0);
  g_assert_cmpstr (nth_of (read->session, RW_EVENT_NOTE, 0)->words.text, ==,
                   "Grüße, „Zitat“ and a \\");
}

typedef struct
{
  const char *text;
  const char *line; /* what the message must name */
  const char *says;
} Wrong;

static const Wrong wrongs[] = {
  { "power on\n", "line 1", "cabinet" },
  { HEAD "power on\nfault trim-low 0.5\n", "line 6", "fault" },
  { HEAD "dance\n", "line 5", "dance" },
  { HEAD "power\n", "line 5", "power" },
  { HEAD "power maybe\n", "line 5", "maybe" },
  { HEAD "keep now\n", "line 5", "keep" },
  { HEAD "keep\n", "line 5", "keep" },
  { HEAD "read p5\n", "line 5", "read" },
  { HEAD "read p5 attic\n", "line 5", "attic" },
  { HEAD "read p99 board\n", "line 5", "p99" },
  { HEAD "read p5 board ohms\n", "line 5", "p5" },
  { HEAD "\n# a comment\nread p5 board purple\n", "line 7", "purple" },
  { HEAD "stream p5 board long\n", "line 5", "long" },
  { HEAD "wait 1e9\n", "line 5", "1e9" },
  { HEAD "wait nan\n", "line 5", "nan" },
  { HEAD "wait 0x10\n", "line 5", "0x10" },
  { HEAD "trim 7\n", "line 5", "7" },
  { HEAD "trim mV\n", "line 5", "mV" },
  { HEAD "await reset 5\n", "line 5", "5" },
  { HEAD "await dawn 5\n", "line 5", "reset" },
  { HEAD "power on\nboard pull\n", "line 6", "power off" },
  { HEAD "repair trim-low fixed\n", "line 5", "trim-low" },
  { HEAD "fault trim-low 0.5\nrepair trim-low no-change\n", "line 6", "trim-low" },
  { HEAD "repair trim-low perhaps\n", "line 5", "perhaps" },
  { HEAD "power on\nwait 5\nsymptom resets present\n", "line 7", "resets" },
  { HEAD "symptom bench-fine\n", "line 5", "bench-fine" },
  { HEAD "symptom resets sometimes\n", "line 5", "sometimes" },
  { HEAD "finding crimp-tug pin\n", "line 5", "firm" },
  { HEAD "finding hum-volume-zero\n", "line 5", "hum-volume-zero" },
  { HEAD "undo\nundo\n", "line 6", "undo" },
  { HEAD "fault trim-low 1.5\n", "line 5", "1.5" },
  { HEAD "fault gremlins 0.5\n", "line 5", "gremlins" },
  { HEAD "fault bridge-diode-open 1\npower on\n", "line 6", "bridge-diode-open" },
  { HEAD "seed -1\n", "line 5", "-1" },
  { HEAD "started yesterday\n", "line 5", "yesterday" },
  { HEAD "meter 0.5 2 6000\n", "line 5", "meter" },
  { HEAD "probes teeth\n", "line 5", "teeth" },
  { "cabinet X\nprofile no-such-profile\n", "line 2", "no-such-profile" },
  { "cabinet X\nprofile ../../etc/passwd\n", "line 2", "passwd" },
};

static void
mistakes_name_their_line (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (wrongs); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwSession)
          session = rw_practice_script_run (wrongs[i].text, "b.script", NULL, &error);

      g_assert_null (session);
      g_assert_nonnull (error);
      g_test_message ("%s", error->message);
      g_assert_nonnull (strstr (error->message, "b.script"));
      g_assert_nonnull (strstr (error->message, wrongs[i].line));
      g_assert_nonnull (strstr (error->message, wrongs[i].says));
    }
}

static void
text_that_is_no_text_is_refused (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rw_practice_script_run ("cabinet \xff\xfe\n", "c.script", NULL, &error));
  g_assert_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_SCRIPT);
  g_clear_error (&error);
  g_assert_null (rw_practice_script_run_file ("/no/such/script", NULL, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

/* Lines cut and mixed at random: an error or a session, never a crash. */
static void
random_scripts_never_crash (void)
{
  static const char *const bits[] = { "cabinet", "profile",   "classic-5-12-m5",
                                      "power",   "on",        "off",
                                      "read",    "p5",        "board",
                                      "wire",    "gnd",       "stream",
                                      "1",       "-3",        "0.5",
                                      "trim",    "mV",        "keep",
                                      "undo",    "symptom",   "resets",
                                      "finding", "crimp-tug", "repair",
                                      "fixed",   "fault",     "trim-low",
                                      "note",    "#",         "\n",
                                      "\n",      "\n",        "\t",
                                      "é" };
  g_autoptr (GRand) random = g_rand_new_with_seed (5);
  guint good = 0;

  for (guint i = 0; i < 600; i++)
    {
      g_autoptr (GString) text = g_string_new (i % 2 ? HEAD : "");
      g_autoptr (GError) error = NULL;

      for (int k = g_rand_int_range (random, 1, 12); k > 0; k--)
        g_string_append_printf (text, "%s ",
                                bits[g_rand_int_range (random, 0, G_N_ELEMENTS (bits))]);

      g_autoptr (RwSession) session = rw_practice_script_run (text->str, "r", NULL, &error);

      g_assert_true ((session == NULL) == (error != NULL));
      good += session != NULL;
    }
  g_assert_cmpuint (good, >, 0);
}

/* A call is answered by a reading that came after it was asked, and hands refer to what was shown before. */
static void
a_class_calls_first (void)
{
  g_autoptr (RwSession) session = run (HEAD "power on\nread p12 board\ncall ask p12 board\ncall hands 1 2 3\n"
                                            "call value 11.9 0.1 Anchors of the pier\ncall value 12 - Buoys\n"
                                            "read p12 board\ncall reveal\n");
  const RwEvent *ask = nth_of (session, RW_EVENT_CALL, 0), *value = nth_of (session, RW_EVENT_CALL, 2),
                *reveal = nth_of (session, RW_EVENT_CALL, 4);

  g_assert_cmpint (ask->call.form, ==, RW_CALL_ASK);
  g_assert_cmpfloat (ask->call.ask.was, ==, nth_of (session, RW_EVENT_READING, 0)->reading.value);
  g_assert_cmpstr (value->call.value.by, ==, "Anchors of the pier");
  g_assert_cmpfloat (value->call.value.give, ==, 0.1);
  g_assert_true (isnan (nth_of (session, RW_EVENT_CALL, 3)->call.value.give));
  g_assert_cmpint (reveal->call.form, ==, RW_CALL_REVEAL);
  g_assert_cmpuint (reveal->call.reveal, ==, nth_of (session, RW_EVENT_READING, 1)->n);
}

static void
nothing_is_revealed_unread (void)
{
  static const char *const scripts[] = { "power on\nread p12 board\ncall ask p12 board\ncall reveal\n",
                                         "power on\nread p12 board\ncall reveal\n", "call ask p99 board\n",
                                         "call hands 1 2\n", "call shout\n", "stage look loudly\n",
                                         "wiggle nose p5 board 5\n" };

  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autofree char *text = g_strconcat (HEAD, scripts[i], NULL);
      g_autoptr (GError) error = NULL;

      g_assert_null (rw_practice_script_run (text, "a.script", NULL, &error));
      g_assert_nonnull (strstr (error->message, "a.script, line "));
    }
}

static void
stages_are_read_or_gone_past (void)
{
  g_autoptr (RwSession)
      session = run (HEAD "stage look\nstage look read\nstage look against the plug  is out\n");

  g_assert_false (nth_of (session, RW_EVENT_STAGE, 0)->stage.read);
  g_assert_true (nth_of (session, RW_EVENT_STAGE, 1)->stage.read);
  g_assert_cmpstr (nth_of (session, RW_EVENT_STAGE, 2)->stage.against, ==, "the plug is out");
}

static double
lowest (RwSession *session)
{
  double least = INFINITY;

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    if (rw_session_get_event (session, i)->type == RW_EVENT_SAMPLE)
      least = MIN (least, rw_session_get_event (session, i)->reading.value);
  return least;
}

/* A poor crimp minds the harness, not the edge. */
static void
wiggling_finds_what_is_loose (void)
{
  g_autoptr (RwSession) loose = run (HEAD "fault poor-crimp 1\npower on\nwait 20\nwiggle harness p5 board 20\n");
  g_autoptr (RwSession) still = run (HEAD "fault poor-crimp 1\npower on\nwait 20\nwiggle edge p5 board 20\n");

  g_assert_cmpuint (count_of (loose, RW_EVENT_SAMPLE), >, 60);
  g_assert_cmpfloat (lowest (loose), <, lowest (still) - 0.02);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/script/" name, func)
  ADD ("head-becomes-the-header", head_becomes_the_header);
  ADD ("first-event-tells-the-setup", first_event_tells_the_setup);
  ADD ("read-keeps-a-settled-value", read_keeps_a_settled_value);
  ADD ("stream-records-samples-and-keep-keeps", stream_records_samples_and_keep_keeps);
  ADD ("job-is-told-in-events", job_is_told_in_events);
  ADD ("warming-up-is-told", warming_up_is_told);
  ADD ("same-text-gives-the-same-file", same_text_gives_the_same_file);
  ADD ("file-reads-back-whole", file_reads_back_whole);
  ADD ("mistakes-name-their-line", mistakes_name_their_line);
  ADD ("text-that-is-no-text-is-refused", text_that_is_no_text_is_refused);
  ADD ("random-scripts-never-crash", random_scripts_never_crash);
  ADD ("a-class-calls-first", a_class_calls_first);
  ADD ("nothing-is-revealed-that-was-not-read", nothing_is_revealed_unread);
  ADD ("stages-are-read-or-gone-past", stages_are_read_or_gone_past);
  ADD ("wiggling-finds-what-is-loose", wiggling_finds_what_is_loose);
#undef ADD
  return g_test_run ();
}
