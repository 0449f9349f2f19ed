/* rw-compare-window.c: two visits to one cabinet side by side.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compare-window.h"

#include <glib/gi18n-lib.h>

#include "rw-compare-card.h"
#include "rw-compare-chart.h"
#include "rw-compare-chooser.h"
#include "rw-compare-list.h"
#include "rw-compare-words.h"
#include "rw-compat.h"
#include "rw-journal-reader.h"
#include "rw-report-compare.h"

struct _RwCompareWindow
{
  GtkWindow        parent_instance;
  RwSession       *one;       /* the one that others are compared with */
  RwSession       *live;      /* (nullable) the job that one is a copy of */
  guint            timer;     /* 0: nothing new in live */
  RwSession       *other;
  char            *report;    /* (nullable) damage, or what went wrong */
  RwCompare       *compare;   /* NULL until both are there */
  RwCompareCauses *causes;    /* of compare */
  RwKnowledge     *knowledge; /* (nullable) */

  GtkLabel       *title;
  GtkLabel       *subtitle;
  GtkLabel       *remarks;
  GtkLabel       *headline;
  GtkFlowBox     *cards;
  RwCompareChart *chart;
  GtkDropDown    *chart_choice;
  GtkListBox     *list;
  GtkDropDown    *meters;
  GtkLabel       *method;
};

G_DEFINE_FINAL_TYPE (RwCompareWindow, rw_compare_window, GTK_TYPE_WINDOW)

static const guint most_cards = 6; /* in a row */
static const guint follow_ms = 1000; /* values come in bursts: one look at all of them */

/* --- showing -------------------------------------------------------------------------------------- */

static void
show_remarks (RwCompareWindow *self)
{
  g_autoptr (GString) text = g_string_new (self->report);

  for (guint i = 0; i < rw_compare_get_n_remarks (self->compare); i++)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", rw_compare_get_remark (self->compare, i));
  gtk_label_set_text (self->remarks, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->remarks), text->len > 0);
}

static void
show_words (RwCompareWindow *self)
{
  g_autofree char *cabinet = rw_compare_words_cabinet (self->compare);
  g_autofree char *dates = rw_compare_words_dates (self->compare);
  g_autofree char *headline = rw_compare_words_headline (self->compare);
  g_autofree char *method = rw_compare_words_method (self->compare);
  /* Translators: cabinet; two dates: title of the window. */
  g_autofree char *title = g_strdup_printf (_ ("%s: %s compared"), cabinet, dates);

  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->title, cabinet);
  gtk_label_set_text (self->subtitle, dates);
  gtk_label_set_text (self->headline, headline);
  gtk_label_set_text (self->method, method);
  show_remarks (self);
}

static void
show_cards (RwCompareWindow *self)
{
  RwProfile *profile = rw_session_get_profile (rw_compare_get_now (self->compare));
  GtkFlowBoxChild *child;

  while ((child = gtk_flow_box_get_child_at_index (self->cards, 0)) != NULL)
    gtk_flow_box_remove (self->cards, GTK_WIDGET (child));
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwCompareItem *item = rw_compare_card_find (self->compare, rw_profile_get_rail (profile, i)->id);

      if (item == NULL)
        continue;
      gtk_flow_box_append (self->cards, rw_compare_card_new (self->compare, item));
    }
  /* A card is nothing to be pressed. */
  for (guint i = 0; (child = gtk_flow_box_get_child_at_index (self->cards, (int) i)) != NULL; i++)
    {
      gtk_widget_set_focusable (GTK_WIDGET (child), FALSE);
      gtk_flow_box_set_max_children_per_line (self->cards, MIN (i + 1, most_cards));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->cards), gtk_flow_box_get_child_at_index (self->cards, 0) != NULL);
}

/* Works everything out anew. */
static void
compare_again (RwCompareWindow *self)
{
  const RwCompareMeters meters = (RwCompareMeters) gtk_drop_down_get_selected (self->meters);

  if (self->one == NULL || self->other == NULL)
    return;
  g_clear_pointer (&self->causes, rw_compare_causes_free);
  g_clear_pointer (&self->compare, rw_compare_unref);
  self->compare = rw_compare_new (self->other, self->one, meters < RW_N_COMPARE_METERS ? meters : 0);
  self->causes = rw_compare_causes_new (self->compare, self->knowledge);
  show_words (self);
  show_cards (self);
  rw_compare_chart_set_compare (self->chart, self->compare, self->knowledge);
  rw_compare_chart_set_chart (self->chart, (RwViewChart) gtk_drop_down_get_selected (self->chart_choice));
  rw_compare_list_fill (self->list, self->compare, self->causes, self->knowledge);
}

static void
complain (RwCompareWindow *self,
          const char      *message)
{
  g_free (self->report);
  self->report = g_strdup (message);
  show_remarks (self);
}

/* --- following a job ------------------------------------------------------------------------------ */

/* Who reads in the list goes on in the same row. */
static void
follow_now (RwCompareWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  GtkWidget *row = focus != NULL ? gtk_widget_get_ancestor (focus, GTK_TYPE_LIST_BOX_ROW) : NULL;
  const int index = row != NULL ? gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)) : -1;
  GtkListBoxRow *again;

  g_object_unref (self->one);
  self->one = rw_compare_window_copy_session (self->live);
  compare_again (self);
  again = index >= 0 ? gtk_list_box_get_row_at_index (self->list, index) : NULL;
  if (again != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (again));
}

static gboolean
follow_cb (gpointer data)
{
  RwCompareWindow *self = data;

  self->timer = 0;
  follow_now (self);
  return G_SOURCE_REMOVE;
}

