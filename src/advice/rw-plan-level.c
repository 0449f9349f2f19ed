/* rw-plan-level.c: the rows of one level of the plan, worked out when first counted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A level of actions is a walk: decide, append a row, and while it is a repair, suppose that
 * it changed nothing and decide again. It ends at a check, whose outcomes are the level
 * below, or where what is left of the level's weight is not worth planning for. Each
 * decision costs a few milliseconds (rw_plan_budget_node), those behind a repair less.
 */
#include "config.h"

#include "rw-plan-level.h"

#include <glib/gi18n-lib.h>

#include "rw-plan-node-private.h"
#include "rw-quantity.h"

#define MAX_REPAIRS 6

static const double least_left = 0.01;  /* share of a level that is still worth a row */
static const double least_reach = 0.01; /* outcomes come to more seldom are not planned on from */

static const RwPlanBudget budget_behind_repair = { 2, 300 * 1000, 4096 };

struct _RwPlanLevel
{
  GObject      parent_instance;
  RwAdvice    *advice;
  RwPlanState *state;
  guint        depth;
  gboolean     first;
  gboolean     outcomes; /* of check; else actions */
  guint        check;
  GPtrArray   *rows;     /* of RwPlanNode; NULL until counted */
};

static void rw_plan_level_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (RwPlanLevel, rw_plan_level, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL,
                                                      rw_plan_level_list_model_init))

/* --- words -------------------------------------------------------------------------------------- */

/* "3 min". (transfer full) */
static char *
dup_minutes (double minutes)
{
  g_autofree char *number = rw_quantity_format_number (minutes, minutes < 9.95
                                                       && minutes != (int) minutes);

  /* Translators: minutes */
  return g_strdup_printf (_ ("%s min"), number);
}

/* Appends what can hurt, and who may do it, where there is something to say. */
static void
append_hazard (GString *text,
               RwHazard hazard,
               RwWho    who)
{
  if (hazard != RW_HAZARD_NONE)
    g_string_append_printf (text, " · %s", rw_hazard_get_label (hazard));
  if (who != RW_WHO_ANYONE)
    g_string_append_printf (text, " · %s", rw_who_get_label (who));
}

static char *
dup_check_detail (const RwCheck *check,
                  double         minutes,
                  double         expected)
{
  g_autofree char *own = dup_minutes (minutes);
  g_autofree char *to_go = dup_minutes (expected);
  GString *text = g_string_new (NULL);

  /* Translators: how long a check takes, and how long until the cabinet is fixed, as "3 min" */
  g_string_printf (text, _ ("%s; about %s until it is fixed"), own, to_go);
  append_hazard (text, check->hazard, check->who);
  return g_string_free (text, FALSE);
}

static char *
dup_repair_detail (const RwCause *cause,
                   const RwCause *then,
                   double         own,
                   double         chance)
{
  g_autofree char *minutes = dup_minutes (own);
  g_autofree char *cures = rw_quantity_format_chance (chance);
  GString *text = g_string_new (NULL);

  if (then == NULL)
    /* Translators: how long a repair takes ("15 min"), and the chance that it is the right one
     * ("62 %") */
    g_string_printf (text, _ ("%s, the cure with a chance of %s"), minutes, cures);
  else
    /* Translators: how long two repairs take ("40 min"), the second of them, and the chance that both are needed
     * ("12 %") */
    g_string_printf (text, _ ("%s with “%s” after it, both together the cure with a chance of %s"), minutes,
                     then->repair.title, cures);
  append_hazard (text, cause->repair.hazard, cause->repair.who);
  if (then != NULL)
    append_hazard (text, then->repair.hazard, then->repair.who);
  return g_string_free (text, FALSE);
}

static char *
dup_outcome_detail (double         chance,
                    const RwCause *likely,
                    double         likely_p,
                    gboolean       planned)
{
  g_autofree char *seen = rw_quantity_format_chance (chance);
  g_autofree char *p = rw_quantity_format_chance (likely_p);

  if (!planned)
    /* Translators: chance, cause, its chance */
    return g_strdup_printf (_ ("%s, then most likely: %s (%s). Too rare to plan for."), seen,
                            likely->title, p);
  /* Translators: chance, cause, its chance */
  return g_strdup_printf (_ ("%s, then most likely: %s (%s)"), seen, likely->title, p);
}

