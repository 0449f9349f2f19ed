/* rw-plan-tree.h: the complete plan of a bare problem, and its JSON form.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * {"expected_minutes":x,"plan":NODE}; NODE {"check":"t3","outcomes":[NODE|null,…]} in the
 * order of the problem's outcomes (null: cannot happen), or {"repair":"c2","else":NODE|null}
 * (null: nothing is left).
 */
#pragma once

#include "rw-plan-search.h"

G_BEGIN_DECLS

typedef struct _RwPlanTree RwPlanTree;

struct _RwPlanTree
{
  RwActionKind kind;
  guint        index;      /* of the check or the cause */
  double       minutes;    /* of the action, change of setup included */
  double       reach;      /* chance of coming here, 0 … 1 */
  double       expected;   /* minutes to go from here, following the tree */
  guint        n_children; /* outcomes of a check; 1 for a repair */
  RwPlanTree **children;   /* entries NULL where nothing can follow */
};

typedef struct
{
  guint  depth;     /* actions down to which checks are looked for; 0: no limit */
  double min_share; /* a branch come to with less chance is only repaired through; 0: none */
  guint  max_nodes; /* after so many searches branches are only repaired through; 0: default */
} RwPlanLimits;

/* Works the whole plan out. Below the limits a branch is completed by repairs in order of
 * chance per minute, so that the tree is always a plan that ends in "fixed", and
 * root->expected is what it costs. @budget: for the first decision; deeper, less likely ones
 * get less. NULL when no cause has weight. (transfer full) (nullable) */
RwPlanTree *rw_plan_tree_solve (const RwProblem *problem, const RwPlanState *start,
                                const RwPlanBudget *budget, const RwPlanLimits *limits);
void        rw_plan_tree_free (RwPlanTree *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwPlanTree, rw_plan_tree_free)

/* The object above as one line of JSON, numbers in full. @tree may be NULL. (transfer full) */
char *rw_plan_tree_to_json (const RwPlanTree *tree, const RwProblem *problem);

G_END_DECLS
