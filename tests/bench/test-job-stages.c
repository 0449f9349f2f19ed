/* test-job-stages.c: what a person does at the stages becomes events, and what a meter shows stops a stage at once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Events are put in with times of our own, so that seconds after the power came on need not be waited for.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "bench-folder.h"
#include "rw-job-stages.h"

typedef struct
{
  char  *folder, *path;
  RwJob *job;
  double t; /* seconds: of the last event put in */
} Bench;

/* Two meters: one that moves about, one that may stay on a rail. */
static RwSessionHeader *
make_header (void)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  g_autoptr (GPtrArray) meters = g_ptr_array_new ();
  g_autoptr (RwMeterFacts) one = rw_meter_facts_new ("m1", "bench meter", 0.5, 2);
  g_autoptr (RwMeterFacts) two = rw_meter_facts_new ("m2", "second meter", 0.5, 2);

  g_ptr_array_add (meters, one);
  g_ptr_array_add (meters, two);
  for (guint i = 0; i < profiles->len; i++)
    if (g_str_equal (rw_profile_get_id (profiles->pdata[i]), "dram-5-12-m5"))
      return rw_session_header_new (profiles->pdata[i], "Tidepool Racer", "B-07", meters, started);
  g_assert_not_reached ();
}

static void
set_up (Bench        *bench,
        gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  bench->folder = g_dir_make_tmp ("railwright-XXXXXX", &error);
  g_assert_no_error (error);
  bench->path = g_build_filename (bench->folder, "job.rwlog", NULL);
  bench->job = rw_job_new_bench (make_header (), bench->path, &error);
  g_assert_no_error (error);
  bench->t = 0;
}

static void
tear_down (Bench        *bench,
           gconstpointer data)
{
  g_clear_object (&bench->job);
  remove_folder (bench->folder);
  g_free (bench->path);
  g_free (bench->folder);
}

/* @after: seconds after the last one. */
static void
put (Bench  *bench,
     double  after,
     RwEvent event)
{
  bench->t += after;
  event.t = bench->t;
  rw_session_add (rw_job_get_session (bench->job), &event);
}

static void
say_setup (Bench *bench,
           double after,
           RwSaid power,
           RwSaid board)
{
  put (bench, after, rw_event_make_setup (0, (RwSetup){ power, board, RW_SAID_NOT }));
}

static void
show (Bench      *bench,
      double      after,
      const char *meter,
      const char *rail,
      double      volts)
{
  const RwReading sample = rw_reading_make (rail, RW_PLACE_BOARD, RW_KIND_DC, volts, 0.01, meter);

  put (bench, after, rw_event_make_sample (0, &sample));
}

/* At first power, the board in, the power on from second 10 on. */
static void
come_to_first_power (Bench *bench)
{
  put (bench, 1, rw_event_make_stage (0, "first-power"));
  put (bench, 1, rw_event_make_stage_read (0, "first-power"));
  say_setup (bench, 1, RW_SAID_NO, RW_SAID_YES);
  say_setup (bench, 7, RW_SAID_YES, RW_SAID_NOT);
}

/* What the power must go off for: a banner's text, and the stage stopped; or neither. */
static void
assert_off (Bench      *bench,
            const char *words)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = rw_job_dup_off_now (bench->job);
  g_autoptr (RwStages) stages = rw_job_dup_stages (bench->job, &error);
  const RwGateReason *off;

  g_assert_no_error (error);
  off = rw_stages_get_off (stages);
  if (words == NULL)
    {
      g_assert_null (text);
      g_assert_null (off);
      return;
    }
  g_assert_nonnull (text);
  g_assert_nonnull (strstr (text, words));
  g_assert_nonnull (off);
  g_assert_cmpstr (off->text, ==, text);
  if (stages->current >= 0)
    {
      g_assert_cmpint (stages->stages[stages->current].status, ==, RW_STAGE_BLOCKED);
      g_assert_true (rw_stages_get_reason (stages, (RwStage) stages->current)->off);
    }
}

/* --- what people do ------------------------------------------------------------------------------- */

static const RwEvent *
last_event (Bench *bench)
{
  RwSession *session = rw_job_get_session (bench->job);

  return rw_session_get_event (session, rw_session_get_n_events (session) - 1);
}