/* --- rows --------------------------------------------------------------------------------------- */

static void
add_row (RwPlanLevel *self,
         RwPlanRow    row)
{
  row.advice = self->advice;
  row.id = row.id != NULL ? row.id : "";
  g_ptr_array_add (self->rows, rw_plan_node_new (&row));
}

static void
add_check (RwPlanLevel       *self,
           const RwPlanState *state,
           guint              index,
           double             share,
           double             expected)
{
  const RwProblem *problem = rw_advice_get_problem (self->advice);
  const RwCheck *check = rw_knowledge_get_check (rw_advice_get_knowledge (self->advice), index);
  const double minutes = rw_problem_minutes (problem, index, state->setup, NULL);

  add_row (self, (RwPlanRow) { .kind = RW_PLAN_ROW_CHECK,
                               .state = rw_plan_state_copy (state, problem),
                               .index = index,
                               .depth = self->depth,
                               .id = check->id,
                               .title = check->title,
                               .detail = dup_check_detail (check, minutes, expected),
                               .probability = share,
                               .reach = rw_plan_state_mass (state, problem),
                               .minutes = minutes,
                               .expected = expected,
                               .check = check });
}

static void
add_repair (RwPlanLevel       *self,
            const RwPlanState *state,
            guint              index,
            double             level_mass,
            double             expected)
{
  const RwCause *then = NULL;
  const RwCause *cause = rw_advice_get_cause (self->advice, index, &then);
  const double minutes = rw_advice_get_problem (self->advice)->causes[index].repair_minutes;
  const double chance = state->weights[index] / level_mass;

  add_row (self, (RwPlanRow) { .kind = RW_PLAN_ROW_REPAIR,
                               .depth = self->depth,
                               .id = cause->id,
                               .title = cause->repair.title,
                               .detail = dup_repair_detail (cause, then, minutes, chance),
                               .probability = chance,
                               .reach = rw_plan_state_mass (state,
                                                            rw_advice_get_problem (self->advice)),
                               .minutes = minutes,
                               .expected = expected,
                               .cause = cause,
                               .then = then });
}

static void
add_rest (RwPlanLevel *self,
          double       mass,
          double       level_mass)
{
  const double share = mass / level_mass;
  g_autofree char *chance = rw_quantity_format_chance (share);

  add_row (self, (RwPlanRow) { .kind = RW_PLAN_ROW_REST,
                               .depth = self->depth,
                               .title = _ ("Something less likely"),
                               /* Translators: a chance */
                               .detail = g_strdup_printf (_ ("%s: plan again from there"), chance),
                               .probability = share,
                               .reach = mass });
}

/* --- levels ------------------------------------------------------------------------------------- */

/* What the advice says itself. */
static RwActionKind
advised (const RwPlanLevel *self,
         guint             *index,
         double            *expected)
{
  const RwKnowledge *knowledge = rw_advice_get_knowledge (self->advice);
  const RwAdviceCheck *check = rw_advice_get_check (self->advice);

  *expected = rw_advice_get_expected (self->advice);
  if (check == NULL)
    {
      *index = (guint) rw_advice_get_repair_index (self->advice);
      return RW_ACTION_REPAIR;
    }
  *index = (guint) rw_knowledge_index_of_check (knowledge, check->check->id);
  return RW_ACTION_CHECK;
}

static RwActionKind
decide (const RwPlanLevel *self,
        const RwPlanState *state,
        guint             *index,
        double            *expected)
{
  const RwPlanBudget *budget = self->rows->len > 0 ? &budget_behind_repair : &rw_plan_budget_node;

  if (self->first && self->rows->len == 0)
    return advised (self, index, expected);
  return rw_advice_decide (self->advice, state, budget, index, expected);
}

static void
fill_actions (RwPlanLevel *self)
{
  const RwProblem *problem = rw_advice_get_problem (self->advice);
  const double level_mass = rw_plan_state_mass (self->state, problem);
  g_autoptr (RwPlanState) state = rw_plan_state_copy (self->state, problem);
  double mass = level_mass;

  while (mass > least_left * level_mass && self->rows->len < MAX_REPAIRS)
    {
      guint index = 0;
      double expected = 0;
      const RwActionKind kind = decide (self, state, &index, &expected);

      if (kind == RW_ACTION_CHECK)
        {
          add_check (self, state, index, mass / level_mass, expected);
          return;
        }
      if (kind == RW_ACTION_NONE)
        return;
      add_repair (self, state, index, level_mass, expected);

      RwPlanState *next = rw_plan_state_after_repair (state, problem, index);

      rw_plan_state_free (state);
      state = next;
      mass = rw_plan_state_mass (state, problem);
    }
  if (mass > 1e-9 * level_mass)
    add_rest (self, mass, level_mass);
}

