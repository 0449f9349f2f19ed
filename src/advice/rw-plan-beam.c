/* rw-plan-beam.c: look-ahead for problems too large to solve.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Iterative deepening over rw-plan-look. One step of every check is the first answer; then
 * the most promising are looked at two, three, … six steps ahead. They are chosen by minutes
 * saved a minute, by what they tell a minute, and by value: one step alone is blind where only
 * two readings together change the order of repairs. Values of different depths are all costs
 * of plans that exist, so the least one stands.
 *
 * Where many causes live, a plan is cut off long before it ends, and the repairs that stand for
 * its rest weigh far more than the minutes of a check. Such values favour checks that tell much
 * in few steps, however long they take. So there, at the root as below, only the few that save most
 * a minute are looked into, of those that tell most a minute; with more of them the jobs of
 * bench-plan-large take longer, not less. Two are looked into for what they tell alone: see above.
 * Where a change of setup costs, checks of one setup go together, and a pick of the few that save most a minute by
 * themselves misses those that pay once the setup is changed: there the wide look stays. (The study of virtual
 * cabinets: the right cause first in 87 % with it and in 83 % without, in the same minutes.)
 */
#include "config.h"

#include "rw-plan-beam.h"

#include <math.h>
#include <string.h>

#include "rw-plan-look.h"
#include "rw-repair-order.h"

/* A depth costs five to twenty times the one before; it is not begun where even three times
 * would not do. */
static const guint64 growth = 3;

typedef struct
{
  guint       depth;
  RwPlanWidth width;
} Stage;

/* Chosen on random problems against their exact optima. First deep and narrow; where work is
 * left after that the problem is small, and what then costs most is a check left out. */
static const Stage stages_few[] = {
  { 2, { 6, 4, 4 } }, { 3, { 6, 4, 4 } }, { 4, { 6, 4, 4 } },
  { 5, { 6, 4, 4 } }, { 4, { 10, 6, 8 } }, { 5, { 10, 6, 8 } }, { 6, { 10, 6, 8 } },
};

/* Chosen on random cabinets of 40 causes and 45 checks. */
static const Stage stages_many[] = {
  { 2, { 10, 10, 4 } }, { 3, { 10, 10, 4 } }, { 4, { 10, 10, 4 } },
};

/* Which checks of the root are looked into. */
typedef struct
{
  guint        screened;  /* of those that tell most a minute, may be picked by saving */
  guint        by_saving; /* a minute */
  guint        by_told;   /* a minute */
  guint        by_value;
  const Stage *stages;
  guint        n_stages;
} Plan;

static const Plan few = { G_MAXUINT, 8, 5, 3, stages_few, G_N_ELEMENTS (stages_few) };
static const Plan many = { 10, 4, 2, 0, stages_many, G_N_ELEMENTS (stages_many) };

enum
{
  MOST_OF_FEW = 16, /* causes alive */
  AT_DEPTH_3 = 12,
  AT_DEPTH_4 = 8,
  REPAIRS = 2,
};

typedef struct
{
  const RwProblem *problem;
  RwPlanLook      *look;
  const Plan      *plan;
  gboolean        *picked; /* [n_checks]: worth looking deeper */
} Root;

/* Marks the first @want of the candidates by the scores they have now. */
static void
pick (Root            *root,
      RwPlanCandidate *candidates,
      guint            n,
      guint            want)
{
  const guint m = rw_plan_candidates_front (candidates, n, want);

  for (guint k = 0; k < m; k++)
    root->picked[candidates[k].check] = TRUE;
}

/* One step of every check. One that tells nothing costs its minutes. */
static void
first_round (Root              *root,
             RwPlanBeam        *out,
             const RwPlanState *state)
{
  const guint n_checks = root->problem->n_checks;
  const double mass = rw_plan_live_mass (rw_plan_look_get_root (root->look));
  g_autofree RwPlanCandidate *candidates = g_new (RwPlanCandidate, n_checks);
  const guint n = rw_plan_look_screen (root->look, candidates);

  for (guint j = 0; j < n_checks; j++)
    out->check_value[j] = state->used[j] ? (double) INFINITY
                                         : rw_plan_look_minutes (root->look, j, state->setup) * mass
                                               + out->repair_value;
  rw_plan_candidates_front (candidates, n, root->plan->screened);
  pick (root, candidates, n, root->plan->by_told);
  rw_plan_look_weigh (root->look, candidates, n);
  pick (root, candidates, MIN (n, root->plan->screened), root->plan->by_saving);
  for (guint k = 0; k < n; k++)
    {
      out->check_value[candidates[k].check] = candidates[k].value;
      candidates[k].score = -candidates[k].value;
    }
  pick (root, candidates, n, root->plan->by_value);
  out->depth = 1;
}

