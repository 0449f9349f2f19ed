/* test-hazards.c: no check, repair or stage is named anywhere without what can hurt in it and who may do it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All that is shipped is walked: every check and every repair of every profile through the card's words and the printed
 * plan, every symptom through the plan on screen and the text report, every stage through its card's words.
 */
#include "config.h"

#include <glib.h>
#include <string.h>

#include "rw-card-words.h"
#include "rw-plan-node.h"
#include "rw-report-plan.h"
#include "rw-report-text.h"
#include "rw-stage-say.h"

typedef struct
{
  RwKnowledge *knowledge; /* whole */
  GPtrArray   *profiles;  /* of RwProfile, those shipped */
} Shipped;

static void
shipped_clear (Shipped *self)
{
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->profiles, g_ptr_array_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Shipped, shipped_clear)

static void
load (Shipped *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);

  self->knowledge = rw_knowledge_load (problems, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (problems->len, ==, 0);
  self->profiles = rw_profile_list (NULL);
  g_assert_cmpuint (self->profiles->len, >=, 6);
}

static RwSession *
make_session (RwProfile  *profile,
              const char *symptom)
{
  g_autoptr (GDateTime) started = g_date_time_new_utc (2026, 3, 14, 9, 30, 0);
  RwSession *session = rw_session_new (rw_session_header_new (profile, "Tidepool Racer", "B-07", NULL, started));

  if (symptom != NULL)
    {
      RwEvent event = rw_event_make_symptom (1, symptom, RW_SYMPTOM_PRESENT);

      rw_session_add (session, &event);
    }
  return session;
}

/* The label stands in the line of the step or before it; who may do it as well, unless that is anyone. */
static void
assert_before (const char *text,
               const char *step,
               RwHazard    hazard,
               RwWho       who)
{
  const char *at = strstr (text, step);
  g_autofree char *above = NULL;

  if (at == NULL)
    g_error ("“%s” is not in: %s", step, text);
  above = g_strndup (text, (gsize) (strchrnul (at, '\n') - text));
  if (hazard != RW_HAZARD_NONE && strstr (above, rw_hazard_get_label (hazard)) == NULL)
    g_error ("“%s” without “%s”: %s", step, rw_hazard_get_label (hazard), above);
  if (who != RW_WHO_ANYONE && strstr (above, rw_who_get_label (who)) == NULL)
    g_error ("“%s” without “%s”: %s", step, rw_who_get_label (who), above);
}

/* --- the printed plan ----------------------------------------------------------------------------- */

/* A plan of one step, with its legend cut off, which names levels as well. (transfer full) */
static char *
print_step (RwAdvice    *advice,
            RwActionKind kind,
            guint        index,
            guint        n_children,
            guint        depth)
{
  RwPlanTree *tree = g_new0 (RwPlanTree, 1);
  RwReportPlan *made = g_new0 (RwReportPlan, 1);

  *tree = (RwPlanTree){ .kind = kind, .index = index, .minutes = 2, .reach = 1, .expected = 10, .n_children = n_children };
  tree->children = g_new0 (RwPlanTree *, n_children);
  *made = (RwReportPlan){ rw_advice_ref (advice), tree, depth };

  g_autoptr (RwReportPlan) plan = made;
  g_autoptr (GString) text = rw_report_plan_to_text (plan);
  const char *legend = strstr (text->str, "What can hurt");

  g_assert_nonnull (legend);
  return g_strdup (strchrnul (legend, '\n'));
}

static void
test_printed_plan (void)
{
  g_auto (Shipped) shipped = { 0 };

  load (&shipped);
  for (guint p = 0; p < shipped.profiles->len; p++)
    {
      g_autoptr (RwSession) session = make_session (shipped.profiles->pdata[p], NULL);
      g_autoptr (RwBenchState) state = rw_bench_state_new (session);
      g_autoptr (RwKnowledge) fitting = rw_knowledge_for_profile (shipped.knowledge, shipped.profiles->pdata[p]);
      g_autoptr (RwAdvice) advice = rw_advice_new (fitting, state, NULL);
      RwKnowledge *knowledge = rw_advice_get_knowledge (advice);

      for (guint i = 0; i < rw_knowledge_get_n_checks (knowledge); i++)
        for (guint depth = 1; depth <= 2; depth++)
          {
            const RwCheck *check = rw_knowledge_get_check (knowledge, i);
            g_autofree char *text = print_step (advice, RW_ACTION_CHECK, i, check->n_outcomes, depth);

            assert_before (text, check->title, check->hazard, check->who);
          }
      for (guint i = 0; i < rw_knowledge_get_n_causes (knowledge); i++)
        {
          const RwCause *then = NULL;
          const RwCause *cause = rw_advice_get_cause (advice, i, &then);
          g_autofree char *text = print_step (advice, RW_ACTION_REPAIR, i, 1, 2);
          const char *step = strstr (text, "Repair: ");

          g_assert_null (then);
          g_assert_nonnull (step);
          assert_before (text, step, cause->repair.hazard, cause->repair.who);
        }
    }
}

