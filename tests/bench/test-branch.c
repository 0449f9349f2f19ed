/* test-branch.c: a branch begins with what had happened, says where it came from, and leaves the file alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "rw-branch.h"
#include "rw-event-json.h"
#include "rw-journal-reader.h"

static char *folder;

static char *
demo_path (const char *name)
{
  return g_build_filename (g_getenv ("RAILWRIGHT_SRC_ROOT"), "demo-sessions", name, NULL);
}

static RwJob *
replay (const char *name,
        double      t)
{
  g_autofree char *path = demo_path (name);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;
  RwJob *job = rw_job_new_replay (path, &report, &error);

  g_assert_no_error (error);
  rw_replay_seek (rw_job_get_replay (job), t);
  return job;
}

static char *
new_path (void)
{
  static int n;
  g_autofree char *name = g_strdup_printf ("branch-%d.rwlog", n++);

  return g_build_filename (folder, name, NULL);
}

static void
assert_copies (RwSession *old,
               RwSession *branch,
               guint      n)
{
  g_assert_cmpuint (rw_session_get_n_events (branch), >=, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GString) a = g_string_new (NULL), b = g_string_new (NULL);

      rw_event_append_line (rw_session_get_event (old, i), a);
      rw_event_append_line (rw_session_get_event (branch, i), b);
      g_assert_cmpstr (a->str, ==, b->str);
    }
}

static void
test_by_hand (void)
{
  g_autoptr (RwJob) old = replay ("lantern-drift-wiring.rwlog", 60);
  RwSession *source = rw_job_get_session (old);
  const guint n = rw_session_get_n_events (source);
  g_autofree char *path = new_path (), *original = demo_path ("lantern-drift-wiring.rwlog");
  g_autofree char *before = NULL, *after = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_get_contents (original, &before, NULL, NULL));

  g_autoptr (RwJob) job = rw_branch_bench (old, path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (n, >, 0);
  g_assert_cmpint (rw_job_get_mode (job), ==, RW_JOB_BENCH);
  assert_copies (source, rw_job_get_session (job), n);
  g_assert_cmpuint (rw_session_get_n_events (rw_job_get_session (job)), ==, n);
  g_assert_cmpfloat_with_epsilon (rw_job_get_now (job), 60, 5); /* its clock goes on from there */

  /* And what is done now follows with the next number. */
  RwEvent note = rw_event_make_note (0, "on from here");

  g_assert_true (rw_job_add (job, &note));
  g_assert_cmpuint (rw_session_get_event (rw_job_get_session (job), n)->n, ==,
                    rw_session_get_event (source, n - 1)->n + 1);
  g_assert_true (rw_job_flush (job, &error));

  /* On disk, in a file of its own that says so. */
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (read->damaged->len, ==, 0);

  const RwSessionHeader *header = rw_session_get_header (read->session);
  const RwSessionHeader *was = rw_session_get_header (source);

  g_assert_nonnull (header->from);
  g_assert_cmpstr (header->from->session, ==, was->id);
  g_assert_cmpstr (header->id, !=, was->id);
  g_assert_cmpuint (header->from->n, ==, rw_session_get_event (source, n - 1)->n);
  g_assert_cmpfloat (header->from->t, ==, 60);
  g_assert_cmpstr (header->from->name, ==, "lantern-drift-wiring.rwlog");
  g_assert_cmpstr (header->cabinet_name, ==, was->cabinet_name);

  g_autofree char *words = rw_session_from_describe (header->from);

  g_assert_true (g_str_has_prefix (words, "branched from lantern-drift-wiring.rwlog at 1:00, event "));
  g_assert_true (g_file_get_contents (original, &after, NULL, NULL));
  g_assert_cmpstr (before, ==, after);
}