/* Samples alone change nothing that is compared: a value is, once it is kept. */
static void
added_cb (RwCompareWindow *self,
          guint            index,
          RwSession       *live)
{
  if (self->timer == 0 && rw_session_get_event (live, index)->type != RW_EVENT_SAMPLE)
    self->timer = g_timeout_add (follow_ms, follow_cb, self);
}

void
rw_compare_window_follow (RwCompareWindow *self,
                          RwSession       *live)
{
  g_return_if_fail (RW_IS_COMPARE_WINDOW (self) && self->live == NULL);
  self->live = g_object_ref (live);
  g_signal_connect_object (live, "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
}

/* --- commands ------------------------------------------------------------------------------------- */

static void
chart_chosen_cb (RwCompareWindow *self)
{
  if (self->compare != NULL)
    rw_compare_chart_set_chart (self->chart, (RwViewChart) gtk_drop_down_get_selected (self->chart_choice));
}

static void
meters_chosen_cb (RwCompareWindow *self)
{
  compare_again (self);
}

static void
other_chart (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  RwCompareWindow *self = RW_COMPARE_WINDOW (widget);

  gtk_drop_down_set_selected (self->chart_choice, gtk_drop_down_get_selected (self->chart_choice) == 0 ? 1 : 0);
}

static void
text_chosen (const char *path,
             gpointer    data)
{
  RwCompareWindow *self = data;
  g_autoptr (GString) text = rw_report_compare_text (self->compare, self->causes, self->knowledge);
  g_autoptr (GError) error = NULL;

  if (!g_file_set_contents (path, text->str, (gssize) text->len, &error))
    complain (self, error->message);
}

static void
picture_chosen (const char *path,
                gpointer    data)
{
  RwCompareWindow *self = data;
  g_autoptr (GError) error = NULL;

  if (!rw_compare_chart_save (self->chart, path, &error))
    complain (self, error->message);
}

static void
save (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  if (g_str_equal (name, "compare.save-text"))
    rw_compat_save_file (GTK_WINDOW (widget), _ ("Save what changed"), "compare.txt", NULL, NULL, text_chosen, widget);
  else
    rw_compat_save_file (GTK_WINDOW (widget), _ ("Save the picture"), "compare.png", NULL, NULL, picture_chosen, widget);
}

static void
file_chosen (const char *path,
             gpointer    data)
{
  RwCompareWindow *self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (RwJournalRead) read = rw_journal_read_file (path, &error);

  if (read == NULL)
    {
      complain (self, error->message);
      return;
    }
  g_clear_pointer (&self->report, g_free);
  g_set_object (&self->other, read->session);
  compare_again (self);
}

static void
choose_other (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  rw_compare_chooser_ask (GTK_WINDOW (widget), rw_session_get_header (RW_COMPARE_WINDOW (widget)->one), file_chosen,
                          widget);
}

/* --- the window ----------------------------------------------------------------------------------- */

static void
rw_compare_window_dispose (GObject *object)
{
  RwCompareWindow *self = RW_COMPARE_WINDOW (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_pointer (&self->causes, rw_compare_causes_free);
  g_clear_pointer (&self->compare, rw_compare_unref);
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->report, g_free);
  g_clear_object (&self->one);
  g_clear_object (&self->live);
  g_clear_object (&self->other);
  G_OBJECT_CLASS (rw_compare_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, title);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, remarks);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, headline);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, cards);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, chart);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, chart_choice);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, list);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, meters);
  gtk_widget_class_bind_template_child (widget_class, RwCompareWindow, method);
}

static void
rw_compare_window_class_init (RwCompareWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_compare_window_dispose;
  g_type_ensure (RW_TYPE_COMPARE_CHART);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-compare-window.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "compare.other-chart", NULL, other_chart);
  gtk_widget_class_install_action (widget_class, "compare.save-text", NULL, save);
  gtk_widget_class_install_action (widget_class, "compare.save-picture", NULL, save);
  gtk_widget_class_install_action (widget_class, "compare.other", NULL, choose_other);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_v, 0, "compare.other-chart", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "compare.save-text", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, GDK_CONTROL_MASK, "compare.save-picture", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_o, GDK_CONTROL_MASK, "compare.other", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_compare_window_init (RwCompareWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->chart_choice, "notify::selected", G_CALLBACK (chart_chosen_cb), self);
  g_signal_connect_swapped (self->meters, "notify::selected", G_CALLBACK (meters_chosen_cb), self);
  self->knowledge = rw_knowledge_load (NULL, NULL);
  rw_compat_name_drop_down (self->chart_choice, _ ("Which charts"));
  rw_compat_name_drop_down (self->meters, _ ("Meters of both visits"));
}

GtkWidget *
rw_compare_window_new (GtkWindow  *parent,
                       RwSession  *one,
                       RwSession  *other,
                       const char *report)
{
  RwCompareWindow *self = g_object_new (RW_TYPE_COMPARE_WINDOW, "transient-for", parent, NULL);

  self->one = g_object_ref (one);
  self->other = g_object_ref (other);
  self->report = g_strdup (report);
  compare_again (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->list));
  return GTK_WIDGET (self);
}

RwSession *
rw_compare_window_copy_session (RwSession *session)
{
  RwSession *copy = rw_session_new (rw_session_header_copy (rw_session_get_header (session)));

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      RwEvent event = rw_event_copy (rw_session_get_event (session, i));

      rw_session_add (copy, &event);
    }
  return copy;
}
