/* rw-decide-panel.c: "What would you do now?", to be answered by keyboard.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three faces: waiting for the next decision; the list of answers; what the answer, what was done and what the program
 * would have done cost, side by side as far as they differ.
 */
#include "config.h"

#include "rw-decide-panel.h"

#include <glib/gi18n-lib.h>

#include "rw-card-words.h"
#include "rw-columns-layout.h"
#include "rw-quantity.h"

struct _RwDecidePanel
{
  GtkWidget  parent_instance;
  GtkWidget *scroller;
  GtkWidget *box;
  GtkLabel  *title;
  GtkLabel  *words;
  GtkWidget *answers;  /* GtkListBox */
  GtkWidget *compared; /* GtkBox, laid out in columns */
  GtkLabel  *score;
  GtkWidget *on;       /* GtkButton */
  RwDecide  *decide;   /* (nullable) */
};

G_DEFINE_FINAL_TYPE (RwDecidePanel, rw_decide_panel, GTK_TYPE_WIDGET)

static GtkWidget *
add_label (GtkWidget  *box,
           const char *text,
           const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static void
clear_children (GtkWidget *parent)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (parent)) != NULL)
    {
      if (GTK_IS_LIST_BOX (parent))
        gtk_list_box_remove (GTK_LIST_BOX (parent), child);
      else
        gtk_box_remove (GTK_BOX (parent), child);
    }
}

/* --- the list of answers -------------------------------------------------------------------------- */

/* What it takes, and what can hurt: known to whoever chooses. What it is worth is not told yet. */
static char *
say_facts (const RwDecideOption *option)
{
  g_autofree char *minutes = rw_card_words_minutes (option->minutes);
  const RwHazard hazard = option->check != NULL ? option->check->hazard : option->repair->repair.hazard;
  const RwWho who = option->check != NULL ? option->check->who : option->repair->repair.who;
  g_autofree char *danger = rw_card_words_hazard (hazard, who);

  return g_strdup_printf ("%s · %s", minutes, danger);
}

static void
add_answer (RwDecidePanel        *self,
            const RwDecideOption *option)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *facts = say_facts (option);
  /* Translators: a repair. */
  g_autofree char *title = option->repair != NULL ? g_strdup_printf (_ ("Repair: %s"), option->title)
                                                  : g_strdup (option->title);
  g_autofree char *label = g_strdup_printf ("%s, %s", title, facts);

  gtk_widget_set_margin_top (box, 6);
  gtk_widget_set_margin_bottom (box, 6);
  gtk_widget_set_margin_start (box, 6);
  gtk_widget_set_margin_end (box, 6);
  add_label (box, title, NULL);
  gtk_widget_add_css_class (add_label (box, facts, "caption"), "quiet");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_list_box_append (GTK_LIST_BOX (self->answers), row);
}

static void
show_asked (RwDecidePanel          *self,
            const RwDecideQuestion *question)
{
  g_autofree char *clock = rw_quantity_format_clock (question->t);
  /* Translators: minutes and seconds. */
  g_autofree char *words = g_strdup_printf (_ ("At %s the next step was chosen. Choose yours: arrow keys, then Enter."),
                                            clock);

  gtk_label_set_text (self->words, words);
  for (guint i = 0; i < rw_decide_question_get_n (question); i++)
    add_answer (self, rw_decide_question_get (question, i));
}

static void
row_activated_cb (RwDecidePanel *self,
                  GtkListBoxRow *row)
{
  if (self->decide != NULL)
    rw_decide_choose (self->decide, (guint) gtk_list_box_row_get_index (row));
}

/* --- the comparison ------------------------------------------------------------------------------- */

static void
add_compared (RwDecidePanel          *self,
              const RwDecideQuestion *question,
              const RwDecideOption   *option,
              const char             *kicker)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *account = rw_decide_question_say (question, option);

  gtk_widget_add_css_class (box, "card");
  gtk_widget_add_css_class (add_label (box, kicker, "caption"), "quiet");
  add_label (box, option->title, "heading");
  add_label (box, account, NULL);
  gtk_widget_add_css_class (add_label (box, option->why, "caption"), "quiet");
  gtk_box_append (GTK_BOX (self->compared), box);
}