/* --- on screen -------------------------------------------------------------------------------------- */

static void
test_cards (void)
{
  g_auto (Shipped) shipped = { 0 };

  load (&shipped);
  for (guint i = 0; i < rw_knowledge_get_n_checks (shipped.knowledge); i++)
    {
      const RwCheck *check = rw_knowledge_get_check (shipped.knowledge, i);
      g_autofree char *words = rw_card_words_hazard (check->hazard, check->who);

      g_assert_nonnull (strstr (words, rw_hazard_get_label (check->hazard)));
      g_assert_nonnull (strstr (words, rw_who_get_label (check->who)));
    }
  for (guint i = 0; i < rw_knowledge_get_n_causes (shipped.knowledge); i++)
    {
      const RwCause *cause = rw_knowledge_get_cause (shipped.knowledge, i);
      g_autofree char *words = rw_card_words_hazard (cause->repair.hazard, cause->repair.who);

      g_assert_nonnull (strstr (words, rw_hazard_get_label (cause->repair.hazard)));
      g_assert_nonnull (strstr (words, rw_who_get_label (cause->repair.who)));
    }
}

static void
test_stages (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);

  g_assert_no_error (error);
  for (guint i = 0; i < RW_N_STAGES; i++)
    {
      const RwStageText *text = rw_stage_words_get (words, i);
      g_autofree char *said = rw_stage_say_hazard (text);

      if (text->hazard != RW_STAGE_HAZARD_NONE)
        g_assert_nonnull (strstr (said, rw_stage_hazard_get_label (text->hazard)));
      g_assert_nonnull (strstr (said, rw_stage_who_get_label (text->who)));
    }
}

static void
assert_row (RwPlanNode *node)
{
  const RwPlanRowKind kind = rw_plan_node_get_kind (node);
  const RwHazard hazard = rw_plan_node_get_hazard (node);

  if ((kind == RW_PLAN_ROW_CHECK || kind == RW_PLAN_ROW_REPAIR) && hazard != RW_HAZARD_NONE
      && strstr (rw_plan_node_get_detail (node), rw_hazard_get_label (hazard)) == NULL)
    g_error ("“%s” without “%s”: %s", rw_plan_node_get_title (node), rw_hazard_get_label (hazard),
             rw_plan_node_get_detail (node));
}

static void
assert_rows (GListModel *rows,
             guint       deeper)
{
  for (guint i = 0; i < g_list_model_get_n_items (rows); i++)
    {
      g_autoptr (RwPlanNode) node = g_list_model_get_item (rows, i);
      g_autoptr (GListModel) below = deeper > 0 ? rw_plan_node_list_children (node) : NULL;

      assert_row (node);
      if (below != NULL)
        assert_rows (below, deeper - 1);
    }
}

static void
assert_report (RwSession   *job,
               RwKnowledge *knowledge,
               RwAdvice    *advice)
{
  g_autoptr (RwSummary) summary = rw_summary_new (job, knowledge);
  g_autoptr (GString) text = rw_report_text_summary (summary);
  const RwAdviceCheck *offer = rw_advice_get_check (advice);
  const RwCause *cause = rw_advice_get_repair (advice);

  if (rw_advice_get_kind (advice) == RW_ADVICE_CHECK)
    {
      g_autofree char *step = g_strdup_printf ("%s: takes", offer->check->title);

      assert_before (text->str, step, offer->check->hazard, offer->check->who);
    }
  else if (rw_advice_get_kind (advice) == RW_ADVICE_REPAIR)
    {
      g_autofree char *step = g_strdup_printf ("%s (", cause->repair.title);

      assert_before (text->str, step, cause->repair.hazard, cause->repair.who);
    }
}

/* Every symptom, each on the next of the profiles. */
static void
test_plan_on_screen_and_report (void)
{
  g_auto (Shipped) shipped = { 0 };

  load (&shipped);
  for (guint i = 0; i < rw_knowledge_get_n_symptoms (shipped.knowledge); i++)
    {
      RwProfile *profile = shipped.profiles->pdata[i % shipped.profiles->len];
      g_autoptr (RwKnowledge) knowledge = rw_knowledge_for_profile (shipped.knowledge, profile);
      g_autoptr (RwSession) session
          = make_session (profile, rw_knowledge_get_symptom (shipped.knowledge, i)->id);
      g_autoptr (RwBenchState) state = rw_bench_state_new (session);
      g_autoptr (RwAdvice) advice = rw_advice_new (knowledge, state, NULL);
      g_autoptr (GListModel) roots = rw_plan_node_list_roots (advice);

      assert_rows (roots, 2);
      assert_report (session, knowledge, advice);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hazards/stand-before-every-step-of-a-printed-plan", test_printed_plan);
  g_test_add_func ("/hazards/stand-on-every-card", test_cards);
  g_test_add_func ("/hazards/stand-above-every-stage", test_stages);
  g_test_add_func ("/hazards/stand-in-the-plan-on-screen-and-in-the-report", test_plan_on_screen_and_report);
  return g_test_run ();
}