/* The picked checks, the best of the last depth first, and only those that may still win. */
static guint
shortlist (const Root       *root,
           const RwPlanBeam *out,
           guint             depth,
           RwPlanCandidate  *list)
{
  guint n = 0;

  for (guint j = 0; j < root->problem->n_checks; j++)
    if (root->picked[j])
      list[n++] = (RwPlanCandidate) { j, -out->check_value[j], out->check_value[j] };
  return rw_plan_candidates_front (list, n, depth == 2 ? n : depth == 3 ? AT_DEPTH_3 : AT_DEPTH_4);
}

/* The first repairs by weight/minutes, each with @depth − 1 steps after it. */
static void
look_into_repairs (Root  *root,
                   guint  depth,
                   int   *repair,
                   double *value)
{
  const RwPlanLive *live = rw_plan_look_get_root (root->look);
  g_autofree double *w = g_memdup2 (live->w, live->n * sizeof (double));

  for (guint r = 0; r < REPAIRS; r++)
    {
      const int which = rw_repair_best (live->n, w, live->c);

      if (which < 0)
        return;

      const double v = rw_plan_look_repair (root->look, (guint) which, depth);

      if (v < *value * (1 - 1e-12))
        {
          *value = v;
          *repair = (int) live->cause[which];
        }
      w[which] = 0;
    }
}

/* One more stage for what was picked. FALSE, and nothing changed, when the budget ran out. */
static gboolean
deepen (Root        *root,
        RwPlanBeam  *out,
        const Stage *stage)
{
  const guint n = root->problem->n_checks;
  g_autofree double *value = g_memdup2 (out->check_value, n * sizeof (double));
  g_autofree RwPlanCandidate *list = g_new (RwPlanCandidate, n);
  const guint n_list = shortlist (root, out, stage->depth, list);
  int repair = out->repair;
  double repair_value = out->repair_value;

  rw_plan_look_set_width (root->look, stage->width);
  for (guint k = 0; k < n_list && !rw_plan_look_is_spent (root->look); k++)
    {
      const double v = rw_plan_look_check (root->look, list[k].check, stage->depth);

      value[list[k].check] = MIN (list[k].value, v);
    }
  look_into_repairs (root, stage->depth, &repair, &repair_value);
  if (rw_plan_look_is_spent (root->look))
    return FALSE;
  if (n > 0)
    memcpy (out->check_value, value, n * sizeof (double));
  out->repair = repair;
  out->repair_value = repair_value;
  out->depth = stage->depth;
  return TRUE;
}

static void
deepen_within (Root               *root,
               RwPlanBeam         *out,
               const RwPlanBudget *budget)
{
  guint64 left = budget->work;

  rw_plan_look_set_work (root->look, left);
  for (guint k = 0; k < root->plan->n_stages; k++)
    {
      const Stage *stage = &root->plan->stages[k];

      if (stage->depth > budget->depth)
        continue;
      if (!deepen (root, out, stage))
        return;

      const guint64 used = left - rw_plan_look_get_work (root->look);

      left -= used;
      if (left / growth < used || !rw_plan_look_is_cut_off (root->look))
        return;
    }
}

RwPlanBeam *
rw_plan_beam_run (const RwProblem    *problem,
                  const RwPlanState  *state,
                  const RwPlanBudget *budget)
{
  RwPlanBeam *out = g_new0 (RwPlanBeam, 1);
  g_autoptr (RwPlanLook) look = rw_plan_look_new (problem, state, budget->depth);
  g_autofree gboolean *picked = g_new0 (gboolean, problem->n_checks);
  const RwPlanLive *live = rw_plan_look_get_root (look);
  Root root = { problem, look, live->n > MOST_OF_FEW && problem->n_setups <= 1 ? &many : &few, picked };
  const int first = rw_repair_best (live->n, live->w, live->c);

  out->repair = first < 0 ? -1 : (int) live->cause[first];
  out->repair_value = rw_repair_cost (live->n, live->w, live->c);
  out->check_value = g_new (double, problem->n_checks);
  first_round (&root, out, state); /* given whatever the budget */
  deepen_within (&root, out, budget);
  return out;
}

void
rw_plan_beam_free (RwPlanBeam *self)
{
  if (self == NULL)
    return;
  g_free (self->check_value);
  g_free (self);
}
