/* rw-plan-node.c: one row of the plan.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-plan-node-private.h"

#include "rw-plan-level.h"

struct _RwPlanNode
{
  GObject    parent_instance;
  RwPlanRow  row;      /* owns advice, state and detail */
  GListModel *children; /* made when first asked for */
};

enum
{
  PROP_0,
  PROP_KIND,
  PROP_ID,
  PROP_TITLE,
  PROP_DETAIL,
  PROP_PROBABILITY,
  PROP_REACH,
  PROP_MINUTES,
  PROP_EXPECTED,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (RwPlanNode, rw_plan_node, G_TYPE_OBJECT)

static void
rw_plan_node_finalize (GObject *object)
{
  RwPlanNode *self = RW_PLAN_NODE (object);

  g_clear_object (&self->children);
  g_clear_pointer (&self->row.state, rw_plan_state_free);
  g_clear_pointer (&self->row.detail, g_free);
  g_clear_pointer (&self->row.advice, rw_advice_unref);
  G_OBJECT_CLASS (rw_plan_node_parent_class)->finalize (object);
}

static void
rw_plan_node_get_property (GObject    *object,
                           guint       prop_id,
                           GValue     *value,
                           GParamSpec *pspec)
{
  RwPlanNode *self = RW_PLAN_NODE (object);

  switch (prop_id)
    {
    case PROP_KIND:
      g_value_set_int (value, (int) self->row.kind);
      break;
    case PROP_ID:
      g_value_set_string (value, self->row.id);
      break;
    case PROP_TITLE:
      g_value_set_string (value, self->row.title);
      break;
    case PROP_DETAIL:
      g_value_set_string (value, self->row.detail);
      break;
    case PROP_PROBABILITY:
      g_value_set_double (value, self->row.probability);
      break;
    case PROP_REACH:
      g_value_set_double (value, self->row.reach);
      break;
    case PROP_MINUTES:
      g_value_set_double (value, self->row.minutes);
      break;
    case PROP_EXPECTED:
      g_value_set_double (value, rw_plan_node_get_expected (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
install_string (guint       id,
                const char *name)
{
  properties[id] = g_param_spec_string (name, NULL, NULL, NULL,
                                        G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
}

static void
install_double (guint       id,
                const char *name)
{
  properties[id] = g_param_spec_double (name, NULL, NULL, 0, G_MAXDOUBLE, 0,
                                        G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
}

static void
rw_plan_node_class_init (RwPlanNodeClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->finalize = rw_plan_node_finalize;
  object_class->get_property = rw_plan_node_get_property;
  properties[PROP_KIND] = g_param_spec_int ("kind", NULL, NULL, RW_PLAN_ROW_CHECK, RW_PLAN_ROW_REST,
                                            RW_PLAN_ROW_CHECK,
                                            G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  install_string (PROP_ID, "id");
  install_string (PROP_TITLE, "title");
  install_string (PROP_DETAIL, "detail");
  install_double (PROP_PROBABILITY, "probability");
  install_double (PROP_REACH, "reach");
  install_double (PROP_MINUTES, "minutes");
  install_double (PROP_EXPECTED, "expected");
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
rw_plan_node_init (RwPlanNode *self)
{
}

RwPlanNode *
rw_plan_node_new (const RwPlanRow *row)
{
  RwPlanNode *self = g_object_new (RW_TYPE_PLAN_NODE, NULL);

  self->row = *row;
  self->row.advice = rw_advice_ref (row->advice);
  return self;
}

static GListModel *
make_children (RwPlanNode *self)
{
  const RwPlanRow *row = &self->row;
  RwPlanState *state = rw_plan_state_copy (row->state, rw_advice_get_problem (row->advice));

  if (row->kind == RW_PLAN_ROW_CHECK)
    return G_LIST_MODEL (rw_plan_level_new_outcomes (row->advice, state, row->index, row->depth));
  return G_LIST_MODEL (rw_plan_level_new (row->advice, state, row->depth, FALSE));
}

GListModel *
rw_plan_node_list_children (RwPlanNode *self)
{
  g_return_val_if_fail (RW_IS_PLAN_NODE (self), NULL);

  if (self->row.state == NULL)
    return NULL;
  if (self->children == NULL)
    self->children = make_children (self);
  return g_object_ref (self->children);
}

GListModel *
rw_plan_node_list_roots (RwAdvice *advice)
{
  const RwAdviceKind kind = rw_advice_get_kind (advice);

  if (kind != RW_ADVICE_CHECK && kind != RW_ADVICE_REPAIR)
    return G_LIST_MODEL (g_list_store_new (RW_TYPE_PLAN_NODE));

  RwPlanState *state = rw_plan_state_copy (rw_advice_get_state (advice),
                                           rw_advice_get_problem (advice));

  return G_LIST_MODEL (rw_plan_level_new (advice, state, 0, TRUE));
}

RwPlanRowKind
rw_plan_node_get_kind (RwPlanNode *self)
{
  return self->row.kind;
}

const char *
rw_plan_node_get_id (RwPlanNode *self)
{
  return self->row.id;
}

const char *
rw_plan_node_get_title (RwPlanNode *self)
{
  return self->row.title;
}

const char *
rw_plan_node_get_detail (RwPlanNode *self)
{
  return self->row.detail;
}

double
rw_plan_node_get_probability (RwPlanNode *self)
{
  return self->row.probability;
}

double
rw_plan_node_get_reach (RwPlanNode *self)
{
  return self->row.reach;
}

double
rw_plan_node_get_minutes (RwPlanNode *self)
{
  return self->row.minutes;
}

/* An outcome's minutes to go are those of the first thing done after it. */
double
rw_plan_node_get_expected (RwPlanNode *self)
{
  if (self->row.expected >= 0)
    return self->row.expected;

  g_autoptr (GListModel) level = rw_plan_node_list_children (self);
  g_autoptr (RwPlanNode) first = level != NULL ? g_list_model_get_item (level, 0) : NULL;

  self->row.expected = first != NULL ? rw_plan_node_get_expected (first) : 0;
  return self->row.expected;
}

guint
rw_plan_node_get_depth (RwPlanNode *self)
{
  return self->row.depth;
}

const RwCheck *
rw_plan_node_get_check (RwPlanNode *self)
{
  return self->row.check;
}

const RwCause *
rw_plan_node_get_cause (RwPlanNode *self)
{
  return self->row.cause;
}

RwHazard
rw_plan_node_get_hazard (RwPlanNode *self)
{
  if (self->row.kind == RW_PLAN_ROW_CHECK)
    return self->row.check->hazard;
  if (self->row.kind != RW_PLAN_ROW_REPAIR)
    return RW_HAZARD_NONE;
  return self->row.then != NULL ? MAX (self->row.cause->repair.hazard, self->row.then->repair.hazard)
                                : self->row.cause->repair.hazard;
}
