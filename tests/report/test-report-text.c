/* test-report-text.c: the summary and the plan for people.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The knowledge is mini-knowledge.json; its numbers are worked out in test-report-json.c.
 */
#include "config.h"

#include <glib.h>
#include <locale.h>
#include <string.h>

#include "report-fixture.h"
#include "rw-report-plan.h"
#include "rw-report-text.h"

#define THIN "\xE2\x80\xAF" /* between a number and its unit */

static char *
tell (const char  *lines,
      RwKnowledge *knowledge)
{
  g_autoptr (RwJournalRead) read = fixture_read (lines);
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (read, knowledge);

  return g_string_free (rw_report_text_summary (summary), FALSE);
}

static RwReportPlan *
plan (const char *lines,
      guint       depth)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autoptr (RwJournalRead) read = fixture_read (lines);
  g_autoptr (RwBenchState) state = rw_bench_state_new (read->session);
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, NULL);

  return rw_report_plan_new (advice, depth);
}

static void
assert_has (const char *text,
            const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("“%s” is missing in:\n%s", part, text);
}

static void
test_a_branch_says_where_it_came_from (void)
{
  g_autofree char *line = g_strndup (fixture_header, strlen (fixture_header) - 2);
  g_autofree char *bytes = g_strdup_printf ("%s,\"from\":{\"session\":\"22222222-2222-4333-8444-555555555555\",\"n\":12,"
                                            "\"t\":83.5,\"name\":\"old.rwlog\"}}\n", line);
  g_autoptr (RwJournalRead) read = rw_journal_read_bytes (bytes, strlen (bytes), "fixture", NULL);
  g_autoptr (RwSummary) summary = rw_summary_new_from_read (read, NULL);
  g_autoptr (GString) text = rw_report_text_summary (summary);

  assert_has (text->str, "0:00 long\nbranched from old.rwlog at 1:23, event 12\n");
}

static void
test_the_file_is_told_first (void)
{
  g_autofree char *text
      = tell (EVENT (1, 75, "\"note\":{\"text\":\"x\"}") "rubbish\n{\"n\":3,\"t\"", NULL);

  g_assert_true (g_str_has_prefix (text,
                                   "Tidepool \"Racer\" (B-07)\n"
                                   "Two rails; started 2026-03-14 09:30 UTC, 1:15 long\n"
                                   "1 event, 0 readings, 0 samples\n"
                                   "1 damaged line was skipped: 3\n"
                                   "The file ends in the middle of a line, which was left out.\n"));
}

static void
test_ripple_is_told_beside_volts (void)
{
  g_autofree char *text = tell (
      READING (1, 61, "p5", "board", "dc", "\"value\":5.02,\"step\":0.01")
      READING (2, 62, "p5", "board", "ripple", "\"value\":0.062,\"step\":0.001"),
      NULL);

  assert_has (text, "5.02" THIN "V");
  assert_has (text, "ripple");
  assert_has (text, "62" THIN "mV");
  assert_has (text, "▲ "); /* outside */
  assert_has (text, "at 1:02");
}

/* Also where nothing worse than low voltage is met and anyone may do it. */
static void
test_hazard_and_who_stand_before_each_step (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autofree char *text = tell (EVENT (1, 1, "\"symptom\":{\"id\":\"dark\"}"), knowledge);
  g_autofree char *said = g_strdup_printf ("%s; %s\n", rw_hazard_get_label (RW_HAZARD_NONE),
                                           rw_who_get_label (RW_WHO_ANYONE));
  const char *next = strstr (text, "Look at A: takes");
  const char *hazard = strstr (text, said);

  g_assert_nonnull (next);
  g_assert_nonnull (hazard);
  g_assert_true (hazard < next);
}

static void
test_the_next_check_says_what_each_outcome_means (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autofree char *text = tell ("", knowledge);

  assert_has (text, "75 %  Cause A\n");
  assert_has (text, "Look at A: takes 1 min, saves 1.5 min\n");
  assert_has (text, "75 %  Dark → Mend A\n");
  assert_has (text, "25 %  Clean → Mend B\n");
  assert_has (text, "16 min this way, 18 min repairing straight away, 15 min if the cause were");
}