static void
test_a_branch_never_overwrites (void)
{
  g_autoptr (RwJob) old = replay ("lantern-drift-wiring.rwlog", 60);
  g_autofree char *path = new_path (), *text = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (path, "mine", -1, NULL));
  g_assert_null (rw_branch_bench (old, path, &error));
  g_assert_error (error, RW_JOURNAL_ERROR, RW_JOURNAL_ERROR_WRITE);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "mine");
}

/* The last note of a session. */
static const char *
last_note (RwSession *session)
{
  for (guint i = rw_session_get_n_events (session); i-- > 0;)
    if (rw_session_get_event (session, i)->type == RW_EVENT_NOTE)
      return rw_session_get_event (session, i)->words.text;
  return "";
}

static void
assert_set_up (const char *name)
{
  g_autoptr (RwJob) old = replay (name, 1e9);
  g_autofree char *path = new_path ();
  g_autoptr (GError) error = NULL;
  const guint n = rw_session_get_n_events (rw_job_get_session (old));
  g_autoptr (RwJob) job = rw_branch_practice (old, NULL, 7, path, &error);

  g_assert_no_error (error);
  g_assert_cmpint (rw_job_get_mode (job), ==, RW_JOB_PRACTICE);
  assert_copies (rw_job_get_session (old), rw_job_get_session (job), n);

  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);
  RwBenchState *state = rw_job_get_state (old);
  const RwSetup setup = rw_bench_state_get_setup (state);
  const char *words = last_note (rw_job_get_session (job));

  g_test_message ("%s: %s", name, words);
  g_assert_cmpint (rw_practice_cabinet_get_power (cabinet), ==, setup.power_on == RW_SAID_YES);
  g_assert_cmpint (rw_practice_cabinet_get_board_fitted (cabinet), ==, setup.board_fitted != RW_SAID_NO);
  g_assert_cmpuint (rw_practice_cabinet_get_true_n_faults (cabinet), ==, 0);
  g_assert_cmpstr (rw_profile_get_id (rw_practice_cabinet_get_profile (cabinet)), ==,
                   rw_profile_get_id (rw_job_get_profile (old)));
  g_assert_nonnull (strstr (words, "practice cabinet"));
  g_assert_nonnull (strstr (words, "no symptom, no finding and no repair"));

  /* What it says of the trim is true. */
  const RwRail *reference = rw_profile_get_reference (rw_job_get_profile (old));
  const RwSpotState *spot = rw_bench_state_find_rail (state, reference->id);

  g_assert_nonnull (spot);
  rw_practice_cabinet_set_power (cabinet, FALSE);
  rw_practice_cabinet_set_board_fitted (cabinet, spot->setup.board_fitted != RW_SAID_NO);
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 3);

  const double off = fabs (rw_practice_cabinet_get_true_volts (cabinet, reference->id, spot->reading.place, RW_KIND_DC)
                           - spot->reading.value);

  g_assert_nonnull (strstr (words, "was turned until it read")); /* all three read what a healthy supply can give */
  g_assert_cmpfloat (off, <, 0.03 * reference->nominal);
}

static void
test_on_the_practice_cabinet (void)
{
  assert_set_up ("tidepool-racer-trim.rwlog");
  assert_set_up ("lantern-drift-wiring.rwlog");
  assert_set_up ("kelp-gardens-minus-five.rwlog");
}

