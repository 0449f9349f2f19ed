/* rw-cause-list.c: the likeliest causes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-cause-list.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"

#define N_ROWS 5

/* Less likely than this is not worth a row. */
static const double least_shown = 0.02;

typedef struct
{
  GtkWidget *box;
  GtkWidget *title;
  GtkWidget *chance;
  GtkWidget *bar;
} Row;

struct _RwCauseList
{
  GtkWidget  parent_instance;
  RwJob     *job;
  GtkWidget *box;
  Row        rows[N_ROWS];
};

G_DEFINE_FINAL_TYPE (RwCauseList, rw_cause_list, GTK_TYPE_WIDGET)

/* The evidence that moved this cause most, as factors on its odds. (transfer full) */
static char *
dup_reasons (RwBelief *belief,
             guint     rank)
{
  GString *text = g_string_new (rw_belief_get_cause (belief, rank)->cause->detail);

  for (guint i = 0; i < rw_belief_get_n_evidence (belief); i++)
    {
      const double factor = rw_belief_get_factor (belief, rank, i);
      const double size = factor >= 1 ? factor : 1 / factor;
      g_autofree char *number = rw_quantity_format_number (MIN (size, 9999), size < 10 ? 1 : 0);

      if (size >= 1.2)
        g_string_append_printf (text, "\n%s%s  %s", factor >= 1 ? "×" : "÷", number,
                                rw_belief_get_evidence (belief, i)->title);
    }
  return g_string_free (text, FALSE);
}

static void
show_row (Row      *row,
          RwBelief *belief,
          guint     rank)
{
  const RwCauseBelief *cause = rw_belief_get_cause (belief, rank);
  g_autofree char *chance = rw_quantity_format_chance (cause->p);
  g_autofree char *reasons = dup_reasons (belief, rank);
  g_autofree char *label = g_strdup_printf ("%s, %s", cause->cause->title, chance);

  gtk_label_set_text (GTK_LABEL (row->title), cause->cause->title);
  gtk_label_set_text (GTK_LABEL (row->chance), chance);
  gtk_level_bar_set_value (GTK_LEVEL_BAR (row->bar), cause->p);
  gtk_widget_set_tooltip_text (row->box, reasons);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->bar), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
refresh (RwCauseList *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;
  RwBelief *belief = advice != NULL ? rw_advice_get_belief (advice) : NULL;

  for (guint i = 0; i < N_ROWS; i++)
    {
      const gboolean shown = belief != NULL && i < rw_belief_get_n_causes (belief)
                             && rw_belief_get_cause (belief, i)->p >= least_shown;

      gtk_widget_set_visible (self->rows[i].box, shown);
      if (shown)
        show_row (&self->rows[i], belief, i);
    }
}

void
rw_cause_list_set_job (RwCauseList *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_CAUSE_LIST (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  if (job != NULL)
    g_signal_connect_object (job, "advice", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}

static void
rw_cause_list_dispose (GObject *object)
{
  RwCauseList *self = RW_CAUSE_LIST (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_cause_list_parent_class)->dispose (object);
}

static void
rw_cause_list_class_init (RwCauseListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_cause_list_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "causelist");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
make_row (RwCauseList *self,
          Row         *row)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  row->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  row->title = gtk_label_new ("");
  row->chance = gtk_label_new ("");
  row->bar = gtk_level_bar_new ();
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (row->bar), NULL);
  gtk_label_set_xalign (GTK_LABEL (row->title), 0);
  gtk_label_set_ellipsize (GTK_LABEL (row->title), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (row->title, TRUE);
  gtk_widget_add_css_class (row->chance, "numeric");
  gtk_box_append (GTK_BOX (line), row->title);
  gtk_box_append (GTK_BOX (line), row->chance);
  gtk_box_append (GTK_BOX (row->box), line);
  gtk_box_append (GTK_BOX (row->box), row->bar);
  gtk_box_append (GTK_BOX (self->box), row->box);
}

static void
rw_cause_list_init (RwCauseList *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  for (guint i = 0; i < N_ROWS; i++)
    make_row (self, &self->rows[i]);
}
