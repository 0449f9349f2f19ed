/* rw-card-outcomes.c: what a check may show.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-card-outcomes.h"

#include <glib/gi18n-lib.h>

#include "rw-foretell.h"
#include "rw-quantity.h"

static const double least_shown = 0.01;

static GtkWidget *
add_label (GtkWidget  *box,
           const char *words,
           const char *style,
           const char *other_style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  if (other_style != NULL)
    gtk_widget_add_css_class (label, other_style);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

/* "→ repair: set the trim" */
static char *
dup_next (const RwAdviceOutcome *outcome)
{
  if (outcome->next_title == NULL)
    return NULL;
  if (outcome->next == RW_ACTION_REPAIR)
    /* Translators: the repair that follows. */
    return g_strdup_printf (_ ("→ repair: %s"), outcome->next_title);
  return g_strdup_printf ("→ %s", outcome->next_title);
}

static void
foretell_one (GtkWidget             *box,
              const RwAdviceOutcome *outcome,
              gboolean               detailed)
{
  g_autofree char *chance = rw_quantity_format_chance (outcome->chance);
  g_autofree char *p = rw_quantity_format_chance (outcome->likely_p);
  g_autofree char *text = g_strdup_printf ("%s  %s", chance, outcome->outcome->title);
  g_autofree char *next = dup_next (outcome);
  /* Translators: a cause and its chance. */
  g_autofree char *likely = outcome->likely != NULL
                                ? g_strdup_printf (_ ("Then most likely: %s (%s)."), outcome->likely->title, p)
                                : g_strdup ("");
  g_autofree char *tip = g_strdup_printf ("%s\n%s", outcome->outcome->meaning, likely);
  GtkWidget *one = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_add_css_class (add_label (one, text, "caption", "strong"), "numeric");
  if (detailed && *outcome->outcome->meaning != '\0')
    add_label (one, outcome->outcome->meaning, "caption", NULL);
  if (next != NULL)
    add_label (one, next, "caption", "quiet");
  gtk_widget_set_tooltip_text (one, tip);
  gtk_box_append (GTK_BOX (box), one);
}

void
rw_card_outcomes_foretell (GtkWidget      *box,
                           const RwAdvice *advice,
                           const RwCheck  *check,
                           gboolean        detailed)
{
  g_autoptr (GArray) list = rw_foretell (advice, check);

  add_label (box, _ ("What it may show"), "caption", "quiet");
  for (guint i = 0; i < list->len; i++)
    if (g_array_index (list, RwAdviceOutcome, i).chance >= least_shown)
      foretell_one (box, &g_array_index (list, RwAdviceOutcome, i), detailed);
}

/* --- choosing ------------------------------------------------------------------------------------- */

typedef struct
{
  const char   *outcome; /* interned */
  RwOutcomeFunc func;
  gpointer      user_data;
} Choice;

static void
free_choice (gpointer  data,
             GClosure *closure)
{
  g_free (data);
}

static void
chosen_cb (GtkWidget *button,
           gpointer   data)
{
  const Choice choice = *(const Choice *) data; /* the button may go with what is called */

  choice.func (choice.outcome, choice.user_data);
}

static void
add_choice (GtkWidget       *box,
            const RwOutcome *outcome,
            gboolean         seen,
            RwOutcomeFunc    func,
            gpointer         user_data)
{
  GtkWidget *button = gtk_button_new_with_label (outcome->title);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));
  Choice *choice = g_new0 (Choice, 1);

  *choice = (Choice) { g_intern_string (outcome->id), func, user_data };
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_tooltip_text (button, outcome->meaning);
  if (seen)
    gtk_widget_add_css_class (button, "suggested-action");
  g_signal_connect_data (button, "clicked", G_CALLBACK (chosen_cb), choice, free_choice, 0);
  gtk_box_append (GTK_BOX (box), button);
}

void
rw_card_outcomes_choose (GtkWidget     *box,
                         const RwCheck *check,
                         const char    *seen,
                         RwOutcomeFunc  func,
                         gpointer       user_data)
{
  const int index = seen != NULL ? rw_check_find_outcome (check, seen) : -1;

  if (index >= 0)
    {
      /* Translators: what a look at the practice cabinet shows. */
      g_autofree char *text = g_strdup_printf (_ ("At the practice cabinet you find: %s"), check->outcomes[index].title);

      add_label (box, text, "strong", NULL);
    }
  for (guint i = 0; i < check->n_outcomes; i++)
    add_choice (box, &check->outcomes[i], (int) i == index, func, user_data);
}

void
rw_card_outcomes_focus (GtkWidget *box)
{
  for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_has_css_class (child, "suggested-action"))
      {
        gtk_widget_grab_focus (child);
        return;
      }
  gtk_widget_child_focus (box, GTK_DIR_TAB_FORWARD);
}

void
rw_card_outcomes_clear (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}
