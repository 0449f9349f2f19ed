/* rw-report-plan.c: a plan worked out from the knowledge, and its JSON form.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-plan.h"

#include "rw-json-out.h"

RwReportPlan *
rw_report_plan_new (RwAdvice *advice,
                    guint     depth)
{
  g_return_val_if_fail (advice != NULL, NULL);

  RwReportPlan *self = g_new0 (RwReportPlan, 1);
  const RwPlanLimits limits = { .min_share = RW_REPORT_PLAN_MIN_SHARE };

  self->advice = rw_advice_ref (advice);
  self->depth = CLAMP (depth, 1, RW_REPORT_PLAN_DEEPEST);
  if (rw_advice_get_kind (advice) == RW_ADVICE_CHECK
      || rw_advice_get_kind (advice) == RW_ADVICE_REPAIR)
    self->tree = rw_plan_tree_solve (rw_advice_get_problem (advice), rw_advice_get_state (advice),
                                     &rw_plan_budget_screen, &limits);
  return self;
}

void
rw_report_plan_free (RwReportPlan *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->advice, rw_advice_unref);
  g_clear_pointer (&self->tree, rw_plan_tree_free);
  g_free (self);
}

/* --- JSON ----------------------------------------------------------------------------------- */

/* @above: checks above the node. */
static void append_node (const RwReportPlan *self,
                         const RwPlanTree   *node,
                         guint               above,
                         GString            *out);

static void
append_child (const RwReportPlan *self,
              const RwPlanTree   *child,
              guint               above,
              GString            *out)
{
  if (child == NULL)
    rw_json_out_add_null (out);
  else
    append_node (self, child, above, out);
}

static void
append_check (const RwReportPlan *self,
              const RwPlanTree   *node,
              guint               above,
              GString            *out)
{
  RwKnowledge *knowledge = rw_advice_get_knowledge (self->advice);
  const RwCheck *check = rw_knowledge_get_check (knowledge, node->index);

  rw_json_out_string (out, above < self->depth ? "check" : "cut", check->id);
  if (above >= self->depth)
    return;
  rw_json_out_key (out, "names");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < node->n_children; i++)
    rw_json_out_add_string (out, check->outcomes[i].id);
  rw_json_out_close (out, ']');
  rw_json_out_key (out, "outcomes");
  rw_json_out_open (out, '[');
  for (guint i = 0; i < node->n_children; i++)
    append_child (self, node->children[i], above + 1, out);
  rw_json_out_close (out, ']');
}

static void
append_repair (const RwReportPlan *self,
               const RwPlanTree   *node,
               guint               above,
               GString            *out)
{
  const RwCause *then = NULL;
  const RwCause *cause = rw_advice_get_cause (self->advice, node->index, &then);

  rw_json_out_string (out, "repair", cause->id);
  if (then != NULL)
    rw_json_out_string (out, "with", then->id);
  rw_json_out_key (out, "else");
  append_child (self, node->n_children > 0 ? node->children[0] : NULL, above, out);
}

static void
append_node (const RwReportPlan *self,
             const RwPlanTree   *node,
             guint               above,
             GString            *out)
{
  rw_json_out_open (out, '{');
  rw_json_out_number (out, "minutes", node->minutes);
  rw_json_out_number (out, "reach", node->reach);
  rw_json_out_number (out, "expected_minutes", node->expected);
  if (node->kind == RW_ACTION_CHECK)
    append_check (self, node, above, out);
  else
    append_repair (self, node, above, out);
  rw_json_out_close (out, '}');
}

GString *
rw_report_plan_to_json (const RwReportPlan *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  GString *out = g_string_new (NULL);

  rw_json_out_open (out, '{');
  rw_json_out_number (out, "expected_minutes", self->tree != NULL ? self->tree->expected : 0);
  rw_json_out_number (out, "repairs_only_minutes", rw_advice_get_repairs_only (self->advice));
  rw_json_out_number (out, "perfect_minutes", rw_advice_get_perfect (self->advice));
  rw_json_out_count (out, "depth", self->depth);
  rw_json_out_key (out, "plan");
  append_child (self, self->tree, 0, out);
  rw_json_out_close (out, '}');
  g_string_append_c (out, '\n');
  return out;
}