/* A demo that ends with @volts at @place on @rail, cold, the board @fitted, in a file of its own. (transfer full) */
static RwJob *
replay_with_reading (const char *rail,
                     RwPlace     place,
                     gboolean    fitted,
                     double      volts)
{
  g_autofree char *demo = demo_path ("tidepool-racer-trim.rwlog");
  g_autofree char *path = new_path ();
  g_autofree char *text = NULL;
  g_autoptr (GString) longer = NULL;
  g_autoptr (GError) error = NULL;
  const RwReading reading = rw_reading_make (rail, place, RW_KIND_DC, volts, 0.001, "m1");
  RwEvent events[] = { rw_event_make_setup (90000, (RwSetup){ RW_SAID_YES, fitted ? RW_SAID_YES : RW_SAID_NO, RW_SAID_NO }),
                       rw_event_make_reading (90001, &reading) };

  g_assert_true (g_file_get_contents (demo, &text, NULL, &error));
  longer = g_string_new (text);
  for (guint i = 0; i < G_N_ELEMENTS (events); i++)
    {
      events[i].n = 999999 + i;
      rw_event_append_line (&events[i], longer);
    }
  g_assert_true (g_file_set_contents (path, longer->str, -1, &error));

  g_autofree char *report = NULL;
  RwJob *job = rw_job_new_replay (path, &report, &error);

  g_assert_no_error (error);
  rw_replay_seek (rw_job_get_replay (job), 1e9);
  return job;
}

/* The note that a branch begins with when that was read last, with plain spaces before units. @now: what it reads there
 * now. (transfer full) */
static char *
note_after (const char *rail,
            RwPlace     place,
            gboolean    fitted,
            double      volts,
            double     *now)
{
  g_autoptr (RwJob) old = replay_with_reading (rail, place, fitted, volts);
  g_autofree char *path = new_path ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJob) job = rw_branch_practice (old, NULL, 7, path, &error);

  g_assert_no_error (error);
  *now = rw_practice_cabinet_get_true_volts (rw_job_get_cabinet (job), rail, place, RW_KIND_DC);

  g_autoptr (GString) words = g_string_new (last_note (rw_job_get_session (job)));

  g_string_replace (words, "\u00a0", " ", 0);
  g_string_replace (words, "\u202f", " ", 0);
  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* One turn by what is missing does not get there, since the output does not follow the screw evenly: it is turned until
 * 5 mV are left at most. */
static void
test_the_trim_is_turned_until_it_reads_the_same (void)
{
  for (double volts = 4.5; volts < 5.45; volts += 0.05)
    {
      double loaded, bare;
      g_autofree char *with_board = note_after ("p5", RW_PLACE_BOARD, TRUE, volts, &loaded);
      g_autofree char *without = note_after ("p5", RW_PLACE_TERMINALS, FALSE, volts, &bare);

      g_test_message ("%.3f V: %.4f V loaded, %.4f V bare", volts, loaded, bare);
      g_assert_nonnull (strstr (with_board, "Its trim was turned until it read as in the session (+5 V, "));
      g_assert_nonnull (strstr (without, "Its trim was turned until it read as in the session (+5 V, "));
      g_assert_cmpfloat (fabs (loaded - volts), <, 0.0053);
      g_assert_cmpfloat (fabs (bare - volts), <, 0.0053);
    }
}

/* What no healthy supply gives is not claimed; what it gives instead is told. */
static void
test_a_trim_at_its_end_is_told (void)
{
  double now;
  g_autofree char *words = note_after ("p5", RW_PLACE_BOARD, TRUE, 4.1, &now);
  g_autofree char *sentence = g_strdup_printf (
      "Its trim cannot bring it to what was read in the session (+5 V, board: 4.10 V): here it is %.2f V.", now);

  g_assert_cmpfloat (now, >, 4.3);
  g_assert_null (strstr (words, "was turned until it read"));
  if (strstr (words, sentence) == NULL)
    g_error ("“%s” is not in “%s”", sentence, words);
}

/* A rail that was read otherwise is told with both values; one that was read much the same is not. */
static void
test_differences_are_told (void)
{
  double now;
  g_autofree char *other = note_after ("m5", RW_PLACE_BOARD, TRUE, -3.2, &now);
  g_autofree char *sentence = g_strdup_printf ("In the session −5 V, board: −3.20 V; here −%.2f V.", -now);
  g_autofree char *alike = note_after ("m5", RW_PLACE_BOARD, TRUE, now + 0.05, &now);

  if (strstr (other, sentence) == NULL)
    g_error ("“%s” is not in “%s”", sentence, other);
  g_assert_null (strstr (alike, "In the session −5 V, board:"));
}

