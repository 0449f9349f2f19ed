/* rw-plan-view.c: the plan as a tree.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Above the open plan stands the path taken so far, oldest first, scrolled to its end.
 *
 * GtkListView keeps Tab to itself in GTK 4.8, a press for each row; rw-tab-out.c lets it leave.
 */
#include "config.h"

#include "rw-plan-view.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-plan-node.h"
#include "rw-plan-path.h"
#include "rw-quantity.h"
#include "rw-tab-out.h"

struct _RwPlanView
{
  GtkWidget   parent_instance;
  RwJob      *job;
  GtkWidget  *box;
  GtkWidget  *path_scroller;
  GtkWidget  *path; /* the steps done */
  guint       fitting; /* source; 0: none */
  GtkWidget  *scroller;
  GtkWidget  *nothing; /* said instead of an empty list */
  gboolean    roomy;
  gboolean    outdated; /* advice came while it was hidden */
  GtkListView *list;
};

/* Pixels that the path takes at most. */
static const int path_height = 54, roomy_path_height = 300;

G_DEFINE_FINAL_TYPE (RwPlanView, rw_plan_view, GTK_TYPE_WIDGET)

static GListModel *
children_cb (gpointer item,
             gpointer data)
{
  return rw_plan_node_list_children (item);
}

static void
setup_row_cb (GtkSignalListItemFactory *factory,
              GtkListItem              *item,
              gpointer                  data)
{
  GtkWidget *expander = gtk_tree_expander_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *title = gtk_label_new ("");
  GtkWidget *detail = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_xalign (GTK_LABEL (detail), 0);
  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END);
  gtk_label_set_wrap (GTK_LABEL (detail), TRUE); /* what can hurt stands at its end */
  gtk_label_set_lines (GTK_LABEL (detail), 2);
  gtk_label_set_ellipsize (GTK_LABEL (detail), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (detail, "caption");
  gtk_widget_add_css_class (detail, "quiet");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), detail);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_tree_expander_set_child (GTK_TREE_EXPANDER (expander), box);
  gtk_list_item_set_child (item, expander);
}

static const char *
glyph_of (RwPlanRowKind kind)
{
  switch (kind)
    {
    case RW_PLAN_ROW_CHECK:
      return "?";
    case RW_PLAN_ROW_REPAIR:
      return "✔";
    case RW_PLAN_ROW_OUTCOME:
      return "→";
    case RW_PLAN_ROW_REST:
    default:
      return "…";
    }
}

