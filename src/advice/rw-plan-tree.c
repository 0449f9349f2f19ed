/* rw-plan-tree.c: the complete plan of a bare problem, and its JSON form.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Grown from the likeliest branch to the least likely, so that where nodes or time run out
 * little is lost:
 *  1. take the pending branch with the largest reach;
 *  2. where it is small enough, solve it exactly; the table then serves everything below it.
 *     Else search, with a budget in proportion to its reach;
 *  3. its children are pending branches.
 * What is beyond the limits is completed by repairs in order of chance per minute. Then the
 * minutes to go are summed from the leaves up, so the root's are exactly what the tree costs.
 */
#include "config.h"

#include "rw-plan-tree.h"

#include "rw-plan-exact.h"
#include "rw-repair-order.h"

/* Least effort for one node, and nodes that an exact table and a search may grow. */
static const guint64 least_work = 200 * 1000;
static const gsize least_states = 4096;
static const guint most_exact_nodes = 400 * 1000;
static const guint most_searches = 3000;

/* A table shared by the branches below the one it was solved for. */
typedef struct
{
  RwPlanExact *exact;
} Table;

typedef struct
{
  RwPlanTree **slot; /* where the branch hangs */
  RwPlanState *state;
  double       reach;
  guint        depth;  /* actions above it */
  guint        serial; /* order of creation, so that equals come in a fixed order */
  Table       *table;  /* (nullable) */
  RwPlanSpot   spot;   /* in the table */
} Branch;

typedef struct
{
  const RwProblem    *problem;
  const RwPlanBudget *budget;
  RwPlanLimits        limits;
  double              mass; /* of the start */
  GSequence          *pending;
  guint               n_made;
  guint               n_exact;
  guint               n_searches;
} Grower;

static void
clear_table (gpointer data)
{
  Table *table = data;

  rw_plan_exact_free (table->exact);
}

static void
free_branch (gpointer data)
{
  Branch *branch = data;

  rw_plan_state_free (branch->state);
  if (branch->table != NULL)
    g_rc_box_release_full (branch->table, clear_table);
  g_free (branch);
}

static int
compare_branches (gconstpointer a,
                  gconstpointer b,
                  gpointer      unused)
{
  const Branch *x = a;
  const Branch *y = b;

  if (x->reach != y->reach)
    return x->reach > y->reach ? -1 : 1;
  return (x->serial > y->serial) - (x->serial < y->serial);
}

/* Takes @state. Nothing is pending where nothing can follow. */
static void
add_branch (Grower       *self,
            RwPlanTree  **slot,
            RwPlanState  *state,
            const Branch *parent,
            RwPlanSpot    spot)
{
  const double mass = rw_plan_state_mass (state, self->problem);

  if (!(mass > 0))
    {
      rw_plan_state_free (state);
      return;
    }

  Branch *branch = g_new0 (Branch, 1);

  branch->slot = slot;
  branch->state = state;
  branch->reach = mass / self->mass;
  branch->depth = parent != NULL ? parent->depth + 1 : 0;
  branch->serial = self->n_made++;
  branch->spot = spot;
  if (parent != NULL && parent->table != NULL)
    branch->table = g_rc_box_acquire (parent->table);
  g_sequence_insert_sorted (self->pending, branch, compare_branches, NULL);
}

static RwPlanTree *
node_new (const RwProblem *problem,
          const Branch    *branch,
          RwActionKind     kind,
          guint            index)
{
  RwPlanTree *node = g_new0 (RwPlanTree, 1);
  const gboolean check = kind == RW_ACTION_CHECK;

  node->kind = kind;
  node->index = index;
  node->reach = branch->reach;
  node->minutes = check ? rw_problem_minutes (problem, index, branch->state->setup, NULL)
                        : problem->causes[index].repair_minutes;
  node->n_children = check ? problem->checks[index].n_outcomes : 1;
  node->children = g_new0 (RwPlanTree *, node->n_children);
  return node;
}

static gboolean
has_reserved (const RwProblem   *problem,
              const RwPlanState *state)
{
  for (guint j = 0; j < problem->n_checks; j++)
    if (problem->checks[j].reserved && !state->used[j])
      return TRUE;
  return FALSE;
}

/* The budget of a branch: in proportion to its reach. */
static RwPlanBudget
budget_for (const Grower *self,
            double        reach)
{
  const double work = reach * (double) self->budget->work;
  const double states = reach * (double) self->budget->exact_states;
  RwPlanBudget budget = *self->budget;

  budget.work = MAX ((guint64) work, MIN (least_work, self->budget->work));
  budget.exact_states = MAX ((gsize) states, MIN (least_states, self->budget->exact_states));
  return budget;
}

/* Solves a branch exactly if it has no table yet and is small enough. A table knows nothing of
 * reserved or risky checks. */
static void
try_table (const Grower       *self,
           Branch             *branch,
           const RwPlanBudget *budget)
{
  if (branch->table != NULL || self->problem->as_good > 0
      || has_reserved (self->problem, branch->state))
    return;

  RwPlanExact *exact = rw_plan_exact_new (self->problem, branch->state, budget->exact_states);

  if (exact == NULL)
    return;
  branch->table = g_rc_box_new0 (Table);
  branch->table->exact = exact;
  branch->spot = rw_plan_exact_start (exact);
}