static void
add_outcome (RwPlanLevel *self,
             guint        outcome,
             double       level_mass)
{
  const RwProblem *problem = rw_advice_get_problem (self->advice);
  const RwKnowledge *knowledge = rw_advice_get_knowledge (self->advice);
  const RwCheck *check = rw_knowledge_get_check (knowledge, self->check);
  g_autoptr (RwPlanState) after = rw_plan_state_after_check (self->state, problem, self->check,
                                                             outcome);
  const double mass = rw_plan_state_mass (after, problem);
  const gboolean planned = mass >= least_reach;
  double likely_p = 0;

  if (!(mass > 1e-9 * level_mass))
    return;

  const RwCause *cause = rw_advice_get_likely (self->advice, after, &likely_p);
  const double chance = mass / level_mass;

  add_row (self, (RwPlanRow) { .kind = RW_PLAN_ROW_OUTCOME,
                               .state = planned ? g_steal_pointer (&after) : NULL,
                               .depth = self->depth + 1,
                               .id = check->outcomes[outcome].id,
                               .title = check->outcomes[outcome].title,
                               .detail = dup_outcome_detail (chance, cause, likely_p, planned),
                               .probability = chance,
                               .reach = mass,
                               .expected = -1,
                               .check = check,
                               .cause = cause });
}

static GPtrArray *
rows_of (RwPlanLevel *self)
{
  if (self->rows != NULL)
    return self->rows;

  self->rows = g_ptr_array_new_with_free_func (g_object_unref);
  if (!self->outcomes)
    {
      fill_actions (self);
      return self->rows;
    }

  const RwProblem *problem = rw_advice_get_problem (self->advice);
  const double level_mass = rw_plan_state_mass (self->state, problem);

  for (guint o = 0; o < problem->checks[self->check].n_outcomes; o++)
    add_outcome (self, o, level_mass);
  return self->rows;
}

/* --- list model --------------------------------------------------------------------------------- */

static GType
rw_plan_level_get_item_type (GListModel *model)
{
  return RW_TYPE_PLAN_NODE;
}

static guint
rw_plan_level_get_n_items (GListModel *model)
{
  return rows_of (RW_PLAN_LEVEL (model))->len;
}

static gpointer
rw_plan_level_get_item (GListModel *model,
                        guint       position)
{
  GPtrArray *rows = rows_of (RW_PLAN_LEVEL (model));

  return position < rows->len ? g_object_ref (rows->pdata[position]) : NULL;
}

static void
rw_plan_level_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = rw_plan_level_get_item_type;
  iface->get_n_items = rw_plan_level_get_n_items;
  iface->get_item = rw_plan_level_get_item;
}

static void
rw_plan_level_finalize (GObject *object)
{
  RwPlanLevel *self = RW_PLAN_LEVEL (object);

  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->state, rw_plan_state_free);
  g_clear_pointer (&self->advice, rw_advice_unref);
  G_OBJECT_CLASS (rw_plan_level_parent_class)->finalize (object);
}

static void
rw_plan_level_class_init (RwPlanLevelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_plan_level_finalize;
}

static void
rw_plan_level_init (RwPlanLevel *self)
{
}

RwPlanLevel *
rw_plan_level_new (RwAdvice    *advice,
                   RwPlanState *state,
                   guint        depth,
                   gboolean     first)
{
  RwPlanLevel *self = g_object_new (RW_TYPE_PLAN_LEVEL, NULL);

  self->advice = rw_advice_ref (advice);
  self->state = state;
  self->depth = depth;
  self->first = first;
  return self;
}

RwPlanLevel *
rw_plan_level_new_outcomes (RwAdvice    *advice,
                            RwPlanState *state,
                            guint        check,
                            guint        depth)
{
  RwPlanLevel *self = rw_plan_level_new (advice, state, depth, FALSE);

  self->outcomes = TRUE;
  self->check = check;
  return self;
}