/* Somebody read 5.6 V with the board fitted. A board that must not see 5.5 V is not brought there, simulated or not. */
static void
test_never_above (void)
{
  g_autoptr (RwJob) old = replay_with_reading ("p5", RW_PLACE_BOARD, TRUE, 5.6);
  g_autofree char *path = new_path ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJob) job = rw_branch_practice (old, NULL, 7, path, &error);

  g_assert_no_error (error);

  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);

  g_assert_nonnull (strstr (last_note (rw_job_get_session (job)), "Its trim stands where it stood"));
  rw_practice_cabinet_set_power (cabinet, TRUE);
  rw_practice_cabinet_advance (cabinet, 3);
  g_assert_cmpfloat (rw_practice_cabinet_get_true_volts (cabinet, "p5", RW_PLACE_BOARD, RW_KIND_DC), <, 5.5);
}

static void
test_with_a_fault (void)
{
  g_autoptr (RwJob) old = replay ("lantern-drift-wiring.rwlog", 60);
  g_autoptr (GPtrArray) faults = rw_branch_list_faults (rw_job_get_profile (old));
  g_autofree char *path = new_path (), *other = new_path ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (faults->len, >, 10);

  g_autoptr (RwJob) job = rw_branch_practice (old, faults->pdata[3], 7, path, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (rw_practice_cabinet_get_true_n_faults (rw_job_get_cabinet (job)), ==, 1);
  g_assert_cmpstr (rw_practice_cabinet_get_true_fault (rw_job_get_cabinet (job), 0)->id, ==, faults->pdata[3]);
  g_assert_null (rw_branch_practice (old, "no-such-fault", 7, other, &error));
  g_assert_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_FAULT);
  g_assert_false (g_file_test (other, G_FILE_TEST_EXISTS));
}

/* The meter of the branch goes by the same name: what was read before keeps its uncertainty. */
static void
test_old_readings_keep_their_uncertainty (void)
{
  g_autoptr (RwJob) old = replay ("tidepool-racer-trim.rwlog", 1e9);
  g_autofree char *path = new_path ();
  g_autoptr (RwJob) job = rw_branch_practice (old, NULL, 7, path, NULL);
  const RwMeterFacts *a = rw_session_find_meter (rw_job_get_session (old), "m1");
  const RwMeterFacts *b = rw_session_find_meter (rw_job_get_session (job), "m1");

  g_assert_nonnull (a);
  g_assert_cmpfloat (a->percent, ==, b->percent);
  g_assert_cmpfloat (a->counts, ==, b->counts);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  folder = g_dir_make_tmp ("rw-branch-XXXXXX", NULL);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  g_test_add_func ("/branch/by hand: copies, origin, clock, and the file left alone", test_by_hand);
  g_test_add_func ("/branch/nothing is overwritten", test_a_branch_never_overwrites);
  g_test_add_func ("/branch/the practice cabinet is set up as the events say", test_on_the_practice_cabinet);
  g_test_add_func ("/branch/no board is brought above what it survives", test_never_above);
  g_test_add_func ("/branch/the trim is turned until it reads the same",
                   test_the_trim_is_turned_until_it_reads_the_same);
  g_test_add_func ("/branch/a trim at the end of its travel is told", test_a_trim_at_its_end_is_told);
  g_test_add_func ("/branch/what differs is told, what does not is not", test_differences_are_told);
  g_test_add_func ("/branch/with a fault that was asked for", test_with_a_fault);
  g_test_add_func ("/branch/old readings keep their uncertainty", test_old_readings_keep_their_uncertainty);

  const int status = g_test_run ();
  GDir *dir = g_dir_open (folder, 0, NULL);

  for (const char *name; dir != NULL && (name = g_dir_read_name (dir)) != NULL;)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_unlink (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_rmdir (folder);
  g_free (folder);
  return status;
}