static void
test_what_people_do (Bench        *bench,
                     gconstpointer data)
{
  const RwStageQuestion *question = rw_job_find_stage_question (bench->job, "stage-plug-out");

  rw_job_enter_stage (bench->job, RW_STAGE_LOOK);
  g_assert_cmpint (last_event (bench)->type, ==, RW_EVENT_STAGE);
  g_assert_cmpstr (last_event (bench)->stage.id, ==, "look");
  g_assert_false (last_event (bench)->stage.read);
  rw_job_read_hazard (bench->job, RW_STAGE_LOOK);
  g_assert_true (last_event (bench)->stage.read);
  rw_job_answer_stage (bench->job, question, FALSE);
  g_assert_cmpint (last_event (bench)->type, ==, RW_EVENT_FINDING);
  g_assert_cmpstr (last_event (bench)->finding.check, ==, "stage-plug-out");
  g_assert_cmpstr (last_event (bench)->finding.outcome, ==, "no");
  rw_job_go_against (bench->job, RW_STAGE_LOOK, "it hangs on a plug of its own");
  g_assert_cmpstr (last_event (bench)->stage.against, ==, "it hangs on a plug of its own");

  g_autoptr (RwStages) stages = rw_job_dup_stages (bench->job, NULL);

  g_assert_cmpint (stages->current, ==, RW_STAGE_LOOK);
  g_assert_true (stages->stages[RW_STAGE_LOOK].hazard_read);
  g_assert_cmpuint (stages->against->len, ==, 1);
}

/* One undo takes the answer back, and the stage asks again. */
static void
test_an_answer_is_taken_back (Bench        *bench,
                              gconstpointer data)
{
  rw_job_enter_stage (bench->job, RW_STAGE_LOOK);
  rw_job_read_hazard (bench->job, RW_STAGE_LOOK);
  rw_job_answer_stage (bench->job, rw_job_find_stage_question (bench->job, "stage-plug-out"), FALSE);

  g_autoptr (RwStages) before = rw_job_dup_stages (bench->job, NULL);

  rw_job_undo (bench->job);

  g_autoptr (RwStages) after = rw_job_dup_stages (bench->job, NULL);

  g_assert_cmpint (before->stages[RW_STAGE_LOOK].status, ==, RW_STAGE_BLOCKED);
  g_assert_cmpint (after->stages[RW_STAGE_LOOK].status, ==, RW_STAGE_CURRENT);
  g_assert_cmpuint (after->stages[RW_STAGE_LOOK].n_open, ==, before->stages[RW_STAGE_LOOK].n_open + 1);
}

static void
test_questions_are_found (Bench        *bench,
                          gconstpointer data)
{
  const RwStageQuestion *question = rw_job_find_stage_question (bench->job, "stage-connector-cool");

  g_assert_nonnull (question);
  g_assert_cmpstr (question->id, ==, "stage-connector-cool");
  g_assert_null (rw_job_find_stage_question (bench->job, "edge-connector-look"));
  g_assert_null (rw_job_find_stage_question (bench->job, NULL));
  g_assert_true (rw_job_get_stage_words (bench->job, NULL) == rw_job_get_stage_words (bench->job, NULL));
}

/* --- off now, from what is shown ------------------------------------------------------------------ */

typedef struct
{
  const char *rail;
  double      volts;
  double      after; /* seconds after the power came on */
  const char *words; /* NULL: it may stay on */
} Shown;

/* 4.0 and 5.5 V, with 0.5 % + 2 counts of the meter between sure and too close to call; −5 V guards the memory. */
static const Shown shown[] = {
  { "p5", 5.04, 2, NULL },
  { "p5", 4.05, 2, NULL },
  { "p5", 3.98, 2, NULL }, /* too close to call */
  { "p5", 3.80, 2, "+5 V stands at 3.80" },
  { "p5", 0.00, 2, "+5 V stands at 0" },
  { "p5", 5.53, 2, NULL },
  { "p5", 5.80, 2, "Off now: +5 V stands at 5.80" },
  { "p5", -5.02, 2, "the wrong way round" },
  { "p5", NAN, 2, "overload" },
  { "m5", -5.06, 2, NULL },
  { "m5", -1.20, 2, "memory is destroyed" },
  { "p12", 13.90, 2, "+12 V stands at 13.90" },
  { "p12", 10.20, 2, NULL },
  /* It comes up, and the display follows: low is not believed at once, high is. */
  { "p5", 3.20, 0.4, NULL },
  { "p5", 3.20, 1.4, NULL },
  { "p5", 3.20, 1.6, "+5 V stands at 3.20" },
  { "m5", -0.40, 0.4, NULL },
  { "p5", 5.80, 0.1, "+5 V stands at 5.80" },
  { "p12", 13.90, 0.1, "+12 V stands at 13.90" },
  { "p5", NAN, 0.1, "overload" },
};

static void
test_shown_values (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    {
      Bench bench;

      set_up (&bench, NULL);
      come_to_first_power (&bench);
      g_test_message ("%s at %g V after %g s", shown[i].rail, shown[i].volts, shown[i].after);
      show (&bench, shown[i].after, "m1", shown[i].rail, shown[i].volts);
      assert_off (&bench, shown[i].words);
      tear_down (&bench, NULL);
    }
}

