/* test-drill-end.c: a drill is an ordinary session, and its end tells what was planted, spent, best and decisive.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "bench-folder.h"
#include "rw-drill-best.h"
#include "rw-drill-reckon.h"
#include "rw-drill.h"
#include "rw-job-practice.h"
#include "rw-journal-file.h"
#include "rw-setups.h"

static char *home;

/* Two drills of one code begun in the same second would share a file name. */
static void
start_afresh (void)
{
  g_autofree char *kept = g_build_filename (home, "railwright", NULL);

  remove_folder (kept);
}

static RwKnowledge *
load_knowledge (void)
{
  g_autoptr (GError) error = NULL;
  RwKnowledge *knowledge = rw_knowledge_load (NULL, &error);

  g_assert_no_error (error);
  return knowledge;
}

static void
draw (RwPracticeDrill *drill,
      guint            level,
      guint64          seed)
{
  g_autoptr (GPtrArray) profiles = rw_profile_list (NULL);
  g_autoptr (GError) error = NULL;

  g_assert_true (rw_practice_drill_draw (drill, level, seed, profiles, &error));
  g_assert_no_error (error);
}

/* Plain faults are found and mended, at a price that is no more than a day's work, and the same each time. */
static void
test_best (void)
{
  g_autoptr (RwKnowledge) knowledge = load_knowledge ();

  for (guint64 seed = 1; seed <= 4; seed++)
    {
      RwPracticeDrill drill;
      RwDrillBest one, two;

      draw (&drill, 1, seed);
      rw_drill_best_work (&one, &drill, knowledge, NULL);
      rw_drill_best_work (&two, &drill, knowledge, NULL);
      g_test_message ("%s: %.0f min, %u steps", drill.faults[0].id, one.minutes, one.steps->len);
      g_assert_true (one.fixed);
      g_assert_cmpfloat (one.minutes, >, 1);
      g_assert_cmpfloat (one.minutes, <, 480);
      g_assert_cmpfloat (one.minutes, ==, two.minutes);
      g_assert_cmpuint (one.steps->len, ==, two.steps->len);
      rw_drill_best_clear (&one);
      rw_drill_best_clear (&two);
      rw_practice_drill_clear (&drill);
    }
}

/* A reading, a finding, a change of setup and a repair, counted by hand from the knowledge; what was taken back is not
 * counted. */
static void
test_reckon (void)
{
  g_autoptr (RwKnowledge) knowledge = load_knowledge ();
  const RwCheck *seen = rw_knowledge_find_check (knowledge, "edge-connector-look");
  const RwCause *cause = rw_knowledge_find_cause (knowledge, "edge-oxidised");
  RwPracticeDrill drill;

  draw (&drill, 1, 1);

  g_autoptr (GDateTime) now = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  g_autoptr (RwSession) session = rw_session_new (rw_session_header_new (drill.profile, "", "", NULL, now));
  const RwReading nowhere = rw_reading_make ("p5", RW_PLACE_CHIP, RW_KIND_AMPS, 1, 0.01, "m1");
  const double off = rw_setups_minutes (1 | 2, 2);
  RwEvent events[] = { rw_event_make_setup (1, (RwSetup) { RW_SAID_YES, RW_SAID_YES, RW_SAID_NO }),
                       rw_event_make_reading (2, &nowhere),
                       rw_event_make_setup (3, (RwSetup) { RW_SAID_NO, RW_SAID_NOT, RW_SAID_NOT }),
                       rw_event_make_finding (4, "edge-connector-look", seen->outcomes[0].id),
                       rw_event_make_repair (5, "edge-oxidised", RW_REPAIR_FIXED) };

  for (guint i = 0; i < G_N_ELEMENTS (events); i++)
    rw_session_add (session, &events[i]);
  g_assert_cmpfloat_with_epsilon (rw_drill_reckon (session, knowledge),
                                  2 + off + seen->minutes + cause->repair.minutes + RW_DRILL_PROOF_MINUTES, 1e-9);

  RwEvent back = rw_event_make_retract (6, 5);

  rw_session_add (session, &back);
  g_assert_cmpfloat_with_epsilon (rw_drill_reckon (session, knowledge), 2 + off + seen->minutes, 1e-9);
  rw_practice_drill_clear (&drill);
}

/* --- a whole drill -------------------------------------------------------------------------------- */

static void
ended_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (GError) error = NULL;

  *(RwDrillEnd **) data = rw_drill_end_finish (RW_JOB (source), result, &error);
  g_assert_no_error (error);
}

static RwDrillEnd *
end (RwJob      *job,
     const char *verdict)
{
  RwDrillEnd *told = NULL;

  rw_drill_end_async (job, verdict, NULL, ended_cb, &told);
  while (told == NULL)
    g_main_context_iteration (NULL, TRUE);
  return told;
}

static void
add_reading (RwJob  *job,
             RwPlace place)
{
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);
  const double volts = rw_practice_cabinet_get_true_volts (cabinet, "p5", place, RW_KIND_DC);
  const RwReading reading = rw_reading_make ("p5", place, RW_KIND_DC, volts, 0.001, "m1");
  RwEvent event = rw_event_make_reading (0, &reading);

  rw_job_add (job, &event);
}

