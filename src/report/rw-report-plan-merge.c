/* rw-report-plan-merge.c: outcomes of a check after which the same is done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-plan-merge.h"

const RwPlanTree *
rw_report_plan_after (const RwPlanTree *repair)
{
  return repair->n_children > 0 ? repair->children[0] : NULL;
}

gboolean
rw_report_plan_is_run (const RwPlanTree *node)
{
  while (node != NULL && node->kind == RW_ACTION_REPAIR)
    node = rw_report_plan_after (node);
  return node == NULL;
}

/* --- the same? ---------------------------------------------------------------------------------- */

static gboolean
is_shown (const RwPlanTree *node)
{
  return node != NULL && node->reach >= RW_REPORT_PLAN_MIN_SHARE;
}

static gboolean
is_same_run (const RwPlanTree *a,
             const RwPlanTree *b)
{
  for (guint i = 0; i < RW_REPORT_PLAN_SPELLED && a != NULL && b != NULL; i++)
    {
      if (a->index != b->index)
        return FALSE;
      a = rw_report_plan_after (a);
      b = rw_report_plan_after (b);
    }
  return (a == NULL) == (b == NULL);
}

static gboolean is_same (const RwReportPlan *plan,
                         const RwPlanTree   *a,
                         const RwPlanTree   *b,
                         guint               above);

/* What follows one outcome of both. Two that are too rare to be shown by themselves may not be together. */
static gboolean
is_same_below (const RwReportPlan *plan,
               const RwPlanTree   *a,
               const RwPlanTree   *b,
               guint               above)
{
  if (is_shown (a) != is_shown (b))
    return FALSE;
  if (a == NULL || b == NULL || a->reach + b->reach < RW_REPORT_PLAN_MIN_SHARE)
    return TRUE;
  return is_same (plan, a, b, above);
}

/* @above: checks above both. */
static gboolean
is_same (const RwReportPlan *plan,
         const RwPlanTree   *a,
         const RwPlanTree   *b,
         guint               above)
{
  if (a->kind != b->kind)
    return FALSE;
  if (rw_report_plan_is_run (a) || rw_report_plan_is_run (b))
    return rw_report_plan_is_run (a) && rw_report_plan_is_run (b) && is_same_run (a, b);
  if (a->index != b->index)
    return FALSE;
  if (a->kind == RW_ACTION_REPAIR)
    return is_same (plan, rw_report_plan_after (a), rw_report_plan_after (b), above);
  for (guint i = 0; above < plan->depth && i < a->n_children; i++)
    if (!is_same_below (plan, a->children[i], b->children[i], above + 1))
      return FALSE;
  return TRUE;
}

/* --- in one ------------------------------------------------------------------------------------- */

static RwPlanTree *
copy (const RwPlanTree *node)
{
  RwPlanTree *self = g_new (RwPlanTree, 1);

  *self = *node;
  self->children = g_new0 (RwPlanTree *, MAX (node->n_children, 1));
  for (guint i = 0; i < node->n_children; i++)
    self->children[i] = node->children[i] != NULL ? copy (node->children[i]) : NULL;
  return self;
}

/* Adds @other to @into. Below where the two part, which is not shown, the first one's steps stay. */
static void
add (RwPlanTree       *into,
     const RwPlanTree *other)
{
  const double reach = into->reach + other->reach;

  if (reach > 0)
    into->expected = (into->expected * into->reach + other->expected * other->reach) / reach;
  into->reach = reach;
  if (into->kind != other->kind || into->n_children != other->n_children)
    return;
  for (guint i = 0; i < into->n_children; i++)
    if (into->children[i] == NULL)
      into->children[i] = other->children[i] != NULL ? copy (other->children[i]) : NULL;
    else if (other->children[i] != NULL)
      add (into->children[i], other->children[i]);
}

static void
branch_free (gpointer data)
{
  RwReportBranch *branch = data;

  g_array_unref (branch->outcomes);
  rw_plan_tree_free (branch->tree);
  g_free (branch);
}

static RwReportBranch *
find_branch (GPtrArray          *branches,
             const RwReportPlan *plan,
             const RwPlanTree   *child,
             guint               above)
{
  for (guint i = 0; i < branches->len; i++)
    if (is_same (plan, ((RwReportBranch *) branches->pdata[i])->tree, child, above))
      return branches->pdata[i];
  return NULL;
}

GPtrArray *
rw_report_plan_merge (const RwReportPlan *plan,
                      const RwPlanTree   *node,
                      guint               above)
{
  g_return_val_if_fail (plan != NULL && node != NULL && node->kind == RW_ACTION_CHECK, NULL);

  GPtrArray *branches = g_ptr_array_new_with_free_func (branch_free);

  for (guint i = 0; i < node->n_children; i++)
    {
      if (!is_shown (node->children[i]))
        continue;

      RwReportBranch *branch = find_branch (branches, plan, node->children[i], above);

      if (branch != NULL)
        add (branch->tree, node->children[i]);
      else
        {
          branch = g_new0 (RwReportBranch, 1);
          branch->outcomes = g_array_new (FALSE, FALSE, sizeof (guint));
          branch->tree = copy (node->children[i]);
          g_ptr_array_add (branches, branch);
        }
      g_array_append_val (branch->outcomes, i);
    }
  return branches;
}
