/* rw-cure-question.c: did the repair cure it?
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "Partly" asks for each symptom that is still written down as seen whether it stays; a toggle that is pressed says
 * that it does. When all stay, the repair changed nothing; when none does, it was the cure.
 */
#include "config.h"

#include "rw-cure-question.h"

#include <glib/gi18n-lib.h>

struct _RwCureQuestion
{
  GtkWidget   parent_instance;
  GtkWidget  *box;
  GtkWidget  *yes;
  GtkWidget  *no;
  GtkWidget  *partly;
  GtkWidget  *which; /* the second question */
  GtkWidget  *list;  /* of its toggles */
  RwJob      *job;
  const char *cause; /* interned; NULL: does not ask */
};

static guint answered_signal;

G_DEFINE_FINAL_TYPE (RwCureQuestion, rw_cure_question, GTK_TYPE_WIDGET)

static void
answer (RwCureQuestion *self,
        RwRepairResult  result)
{
  RwEvent event = rw_event_make_repair (0, self->cause, result);

  self->cause = NULL;
  rw_job_add (self->job, &event);
  g_signal_emit (self, answered_signal, 0);
}

gboolean
rw_cure_question_yes (RwCureQuestion *self)
{
  g_return_val_if_fail (RW_IS_CURE_QUESTION (self), FALSE);
  if (self->cause == NULL || self->job == NULL)
    return FALSE;
  answer (self, RW_REPAIR_FIXED);
  return TRUE;
}

static void
yes_cb (RwCureQuestion *self)
{
  rw_cure_question_yes (self);
}

static void
no_cb (RwCureQuestion *self)
{
  if (self->cause != NULL)
    answer (self, RW_REPAIR_NO_CHANGE);
}

/* --- partly ---------------------------------------------------------------------------------------- */

static void
add_symptom (RwCureQuestion      *self,
             const RwSymptomSeen *seen)
{
  const char *title = rw_job_symptom_title (self->job, seen->id);
  GtkWidget *toggle = gtk_toggle_button_new_with_label (title);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (toggle));
  /* Translators: a symptom. */
  g_autofree char *name = g_strdup_printf (_ ("Still there: %s"), title);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  g_object_set_data (G_OBJECT (toggle), "symptom", (gpointer) g_intern_string (seen->id));
  gtk_accessible_update_property (GTK_ACCESSIBLE (toggle), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_box_append (GTK_BOX (self->list), toggle);
}

static void
fill_list (RwCureQuestion *self)
{
  RwBenchState *state = rw_job_get_state (self->job);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_box_remove (GTK_BOX (self->list), child);
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    if (rw_bench_state_get_symptom (state, i)->state == RW_SYMPTOM_PRESENT)
      add_symptom (self, rw_bench_state_get_symptom (state, i));
}

static void
partly_cb (RwCureQuestion *self)
{
  if (self->job == NULL || self->cause == NULL)
    return;
  fill_list (self);
  gtk_widget_set_visible (self->which, TRUE);
  gtk_widget_child_focus (self->list, GTK_DIR_TAB_FORWARD);
}

static void
that_is_it_cb (RwCureQuestion *self)
{
  g_autoptr (GPtrArray) gone = g_ptr_array_new ();
  guint n_stay = 0;

  if (self->cause == NULL)
    return;
  for (GtkWidget *toggle = gtk_widget_get_first_child (self->list); toggle != NULL;
       toggle = gtk_widget_get_next_sibling (toggle))
    if (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (toggle)))
      n_stay++;
    else
      g_ptr_array_add (gone, g_object_get_data (G_OBJECT (toggle), "symptom"));
  if (n_stay == 0)
    {
      answer (self, RW_REPAIR_FIXED);
      return;
    }

  const char *cause = self->cause;

  self->cause = NULL;
  rw_job_repair_partly (self->job, cause, gone);
  g_signal_emit (self, answered_signal, 0);
}

/* --- asking ---------------------------------------------------------------------------------------- */

static gboolean
has_symptoms (RwJob *job)
{
  RwBenchState *state = rw_job_get_state (job);

  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    if (rw_bench_state_get_symptom (state, i)->state == RW_SYMPTOM_PRESENT)
      return TRUE;
  return FALSE;
}

void
rw_cure_question_ask (RwCureQuestion *self,
                      RwJob          *job,
                      const char     *cause)
{
  g_return_if_fail (RW_IS_CURE_QUESTION (self));

  const char *id = cause != NULL ? g_intern_string (cause) : NULL;

  g_set_object (&self->job, job);
  gtk_widget_set_visible (GTK_WIDGET (self), id != NULL && job != NULL);
  if (id == NULL || job == NULL)
    {
      self->cause = NULL;
      return;
    }
  gtk_widget_set_sensitive (self->partly, has_symptoms (job));
  if (id != self->cause)
    gtk_widget_set_visible (self->which, FALSE);
  self->cause = id;
}

void
rw_cure_question_focus (RwCureQuestion *self)
{
  g_return_if_fail (RW_IS_CURE_QUESTION (self));
  gtk_widget_grab_focus (self->yes);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_cure_question_dispose (GObject *object)
{
  RwCureQuestion *self = RW_CURE_QUESTION (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_cure_question_parent_class)->dispose (object);
}

static void
rw_cure_question_class_init (RwCureQuestionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_cure_question_dispose;
  answered_signal = g_signal_new ("answered", RW_TYPE_CURE_QUESTION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "curequestion");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
add_label (GtkWidget  *box,
           const char *words,
           const char *style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, style);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static GtkWidget *
add_button (RwCureQuestion *self,
            GtkWidget      *box,
            const char     *word,
            const char     *name,
            void (*func) (RwCureQuestion *self))
{
  GtkWidget *button = gtk_button_new_with_label (word);

  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (func), self);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
rw_cure_question_init (RwCureQuestion *self)
{
  GtkWidget *answers = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  add_label (self->box, _ ("Did it cure it?"), "strong");
  gtk_box_append (GTK_BOX (self->box), answers);
  self->yes = add_button (self, answers, _ ("Yes"), _ ("Yes: It is fixed"), yes_cb);
  self->no = add_button (self, answers, _ ("No"), _ ("No change"), no_cb);
  self->partly = add_button (self, answers, _ ("Partly"), _ ("Partly: it is better, but something stays"), partly_cb);
  self->which = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  add_label (self->which, _ ("What stays? Press what is still there."), "caption");
  gtk_box_append (GTK_BOX (self->which), self->list);
  gtk_widget_set_halign (add_button (self, self->which, _ ("That is it"), _ ("That is it: the others are gone"),
                                     that_is_it_cb),
                         GTK_ALIGN_START);
  gtk_widget_set_visible (self->which, FALSE);
  gtk_box_append (GTK_BOX (self->box), self->which);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}
