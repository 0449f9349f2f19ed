/* test-plan-merge.c: outcomes of a check after which the same is done.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Trees made by hand: what is in them is numbers of checks and causes, which nobody needs to know here.
 */
#include "config.h"

#include "rw-report-plan-merge.h"

static RwPlanTree *
make (RwActionKind kind,
      guint        index,
      double       reach,
      double       expected,
      guint        n_children)
{
  RwPlanTree *node = g_new0 (RwPlanTree, 1);

  *node = (RwPlanTree) { .kind = kind, .index = index, .minutes = 1, .reach = reach, .expected = expected,
                         .n_children = n_children };
  node->children = g_new0 (RwPlanTree *, MAX (n_children, 1));
  return node;
}

/* Repairs in order, none of them likelier than another. */
static RwPlanTree *
make_run (double      reach,
          double      expected,
          const char *causes)
{
  RwPlanTree *node = make (RW_ACTION_REPAIR, (guint) (causes[0] - '0'), reach, expected, 1);

  if (causes[1] != '\0')
    node->children[0] = make_run (reach / 2, expected / 2, causes + 1);
  return node;
}

static guint
outcome (GPtrArray *branches,
         guint      i,
         guint      k)
{
  return g_array_index (((RwReportBranch *) branches->pdata[i])->outcomes, guint, k);
}

static const RwPlanTree *
tree (GPtrArray *branches,
      guint      i)
{
  return ((RwReportBranch *) branches->pdata[i])->tree;
}

/* 0.3 · 20 + 0.1 · 40 over 0.4 is 25. */
static void
test_the_same_repairs_stand_once (void)
{
  const RwReportPlan plan = { .depth = 4 };
  g_autoptr (RwPlanTree) check = make (RW_ACTION_CHECK, 7, 1, 30, 3);

  check->children[0] = make_run (0.3, 20, "12");
  check->children[1] = make_run (0.6, 10, "21");
  check->children[2] = make_run (0.1, 40, "12");

  g_autoptr (GPtrArray) branches = rw_report_plan_merge (&plan, check, 1);

  g_assert_cmpuint (branches->len, ==, 2);
  g_assert_cmpuint (((RwReportBranch *) branches->pdata[0])->outcomes->len, ==, 2);
  g_assert_cmpuint (outcome (branches, 0, 0), ==, 0);
  g_assert_cmpuint (outcome (branches, 0, 1), ==, 2);
  g_assert_cmpuint (outcome (branches, 1, 0), ==, 1);
  g_assert_cmpfloat_with_epsilon (tree (branches, 0)->reach, 0.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (tree (branches, 0)->expected, 25, 1e-12);
  g_assert_cmpfloat_with_epsilon (tree (branches, 0)->children[0]->reach, 0.2, 1e-12);

  /* What was merged is a copy. */
  g_assert_cmpfloat (check->children[0]->reach, ==, 0.3);
}

/* Only what is spelled out counts: runs that part after the third repair read the same, longer ones do not. */
static void
test_only_what_is_spelled_out_must_agree (void)
{
  const RwReportPlan plan = { .depth = 4 };
  g_autoptr (RwPlanTree) check = make (RW_ACTION_CHECK, 7, 1, 30, 3);

  check->children[0] = make_run (0.4, 20, "1234");
  check->children[1] = make_run (0.4, 20, "1235");
  check->children[2] = make_run (0.2, 20, "123");

  g_autoptr (GPtrArray) branches = rw_report_plan_merge (&plan, check, 1);

  g_assert_cmpuint (branches->len, ==, 2);
  g_assert_cmpuint (outcome (branches, 0, 1), ==, 1);
  g_assert_cmpuint (outcome (branches, 1, 0), ==, 2);
}

static RwPlanTree *
make_deep (const char *left,
           const char *right)
{
  RwPlanTree *node = make (RW_ACTION_CHECK, 8, 0.5, 20, 2);

  node->children[0] = make_run (0.25, 10, left);
  node->children[1] = make_run (0.25, 10, right);
  return node;
}

/* Two checks whose outcomes lead elsewhere differ where that is shown, and only there. */
static void
test_differences_too_deep_to_show_do_not_count (void)
{
  const RwReportPlan deep = { .depth = 2 }, shallow = { .depth = 1 };
  g_autoptr (RwPlanTree) check = make (RW_ACTION_CHECK, 7, 1, 30, 2);

  check->children[0] = make_deep ("1", "2");
  check->children[1] = make_deep ("1", "3");

  g_autoptr (GPtrArray) apart = rw_report_plan_merge (&deep, check, 1);
  g_autoptr (GPtrArray) together = rw_report_plan_merge (&shallow, check, 1);

  g_assert_cmpuint (apart->len, ==, 2);
  g_assert_cmpuint (together->len, ==, 1);
  g_assert_cmpfloat (tree (together, 0)->reach, ==, 1);
}

static void
test_what_is_rare_or_cannot_happen_is_left_out (void)
{
  const RwReportPlan plan = { .depth = 4 };
  g_autoptr (RwPlanTree) check = make (RW_ACTION_CHECK, 7, 1, 30, 3);

  check->children[0] = make_run (RW_REPORT_PLAN_MIN_SHARE / 2, 20, "1");
  check->children[2] = make_run (0.9, 20, "1");

  g_autoptr (GPtrArray) branches = rw_report_plan_merge (&plan, check, 1);

  g_assert_cmpuint (branches->len, ==, 1);
  g_assert_cmpuint (((RwReportBranch *) branches->pdata[0])->outcomes->len, ==, 1);
  g_assert_cmpuint (outcome (branches, 0, 0), ==, 2);
}

static void
test_a_run_has_no_check_in_it (void)
{
  g_autoptr (RwPlanTree) run = make_run (1, 10, "12");
  g_autoptr (RwPlanTree) on = make_run (1, 10, "1");

  on->children[0] = make_deep ("2", "3");
  g_assert_true (rw_report_plan_is_run (NULL));
  g_assert_true (rw_report_plan_is_run (run));
  g_assert_false (rw_report_plan_is_run (on));
  g_assert_true (rw_report_plan_after (on) == on->children[0]);
  g_assert_null (rw_report_plan_after (rw_report_plan_after (run)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-merge/the same repairs stand once", test_the_same_repairs_stand_once);
  g_test_add_func ("/plan-merge/only what is spelled out must agree", test_only_what_is_spelled_out_must_agree);
  g_test_add_func ("/plan-merge/differences too deep to show do not count",
                   test_differences_too_deep_to_show_do_not_count);
  g_test_add_func ("/plan-merge/what is rare or cannot happen is left out",
                   test_what_is_rare_or_cannot_happen_is_left_out);
  g_test_add_func ("/plan-merge/a run has no check in it", test_a_run_has_no_check_in_it);
  return g_test_run ();
}
