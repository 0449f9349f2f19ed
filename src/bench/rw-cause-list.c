/* rw-cause-list.c: the likeliest causes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pair stands in its place among the single causes when it is as likely as what is shown there. What stands for
 * everything that is not listed is shown by the same rule as any cause.
 */
#include "config.h"

#include "rw-cause-list.h"

#include <glib/gi18n-lib.h>

#include "rw-cause-row.h"
#include "rw-job-practice.h"

#define N_ROWS 8

/* Less likely than this is not worth a row. */
static const double least_shown = 0.02;

struct _RwCauseList
{
  GtkWidget  parent_instance;
  RwJob     *job;
  GtkWidget *box;
  GtkWidget *no_fit;
  GtkWidget *nothing; /* said while no symptom and no reading is there */
  GtkWidget *record_row;
  GtkWidget *record_words;
  GtkWidget *record_switch;
  GtkWidget *record_problem;
  GtkWidget *rows[N_ROWS];
};

static guint repair_signal;

G_DEFINE_FINAL_TYPE (RwCauseList, rw_cause_list, GTK_TYPE_WIDGET)

static double
chance_of_cause (RwBelief *belief,
                 guint     rank)
{
  return rank < rw_belief_get_n_causes (belief) ? rw_belief_get_cause (belief, rank)->p : 0;
}

static double
chance_of_pair (RwBelief *belief,
                guint     i)
{
  return i < rw_belief_get_n_pairs (belief) ? rw_belief_get_pair (belief, i)->p : 0;
}

static GHashTable *
gather_open (RwCauseList *self)
{
  GHashTable *open = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < N_ROWS; i++)
    {
      char *name = rw_cause_row_dup_open (RW_CAUSE_ROW (self->rows[i]));

      if (name != NULL)
        g_hash_table_add (open, name);
    }
  return open;
}

/* Merges the two lists, the likeliest first. */
static guint
show_rows (RwCauseList *self,
           RwBelief    *belief)
{
  g_autoptr (GHashTable) open = gather_open (self);
  guint causes = 0, pairs = 0, n = 0;

  while (n < N_ROWS)
    {
      const double single = chance_of_cause (belief, causes), both = chance_of_pair (belief, pairs);
      RwCauseRow *row = RW_CAUSE_ROW (self->rows[n]);

      if (MAX (single, both) < least_shown)
        break;
      if (single >= both)
        rw_cause_row_show_cause (row, self->job, causes++);
      else
        rw_cause_row_show_pair (row, self->job, pairs++);
      rw_cause_row_open_if (row, open);
      n++;
    }
  return n;
}

static void
show_record (RwCauseList *self)
{
  const RwRecord *record = self->job != NULL ? rw_job_get_record (self->job) : NULL;
  const char *problem = self->job != NULL ? rw_job_get_record_problem (self->job) : NULL;
  const guint n = record != NULL ? rw_record_get_n_jobs (record) : 0;
  /* Translators: number of jobs. */
  g_autofree char *words = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Count %u job of your own",
                                                         "Count %u jobs of your own", n),
                                            n);

  gtk_widget_set_visible (self->record_row, n > 0);
  gtk_label_set_text (GTK_LABEL (self->record_words), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->record_switch), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (self->job != NULL)
    gtk_switch_set_active (GTK_SWITCH (self->record_switch), rw_job_get_uses_record (self->job));
  gtk_label_set_text (GTK_LABEL (self->record_problem), problem != NULL ? problem : "");
  gtk_widget_set_visible (self->record_problem, problem != NULL);
}

/* In a drill without suggestions the pane says so; it is never blank for long. */
static void
show_nothing (RwCauseList *self,
              gboolean     none_likely)
{
  const gboolean unadvised = self->job != NULL && !rw_job_gives_advice (self->job);

  gtk_label_set_text (GTK_LABEL (self->nothing),
                      unadvised ? _ ("None are named in this drill. Every repair can be chosen here (Ctrl+R).")
                                : _ ("No cause stands out yet. Say what it does, or measure."));
  gtk_widget_set_visible (self->nothing, none_likely || unadvised);
}

static void
refresh (RwCauseList *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;
  RwBelief *belief = advice != NULL ? rw_advice_get_belief (advice) : NULL;
  g_autofree char *no_fit = belief != NULL ? rw_belief_dup_no_fit (belief) : NULL;
  const guint n = belief != NULL ? show_rows (self, belief) : 0;

  for (guint i = 0; i < N_ROWS; i++)
    gtk_widget_set_visible (self->rows[i], i < n);
  gtk_label_set_text (GTK_LABEL (self->no_fit), no_fit != NULL ? no_fit : "");
  gtk_widget_set_visible (self->no_fit, no_fit != NULL);
  show_nothing (self, belief != NULL && n == 0);
  show_record (self);
}

static void
record_cb (RwCauseList *self)
{
  if (self->job != NULL && gtk_widget_get_visible (self->record_row))
    rw_job_set_uses_record (self->job, gtk_switch_get_active (GTK_SWITCH (self->record_switch)));
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
repair_cb (RwCauseList *self,
           const char  *cause)
{
  g_signal_emit (self, repair_signal, 0, cause);
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
  repair_signal = g_signal_new ("repair", RW_TYPE_CAUSE_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "causelist");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
add_sentence (RwCauseList *self,
              const char  *words,
              const char  *style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, style);
  gtk_widget_set_visible (label, FALSE);
  gtk_box_append (GTK_BOX (self->box), label);
  return label;
}

static void
add_record (RwCauseList *self)
{
  self->record_row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  self->record_words = gtk_label_new ("");
  self->record_switch = gtk_switch_new ();
  gtk_label_set_xalign (GTK_LABEL (self->record_words), 0);
  gtk_label_set_wrap (GTK_LABEL (self->record_words), TRUE);
  gtk_widget_set_hexpand (self->record_words, TRUE);
  gtk_widget_add_css_class (self->record_words, "caption");
  gtk_widget_set_valign (self->record_switch, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (self->record_row), self->record_words);
  gtk_box_append (GTK_BOX (self->record_row), self->record_switch);
  gtk_widget_set_visible (self->record_row, FALSE);
  gtk_box_append (GTK_BOX (self->box), self->record_row);
  g_signal_connect_swapped (self->record_switch, "notify::active", G_CALLBACK (record_cb), self);
  self->record_problem = add_sentence (self, NULL, "caption");
  gtk_label_set_wrap_mode (GTK_LABEL (self->record_problem), PANGO_WRAP_WORD_CHAR);
}

static void
rw_cause_list_init (RwCauseList *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->no_fit = add_sentence (self, NULL, "no-fit");
  self->nothing = add_sentence (self, NULL, "quiet");
  for (guint i = 0; i < N_ROWS; i++)
    {
      self->rows[i] = rw_cause_row_new ();
      gtk_widget_set_visible (self->rows[i], FALSE);
      g_signal_connect_swapped (self->rows[i], "repair", G_CALLBACK (repair_cb), self);
      gtk_box_append (GTK_BOX (self->box), self->rows[i]);
    }
  add_record (self);
}