/* The best action of a branch within its budget. */
static RwActionKind
decide (Grower *self,
        Branch *branch,
        guint  *index)
{
  const RwPlanBudget budget = budget_for (self, branch->reach);

  try_table (self, branch, &budget);
  if (branch->table != NULL)
    {
      self->n_exact++;
      return rw_plan_exact_best (branch->table->exact, branch->spot, index);
    }
  self->n_searches++;

  g_autoptr (RwPlanChoice) choice = rw_plan_search (self->problem, branch->state, &budget);

  *index = choice->best.index;
  return choice->best.kind;
}

/* The best repair by chance per minute, while nothing else is to be thought of. */
static guint
plain_repair (const Grower *self,
              const Branch *branch)
{
  const guint n = self->problem->n_causes;
  g_autofree double *minutes = g_new (double, n);

  for (guint i = 0; i < n; i++)
    minutes[i] = self->problem->causes[i].repair_minutes;
  return (guint) rw_repair_best (n, branch->state->weights, minutes);
}

static gboolean
is_within (const Grower *self,
           const Branch *branch)
{
  const RwPlanLimits *limits = &self->limits;
  const guint most = limits->max_nodes;

  if ((limits->depth > 0 && branch->depth >= limits->depth) || branch->reach < limits->min_share)
    return FALSE;
  if (branch->table != NULL)
    return self->n_exact < (most > 0 ? most : most_exact_nodes);
  return self->n_searches < (most > 0 ? most : most_searches);
}

static void
grow_children (Grower       *self,
               const Branch *branch,
               RwPlanTree   *node)
{
  const RwPlanExact *exact = branch->table != NULL ? branch->table->exact : NULL;
  RwPlanSpot spot = branch->spot;

  for (guint k = 0; k < node->n_children; k++)
    {
      RwPlanState *next = NULL;

      if (node->kind == RW_ACTION_CHECK)
        {
          next = rw_plan_state_after_check (branch->state, self->problem, node->index, k);
          if (exact != NULL)
            spot = rw_plan_exact_after_check (exact, branch->spot, node->index, k);
        }
      else
        {
          next = rw_plan_state_after_repair (branch->state, self->problem, node->index);
          if (exact != NULL)
            spot = rw_plan_exact_after_repair (exact, branch->spot, node->index);
        }
      add_branch (self, &node->children[k], next, branch, spot);
    }
}

static void
grow (Grower *self,
      Branch *branch)
{
  RwActionKind kind = RW_ACTION_REPAIR;
  guint index = 0;

  if (is_within (self, branch))
    kind = decide (self, branch, &index);
  else
    index = plain_repair (self, branch);

  RwPlanTree *node = node_new (self->problem, branch, kind, index);

  *branch->slot = node;
  grow_children (self, branch, node);
}

/* Minutes to go, from the leaves up. */
static void
sum_up (RwPlanTree *self)
{
  self->expected = self->minutes;
  for (guint k = 0; k < self->n_children; k++)
    if (self->children[k] != NULL)
      {
        sum_up (self->children[k]);
        self->expected += self->children[k]->expected * self->children[k]->reach / self->reach;
      }
}

RwPlanTree *
rw_plan_tree_solve (const RwProblem    *problem,
                    const RwPlanState  *start,
                    const RwPlanBudget *budget,
                    const RwPlanLimits *limits)
{
  g_autoptr (GSequence) pending = g_sequence_new (free_branch);
  Grower self = { problem, budget, *limits, rw_plan_state_mass (start, problem), pending, 0, 0, 0 };
  RwPlanTree *root = NULL;

  add_branch (&self, &root, rw_plan_state_copy (start, problem), NULL, (RwPlanSpot) { 0 });
  while (!g_sequence_is_empty (pending))
    {
      GSequenceIter *first = g_sequence_get_begin_iter (pending);

      grow (&self, g_sequence_get (first));
      g_sequence_remove (first);
    }
  if (root != NULL)
    sum_up (root);
  return root;
}

void
rw_plan_tree_free (RwPlanTree *self)
{
  if (self == NULL)
    return;
  for (guint k = 0; k < self->n_children; k++)
    rw_plan_tree_free (self->children[k]);
  g_free (self->children);
  g_free (self);
}

static void
write_node (JsonBuilder      *builder,
            const RwPlanTree *node,
            const RwProblem  *problem)
{
  if (node == NULL)
    {
      json_builder_add_null_value (builder);
      return;
    }
  json_builder_begin_object (builder);
  if (node->kind == RW_ACTION_CHECK)
    {
      json_builder_set_member_name (builder, "check");
      json_builder_add_string_value (builder, problem->checks[node->index].id);
      json_builder_set_member_name (builder, "outcomes");
      json_builder_begin_array (builder);
      for (guint k = 0; k < node->n_children; k++)
        write_node (builder, node->children[k], problem);
      json_builder_end_array (builder);
    }
  else
    {
      json_builder_set_member_name (builder, "repair");
      json_builder_add_string_value (builder, problem->causes[node->index].id);
      json_builder_set_member_name (builder, "else");
      write_node (builder, node->children[0], problem);
    }
  json_builder_end_object (builder);
}

char *
rw_plan_tree_to_json (const RwPlanTree *tree,
                      const RwProblem  *problem)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();

  json_builder_begin_object (builder);
  json_builder_set_member_name (builder, "expected_minutes");
  json_builder_add_double_value (builder, tree != NULL ? tree->expected : 0);
  json_builder_set_member_name (builder, "plan");
  write_node (builder, tree, problem);
  json_builder_end_object (builder);

  g_autoptr (JsonNode) root = json_builder_get_root (builder);

  return json_to_string (root, FALSE);
}