static void
test_whole (void)
{
  start_afresh ();

  g_autoptr (GError) error = NULL;
  g_autoptr (RwJob) job = rw_drill_begin (1, 3, TRUE, &error);

  g_assert_no_error (error);

  const RwPracticeDrill *drill = rw_drill_of (job);
  const char *fault = drill->faults[0].id;

  rw_practice_cabinet_advance (rw_job_get_cabinet (job), 10);
  add_reading (job, RW_PLACE_BOARD);
  add_reading (job, RW_PLACE_TERMINALS);

  g_autoptr (RwDrillEnd) right = end (job, fault);
  g_autoptr (RwDrillEnd) wrong = end (job, "memory-bad");

  g_assert_nonnull (strstr (right->faults, rw_job_cause_title (job, fault)));
  g_assert_nonnull (strstr (right->verdict, "That is it"));
  g_assert_nonnull (strstr (wrong->verdict, rw_job_cause_title (job, "memory-bad")));
  g_assert_null (strstr (wrong->verdict, "That is it"));
  g_assert_nonnull (strstr (right->decided, "+5 V"));
  g_assert_nonnull (strstr (right->decided, "×"));
  g_assert_null (right->stopped);
  g_assert_cmpuint (right->steps->len, >, 0);

  /* Its file is a session like any other, and says which drill it is. */
  g_assert_true (rw_job_flush (job, &error));

  g_autofree char *report = NULL;
  g_autoptr (RwJob) replay = rw_job_new_replay (rw_job_get_path (job), &report, &error);

  g_assert_no_error (error);
  g_assert_null (report);
  g_assert_nonnull (strstr (rw_session_get_header (rw_job_get_session (replay))->cabinet_name, "1-3"));
  g_assert_null (rw_drill_of (replay));
}

/* The mains are stopped and told of at the end; without suggestions there is no advice. */
static void
test_stopped (void)
{
  start_afresh ();

  g_autoptr (GError) error = NULL;
  g_autoptr (RwJob) job = rw_drill_begin (2, 5, FALSE, &error);

  g_assert_no_error (error);
  rw_job_set_leads_by_hand (job, TRUE);
  g_assert_false (rw_job_put_lead (job, RW_PRACTICE_RED, "mains:l"));
  for (guint i = 0; i < 50; i++)
    g_main_context_iteration (NULL, FALSE);
  g_assert_null (rw_job_get_advice (job));
  g_assert_nonnull (strstr (rw_job_get_advice_problem (job), "without suggestions"));

  g_autoptr (RwDrillEnd) told = end (job, NULL);

  g_assert_nonnull (told->stopped);
  g_assert_nonnull (strstr (told->verdict, "named no fault"));
}

/* Time that passes at once warms the cabinet and goes by in the session. */
static void
test_pass (void)
{
  start_afresh ();

  g_autoptr (GError) error = NULL;
  g_autoptr (RwJob) job = rw_drill_begin (1, 3, TRUE, &error);

  g_assert_no_error (error);

  const double before = rw_job_get_now (job);

  rw_job_let_pass (job, 40);
  g_assert_cmpfloat (rw_job_get_now (job) - before, >=, 2400);
  g_assert_cmpfloat (rw_job_get_now (job) - before, <, 2430);
  g_assert_true (rw_practice_cabinet_get_warm (rw_job_get_cabinet (job)));
  g_assert_cmpint (rw_bench_state_get_setup (rw_job_get_state (job)).warm, ==, RW_SAID_YES);
}

/* Leads that were put by hand stay, whatever is said; let go, they follow again. */
static void
test_by_hand (void)
{
  start_afresh ();

  g_autoptr (GError) error = NULL;
  g_autoptr (RwJob) job = rw_drill_begin (1, 3, TRUE, &error);

  g_assert_no_error (error);

  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);

  rw_job_set_leads_by_hand (job, TRUE);
  g_assert_true (rw_job_put_lead (job, RW_PRACTICE_RED, "strip:p12"));
  rw_job_set_spot (job, "p5", RW_PLACE_CHIP, RW_KIND_DC);
  g_assert_cmpstr (rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_RED), ==, "strip:p12");
  rw_job_set_leads_by_hand (job, FALSE);
  g_assert_cmpstr (rw_practice_cabinet_get_lead (cabinet, RW_PRACTICE_RED), ==, "chip:p5");
}

int
main (int    argc,
      char **argv)
{
  int status;

  home = g_dir_make_tmp ("drill-home-XXXXXX", NULL);

  /* GLib's own isolation of folders leaks, which a run with sanitizers would count. */
  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_setenv ("XDG_CONFIG_HOME", home, TRUE);
  g_setenv ("XDG_STATE_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drill-end/the-order-of-the-program-mends-plain-faults", test_best);
  g_test_add_func ("/drill-end/work-is-reckoned-by-the-knowledge", test_reckon);
  g_test_add_func ("/drill-end/a-drill-is-a-session-and-its-end-tells-all", test_whole);
  g_test_add_func ("/drill-end/the-mains-are-stopped-and-counted", test_stopped);
  g_test_add_func ("/drill-end/time-passes-at-once", test_pass);
  g_test_add_func ("/drill-end/leads-put-by-hand-stay", test_by_hand);
  status = g_test_run ();
  remove_folder (home);
  g_free (home);
  return status;
}