/* Whose choice it was: all that made it. */
static char *
say_whose (const RwDecideOption *option,
           gboolean              chosen)
{
  GString *text = g_string_new (NULL);
  const char *const whose[] = { chosen ? _ ("Your choice") : NULL, option->taken ? _ ("What was done") : NULL,
                                option->suggested ? _ ("What the program would have done") : NULL };

  for (guint i = 0; i < G_N_ELEMENTS (whose); i++)
    if (whose[i] != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", whose[i]);
  return g_string_free (text, FALSE);
}

static void
show_compared (RwDecidePanel          *self,
               const RwDecideQuestion *question)
{
  const RwDecideOption *const options[] = { rw_decide_question_get_chosen (question),
                                            rw_decide_question_get_taken (question),
                                            rw_decide_question_get_suggested (question) };

  gtk_label_set_text (self->words, _ ("Counted from what was known at that moment, and nothing later."));
  for (guint i = 0; i < G_N_ELEMENTS (options); i++)
    {
      gboolean shown = FALSE;

      for (guint j = 0; j < i; j++)
        shown = shown || options[j] == options[i];
      if (shown)
        continue;

      g_autofree char *kicker = say_whose (options[i], options[i] == options[0]);

      add_compared (self, question, options[i], kicker);
    }
}

/* --- all of it ------------------------------------------------------------------------------------ */

void
rw_decide_panel_focus (RwDecidePanel *self)
{
  g_return_if_fail (RW_IS_DECIDE_PANEL (self));

  GtkListBoxRow *first = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->answers), 0);

  if (first != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (first));
  else if (gtk_widget_get_visible (self->on))
    gtk_widget_grab_focus (self->on);
}

static void
changed_cb (RwDecidePanel *self)
{
  const RwDecideQuestion *question = self->decide != NULL ? rw_decide_get_question (self->decide) : NULL;
  const gboolean answered = question != NULL && question->chosen >= 0;

  clear_children (self->answers);
  clear_children (self->compared);
  if (self->decide != NULL)
    {
      g_autofree char *score = rw_decide_score_say (rw_decide_get_score (self->decide));

      gtk_label_set_text (self->score, score);
    }
  if (question == NULL)
    gtk_label_set_text (self->words, _ ("Play the session (Space): it pauses at each decision and asks you first."));
  else if (answered)
    show_compared (self, question);
  else
    show_asked (self, question);
  gtk_widget_set_visible (self->answers, question != NULL && !answered);
  gtk_widget_set_visible (self->on, question != NULL);
  gtk_button_set_label (GTK_BUTTON (self->on), answered ? _ ("Go on") : _ ("Skip this one"));
  if (question != NULL)
    rw_decide_panel_focus (self);
}

static void
go_on_cb (RwDecidePanel *self)
{
  if (self->decide != NULL)
    rw_decide_go_on (self->decide);
}

void
rw_decide_panel_set_decide (RwDecidePanel *self,
                            RwDecide      *decide)
{
  g_return_if_fail (RW_IS_DECIDE_PANEL (self));
  if (self->decide != NULL)
    g_signal_handlers_disconnect_by_data (self->decide, self);
  g_set_object (&self->decide, decide);
  if (decide != NULL)
    g_signal_connect_swapped (decide, "changed", G_CALLBACK (changed_cb), self);
  changed_cb (self);
}

static void
rw_decide_panel_dispose (GObject *object)
{
  RwDecidePanel *self = RW_DECIDE_PANEL (object);

  if (self->decide != NULL)
    g_signal_handlers_disconnect_by_data (self->decide, self);
  g_clear_object (&self->decide);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_decide_panel_parent_class)->dispose (object);
}

static void
rw_decide_panel_class_init (RwDecidePanelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_decide_panel_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "decide");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_decide_panel_init (RwDecidePanel *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->box);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  gtk_widget_set_margin_top (self->box, 12);
  gtk_widget_set_margin_bottom (self->box, 12);
  gtk_widget_set_margin_start (self->box, 12);
  gtk_widget_set_margin_end (self->box, 12);
  self->title = GTK_LABEL (add_label (self->box, _ ("What would you do now?"), "section"));
  self->words = GTK_LABEL (add_label (self->box, "", NULL));
  self->answers = gtk_list_box_new ();
  gtk_list_box_set_activate_on_single_click (GTK_LIST_BOX (self->answers), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->answers), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What would you do now?"), -1);
  g_signal_connect_swapped (self->answers, "row-activated", G_CALLBACK (row_activated_cb), self);
  gtk_box_append (GTK_BOX (self->box), self->answers);
  self->compared = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_layout_manager (self->compared, rw_columns_layout_new (900, 9));
  gtk_box_append (GTK_BOX (self->box), self->compared);
  self->on = gtk_button_new_with_label ("");
  gtk_widget_set_halign (self->on, GTK_ALIGN_START);
  g_signal_connect_swapped (self->on, "clicked", G_CALLBACK (go_on_cb), self);
  gtk_box_append (GTK_BOX (self->box), self->on);
  self->score = GTK_LABEL (add_label (self->box, "", "quiet"));
}