static void
bind_row_cb (GtkSignalListItemFactory *factory,
             GtkListItem              *item,
             gpointer                  data)
{
  GtkTreeListRow *row = gtk_list_item_get_item (item);
  g_autoptr (RwPlanNode) node = gtk_tree_list_row_get_item (row);
  GtkTreeExpander *expander = GTK_TREE_EXPANDER (gtk_list_item_get_child (item));
  GtkWidget *box = gtk_tree_expander_get_child (expander);
  GtkWidget *title = gtk_widget_get_first_child (box);
  GtkWidget *detail = gtk_widget_get_next_sibling (title);
  g_autofree char *text = g_strdup_printf ("%s %s", glyph_of (rw_plan_node_get_kind (node)),
                                           rw_plan_node_get_title (node));

  gtk_tree_expander_set_list_row (expander, row);
  gtk_label_set_text (GTK_LABEL (title), text);
  gtk_label_set_text (GTK_LABEL (detail), rw_plan_node_get_detail (node));
  gtk_widget_set_visible (detail, *rw_plan_node_get_detail (node) != '\0');
  /* The expander is what has the focus, and says nothing by itself. */
  g_autofree char *label = g_strdup_printf ("%s, %s", rw_plan_node_get_title (node), rw_plan_node_get_detail (node));

  gtk_widget_set_tooltip_text (box, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (expander), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
unbind_row_cb (GtkSignalListItemFactory *factory,
               GtkListItem              *item,
               gpointer                  data)
{
  gtk_tree_expander_set_list_row (GTK_TREE_EXPANDER (gtk_list_item_get_child (item)), NULL);
}

/* Opening a row by the keyboard or a double click. */
static void
activate_cb (GtkListView *list,
             guint        position,
             gpointer     data)
{
  g_autoptr (GtkTreeListRow) row = g_list_model_get_item (G_LIST_MODEL (gtk_list_view_get_model (list)), position);

  if (row != NULL)
    gtk_tree_list_row_set_expanded (row, !gtk_tree_list_row_get_expanded (row));
}

/* --- the path ------------------------------------------------------------------------------------- */

/* A scrolled window asks for the height of lines that do not wrap, and forgets where it was sent to while it is laid
 * out: both are put right when that is over. */
static gboolean
fit_cb (gpointer data)
{
  RwPlanView *self = data;
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (self->path_scroller);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (scroller);
  const int width = gtk_widget_get_width (self->path_scroller);
  const int most = gtk_scrolled_window_get_max_content_height (scroller);
  int height = 0;

  self->fitting = 0;
  if (width > 0)
    gtk_widget_measure (self->path, GTK_ORIENTATION_VERTICAL, width, NULL, &height, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (scroller, most < 0 ? -1 : MIN (height, most));
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment));
  return G_SOURCE_REMOVE;
}

/* As high as its lines, and at its end. */
static void
queue_fit (RwPlanView *self)
{
  if (self->fitting == 0)
    self->fitting = g_idle_add_full (G_PRIORITY_HIGH_IDLE, fit_cb, self, NULL);
}

static void
add_step (RwPlanView *self,
          const char *words)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, "caption");
  gtk_box_append (GTK_BOX (self->path), label);
}

static void
show_path (RwPlanView *self,
           RwAdvice   *advice)
{
  g_autoptr (GPtrArray) steps = advice != NULL ? rw_plan_path_list (advice, rw_job_get_state (self->job)) : NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->path)) != NULL)
    gtk_box_remove (GTK_BOX (self->path), child);
  for (guint i = 0; steps != NULL && i < steps->len; i++)
    add_step (self, steps->pdata[i]);
  gtk_widget_set_visible (self->path_scroller, steps != NULL && steps->len > 0);
  queue_fit (self);
}

static void
make_nothing (RwPlanView *self)
{
  self->nothing = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->nothing), 0);
  gtk_label_set_wrap (GTK_LABEL (self->nothing), TRUE);
  gtk_widget_add_css_class (self->nothing, "quiet");
  gtk_widget_set_visible (self->nothing, FALSE);
  gtk_box_append (GTK_BOX (self->box), self->nothing);
}

static void
make_path (RwPlanView *self)
{
  self->path = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_widget_add_css_class (self->path, "path");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->path), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Done so far"), -1);
  self->path_scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->path_scroller), GTK_POLICY_NEVER, GTK_POLICY_EXTERNAL);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->path_scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->path_scroller), path_height);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->path_scroller), self->path);
  gtk_widget_set_visible (self->path_scroller, FALSE);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->path_scroller)), "changed",
                           G_CALLBACK (queue_fit), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->box), self->path_scroller);
}

/* Without a plan below it the path has all the room. */
static void
fit_path (RwPlanView *self,
          gboolean    alone)
{
  const int most = self->roomy ? roomy_path_height : path_height;
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (self->path_scroller);
  const int least = gtk_scrolled_window_get_min_content_height (scroller);

  gtk_scrolled_window_set_min_content_height (scroller, alone ? -1 : MIN (least, most));
  gtk_scrolled_window_set_max_content_height (scroller, alone ? -1 : most);
  queue_fit (self);
  gtk_widget_set_vexpand (self->path_scroller, alone);
}

void
rw_plan_view_set_roomy (RwPlanView *self,
                        gboolean    roomy)
{
  g_return_if_fail (RW_IS_PLAN_VIEW (self));
  self->roomy = roomy;
  fit_path (self, gtk_widget_get_visible (self->nothing));
}

/* --- the plan ------------------------------------------------------------------------------------- */