/* Cause A is ruled out, so only the mains repair is left. */
static void
test_danger_stands_before_its_step (void)
{
  g_autoptr (RwKnowledge) knowledge = fixture_load_knowledge ();
  g_autofree char *text = tell (
      EVENT (1, 1, "\"finding\":{\"check\":\"look\",\"outcome\":\"clean\"}"), knowledge);
  const char *danger = strstr (text, "  ! ");
  const char *step = strstr (text, "Mend B (29 min)");

  g_assert_nonnull (danger);
  g_assert_nonnull (step);
  g_assert_true (danger < step);
}

static void
test_a_plan_is_indented_under_its_outcomes (void)
{
  g_autoptr (RwReportPlan) self = plan ("", 4);
  g_autoptr (GString) text = rw_report_plan_to_text (self);

  assert_has (text->str, "\nCheck: Look at A (1 min; expected 16 min)\n"
                         "  75 %  Dark\n"
                         "    Repair: Mend A (10 min, 100 %); expected 10 min\n"
                         "  25 %  Clean\n"
                         "    ! Mend B: ");
  assert_has (text->str, "\n    Repair: Mend B (30 min, 100 %); expected 30 min\n");
  g_assert_null (strstr (text->str, "Cut:"));
}

static void
test_a_run_of_repairs_is_one_line (void)
{
  g_autoptr (RwReportPlan) self
      = plan (EVENT (1, 1, "\"symptom\":{\"id\":\"hums\",\"state\":\"present\"}"), 4);
  g_autoptr (GString) text = rw_report_plan_to_text (self);

  assert_has (text->str, "Known so far: Hums");
  assert_has (text->str, "\nRepair: Mend A (10 min, 92 %), then Mend B (30 min, 100 %); "
                         "expected 12 min\n");
}

static void
test_a_plan_as_json_costs_what_it_says (void)
{
  g_autoptr (RwReportPlan) self = plan ("", 4);
  g_autoptr (GString) json = rw_report_plan_to_json (self);

  g_assert_cmpstr (json->str, ==,
                   "{\"expected_minutes\":16,\"repairs_only_minutes\":17.5,\"perfect_minutes\":15,"
                   "\"depth\":4,\"plan\":{\"minutes\":1,\"reach\":1,\"expected_minutes\":16,"
                   "\"check\":\"look\",\"names\":[\"dark\",\"clean\"],\"outcomes\":["
                   "{\"minutes\":10,\"reach\":0.75,\"expected_minutes\":10,"
                   "\"repair\":\"cause-a\",\"else\":null},"
                   "{\"minutes\":30,\"reach\":0.25,\"expected_minutes\":30,"
                   "\"repair\":\"cause-b\",\"else\":null}]}}\n");
}

static void
test_nothing_is_planned_once_it_is_fixed (void)
{
  g_autoptr (RwReportPlan) self
      = plan (EVENT (1, 1, "\"repair\":{\"cause\":\"cause-a\",\"result\":\"fixed\"}"), 4);
  g_autoptr (GString) text = rw_report_plan_to_text (self);
  g_autoptr (GString) json = rw_report_plan_to_json (self);

  assert_has (text->str, "It is fixed");
  assert_has (json->str, "\"plan\":null}");
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/text/a-branch-says-where-it-came-from", test_a_branch_says_where_it_came_from);
  g_test_add_func ("/report/text/the-file-is-told-first", test_the_file_is_told_first);
  g_test_add_func ("/report/text/ripple-is-told-beside-volts", test_ripple_is_told_beside_volts);
  g_test_add_func ("/report/text/hazard and who stand before each step", test_hazard_and_who_stand_before_each_step);
  g_test_add_func ("/report/text/the-next-check-says-what-each-outcome-means",
                   test_the_next_check_says_what_each_outcome_means);
  g_test_add_func ("/report/text/danger-stands-before-its-step",
                   test_danger_stands_before_its_step);
  g_test_add_func ("/report/plan/a-plan-is-indented-under-its-outcomes",
                   test_a_plan_is_indented_under_its_outcomes);
  g_test_add_func ("/report/plan/a-run-of-repairs-is-one-line",
                   test_a_run_of_repairs_is_one_line);
  g_test_add_func ("/report/plan/a-plan-as-json-costs-what-it-says",
                   test_a_plan_as_json_costs_what_it_says);
  g_test_add_func ("/report/plan/nothing-is-planned-once-it-is-fixed",
                   test_nothing_is_planned_once_it_is_fixed);
  return g_test_run ();
}