/* What the meter showed while the power was off says nothing of the power that came on since. */
static void
test_shown_before (Bench        *bench,
                   gconstpointer data)
{
  come_to_first_power (bench);
  say_setup (bench, 1, RW_SAID_NO, RW_SAID_NOT);
  show (bench, 30, "m1", "p5", 0);
  assert_off (bench, NULL);
  say_setup (bench, 10, RW_SAID_YES, RW_SAID_NOT);
  assert_off (bench, NULL);
  show (bench, 0.3, "m1", "p5", 2.1);
  assert_off (bench, NULL);
  show (bench, 1.7, "m1", "p5", 2.1);
  assert_off (bench, "2.1");

  /* Nor when it was too high. */
  say_setup (bench, 1, RW_SAID_NO, RW_SAID_NOT);
  show (bench, 0.2, "m1", "p5", 5.8);
  say_setup (bench, 1, RW_SAID_YES, RW_SAID_NOT);
  assert_off (bench, NULL);
}

/* That the power is on may be said twice; it came on once. */
static void
test_said_twice (Bench        *bench,
                 gconstpointer data)
{
  come_to_first_power (bench);
  say_setup (bench, 5, RW_SAID_YES, RW_SAID_YES);
  show (bench, 0.2, "m1", "p5", 3.2);
  assert_off (bench, "+5 V stands at 3.20");
}

/* It lasts as long as it is shown, and ends with the power, or with the board. */
static void
test_it_ends (Bench        *bench,
              gconstpointer data)
{
  come_to_first_power (bench);
  show (bench, 3, "m1", "p5", 3.2);
  assert_off (bench, "3.20");
  show (bench, 1, "m1", "p5", 5.02);
  assert_off (bench, NULL);
  show (bench, 1, "m1", "p5", 3.1);
  assert_off (bench, "3.10");
  say_setup (bench, 1, RW_SAID_NO, RW_SAID_NOT);
  assert_off (bench, NULL);
  say_setup (bench, 1, RW_SAID_YES, RW_SAID_NO);
  show (bench, 3, "m1", "p5", 3.1);
  assert_off (bench, NULL);
}

/* Once kept it stays, whatever is shown afterwards. */
static void
test_kept_stays (Bench        *bench,
                 gconstpointer data)
{
  const RwReading kept = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 3.2, 0.01, "m1");

  come_to_first_power (bench);
  put (bench, 3, rw_event_make_reading (0, &kept));
  show (bench, 1, "m1", "p5", 5.02);
  assert_off (bench, "3.20");
}

/* Whichever meter sees it. */
static void
test_every_meter (Bench        *bench,
                  gconstpointer data)
{
  come_to_first_power (bench);
  show (bench, 3, "m2", "m5", -0.6);
  show (bench, 0.2, "m1", "p5", 5.02);
  assert_off (bench, "−5 V is missing");
  show (bench, 0.2, "m1", "p5", 3.2);
  show (bench, 0.2, "m2", "m5", -5.04);
  assert_off (bench, "+5 V stands at 3.20");
}

/* Drops and ripple are small and well; a job that is no bring-up is not told to switch off. */
static void
test_what_is_no_rail_voltage (Bench        *bench,
                              gconstpointer data)
{
  const RwReading drop = rw_reading_make ("p5", RW_PLACE_WIRE, RW_KIND_DC, 0.06, 0.001, "m1");
  const RwReading ripple = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_RIPPLE, 0.02, 0.001, "m1");

  say_setup (bench, 1, RW_SAID_YES, RW_SAID_YES);
  show (bench, 5, "m1", "p5", 3.2);
  assert_off (bench, NULL);
  come_to_first_power (bench);
  put (bench, 3, rw_event_make_sample (0, &drop));
  assert_off (bench, NULL);
  put (bench, 3, rw_event_make_sample (0, &ripple));
  assert_off (bench, NULL);
}

/* From first power on the leads move about: little or nothing on them is no reason, too much is. */
static void
test_leads_on_the_way (Bench        *bench,
                       gconstpointer data)
{
  come_to_first_power (bench);
  put (bench, 1, rw_event_make_stage (0, "under-load"));
  show (bench, 5, "m1", "p5", 0.02);
  assert_off (bench, NULL);
  show (bench, 1, "m1", "m5", -0.4);
  assert_off (bench, NULL);
  show (bench, 1, "m1", "p5", 5.8);
  assert_off (bench, "5.80");
}