/* Why no plan is shown. NULL: there is one, or it is still worked out. */
static const char *
find_why_none (RwPlanView *self)
{
  if (self->job == NULL)
    return NULL;
  if (rw_job_get_advice (self->job) != NULL && rw_bench_state_find_danger (rw_job_get_state (self->job)) == NULL)
    return NULL;
  if (rw_job_get_advice (self->job) != NULL)
    return _ ("No check is suggested until the danger above is over and the rail was measured again, or a slip of typing "
              "was taken back.");
  if (!rw_job_gives_advice (self->job))
    return _ ("This drill is worked without suggestions: nothing is planned ahead. What was done so far is told by “What "
              "was done” (L).");
  return rw_job_get_advice_problem (self->job) != NULL ? _ ("Without advice there is no plan.") : NULL;
}

/* @words: in place of a plan; NULL: there is one. */
static void
show_nothing (RwPlanView *self,
              const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->nothing), words != NULL ? words : "");
  gtk_widget_set_visible (self->nothing, words != NULL);
  gtk_widget_set_visible (self->scroller, words == NULL);
  fit_path (self, words != NULL);
}

/* There are two such views, one of them hidden: the hidden one works nothing out. */
static void
refresh (RwPlanView *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;

  self->outdated = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->outdated)
    return;

  const char *why_none = find_why_none (self);

  show_path (self, advice);
  if (advice == NULL || why_none != NULL)
    {
      gtk_list_view_set_model (self->list, NULL);
      show_nothing (self, why_none);
      return;
    }

  GtkTreeListModel *tree = gtk_tree_list_model_new (rw_plan_node_list_roots (advice), FALSE, FALSE, children_cb,
                                                    NULL, NULL);
  g_autoptr (GtkTreeListRow) first = gtk_tree_list_model_get_row (tree, 0);

  show_nothing (self, first == NULL ? _ ("Nothing is left to plan. What was done:") : NULL);
  if (first != NULL)
    gtk_tree_list_row_set_expanded (first, TRUE);

  g_autoptr (GtkSingleSelection) selection = gtk_single_selection_new (G_LIST_MODEL (tree));

  gtk_single_selection_set_autoselect (selection, FALSE);
  gtk_single_selection_set_can_unselect (selection, TRUE);
  gtk_single_selection_set_selected (selection, GTK_INVALID_LIST_POSITION);
  gtk_list_view_set_model (self->list, GTK_SELECTION_MODEL (selection));
}

void
rw_plan_view_set_job (RwPlanView *self,
                      RwJob      *job)
{
  g_return_if_fail (RW_IS_PLAN_VIEW (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  if (job != NULL)
    g_signal_connect_object (job, "advice", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}

static void
rw_plan_view_map (GtkWidget *widget)
{
  RwPlanView *self = RW_PLAN_VIEW (widget);

  GTK_WIDGET_CLASS (rw_plan_view_parent_class)->map (widget);
  if (self->outdated)
    refresh (self);
}

static void
rw_plan_view_dispose (GObject *object)
{
  RwPlanView *self = RW_PLAN_VIEW (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_handle_id (&self->fitting, g_source_remove);
  G_OBJECT_CLASS (rw_plan_view_parent_class)->dispose (object);
}

static void
rw_plan_view_class_init (RwPlanViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_plan_view_dispose;
  GTK_WIDGET_CLASS (klass)->map = rw_plan_view_map;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "planview");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_plan_view_init (RwPlanView *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  make_nothing (self);
  make_path (self);
  g_signal_connect (factory, "setup", G_CALLBACK (setup_row_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_row_cb), NULL);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_row_cb), NULL);
  self->list = GTK_LIST_VIEW (gtk_list_view_new (NULL, factory));
  gtk_list_view_set_single_click_activate (self->list, FALSE);
  g_signal_connect (self->list, "activate", G_CALLBACK (activate_cb), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Plan"), -1);
  rw_tab_out_install (GTK_WIDGET (self->list));

  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scroller), 70);
  gtk_widget_set_vexpand (self->scroller, TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), GTK_WIDGET (self->list));
  gtk_box_append (GTK_BOX (self->box), self->scroller);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
}
