/* test-plan-path.c: what was done so far, in the order in which it came.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "job-fixtures.h"
#include "rw-plan-path.h"
#include "rw-skipped.h"

static GPtrArray *
list (RwSession *job)
{
  g_autoptr (RwKnowledge) knowledge = fixture_knowledge ();
  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, NULL);

  return rw_plan_path_list (advice, state);
}

static void
assert_step (GPtrArray  *steps,
             guint       i,
             const char *sign,
             const char *part)
{
  g_assert_cmpuint (i, <, steps->len);
  if (!g_str_has_prefix (steps->pdata[i], sign) || strstr (steps->pdata[i], part) == NULL)
    g_error ("step %u is “%s”, not “%s … %s”", i, (char *) steps->pdata[i], sign, part);
}

static void
test_nothing_was_done (void)
{
  g_autoptr (RwSession) job = fixture_job ();
  g_autoptr (GPtrArray) steps = list (job);

  g_assert_cmpuint (steps->len, ==, 0);
}

/* Three lists in one order: what tells something, what was set aside, and what cured it. */
static void
test_steps_stand_as_they_came (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_finding (job, "inside", RW_SKIPPED_OUTCOME);
  fixture_finding (job, "look", "flat");
  fixture_finding (job, "drop", RW_SKIPPED_OUTCOME);
  fixture_repair (job, "thin", RW_REPAIR_NO_CHANGE);

  g_autoptr (GPtrArray) steps = list (job);

  g_assert_cmpuint (steps->len, ==, 5);
  assert_step (steps, 0, "• ", "Resets");
  assert_step (steps, 1, "– ", "Measure inside the supply: set aside");
  assert_step (steps, 2, "✓ ", "Look at the capacitors");
  assert_step (steps, 3, "– ", "Drop along the +5 V wire: set aside");
  assert_step (steps, 4, "✗ ", "Add a wire");
}

static void
test_the_cure_is_the_last_step (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_repair (job, "low", RW_REPAIR_FIXED);

  g_autoptr (GPtrArray) steps = list (job);

  g_assert_cmpuint (steps->len, ==, 2);
  assert_step (steps, 1, "✓ ", "Turn the trim: fixed");
}

static void
test_what_was_answered_after_all_is_not_set_aside (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_finding (job, "look", RW_SKIPPED_OUTCOME);
  fixture_finding (job, "look", "bulged");

  g_autoptr (GPtrArray) steps = list (job);

  g_assert_cmpuint (steps->len, ==, 1);
  assert_step (steps, 0, "✓ ", "Bulged");
}

/* What was measured before a repair that helped in part is marked as such. */
static void
test_what_a_repair_made_old_says_so (void)
{
  g_autoptr (RwSession) job = fixture_job ();

  fixture_symptom (job, "resets", RW_SYMPTOM_PRESENT);
  fixture_symptom (job, "hum", RW_SYMPTOM_PRESENT);
  fixture_finding (job, "look", "bulged");
  fixture_repair (job, "worn", RW_REPAIR_NO_CHANGE);
  fixture_symptom (job, "hum", RW_SYMPTOM_CURED);

  g_autoptr (GPtrArray) steps = list (job);

  for (guint i = 0; i < steps->len; i++)
    if (strstr (steps->pdata[i], "Look at the capacitors") != NULL)
      {
        g_assert_nonnull (strstr (steps->pdata[i], "(before the repair)"));
        return;
      }
  g_error ("the look is not among the steps");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-path/nothing was done", test_nothing_was_done);
  g_test_add_func ("/plan-path/steps stand as they came", test_steps_stand_as_they_came);
  g_test_add_func ("/plan-path/the cure is the last step", test_the_cure_is_the_last_step);
  g_test_add_func ("/plan-path/what was answered after all is not set aside",
                   test_what_was_answered_after_all_is_not_set_aside);
  g_test_add_func ("/plan-path/what a repair made old says so", test_what_a_repair_made_old_says_so);
  return g_test_run ();
}