/* A replay tells what was, and stops nobody. */
static void
test_replay (Bench        *bench,
             gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *report = NULL;

  come_to_first_power (bench);
  show (bench, 3, "m1", "p5", 3.2);
  assert_off (bench, "3.20");
  g_assert_true (rw_job_flush (bench->job, &error));
  g_assert_no_error (error);

  g_autoptr (RwJob) replay = rw_job_new_replay (bench->path, &report, &error);

  g_assert_no_error (error);
  rw_replay_seek (rw_job_get_replay (replay), bench->t + 1);
  g_assert_true (rw_job_get_live (replay)->has_value);

  g_autofree char *off = rw_job_dup_off_now (replay);

  g_assert_null (off);
}

/* --- the label ------------------------------------------------------------------------------------ */

static void
test_label (Bench        *bench,
            gconstpointer data)
{
  const RwReading board = rw_reading_make ("p5", RW_PLACE_BOARD, RW_KIND_DC, 5.05, 0.01, "m1");
  const RwReading terminals = rw_reading_make ("p5", RW_PLACE_TERMINALS, RW_KIND_DC, 5.12, 0.01, "m1");

  say_setup (bench, 1, RW_SAID_YES, RW_SAID_YES);
  put (bench, 1, rw_event_make_reading (0, &board));
  put (bench, 1, rw_event_make_reading (0, &terminals));
  put (bench, 2 * 24 * 3600, rw_event_make_note (0, "two days on"));

  g_autoptr (RwLabel) label = rw_job_make_label (bench->job, "R. Harbour");
  g_autoptr (GString) text = rw_label_to_text (label);

  g_assert_cmpstr (label->date, ==, "2026-03-16");
  g_assert_cmpstr (label->who, ==, "R. Harbour");
  g_assert_nonnull (strstr (text->str, "Tidepool Racer · B-07"));
  g_assert_nonnull (strstr (label->set_point, "5.05"));
  g_assert_nonnull (strstr (label->set_point, "5.12"));
}

/* --- words ---------------------------------------------------------------------------------------- */

static void
assert_told (Bench      *bench,
             RwEvent     event,
             const char *wanted)
{
  g_autofree char *said = rw_job_describe (bench->job, &event);

  g_assert_cmpstr (said, ==, wanted);
  rw_event_clear (&event);
}

static void
test_titles (Bench        *bench,
             gconstpointer data)
{
  assert_told (bench, rw_event_make_stage (0, "bare-supply"), "stage: Supply without the board");
  assert_told (bench, rw_event_make_stage_read (0, "look"), "stage: Look and isolate, its hazards were read");
  assert_told (bench, rw_event_make_stage_against (0, "trim", "no time"),
               "stage: Set the trim, on against advice: no time");
  assert_told (bench, rw_event_make_stage (0, "lift-off"), "stage: lift-off");
}

/* Closing names a complaint by its title. */
static void
test_complaint (Bench        *bench,
                gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  put (bench, 1, rw_event_make_symptom (0, "resets", RW_SYMPTOM_PRESENT));

  g_autoptr (RwStages) stages = rw_job_dup_stages (bench->job, &error);
  const GArray *reasons = stages->stages[RW_STAGE_CLOSE].reasons;
  guint n = 0;

  g_assert_no_error (error);
  for (guint i = 0; i < reasons->len; i++)
    n += strstr (g_array_index (reasons, RwGateReason, i).text, "“Resets by itself”") != NULL;
  g_assert_cmpuint (n, ==, 1);
}

#define ADD(path, func) g_test_add ("/job-stages/" path, Bench, NULL, set_up, func, tear_down)

int
main (int    argc,
      char **argv)
{
  g_setenv ("TZ", "UTC", TRUE);
  g_test_init (&argc, &argv, NULL);
  ADD ("what people do becomes events", test_what_people_do);
  ADD ("an answer is taken back", test_an_answer_is_taken_back);
  ADD ("a stage's questions are found, others are not", test_questions_are_found);
  g_test_add_func ("/job-stages/what a meter shows stops first power when it is sure", test_shown_values);
  ADD ("what was shown before the power came on does not count", test_shown_before);
  ADD ("power said twice came on once", test_said_twice);
  ADD ("it ends with the value, the power or the board", test_it_ends);
  ADD ("what was kept stays", test_kept_stays);
  ADD ("every meter is looked at", test_every_meter);
  ADD ("drops, ripple and quick jobs are let be", test_what_is_no_rail_voltage);
  ADD ("leads on the way are no reason", test_leads_on_the_way);
  ADD ("a replay stops nobody", test_replay);
  ADD ("the label has the day of the last event", test_label);
  ADD ("stages are told by their titles", test_titles);
  ADD ("closing names a complaint by its title", test_complaint);
  return g_test_run ();
}
